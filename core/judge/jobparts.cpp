#include "judge/jobparts.h"

#include <map>
#include <unordered_map>

namespace doorloom {

namespace {

// Disjoint sets of row numbers.
class Groups {
public:
    std::uint32_t find(std::uint32_t number)
    {
        std::uint32_t root = number;
        while (parent(root) != root)
            root = parent(root);
        while (parent(number) != root)
            number = std::exchange(parents_[number], root);
        return root;
    }
    void join(std::uint32_t a, std::uint32_t b)
    {
        if (a != 0 && b != 0)
            parents_[find(a)] = find(b);
    }

private:
    std::uint32_t parent(std::uint32_t number) { return parents_.try_emplace(number, number).first->second; }
    std::unordered_map<std::uint32_t, std::uint32_t> parents_;
};

void joinEnd(Groups& groups, std::uint32_t conductor, const End& end)
{
    if (const Landing* landing = landingOf(end))
        groups.join(conductor, landing->device.number);
    if (const SpliceId* splice = spliceOf(end))
        groups.join(conductor, splice->number);
}

void joinThrows(Groups& groups, std::uint32_t opening, const std::vector<Thrown>& throws)
{
    for (const Thrown& each : throws)
        groups.join(opening, each.moved.number);
}

Groups groupsOf(const Job& job)
{
    Groups groups;
    for (const Conductor& conductor : job.conductors) {
        joinEnd(groups, conductor.id.number, conductor.from);
        joinEnd(groups, conductor.id.number, conductor.to);
    }
    for (const Device& device : job.devices)
        for (const Binding& binding : device.bindings)
            groups.join(device.id.number, binding.moved.number);
    for (const Opening& opening : job.openings) {
        const std::uint32_t number = opening.id.number;
        groups.join(number, opening.door.number);
        groups.join(number, opening.fire.number);
        for (DeviceId lock : opening.locks)
            groups.join(number, lock.number);
        for (DeviceId door : opening.doorOperators)
            groups.join(number, door.number);
        for (const Act& act : opening.requests)
            joinThrows(groups, number, act.throws);
        for (const Act& act : opening.releases)
            joinThrows(groups, number, act.throws);
        joinThrows(groups, number, opening.occupied);
        for (const Promise& promise : opening.promises) {
            groups.join(number, promise.device.number);
            groups.join(number, promise.situation.lost.number);
        }
    }
    return groups;
}

} // namespace

std::vector<Job> partsOf(const Job& job)
{
    Groups groups = groupsOf(job);
    std::map<std::uint32_t, std::size_t> partOf; // by the group's root, in the order of first rows
    std::vector<Job> parts;
    Job shared = job;
    shared.operators = {};
    shared.devices = {};
    shared.splices = {};
    shared.conductors = {};
    shared.openings = {};
    shared.sheets = {};
    shared.placements = {};
    shared.bends = {};
    shared.notes = {};
    const auto partFor = [&](std::uint32_t number) -> Job& {
        const auto [found, isNew] = partOf.try_emplace(groups.find(number), parts.size());
        if (isNew)
            parts.push_back(shared);
        return parts[found->second];
    };
    const auto copy = [&]<class Row>(const Table<Row>& rows) {
        for (const Row& row : rows)
            tableOf<Row>(partFor(row.id.number)).put(row.id, row);
    };
    copy(job.devices);
    copy(job.operators);
    copy(job.splices);
    copy(job.conductors);
    copy(job.openings);
    return parts;
}

} // namespace doorloom
