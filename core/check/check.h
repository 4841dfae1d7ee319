#pragma once

#include "check/facts.h"
#include "check/finding.h"

#include <span>
#include <string_view>
#include <vector>

namespace doorloom {

// A rule: constant data and a plain function over Facts. The same facts give the same findings in the same order.
struct Check {
    std::string_view code; // stable: it stands in files, settings and test names
    Severity worst;        // each Finding has its own
    Text title;
    Text notCovered;       // what it does not look at
    std::vector<Finding> (*run)(const Facts&) = nullptr; // looks at what hangs together …
    std::vector<Finding> (*runOnJob)(const Job&) = nullptr; // … or at the whole job
    bool readsFigures = false; // volts and amperes of every position, which are dear
};

// In the order in which one speaks before another when each would mend the other.
std::span<const Check* const> allChecks();
const Check* checkCalled(std::string_view code);

} // namespace doorloom
