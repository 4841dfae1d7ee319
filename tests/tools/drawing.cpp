#include "tools/drawing.h"

#include "sheet/tidy.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace doorloom::drawing {
namespace {

[[noreturn]] void stop(const std::string& why)
{
    std::fprintf(stderr, "drawing: %s\n", why.c_str());
    std::exit(2);
}

template <class Row> Change putting(Row row)
{
    const Id<Row> id = row.id;
    Change change;
    change.steps.push_back(Put<Row>{id, std::move(row)});
    return change;
}

template <class Row> Id<Row> nextId(const Job& job)
{
    return Id<Row>{job.nextNumber};
}

std::string printedName(std::string typed)
{
    if (typed == "-" || typed == "B-" || typed == "L-")
        typed.replace(typed.size() - 1, 1, "−");
    return typed;
}

} // namespace

Drawing::Drawing(const Catalogue& catalogue) : catalogue_(catalogue) {}

void Drawing::make(const Change& change)
{
    const Result<Change> back = applyChange(job_, change);
    if (!back.ok())
        stop(inWords(back.problem()));
}

void Drawing::make(const Result<Change>& change)
{
    if (!change.ok())
        stop(inWords(change.problem()));
    make(change.value());
}

void Drawing::info(JobInfo title)
{
    title.id = nextId<JobInfo>(job_);
    make(putting(std::move(title)));
}

void Drawing::cableType(const std::string& name, const Words& words, const std::string& gauge,
                        const std::vector<std::string>& colours, bool shielded)
{
    CableType type;
    type.id = nextId<CableType>(job_);
    type.name = name;
    type.words = words;
    type.shielded = shielded;
    for (const std::string& colour : colours)
        type.cores.push_back(
            {.number = static_cast<int>(type.cores.size()) + 1, .colour = colour, .gauge = gauge});
    if (shielded) // the drain is bare
        type.cores.push_back({.number = static_cast<int>(type.cores.size()) + 1,
                              .colour = {},
                              .gauge = "24 AWG",
                              .drain = true});
    make(putting(std::move(type)));
}

void Drawing::place(const std::string& tag, const std::string& words, Mounting mounting, bool isBox,
                    const std::string& breaker)
{
    make(putting(Place{.id = nextId<Place>(job_),
                       .tag = tag,
                       .words = words,
                       .mounting = mounting,
                       .isBox = isBox,
                       .breaker = breaker}));
}

void Drawing::device(const std::string& tag, const std::string& kind, const std::string& place,
                     const std::string& words, const std::vector<Set>& settings)
{
    const Kind* found = catalogue_.find(kind);
    if (!found)
        stop("the catalogue has no kind '" + kind + "' for " + tag + ".");
    Numbers numbers(job_);
    auto [id, change] = placeDevice(job_, numbers, *found, tag, placeTagged(place));
    make(change);
    Device named = *job_.devices.find(id);
    named.words = words;
    make(putting(std::move(named)));
    for (const Set& set : settings)
        make(setSetting(job_, id, set.key, set.value));
}

void Drawing::option(const std::string& tag, const Key& option, const Key& value)
{
    make(setOption(job_, find(tag), option, value));
}

OperatorId Drawing::sharedOperator(const std::string& tag, const std::string& device, const Key& role)
{
    const DeviceId id = find(device);
    Operator shared = *job_.operators.find(boundTo(*job_.devices.find(id), role));
    shared.id = nextId<Operator>(job_);
    shared.tag = tag;
    shared.owner = {};
    shared.ownerRole.clear();
    const OperatorId moved = shared.id;
    make(putting(std::move(shared)));
    make(bindRole(job_, id, role, moved));
    return moved;
}

void Drawing::wire(const BoxWire& wire, const std::string& gauge)
{
    Numbers numbers(job_);
    auto [id, change] = addWire(job_, numbers, endAt(wire.from), endAt(wire.to), wire.tag);
    make(change);
    Conductor conductor = *job_.conductors.find(id);
    conductor.colour = wire.colour;
    conductor.gauge = gauge;
    conductor.length = wire.length;
    make(putting(std::move(conductor)));
}

