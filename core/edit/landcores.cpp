#include "edit/landcores.h"

#include "edit/draft.h"
#include "edit/nexttag.h"
#include "edit/rownames.h"
#include "edit/tagrules.h"

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

std::string tagOfPlace(const Job& job, PlaceId id)
{
    const Place* place = job.places.find(id);
    return place ? place->tag : "…";
}

End& endOf(Conductor& conductor, WhichEnd which)
{
    return which == WhichEnd::From ? conductor.from : conductor.to;
}

// Where a cable ends at a place: at one of its ends, none, or both.
std::vector<WhichEnd> endsAt(const Cable& cable, PlaceId place)
{
    std::vector<WhichEnd> ends;
    if (cable.from == place)
        ends.push_back(WhichEnd::From);
    if (cable.to == place)
        ends.push_back(WhichEnd::To);
    return ends;
}

Problem notAtCable(const Job& job, const Cable& cable, const LandingPoint& at)
{
    const Gaps gaps = {{"cable", cable.tag},
                       {"from", tagOfPlace(job, cable.from)},
                       {"to", tagOfPlace(job, cable.to)},
                       {"joint", nameOfPoint(job, at)},
                       {"place", tagOfPlace(job, placeOf(job, at))}};
    if (!placeOf(job, at))
        return problemAt(
            cable.tag,
            {.en = "{cable} runs from {from} to {to}, and '{joint}' has no place yet.",
             .es = "{cable} va de {from} a {to}, y '{joint}' aún no tiene lugar."},
            {.en = "Say first where its device is.", .es = "Diga antes dónde está su dispositivo."}, gaps);
    return problemAt(cable.tag,
                     {.en = "{cable} runs from {from} to {to}; '{joint}' is at {place}.",
                      .es = "{cable} va de {from} a {to}; '{joint}' está en {place}."},
                     {.en = "Choose a cable that ends at {place}, or pull one there.",
                      .es = "Elija un cable que termine en {place}, o tienda uno hasta allí."},
                     gaps);
}

Problem noneWaits(const Job& job, const Cable& cable, PlaceId place)
{
    return problemAt(cable.tag,
                     {.en = "No core of {cable} waits at {place}.",
                      .es = "Ningún hilo de {cable} está en espera en {place}."},
                     {.en = "Take one off first, or pull another cable.",
                      .es = "Desconecte uno antes, o tienda otro cable."},
                     {{"cable", cable.tag}, {"place", tagOfPlace(job, place)}});
}

// An end to alter: there, not to be left alone, and off its terminal where that is asked for.
enum class Wanted { OffTerminals, Any };
Result<Change> withEnd(const Job& job, const ConductorEnd& end, EndState state, Wanted wanted)
{
    Draft draft(job);
    Conductor* row = draft.edit(end.conductor);
    if (!row)
        return notInJob(nounOf<Conductor>());
    const std::string name = nameOfRow(job, *row);
    if (row->standing == Standing::LeaveAlone)
        return leftAlone(name);
    End& altered = endOf(*row, end.which);
    if (wanted == Wanted::OffTerminals && altered.state == EndState::Landed)
        return problemAt(
            name, {.en = "That end of '{name}' is landed.", .es = "Ese extremo de '{name}' está conectado."},
            {.en = "Take it off first.", .es = "Desconéctelo antes."}, {{"name", name}});
    altered = End{.state = state, .on = {}};
    return draft.change();
}

bool isUnused(const Conductor& core)
{
    return core.from.state == EndState::Waiting && core.to.state == EndState::Waiting &&
           core.standing != Standing::LeaveAlone;
}

std::optional<Problem> spliceProblem(const Job& job, const std::vector<ConductorEnd>& ends, PlaceId& place)
{
    for (std::size_t at = 0; at < ends.size(); ++at) {
        const Conductor* row = job.conductors.find(ends[at].conductor);
        if (!row)
            return notInJob(nounOf<Conductor>());
        const std::string name = nameOfRow(job, *row);
        if (row->standing == Standing::LeaveAlone)
            return leftAlone(name);
        if (std::find(ends.begin(), ends.begin() + static_cast<std::ptrdiff_t>(at), ends[at]) !=
            ends.begin() + static_cast<std::ptrdiff_t>(at))
            return problemAt(name,
                             {.en = "One end of '{name}' is named twice for a splice.",
                              .es = "Un extremo de '{name}' se nombra dos veces para un empalme."},
                             {.en = "Name it once.", .es = "Nómbrelo una vez."}, {{"name", name}});
        const PlaceId here = placeOfEnd(job, ends[at]);
        if (place && here && here != place)
            return problemAt(
                name,
                {.en = "'{name}' ends at {here}; the splice would be at {place}.",
                 .es = "'{name}' termina en {here}; el empalme estaría en {place}."},
                {.en = "Splice ends that are at one place.",
                 .es = "Empalme extremos que estén en un mismo lugar."},
                {{"name", name}, {"here", tagOfPlace(job, here)}, {"place", tagOfPlace(job, place)}});
        if (here)
            place = here;
    }
    if (ends.size() < 2)
        return problemAt({},
                         {.en = "A splice of '{count}' ends joins nothing.",
                          .es = "Un empalme de '{count}' extremos no une nada."},
                         {.en = "Choose two ends or more.", .es = "Elija dos extremos o más."},
                         {{"count", std::to_string(ends.size())}});
    return std::nullopt;
}

} // namespace

