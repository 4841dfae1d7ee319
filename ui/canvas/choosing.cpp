#include "canvas/desk.h"

#include "edit/drawing.h"
#include "edit/undowords.h"

#include <algorithm>

// Choosing, and dragging what is chosen.
namespace doorloom {
namespace {

using Rows = std::vector<std::uint32_t>;

bool isOnSheet(const Drawing& drawing, std::uint32_t row)
{
    return drawing.devices().find(row) || drawing.splices().find(row) || drawing.notes().find(row);
}

// Whatever lies in an area whole: devices, splices and notes.
Rows rowsIn(const Drawing& drawing, const Area& area)
{
    Rows rows;
    const auto take = [&](const auto& list) {
        for (const auto& drawn : list.all())
            if (area.holds(drawn.area))
                rows.push_back(drawn.id.number);
    };
    take(drawing.devices());
    take(drawing.splices());
    take(drawing.notes());
    return rows;
}

Rows rowsOfPlace(const Drawing& drawing, PlaceId place)
{
    Rows rows;
    for (const DeviceDrawn& device : drawing.devices().all())
        if (device.id && device.place == place)
            rows.push_back(device.id.number);
    for (const SpliceDrawn& splice : drawing.splices().all())
        if (splice.id && splice.place == place)
            rows.push_back(splice.id.number);
    return rows;
}

bool isAdding(const Pointer& pointer)
{
    return pointer.keys.testFlag(Qt::ControlModifier) || pointer.keys.testFlag(Qt::ShiftModifier);
}

void beginDragging(Desk& desk, const Pointer& pointer)
{
    const std::uint32_t row = pointer.hit.row;
    if (isAdding(pointer)) {
        desk.selection().toggle(row);
        return;
    }
    const bool wasChosen = desk.selection().holds(row);
    if (!wasChosen)
        desk.selection().choose({row});
    Rows rows;
    std::copy_if(desk.selection().rows().begin(), desk.selection().rows().end(), std::back_inserter(rows),
                 [&](std::uint32_t each) { return isOnSheet(desk.drawing(), each); });
    desk.begin(Dragging{std::move(rows), row, pointer.at, pointer.point, {}, false, wasChosen});
}

void chooseRow(Desk& desk, const Pointer& pointer)
{
    if (isAdding(pointer))
        desk.selection().toggle(pointer.hit.row);
    else
        desk.selection().choose({pointer.hit.row});
}

} // namespace

void beginChoosing(Desk& desk, const Pointer& pointer)
{
    const Hit& hit = pointer.hit;
    switch (hit.what) {
    case Hit::What::Terminal:
        if (isAdding(pointer))
            beginDragging(desk, pointer);
        else
            beginJoining(desk, pointer);
        break;
    case Hit::What::Device:
    case Hit::What::Splice:
    case Hit::What::Note:
        beginDragging(desk, pointer);
        break;
    case Hit::What::Ring:
        chooseRow(desk, pointer);
        desk.begin(UsingUp{{hit.row}, pointer.point, true});
        break;
    case Hit::What::ConductorEnd:
        chooseRow(desk, pointer);
        desk.begin(MovingEnd{{{hit.row}, hit.end}, pointer.point, pointer.at, false});
        break;
    case Hit::What::Conductor:
        chooseRow(desk, pointer);
        desk.begin(Bending{{hit.row}, hit.piece, pointer.point, pointer.point, pointer.at, false});
        break;
    case Hit::What::Cable:
        chooseRow(desk, pointer);
        break;
    case Hit::What::Frame:
    case Hit::What::Nothing: {
        const Rows before = isAdding(pointer) ? desk.selection().rows() : Rows{};
        desk.selection().choose(before);
        desk.begin(RubberBand{pointer.point, pointer.point, before});
        break;
    }
    }
}

// ---- Rubber band

void moved(Desk& desk, RubberBand& band, const Pointer& pointer)
{
    band.to = pointer.point;
    Rows rows = rowsIn(desk.drawing(), areaOf(band.from, band.to));
    rows.insert(rows.end(), band.before.begin(), band.before.end());
    desk.selection().choose(std::move(rows));
}

void released(Desk& desk, const RubberBand& band, const Pointer& pointer)
{
    desk.stop();
    const bool isClick = band.from == band.to;
    if (isClick && pointer.hit.what == Hit::What::Frame && !isAdding(pointer)) // a box: what is in it
        desk.selection().choose(rowsOfPlace(desk.drawing(), {pointer.hit.row}));
}

bool isStale(const Desk&, const RubberBand&)
{
    return false;
}

// ---- Dragging

void moved(Desk& desk, Dragging& drag, const Pointer& pointer)
{
    if (!drag.hasMoved && !desk.isFarEnough(drag.pressedAt, pointer.at))
        return;
    drag.hasMoved = true;
    const Point by = onGrid(pointer.point - drag.from);
    if (by == drag.by)
        return;
    drag.by = by;
    desk.displace(drag.rows, by);
}

void released(Desk& desk, const Dragging& drag, const Pointer&)
{
    desk.stop();
    if (drag.by == Point{}) {
        if (drag.isChoice && !drag.hasMoved)
            desk.selection().choose({drag.pressed});
        return;
    }
    moveBy(desk, drag.rows, drag.by);
}

void moveBy(Desk& desk, const Rows& rows, Point by)
{
    Steps steps(desk.job());
    settle(desk, steps);
    steps.add(moveRows(steps.job(), rows, by));
    desk.make(undoWords(desk.job(), doing::move, rows), steps);
}

// What is drawn without a placement is put where it is drawn: else it would stand elsewhere after the next
// start.
SheetId settle(Desk& desk, Steps& steps)
{
    const Drawing& drawing = desk.drawing();
    const SheetId sheet = desk.sheetFor(steps);
    const auto put = [&](Placeable what, std::uint32_t number) {
        const std::optional<Seat> seat = drawing.seatOf(desk.job(), number);
        if (seat && !placementOf(desk.job(), number))
            steps.add(putOnSheet(steps.job(), steps.numbers, sheet, what, seat->at,
                                 static_cast<int>(seat->facing)));
    };
    for (const DeviceDrawn& device : drawing.devices().all())
        if (device.id)
            put(device.id, device.id.number);
    for (const SpliceDrawn& splice : drawing.splices().all())
        if (splice.id)
            put(splice.id, splice.id.number);
    return sheet;
}

bool isStale(const Desk& desk, const Dragging& drag)
{
    return std::any_of(drag.rows.begin(), drag.rows.end(), [&](std::uint32_t row) {
        return !desk.job().devices.find({row}) && !desk.job().splices.find({row}) &&
               !desk.job().notes.find({row});
    });
}

void stopped(Desk& desk, const Dragging& drag)
{
    if (!(drag.by == Point{}))
        desk.displace({}, {});
}

} // namespace doorloom
