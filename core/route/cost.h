#pragma once

#include <algorithm>
#include <cstdint>

namespace doorloom::routing {

// Sixteen bits, so that eight cells fit in a register. Two of the largest and a step don't overflow.
using Cost = std::int16_t;

constexpr Cost never = 16'000;   // inside a box
constexpr Cost conflict = 1'500; // on a line or bend of another conductor

constexpr double wantedGap = 5; // between parallels
constexpr double leastGap = 1;  // nearer than this counts as the same line

struct Prices {
    Cost bend = 25;
    Cost crossing = 80;
    Cost near = 6;   // a cell beside a parallel nearer than the wanted gap
    Cost beside = 1; // a cell along the side of a box
    double unit = 0.4; // of length
};

inline Cost capped(int cost)
{
    return static_cast<Cost>(std::min<int>(cost, never));
}

} // namespace doorloom::routing
