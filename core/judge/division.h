#pragma once

#include "model/job.h"

#include <algorithm>
#include <vector>

// Which rows of a job are judged together. What does not hang together is judged apart; and of what hangs on a common
// supply, each door that meets the others at the supply's rails alone.
namespace doorloom {

struct Division {
    std::vector<const JobKind*> kinds;
    std::vector<const Operator*> operators;
    std::vector<const Device*> devices;
    std::vector<const Splice*> splices;
    std::vector<const Conductor*> conductors;
    std::vector<const Opening*> openings;
    std::vector<std::uint32_t> shared;   // numbers of those that are judged elsewhere: supplies, and the way to them; sorted
    std::vector<std::uint32_t> carriers; // devices that only carry the way: here they have their links alone; sorted
    std::uint32_t key = 0;             // lowest number of a row that is judged here

    bool shares(std::uint32_t number) const { return std::binary_search(shared.begin(), shared.end(), number); }
    bool onlyCarries(DeviceId device) const { return std::binary_search(carriers.begin(), carriers.end(), device.number); }
};

// The same rows, the same values?   Cost: one look a row where the rows stand where they stood.
bool sameRows(const Division& one, const Division& other);

// The job with the rows of one division alone. Tables that no check of a part reads stay whole.
Job jobOf(const Division& division, const Job& job);

} // namespace doorloom
