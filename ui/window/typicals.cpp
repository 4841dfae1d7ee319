#include "edit/typicals.h"

#include "dialogs/doorchangesdialog.h"
#include "dialogs/marktypicaldialog.h"
#include "dialogs/stampdialog.h"
#include "edit/undowords.h"
#include "openjob/shown.h"
#include "window/askings.h"
#include "window/window.h"

#include <QInputDialog>

namespace doorloom {

void askToMarkTypical(Window& window)
{
    const Job& job = window.open().job();
    MarkTypicalDialog dialog(job, window.selection().rows(), &window);
    if (dialog.exec() != QDialog::Accepted)
        return;
    Numbers numbers(job);
    const auto marked = markTypical(job, numbers, dialog.opening(), dialog.name(), dialog.also());
    if (!marked.ok())
        return window.show(marked.problem());
    window.make(undoWords(job,
                          Text{.en = "mark {names} as a typical", .es = "marcar {names} como puerta tipo"},
                          {dialog.opening().number}),
                marked.value().second);
}

void askToStampDoors(Window& window)
{
    const Job& job = window.open().job();
    StampDialog dialog(job, &window);
    if (dialog.exec() != QDialog::Accepted)
        return;
    Numbers numbers(job);
    const Result<StampedDoors> stamped =
        stampTypical(job, numbers, dialog.typical(), dialog.count(), dialog.numbering());
    if (!stamped.ok())
        return window.show(stamped.problem());
    window.make(Message{Text{.en = "stamp {count} doors", .es = "estampar {count} puertas"},
                        {{"count", std::to_string(dialog.count())}}},
                stamped.value().change);
    const StampedDoor& first = stamped.value().doors.front();
    window.selection().choose(first.rows);
    window.jumpTo(first.rows);
}

void askToChangeDoors(Window& window)
{
    const Job& job = window.open().job();
    DoorChangesDialog dialog(job, &window);
    if (dialog.exec() != QDialog::Accepted)
        return;
    window.make(Message{Text{.en = "change {count} doors as their typical",
                             .es = "cambiar {count} puertas como su puerta tipo"},
                        {{"count", std::to_string(dialog.chosenCount())}}},
                dialog.change());
}

void askToUnmarkTypical(Window& window)
{
    const Job& job = window.open().job();
    QStringList names;
    std::vector<TypicalId> typicals;
    for (const Typical& each : job.typicals) {
        names << shown(each.name);
        typicals.push_back(each.id);
    }
    bool accepted = false;
    const QString chosen = QInputDialog::getItem(&window, Window::tr("Let a typical go"), Window::tr("Which typical"),
                                                 names, 0, false, &accepted);
    if (!accepted)
        return;
    const Result<Change> change = unmarkTypical(job, typicals[static_cast<std::size_t>(names.indexOf(chosen))]);
    if (!change.ok())
        return window.show(change.problem());
    window.make(Message{Text{.en = "let the typical '{name}' go", .es = "soltar la puerta tipo '{name}'"},
                        {{"name", chosen.toStdString()}}},
                change.value());
}

} // namespace doorloom
