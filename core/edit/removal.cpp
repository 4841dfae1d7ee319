#include "edit/removal.h"

#include "edit/references.h"

#include <algorithm>
#include <cassert>
#include <set>

namespace doorloom {

namespace {

using Gone = std::set<std::uint32_t>;

template <class Thing> bool isGone(const Gone& gone, Id<Thing> id)
{
    return gone.count(id.number) > 0;
}

template <class Thing> void clearIfGone(const Gone& gone, Id<Thing>& id)
{
    if (isGone(gone, id))
        id = {};
}

// ---- Who goes

bool isBoundBySurvivor(const Job& job, OperatorId moved, const Gone& gone)
{
    const auto users = referrersOf(job, moved.number);
    return std::any_of(users.begin(), users.end(),
                       [&](std::uint32_t user) { return gone.count(user) == 0 && job.devices.find({user}); });
}

bool goesToo(const Job& job, const Operator& row, const Gone& gone)
{
    return row.owner && !isBoundBySurvivor(job, row.id, gone);
}
bool goesToo(const Job&, const Conductor& row, const Gone& gone)
{
    return isGone(gone, row.cable);
}
bool goesToo(const Job&, const Placement& row, const Gone& gone)
{
    return isGone(gone, row.sheet) || std::visit([&](auto id) { return isGone(gone, id); }, row.what);
}
bool goesToo(const Job&, const Bends& row, const Gone& gone)
{
    return isGone(gone, row.conductor);
}
bool goesToo(const Job&, const Note& row, const Gone& gone)
{
    return isGone(gone, row.sheet);
}
bool goesToo(const Job&, const Stamp& row, const Gone& gone)
{
    return isGone(gone, row.typical);
}

template <class Row> bool goesToo(const Job&, const Row&, const Gone&)
{
    return false;
}

// Rows around a row: they refer to it, or a device is bound to them.
std::vector<std::uint32_t> neighbours(const Job& job, std::uint32_t number)
{
    const auto users = referrersOf(job, number);
    std::vector<std::uint32_t> found(users.begin(), users.end());
    if (const Device* device = job.devices.find({number}))
        for (const Binding& binding : device->bindings)
            found.push_back(binding.moved.number);
    return found;
}

Gone closureOf(const Job& job, const std::vector<std::uint32_t>& numbers)
{
    Gone gone(numbers.begin(), numbers.end());
    std::vector<std::uint32_t> waiting = numbers;
    while (!waiting.empty()) {
        const std::uint32_t number = waiting.back();
        waiting.pop_back();
        for (std::uint32_t neighbour : neighbours(job, number))
            visitRow(job, neighbour, [&](const auto& row) {
                if (goesToo(job, row, gone) && gone.insert(neighbour).second)
                    waiting.push_back(neighbour);
            });
    }
    return gone;
}

// ---- Who forgets

void forget(const Job&, Device& row, const Gone& gone)
{
    clearIfGone(gone, row.place);
}

void forget(const Job& job, Operator& row, const Gone& gone)
{
    if (!isGone(gone, row.owner))
        return;
    row.tag = nameOf(job, row);
    row.owner = {};
    row.ownerRole.clear();
}

void forget(const Job&, Cable& row, const Gone& gone)
{
    clearIfGone(gone, row.from);
    clearIfGone(gone, row.to);
}

void forget(const Job&, Splice& row, const Gone& gone)
{
    clearIfGone(gone, row.place);
}

void forget(const Job&, Conductor& row, const Gone& gone)
{
    for (End* end : {&row.from, &row.to}) {
        const Landing* landing = landingOf(*end);
        const SpliceId* splice = spliceOf(*end);
        if ((landing && isGone(gone, landing->device)) || (splice && isGone(gone, *splice)))
            *end = End{};
    }
}

void forgetThrows(std::vector<Thrown>& throws, const Gone& gone)
{
    std::erase_if(throws, [&](const Thrown& thrown) { return isGone(gone, thrown.moved); });
}

void forget(const Job&, Opening& row, const Gone& gone)
{
    clearIfGone(gone, row.door);
    clearIfGone(gone, row.fire);
    for (auto* devices : {&row.locks, &row.doorOperators})
        std::erase_if(*devices, [&](DeviceId device) { return isGone(gone, device); });
    for (auto* acts : {&row.requests, &row.releases})
        for (Act& act : *acts)
            forgetThrows(act.throws, gone);
    forgetThrows(row.occupied, gone);
    std::erase_if(row.promises, [&](const Promise& promise) {
        return isGone(gone, promise.device) || isGone(gone, promise.situation.lost);
    });
}

void forget(const Job&, Typical& row, const Gone& gone)
{
    std::erase_if(row.rows, [&](std::uint32_t number) { return gone.count(number) > 0; });
}

void forget(const Job&, Stamp& row, const Gone& gone)
{
    std::erase_if(row.rows, [&](const auto& pair) { return gone.count(pair.second) > 0; });
}

template <class Row> void forget(const Job&, Row&, const Gone&)
{
    assert(!"a row of this sort can't do without what it refers to: it must go too");
}

} // namespace

void removeRows(Draft& draft, const std::vector<std::uint32_t>& numbers)
{
    const Job& job = draft.job();
    const Gone gone = closureOf(job, numbers);
    for (std::uint32_t number : gone) {
        visitRow(job, number, [&](const auto& row) { draft.remove(row.id); });
        for (std::uint32_t user : referrersOf(job, number))
            if (gone.count(user) == 0)
                visitRow(job, user, [&](const auto& row) {
                    if (auto* drafted = draft.edit(row.id))
                        forget(job, *drafted, gone);
                });
    }
}

bool isBoundElsewhere(const Job& job, OperatorId moved, DeviceId than)
{
    return isBoundBySurvivor(job, moved, {than.number});
}

} // namespace doorloom
