#include "edit/doorrows.h"

#include "edit/drawing.h"
#include "edit/references.h"

#include <algorithm>

namespace doorloom {

namespace {

using Rows = DoorRows::Numbers;

// Devices that an opening speaks of, by itself or by their operators.
Rows namedBy(const Job& job, const Opening& opening)
{
    Rows devices;
    const auto addOwner = [&](OperatorId moved) {
        if (const Operator* row = job.operators.find(moved); row && row->owner)
            devices.insert(row->owner.number);
    };
    for (const auto* list : {&opening.locks, &opening.doorOperators})
        for (DeviceId device : *list)
            devices.insert(device.number);
    for (const auto* acts : {&opening.requests, &opening.releases})
        for (const Act& act : *acts)
            for (const Thrown& thrown : act.throws)
                addOwner(thrown.moved);
    for (const Thrown& thrown : opening.occupied)
        addOwner(thrown.moved);
    addOwner(opening.door);
    for (std::uint32_t user : referrersOf(job, opening.door.number))
        if (job.devices.find({user}))
            devices.insert(user);
    return devices;
}

Rows namedElsewhere(const Job& job, OpeningId opening)
{
    Rows devices;
    for (const Opening& other : job.openings)
        if (other.id != opening)
            devices.merge(namedBy(job, other));
    return devices;
}

bool isSupply(const Job& job, std::uint32_t device)
{
    const Kind* kind = kindOf(job, DeviceId{device});
    return kind && kind->family == "supply";
}

// Devices and splices at the other ends of what is landed on one.
Rows neighboursOf(const Job& job, std::uint32_t row)
{
    Rows found;
    for (std::uint32_t user : referrersOf(job, row))
        if (const Conductor* conductor = job.conductors.find({user}))
            for (const End* end : {&conductor->from, &conductor->to})
                if (const std::uint32_t there = jointAt(*end); there != 0 && there != row)
                    found.insert(there);
    return found;
}

// What is wired to the rows, and to nothing else but them and each other: devices that no opening names, and
// splices.
void addWhatHangsOnIt(const Job& job, const Rows& namedElsewhere, Rows& rows)
{
    Rows hanging;
    std::vector<std::uint32_t> open(rows.begin(), rows.end());
    while (!open.empty()) {
        const std::uint32_t row = open.back();
        open.pop_back();
        for (std::uint32_t near : neighboursOf(job, row))
            if (rows.count(near) == 0 && namedElsewhere.count(near) == 0 && !isSupply(job, near) &&
                hanging.insert(near).second)
                open.push_back(near);
    }
    const auto leadsOut = [&](std::uint32_t row) {
        const Rows near = neighboursOf(job, row);
        return std::any_of(near.begin(), near.end(), [&](std::uint32_t each) {
            return rows.count(each) == 0 && hanging.count(each) == 0;
        });
    };
    while (std::erase_if(hanging, leadsOut) > 0) {
    }
    rows.merge(hanging);
}

// The devices and splices that an opening has for itself.
Rows ownJoints(const Job& job, const Opening& opening, const std::vector<DeviceId>& also)
{
    const Rows elsewhere = namedElsewhere(job, opening.id);
    Rows rows = namedBy(job, opening);
    std::erase_if(rows, [&](std::uint32_t row) { return elsewhere.count(row) > 0 || isSupply(job, row); });
    for (DeviceId device : also)
        if (job.devices.find(device))
            rows.insert(device.number);
    addWhatHangsOnIt(job, elsewhere, rows);
    return rows;
}

class DoorFinder {
public:
    DoorFinder(const Job& job, const Opening& opening, const std::vector<DeviceId>& also)
        : job_(job), opening_(opening)
    {
        door_.opening = opening.id;
        door_.joints = ownJoints(job, opening, also);
        choosePlaces();
        chooseOperators();
        chooseConductors();
        chooseDrawing();
    }

    DoorRows door() const { return door_; }

private:
    // Places whose devices and splices all come again.
    void choosePlaces()
    {
        for (std::uint32_t row : door_.joints)
            visitRow(job_, row, [&](const auto& there) {
                if constexpr (requires { there.place; })
                    if (there.place && isOwnPlace(there.place))
                        door_.places.insert(there.place.number);
            });
    }

    bool isOwnPlace(PlaceId place) const
    {
        const auto users = referrersOf(job_, place.number);
        return std::all_of(users.begin(), users.end(), [&](std::uint32_t user) {
            return door_.joints.count(user) > 0 || job_.cables.find({user}) || isTypicals(user);
        });
    }

