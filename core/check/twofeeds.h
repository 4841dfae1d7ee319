#pragma once

#include "check/facts.h"
#include "check/finding.h"
#include "check/tell.h"

#include <vector>

// The cases of the rule 'two feeds' that have files of their own. Each adds what it finds.
namespace doorloom {

// At: the sources, in the order of their numbers.
Finding twoFeedsAt(const Facts& facts, const std::vector<std::uint32_t>& feeds, Severity severity,
                   std::string_view reason, const Verdict& verdict);

// May they stand side by side, and do their volts overlap?
bool mayStandTogether(const Feed& one, const Feed& other);

// Three sources or more in one ring, pole to pole.
void findSourceRings(const Facts& facts, std::vector<Finding>& findings);
// Feeds of one source, each with its own fuse, joined past their fuses.
void findJoinedPastFuses(const Facts& facts, std::vector<Finding>& findings);
// A load that stands between like poles of two sources in some positions: the higher pushes through it.
void findLoadsBetweenFeeds(const Facts& facts, std::vector<Finding>& findings);

} // namespace doorloom