End landedAt(const LandingPoint& joint)
{
    return {EndState::Landed, std::visit([](const auto& on) -> decltype(End::on) { return on; }, joint)};
}

PlaceId placeOf(const Job& job, const LandingPoint& joint)
{
    if (const Landing* landing = std::get_if<Landing>(&joint)) {
        const Device* device = job.devices.find(landing->device);
        return device ? device->place : PlaceId{};
    }
    const Splice* splice = job.splices.find(std::get<SpliceId>(joint));
    return splice ? splice->place : PlaceId{};
}

std::string nameOfPoint(const Job& job, const LandingPoint& joint)
{
    if (const Landing* landing = std::get_if<Landing>(&joint))
        return nameOf(job, *landing);
    const Splice* splice = job.splices.find(std::get<SpliceId>(joint));
    return splice ? splice->tag : std::string();
}

std::optional<Problem> pointProblem(const Job& job, const LandingPoint& joint)
{
    const Landing* landing = std::get_if<Landing>(&joint);
    if (!landing)
        return job.splices.find(std::get<SpliceId>(joint)) ? std::nullopt
                                                           : std::optional(notInJob(nounOf<Splice>()));
    const Kind* kind = kindOf(job, landing->device);
    if (!kind)
        return notInJob(nounOf<Device>());
    return findTerminal(*kind, landing->terminal) ? std::nullopt
                                                  : std::optional(noSuchTerminal(job, *landing));
}

const End& endOf(const Conductor& conductor, WhichEnd which)
{
    return which == WhichEnd::From ? conductor.from : conductor.to;
}

WhichEnd otherEnd(WhichEnd which)
{
    return which == WhichEnd::From ? WhichEnd::To : WhichEnd::From;
}

PlaceId placeOfEnd(const Job& job, const ConductorEnd& end)
{
    const Conductor* row = job.conductors.find(end.conductor);
    if (!row)
        return {};
    if (const Cable* cable = job.cables.find(row->cable))
        return end.which == WhichEnd::From ? cable->from : cable->to;
    const End& there = endOf(*row, end.which);
    if (const Landing* landing = landingOf(there))
        return placeOf(job, *landing);
    const SpliceId* splice = spliceOf(there);
    return splice ? placeOf(job, *splice) : PlaceId{};
}

std::vector<const Conductor*> coresInOrder(const Job& job, const Cable& cable)
{
    std::vector<const Conductor*> cores = coresOf(job, cable.id);
    const CableType* type = job.cableTypes.find(cable.type);
    const auto place = [&](const Conductor* core) {
        if (!type)
            return std::ptrdiff_t{0};
        return std::find_if(type->cores.begin(), type->cores.end(),
                            [&](const Core& each) { return each.number == core->core; }) -
               type->cores.begin();
    };
    std::stable_sort(cores.begin(), cores.end(),
                     [&](const Conductor* a, const Conductor* b) { return place(a) < place(b); });
    return cores;
}

Result<Landed> landNext(const Job& job, CableId cable, const LandingPoint& at)
{
    const Cable* row = job.cables.find(cable);
    if (!row)
        return notInJob(nounOf<Cable>());
    if (auto problem = pointProblem(job, at))
        return *std::move(problem);
    const PlaceId place = placeOf(job, at);
    const std::vector<WhichEnd> ends = endsAt(*row, place);
    if (ends.empty())
        return notAtCable(job, *row, at);
    for (const Conductor* core : coresInOrder(job, *row))
        for (WhichEnd which : ends) {
            if (endOf(*core, which).state != EndState::Waiting || core->standing == Standing::LeaveAlone)
                continue;
            Conductor landed = *core;
            endOf(landed, which) = landedAt(at);
            return Landed{core->id, {{Put<Conductor>{core->id, landed}}}};
        }
    return noneWaits(job, *row, place);
}

Result<Change> capEnd(const Job& job, const ConductorEnd& end)
{
    return withEnd(job, end, EndState::Spare, Wanted::OffTerminals);
}

Result<Change> insulateEnd(const Job& job, const ConductorEnd& end)
{
    return withEnd(job, end, EndState::Insulated, Wanted::OffTerminals);
}

Result<Change> freeEnd(const Job& job, const ConductorEnd& end)
{
    return withEnd(job, end, EndState::Waiting, Wanted::Any);
}

Result<Change> capUnused(const Job& job, CableId cable)
{
    if (!job.cables.find(cable))
        return notInJob(nounOf<Cable>());
    Draft draft(job);
    for (const Conductor* core : coresOf(job, cable))
        if (isUnused(*core)) {
            Conductor* row = draft.edit(core->id);
            row->from = row->to = End{.state = EndState::Spare, .on = {}};
        }
    return draft.change();
}

Result<Spliced> joinAtSplice(const Job& job, Numbers& numbers, const std::vector<ConductorEnd>& ends,
                             std::string tag)
{
    PlaceId place;
    if (auto problem = spliceProblem(job, ends, place))
        return *std::move(problem);
    if (tag.empty())
        tag = nextSpliceTag(job);
    if (auto problem = newTagProblem(job.splices, {}, tag))
        return *std::move(problem);
    Splice splice{.id = {numbers.take()}, .tag = std::move(tag), .place = place, .connector = {}};
    splice.capacity = static_cast<int>(ends.size());
    Draft draft(job);
    for (const ConductorEnd& end : ends)
        endOf(*draft.edit(end.conductor), end.which) = landedAt(splice.id);
    draft.put(splice);
    return Spliced{splice.id, draft.change()};
}

} // namespace doorloom
