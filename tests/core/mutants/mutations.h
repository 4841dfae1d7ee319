#pragma once

#include "model/job.h"

#include <functional>
#include <string>
#include <vector>

namespace doorloom {

// A right job with one mistake in its wiring.
struct Mutant {
    std::string name;
    std::function<Job()> made; // throws std::runtime_error where the job refuses it
};

struct KindOfMutation {
    std::string name;
    std::function<std::vector<Mutant>(const Job&)> everywhere; // at every place of the job where it makes sense; the job must outlive it
};

std::vector<KindOfMutation> conductorMutations(); // a conductor that lies otherwise
std::vector<KindOfMutation> deviceMutations();    // a device that is set, turned or chosen otherwise
std::vector<KindOfMutation> addedMutations();     // something that is there besides
std::vector<KindOfMutation> allMutations();

} // namespace doorloom
