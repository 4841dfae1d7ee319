#include "edit/operations.h"
#include "edit/removal.h"
#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <algorithm>

namespace doorloom {

namespace {

// What an opening said of one operator it now says of another, which does the same. Where it spoke of both,
// what it said of the other stays.
void follow(Opening& opening, OperatorId before, OperatorId after)
{
    const auto replace = [&](OperatorId& id) {
        if (id == before)
            id = after;
    };
    const auto replaceThrows = [&](std::vector<Thrown>& throws) {
        if (std::any_of(throws.begin(), throws.end(),
                        [&](const Thrown& each) { return each.moved == after; }))
            std::erase_if(throws, [&](const Thrown& each) { return each.moved == before; });
        for (Thrown& thrown : throws)
            replace(thrown.moved);
    };
    replace(opening.door);
    replace(opening.fire);
    for (auto* acts : {&opening.requests, &opening.releases})
        for (Act& act : *acts)
            replaceThrows(act.throws);
    replaceThrows(opening.occupied);
    const std::vector<Promise> said = opening.promises;
    std::erase_if(opening.promises, [&](const Promise& promise) {
        return promise.situation.lost == before &&
               std::any_of(said.begin(), said.end(), [&](const Promise& each) {
                   return each.situation.lost == after && each.device == promise.device;
               });
    });
    for (Promise& promise : opening.promises)
        replace(promise.situation.lost);
}

void retire(Draft& draft, OperatorId before, OperatorId after)
{
    for (std::uint32_t user : referrersOf(draft.job(), before.number))
        if (draft.job().openings.find({user}))
            follow(*draft.edit(OpeningId{user}), before, after);
    removeRows(draft, {before.number});
}

} // namespace

Result<Change> bindRole(const Job& job, DeviceId device, const Key& role, OperatorId moved)
{
    Draft draft(job);
    Device* row = draft.edit(device);
    const Operator* mover = job.operators.find(moved);
    if (!row)
        return notInJob(nounOf<Device>());
    if (!mover)
        return notInJob(nounOf<Operator>());
    const Kind& kind = *kindOf(job, *row);
    const Role* known = findRole(kind, role);
    if (!known)
        return noSuchRole(*row, kind, role);
    if (!sameThrows(known->throws, mover->throws))
        return throwsDoNotMatch(job, *row, *known, *mover);
    const OperatorId before = boundTo(*row, role);
    for (Binding& binding : row->bindings)
        if (binding.role == role)
            binding.moved = moved;
    const bool stillBound = std::any_of(row->bindings.begin(), row->bindings.end(),
                                        [&](const Binding& binding) { return binding.moved == before; });
    if (!stillBound && job.operators.find(before)->owner && !isBoundElsewhere(job, before, device))
        retire(draft, before, moved);
    return draft.change();
}

std::vector<OperatorId> operatorsFor(const Job& job, DeviceId device, const Key& role)
{
    const Kind* kind = kindOf(job, device);
    const Role* known = kind ? findRole(*kind, role) : nullptr;
    std::vector<OperatorId> movers;
    for (const Operator& moved : job.operators)
        if (known && moved.nature == known->nature && sameThrows(known->throws, moved.throws))
            movers.push_back(moved.id);
    return movers;
}

Result<Change> setIdle(const Job& job, OperatorId moved, const Key& idle)
{
    Draft draft(job);
    Operator* row = draft.edit(moved);
    if (!row)
        return notInJob(nounOf<Operator>());
    if (!findThrow(row->throws, idle))
        return noSuchThrowAtRest(nameOf(job, *row), row->throws, idle);
    row->idle = idle;
    return draft.change();
}

} // namespace doorloom
