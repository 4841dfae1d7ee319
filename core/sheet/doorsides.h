#pragma once

#include "model/job.h"

#include <map>

namespace doorloom {

// From which side of a door one gets at a place. The frame with what locks and moves the leaf lies between
// the sides.
enum class DoorSide { Outside, Frame, Inside, Unknown };

struct AtDoor {
    OpeningId opening; // the first one that the place serves; nothing: none
    DoorSide side = DoorSide::Unknown;
};

// Of every place whose devices an opening names: by its locks and door operators, else by the side that its
// requests and releases serve.
std::map<PlaceId, AtDoor> placesAtDoors(const Job& job);

} // namespace doorloom
