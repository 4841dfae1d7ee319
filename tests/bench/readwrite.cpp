#include "bench/largejob.h"
#include "bench/measure.h"
#include "file/jobfile.h"

#include <cstdio>
#include <string>

namespace doorloom::bench {

namespace {

bool reads(Gate gate)
{
    const std::string text = jobText(largeJob());
    bool read = true;
    const bool within =
        isWithin("read", 150, gate, [&] { read = readJob(text, "large.doorjob").ok() && read; });
    if (!read)
        std::puts("read: the large job is refused");
    return within && read;
}

bool serialises(Gate gate)
{
    const Job job = largeJob();
    std::size_t bytes = 0;
    return isWithin("write", 80, gate, [&] { bytes += jobText(job).size(); });
}

// A hundred copies at once, so that the clock sees them.
bool copies(Gate gate)
{
    const Job job = largeJob();
    std::size_t rows = 0;
    return isWithin("100 snapshots", 10, gate, [&] {
        for (int copy = 0; copy < 100; ++copy)
            rows += Job(job).conductors.size();
    });
}

} // namespace

extern const Row readLarge, writeLarge, snapshotLarge;
const Row readLarge = {"read", reads};
const Row writeLarge = {"write", serialises};
const Row snapshotLarge = {"snapshot", copies};

} // namespace doorloom::bench
