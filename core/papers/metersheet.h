#pragma once

#include "papers/tablepaper.h"

namespace doorloom {

extern const Text meterTitle;

// What a meter must read with power on, between two named terminals each: sources, loads and dry inputs; with blanks for what
// it does read.
// In:   digestOf(job) (core/file)
// Cost: a solution for each position looked at
TablePaper meterTables(const Job& job, std::string digest, Language language);

} // namespace doorloom
