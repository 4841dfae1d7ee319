#include "canvas/desk.h"

#include "edit/drawing.h"
#include "edit/undowords.h"

#include <algorithm>

// Dragging a piece of a conductor's line pins a point of it.
namespace doorloom {
namespace {

bool isOnPiece(Point point, Point a, Point b)
{
    return areaOf(a, b).holds(point);
}

// Which piece of the line a pinned point lies on, from a piece onwards.
std::size_t pieceOf(const std::vector<Point>& line, Point pin, std::size_t first)
{
    for (std::size_t i = first; i + 1 < line.size(); ++i)
        if (isOnPiece(pin, line[i], line[i + 1]))
            return i;
    return line.size();
}

// The points pinned already, with the new one in its order among them, instead of those on the same piece.
std::vector<Point> pinnedWith(const ConductorDrawn& drawn, const std::vector<Point>& pinned,
                              std::size_t piece, Point pin)
{
    std::vector<Point> points;
    bool isIn = false;
    std::size_t at = 0;
    for (const Point each : pinned) {
        at = std::min(pieceOf(drawn.line, each, at), drawn.line.size());
        if (at >= piece && !isIn) {
            points.push_back(pin);
            isIn = true;
        }
        if (at != piece)
            points.push_back(each);
    }
    if (!isIn)
        points.push_back(pin);
    return points;
}

Point bentTo(const ConductorDrawn& drawn, std::size_t piece, Point to)
{
    const Point a = drawn.line[piece], b = drawn.line[piece + 1];
    const Point middle = areaOf(a, b).middle();
    return a.y == b.y ? Point{middle.x, onGrid(to.y)} : Point{onGrid(to.x), middle.y};
}

} // namespace

void moved(Desk& desk, Bending& bending, const Pointer& pointer)
{
    bending.hasMoved = bending.hasMoved || desk.isFarEnough(bending.pressedAt, pointer.at);
    bending.to = pointer.point;
}

void released(Desk& desk, const Bending& bending, const Pointer&)
{
    const ConductorDrawn* drawn = desk.drawing().conductors().find(bending.conductor.number);
    desk.stop();
    if (!bending.hasMoved || !drawn || bending.piece + 1 >= drawn->line.size())
        return;
    const Bends* bends = bendsOf(desk.job(), bending.conductor);
    const Point pin = bentTo(*drawn, bending.piece, bending.to);
    Numbers numbers(desk.job());
    desk.make(undoWords(desk.job(), doing::bend, {bending.conductor.number}),
              pinBends(desk.job(), numbers, bending.conductor,
                       pinnedWith(*drawn, bends ? bends->pinned : std::vector<Point>{}, bending.piece, pin)));
}

bool isStale(const Desk& desk, const Bending& bending)
{
    return !desk.job().conductors.find(bending.conductor);
}

} // namespace doorloom
