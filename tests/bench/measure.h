#pragma once

#include "bench/row.h"

#include <functional>
#include <vector>

// Thread CPU time: a wall clock measures others.
namespace doorloom::bench {

struct Times {
    double medianMilliseconds = 0;
    double spread = 0; // of the middle half of the runs, as a part of the median
};

// Nine runs, after one that warms up.
Times timesOf(const std::function<void()>& run);

double threadMilliseconds();       // CPU time of this thread so far
double otherThreadsMilliseconds(); // of the rest of the process
// How many times longer the calibration loop takes here than where the gates were set; at least 1.
double timesSlower();

// Measures, prints a line, and judges when the gate is on. The gate is the larger of the figure and as many
// times the calibration loop, run just before, as the figure was on the machine where the gates were set: on
// a slower machine it rises, on a faster one it stays. Out: false when it took longer. Not judged, and said
// so, while the runs differ by more than 15 %: after five
//      attempts the machine is too busy.
bool isWithin(const char* name, double mostMilliseconds, Gate gate, const std::function<void()>& run);

// Rows of which 95 of 100 runs have to be within a figure; it rises on a slower machine as above.
class Percentiles {
public:
    explicit Percentiles(Gate gate) : gate_(gate), slower_(gate == Gate::On ? timesSlower() : 1.0) {}

    // In: milliseconds of each run; what the same costs done bare, 0: not known
    void tell(const char* name, std::vector<double> times, double most, double floor = 0);
    bool areWithin() const { return areWithin_; } // all that were told

private:
    Gate gate_;
    double slower_;
    bool areWithin_ = true;
};

} // namespace doorloom::bench
