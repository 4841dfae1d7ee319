#pragma once

#include "solve/readings.h"
#include "verdict/questions.h"

#include <vector>

namespace doorloom {

// Operators whose contacts lead from each dry input to a load or a resistor, past neither its own reference nor a pole: volts may
// come to it that way, though no load is fed by it.   Out: by input; none where nothing leads there.   Cost: what hangs on each input
std::vector<std::vector<MovedIndex>> operatorsTowardsLoads(const Meter& meter, const Questions& ask);

} // namespace doorloom
