#pragma once

#include "edit/operations.h"
#include "edit/renumber.h"

#include <cstdint>
#include <string>
#include <vector>

namespace doorloom {

struct DuplicatedDoor {
    OpeningId opening;
    Change change;
    std::vector<std::uint32_t> rows;  // the new devices and splices
    std::vector<Message> leftWaiting; // a line for each conductor that leads to what was not drawn again
    Renumbering again;                // from each row of the door to its copy
};

// The devices that are this opening's own: its locks and door operators, the owners of the operators that it
// names, what is bound to its leaf, and what is wired to nothing but these. Not supplies, and nothing that
// another opening names too.
std::vector<DeviceId> devicesOf(const Job& job, OpeningId opening);

// The opening with its own devices, operators, cables, wires, splices and promises once more, under the next
// tags. Places where only its devices are come again, others are shared; so are supplies and the fire alarm.
// What is drawn is drawn again on a sheet of its own. Conductors to what is shared wait at that end.
// In:     the new opening's tag; empty: counted on from the old one's
// Errors: an opening that is not there, or a tag that another has
Result<DuplicatedDoor> duplicateDoor(const Job& job, Numbers& numbers, OpeningId opening,
                                     std::string tag = {});

} // namespace doorloom
