#pragma once

#include "papers/tablepaper.h"

namespace doorloom {

extern const Text ringOutTitle;

// What an ohmmeter must read with all power off and batteries out, before power: each load, contact and diode from the far ends
// of its conductors, which are lifted for it; with blanks for what it does read.
// In:   digestOf(job) (core/file)
// Cost: as two ringOut for each of them
TablePaper ringOutTables(const Job& job, std::string digest, Language language);

} // namespace doorloom
