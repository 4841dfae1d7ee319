#include "edit/duplicatedoor.h"

#include "edit/doorcopy.h"
#include "edit/tagrules.h"

#include <utility>

namespace doorloom {

std::vector<DeviceId> devicesOf(const Job& job, OpeningId opening)
{
    std::vector<DeviceId> devices;
    if (const Opening* row = job.openings.find(opening))
        for (std::uint32_t number : rowsOfDoor(job, *row).joints)
            if (job.devices.find({number}))
                devices.push_back({number});
    return devices;
}

Result<DuplicatedDoor> duplicateDoor(const Job& job, Numbers& numbers, OpeningId opening, std::string tag)
{
    const Opening* row = job.openings.find(opening);
    if (!row)
        return notInJob(nounOf<Opening>());
    if (!tag.empty())
        if (auto problem = newTagProblem(job.openings, {}, tag))
            return *std::move(problem);
    DrawingAgain drawing(job, numbers);
    const std::string fresh = tag.empty() ? drawing.tags.opening(row->tag) : tag;
    return doorAgain(drawing, rowsOfDoor(job, *row), {}, fresh);
}

} // namespace doorloom
