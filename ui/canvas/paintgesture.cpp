#include "canvas/desk.h"

#include "sheet/stripshape.h"

#include <algorithm>

// What a gesture shows while it lasts.
namespace doorloom {
namespace {

constexpr int cursorRoom = 120;

Area around(Point a, Point b)
{
    return areaOf(a, b).grownBy(cursorRoom);
}

std::vector<Point> lineTo(const Desk& desk, const LandingPoint& from, Point to)
{
    const std::optional<Port> port = portOf(desk.drawing(), from, to);
    if (!port)
        return {};
    const Facing back = to.x >= port->at.x ? Facing::Left : Facing::Right;
    return route(*port, {to, back}, {}, terminalPitch);
}

std::vector<Point> lineOf(const Desk& desk, const Joining& joining)
{
    return lineTo(desk, joining.from, joining.to);
}

std::vector<Point> lineOf(const Desk& desk, const MovingEnd& moving)
{
    const ConductorDrawn* drawn = desk.drawing().conductors().find(moving.end.conductor.number);
    if (!drawn || !moving.hasMoved)
        return {};
    const Port other = drawn->ends[moving.end.which == WhichEnd::From ? 1 : 0].port;
    const Facing back = moving.to.x >= other.at.x ? Facing::Left : Facing::Right;
    return route(other, {moving.to, back}, {}, terminalPitch);
}

std::vector<Point> lineOf(const Desk& desk, const Bending& bending)
{
    const ConductorDrawn* drawn = desk.drawing().conductors().find(bending.conductor.number);
    if (!drawn || !bending.hasMoved || bending.piece + 1 >= drawn->line.size())
        return {};
    Point a = drawn->line[bending.piece], b = drawn->line[bending.piece + 1];
    (a.y == b.y ? a.y : a.x) = a.y == b.y ? onGrid(bending.to.y) : onGrid(bending.to.x);
    (drawn->line[bending.piece].y == drawn->line[bending.piece + 1].y ? b.y : b.x) =
        drawn->line[bending.piece].y == drawn->line[bending.piece + 1].y ? a.y : a.x;
    return {a, b};
}

std::vector<Point> lineOf(const Desk&, const Pulling& pulling)
{
    const Facing out = pulling.to.x >= pulling.start.x ? Facing::Right : Facing::Left;
    return route({pulling.start, out}, {pulling.to, opposite(out)}, {}, terminalPitch);
}

// From the gland whose side the pointer is nearer to.
std::vector<Point> lineOf(const Desk& desk, const UsingUp& cable)
{
    const CableDrawn* drawn = desk.drawing().cables().find(cable.cable.number);
    if (!drawn || cable.to == Point{})
        return {};
    const auto distance = [&](const Port& gland) {
        return std::abs(gland.at.x - cable.to.x) + std::abs(gland.at.y - cable.to.y);
    };
    const std::array<Port, 2>& glands = drawn->plan.glands;
    const Port& gland = distance(glands[0]) <= distance(glands[1]) ? glands[0] : glands[1];
    const Facing back = cable.to.x >= gland.at.x ? Facing::Left : Facing::Right;
    return route({gland.at, opposite(gland.facing)}, {cable.to, back}, {}, terminalPitch);
}

template <class Other> std::vector<Point> lineOf(const Desk&, const Other&)
{
    return {};
}

std::vector<Point> lineOfAny(const Desk& desk, const Gesture& gesture)
{
    return std::visit([&](const auto& each) { return lineOf(desk, each); }, gesture);
}

std::optional<StripShape> ghostOf(const Desk& desk)
{
    if (desk.tool() != SheetView::Tool::Place || !desk.kind)
        return std::nullopt;
    return stripShape(*desk.kind, {}, Facing::Right, desk.language());
}

} // namespace

Area reachOf(const Desk& desk, const Gesture& gesture)
{
    Area area;
    for (const Point point : lineOfAny(desk, gesture))
        area = together(area, around(point, point));
    if (const RubberBand* band = std::get_if<RubberBand>(&gesture))
        area = around(band->from, band->to);
    if (const auto ghost = ghostOf(desk))
        area = together(area, ghost->area.movedBy(desk.ghost).grownBy(cursorRoom));
    return area;
}

void paintGesture(const Desk& desk, const Gesture& gesture, QPainter& painter, const SheetPainter& sheet)
{
    const Look& look = desk.look();
    const std::vector<Point> line = lineOfAny(desk, gesture);
    if (line.size() > 1) {
        sheet.drawLine(painter, line, look.device, 14);
        sheet.drawDashes(painter, line, look.chosen, 8);
    }
    if (const RubberBand* band = std::get_if<RubberBand>(&gesture); band && !(band->from == band->to)) {
        QColor wash = QColor::fromRgb(look.chosen);
        wash.setAlpha(40);
        painter.fillRect(desk.view().rect(areaOf(band->from, band->to)), wash);
        sheet.drawOutline(painter, areaOf(band->from, band->to), look.chosen, sheet.hair(), true);
    }
    if (const auto ghost = ghostOf(desk)) {
        const Area area = ghost->area.movedBy(desk.ghost);
        QColor wash = QColor::fromRgb(look.chosen);
        wash.setAlpha(50);
        painter.fillRect(desk.view().rect(area), wash);
        sheet.drawOutline(painter, area, look.chosen, 2 * sheet.hair(), true);
    }
}

} // namespace doorloom
