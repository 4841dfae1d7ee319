#include "edit/details.h"

#include "edit/draft.h"
#include "edit/removal.h"
#include "edit/tagrules.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace doorloom {

namespace {

// "C1.3" of core 3 of C1; a core with a name of its own keeps it.
std::string coreTag(const std::string& cableTag, int core)
{
    return cableTag + "." + std::to_string(core);
}

template <class Alter> Result<Change> altered(const Job& job, CableId cable, Alter alter)
{
    Draft draft(job);
    Cable* row = draft.edit(cable);
    if (!row)
        return notInJob(nounOf<Cable>());
    alter(*row);
    return draft.change();
}

bool hasCore(const CableType& type, int number)
{
    return std::any_of(type.cores.begin(), type.cores.end(),
                       [&](const Core& core) { return core.number == number; });
}

bool isLanded(const Conductor& row)
{
    return row.from.state == EndState::Landed || row.to.state == EndState::Landed;
}

std::optional<Problem> landedTooMany(const Job& job, const Cable& cable, const CableType& type)
{
    for (const Conductor* core : coresOf(job, cable.id))
        if (!hasCore(type, core->core) && isLanded(*core))
            return problemAt(
                cable.tag,
                {.en = "{type} has no core '{core}', and {name} is landed.",
                 .es = "{type} no tiene el hilo '{core}', y {name} está conectado."},
                {.en = "Take it off first, or choose a type with as many cores.",
                 .es = "Desconéctelo antes, o elija un tipo con tantos hilos."},
                {{"type", type.name}, {"core", std::to_string(core->core)}, {"name", nameOfRow(job, *core)}});
    return std::nullopt;
}

} // namespace

Result<Change> renameCable(const Job& job, CableId cable, std::string tag)
{
    const Cable* row = job.cables.find(cable);
    if (!row)
        return notInJob(nounOf<Cable>());
    if (auto problem = newTagProblem(job.cables, cable, tag))
        return *std::move(problem);
    Draft draft(job);
    for (const Conductor* core : coresOf(job, cable))
        if (core->tag == coreTag(row->tag, core->core))
            draft.edit(core->id)->tag = coreTag(tag, core->core);
    draft.edit(cable)->tag = std::move(tag);
    return draft.change();
}

Result<Change> setCableLength(const Job& job, CableId cable, Metres length)
{
    const Cable* row = job.cables.find(cable);
    if (row && (!std::isfinite(length.value) || length.value < 0))
        return problemAt(row->tag,
                         {.en = "'{name}' can't be '{length}' metres long.",
                          .es = "'{name}' no puede medir '{length}' metros."},
                         {.en = "Give the length in metres, 0 while it is not known.",
                          .es = "Dé la longitud en metros, 0 mientras no se conozca."},
                         {{"name", row->tag}, {"length", fmt::format("{}", length.value)}});
    return altered(job, cable, [&](Cable& after) { after.length = length; });
}

Result<Change> setCablePull(const Job& job, CableId cable, std::string pull)
{
    return altered(job, cable, [&](Cable& row) { row.pull = std::move(pull); });
}

Result<Change> setCableNotes(const Job& job, CableId cable, std::string notes)
{
    return altered(job, cable, [&](Cable& row) { row.notes = std::move(notes); });
}

Result<Change> setCableEnds(const Job& job, CableId cable, PlaceId from, PlaceId to)
{
    for (PlaceId place : {from, to})
        if (place && !job.places.find(place))
            return notInJob(nounOf<Place>());
    return altered(job, cable, [&](Cable& row) {
        row.from = from;
        row.to = to;
    });
}

std::pair<CableTypeId, Change> takeCableType(const Job& job, Numbers& numbers, const CableType& type)
{
    for (const CableType& row : job.cableTypes)
        if (row.name == type.name)
            return {row.id, {}};
    CableType taken = type;
    taken.id = {numbers.take()};
    return {taken.id, {{Put<CableType>{taken.id, taken}}}};
}

Result<Change> setCableType(const Job& job, Numbers& numbers, CableId cable, const CableType& type)
{
    const Cable* row = job.cables.find(cable);
    if (!row)
        return notInJob(nounOf<Cable>());
    auto [typeId, change] = takeCableType(job, numbers, type);
    const CableType* own = job.cableTypes.find(typeId);
    const CableType& wanted = own ? *own : type;
    if (auto problem = landedTooMany(job, *row, wanted))
        return *std::move(problem);
    Draft draft(job);
    std::set<int> there;
    std::vector<std::uint32_t> gone;
    for (const Conductor* core : coresOf(job, cable))
        if (hasCore(wanted, core->core))
            there.insert(core->core);
        else
            gone.push_back(core->id.number);
    removeRows(draft, gone);
    draft.edit(cable)->type = typeId;
    for (const Core& core : wanted.cores)
        if (there.insert(core.number).second) {
            Conductor added;
            added.id = {numbers.take()};
            added.tag = coreTag(row->tag, core.number);
            added.make = ConductorMake::Core;
            added.cable = cable;
            added.core = core.number;
            added.standing = row->standing;
            draft.put(std::move(added));
        }
    return joined(std::move(change), draft.change());
}

} // namespace doorloom
