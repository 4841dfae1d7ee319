#include "edit/duplicatedoor.h"

#include "edit/drawing.h"
#include "edit/freshtags.h"
#include "edit/references.h"
#include "edit/renumber.h"
#include "edit/tagrules.h"

#include <algorithm>
#include <set>
#include <utility>

namespace doorloom {

namespace {

using Rows = std::set<std::uint32_t>;

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

bool isSupply(const Job& job, std::uint32_t device)
{
    const Kind* kind = kindOf(job, DeviceId{device});
    return kind && kind->family == "supply";
}

std::uint32_t deviceAt(const End& end)
{
    const Landing* landing = landingOf(end);
    return landing ? landing->device.number : 0;
}

std::uint32_t spliceAt(const End& end)
{
    const SpliceId* splice = spliceOf(end);
    return splice ? splice->number : 0;
}

// Devices and splices at the other ends of what is landed on one.
Rows neighboursOf(const Job& job, std::uint32_t row)
{
    Rows found;
    for (std::uint32_t user : referrersOf(job, row))
        if (const Conductor* conductor = job.conductors.find({user}))
            for (const End* end : {&conductor->from, &conductor->to})
                for (std::uint32_t there : {deviceAt(*end), spliceAt(*end)})
                    if (there != 0 && there != row)
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
Rows ownRows(const Job& job, const Opening& opening)
{
    Rows elsewhere;
    for (const Opening& other : job.openings)
        if (other.id != opening.id)
            elsewhere.merge(namedBy(job, other));
    Rows rows = namedBy(job, opening);
    std::erase_if(rows, [&](std::uint32_t row) { return elsewhere.count(row) > 0 || isSupply(job, row); });
    addWhatHangsOnIt(job, elsewhere, rows);
    return rows;
}

class DoorCopy {
public:
    DoorCopy(const Job& job, Numbers& numbers, const Opening& opening)
        : job_(job), numbers_(numbers), opening_(opening), rows_(ownRows(job, opening)), tags_(job)
    {
        choosePlaces();
        chooseOperators();
        chooseConductors();
        chooseDrawing();
        for (const Rows* group : {&rows_, &places_, &operators_, &cables_, &conductors_, &sheets_})
            for (std::uint32_t row : *group)
                again_[row] = numbers_.take();
        again_[opening.id.number] = numbers_.take();
    }

    DuplicatedDoor made(std::string tag)
    {
        Opening copy = opening_;
        copy.tag = tag.empty() ? tags_.opening(opening_.tag) : std::move(tag);
        add(copy);
        for (std::uint32_t row : places_)
            addAgain<Place>(row, [&](Place& place) { place.tag = tags_.place(place.tag); });
        for (std::uint32_t row : operators_)
            addAgain<Operator>(row, [&](Operator& moved) { moved.tag = tags_.moved(moved.tag); });
        for (std::uint32_t row : rows_) {
            addAgain<Device>(row, [&](Device& device) { device.tag = tags_.device(device.tag); });
            addAgain<Splice>(row, [&](Splice& splice) { splice.tag = tags_.splice(splice.tag); });
            made_.rows.push_back(again_.at(row));
        }
        for (std::uint32_t row : cables_)
            addAgain<Cable>(row, [&](Cable& cable) { cable.tag = cableTags_[row] = tags_.cable(cable.tag); });
        for (std::uint32_t row : conductors_)
            addConductor(*job_.conductors.find({row}));
        addDrawing();
        made_.opening = {again_.at(opening_.id.number)};
        return std::move(made_);
    }

private:
    // Places whose devices and splices all come again.
    void choosePlaces()
    {
        for (std::uint32_t row : rows_)
            visitRow(job_, row, [&](const auto& there) {
                if constexpr (requires { there.place; })
                    if (there.place && isOwnPlace(there.place))
                        places_.insert(there.place.number);
            });
    }

    bool isOwnPlace(PlaceId place) const
    {
        const auto users = referrersOf(job_, place.number);
        return std::all_of(users.begin(), users.end(), [&](std::uint32_t user) {
            return rows_.count(user) > 0 || job_.cables.find({user});
        });
    }

    void chooseOperators()
    {
        const auto consider = [&](OperatorId id) {
            const Operator* row = job_.operators.find(id);
            if (row && (row->owner ? rows_.count(row->owner.number) > 0 : isOwnOperator(*row)))
                operators_.insert(id.number);
        };
        for (std::uint32_t row : rows_)
            if (const Device* device = job_.devices.find({row}))
                for (const Binding& binding : device->bindings)
                    consider(binding.moved);
        forEachReference(opening_, [&](auto id) {
            if constexpr (std::is_same_v<decltype(id), OperatorId>)
                consider(id);
        });
        for (const Operator& row : job_.operators)
            if (row.owner && rows_.count(row.owner.number) > 0)
                operators_.insert(row.id.number);
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
            return rows_.count(user) > 0 || user == opening_.id.number;
        });
    }

