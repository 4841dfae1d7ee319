#pragma once

#include "check/facts.h"

#include <vector>

namespace doorloom {

// A time, set on a device, that is short for what it asks of a door operator.
struct ShortTime {
    enum class Of { Hold, Delay } of = Of::Hold;
    DeviceId device; // on which it is set
    Key setting;
    DeviceId doorOperator;
    double seconds = 0, mustExceed = 0;
};

std::vector<ShortTime> shortTimes(const Facts& facts);

} // namespace doorloom
