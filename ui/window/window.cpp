#include "window/window.h"

#include "catalogue/stockcables.h"
#include "edit/details.h"
#include "edit/drawing.h"
#include "edit/undowords.h"
#include "file/jobfile.h"
#include "file/ownshelf.h"
#include "openjob/shown.h"
#include "panels/details.h"
#include "panels/findingspanel.h"
#include "panels/lockspanel.h"
#include "panels/schedulepanel.h"
#include "panels/shelf.h"
#include "panels/typedentry.h"
#include "window/actions.h"
#include "window/askings.h"
#include "window/noticebar.h"
#include "window/recentfiles.h"

#include <QCloseEvent>
#include <QDockWidget>
#include <QFileDialog>
#include <QFileInfo>
#include <QKeyEvent>
#include <QLabel>
#include <QSettings>
#include <QStatusBar>
#include <QTabBar>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

constexpr auto fileFilter = QT_TRANSLATE_NOOP("doorloom::Window", "Jobs (*.doorjob)");

template <class Panel>
QDockWidget* dock(QMainWindow* window, const char* key, const QString& title, Panel* panel,
                  Qt::DockWidgetArea area)
{
    auto* dock = new QDockWidget(title, window);
    dock->setObjectName(key);
    dock->setWidget(panel);
    dock->setFeatures(QDockWidget::DockWidgetClosable | QDockWidget::DockWidgetMovable);
    window->addDockWidget(area, dock);
    return dock;
}

bool isInJob(const Job& job, std::uint32_t number)
{
    return job.devices.find({number}) || job.conductors.find({number}) || job.cables.find({number}) ||
           job.splices.find({number}) || job.notes.find({number}) || job.openings.find({number});
}

} // namespace

Window::Window(Surroundings surroundings, QWidget* parent)
    : QMainWindow(parent), surroundings_(std::move(surroundings)), programKinds_(surroundings_.kinds.size())
{
    setObjectName("window");
    readOwnKinds();
    setDockOptions(AnimatedDocks | AllowNestedDocks);
    buildMiddle();
    buildPanels();
    makeActions(*this);
    connectParts();
    const QSettings settings;
    restoreGeometry(settings.value("geometry").toByteArray());
    arranged_ = restoreState(settings.value("panels").toByteArray());
    beginEmpty();
}

Window::~Window() = default;

Stock Window::stock() const
{
    return {surroundings_.kinds, stockCables()};
}

// Those whose names the program has taken since stay in their folder, and are told of.
void Window::readOwnKinds()
{
    OwnShelf own = surroundings_.ownKinds.empty() ? OwnShelf{} : readOwnShelf(surroundings_.ownKinds);
    unreadKinds_ = std::move(own.unread);
    for (Kind& kind : own.kinds)
        if (std::optional<Problem> problem = objectionTo(kind)) {
            problem->where = surroundings_.ownKinds + "/" + kind.name + ".json";
            unreadKinds_.push_back(*std::move(problem));
        } else {
            surroundings_.kinds.push_back(std::move(kind));
        }
}

std::optional<Problem> Window::objectionTo(const Kind& kind) const
{
    const auto ours = surroundings_.kinds.begin(), end = ours + static_cast<std::ptrdiff_t>(programKinds_);
    if (std::none_of(ours, end, [&](const Kind& each) { return each.name == kind.name; }))
        return std::nullopt;
    return Problem{.what = {{.en = "The program itself has a kind '{name}'.",
                             .es = "El propio programa tiene un tipo '{name}'."},
                            {{"name", kind.name}}},
                   .where = "name",
                   .remedy = Text{.en = "Give yours another name.", .es = "Dé otro nombre al suyo."}};
}

void Window::tellUnreadKinds()
{
    QStringList lines;
    if (!notice_->words().isEmpty())
        lines << notice_->words();
    for (const Problem& each : unreadKinds_)
        lines << shown(each);
    notice_->say(lines.join('\n'));
}

const Kind* Window::ownKind(const std::string& name) const
{
    const auto& kinds = surroundings_.kinds;
    const auto found = std::find_if(kinds.begin() + static_cast<std::ptrdiff_t>(programKinds_), kinds.end(),
                                    [&](const Kind& each) { return each.name == name; });
    return found == kinds.end() ? nullptr : &*found;
}

