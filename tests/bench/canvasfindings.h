#pragma once

#include <vector>

namespace doorloom::bench {

// CPU milliseconds of the window's thread for one edit's new list of 10,000 findings, cleared, filled and
// painted; one of them chosen.
std::vector<double> findingsFillTimes(int samples);

} // namespace doorloom::bench
