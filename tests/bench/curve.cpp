#include "bench/dooredits.h"
#include "bench/manydoors.h"
#include "bench/measure.h"
#include "judge/checker.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

// How the check after one edit grows with the job. Told, not gated. CURVE=100000: up to so many conductors.
namespace doorloom::bench {

namespace {

constexpr int conductorsOfTenDevices = 36, editsOfAKind = 10;

std::vector<double> timesOfEdits(Job job)
{
    Checker checker;
    checker.check(job);
    Random random(7);
    std::vector<double> times;
    const auto check = [&] {
        const double start = threadMilliseconds();
        checker.check(job);
        times.push_back(threadMilliseconds() - start);
    };
    for (const DoorEdit& edit : doorEdits())
        for (int i = 0; i < editsOfAKind; ++i) {
            const Result<Change> back = applyChange(job, edit.make(job, someDoor(job, random), random));
            check();
            if (back.ok() && applyChange(job, back.value()).ok())
                check();
        }
    std::sort(times.begin(), times.end());
    return times;
}

bool tellsCurve(Gate)
{
    const char* wanted = std::getenv("CURVE");
    const int most = wanted ? std::atoi(wanted) : 10'000;
    for (const auto& [name, feeding] : {std::pair("own supplies", Feeding::EachItsOwn), std::pair("shared minus", Feeding::SharedMinus),
                                        std::pair("one supply", Feeding::OneSupply)})
        for (int conductors = 100; conductors <= most; conductors *= 10) {
            const Job job = manyDoors(feeding, conductors * 10 / conductorsOfTenDevices);
            const std::vector<double> times = timesOfEdits(job);
            std::printf("curve %-13s %7zu conductors  median %9.4f ms  p95 %9.4f ms\n", name, job.conductors.size(), times[times.size() / 2],
                        times[times.size() * 95 / 100]);
        }
    return true;
}

} // namespace

extern const Row editCurve;
const Row editCurve = {"curve", tellsCurve};

} // namespace doorloom::bench
