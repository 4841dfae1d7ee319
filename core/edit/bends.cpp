#include "edit/drawing.h"

#include "edit/removal.h"
#include "edit/rownames.h"

#include <utility>

namespace doorloom {

const Bends* bendsOf(const Job& job, ConductorId conductor)
{
    for (std::uint32_t user : referrersOf(job, conductor.number))
        if (const Bends* bends = job.bends.find({user}))
            return bends;
    return nullptr;
}

Result<Change> pinBends(const Job& job, Numbers& numbers, ConductorId conductor, std::vector<Point> pinned)
{
    if (!job.conductors.find(conductor))
        return notInJob(nounOf<Conductor>());
    if (pinned.empty())
        return clearBends(job, {conductor.number});
    Draft draft(job);
    const Bends* bends = bendsOf(job, conductor);
    draft.put(Bends{bends ? bends->id : BendsId{numbers.take()}, conductor, std::move(pinned)});
    return draft.change();
}

Change clearBends(const Job& job, const std::vector<std::uint32_t>& conductors)
{
    Draft draft(job);
    for (std::uint32_t conductor : conductors)
        if (const Bends* bends = bendsOf(job, {conductor}))
            removeRows(draft, {bends->id.number});
    return draft.change();
}

} // namespace doorloom
