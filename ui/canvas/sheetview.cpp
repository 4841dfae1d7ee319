#include "canvas/sheetview.h"

#include "canvas/accessiblesheet.h"
#include "canvas/insideview.h"
#include "canvas/words.h"
#include "edit/drawing.h"
#include "edit/undowords.h"
#include "sheet/tidy.h"

#include <QMouseEvent>
#include <QPaintEvent>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace doorloom {
namespace {

// The sheet on which the first of the rows that is on any stands.
SheetId sheetOf(const Job& job, const std::vector<std::uint32_t>& rows)
{
    const auto placed = [&](std::uint32_t row) -> SheetId {
        const Placement* placement = placementOf(job, row);
        return placement ? placement->sheet : SheetId{};
    };
    for (const std::uint32_t row : rows) {
        if (const SheetId sheet = placed(row))
            return sheet;
        if (const Note* note = job.notes.find({row}))
            return note->sheet;
        const Conductor* conductor = job.conductors.find({row});
        if (!conductor)
            continue;
        for (const End* end : {&conductor->from, &conductor->to}) {
            const Landing* landing = landingOf(*end);
            const SpliceId* splice = spliceOf(*end);
            if (const SheetId sheet = placed(landing ? landing->device.number : splice ? splice->number : 0))
                return sheet;
        }
    }
    return {};
}

// Of whatever is drawn for the row; empty when nothing is.
Area areaOfRow(const Drawing& drawing, std::uint32_t row)
{
    Area area;
    const auto take = [&](const auto& list) {
        if (const auto* drawn = list.find(row))
            area = together(area, drawn->area);
    };
    take(drawing.devices());
    take(drawing.conductors());
    take(drawing.cables());
    take(drawing.splices());
    take(drawing.notes());
    take(drawing.frames());
    return area;
}

// Below the devices of the place, else below everything; always where nothing is.
Point freeSpot(const Drawing& drawing, PlaceId place, const Area& shape)
{
    Area beside;
    for (const DeviceDrawn& device : drawing.devices().all())
        if (device.id && place && device.place == place)
            beside = together(beside, device.area);
    const Area all = drawing.bounds();
    Point at = beside.isEmpty() ? (all.isEmpty() ? Point{200, 300} : Point{all.left + 100, all.bottom + 200})
                                : Point{beside.left, beside.bottom + 150};
    const auto isTaken = [&] {
        const Area here = shape.movedBy(at).grownBy(50);
        return std::any_of(drawing.devices().all().begin(), drawing.devices().all().end(),
                           [&](const DeviceDrawn& each) { return each.area.meets(here); });
    };
    while (isTaken())
        at.y += 2 * terminalPitch;
    return at;
}

constexpr double zoomStep = 1.25;
constexpr int wheelPixels = 60; // for one notch

} // namespace

SheetView::SheetView(OpenJob& open, Selection& selection, QWidget* parent)
    : QWidget(parent), inside_(std::make_unique<Inside>(*this, open, selection))
{
    makeSheetAccessible();
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Sheet"));
    setMinimumSize(200, 150);
    connect(&open, &OpenJob::jobChanged, this, [this](const Touched& touched) {
        const SheetId before = sheet();
        inside_->desk.refresh(touched);
        if (touched.everything)
            fit();
        tellChange();
        if (sheet() != before)
            emit sheetChanged();
    });
    connect(&selection, &Selection::changed, this, [this] { inside_->desk.emphasise(); });
    connect(&selection, &Selection::litChanged, this, [this] { inside_->desk.emphasise(); });
}

SheetView::~SheetView() = default;

// ---- Sheets and scale

SheetId SheetView::sheet() const
{
    return inside_->desk.drawing().sheet();
}

void SheetView::showSheet(SheetId sheet)
{
    if (sheet == this->sheet())
        return;
    inside_->desk.show(sheet);
    fit();
    emit sheetChanged();
}

void SheetView::setLanguage(Language language)
{
    inside_->desk.setLanguage(language);
}

double SheetView::scale() const
{
    return inside_->desk.view().scale;
}

void SheetView::scaleTo(double scale)
{
    inside_->desk.setScale(scale, rect().center());
}

void SheetView::scaleBy(double factor)
{
    scaleTo(scale() * factor);
}

void SheetView::fit()
{
    inside_->desk.fit();
}

// The sheet that most of the rows are on, and the rows in the middle of it; smaller when they would not fit.
void SheetView::bringIntoView(const std::vector<std::uint32_t>& rows)
{
    Desk& desk = inside_->desk;
    const auto areaOfRows = [&] {
        Area area;
        for (const std::uint32_t row : rows)
            area = together(area, areaOfRow(desk.drawing(), row));
        return area;
    };
    Area area = areaOfRows();
    if (area.isEmpty()) {
        if (const SheetId other = sheetOf(desk.job(), rows); other && other != sheet()) {
            showSheet(other);
            area = areaOfRows();
        }
    }
    if (area.isEmpty() || desk.view().area(rect()).holds(area))
        return;
    const QRect needed = desk.view().widgetRect(area.grownBy(2 * terminalPitch));
    const double factor =
        std::min({1.0, double(width()) / needed.width(), double(height()) / needed.height()});
    if (factor < 1)
        scaleBy(factor);
    desk.centreOn(area);
}

