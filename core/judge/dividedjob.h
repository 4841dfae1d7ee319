#pragma once

#include "judge/division.h"
#include "judge/wiring.h"

#include <vector>

namespace doorloom {

// A job in the parts that are judged by themselves, for what is asked of single rows.
// Owns: nothing of the job, which must outlive it.   Cost: linear
struct DividedJob {
    explicit DividedJob(const Job& job);

    const Division* of(DeviceId device) const;   // null: it is judged in no part of its own
    const Division* of(OpeningId opening) const; // null: there is no such opening

    const Wiring wiring;
    const std::vector<Division> divisions;
};

} // namespace doorloom