std::optional<Problem> Window::keepOwnKind(const Kind& kind)
{
    std::optional<Problem> problem;
    if (!surroundings_.ownKinds.empty())
        if (const Result<Done> kept = keepOnOwnShelf(surroundings_.ownKinds, kind); !kept.ok())
            problem = kept.problem();
    std::vector<Kind>& kinds = surroundings_.kinds;
    std::erase_if(kinds, [&](const Kind& each) { return each.name == kind.name; });
    kinds.push_back(kind);
    shelf_->setStock(stock());
    entry_->setStock(stock());
    return problem;
}

void Window::buildMiddle()
{
    auto* middle = new QWidget(this);
    notice_ = new NoticeBar(middle);
    sheet_ = new SheetView(open_, selection_, middle);
    sheet_->setObjectName("sheet");
    sheets_ = new QTabBar(middle);
    sheets_->setObjectName("sheets");
    sheets_->setAccessibleName(tr("Sheets"));
    sheets_->setShape(QTabBar::RoundedSouth);
    sheets_->setDrawBase(false);
    sheets_->setExpanding(false);
    entry_ = new TypedEntry(open_, selection_, stock(), middle);
    auto* layout = new QVBoxLayout(middle);
    layout->setContentsMargins({});
    layout->setSpacing(0);
    layout->addWidget(notice_);
    layout->addWidget(sheet_, 1);
    layout->addWidget(sheets_);
    layout->addWidget(entry_);
    setCentralWidget(middle);
    hovered_ = new QLabel(this);
    hovered_->setObjectName("hovered");
    statusBar()->addWidget(hovered_, 1);
    auto* caution = new QLabel(tr("Isolate and prove dead before work · local codes decide"), this);
    caution->setToolTip(tr("No finding is not approval. Help › Cautions says what is not examined."));
    statusBar()->addPermanentWidget(caution);
}

void Window::buildPanels()
{
    shelf_ = new Shelf(open_, stock(), this);
    details_ = new Details(open_, selection_, this);
    findings_ = new FindingsPanel(open_, selection_, this);
    schedule_ = new SchedulePanel(open_, selection_, this);
    QDockWidget* shelf = dock(this, "shelf", tr("Shelf"), shelf_, Qt::LeftDockWidgetArea);
    QDockWidget* details = dock(this, "details", tr("Details"), details_, Qt::RightDockWidgetArea);
    QDockWidget* findings = dock(this, "findings", tr("Findings"), findings_, Qt::RightDockWidgetArea);
    QDockWidget* schedule =
        dock(this, "schedule", tr("Terminal schedule"), schedule_, Qt::BottomDockWidgetArea);
    locks_ = new LocksPanel(open_, selection_, this);
    tabifyDockWidget(schedule, dock(this, "locks", tr("Locks"), locks_, Qt::BottomDockWidgetArea));
    schedule->raise();
    setCorner(Qt::BottomRightCorner, Qt::RightDockWidgetArea);
    const int em = fontMetrics().averageCharWidth();
    resizeDocks({shelf, details}, {34 * em, 44 * em}, Qt::Horizontal);
    resizeDocks({findings, details}, {3, 2}, Qt::Vertical);
    resizeDocks({schedule}, {7 * fontMetrics().lineSpacing()}, Qt::Vertical);
}

// Where there is little room, at a large scale, panels lie one before the other.
void Window::arrangePanels()
{
    constexpr int fewLines = 44, fewLetters = 90;
    const auto dockOf = [](QWidget* panel) { return qobject_cast<QDockWidget*>(panel->parentWidget()); };
    const bool isLow = height() < fewLines * fontMetrics().lineSpacing();
    const bool isNarrow = width() < fewLetters * fontMetrics().averageCharWidth();
    if (isLow || isNarrow)
        tabifyDockWidget(dockOf(findings_), dockOf(details_));
    if (isNarrow) {
        tabifyDockWidget(dockOf(details_), dockOf(shelf_));
        tabifyDockWidget(dockOf(shelf_), dockOf(schedule_));
    }
    dockOf(findings_)->raise();
    layout()->activate(); // it makes the bars of tabs
    for (QTabBar* tabs : findChildren<QTabBar*>(QString(), Qt::FindDirectChildrenOnly))
        tabs->setElideMode(Qt::ElideNone);
}

void Window::showEvent(QShowEvent* event)
{
    QMainWindow::showEvent(event);
    if (!std::exchange(arranged_, true))
        arrangePanels();
}

