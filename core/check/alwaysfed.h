#pragma once

#include "check/facts.h"
#include "check/remedies.h"

namespace doorloom {

// Is a contact or switched output landed on one of the load's legs, and yet some source feeds it in every position?
bool alwaysFedPastASwitch(const Facts& facts, std::uint32_t element);

// Ends of the load's other leg that could go from a pole onto a terminal of that switch.
void addMovesOntoSwitch(const Facts& facts, std::uint32_t element, Remedies& remedies);

} // namespace doorloom
