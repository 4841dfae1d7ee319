#include "bench/dooredits.h"
#include "bench/manydoors.h"
#include "bench/measure.h"
#include "judge/checker.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <map>

// Checking 2,500 devices: the first time, and after one edit.
namespace doorloom::bench {

namespace {

constexpr double mostFirst = 500, mostAfterEdit = 16, mostInOneDoor = 1; // milliseconds

struct Shape {
    const char* name;
    Feeding feeding;
};
constexpr Shape shapes[] = {{"own supplies", Feeding::EachItsOwn},
                            {"shared minus", Feeding::SharedMinus},
                            {"one supply", Feeding::OneSupply}};

bool checksFirst(Gate gate)
{
    bool within = true;
    for (const Shape& shape : shapes) {
        const Job job = manyDoors(shape.feeding);
        std::size_t findings = 0;
        within = isWithin(fmt::format("check {}", shape.name).c_str(), mostFirst, gate,
                          [&] { findings = checkJob(job, windowBudget).findings.size(); }) &&
                 within;
        std::printf("  %zu devices, %zu conductors, %zu findings\n", job.devices.size(), job.conductors.size(), findings);
    }
    return within;
}

// Forty edits of each kind, each of them undone; the rows of single kinds have no gate.
void checkAfterEdits(const char* name, Job job, double mostMilliseconds, Percentiles& rows)
{
    Checker checker;
    checker.check(job);
    Random random(5);
    std::vector<double> all;
    for (const auto& [kind, make] : doorEdits()) {
        std::vector<double> times;
        const auto check = [&] {
            const double start = threadMilliseconds();
            checker.check(job);
            times.push_back(threadMilliseconds() - start);
        };
        for (int i = 0; i < 40; ++i) {
            const Result<Change> back = applyChange(job, make(job, someDoor(job, random), random));
            check();
            if (back.ok() && applyChange(job, back.value()).ok())
                check();
        }
        all.insert(all.end(), times.begin(), times.end());
        Percentiles(Gate::Off).tell(fmt::format("  {}", kind).c_str(), std::move(times), mostMilliseconds);
    }
    rows.tell(fmt::format("edit, {}", name).c_str(), std::move(all), mostMilliseconds);
}

bool checksAfterEdits(Gate gate)
{
    Percentiles rows(gate);
    checkAfterEdits("one door", manyDoors(Feeding::EachItsOwn, 9), mostInOneDoor, rows);
    for (const Shape& shape : shapes)
        checkAfterEdits(shape.name, manyDoors(shape.feeding), mostAfterEdit, rows);
    return rows.areWithin();
}

} // namespace

extern const Row firstCheck, editCheck;
const Row firstCheck = {"check", checksFirst};
const Row editCheck = {"recheck", checksAfterEdits};

} // namespace doorloom::bench
