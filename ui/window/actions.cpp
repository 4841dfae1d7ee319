#include "window/actions.h"

#include "edit/drawing.h"
#include "edit/nexttag.h"
#include "edit/removeany.h"
#include "edit/undowords.h"
#include "openjob/shown.h"
#include "panels/findingspanel.h"
#include "panels/shelf.h"
#include "panels/typedentry.h"
#include "window/askings.h"
#include "window/clipboard.h"
#include "window/recentfiles.h"
#include "window/window.h"

#include <QApplication>
#include <QDockWidget>
#include <QMenu>
#include <QMenuBar>
#include <QToolBar>

namespace doorloom {
namespace {

using Tool = SheetView::Tool;
using Along = SheetView::Along;

bool hasChosen(const Window& window)
{
    return !window.selection().rows().empty();
}

bool hasDevices(const Window& window)
{
    return !window.open().job().devices.empty();
}

bool hasSeveral(const Window& window)
{
    return window.selection().rows().size() > 1;
}

template <Tool tool> void use(Window& window)
{
    window.sheet().useTool(tool);
    window.sheet().setFocus();
}

template <Tool tool> bool isUsed(const Window& window)
{
    return window.sheet().tool() == tool;
}

template <Along edge> void alignAlong(Window& window)
{
    window.sheet().align(edge);
}

void removeChosen(Window& window)
{
    const Job& job = window.open().job();
    const std::vector<std::uint32_t> rows = window.selection().rows();
    window.make(undoWords(job, doing::remove, rows), removeAny(job, rows));
}

void chooseAll(Window& window)
{
    const Job& job = window.open().job();
    std::vector<std::uint32_t> rows;
    for (const Placement& placement : job.placements)
        if (placement.sheet == window.sheet().sheet())
            rows.push_back(std::visit([](auto id) { return id.number; }, placement.what));
    window.selection().choose(std::move(rows));
}

void addSheetAfter(Window& window)
{
    const Job& job = window.open().job();
    Numbers numbers(job);
    const std::string title = nextSheetTitle(job);
    const auto made = addSheet(job, numbers, title);
    if (!made.ok())
        return window.show(made.problem());
    window.make(Message{doing::addSheet, {{"names", title}}}, made.value().second);
    window.sheet().showSheet(made.value().first);
}

void nextSheet(Window& window)
{
    const std::vector<const Sheet*> sheets = sheetsInOrder(window.open().job());
    for (std::size_t place = 0; place < sheets.size(); ++place)
        if (sheets[place]->id == window.sheet().sheet())
            return window.showSheetAt(static_cast<int>((place + 1) % sheets.size()));
}

void backToSheet(Window& window)
{
    window.sheet().useTool(Tool::Choose);
    window.show(std::optional<Problem>());
    window.sheet().setFocus();
}

constexpr double zoomStep = 1.25;

constexpr Action actions[] = {
    // ---- Job
    {"newJob", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "&New"), "Ctrl+N",
     QT_TRANSLATE_NOOP("doorloom::Window", "Begins an empty job."), [](Window& w) { w.beginEmpty(); }},
    {"openJob", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "&Open …"), "Ctrl+O",
     QT_TRANSLATE_NOOP("doorloom::Window", "Opens a job file."), [](Window& w) { w.askForFile(); }, nullptr,
     nullptr, true},
    {"saveJob", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "&Save"), "Ctrl+S",
     QT_TRANSLATE_NOOP("doorloom::Window", "Saves the job to its file."), [](Window& w) { w.save(); },
     [](const Window& w) { return w.open().unsaved() || w.open().path().empty(); }, nullptr, true},
    {"saveJobAs", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "Save &as …"), "Ctrl+Shift+S",
     QT_TRANSLATE_NOOP("doorloom::Window", "Saves the job to another file."), [](Window& w) { w.saveAs(); }},
    {"titleBlockOf", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "&Title block …"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "Number, title, site and revision, as they stand on every paper."),
     askForTitleBlock, nullptr, nullptr, false, true},
    {"addOpening", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "Add an openin&g"), "Ctrl+Shift+O",
     QT_TRANSLATE_NOOP("doorloom::Window", "A door with its locks, its requests, and what it promises."),
     addAnOpening},
    {"importList", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "&Import a connection list …"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "Lands what a spreadsheet's list says, after a look at each of its rows."),
     askForConnectionList},
    {"editKind", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "Make or change a &kind …"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "A kind from the sheet in the box: of the device that is chosen, or any."),
     askToEditKind, nullptr, nullptr, false, true},
    {"importKind", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "Import a kin&d …"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "Takes a kind from a file that somebody handed on, after a look at it."),
     askForKindFile},
    {"printPaper", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "&Papers …"), "Ctrl+P",
     QT_TRANSLATE_NOOP("doorloom::Window", "Prints the terminal schedule or tags, or writes them to a file."),
     askForPaper, nullptr, nullptr, true, true},
    {"quit", Menu::Job, QT_TRANSLATE_NOOP("doorloom::Window", "&Quit"), "Ctrl+Q",
     QT_TRANSLATE_NOOP("doorloom::Window", "Closes the window; asks about what is unsaved."),
     [](Window& w) { w.close(); }, nullptr, nullptr, false, true},
    // ---- Edit
    {"undo", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "&Undo"), "Ctrl+Z",
     QT_TRANSLATE_NOOP("doorloom::Window", "Puts the last change back."),
     [](Window& w) { w.open().history().undo(); },
     [](const Window& w) { return w.open().history().canUndo(); }, nullptr, true},
    {"redo", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "&Redo"), "Ctrl+Shift+Z; Ctrl+Y",
     QT_TRANSLATE_NOOP("doorloom::Window", "Makes again what was undone."),
     [](Window& w) { w.open().history().redo(); },
     [](const Window& w) { return w.open().history().canRedo(); }, nullptr, true},
    {"copy", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "&Copy"), "Ctrl+C",
     QT_TRANSLATE_NOOP("doorloom::Window", "Copies what is chosen, with the conductors between."), copyChosen,
     hasChosen, nullptr, false, true},
    {"paste", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "&Paste"), "Ctrl+V",
     QT_TRANSLATE_NOOP("doorloom::Window", "Pastes with new tags."), pasteCopied},
    {"duplicateDoor", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "Duplicate a &door …"), "Ctrl+D",
     QT_TRANSLATE_NOOP("doorloom::Window", "An opening with all that belongs to it, again, with new tags."),
     askToDuplicateDoor, [](const Window& w) { return !w.open().job().openings.empty(); }},
    {"markTypical", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "&Mark a typical …"), "Ctrl+Shift+T",
     QT_TRANSLATE_NOOP("doorloom::Window", "A door drawn once, to be stamped many times and changed in one place."),
     askToMarkTypical, [](const Window& w) { return !w.open().job().openings.empty(); }},
    {"stampDoors", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "&Stamp doors …"), "Ctrl+Shift+D",
     QT_TRANSLATE_NOOP("doorloom::Window", "Many doors like a typical, each with its own tags and places."),
     askToStampDoors, [](const Window& w) { return !w.open().job().typicals.empty(); }},
    {"changeDoors", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "Change stamped doors …"), "Ctrl+Shift+E",
     QT_TRANSLATE_NOOP("doorloom::Window",
                       "What a typical's change does to each of its doors; then does it where you tick."),
     askToChangeDoors, [](const Window& w) { return !w.open().job().stamps.empty(); }},
    {"unmarkTypical", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "Let a typical go …"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "Its stamped doors stay, and are doors like any other from then on."),
     askToUnmarkTypical, [](const Window& w) { return !w.open().job().typicals.empty(); }},
    {"remove", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "&Remove"), "Del",
     QT_TRANSLATE_NOOP("doorloom::Window",
                       "Takes what is chosen out of the job; conductors are left waiting."),
     removeChosen, hasChosen},
    {"chooseAll", Menu::Edit, QT_TRANSLATE_NOOP("doorloom::Window", "Choose &all"), "Ctrl+A",
     QT_TRANSLATE_NOOP("doorloom::Window", "Chooses everything on this sheet."), chooseAll},
    // ---- Draw
    {"choose", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "&Choose and land"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "Choose and move; from terminal to terminal lands a conductor."),
     use<Tool::Choose>, nullptr, isUsed<Tool::Choose>, true},
    {"splice", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "&Splice"), "S",
     QT_TRANSLATE_NOOP("doorloom::Window", "Sets a splice where you click."), use<Tool::Splice>, nullptr,
     isUsed<Tool::Splice>, true},
    {"note", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "N&ote"), "T",
     QT_TRANSLATE_NOOP("doorloom::Window", "Writes a note where you click."), use<Tool::Note>, nullptr,
     isUsed<Tool::Note>, true},
    {"turn", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "Turn &terminals"), "R",
     QT_TRANSLATE_NOOP("doorloom::Window", "Puts the terminals of what is chosen on the next side."),
     [](Window& w) { w.sheet().turn(); }, hasChosen, nullptr, false, true},
    {"tidy", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "T&idy the sheet"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "Sets everything on this sheet out by box and door."),
     [](Window& w) { w.sheet().tidy(); }, hasDevices, nullptr, false, true},
    {"alignLeft", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "Align &left"), "Ctrl+Shift+Left",
     QT_TRANSLATE_NOOP("doorloom::Window", "Left edges in one line."), alignAlong<Along::Left>, hasSeveral},
    {"alignRight", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "Align &right"), "Ctrl+Shift+Right",
     QT_TRANSLATE_NOOP("doorloom::Window", "Right edges in one line."), alignAlong<Along::Right>, hasSeveral},
    {"alignTop", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "Align t&op"), "Ctrl+Shift+Up",
     QT_TRANSLATE_NOOP("doorloom::Window", "Top edges in one line."), alignAlong<Along::Top>, hasSeveral},
    {"alignBottom", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "Align &bottom"), "Ctrl+Shift+Down",
     QT_TRANSLATE_NOOP("doorloom::Window", "Bottom edges in one line."), alignAlong<Along::Bottom>,
     hasSeveral},
    {"addSheet", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "Add a s&heet"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "Another sheet after the last."), addSheetAfter, nullptr, nullptr,
     false, true},
    {"renameSheet", Menu::Draw, QT_TRANSLATE_NOOP("doorloom::Window", "Re&name the sheet …"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "Gives this sheet another title."), askForSheetTitle},
    // ---- Look
    {"closer", Menu::Look, QT_TRANSLATE_NOOP("doorloom::Window", "&Closer"),
     "Ctrl++; Ctrl+=", QT_TRANSLATE_NOOP("doorloom::Window", "Shows less, larger."),
     [](Window& w) { w.sheet().scaleBy(zoomStep); }},
    {"further", Menu::Look, QT_TRANSLATE_NOOP("doorloom::Window", "&Further off"), "Ctrl+-",
     QT_TRANSLATE_NOOP("doorloom::Window", "Shows more, smaller."),
     [](Window& w) { w.sheet().scaleBy(1 / zoomStep); }},
    {"trueSize", Menu::Look, QT_TRANSLATE_NOOP("doorloom::Window", "&True size"), "Ctrl+0",
     QT_TRANSLATE_NOOP("doorloom::Window", "A millimetre on the screen is one on paper."),
     [](Window& w) { w.sheet().scaleTo(1); }},
    {"wholeSheet", Menu::Look, QT_TRANSLATE_NOOP("doorloom::Window", "&Whole sheet"), "Ctrl+9",
     QT_TRANSLATE_NOOP("doorloom::Window", "All that is on this sheet in view."),
     [](Window& w) { w.sheet().fit(); }, nullptr, nullptr, true},
    // ---- Go
    {"typeLanding", Menu::Go, QT_TRANSLATE_NOOP("doorloom::Window", "&Type a landing"), "Ctrl+L",
     QT_TRANSLATE_NOOP("doorloom::Window", "To the line in which landings are typed."),
     [](Window& w) { w.entry().startTyping(); }},
    {"toShelf", Menu::Go, QT_TRANSLATE_NOOP("doorloom::Window", "To the &shelf"), "Ctrl+K",
     QT_TRANSLATE_NOOP("doorloom::Window", "To the letters that find a kind or cable."),
     [](Window& w) {
         w.shelf().parentWidget()->show();
         w.shelf().startTyping();
     }},
    {"toSheet", Menu::Go, QT_TRANSLATE_NOOP("doorloom::Window", "&Back to the sheet"), "F6",
     QT_TRANSLATE_NOOP("doorloom::Window", "Leaves what is being done and goes back to the sheet."),
     backToSheet},
    {"find", Menu::Go, QT_TRANSLATE_NOOP("doorloom::Window", "&Find …"), "Ctrl+F",
     QT_TRANSLATE_NOOP("doorloom::Window", "Anything by its tag or words."), askWhatToFind, nullptr, nullptr,
     true, true},
    {"nextFinding", Menu::Go, QT_TRANSLATE_NOOP("doorloom::Window", "&Next finding"), "F8",
     QT_TRANSLATE_NOOP("doorloom::Window", "Jumps to the next finding and lights its way."),
     [](Window& w) { w.findings().goTo(1); }},
    {"previousFinding", Menu::Go, QT_TRANSLATE_NOOP("doorloom::Window", "&Previous finding"), "Shift+F8",
     QT_TRANSLATE_NOOP("doorloom::Window", "Jumps to the finding before."),
     [](Window& w) { w.findings().goTo(-1); }},
    {"nextSheet", Menu::Go, QT_TRANSLATE_NOOP("doorloom::Window", "Next s&heet"), "Ctrl+PgDown",
     QT_TRANSLATE_NOOP("doorloom::Window", "Shows the next sheet, round the end."), nextSheet},
    // ---- Help
    {"shortcuts", Menu::Help, QT_TRANSLATE_NOOP("doorloom::Window", "&Keys"), "F1",
     QT_TRANSLATE_NOOP("doorloom::Window", "Everything that can be done, and its keys."), showShortcuts},
    {"typedForms", Menu::Help, QT_TRANSLATE_NOOP("doorloom::Window", "&What can be typed"), "Shift+F1",
     QT_TRANSLATE_NOOP("doorloom::Window", "The forms that the typed line understands."), showTypedForms},
    {"cautions", Menu::Help, QT_TRANSLATE_NOOP("doorloom::Window", "&Cautions and limits"), "",
     QT_TRANSLATE_NOOP("doorloom::Window", "What to mind, and what is not examined."), showCautions},
};

