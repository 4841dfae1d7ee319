#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>

namespace doorloom::routing {

// Sixteen bits, so that eight cells fit in a register. Two of the largest and a step don't overflow.
using Cost = std::int16_t;

constexpr Cost never = 16'000;   // inside a box
constexpr Cost conflict = 4'000; // on a line or bend of another conductor

constexpr double wantedGap = 5; // between parallels
constexpr double leastGap = 1;  // nearer than this counts as the same line

// What a drawing is judged by, in one measure. Found by trial on generated sheets: dearer crossings make
// detours, dearer bends crossings; without `beside`, conductors that run along a side keep its ports from
// nesting.
struct Prices {
    double length = 0.4; // of a unit
    Cost bend = 22;
    Cost crossing = 130;
    Cost near = 10;  // a cell beside a parallel nearer than the wanted gap
    Cost beside = 1; // a cell along the side of a box
};

// The element at a place that is counted in int, as cells and connectors are.
template <class Container> auto& nth(Container& container, int place)
{
    return container[static_cast<std::size_t>(place)];
}

inline Cost capped(int cost)
{
    return static_cast<Cost>(std::min<int>(cost, never));
}

} // namespace doorloom::routing
