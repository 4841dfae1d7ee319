#include "rightjob.h"

namespace doorloom {

std::vector<RightJob> allRightJobs()
{
    std::vector<RightJob> all;
    for (auto jobs : {rightRestrooms, rightOperators, rightCardDoors, rightMagnets})
        for (RightJob& job : jobs())
            all.push_back(std::move(job));
    return all;
}

Job jobOf(const RightJob& right)
{
    return drawnJob(right.devices, right.wires, right.options, right.openings);
}

} // namespace doorloom