constexpr Menu menus[] = {Menu::Job, Menu::Edit, Menu::Draw, Menu::Look, Menu::Go, Menu::Help};

void addRecentFiles(Window& window, QMenu* menu)
{
    QMenu* recent = menu->addMenu(Window::tr("Open re&cent"));
    recent->setObjectName("recent");
    QObject::connect(recent, &QMenu::aboutToShow, &window, [&window, recent] {
        recent->clear();
        for (const QString& file : recentFiles())
            recent->addAction(file, &window, [&window, file] { window.openFile(file); });
        recent->setEnabled(true);
    });
    QMenu* samples = menu->addMenu(Window::tr("Open a sa&mple"));
    for (const char* name : {"restroom-public.doorjob", "restroom-staff.doorjob",
                             "restroom-public-broken.doorjob", "restroom-staff-broken.doorjob",
                             "boarding-house-forty.doorjob", "vestibule.doorjob"})
        samples->addAction(QString(name).section('.', 0, 0), &window,
                           [&window, name] { window.openSample(name); });
}

void addPanels(Window& window, QMenu* menu)
{
    menu->addSeparator();
    for (QDockWidget* dock : window.findChildren<QDockWidget*>(QString(), Qt::FindDirectChildrenOnly))
        menu->addAction(dock->toggleViewAction());
}

