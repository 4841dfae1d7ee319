#include "catalogue/catalogue.h"
#include "dialogs/kinddialog.h"
#include "edit/takekindfor.h"
#include "openjob/shown.h"
#include "window/askings.h"
#include "window/window.h"

#include <QFileDialog>
#include <QInputDialog>
#include <QMessageBox>

namespace doorloom {
namespace {

std::vector<DeviceId> devicesOf(const Job& job, const std::string& kind)
{
    std::vector<DeviceId> devices;
    for (const Device& device : job.devices)
        if (kindOf(job, device)->name == kind)
            devices.push_back(device.id);
    return devices;
}

// Two terminals on one strip: all else is from the sheet.
Kind emptyKind()
{
    Kind kind;
    kind.name = "own-kind";
    kind.title = {"Own kind", "Tipo propio"};
    kind.family = "part";
    kind.strips.resize(1);
    for (const char* key : {"1", "2"}) {
        Terminal terminal;
        terminal.key = terminal.printed = key;
        kind.strips[0].terminals.push_back(terminal);
    }
    return kind;
}

// Of the device that is chosen, else one of the shelf's or an empty one; nothing when the user gave up.
std::optional<Kind> askForBegin(Window& window)
{
    const Job& job = window.open().job();
    if (const std::vector<std::uint32_t> rows = window.selection().rows(); rows.size() == 1)
        if (const Kind* kind = kindOf(job, DeviceId{rows.front()}))
            return *kind;
    QStringList names{Window::tr("an empty kind")};
    for (const Kind& kind : window.stock().kinds)
        names << Window::tr("%1 (%2)").arg(shown(kind.title), shown(kind.name));
    bool accepted = false;
    const QString chosen = QInputDialog::getItem(&window, Window::tr("Make or change a kind"),
                                                 Window::tr("Begin with"), names, 0, false, &accepted);
    if (!accepted)
        return std::nullopt;
    const qsizetype at = names.indexOf(chosen);
    return at < 1 ? emptyKind() : window.stock().kinds[static_cast<std::size_t>(at - 1)];
}

void tellWhatIsLeft(Window& window, const std::vector<Message>& left)
{
    QStringList lines;
    for (const Message& line : left)
        lines << shown(line);
    QMessageBox(QMessageBox::Information, Window::tr("The devices were changed"), lines.join('\n'),
                QMessageBox::Ok, &window)
        .exec();
}

void editKind(Window& window, const Kind& begin)
{
    const std::vector<DeviceId> devices = devicesOf(window.open().job(), begin.name);
    KindDialog dialog({.kind = begin,
                       .devices = static_cast<int>(devices.size()),
                       .objection = [&](const Kind& kind) { return window.objectionTo(kind); },
                       .replaced =
                           [&](const Kind& kind) {
                               const Kind* other = window.ownKind(kind.name);
                               return other && *other != begin ? other : nullptr;
                           }},
                      &window);
    if (dialog.exec() != QDialog::Accepted)
        return;
    const std::optional<Problem> notKept = window.keepOwnKind(dialog.kind());
    const Result<KindSwap> taken = takeKindFor(window.open().job(), dialog.kind(),
                                               dialog.changesDevices() ? devices : std::vector<DeviceId>());
    if (!taken.ok())
        return window.show(taken.problem());
    window.make(Message{Text{.en = "take the kind {name}", .es = "tomar el tipo {name}"},
                        {{"name", dialog.kind().name}}},
                taken.value().change);
    if (notKept) // it is in the job all the same
        window.show(notKept);
    if (!taken.value().leftBehind.empty())
        tellWhatIsLeft(window, taken.value().leftBehind);
}

} // namespace

void askToEditKind(Window& window)
{
    if (const std::optional<Kind> begin = askForBegin(window))
        editKind(window, *begin);
}

void askForKindFile(Window& window)
{
    const QString path =
        QFileDialog::getOpenFileName(&window, Window::tr("Import a kind"), {}, Window::tr("Kinds (*.json)"));
    if (path.isEmpty())
        return;
    const Result<Kind> kind = readKindFile(path.toStdString());
    if (!kind.ok())
        return window.show(kind.problem());
    editKind(window, kind.value());
}

} // namespace doorloom
