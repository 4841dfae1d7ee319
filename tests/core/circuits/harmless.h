#pragma once

#include "model/job.h"

#include <string>
#include <vector>

namespace doorloom {

// An edit that changes no verdict.
struct Harmless {
    std::string name;
    Job job;
    std::string tagPrefix{}; // put before every device's tag
};

// Ends of dry contacts, strikes and conductors exchanged; landings moved along conductors that the right form
// has as well (never along the wire that is wrong); a capped spare; other tags; conductors and ids in another
// order. At most `mostMoves` landings are moved, spread over the job.
std::vector<Harmless> harmlessEdits(const Job& job, const Job& right, std::size_t mostMoves);

} // namespace doorloom
