#pragma once

#include "check/facts.h"

#include <vector>

namespace doorloom {

// Something that starts a door operator by its own contact, all else as at rest.
struct Starter {
    MovedIndex moved;
    ThrowIndex thrown; // in which it starts it
};

// Out:  those that close this input by themselves; none where it is closed at rest or rest never settles
// In:   input: one that starts a door operator (activationOf)
std::vector<Starter> startersOf(const Facts& facts, std::uint32_t input);

} // namespace doorloom
