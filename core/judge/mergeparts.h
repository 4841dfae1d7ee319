#pragma once

#include "check/finding.h"
#include "judge/division.h"
#include "judge/wiring.h"

#include <vector>

namespace doorloom {

// What was found in one division.
struct FoundIn {
    const Division* rows;
    const std::vector<Finding>* findings;
};

// The findings of all divisions together. What is said at rows that several divisions share is said once, with the ways of
// all of them; what one remedy mends in several divisions, as a rail's missing return, is one finding and its lines.
// In:   nextNumber: rows that a remedy would add are numbered from here on
// Cost: linear in the findings
std::vector<Finding> mergedFindings(const Wiring& wiring, const std::vector<FoundIn>& found, std::uint32_t nextNumber);

} // namespace doorloom
