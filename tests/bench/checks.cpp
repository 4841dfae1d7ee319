#include "bench/manydoors.h"
#include "bench/measure.h"
#include "core/jobs.h"
#include "core/random.h"
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

std::string someDoor(const Job& job, Random& random)
{
    auto opening = job.openings.begin();
    for (std::size_t steps = random.below(job.openings.size()); steps > 0; --steps)
        ++opening;
    return opening->tag.substr(4);
}

ConductorId someConductorOn(const Job& job, DeviceId device, Random& random)
{
    const auto conductors = conductorsOn(job, device);
    return conductors[random.below(conductors.size())]->id;
}

Landing someLanding(const Job& job, DeviceId device, Random& random)
{
    const auto terminals = terminalsOf(*kindOf(job, device));
    return {device, terminals[random.below(terminals.size())]->key};
}

// The return of one door, or of seven.
Change withoutTrunkReturn(const Job& job, const std::string& door, Random& random)
{
    const DeviceId strip = deviceTagged(job, "N" + door)->id;
    for (const Conductor* conductor : conductorsOn(job, strip)) {
        const Landing *from = landingOf(conductor->from), *to = landingOf(conductor->to);
        const DeviceId other = from->device == strip ? to->device : from->device;
        if (tagOf(job, other).starts_with("TN"))
            return takeOff(job, random.oneIn(2) ? conductor->id : someConductorOn(job, other, random)).value();
        if (tagOf(job, other).starts_with("PS"))
            return takeOff(job, conductor->id).value();
    }
    return {};
}

using Edit = std::pair<const char*, Change (*)(const Job&, const std::string& door, Random&)>;
const Edit edits[] = {
    {"land",
     [](const Job& job, const std::string& door, Random& random) {
         static const std::vector<std::string> tags{"LM", "WI", "WO", "ES", "OL", "DS", "P", "N"};
         const auto some = [&] { return someLanding(job, deviceTagged(job, random.oneOf(tags) + door)->id, random); };
         Numbers numbers(job);
         return addWire(job, numbers, End{EndState::Landed, some()}, End{EndState::Landed, some()}).second;
     }},
    {"unland",
     [](const Job& job, const std::string& door, Random& random) {
         static const std::vector<std::string> tags{"LM", "WI", "WO", "ES", "OL", "DS"};
         return takeOff(job, someConductorOn(job, deviceTagged(job, random.oneOf(tags) + door)->id, random)).value();
     }},
    {"option",
     [](const Job& job, const std::string& door, Random& random) {
         const DeviceId module = deviceTagged(job, "LM" + door)->id;
         return random.oneIn(2) ? setOption(job, module, "K1", "dry").value() : setOption(job, module, "K3", "wet").value();
     }},
    {"trunk return", withoutTrunkReturn},
};

// Forty edits of each kind, each of them undone; the rows of single kinds have no gate.
void checkAfterEdits(const char* name, Job job, double mostMilliseconds, Percentiles& rows)
{
    Checker checker;
    checker.check(job);
    Random random(5);
    std::vector<double> all;
    for (const auto& [kind, make] : edits) {
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
