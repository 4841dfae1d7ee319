#pragma once

#include "core/random.h"
#include "model/job.h"

namespace doorloom {

// What conductors of a random job are of: metric sizes have the ohms of their table, to the last digit.
enum class Copper { Metric, Awg };

// One or two supplies, tied by a minus, stacked or apart, and a handful of loads, contacts, relays, modules and diodes wired
// as if somebody had meant something by it. At most seven operators.
Job randomSmallJob(Random& random, Copper copper);

// Gives a conductor another gauge and length: of some copper, or of none.
void setCopper(Job& job, ConductorId conductor, Random& random, Copper copper);

} // namespace doorloom
