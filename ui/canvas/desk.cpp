#include "canvas/desk.h"

#include "canvas/walk.h"

#include "edit/drawing.h"
#include "edit/nexttag.h"

#include <QApplication>
#include <QPainter>
#include <QScreen>

#include <algorithm>
#include <cmath>

namespace doorloom {
namespace {

constexpr double leastScale = 0.01, mostScale = 8;
constexpr int fitMargin = 150;
constexpr double mostFit = 1.5; // a single device does not fill the window
constexpr int focusGap = 14;

// Pixels of the widget in one tenth of a millimetre at true size, as the screen says of itself.
double trueSize(const QWidget& widget)
{
    const QScreen* screen = widget.screen();
    const double physical = screen ? screen->physicalDotsPerInch() : 0;
    const double dots = physical >= 60 && physical <= 300 ? physical : widget.logicalDpiX();
    return dots / 254;
}

void mark(std::vector<bool>& list, const auto& slotted, std::uint32_t number)
{
    if (slotted.find(number))
        list[slotted.indexOf(number)] = true;
}

} // namespace

// ---- Steps

bool Steps::add(const Change& change)
{
    if (problem_)
        return false;
    const Result<Change> made = applyChange(job_, change);
    if (!made.ok())
        return refuse(made.problem());
    change_ = joined(std::move(change_), change);
    return true;
}

bool Steps::add(const Result<Change>& change)
{
    return change.ok() ? add(change.value()) : refuse(change.problem());
}

bool Steps::refuse(const Problem& problem)
{
    if (!problem_)
        problem_ = problem;
    return false;
}

// ---- Desk

Desk::Desk(SheetView& view, OpenJob& open, Selection& selection)
    : widget_(view), open_(open), selection_(selection), drawing_(view.font(), Language::English)
{
    view_.ratio = view.devicePixelRatioF();
    view_.pixelsPerUnit = trueSize(view) * view_.ratio;
    settling_.setSingleShot(true);
    QObject::connect(&settling_, &QTimer::timeout, &view, [this] {
        repaint(drawing_.settleMore(job()));
        settleLater();
    });
    show({});
}

void Desk::show(SheetId sheet)
{
    stop();
    drawing_.show(job(), sheet);
    focus_ = {};
    prepareEmphasis();
    repaintAll();
    settleLater();
}

// Ways that were not found at once are found between events, a few milliseconds at a time, or on a thread.
void Desk::settleLater()
{
    constexpr int askAgain = 15; // milliseconds
    if (!drawing_.isSettled())
        settling_.start(drawing_.isWaitingForThread() ? askAgain : 0);
}

void Desk::setLanguage(Language language)
{
    drawing_ = Drawing(widget_.font(), language);
    painter_ = SheetPainter();
    show(drawing_.sheet());
}

void Desk::refresh(const Touched& touched)
{
    if (touched.everything) // rows of another job may have the same numbers
        stop();
    dropStale();
    const Area changed = drawing_.refresh(job(), touched);
    prepareEmphasis();
    if (touched.everything)
        repaintAll();
    else
        repaint(changed);
    const bool focusGone = focus_.hit && !drawing_.devices().find(focus_.hit.row) &&
                           !drawing_.splices().find(focus_.hit.row) && !drawing_.notes().find(focus_.hit.row);
    if (focusGone)
        focus_ = {};
    showGesture();
    settleLater();
}

void Desk::dropStale()
{
    if (std::visit([&](const auto& each) { return isStale(*this, each); }, gesture_))
        stop();
}

void Desk::displace(const std::vector<std::uint32_t>& rows, Point by)
{
    const Area changed = drawing_.displace(job(), rows, by);
    prepareEmphasis();
    repaint(changed);
}

void Desk::repaint(const Area& area)
{
    if (!area.isEmpty())
        widget_.update(view_.widgetRect(area) & widget_.rect());
}

void Desk::repaintAll()
{
    widget_.update();
}

void Desk::emphasise()
{
    prepareEmphasis();
    repaintAll();
}

void Desk::prepareEmphasis()
{
    const auto clear = [](std::vector<bool>& list, std::size_t size) { list.assign(size, false); };
    clear(emphasis_.devices, drawing_.devices().all().size());
    clear(emphasis_.conductors, drawing_.conductors().all().size());
    clear(emphasis_.cables, drawing_.cables().all().size());
    clear(emphasis_.splices, drawing_.splices().all().size());
    clear(emphasis_.notes, drawing_.notes().all().size());
    clear(emphasis_.litDevices, drawing_.devices().all().size());
    clear(emphasis_.litConductors, drawing_.conductors().all().size());
    for (const std::uint32_t row : selection_.rows()) {
        mark(emphasis_.devices, drawing_.devices(), row);
        mark(emphasis_.conductors, drawing_.conductors(), row);
        mark(emphasis_.cables, drawing_.cables(), row);
        mark(emphasis_.splices, drawing_.splices(), row);
        mark(emphasis_.notes, drawing_.notes(), row);
    }
    for (const Origin& origin : selection_.lit()) {
        mark(emphasis_.litDevices, drawing_.devices(), origin.device.number);
        mark(emphasis_.litConductors, drawing_.conductors(), origin.conductor.number);
    }
}

void Desk::paint(const QRect& widgets)
{
    const double ratio = view_.ratio;
    const QRect pixels(QPoint(static_cast<int>(std::floor(widgets.left() * ratio)),
                              static_cast<int>(std::floor(widgets.top() * ratio))),
                       QPoint(static_cast<int>(std::ceil((widgets.right() + 1) * ratio)) - 1,
                              static_cast<int>(std::ceil((widgets.bottom() + 1) * ratio)) - 1));
    QPainter painter(&widget_);
    painter.scale(1 / ratio, 1 / ratio);
    painter_.setUp(drawing_, view_, look());
    painter_.paint(painter, drawing_, emphasis_, pixels);
    paintGesture(*this, gesture_, painter, painter_);
    if (focus_.isShown && widget_.hasFocus())
        painter_.drawOutline(painter, focusArea(drawing_, focus_.hit).grownBy(focusGap), look().focus,
                             2 * painter_.hair(), true);
}

// ---- Looking

void Desk::setRatio(double ratio)
{
    const double scaled = trueSize(widget_) * view_.scale * ratio;
    if (ratio == view_.ratio && scaled == view_.pixelsPerUnit)
        return;
    const double factor = scaled / view_.pixelsPerUnit;
    view_.offset = (QPointF(view_.offset) * factor).toPoint();
    view_.ratio = ratio;
    view_.pixelsPerUnit = scaled;
    repaintAll();
}

void Desk::setScale(double scale, QPointF about)
{
    scale = std::clamp(std::isfinite(scale) ? scale : 1.0, leastScale, mostScale);
    const Point under = view_.point(about);
    isFitted_ = false;
    view_.scale = scale;
    view_.pixelsPerUnit = trueSize(widget_) * scale * view_.ratio;
    view_.offset += view_.pixel(under) - (about * view_.ratio).toPoint();
    holdView();
    repaintAll();
    emit widget_.scaleChanged();
}

void Desk::scroll(QPoint pixels)
{
    isFitted_ = false;
    const QPoint before = view_.offset;
    view_.offset -= (QPointF(pixels) * view_.ratio).toPoint();
    holdView();
    const QPointF gone = QPointF(before - view_.offset) / view_.ratio;
    if (gone.toPoint() != gone || !widget_.isVisible())
        repaintAll();
    else if (!gone.isNull())
        widget_.scroll(static_cast<int>(gone.x()), static_cast<int>(gone.y()));
}

void Desk::holdView()
{
    const Area all = drawing_.bounds();
    if (all.isEmpty())
        return;
    const QRect sheet = view_.rect(all).translated(view_.offset);
    const QSize size = widget_.size() * view_.ratio;
    const int margin = std::min(size.width(), size.height()) / 8;
    view_.offset.setX(std::clamp(view_.offset.x(), sheet.left() - size.width() + margin,
                                 std::max(sheet.right() - margin, sheet.left() - size.width() + margin)));
    view_.offset.setY(std::clamp(view_.offset.y(), sheet.top() - size.height() + margin,
                                 std::max(sheet.bottom() - margin, sheet.top() - size.height() + margin)));
}

void Desk::fit()
{
    const Area all = drawing_.bounds().grownBy(fitMargin);
    if (all.isEmpty()) {
        setScale(1, widget_.rect().center());
        return;
    }
    const double unit = trueSize(widget_);
    const double scale =
        std::min({mostFit, widget_.width() / (all.width() * unit), widget_.height() / (all.height() * unit)});
    setScale(scale, widget_.rect().center());
    centreOn(all);
    isFitted_ = true;
}

void Desk::fitAgain()
{
    if (isFitted_)
        fit();
}

void Desk::centreOn(const Area& area)
{
    isFitted_ = false;
    const QSize size = widget_.size() * view_.ratio;
    view_.offset += view_.pixel(area.middle()) - QPoint(size.width() / 2, size.height() / 2);
    repaintAll();
}

int Desk::reach() const
{
    return std::clamp(static_cast<int>(std::lround(4 * view_.ratio / view_.pixelsPerUnit)), 6, 60);
}

Pointer Desk::pointerAt(QPointF at, Qt::KeyboardModifiers keys) const
{
    const Point point = view_.point(at);
    const bool large = terminalPitch * view_.pixelsPerUnit / view_.ratio >= 6;
    return {at.toPoint(), point,
            hitAt(drawing_, point, reach(), large ? Pointed::Terminals : Pointed::Devices), keys, false};
}

// ---- Doing

void Desk::useTool(SheetView::Tool tool)
{
    stop();
    if (tool == tool_)
        return;
    tool_ = tool;
    repaintAll();
    emit widget_.toolChanged();
}

void Desk::press(const Pointer& pointer)
{
    const bool taken = std::visit([&](auto each) { return pressedAgain(*this, each, pointer); }, gesture_);
    if (taken)
        return;
    stop();
    struct Row {
        SheetView::Tool tool;
        void (*press)(Desk&, const Pointer&);
    };
    static constexpr Row rows[] = {
        {SheetView::Tool::Choose, beginChoosing}, {SheetView::Tool::Place, placeHere},
        {SheetView::Tool::Pull, beginPulling},    {SheetView::Tool::Wire, beginJoining},
        {SheetView::Tool::Splice, spliceHere},    {SheetView::Tool::Note, noteHere}};
    for (const Row& row : rows)
        if (row.tool == tool_)
            row.press(*this, pointer);
}

void Desk::move(const Pointer& pointer)
{
    ghost = onGrid(pointer.point);
    std::visit([&](auto& each) { moved(*this, each, pointer); }, gesture_);
    showGesture();
}

void Desk::release(const Pointer& pointer)
{
    std::visit([&](const auto each) { released(*this, each, pointer); }, Gesture(gesture_));
    showGesture();
}

bool Desk::isHeld() const
{
    return std::visit(
        [](const auto& each) {
            if constexpr (requires { each.isHeld; })
                return each.isHeld;
            else
                return !std::is_same_v<std::decay_t<decltype(each)>, Idle>;
        },
        gesture_);
}

void Desk::begin(Gesture gesture)
{
    gesture_ = std::move(gesture);
    showGesture();
}

void Desk::stop()
{
    const Gesture over = std::exchange(gesture_, Idle{});
    std::visit([&](const auto& each) { stopped(*this, each); }, over);
    showGesture();
}

void Desk::showGesture()
{
    const Area now = reachOf(*this, gesture_);
    repaint(together(gestureShown_, now));
    gestureShown_ = now;
}

bool Desk::make(const Message& what, const Result<Change>& change)
{
    if (!change.ok()) {
        refuse(change.problem());
        return false;
    }
    if (const std::optional<Problem> problem = open_.make(what, change.value())) {
        refuse(*problem);
        return false;
    }
    return true;
}

bool Desk::make(const Message& what, const Steps& steps)
{
    return steps.problem() ? make(what, Result<Change>(*steps.problem()))
                           : make(what, Result<Change>(steps.change()));
}

void Desk::refuse(const Problem& problem)
{
    emit widget_.refused(problem);
}

bool Desk::isFarEnough(QPoint from, QPoint to) const
{
    return (to - from).manhattanLength() >= QApplication::startDragDistance() / 2;
}

SheetId Desk::sheetFor(Steps& steps) const
{
    if (drawing_.sheet())
        return drawing_.sheet();
    const auto added = addSheet(steps.job(), steps.numbers, nextSheetTitle(steps.job()));
    if (!added.ok()) {
        steps.refuse(added.problem());
        return {};
    }
    steps.add(added.value().second);
    return added.value().first;
}

void Desk::setFocus(const Hit& hit, bool isShown)
{
    repaint(focusArea(drawing_, focus_.hit).grownBy(2 * focusGap));
    focus_ = {hit, isShown};
    repaint(focusArea(drawing_, focus_.hit).grownBy(2 * focusGap));
}

} // namespace doorloom
