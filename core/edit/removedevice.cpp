#include "edit/operations.h"
#include "edit/removal.h"
#include "edit/rownames.h"

namespace doorloom {

Result<Change> removeDevice(const Job& job, DeviceId device)
{
    const Device* row = job.devices.find(device);
    if (!row)
        return notInJob(nounOf<Device>());
    if (row->standing == Standing::LeaveAlone)
        return leftAlone(row->tag);
    Draft draft(job);
    removeRows(draft, {device.number});
    return draft.change();
}

} // namespace doorloom
