#pragma once

#include "solve/readings.h"
#include "verdict/questions.h"

#include <optional>
#include <vector>

namespace doorloom {

// The worst of one reading over the positions looked at, and the position of it with the fewest throws away from rest.
struct Worst {
    double value = 0;
    Position at;
};

// What the readings of all settled positions come to: every throw of hands, sensors and programmed outputs that matters to a
// load, coils as the circuit gives; supplies live, conductors at 20 °C.
struct Figures {
    // Where they are more than the budget allows: rest, what draws most, and on top of that each load's own operators.
    Coverage coverage;
    // By element; nothing: no load, or never fed; on battery and highest
    // also: far from too few or too many.
    std::vector<std::optional<Worst>> lowestVolts, lowestOnBattery, highestVolts; // with supplies at their lowest, at the end of
                                                                                  // their batteries, at their highest
    // Amperes with supplies at their nominal volts, as ratings count them.
    std::vector<std::optional<Worst>> mostOutOfFeed, mostThroughJoint; // by feed; by joint, either way
};

// In:   budget: steps; a position costs so many thousands of them
// Cost: a few solutions for each position
Figures figuresOf(const Job& job, const Netlist& net, const Questions& ask, std::uint64_t budget);

} // namespace doorloom
