#pragma once

#include "model/job.h"

#include <string>
#include <vector>

namespace doorloom {

// A broken job and its corrected twin.
struct MistakeSample {
    std::string name;
    Job broken, right;
};

std::vector<MistakeSample> wiringMistakes(); // what the circuits and simplest wirings have no wrong form of
std::vector<MistakeSample> openingMistakes(); // of what an opening promises
std::vector<MistakeSample> cableMistakes();   // of cables, colours, places and data
// All that there are: these, every wrong form of the judged circuits by its name, every slip as "slip of KIND".
std::vector<MistakeSample> mistakeSamples();

} // namespace doorloom
