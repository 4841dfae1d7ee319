#include "edit/draft.h"
#include "edit/operations.h"
#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <utility>

namespace doorloom {

Result<Change> renameDevice(const Job& job, DeviceId device, std::string tag)
{
    Draft draft(job);
    Device* row = draft.edit(device);
    if (!row)
        return notInJob(nounOf<Device>());
    row->tag = std::move(tag);
    if (auto problem = tagProblem(*row))
        return *std::move(problem);
    if (const Device* other = deviceTagged(job, row->tag); other && other->id != device)
        return tagUsedTwice(*row);
    return draft.change();
}

} // namespace doorloom
