#pragma once

#include "sheet/area.h"
#include "sheet/plainroute.h"
#include "model/job.h"

#include <cstdint>
#include <span>
#include <vector>

namespace doorloom {

// Where a device or splice stands on the sheet.
struct Seat {
    Point at;
    Facing facing = Facing::Right; // on which its conductors land
};

struct Arranged {
    std::uint32_t number; // of a device or splice
    Seat seat;
    int height; // at most, in whatever language
};

// Sets devices and splices out in columns by place: a cabinet, its supplies above its logic, and to the right
// of it the places that its cables go to, those of one door together and by its sides; then the next cabinet,
// in rows of about the shape of a screen. There is room for the
// words of every language. In: from: the upper left corner
std::vector<Arranged> arranged(const Job& job, std::span<const std::uint32_t> numbers, Point from);

} // namespace doorloom
