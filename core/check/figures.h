#pragma once

#include "solve/readings.h"
#include "solve/worst.h"
#include "verdict/questions.h"

#include <optional>
#include <vector>

namespace doorloom {

// What the readings of all settled positions come to: every throw of hands, sensors and programmed outputs that matters to a
// load, coils as the circuit gives; supplies live, conductors at 20 °C. AC in magnitude, and never in one sum with DC.
struct Figures {
    Coverage coverage; // see LookedAt
    // By element, where a load is fed: with supplies at their lowest, at the end of their batteries, at their highest (the
    // last two: where that is near its limits), and while it pulls in, supplies at their lowest.
    Worsts lowestVolts, lowestOnBattery, highestVolts, lowestPullingIn;
    // By element: volts, with their sign, of a load that is not fed and has more than its release volts: in the fewest throws.
    Worsts unfedVolts;
    // By dry input: volts at its terminal that a load or resistor lets through, past its own.
    Worsts inputVolts;
    // Amperes with supplies at their nominal volts, as ratings count them: out of a feed, through a joint either way; while
    // what one operator switches pulls in; out of a feed when its mains comes back, all that is fed at rest pulling in; and
    // out of a feed at its highest volts, were there no loads.
    Worsts outOfFeed, outPullingIn, outPastLoads;
    Worsts throughJoint, throughPullingIn;
    std::vector<double> outAtReturn;
    std::vector<double> outAtRest, throughAtRest; // amperes by feed, by joint
    double batteryShare = 1; // of the lowest volts of a supply, those at the end of its battery: the least of all
};

// In:   budget: steps; a position costs so many thousands of them
//       volts: in all positions, or the dear ones only where they come near a limit
// Cost: a few solutions for each position
enum class VoltsWanted { NearLimits, All };
Figures figuresOf(const Job& job, const Netlist& net, const Questions& ask, std::uint64_t budget,
                  VoltsWanted volts = VoltsWanted::NearLimits);
// Of these positions alone, and nothing of what pulls in.   Cost: a few solutions each
Figures figuresIn(const Job& job, const Netlist& net, const Questions& ask, const std::vector<Position>& positions);

} // namespace doorloom
