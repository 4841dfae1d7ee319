#pragma once

#include "edit/draft.h"

#include <cstdint>
#include <vector>

namespace doorloom {

// Takes rows out of the job. What makes no sense without them goes too: their placements and bends, the cores
// of a cable, the operators that a device owns and no other device is bound to. What does, forgets them:
// conductors' ends wait, openings lose locks, throws and promises, an operator whose owner goes keeps its
// name as a tag. Cost: what hangs on the rows
void removeRows(Draft& draft, const std::vector<std::uint32_t>& numbers);

// Whether a device other than this one has a role bound to the operator.
bool isBoundElsewhere(const Job& job, OperatorId moved, DeviceId than);

} // namespace doorloom