// ---- Tools

SheetView::Tool SheetView::tool() const
{
    return inside_->desk.tool();
}

void SheetView::useTool(Tool tool)
{
    inside_->desk.useTool(tool);
    setCursor(tool == Tool::Choose ? Qt::ArrowCursor : Qt::CrossCursor);
}

void SheetView::place(const Kind& kind, PlaceId place)
{
    inside_->desk.kind = kind;
    inside_->desk.place = place;
    useTool(Tool::Place);
    update();
}

// To the right of what stands lowest and furthest, where nothing is; in view.
void SheetView::placeAtFreeSpot(const Kind& kind, PlaceId place)
{
    Desk& desk = inside_->desk;
    desk.kind = kind;
    desk.place = place;
    const StripShape shape = stripShape(kind, {"XX00", {}, {}}, Facing::Right, desk.language());
    const DeviceId id = putDevice(desk, freeSpot(desk.drawing(), place, shape.area));
    if (id)
        bringIntoView({id.number});
}

void SheetView::pull(const CableType& type)
{
    inside_->desk.cableType = type;
    useTool(Tool::Pull);
}

// ---- On what is chosen

void SheetView::nudge(int columns, int rows)
{
    Desk& desk = inside_->desk;
    std::vector<std::uint32_t> chosen;
    for (const std::uint32_t row : desk.selection().rows())
        if (desk.drawing().devices().find(row) || desk.drawing().splices().find(row) ||
            desk.drawing().notes().find(row))
            chosen.push_back(row);
    if (!chosen.empty() && (columns != 0 || rows != 0))
        moveBy(desk, chosen, {columns * gridStep, rows * gridStep});
}

void SheetView::align(Along edge)
{
    Desk& desk = inside_->desk;
    std::vector<Outline> outlines;
    for (const std::uint32_t row : desk.selection().rows())
        if (const DeviceDrawn* device = desk.drawing().devices().find(row))
            outlines.push_back({row, device->at(), {device->area.right, device->area.bottom}});
    constexpr Edge edges[] = {Edge::Left, Edge::Right, Edge::Top, Edge::Bottom};
    if (outlines.size() < 2)
        return;
    Steps steps(desk.job());
    settle(desk, steps);
    steps.add(alignRows(steps.job(), outlines, edges[static_cast<std::size_t>(edge)]));
    desk.make(undoWords(desk.job(), doing::align, desk.selection().rows()), steps);
}

void SheetView::turn()
{
    Desk& desk = inside_->desk;
    Steps steps(desk.job());
    settle(desk, steps);
    const Change turned = turnRows(steps.job(), desk.selection().rows());
    if (turned.steps.empty())
        return;
    steps.add(turned);
    desk.make(undoWords(desk.job(), doing::turn, desk.selection().rows()), steps);
}

void SheetView::letRun()
{
    Desk& desk = inside_->desk;
    const Change change = clearBends(desk.job(), desk.selection().rows());
    if (!change.steps.empty())
        desk.make(undoWords(desk.job(), doing::straighten, desk.selection().rows()), Result<Change>(change));
}

bool SheetView::isSettled() const
{
    return inside_->desk.drawing().isSettled();
}

void SheetView::tidy()
{
    Desk& desk = inside_->desk;
    Steps steps(desk.job());
    const SheetId sheet = desk.sheetFor(steps);
    steps.add(tidySheet(steps.job(), steps.numbers, sheet));
    if (steps.problem() || !steps.change().steps.empty())
        desk.make({doing::tidy, {}}, steps);
    fit();
}

Message SheetView::Inside::wordsOf(const Hit& hit) const
{
    static constexpr Text both = {.en = "{what} · {reading}", .es = "{what} · {reading}"};
    Message what = doorloom::wordsOf(desk.job(), desk.drawing(), hit);
    const Judged* judged = open.judged();
    const auto point = judged && judged->readings ? landingPointOf(desk.drawing(), hit) : std::nullopt;
    const Landing* terminal = point ? std::get_if<Landing>(&*point) : nullptr;
    Message reading = terminal ? judged->readings->at(*terminal) : Message{};
    if (reading == Message{})
        return what;
    return {both, {{"what", std::vector<Message>{std::move(what)}}, {"reading", std::vector<Message>{std::move(reading)}}}};
}

Message SheetView::wordsAt(QPoint point) const
{
    const Desk& desk = inside_->desk;
    return inside_->wordsOf(desk.pointerAt(point, Qt::NoModifier).hit);
}

// ---- Events

bool SheetView::event(QEvent* event)
{
    switch (event->type()) {
    case QEvent::Hide:
    case QEvent::WindowDeactivate:
        inside_->desk.stop();
        inside_->panning.reset();
        inside_->spaceHeld = false;
        break;
    case QEvent::PaletteChange:
    case QEvent::ScreenChangeInternal:
        update();
        break;
    default:
        break;
    }
    return QWidget::event(event);
}

