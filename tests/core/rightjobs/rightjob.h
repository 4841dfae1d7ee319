#pragma once

#include "core/circuits/simplest.h"

#include <string>
#include <vector>

// Whole jobs as they are built, each followed by hand from plus through the load back to minus: the checks
// have nothing to say about them. Where one pole feeds many, a real job has a strip, left out here.
namespace doorloom {

struct RightJob {
    std::string name;
    std::string devices, wires, options{};
    std::vector<OpeningSketch> openings{};
};

std::vector<RightJob> rightRestrooms();
std::vector<RightJob> rightOperators(); // doors that a door operator swings
std::vector<RightJob> rightCardDoors(); // strikes and lever locks asked for by card, code or key
std::vector<RightJob> rightMagnets();   // locks that only electricity opens
std::vector<RightJob> allRightJobs();

Job jobOf(const RightJob& right);

} // namespace doorloom
