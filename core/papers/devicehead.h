#pragma once

#include "papers/carries.h"
#include "papers/schedule.h"

namespace doorloom {

// What must be done before any work on a device: leave it alone or not, what to switch off, jumpers with the
// position of every one. What is not from a sheet carries a †.
std::vector<Message> beforeWork(const Job& job, const Device& device, const Carries& carries);
// Settings and clamps, with † likewise.
std::vector<Message> factsOf(const Kind& kind, const Device& device);

Message titleOf(const Kind& kind);

// For programs: 'K1.JA=wet; K1.JB=' (nothing after '=': not chosen), 'hold=6; mode=pulse'.
std::string optionsText(const Kind& kind, const Device& device);
std::string settingsText(const Kind& kind, const Device& device);

} // namespace doorloom