void SheetView::paintEvent(QPaintEvent* event)
{
    inside_->desk.setRatio(devicePixelRatioF());
    inside_->desk.paint(event->rect());
}

void SheetView::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (!std::exchange(inside_->isFitted, true))
        fit();
}

void SheetView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    inside_->desk.fitAgain();
}

void SheetView::mousePressEvent(QMouseEvent* event)
{
    Desk& desk = inside_->desk;
    const bool pans =
        event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && inside_->spaceHeld);
    if (pans && !inside_->panning) {
        if (desk.isHeld()) // a second button gives up what the first began
            desk.stop();
        inside_->panning = event->pos();
        inside_->hasPanned = true;
        return;
    }
    const bool isOther = (event->buttons() & ~Qt::MouseButtons(event->button())) != Qt::NoButton;
    if (event->button() == Qt::RightButton) {
        if (desk.isBusy())
            desk.stop();
        return;
    }
    if (event->button() != Qt::LeftButton || isOther || inside_->panning)
        return;
    const Pointer pointer = desk.pointerAt(event->position(), event->modifiers());
    if (pointer.hit.what == Hit::What::Device || pointer.hit.what == Hit::What::Terminal ||
        pointer.hit.what == Hit::What::Splice)
        desk.setFocus(pointer.hit, false);
    desk.press(pointer);
}

void SheetView::mouseMoveEvent(QMouseEvent* event)
{
    Desk& desk = inside_->desk;
    if (inside_->panning) {
        desk.scroll(event->pos() - *inside_->panning);
        inside_->panning = event->pos();
        return;
    }
    if (desk.isHeld() && !event->buttons().testFlag(Qt::LeftButton)) // let go where nobody told this window
        desk.stop();
    const Pointer pointer = desk.pointerAt(event->position(), event->modifiers());
    desk.move(pointer);
    if (pointer.hit != inside_->hovered) {
        inside_->hovered = pointer.hit;
        emit hovered(inside_->wordsOf(pointer.hit));
    }
}

void SheetView::mouseReleaseEvent(QMouseEvent* event)
{
    const bool heldDown = (event->buttons() & (Qt::MiddleButton | Qt::LeftButton)) != Qt::NoButton;
    if (inside_->panning) {
        if (!heldDown)
            inside_->panning.reset();
        return;
    }
    if (event->button() == Qt::LeftButton)
        inside_->desk.release(inside_->desk.pointerAt(event->position(), event->modifiers()));
}

void SheetView::mouseDoubleClickEvent(QMouseEvent* event)
{
    Desk& desk = inside_->desk;
    const Pointer pointer = desk.pointerAt(event->position(), event->modifiers());
    const bool opens = event->button() == Qt::LeftButton && tool() == Tool::Choose && pointer.hit &&
                       pointer.hit.what != Hit::What::Terminal && pointer.hit.what != Hit::What::Frame;
    if (!opens) {
        mousePressEvent(event);
        return;
    }
    desk.stop();
    if (pointer.hit.what == Hit::What::Note)
        rewriteNote(desk, {pointer.hit.row});
    else
        emit activated(pointer.hit.row);
}

void SheetView::wheelEvent(QWheelEvent* event)
{
    Desk& desk = inside_->desk;
    const QPoint notches = event->angleDelta();
    if (event->modifiers().testFlag(Qt::ControlModifier)) {
        if (notches.y() != 0)
            desk.setScale(scale() * std::pow(zoomStep, notches.y() / 120.0), event->position());
    } else {
        QPoint by = event->pixelDelta().isNull() ? notches * wheelPixels / 120 : event->pixelDelta();
        if (event->modifiers().testFlag(Qt::ShiftModifier))
            by = by.transposed();
        desk.scroll(by);
    }
    event->accept();
}

std::uint32_t SheetView::rowAt(QPoint point) const
{
    return inside_->desk.pointerAt(point, Qt::NoModifier).hit.row;
}

void SheetView::showMiddleOf(std::uint32_t row)
{
    const Area area = areaOfRow(inside_->desk.drawing(), row);
    if (!area.isEmpty())
        inside_->desk.centreOn(area);
}

QRect SheetView::rectOf(std::uint32_t row, const Key& terminal) const
{
    const Desk& desk = inside_->desk;
    const Drawing& drawing = desk.drawing();
    if (const DeviceDrawn* device = drawing.devices().find(row); device && !terminal.empty()) {
        for (const Cell& cell : device->shape.cells)
            if (cell.terminal == terminal)
                return desk.view().widgetRect(cell.area.movedBy(device->at())).adjusted(4, 4, -4, -4);
        return {};
    }
    const Area area = areaOfRow(drawing, row);
    return area.isEmpty() ? QRect() : desk.view().widgetRect(area).adjusted(4, 4, -4, -4);
}

Message SheetView::wordsOfFocus() const
{
    const Desk& desk = inside_->desk;
    return inside_->wordsOf(desk.focus().hit);
}

void SheetView::leaveEvent(QEvent* event)
{
    QWidget::leaveEvent(event);
    if (std::exchange(inside_->hovered, Hit{}))
        emit hovered({});
}

} // namespace doorloom
