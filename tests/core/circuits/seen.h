#pragma once

#include "edit/change.h"
#include "model/job.h"

#include <cstdint>
#include <set>
#include <string>
#include <vector>

namespace doorloom {

using ThrowSets = std::set<std::set<std::string>>;

// A finding with its words taken apart, so that tests compare it without looking at sentences.
struct Seen {
    std::string rule, severity, at;
    ThrowSets throws{};
    std::string reason{}; // why never fed; empty for others
    std::vector<Seen> lines{};
    std::string names;       // everything that fills its sentences
    std::string remedyNames; // everything that fills its remedy
    std::vector<Change> remedies{};

    // What it is known by: neither its sentences nor the order of its lines.
    std::string known() const;
};

// What the checks find, in their order.
std::vector<Seen> seenIn(const Job& job, std::uint64_t budget);

// "KS1=on R2=rest" as a set of words.
ThrowSets throwSets(const std::vector<std::string>& cubes);
std::string inWords(const ThrowSets& throws);
// The finding with its lines, one a row, for failures.
std::string written(const Seen& seen);

} // namespace doorloom