void Window::connectParts()
{
    const auto jump = [this](const std::vector<std::uint32_t>& rows) { jumpTo(rows); };
    const auto refuse = [this](const Problem& problem) { show(problem); };
    const auto refresh = [this] { refreshActions(*this); };

    connect(&open_, &OpenJob::jobChanged, this, &Window::jobChanged);
    connect(&open_, &OpenJob::fileChanged, this, &Window::showTitle);
    connect(&open_, &OpenJob::fileChanged, this, refresh);
    connect(&open_, &OpenJob::changedOnDisk, this, [this] { askAboutNewerFile(*this); });
    connect(&open_, &OpenJob::openElsewhere, this, [this] { tellOpenElsewhere(*this); });
    connect(&open_, &OpenJob::journalFailed, this, refuse);
    connect(&open_.history(), &QUndoStack::indexChanged, this, refresh);
    connect(&selection_, &Selection::changed, this, refresh);

    connect(sheet_, &SheetView::refused, this, refuse);
    connect(sheet_, &SheetView::hovered, this,
            [this](const Message& words) { hovered_->setText(shown(words)); });
    connect(sheet_, &SheetView::toolChanged, this, refresh);
    connect(sheet_, &SheetView::sheetChanged, this, &Window::showSheets);
    connect(sheet_, &SheetView::activated, this, [this](std::uint32_t row) {
        selection_.choose({row});
        details_->parentWidget()->show();
        details_->parentWidget()->raise();
        details_->startTyping();
    });
    connect(sheets_, &QTabBar::currentChanged, this, &Window::showSheetAt);
    connect(sheets_, &QTabBar::tabBarDoubleClicked, this, [this] { askForSheetTitle(*this); });

    connect(shelf_, &Shelf::picked, this, [this](const Kind& kind) { sheet_->place(kind, shelf_->place()); });
    connect(shelf_, &Shelf::wanted, this,
            [this](const Kind& kind) { sheet_->placeAtFreeSpot(kind, shelf_->place()); });
    connect(shelf_, &Shelf::cablePicked, this, [this](const CableType& type) {
        sheet_->pull(type);
        sheet_->setFocus();
    });
    connect(shelf_, &Shelf::placeWanted, this, &Window::makePlace);

    connect(entry_, &TypedEntry::jump, this, jump);
    connect(entry_, &TypedEntry::left, this, [this] { sheet_->setFocus(); });
    connect(findings_, &FindingsPanel::jump, this, jump);
    connect(findings_, &FindingsPanel::refused, this, refuse);
    connect(findings_, &FindingsPanel::setAsideAsked, this,
            [this](const Finding& finding) { askToSetAside(*this, finding); });
    connect(schedule_, &SchedulePanel::jump, this, jump);
    connect(locks_, &LocksPanel::jump, this, jump);
    connect(details_, &Details::openingAsked, this, [this] { addAnOpening(*this); });
    connect(details_, &Details::titleBlockAsked, this, [this] { askForTitleBlock(*this); });
}

void Window::jobChanged(const Touched& touched)
{
    std::vector<std::uint32_t> still = selection_.rows();
    std::erase_if(still, [&](std::uint32_t number) { return !isInJob(open_.job(), number); });
    selection_.choose(touched.everything ? std::vector<std::uint32_t>() : std::move(still));
    const auto isSheet = [&](std::uint32_t number) {
        return open_.job().sheets.find({number}) || number == sheet_->sheet().number;
    };
    if (touched.everything || std::any_of(touched.rows.begin(), touched.rows.end(), isSheet))
        showSheets();
    notice_->say({});
    refreshActions(*this);
}

void Window::show(const std::optional<Problem>& problem)
{
    notice_->say(problem ? shown(*problem) : QString());
}

void Window::make(const Message& what, const Result<Change>& change)
{
    show(change.ok() ? open_.make(what, change.value()) : std::optional(change.problem()));
}

void Window::jumpTo(const std::vector<std::uint32_t>& rows)
{
    sheet_->bringIntoView(rows);
}

void Window::showSheets()
{
    const QSignalBlocker quiet(sheets_);
    while (sheets_->count() > 0)
        sheets_->removeTab(0);
    for (const Sheet* each : sheetsInOrder(open_.job())) {
        sheets_->addTab(shown(each->title));
        if (each->id == sheet_->sheet())
            sheets_->setCurrentIndex(sheets_->count() - 1);
    }
    sheets_->setVisible(sheets_->count() > 1);
}

