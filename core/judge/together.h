#pragma once

#include "check/facts.h"
#include "check/finding.h"

#include <limits>
#include <vector>

// Parts of a job that are judged apart draw on the same supplies, and through the same conductors and contacts.
namespace doorloom {

// What one part asks of what it may share with others.
struct PartLoad {
    struct Through {
        DeviceId device;
        Key part;          // a source, contact or fuse of its kind
        double most = 0;   // amperes, with nominal volts
        double limit = 0;  // from which on something may be found
    };
    std::vector<Through> through;
    std::vector<NamedThrow> heaviest; // throws in which it draws most
    double drawn = 0;                 // amperes then
    double leastSpare = std::numeric_limits<double>::infinity(); // volts that the load with the least to spare has more than it needs, on battery
    double sharedOhms = 0;            // of the conductors that it shares with other parts, one after another
};

// In:   facts of the part alone   Cost: its figures, where nobody has asked for them yet
PartLoad loadOf(const Facts& facts);

// What only all parts together overload, or leave too few volts: with every part at its heaviest, all at once.
// Out:  each with the throws of as few parts as it takes; the heaviest first
// Cost: linear in the parts; where their sums come near a limit, a netlist of the whole job and a few solutions of it
std::vector<Finding> foundTogether(const Job& job, const std::vector<const PartLoad*>& parts, std::uint64_t budget);

} // namespace doorloom