    void chooseOperators()
    {
        const auto consider = [&](OperatorId id) {
            const Operator* row = job_.operators.find(id);
            if (row && (row->owner ? door_.joints.count(row->owner.number) > 0 : isOwnOperator(*row)))
                door_.operators.insert(id.number);
        };
        for (std::uint32_t row : door_.joints)
            if (const Device* device = job_.devices.find({row}))
                for (const Binding& binding : device->bindings)
                    consider(binding.moved);
        forEachReference(opening_, [&](auto id) {
            if constexpr (std::is_same_v<decltype(id), OperatorId>)
                consider(id);
        });
        for (const Operator& row : job_.operators)
            if (row.owner && door_.joints.count(row.owner.number) > 0)
                door_.operators.insert(row.id.number);
    }

    // Of nobody, and of this door alone: its leaf, and what only its devices are bound to.
    bool isOwnOperator(const Operator& row) const
    {
        if (row.id == opening_.door)
            return true;
        if (row.id == opening_.fire || row.nature == OperatorNature::Fire ||
            row.nature == OperatorNature::Mains)
            return false;
        const auto users = referrersOf(job_, row.id.number);
        return std::all_of(users.begin(), users.end(), [&](std::uint32_t user) {
            return door_.joints.count(user) > 0 || user == opening_.id.number || isTypicals(user);
        });
    }

    void chooseConductors()
    {
        for (std::uint32_t row : door_.joints)
            for (std::uint32_t user : referrersOf(job_, row))
                if (const Conductor* conductor = job_.conductors.find({user})) {
                    door_.conductors.insert(user);
                    if (conductor->make == ConductorMake::Core)
                        door_.cables.insert(conductor->cable.number);
                }
        for (std::uint32_t cable : door_.cables)
            for (const Conductor* core : coresOf(job_, {cable}))
                door_.conductors.insert(core->id.number);
    }

    void chooseDrawing()
    {
        for (std::uint32_t row : door_.joints)
            if (const Placement* placement = placementOf(job_, row)) {
                door_.sheets.insert(placement->sheet.number);
                door_.drawing.insert(placement->id.number);
            }
        for (std::uint32_t row : door_.conductors) {
            const Conductor& conductor = *job_.conductors.find({row});
            const Bends* bends = bendsOf(job_, conductor.id);
            if (bends && !isShared(conductor.from) && !isShared(conductor.to))
                door_.drawing.insert(bends->id.number);
        }
    }

    // Who lists a row as a typical's or a stamp's does not use it.
    bool isTypicals(std::uint32_t user) const
    {
        return job_.typicals.find({user}) || job_.stamps.find({user});
    }

    bool isShared(const End& end) const
    {
        const std::uint32_t there = jointAt(end);
        return there != 0 && door_.joints.count(there) == 0;
    }

    const Job& job_;
    const Opening& opening_;
    DoorRows door_;
};

} // namespace

std::uint32_t jointAt(const End& end)
{
    if (const Landing* landing = landingOf(end))
        return landing->device.number;
    const SpliceId* splice = spliceOf(end);
    return splice ? splice->number : 0;
}

DoorRows::Numbers DoorRows::all() const
{
    Numbers rows = {opening.number};
    for (const Numbers* group : {&joints, &places, &operators, &cables, &conductors, &sheets, &drawing})
        rows.insert(group->begin(), group->end());
    return rows;
}

DoorRows rowsOfDoor(const Job& job, const Opening& opening, const std::vector<DeviceId>& also)
{
    return DoorFinder(job, opening, also).door();
}

std::vector<DeviceId> sharedAround(const Job& job, const DoorRows& door)
{
    Rows seen = namedElsewhere(job, door.opening);
    seen.insert(door.joints.begin(), door.joints.end());
    std::vector<std::uint32_t> reached(door.joints.begin(), door.joints.end());
    std::vector<DeviceId> devices;
    const auto reach = [&](std::uint32_t row) {
        if (row == 0 || !seen.insert(row).second)
            return;
        reached.push_back(row);
        if (job.devices.find({row}))
            devices.push_back({row});
    };
    for (std::uint32_t row : door.conductors) // a drain is on the earth bar alone
        for (const End& end : {job.conductors.find({row})->from, job.conductors.find({row})->to})
            reach(jointAt(end));
    for (std::size_t next = 0; next < reached.size(); ++next)
        for (std::uint32_t near : neighboursOf(job, reached[next]))
            reach(near);
    return devices;
}

} // namespace doorloom