void Drawing::cable(const Pull& pull, const std::vector<CoreRow>& rows)
{
    const auto type = std::find_if(job_.cableTypes.begin(), job_.cableTypes.end(),
                                   [&](const CableType& candidate) { return candidate.name == pull.type; });
    if (type == job_.cableTypes.end())
        stop("there is no cable type '" + pull.type + "' for " + pull.tag + ".");
    Cable cable;
    cable.tag = pull.tag;
    cable.type = type->id;
    cable.from = placeTagged(pull.from);
    cable.to = placeTagged(pull.to);
    cable.length = pull.length;
    cable.pull = pull.pull;
    Numbers numbers(job_);
    const auto [id, change] = pullCable(job_, numbers, std::move(cable));
    make(change);

    std::vector<ConductorId> cores;
    for (const Conductor* core : coresOf(job_, id))
        cores.push_back(core->id);
    if (cores.size() != rows.size())
        stop(pull.tag + " has " + std::to_string(cores.size()) + " cores, and " +
             std::to_string(rows.size()) + " rows.");
    for (const CoreRow& row : rows) {
        const auto core = std::find_if(cores.begin(), cores.end(), [&](ConductorId candidate) {
            const Core* made = coreOf(job_, *job_.conductors.find(candidate));
            return row.colour == (made->drain ? "drain" : made->colour);
        });
        if (core == cores.end())
            stop(pull.tag + " has no core '" + row.colour + "' left.");
        make(setEnd(job_, *core, WhichEnd::From, endAt(row.from)));
        make(setEnd(job_, *core, WhichEnd::To, endAt(row.to)));
        cores.erase(core);
    }
}

void Drawing::opening(Opening door)
{
    door.id = nextId<Opening>(job_);
    make(putting(std::move(door)));
}

void Drawing::sheet(const std::string& title, const std::vector<Seat>& seats)
{
    constexpr int toTheLeft = 2; // quarter turns, so that conductors land on the left
    const SheetId sheet = nextId<Sheet>(job_);
    make(putting(Sheet{.id = sheet, .title = title, .order = 1}));
    for (const Seat& seat : seats)
        make(putting(Placement{.id = nextId<Placement>(job_),
                               .sheet = sheet,
                               .what = find(seat.tag),
                               .at = seat.at,
                               .quarterTurns = seat.landsOn == Lands::Left ? toTheLeft : 0}));
}

void Drawing::tidy()
{
    make(tidySheets(job_));
}

void Drawing::moveEnd(const std::string& conductor, WhichEnd which, const Spot& to)
{
    make(setEnd(job_, conductorTagged(conductor), which, endAt(to)));
}

DeviceId Drawing::find(const std::string& tag) const
{
    const Device* device = deviceTagged(job_, tag);
    if (!device)
        stop("there is no device " + tag + ".");
    return device->id;
}

Thrown Drawing::thrown(const std::string& device, const Key& role, const Key& key) const
{
    return {boundTo(*job_.devices.find(find(device)), role), key};
}

PlaceId Drawing::placeTagged(const std::string& tag) const
{
    for (const Place& place : job_.places)
        if (place.tag == tag)
            return place.id;
    stop("there is no place " + tag + ".");
}

ConductorId Drawing::conductorTagged(const std::string& tag) const
{
    for (const Conductor& conductor : job_.conductors)
        if (conductor.tag == tag)
            return conductor.id;
    stop("there is no conductor " + tag + ".");
}

End Drawing::endAt(const Spot& spot) const
{
    if (spot == "spare")
        return {EndState::Spare, {}};
    if (spot == "insulated")
        return {EndState::Insulated, {}};
    if (spot == "waiting")
        return {};
    const std::size_t colon = spot.find(':');
    const DeviceId device = find(spot.substr(0, colon));
    const Terminal* terminal = findPrinted(*kindOf(job_, device), printedName(spot.substr(colon + 1)));
    if (!terminal)
        stop("there is no terminal " + spot + ".");
    return {EndState::Landed, Landing{device, terminal->key}};
}

} // namespace doorloom::drawing
