#pragma once

#include "edit/doorrows.h"
#include "edit/typicals.h"

#include <map>
#include <optional>

namespace doorloom {

// The rows of a typical's door as it is drawn now; nothing when its opening is gone.
std::optional<DoorRows> doorOf(const Job& job, const Typical& typical);
// These rows as they stand, in the order of their numbers.
std::vector<DoorRow> rowsAsTheyStand(const Job& job, const DoorRows& door);

using RowsByNumber = std::map<std::uint32_t, DoorRow>;
RowsByNumber byNumber(const std::vector<DoorRow>& rows);

// The typical with its rows as they stand now; a new edition where they are not those of the newest. The
// newest is the last.
Typical broughtUp(const Job& job, Typical typical, const DoorRows& door);

Problem openingIsGone(const Typical& typical);

} // namespace doorloom
