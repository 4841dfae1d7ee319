#pragma once

#include "check/facts.h"

#include <vector>

namespace doorloom {

// Settled positions of a situation: one, or in the loss and fire situations one for every throw of the programmed
// outputs that matter to this load. Empty: they never settle.
std::vector<Position> positionsIn(const Facts& facts, const Opening& opening, const Situation& situation,
                                  std::uint32_t element);

enum class LockState { Locked, Free, Unknown };
LockState lockStateAt(const Facts& facts, const Position& position, const Lock& lock, std::uint32_t element);

} // namespace doorloom
