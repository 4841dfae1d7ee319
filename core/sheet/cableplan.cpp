#include "sheet/cableplan.h"

#include <cstdlib>
#include <numeric>

namespace doorloom {
namespace {

constexpr int reach = 600;  // of a jacket whose other end is nowhere on this sheet

// The facing of one area that looks at another: across the wider gap.
Facing towards(const Area& from, const Area& to)
{
    const int right = to.left - from.right, left = from.left - to.right;
    const int below = to.top - from.bottom, above = from.top - to.bottom;
    const int level = std::max(right, left), upright = std::max(below, above);
    if (level >= upright)
        return right >= left ? Facing::Right : Facing::Left;
    return below >= above ? Facing::Bottom : Facing::Top;
}

bool liesBeyond(Facing facing, const Area& area, const Area& other)
{
    switch (facing) {
    case Facing::Right:
        return other.left > area.right;
    case Facing::Bottom:
        return other.top > area.bottom;
    case Facing::Left:
        return other.right < area.left;
    case Facing::Top:
        break;
    }
    return other.bottom < area.top;
}

// Cores that all land on one facing of their devices leave by that facing; those in a box only when what they
// go to lies beyond that wall.
Facing facingOf(const CableSide& side, const Area& other)
{
    if (!side.landings.empty()) {
        const Facing first = side.landings.front().facing;
        const bool isFacing = std::all_of(side.landings.begin(), side.landings.end(),
                                          [&](const Port& port) { return port.facing == first; });
        if (isFacing && (!side.isBox || liesBeyond(first, side.area, other)))
            return first;
    }
    return towards(side.area, other);
}

int meanAlong(const CableSide& side, Facing facing)
{
    const Point middle = side.area.middle();
    if (side.landings.empty())
        return isLevel(facing) ? middle.y : middle.x;
    std::int64_t sum = 0;
    for (const Port& port : side.landings)
        sum += isLevel(facing) ? port.at.y : port.at.x;
    return static_cast<int>(sum / static_cast<std::int64_t>(side.landings.size()));
}

Port glandAt(const Area& area, Facing facing, int along, int halfWidth)
{
    const auto held = [&](int low, int high) {
        return onGrid(std::clamp(along, std::min(low + halfWidth, (low + high) / 2),
                                 std::max(high - halfWidth, (low + high) / 2)));
    };
    switch (facing) {
    case Facing::Right:
        return {{area.right, held(area.top, area.bottom)}, facing};
    case Facing::Left:
        return {{area.left, held(area.top, area.bottom)}, facing};
    case Facing::Bottom:
        return {{held(area.left, area.right), area.bottom}, facing};
    case Facing::Top:
        break;
    }
    return {{held(area.left, area.right), area.top}, facing};
}

// From the line of the core in the middle: on the grid, as that one is.
int offsetOf(int core, int cores)
{
    return (core - (cores - 1) / 2) * corePitch;
}

} // namespace

int halfWidthOf(int cores)
{
    return (cores / 2 + 1) * corePitch;
}

std::vector<int> spreadAlong(const std::vector<ThroughWall>& wishes, int low, int high)
{
    std::vector<std::size_t> order(wishes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return wishes[a].along < wishes[b].along; });
    std::vector<int> along(wishes.size());
    int next = low;
    for (const std::size_t i : order) {
        along[i] = std::max(wishes[i].along, next + wishes[i].halfWidth);
        next = along[i] + wishes[i].halfWidth + wallGap;
    }
    int last = high;
    for (auto i = order.rbegin(); i != order.rend(); ++i) {
        along[*i] = std::min(along[*i], last - wishes[*i].halfWidth);
        last = along[*i] - wishes[*i].halfWidth - wallGap;
    }
    return along;
}

std::optional<CablePlan> planCable(const CableSide& from, const CableSide& to, int cores, int bend)
{
    CableSide a = from, b = to;
    if (a.area.isEmpty() && b.area.isEmpty())
        return std::nullopt;
    const auto standIn = [](const CableSide& known) {
        const Facing facing =
            known.landings.empty() ? Facing::Right : facingOf(known, known.area.movedBy({1 << 20, 0}));
        CableSide side;
        side.area = known.area.movedBy(
            away(facing, (isLevel(facing) ? known.area.width() : known.area.height()) + reach));
        return side;
    };
    if (a.area.isEmpty())
        a = standIn(b);
    if (b.area.isEmpty())
        b = standIn(a);
    if (a.area.meets(b.area))
        return std::nullopt;

    CablePlan plan;
    plan.cores = cores;
    const Facing facingA = facingOf(a, b.area), facingB = facingOf(b, a.area);
    const int half = halfWidthOf(cores);
    int alongA = meanAlong(a, facingA), alongB = meanAlong(b, facingB);
    if (isLevel(facingA) == isLevel(facingB) &&
        facingA != facingB) // straight across, where one side has no wish or a wall
        (a.isBox || a.landings.empty() ? alongA : alongB) = a.isBox || a.landings.empty() ? alongB : alongA;
    if (a.along || b.along) { // the other end follows, where it has no neighbours of its own
        const bool isStraight = isLevel(facingA) == isLevel(facingB) && facingA != facingB;
        alongA = a.along.value_or(isStraight ? *b.along : alongA);
        alongB = b.along.value_or(isStraight ? *a.along : alongB);
    }
    plan.glands = {glandAt(a.area, facingA, onGrid(alongA), half),
                   glandAt(b.area, facingB, onGrid(alongB), half)};
    plan.trunk = route(plan.glands[0], plan.glands[1], {}, bend);
    return plan;
}

std::vector<Point> coreInTrunk(const CablePlan& plan, int core)
{
    const int offset = offsetOf(core, plan.cores);
    const std::vector<Point>& middle = plan.trunk;
    std::vector<Point> line;
    if (middle.size() < 2)
        return line;
    // Every piece moves to one side of the middle, seen along the way: the same side all along.
    const Point first = middle[1] - middle[0];
    const bool firstLevel = first.y == 0;
    const int side = firstLevel ? (first.x > 0 ? offset : -offset) : (first.y > 0 ? -offset : offset);
    const auto moved = [&](std::size_t piece) { // by how much, across its direction
        const Point step = middle[piece + 1] - middle[piece];
        return step.y == 0 ? Point{0, step.x > 0 ? side : -side} : Point{step.y > 0 ? -side : side, 0};
    };
    line.push_back(middle[0] + moved(0));
    for (std::size_t i = 1; i + 1 < middle.size(); ++i) {
        const Point before = moved(i - 1), after = moved(i);
        line.push_back(middle[i] + Point{before.x + after.x, before.y + after.y});
    }
    line.push_back(middle.back() + moved(middle.size() - 2));
    return line;
}

Area glandOf(const CablePlan& plan, std::size_t side, int depth)
{
    const auto end = [&](int core) {
        const std::vector<Point> line = coreInTrunk(plan, core);
        return side == 0 ? line.front() : line.back();
    };
    const Area across = areaOf(end(0), end(plan.cores - 1));
    const Point deep = away(plan.glands[side].facing, depth);
    return together(across, across.movedBy(deep));
}

} // namespace doorloom
