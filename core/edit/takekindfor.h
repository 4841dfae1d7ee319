#pragma once

#include "edit/operations.h"

#include <vector>

namespace doorloom {

// A kind into the job, and these devices made ones of it.
// Out:    the change, and a line for each thing that could not be carried over
// Errors: as setKind, of the first device that can't be one
Result<KindSwap> takeKindFor(const Job& job, const Kind& kind, const std::vector<DeviceId>& devices);

} // namespace doorloom
