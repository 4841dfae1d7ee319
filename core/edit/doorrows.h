#pragma once

#include "model/job.h"

#include <cstdint>
#include <set>
#include <vector>

namespace doorloom {

// The rows that an opening has for itself: what is drawn again when the door is.
struct DoorRows {
    using Numbers = std::set<std::uint32_t>;

    OpeningId opening;
    Numbers joints; // devices and splices
    Numbers places; // where only these are
    Numbers operators, cables, conductors, sheets;
    Numbers drawing; // placements and bends

    Numbers all() const;
};

// Its own devices and splices (see devicesOf), and what hangs on them.
// In:   also: devices that belong to it besides, such as its own supply
// Cost: a walk along the openings, and what hangs on the door's devices
DoorRows rowsOfDoor(const Job& job, const Opening& opening, const std::vector<DeviceId>& also = {});

// Devices that are not the door's and hang together with its own, nearest first: a strip, a supply, a module that
// serves several doors. Not what other openings have for themselves.
std::vector<DeviceId> sharedAround(const Job& job, const DoorRows& door);

// The device or splice that an end is on, 0: none.
std::uint32_t jointAt(const End& end);

} // namespace doorloom
