#include "solve/worst.h"

#include "solve/lookedat.h"

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr double slack = 1e-9;

bool isShorted(const Questions& ask, const Position& position)
{
    for (std::uint32_t feed = 0; feed < ask.circuit().feeds.size(); ++feed)
        if (ask.shortedIn(position, feed))
            return true;
    return false;
}

} // namespace

std::size_t throwsAwayFromRest(const Circuit& circuit, const Position& position)
{
    std::size_t count = 0;
    for (MovedIndex moved = 0; moved < position.size(); ++moved)
        count += position[moved] != circuit.operators[moved].idle;
    return count;
}

void putHighest(const Circuit& circuit, std::optional<Worst>& held, double value, const Position& at)
{
    const double near = slack * std::max(1.0, std::abs(value));
    if (!held || value > held->value + near ||
        (value > held->value - near && throwsAwayFromRest(circuit, at) < throwsAwayFromRest(circuit, held->at)))
        held = Worst{value, at};
}

void putFewest(const Circuit& circuit, std::optional<Worst>& held, double value, const Position& at)
{
    const std::size_t here = throwsAwayFromRest(circuit, at), there = held ? throwsAwayFromRest(circuit, held->at) : here + 1;
    if (here < there || (here == there && std::abs(value) > std::abs(held->value) + slack))
        held = Worst{value, at};
}

ReadingRange rangeBetween(const Meter& meter, const Questions& ask, Vertex x, Vertex y, std::uint64_t budget)
{
    const Circuit& circuit = meter.net.circuit();
    const LookedAt look(meter, ask, LookedAt::For::AnyReading, budget);
    std::vector<std::size_t> groups = look.groupsAt(x);
    for (std::size_t group : look.groupsAt(y))
        if (std::find(groups.begin(), groups.end(), group) == groups.end())
            groups.push_back(group);
    ReadingRange range;
    const auto keep = [](std::optional<Position>& held, const Position& at) {
        if (!held)
            held = at;
    };
    range.coverage = look.forEachTogether(groups, [&](std::size_t, const Position& settled) {
        const Readings low(meter, settled, {.supplies = SupplyLevel::Lowest, .want = Want::JustVolts});
        const Readings high(meter, settled, {.supplies = SupplyLevel::Highest});
        if (isShorted(ask, settled) || !low.hold() || !high.hold()) {
            keep(range.unreadableIn, settled);
            return 0.0;
        }
        const auto least = low.between(x, y), most = high.between(x, y);
        if (!least || !most) {
            keep(range.floatingIn, settled);
            return 0.0;
        }
        putHighest(circuit, range.lowest, -std::min(least->value, most->value), settled);
        putHighest(circuit, range.highest, std::max(least->value, most->value), settled);
        double drawn = 0;
        for (std::uint32_t feed = 0; feed < circuit.feeds.size(); ++feed)
            drawn += high.outOf(feed).value;
        return drawn;
    });
    if (range.lowest)
        range.lowest->value = -range.lowest->value;
    return range;
}

} // namespace doorloom
