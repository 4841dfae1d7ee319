#pragma once

#include "papers/tablepaper.h"

namespace doorloom {

extern const Text functionTestTitle;

// What to do at each door and what must be seen, situation by situation, before anybody uses it; then what no job can tell.
// In: digestOf(job) (core/file)
TablePaper functionTestTables(const Job& job, std::string digest, Language language);

} // namespace doorloom
