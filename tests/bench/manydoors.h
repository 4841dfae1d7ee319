#pragma once

#include "model/job.h"

namespace doorloom::bench {

// How right doors, each with a relay module, a strike, a door switch, two wave actuators and a lamp, are fed.
enum class Feeding {
    EachItsOwn,     // a supply for each door, nothing in common
    SharedMinus,    // a supply for each door, all minuses tied along strips
    OneSupply       // one supply for all, along strips
};

// Nearly that many devices: 2,500 have some 9,000 conductors.
Job manyDoors(Feeding feeding, int devices = 2'500);

} // namespace doorloom::bench
