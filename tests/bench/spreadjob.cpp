#include "bench/spreadjob.h"

#include "bench/largejob.h"
#include "sheet/arrangement.h"
#include "edit/drawing.h"

#include <stdexcept>
#include <vector>

namespace doorloom::bench {

Job spreadJob()
{
    Job job = largeJob();
    std::vector<std::uint32_t> devices;
    for (const Device& device : job.devices)
        devices.push_back(device.id.number);
    Change change;
    for (const Arranged& each : arranged(job, devices, {300, 300})) {
        Placement placement = *placementOf(job, each.number);
        placement.at = each.seat.at;
        placement.quarterTurns = static_cast<int>(each.seat.facing);
        change.steps.emplace_back(Put<Placement>{placement.id, placement});
    }
    if (const Result<Change> made = applyChange(job, change); !made.ok())
        throw std::runtime_error(inWords(made.problem()));
    return job;
}

} // namespace doorloom::bench
