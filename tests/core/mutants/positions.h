#pragma once

#include "oracle.h"

namespace doorloom {

// What a position is for an opening.
struct PositionAt {
    std::string name;
    Given given;
};

// Rest, each act of each opening, occupied, fire alarm and lost power; each of them with any one operator thrown besides; any two
// operators thrown.
std::vector<PositionAt> positionsToCompare(const Job& job);

// Are these throws all among the given ones, or as at rest?
bool hasAll(const Job& job, const Given& given, const std::vector<Thrown>& throws);
bool isPowerLost(const Job& job, const Given& given);

} // namespace doorloom
