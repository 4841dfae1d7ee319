#pragma once

#include "check/remedies.h"

#include <utility>
#include <vector>

namespace doorloom {

enum class OldPlace { ClosedUp, LeftOpen };

// Remedies that put a contact which opens with these throws into a conductor of the load's plus side. Where it was, its two
// conductors are closed up again, or the one is taken off. One that has nothing on one side is given what leads on.
void addContactsIntoPlus(const Facts& facts, std::uint32_t element, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws,
                         OldPlace oldPlace, Remedies& remedies);

} // namespace doorloom
