#include "sheet/plainroute.h"

#include "sheet/area.h"

#include <cstdlib>
#include <optional>

namespace doorloom {
namespace {

constexpr int leastStub = 50; // a terminal's pitch: room for the colour's letters

int sign(int value)
{
    return (value > 0) - (value < 0);
}

bool turnsBack(Point a, Point b, Point c)
{
    const Point in = b - a, out = c - b;
    const bool sameAxis = (in.x == 0) == (out.x == 0) || in == Point{} || out == Point{};
    return sameAxis && (sign(in.x) * sign(out.x) < 0 || sign(in.y) * sign(out.y) < 0);
}

// On one straight way, without turning back: a pinned point may be where a line turns.
bool isStraight(Point a, Point b, Point c)
{
    const bool inLine = (a.x == b.x && b.x == c.x) || (a.y == b.y && b.y == c.y);
    return inLine && !turnsBack(a, b, c);
}

int lengthOf(const std::vector<Point>& line)
{
    int length = 0;
    for (std::size_t i = 1; i < line.size(); ++i)
        length += std::abs(line[i].x - line[i - 1].x) + std::abs(line[i].y - line[i - 1].y);
    return length;
}

// Corners cost as much as 20 mm of line.
std::optional<int> costOf(std::vector<Point> line)
{
    for (std::size_t i = 2; i < line.size(); ++i)
        if (turnsBack(line[i - 2], line[i - 1], line[i]))
            return std::nullopt;
    straighten(line);
    return lengthOf(line) + 200 * static_cast<int>(line.size());
}

std::vector<Point> plain(const Port& from, const Port& to, int stub)
{
    const Point a = from.at + away(from.facing, stub), b = to.at + away(to.facing, leastStub);
    const Point mid = onGrid(Point{(a.x + b.x) / 2, (a.y + b.y) / 2});
    const std::vector<Point> ways[] = {
        {{a.x, b.y}}, {{b.x, a.y}}, {{a.x, mid.y}, {b.x, mid.y}}, {{mid.x, a.y}, {mid.x, b.y}}};
    std::vector<Point> best{from.at, a, ways[0].front(), b, to.at};
    std::optional<int> least;
    for (const std::vector<Point>& way : ways) {
        std::vector<Point> line{from.at, a};
        line.insert(line.end(), way.begin(), way.end());
        line.insert(line.end(), {b, to.at});
        const std::optional<int> cost = costOf(line);
        if (cost && (!least || *cost < *least)) {
            least = cost;
            best = std::move(line);
        }
    }
    straighten(best);
    return best;
}

Point corner(Point a, Point b, bool levelFirst)
{
    return levelFirst ? Point{b.x, a.y} : Point{a.x, b.y};
}

std::vector<Point> through(const Port& from, const Port& to, std::span<const Point> pinned)
{
    std::vector<Point> line{from.at};
    const bool levelFirst = isLevel(from.facing);
    for (const Point pin : pinned) {
        line.push_back(corner(line.back(), pin, levelFirst));
        line.push_back(pin);
    }
    line.push_back(corner(line.back(), to.at, !isLevel(to.facing)));
    line.push_back(to.at);
    straighten(line);
    return line;
}

} // namespace

Facing opposite(Facing facing)
{
    return static_cast<Facing>((static_cast<int>(facing) + 2) % 4);
}

Point away(Facing facing, int distance)
{
    switch (facing) {
    case Facing::Right:
        return {distance, 0};
    case Facing::Bottom:
        return {0, distance};
    case Facing::Left:
        return {-distance, 0};
    case Facing::Top:
        break;
    }
    return {0, -distance};
}

std::vector<Point> route(const Port& from, const Port& to, std::span<const Point> pinned, int stub)
{
    return pinned.empty() ? plain(from, to, stub) : through(from, to, pinned);
}

void straighten(std::vector<Point>& line)
{
    std::vector<Point> kept;
    for (const Point point : line) {
        if (!kept.empty() && kept.back() == point)
            continue;
        const std::size_t n = kept.size();
        if (n >= 2 && isStraight(kept[n - 2], kept[n - 1], point))
            kept.back() = point;
        else
            kept.push_back(point);
    }
    line = std::move(kept);
}

} // namespace doorloom
