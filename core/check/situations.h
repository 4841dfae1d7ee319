#pragma once

#include "check/facts.h"

#include <vector>

namespace doorloom {

// Settled positions of a situation: one, or in the loss and fire situations one for every throw of the programmed
// outputs (and in a fire of the doors) among these operators, which are those that matter to what is asked. Empty: they
// never settle.
std::vector<Position> positionsIn(const Facts& facts, const Opening& opening, const Situation& situation,
                                  const std::vector<MovedIndex>& mattering);

// Is somebody exposed to what the door does?
bool isOccupied(const Situation& situation);

enum class LockState { Locked, Free, Unknown };
LockState lockStateAt(const Facts& facts, const Position& position, const Lock& lock, std::uint32_t element);

} // namespace doorloom
