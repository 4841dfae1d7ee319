#pragma once

#include "check/facts.h"
#include "check/finding.h"

namespace doorloom {

// Dry inputs that are operated in every position, or in none. `why` and `remedy` have the gaps {input} and {reference}.
std::vector<Finding> inputsThatAre(Answer wanted, const Facts& facts, std::string_view rule, const Text& why, const Text& remedy);

} // namespace doorloom
