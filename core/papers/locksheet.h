#pragma once

#include "papers/tablepaper.h"

namespace doorloom {

extern const Text locksTitle;

// Every lock in every situation of its opening, beside what the opening promises.
// In: digestOf(job) (core/file)
TablePaper lockTables(const Job& job, std::string digest, Language language);

} // namespace doorloom
