#pragma once

#include "check/finding.h"
#include "verdict/verdict.h"

#include <vector>

namespace doorloom {

struct CheckResult {
    std::vector<Finding> findings; // the worst first; each root once, what follows from it as its lines
    Coverage coverage;
    bool everyQuestionAnswered = true;
};

// Judges a job by every rule.
// In:   steps for each question
// Cost: what hangs together is judged by itself; each finding's remedies are tried on a copy of that part
CheckResult checkJob(const Job& job, std::uint64_t budget = commandBudget);
std::vector<Finding> findingsOf(const Job& job, std::uint64_t budget = commandBudget);

} // namespace doorloom
