#pragma once

#include "judge/findings.h"
#include "model/job.h"

namespace doorloom {

// What stands at the head of every sheet while it is not mended: the worst first, a few of them, and how many more there are.
// A danger can't be set aside.
std::vector<Message> dangersOf(const Job& job, const CheckResult& result);

} // namespace doorloom