QAction* made(const Action& action, Window& window)
{
    auto* made = new QAction(Window::tr(action.words), &window);
    made->setObjectName(action.key);
    if (*action.shortcut)
        made->setShortcuts(QKeySequence::listFromString(action.shortcut, QKeySequence::PortableText));
    made->setToolTip(made->shortcut().isEmpty()
                         ? Window::tr(action.tip)
                         : Window::tr("%1 (%2)").arg(Window::tr(action.tip),
                                                     made->shortcut().toString(QKeySequence::NativeText)));
    made->setStatusTip(Window::tr(action.tip));
    made->setCheckable(action.checked);
    QObject::connect(made, &QAction::triggered, &window, [&window, run = action.run] { run(window); });
    return made;
}

} // namespace

std::span<const Action> allActions()
{
    return actions;
}

const char* titleOf(Menu menu)
{
    switch (menu) {
    case Menu::Job:
        return QT_TRANSLATE_NOOP("doorloom::Window", "&Job");
    case Menu::Edit:
        return QT_TRANSLATE_NOOP("doorloom::Window", "&Edit");
    case Menu::Draw:
        return QT_TRANSLATE_NOOP("doorloom::Window", "&Draw");
    case Menu::Look:
        return QT_TRANSLATE_NOOP("doorloom::Window", "&Look");
    case Menu::Go:
        return QT_TRANSLATE_NOOP("doorloom::Window", "&Go");
    case Menu::Help:
        break;
    }
    return QT_TRANSLATE_NOOP("doorloom::Window", "&Help");
}

