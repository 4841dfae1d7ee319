#include "bench/dooredits.h"

#include "core/jobs.h"
#include "edit/operations.h"

#include <vector>

namespace doorloom::bench {

std::string someDoor(const Job& job, Random& random)
{
    auto opening = job.openings.begin();
    for (std::size_t steps = random.below(job.openings.size()); steps > 0; --steps)
        ++opening;
    return opening->tag.substr(4);
}

namespace {

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

constexpr DoorEdit edits[] = {
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

} // namespace

std::span<const DoorEdit> doorEdits() { return edits; }

} // namespace doorloom::bench
