#pragma once

#include "papers/tablepaper.h"

namespace doorloom {

extern const Text findingsTitle;

// What was found, the worst first, what is set aside and by whom, how much was looked at, and who signs for it.
// In:   digestOf(job) (core/file)
// Cost: a check of the job
TablePaper findingsTables(const Job& job, std::string digest, Language language);

} // namespace doorloom