void Window::showSheetAt(int place)
{
    const std::vector<const Sheet*> sheets = sheetsInOrder(open_.job());
    if (place >= 0 && static_cast<std::size_t>(place) < sheets.size())
        sheet_->showSheet(sheets[static_cast<std::size_t>(place)]->id);
}

// "CAB1 cabinet above ceiling": a tag, and what people call it.
void Window::makePlace(const QString& words)
{
    Numbers numbers(open_.job());
    Place place;
    place.tag = words.section(' ', 0, 0).toUpper().toStdString();
    place.words = words.section(' ', 1).trimmed().toStdString();
    place.isBox = true;
    const auto made = addPlace(open_.job(), numbers, place);
    if (!made.ok())
        return show(made.problem());
    make(Message{doing::add, {{"names", place.tag}}}, made.value().second);
}

// ---- Files

void Window::showTitle()
{
    const QString name =
        open_.path().empty() ? tr("Untitled job") : QFileInfo(shown(open_.path())).fileName();
    setWindowTitle(open_.readOnly() ? tr("%1[*] (read only) – Doorloom").arg(name)
                                    : tr("%1[*] – Doorloom").arg(name));
    setWindowModified(open_.unsaved());
}

void Window::beginEmpty()
{
    if (!mayLeaveJob())
        return;
    Job job;
    Numbers numbers(job);
    if (const auto sheet = addSheet(job, numbers, "1"); sheet.ok()) [[maybe_unused]]
        const auto back = applyChange(job, sheet.value().second);
    open_.begin(std::move(job));
    showTitle();
}

bool Window::openFile(const QString& path)
{
    if (!mayLeaveJob())
        return false;
    if (const auto problem = open_.open(path.toStdString())) {
        show(problem);
        return false;
    }
    remember(path);
    sheet_->fit();
    offerRecovery();
    return true;
}

void Window::openSample(const QString& name)
{
    if (!mayLeaveJob())
        return;
    const Result<Job> sample = readJobFile(surroundings_.samples + "/" + name.toStdString());
    if (!sample.ok())
        return show(sample.problem());
    open_.begin(sample.value());
    showTitle();
    sheet_->fit();
}

void Window::askForFile()
{
    const QString path = QFileDialog::getOpenFileName(this, tr("Open a job"), {}, tr(fileFilter));
    if (!path.isEmpty())
        openFile(path);
}

bool Window::save()
{
    if (open_.path().empty())
        return saveAs();
    const std::optional<Problem> problem = open_.save();
    show(problem);
    return !problem;
}

bool Window::saveAs()
{
    QString path =
        QFileDialog::getSaveFileName(this, tr("Save the job as"), shown(open_.path()), tr(fileFilter));
    if (path.isEmpty())
        return false;
    if (QFileInfo(path).suffix().isEmpty())
        path += ".doorjob";
    const std::optional<Problem> problem = open_.saveAs(path.toStdString());
    show(problem);
    if (!problem)
        remember(path);
    return !problem;
}

bool Window::mayLeaveJob()
{
    if (!open_.unsaved())
        return true;
    switch (askAboutUnsaved(*this)) {
    case Leaving::Save:
        return save();
    case Leaving::Forget:
        return true;
    case Leaving::Stay:
        break;
    }
    return false;
}

bool Window::recoverUnnamed()
{
    return open_.path().empty() && offerRecovery();
}

bool Window::offerRecovery()
{
    const std::optional<OpenJob::Recovered> found = open_.recoverable();
    if (!found)
        return false;
    if (!wantsRecovery(*this, *found)) {
        open_.forgetRecoverable();
        return false;
    }
    show(open_.recover());
    sheet_->fit();
    return true;
}

void Window::remember(const QString& path)
{
    rememberFile(path);
    refreshActions(*this);
}

void Window::keyPressEvent(QKeyEvent* event)
{
    if (event->key() != Qt::Key_Escape)
        return QMainWindow::keyPressEvent(event);
    show(std::optional<Problem>());
    sheet_->setFocus();
}

void Window::closeEvent(QCloseEvent* event)
{
    if (!mayLeaveJob()) {
        event->ignore();
        return;
    }
    QSettings settings;
    settings.setValue("geometry", saveGeometry());
    settings.setValue("panels", saveState());
    event->accept();
}

} // namespace doorloom
