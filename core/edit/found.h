#pragma once

#include "model/job.h"

#include <cstdint>
#include <string_view>
#include <vector>

namespace doorloom {

struct Found {
    std::uint32_t row = 0;
    std::string tag; // to show first
    Message words;   // what it is, and where
};

// Rows of a job by their tags and words: devices, cables, conductors, splices, places, openings, notes,
// sheets. In:   letters: one word or several, all of which must be found; capitals and accents don't matter
// Out:  the best first: tags that are the word, tags that begin with it, tags that have it, then words; at
// most
//       `most`. Nothing for no letters.
// Cost: a walk along the job's tags and words: under 5 ms for 10,000 conductors (measured, tests/bench)
std::vector<Found> found(const Job& job, std::string_view letters, Language language = Language::English,
                         std::size_t most = 100);

} // namespace doorloom
