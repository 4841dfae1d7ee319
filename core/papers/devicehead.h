#pragma once

#include "papers/carries.h"
#include "papers/schedule.h"

namespace doorloom {

// What stands above a device's terminals, in the order of work: leave alone or not, what to switch off,
// jumpers with the position of every one, settings, clamps. What is not from a sheet carries a †.
std::vector<Message> headOf(const Job& job, const Device& device, const Carries& carries);

Message titleOf(const Kind& kind);

// For programs: 'K1.JA=wet; K1.JB=' (nothing after '=': not chosen), 'hold=6; mode=pulse'.
std::string optionsText(const Kind& kind, const Device& device);
std::string settingsText(const Kind& kind, const Device& device);

} // namespace doorloom
