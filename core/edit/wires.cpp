#include "edit/operations.h"
#include "edit/removal.h"
#include "edit/rownames.h"

#include <utility>

namespace doorloom {

std::pair<ConductorId, Change> addWire(const Job&, Numbers& numbers, End from, End to, std::string tag)
{
    Conductor wire;
    wire.id = {numbers.take()};
    wire.tag = std::move(tag);
    wire.from = std::move(from);
    wire.to = std::move(to);
    return {wire.id, {{Put<Conductor>{wire.id, wire}}}};
}

Result<Change> takeOff(const Job& job, ConductorId conductor)
{
    const Conductor* row = job.conductors.find(conductor);
    if (!row)
        return notInJob(nounOf<Conductor>());
    if (row->standing == Standing::LeaveAlone)
        return leftAlone(nameOfRow(job, *row));
    Draft draft(job);
    if (row->make == ConductorMake::Core) {
        Conductor* core = draft.edit(conductor);
        core->from = core->to = End{};
    } else {
        removeRows(draft, {conductor.number});
    }
    return draft.change();
}

Result<Change> setEnd(const Job& job, ConductorId conductor, WhichEnd which, End end)
{
    Draft draft(job);
    Conductor* row = draft.edit(conductor);
    if (!row)
        return notInJob(nounOf<Conductor>());
    if (row->standing == Standing::LeaveAlone)
        return leftAlone(nameOfRow(job, *row));
    if (const Landing* landing = landingOf(end)) {
        const Kind* kind = kindOf(job, landing->device);
        if (!kind)
            return notInJob(nounOf<Device>());
        if (!findTerminal(*kind, landing->terminal))
            return noSuchTerminal(job, *landing);
    }
    if (const SpliceId* splice = spliceOf(end); splice && !job.splices.find(*splice))
        return notInJob(nounOf<Splice>());
    if (end.state != EndState::Landed)
        end.on = std::monostate();
    (which == WhichEnd::From ? row->from : row->to) = std::move(end);
    return draft.change();
}

} // namespace doorloom
