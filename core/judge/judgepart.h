#pragma once

#include "check/finding.h"
#include "judge/together.h"
#include "model/job.h"
#include "verdict/verdict.h"

#include <vector>

namespace doorloom {

struct JudgedPart {
    std::vector<Finding> findings; // each root once, what follows from it as its lines
    Coverage coverage;
    PartLoad load;
};

// Judges one part of a job by every rule that looks at a part.
// In:   what partsOf gives; steps for each question
// Cost: each finding's remedies are tried on a copy of the part
JudgedPart judgePart(const Job& part, std::uint64_t budget);

// What the rules find that look at the whole job.
std::vector<Finding> judgeWhole(const Job& job);

} // namespace doorloom
