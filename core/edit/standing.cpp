#include "edit/details.h"

#include "edit/draft.h"
#include "edit/placing.h"
#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <utility>

namespace doorloom {

Result<Change> setWords(const Job& job, DeviceId device, std::string words)
{
    Draft draft(job);
    Device* row = draft.edit(device);
    if (!row)
        return notInJob(nounOf<Device>());
    row->words = std::move(words);
    return draft.change();
}

Change setStanding(const Job& job, const std::vector<std::uint32_t>& rows, Standing standing)
{
    Draft draft(job);
    for (std::uint32_t row : rows) {
        if (Device* device = draft.edit(DeviceId{row}))
            device->standing = standing;
        if (Conductor* conductor = draft.edit(ConductorId{row}))
            conductor->standing = standing;
        if (Cable* cable = draft.edit(CableId{row})) {
            cable->standing = standing;
            for (const Conductor* core : coresOf(job, cable->id))
                draft.edit(core->id)->standing = standing;
        }
    }
    return draft.change();
}

Result<Change> releaseRole(const Job& job, Numbers& numbers, DeviceId device, const Key& role)
{
    Draft draft(job);
    Device* row = draft.edit(device);
    if (!row)
        return notInJob(nounOf<Device>());
    const Kind& kind = *kindOf(job, *row);
    const Role* known = findRole(kind, role);
    if (!known)
        return noSuchRole(*row, kind, role);
    const Operator* bound = job.operators.find(boundTo(*row, role));
    if (bound && bound->owner == device && bound->ownerRole == role)
        return Change{};
    const OperatorId own{numbers.take()};
    draft.put(ownOperator(own, device, *known));
    for (Binding& binding : row->bindings)
        if (binding.role == role)
            binding.moved = own;
    return draft.change();
}

} // namespace doorloom
