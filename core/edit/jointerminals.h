#pragma once

#include "edit/landcores.h"

#include <string>

namespace doorloom {

// What two terminals should be joined with. As it is made: whatever is next.
struct ConductorWish {
    bool wire = false;  // a wire, though there be cables
    std::string colour; // IEC 60757 letters, of a core or of a wire
    int core = 0;       // a core's number; 0: any
    CableId cable;      // of this cable alone

    bool isOpen() const { return !wire && colour.empty() && core == 0 && !cable; }
};

// Joins two terminals (or splices) by the next free core of a cable between their places, or by a wire when
// they are in one place.
//  - a core that has one end on `a` (or `b`) already and waits on the other side comes first
//  - of several cables, the one that serves the device on the far side (where fewer cables end), then one
//  that
//    serves nobody there yet
//  - within a cable, cores in the order of its type
//  - spare cores are used only when they are wished for by colour or number
// Errors: a joint that is not there, one joint twice, joints that are joined already (unless a wish says
// how),
//         different places with no free core: says which cable to pull
Result<Landed> joinTerminals(const Job& job, Numbers& numbers, const LandingPoint& a, const LandingPoint& b,
                             const ConductorWish& wish = {});

} // namespace doorloom
