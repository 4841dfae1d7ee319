#pragma once

#include "model/job.h"

namespace doorloom::bench {

// How some 300 right doors, each with a relay module, a strike, a door switch, two wave actuators and a lamp, are fed.
enum class Feeding {
    EachItsOwn,     // a supply for each door, nothing in common
    SharedMinus,    // a supply for each door, all minuses tied along strips
    OneSupply       // one supply for all, along strips
};

// 2,500 devices and 9,000 to 10,000 conductors.
Job manyDoors(Feeding feeding);

} // namespace doorloom::bench
