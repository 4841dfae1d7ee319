#pragma once

#include "check/facts.h"
#include "check/finding.h"
#include "judge/division.h"

#include <limits>
#include <vector>

// Parts of a job that are judged apart draw on the same supplies, and through the same conductors and contacts.
namespace doorloom {

// What one part asks of what it may share with others.
struct PartLoad {
    struct Through {
        DeviceId device;
        Key part;          // a source, contact or fuse of its kind
        double atRest = 0, most = 0; // amperes, with nominal volts
        double limit = 0;            // from which on something may be found
        std::vector<NamedThrow> throws; // in which it is most
    };
    std::vector<Through> through;
    std::vector<NamedThrow> heaviest; // throws in which it draws most
    double drawn = 0;                 // amperes then
    double leastSpare = std::numeric_limits<double>::infinity(); // volts that the load with the least to spare has more than it needs, on battery
    double sharedOhms = 0;            // of the conductors that it shares with other parts, one after another
    bool holdsOthers = false;         // loads that are judged in another part draw here too
};

struct LoadedPart {
    const Division* rows;
    const PartLoad* load;
};

// In:   facts of the part alone   Cost: its figures, where nobody has asked for them yet
PartLoad loadOf(const Facts& facts);

// What only all parts together overload, or leave too few volts: with every part at its heaviest, all at once.
// Out:  each with the throws of as few parts as it takes; the heaviest first
// Cost: linear in the parts. Where what they share has no ohms their sums are exact; where it has, and the sums come near a
//       limit, a netlist of the whole job and a few solutions of it
std::vector<Finding> foundTogether(const Job& job, const std::vector<LoadedPart>& parts, std::uint64_t budget);

} // namespace doorloom
