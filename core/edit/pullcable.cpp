#include "edit/operations.h"
#include "edit/removal.h"
#include "edit/rownames.h"

#include <utility>

namespace doorloom {

namespace {

Conductor coreRow(ConductorId id, const Cable& cable, int number)
{
    Conductor row;
    row.id = id;
    row.tag = cable.tag + "." + std::to_string(number);
    row.make = ConductorMake::Core;
    row.cable = cable.id;
    row.core = number;
    row.standing = cable.standing;
    return row;
}

} // namespace

std::pair<CableId, Change> pullCable(const Job& job, Numbers& numbers, Cable cable)
{
    cable.id = {numbers.take()};
    Change change{{Put<Cable>{cable.id, cable}}};
    if (const CableType* type = job.cableTypes.find(cable.type))
        for (const Core& core : type->cores) {
            const ConductorId id{numbers.take()};
            change.steps.emplace_back(Put<Conductor>{id, coreRow(id, cable, core.number)});
        }
    return {cable.id, std::move(change)};
}

Result<Change> removeCable(const Job& job, CableId cable)
{
    const Cable* row = job.cables.find(cable);
    if (!row)
        return notInJob(nounOf<Cable>());
    if (row->standing == Standing::LeaveAlone)
        return leftAlone(row->tag);
    Draft draft(job);
    removeRows(draft, {cable.number});
    return draft.change();
}

} // namespace doorloom
