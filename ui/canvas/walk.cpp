#include "canvas/walk.h"

#include <algorithm>
#include <cstdlib>
#include <limits>

namespace doorloom {
namespace {

constexpr int rowHeight = 600; // devices whose heads differ by less stand in one row

Hit hitOf(Hit::What what, std::uint32_t row)
{
    return {what, row, 0, 0, WhichEnd::From};
}

bool isSameThing(const Hit& a, const Hit& b)
{
    return a.row == b.row;
}

std::size_t cellsOf(const Drawing& drawing, const Hit& hit)
{
    const DeviceDrawn* device = drawing.devices().find(hit.row);
    return device ? device->shape.cells.size() : 0;
}

Area thingArea(const Drawing& drawing, const Hit& hit)
{
    if (const DeviceDrawn* device = drawing.devices().find(hit.row))
        return device->area;
    if (const SpliceDrawn* splice = drawing.splices().find(hit.row))
        return splice->area;
    if (const NoteDrawn* note = drawing.notes().find(hit.row))
        return note->area;
    return {};
}

} // namespace

Area focusArea(const Drawing& drawing, const Hit& focus)
{
    const DeviceDrawn* device =
        focus.what == Hit::What::Terminal ? drawing.devices().find(focus.row) : nullptr;
    if (device && focus.cell < device->shape.cells.size())
        return device->shape.cells[focus.cell].area.movedBy(device->at()).grownBy(-6);
    return thingArea(drawing, focus);
}

std::vector<Hit> readingOrder(const Drawing& drawing)
{
    std::vector<std::pair<Point, Hit>> all;
    const auto take = [&](const auto& list, Hit::What what) {
        for (const auto& drawn : list.all())
            if (!drawn.area.isEmpty())
                all.emplace_back(Point{drawn.area.left, drawn.area.top}, hitOf(what, drawn.id.number));
    };
    take(drawing.devices(), Hit::What::Device);
    take(drawing.splices(), Hit::What::Splice);
    take(drawing.notes(), Hit::What::Note);
    std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
        return std::tie(a.first.y, a.first.x, a.second.row) < std::tie(b.first.y, b.first.x, b.second.row);
    });
    // Rows: a new one begins where the next thing stands lower than the row's first by more than a row.
    std::vector<Hit> order;
    for (auto row = all.begin(); row != all.end();) {
        const auto end = std::find_if(
            row, all.end(), [&](const auto& each) { return each.first.y - row->first.y > rowHeight; });
        std::sort(row, end, [](const auto& a, const auto& b) {
            return std::tie(a.first.x, a.first.y, a.second.row) <
                   std::tie(b.first.x, b.first.y, b.second.row);
        });
        for (; row != end; ++row)
            order.push_back(row->second);
    }
    return order;
}

Hit nextDevice(const Drawing& drawing, const Hit& from, Way way)
{
    const std::vector<Hit> order = readingOrder(drawing);
    if (order.empty())
        return {};
    const auto at =
        std::find_if(order.begin(), order.end(), [&](const Hit& each) { return isSameThing(each, from); });
    if (at == order.end())
        return way == Way::Forth ? order.front() : order.back();
    if (way == Way::Forth)
        return at + 1 == order.end() ? Hit{} : *(at + 1);
    return at == order.begin() ? Hit{} : *(at - 1);
}

Hit nextTerminal(const Drawing& drawing, const Hit& from, Way way)
{
    const auto terminal = [](const Hit& device, std::size_t cell) {
        return Hit{Hit::What::Terminal, device.row, cell, 0, WhichEnd::From};
    };
    const std::size_t cells = cellsOf(drawing, from);
    const bool onTerminal = from.what == Hit::What::Terminal;
    if (way == Way::Forth && cells > 0 && (!onTerminal || from.cell + 1 < cells))
        return terminal(from, onTerminal ? from.cell + 1 : 0);
    if (way == Way::Back && onTerminal && from.cell > 0)
        return terminal(from, from.cell - 1);
    const Hit next = nextDevice(drawing, from, way);
    if (!next)
        return from;
    const std::size_t count = cellsOf(drawing, next);
    return count == 0 ? next : terminal(next, way == Way::Forth ? 0 : count - 1);
}

Hit beside(const Drawing& drawing, const Hit& from, Facing side)
{
    const Area here = thingArea(drawing, from);
    if (here.isEmpty())
        return nextDevice(drawing, {}, Way::Forth);
    Hit nearest = hitOf(from.what == Hit::What::Terminal ? Hit::What::Device : from.what, from.row);
    std::int64_t least = std::numeric_limits<std::int64_t>::max();
    for (const Hit& each : readingOrder(drawing)) {
        const Point step = thingArea(drawing, each).middle() - here.middle();
        const std::int64_t along = side == Facing::Right    ? step.x
                                   : side == Facing::Left   ? -step.x
                                   : side == Facing::Bottom ? step.y
                                                            : -step.y;
        const std::int64_t across = std::abs(isLevel(side) ? step.y : step.x);
        if (along <= 0 || across > 2 * along)
            continue;
        if (along + 2 * across < least) {
            least = along + 2 * across;
            nearest = each;
        }
    }
    return nearest;
}

} // namespace doorloom
