#include "canvas/hit.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace doorloom {
namespace {

constexpr int landingReach = 14; // in front of a terminal
constexpr int endReach = 110;    // along a conductor, from where it is landed
constexpr int ringReach = 26;

bool isNear(Point at, Point a, Point b, int reach)
{
    if (!areaOf(a, b).grownBy(reach).holds(at))
        return false;
    if (a.x == b.x || a.y == b.y)
        return true;
    const double along = std::hypot(b.x - a.x, b.y - a.y); // straight across, where there is no way
    const double cross = double(b.x - a.x) * (at.y - a.y) - double(b.y - a.y) * (at.x - a.x);
    return std::abs(cross) <= reach * along;
}

int distance(Point a, Point b)
{
    return std::abs(a.x - b.x) + std::abs(a.y - b.y);
}

std::optional<Hit> hitDevice(const DeviceDrawn& drawn, Point at, Pointed finest)
{
    if (finest == Pointed::Terminals)
        for (std::size_t i = 0; i < drawn.shape.cells.size(); ++i) {
            const Cell& cell = drawn.shape.cells[i];
            Area area = cell.area.movedBy(drawn.at());
            area = together(area, areaOf(area.middle(), cell.landing.at + drawn.at() +
                                                            away(cell.landing.facing, landingReach)));
            if (area.holds(at))
                return Hit{Hit::What::Terminal, drawn.id.number, i, 0, WhichEnd::From};
        }
    if (drawn.area.holds(at))
        return Hit{Hit::What::Device, drawn.id.number, 0, 0, WhichEnd::From};
    return std::nullopt;
}

std::optional<Hit> hitCable(const CableDrawn& drawn, Point at, int reach)
{
    for (const WhichEnd end : {WhichEnd::From, WhichEnd::To}) {
        const Ring& ring = drawn.rings[end == WhichEnd::From ? 0 : 1];
        if (ring.waiting > 0 && distance(ring.at, at) <= ringReach + reach)
            return Hit{Hit::What::Ring, drawn.id.number, 0, 0, end};
    }
    for (const Area& tick : drawn.ticks)
        if (tick.holds(at))
            return Hit{Hit::What::Cable, drawn.id.number, 0, 0, WhichEnd::From};
    for (const Area& tag : drawn.tags)
        if (tag.holds(at))
            return Hit{Hit::What::Cable, drawn.id.number, 0, 0, WhichEnd::From};
    return std::nullopt;
}

std::optional<Hit> hitConductor(const ConductorDrawn& drawn, Point at, int reach)
{
    for (std::size_t i = 0; i + 1 < drawn.line.size(); ++i) {
        if (!isNear(at, drawn.line[i], drawn.line[i + 1], reach))
            continue;
        for (const WhichEnd end : {WhichEnd::From, WhichEnd::To}) {
            const EndDrawn& drawnEnd = drawn.ends[end == WhichEnd::From ? 0 : 1];
            const bool canBeTaken = drawnEnd.isHeld || drawnEnd.mark == EndMark::Waiting;
            const bool isEndPiece = end == WhichEnd::From ? i == 0 : i + 2 == drawn.line.size();
            if (canBeTaken && isEndPiece && distance(at, drawnEnd.port.at) <= endReach)
                return Hit{Hit::What::ConductorEnd, drawn.id.number, 0, i, end};
        }
        return Hit{Hit::What::Conductor, drawn.id.number, 0, i, WhichEnd::From};
    }
    return std::nullopt;
}

// The first hit among those of one layer, the uppermost first.
template <class Try> std::optional<Hit> firstOf(const std::vector<std::uint32_t>& indices, Try tryOne)
{
    for (auto index = indices.rbegin(); index != indices.rend(); ++index)
        if (std::optional<Hit> hit = tryOne(*index))
            return hit;
    return std::nullopt;
}

} // namespace

Hit hitAt(const Drawing& drawing, Point at, int reach, Pointed finest)
{
    static thread_local Visible here;
    drawing.lookUp(areaOf(at, at).grownBy(reach), here);
    const auto inside = [&](const auto& list, Hit::What what) {
        return [&list, at, what](std::uint32_t i) -> std::optional<Hit> {
            return list[i].area.holds(at) ? std::optional(Hit{what, list[i].id.number, 0, 0, WhichEnd::From})
                                          : std::nullopt;
        };
    };
    if (const auto hit = firstOf(here.notes, inside(drawing.notes(), Hit::What::Note)))
        return *hit;
    const auto spliceAt = [&](std::uint32_t i) -> std::optional<Hit> {
        const SpliceDrawn& splice = drawing.splices()[i];
        return distance(splice.at, at) <= ringReach + reach
                   ? std::optional(Hit{Hit::What::Splice, splice.id.number, 0, 0, WhichEnd::From})
                   : std::nullopt;
    };
    if (const auto hit = firstOf(here.splices, spliceAt))
        return *hit;
    if (const auto hit = firstOf(
            here.devices, [&](std::uint32_t i) { return hitDevice(drawing.devices()[i], at, finest); }))
        return *hit;
    if (const auto hit =
            firstOf(here.cables, [&](std::uint32_t i) { return hitCable(drawing.cables()[i], at, reach); }))
        return *hit;
    if (const auto hit = firstOf(here.conductors, [&](std::uint32_t i) {
            return hitConductor(drawing.conductors()[i], at, reach);
        }))
        return *hit;
    if (const auto hit = firstOf(here.frames, inside(drawing.frames(), Hit::What::Frame)))
        return *hit;
    return {};
}

std::optional<LandingPoint> landingPointOf(const Drawing& drawing, const Hit& hit)
{
    if (hit.what == Hit::What::Splice)
        return SpliceId{hit.row};
    const DeviceDrawn* device = hit.what == Hit::What::Terminal ? drawing.devices().find(hit.row) : nullptr;
    if (!device || hit.cell >= device->shape.cells.size())
        return std::nullopt;
    return Landing{device->id, device->shape.cells[hit.cell].terminal};
}

std::optional<Port> portOf(const Drawing& drawing, const LandingPoint& point, Point seenFrom)
{
    if (const SpliceId* splice = std::get_if<SpliceId>(&point)) {
        const SpliceDrawn* drawn = drawing.splices().find(splice->number);
        return drawn
                   ? std::optional(Port{drawn->at, seenFrom.x >= drawn->at.x ? Facing::Right : Facing::Left})
                   : std::nullopt;
    }
    const Landing& landing = std::get<Landing>(point);
    const DeviceDrawn* device = drawing.devices().find(landing.device.number);
    if (!device)
        return std::nullopt;
    for (std::size_t i = 0; i < device->shape.cells.size(); ++i)
        if (device->shape.cells[i].terminal == landing.terminal)
            return landingOn(device->shape, i, device->at(), seenFrom);
    return std::nullopt;
}

PlaceId placeOf(const Drawing& drawing, const Hit& hit)
{
    if (hit.what == Hit::What::Frame)
        return {hit.row};
    if (const DeviceDrawn* device = drawing.devices().find(hit.row))
        return device->place;
    if (const SpliceDrawn* splice = drawing.splices().find(hit.row))
        return splice->place;
    return {};
}

} // namespace doorloom
