#include "edit/duplicatedoor.h"
#include "edit/undowords.h"
#include "openjob/shown.h"
#include "window/askings.h"
#include "window/window.h"

#include <QInputDialog>
#include <QMessageBox>

namespace doorloom {
namespace {

// The opening that is meant; nothing when the user gave up.
OpeningId askWhichDoor(Window& window)
{
    QStringList doors;
    std::vector<OpeningId> ids;
    for (const Opening& each : window.open().job().openings) {
        doors << Window::tr("%1 %2").arg(shown(each.tag), shown(each.words)).trimmed();
        ids.push_back(each.id);
    }
    if (ids.size() == 1)
        return ids.front();
    bool accepted = false;
    const QString chosen = QInputDialog::getItem(&window, Window::tr("Duplicate a door"),
                                                 Window::tr("Which opening"), doors, 0, false, &accepted);
    return accepted ? ids[static_cast<std::size_t>(doors.indexOf(chosen))] : OpeningId{};
}

} // namespace

void askToDuplicateDoor(Window& window)
{
    const OpeningId opening = askWhichDoor(window);
    if (!opening)
        return;
    const Job& job = window.open().job();
    Numbers numbers(job);
    const Result<DuplicatedDoor> result = duplicateDoor(job, numbers, opening);
    if (!result.ok())
        return window.show(result.problem());
    const DuplicatedDoor& door = result.value();
    window.make(undoWords(job, Text{.en = "duplicate the door {names}", .es = "duplicar la puerta {names}"},
                          {opening.number}),
                door.change);
    window.selection().choose(door.rows);
    window.jumpTo(door.rows);
    if (door.leftWaiting.empty())
        return;
    QStringList lines;
    for (const Message& line : door.leftWaiting)
        lines << shown(line);
    QMessageBox box(QMessageBox::Information, Window::tr("Conductors that wait"),
                    Window::tr("%n conductor(s) of the new door wait for their landing at what is shared.",
                               nullptr, static_cast<int>(lines.size())),
                    QMessageBox::Ok, &window);
    box.setDetailedText(lines.join('\n'));
    box.exec();
}

} // namespace doorloom