    void chooseConductors()
    {
        for (std::uint32_t row : rows_)
            for (std::uint32_t user : referrersOf(job_, row))
                if (const Conductor* conductor = job_.conductors.find({user})) {
                    conductors_.insert(user);
                    if (conductor->make == ConductorMake::Core)
                        cables_.insert(conductor->cable.number);
                }
        for (std::uint32_t cable : cables_)
            for (const Conductor* core : coresOf(job_, {cable}))
                conductors_.insert(core->id.number);
    }

    void chooseDrawing()
    {
        for (std::uint32_t row : rows_)
            if (const Placement* placement = placementOf(job_, row))
                sheets_.insert(placement->sheet.number);
    }

    template <class Row> void add(Row row)
    {
        renumber(row, again_);
        const Id<Row> id = row.id;
        made_.change.steps.emplace_back(Put<Row>{id, std::move(row)});
    }

    template <class Row, class Alter> void addAgain(std::uint32_t number, Alter alter)
    {
        if (const Row* row = tableOf<Row>(job_).find({number})) {
            Row copy = *row;
            alter(copy);
            add(std::move(copy));
        }
    }

    bool isShared(const End& end) const
    {
        const std::uint32_t there = deviceAt(end) != 0 ? deviceAt(end) : spliceAt(end);
        return there != 0 && rows_.count(there) == 0;
    }

    void addConductor(const Conductor& row)
    {
        Conductor copy = row;
        const Cable* cable = job_.cables.find(row.cable);
        const std::string core = "." + std::to_string(row.core);
        if (cable && row.tag == cable->tag + core)
            copy.tag = cableTags_.at(cable->id.number) + core;
        else
            copy.tag = tags_.wire(row.tag);
        const bool isLoose = isShared(row.from) && isShared(row.to); // another door's core in the same cable
        for (End* end : {&copy.from, &copy.to})
            if (isShared(*end)) {
                if (!isLoose)
                    made_.leftWaiting.push_back({{.en = "{tag} waits: {old} is on {there}.",
                                                  .es = "{tag} espera: {old} está en {there}."},
                                                 {{"tag", copy.tag.empty() ? "…" : copy.tag},
                                                  {"old", row.tag.empty() ? nameOfRow(job_, row) : row.tag},
                                                  {"there", nameOfShared(*end)}}});
                *end = End{};
            }
        add(std::move(copy));
    }

    std::string nameOfShared(const End& end) const
    {
        if (const Landing* landing = landingOf(end))
            return nameOf(job_, *landing);
        return job_.splices.find(*spliceOf(end))->tag;
    }

    void addDrawing()
    {
        int order = sheetsInOrder(job_).empty() ? 0 : sheetsInOrder(job_).back()->order;
        for (std::uint32_t row : sheets_)
            addAgain<Sheet>(row, [&](Sheet& sheet) {
                sheet.title = tags_.sheet(sheet.title);
                sheet.order = ++order;
            });
        for (std::uint32_t row : rows_)
            if (const Placement* placement = placementOf(job_, row)) {
                again_[placement->id.number] = numbers_.take();
                add(*placement);
            }
        for (std::uint32_t row : conductors_) {
            const Conductor& conductor = *job_.conductors.find({row});
            const Bends* bends = bendsOf(job_, conductor.id);
            if (!bends || isShared(conductor.from) || isShared(conductor.to))
                continue;
            again_[bends->id.number] = numbers_.take();
            add(*bends);
        }
    }

    const Job& job_;
    Numbers& numbers_;
    const Opening& opening_;
    Rows rows_; // devices and splices
    Rows places_, operators_, cables_, conductors_, sheets_;
    Renumbering again_;
    FreshTags tags_;
    std::map<std::uint32_t, std::string> cableTags_;
    DuplicatedDoor made_;
};

} // namespace

std::vector<DeviceId> devicesOf(const Job& job, OpeningId opening)
{
    std::vector<DeviceId> devices;
    if (const Opening* row = job.openings.find(opening))
        for (std::uint32_t number : ownRows(job, *row))
            if (job.devices.find({number}))
                devices.push_back({number});
    return devices;
}

Result<DuplicatedDoor> duplicateDoor(const Job& job, Numbers& numbers, OpeningId opening, std::string tag)
{
    const Opening* row = job.openings.find(opening);
    if (!row)
        return notInJob(nounOf<Opening>());
    if (!tag.empty())
        if (auto problem = newTagProblem(job.openings, {}, tag))
            return *std::move(problem);
    return DoorCopy(job, numbers, *row).made(std::move(tag));
}

} // namespace doorloom
