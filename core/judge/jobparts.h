#pragma once

#include "model/job.h"

#include <vector>

namespace doorloom {

// The job cut into what hangs together: by conductors, splices, shared operators and openings. Each part is a job
// with the same ids, so that findings of a part are findings of the whole. One part: the job itself.
// Drawings are left out.   Cost: linear in the job.
std::vector<Job> partsOf(const Job& job);

} // namespace doorloom