void makeActions(Window& window)
{
    QToolBar* bar = window.addToolBar(Window::tr("Bar"));
    bar->setObjectName("bar");
    bar->setMovable(false);
    bar->setToolButtonStyle(Qt::ToolButtonTextOnly);
    for (const Menu each : menus) {
        QMenu* menu = window.menuBar()->addMenu(Window::tr(titleOf(each)));
        for (const Action& action : actions) {
            if (action.menu != each)
                continue;
            if (action.startsGroup)
                menu->addSeparator();
            QAction* item = made(action, window);
            menu->addAction(item);
            if (action.onBar)
                bar->addAction(item);
            if (std::string_view(action.key) == "openJob")
                addRecentFiles(window, menu);
        }
        if (each == Menu::Look)
            addPanels(window, menu);
        if (each != menus[std::size(menus) - 1] && each != Menu::Look)
            bar->addSeparator();
    }
}

void refreshActions(Window& window)
{
    for (const Action& action : actions) {
        auto* item = window.findChild<QAction*>(action.key, Qt::FindDirectChildrenOnly);
        if (!item)
            continue;
        if (action.enabled)
            item->setEnabled(action.enabled(window));
        if (action.checked)
            item->setChecked(action.checked(window));
    }
    const auto named = [&](const char* key, const QString& words) {
        if (auto* item = window.findChild<QAction*>(key, Qt::FindDirectChildrenOnly)) {
            item->setText(words);
            item->setIconText(QString(words).remove('&').section(':', 0, 0));
        }
    };
    const QUndoStack& history = window.open().history();
    named("undo", history.canUndo() ? Window::tr("&Undo: %1").arg(history.undoText()) : Window::tr("&Undo"));
    named("redo", history.canRedo() ? Window::tr("&Redo: %1").arg(history.redoText()) : Window::tr("&Redo"));
}

} // namespace doorloom
