#pragma once

#include "model/rows.h"

#include <span>
#include <vector>

namespace doorloom {

// The side on which something leaves a device, in the order of quarter turns.
enum class Facing { Right, Bottom, Left, Top };

inline bool isLevel(Facing facing)
{
    return facing == Facing::Right || facing == Facing::Left;
}

Facing opposite(Facing facing);
Point away(Facing facing, int distance); // a step of that length outwards

// An end of a line, and the way in which the line leaves it.
struct Port {
    Point at;
    Facing facing = Facing::Right;

    friend bool operator==(const Port&, const Port&) = default;
};

// A line from one port to the other, level and upright pieces alone, no two after one another in one
// direction. In:  pinned: points that it passes, in their order
//      stub: how far it goes straight out of `from` first; lines side by side take different ones
// This is the plain way, with as few bends as the two ends allow; it does not look at what lies between.
std::vector<Point> route(const Port& from, const Port& to, std::span<const Point> pinned, int stub);

// Leaves out points in the middle of a straight piece, and points said twice.
void straighten(std::vector<Point>& line);

} // namespace doorloom
