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
};

// Sets devices and splices out in columns by place: a cabinet and, to the right of it, the places that its
// cables go to; then the next cabinet, in rows of about the shape of a screen. In: from: the upper left
// corner
std::vector<Arranged> arranged(const Job& job, std::span<const std::uint32_t> numbers, Point from,
                               Language language);

} // namespace doorloom
