#pragma once

#include "check/finding.h"
#include "edit/operations.h"

#include <string>
#include <utility>

namespace doorloom {

// Somebody answers for a finding: it stays in every report, with these words, and counts no more.
// Errors: a danger, or one that holds a danger; no reason, name or date; a finding that is set aside already
Result<std::pair<SetAsideId, Change>> setAside(const Job& job, Numbers& numbers, const Finding& finding,
                                               std::string reason, std::string name, std::string date);
// It counts again.
Result<Change> takeUpAgain(const Job& job, SetAsideId row);

} // namespace doorloom
