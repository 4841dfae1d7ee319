#pragma once

#include "model/job.h"

#include <functional>
#include <vector>

namespace doorloom {

// Cores of this cable with an end on a terminal that is so, by number.
using IsTerminal = std::function<bool(const Device&, const Kind&, const Key&)>;
std::vector<const Conductor*> coresOn(const Job& job, CableId cable, const IsTerminal& isSo);

// Is this terminal one end of such a part of its kind, with the jumpers as they stand?
bool isOnLoadOfLock(const Device& device, const Kind& kind, const Key& terminal);
bool isSignal(const Device& device, const Kind& kind, const Key& terminal);
bool isMains(const Device& device, const Kind& kind, const Key& terminal);
bool isEarth(const Device& device, const Kind& kind, const Key& terminal); // or on a bar with it

} // namespace doorloom
