#include "papers/schedule.h"

#include "model/colours.h"
#include "papers/carries.h"
#include "papers/devicehead.h"
#include "papers/naturalorder.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <unordered_map>

namespace doorloom {
namespace {

constexpr Text coreWords = {.en = "{cable} core {core}", .es = "{cable} hilo {core}"};
constexpr Text pairedCoreWords = {.en = "{cable} core {core}, pair {pair}",
                                  .es = "{cable} hilo {core}, par {pair}"};
constexpr Text drainWords = {.en = "{cable} drain", .es = "{cable} drenaje"};
constexpr Text wireWords = {.en = "wire", .es = "hilo"};
constexpr Text ownLead = {.en = "own lead", .es = "hilo propio"};
constexpr Text leadOf = {.en = "lead of {tag}", .es = "hilo de {tag}"};
constexpr Text bandHere = {.en = "lead of {tag}, BAND end", .es = "hilo de {tag}, extremo con FRANJA"};
constexpr Text plainHere = {.en = "lead of {tag}, plain end", .es = "hilo de {tag}, extremo sin franja"};
constexpr Text bandEnd = {.en = "BAND end", .es = "extremo con FRANJA"};
constexpr Text plainEnd = {.en = "plain end", .es = "extremo sin franja"};
constexpr Text leadColour = {.en = "lead {letters} {colour}", .es = "hilo {letters} {colour}"};

constexpr Text empty = {.en = "empty", .es = "vacío"};
constexpr Text mustLand = {.en = "EMPTY, but must be landed", .es = "VACÍO, pero debe conectarse"};
constexpr Text joinedTo = {.en = "factory link to {others}: fit no wire",
                           .es = "unido de fábrica a {others}: sin cable"};
constexpr Text spare = {.en = "spare: cap and tag", .es = "reserva: tape y etiquete"};
constexpr Text waiting = {.en = "WAITING for a terminal: cap it", .es = "PENDIENTE de borne: tape"};
constexpr Text unusedLead = {.en = "not used: insulate the lead", .es = "sin usar: aísle el hilo"};
constexpr Text insulated = {.en = "insulate, do not land", .es = "aísle, no conecte"};
constexpr Text nothingToLand = {.en = "nothing to land", .es = "nada que conectar"};

constexpr Text spliceTitle = {
    .en = "Splice, all ends joined; connector: {connector}; at most {capacity} ends",
    .es = "Empalme, todos los extremos unidos; conector: {connector}; máximo {capacity} extremos"};
constexpr Text anyConnector = {.en = "not said", .es = "sin indicar"};
constexpr Text looseTitle = {.en = "Core ends not on a terminal", .es = "Extremos de hilos sin borne"};
constexpr Text cableTitle = {.en = "Core ends not on a terminal, cable {type}",
                             .es = "Extremos de hilos sin borne, cable {type}"};

struct EndRef {
    const Conductor* conductor = nullptr;
    WhichEnd which = WhichEnd::From;

    const End& here() const { return which == WhichEnd::From ? conductor->from : conductor->to; }
    const End& there() const { return which == WhichEnd::From ? conductor->to : conductor->from; }
};

const Cable* cableOf(const Job& job, const Conductor& conductor)
{
    return conductor.make == ConductorMake::Core ? job.cables.find(conductor.cable) : nullptr;
}

std::string cableTag(const Job& job, const Conductor& conductor)
{
    const Cable* cable = cableOf(job, conductor);
    return cable ? cable->tag : std::string();
}

// ---- Where an end is.

PlaceId placeOf(const Job& job, const Conductor& conductor, WhichEnd which);

std::optional<PlaceId> placeOfLanded(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end)) {
        const Device* device = job.devices.find(landing->device);
        return device ? device->place : PlaceId{};
    }
    if (const SpliceId* id = spliceOf(end)) {
        const Splice* splice = job.splices.find(*id);
        return splice ? splice->place : PlaceId{};
    }
    return std::nullopt;
}

// A core end on nothing lies at the end of the cable where its other end isn't; a wire's lies beside its
// other end.
PlaceId placeOf(const Job& job, const Conductor& conductor, WhichEnd which)
{
    const EndRef end{&conductor, which};
    if (const auto landed = placeOfLanded(job, end.here()))
        return *landed;
    const auto other = placeOfLanded(job, end.there());
    const Cable* cable = cableOf(job, conductor);
    if (!cable)
        return other.value_or(PlaceId{});
    if (other && *other == cable->to)
        return cable->from;
    if (other && *other == cable->from)
        return cable->to;
    return which == WhichEnd::From ? cable->from : cable->to;
}

// ---- What every row needs to look up, gathered once.

struct Index {
    const Job& job;
    Carries carries;
    std::unordered_map<std::uint32_t, std::map<Key, std::vector<EndRef>>> onDevice;
    std::unordered_map<std::uint32_t, std::vector<EndRef>> onSplice;
    std::map<std::uint32_t, std::vector<EndRef>> looseAt; // by place
    std::unordered_map<std::uint32_t, std::string> spliceNames;
};

bool sortsBefore(const Job& job, const EndRef& a, const EndRef& b)
{
    const std::string x = cableTag(job, *a.conductor), y = cableTag(job, *b.conductor);
    if (x != y)
        return naturallyLess(x, y);
    if (a.conductor->core != b.conductor->core)
        return a.conductor->core < b.conductor->core;
    if (a.conductor->tag != b.conductor->tag)
        return naturallyLess(a.conductor->tag, b.conductor->tag);
    return std::tuple(a.conductor->id, a.which) < std::tuple(b.conductor->id, b.which);
}

void sortEnds(const Job& job, std::vector<EndRef>& ends)
{
    std::sort(ends.begin(), ends.end(),
              [&](const EndRef& a, const EndRef& b) { return sortsBefore(job, a, b); });
}

// Nobody may mistake one splice for another, or for a device, when the schedule is read back.
std::unordered_map<std::uint32_t, std::string> namesOfSplices(const Job& job)
{
    std::set<std::string> used;
    for (const Device& device : job.devices)
        used.insert(device.tag);
    std::unordered_map<std::uint32_t, std::string> names;
    for (const Splice& splice : job.splices) {
        const std::string wanted = splice.tag.empty() ? "splice" : splice.tag;
        std::string name = splice.tag.empty() ? "splice 1" : wanted;
        for (int number = 2; !used.insert(name).second; ++number)
            name = fmt::format("{} {}", wanted, number);
        names.emplace(splice.id.number, name);
    }
    return names;
}

Index indexOf(const Job& job)
{
    Index index{job, Carries(job), {}, {}, {}, namesOfSplices(job)};
    for (const Conductor& conductor : job.conductors)
        for (const WhichEnd which : {WhichEnd::From, WhichEnd::To}) {
            const EndRef end{&conductor, which};
            if (const Landing* landing = landingOf(end.here()))
                index.onDevice[landing->device.number][landing->terminal].push_back(end);
            else if (const SpliceId* splice = spliceOf(end.here()))
                index.onSplice[splice->number].push_back(end);
            else
                index.looseAt[placeOf(job, conductor, which).number].push_back(end);
        }
    for (auto& [device, terminals] : index.onDevice)
        for (auto& [key, ends] : terminals)
            sortEnds(job, ends);
    for (auto& [splice, ends] : index.onSplice)
        sortEnds(job, ends);
    for (auto& [place, ends] : index.looseAt)
        sortEnds(job, ends);
    return index;
}

// ---- One conductor end.

FarEnd farEndOf(const Index& index, const EndRef& end, PlaceId here)
{
    FarEnd far;
    far.state = end.there().state;
    const WhichEnd other = end.which == WhichEnd::From ? WhichEnd::To : WhichEnd::From;
    const PlaceId there = placeOf(index.job, *end.conductor, other);
    if (const Place* place = index.job.places.find(there)) {
        far.box = place->tag;
        far.boxWords = place->words;
    }
    far.sameBox = there == here && (there || far.state == EndState::Landed);
    if (const SpliceId* splice = spliceOf(end.there()))
        far.device = index.spliceNames.at(splice->number);
    if (const Landing* landing = landingOf(end.there())) {
        const Kind* kind = kindOf(index.job, landing->device);
        const Terminal* terminal = kind ? findTerminal(*kind, landing->terminal) : nullptr;
        far.device = tagOf(index.job, landing->device);
        far.terminal = terminal ? terminal->printed : landing->terminal;
    }
    return far;
}

enum class DiodeEnd { None, Cathode, Anode };

DiodeEnd diodeEndAt(const Kind& kind, const Key& terminal)
{
    for (const Part& part : kind.parts)
        if (const auto* diode = std::get_if<DiodePart>(&part.body)) {
            if (diode->cathode == terminal)
                return DiodeEnd::Cathode;
            if (diode->anode == terminal)
                return DiodeEnd::Anode;
        }
    return DiodeEnd::None;
}

bool isLoosePart(const Kind& kind)
{
    return kind.family == "part";
}

// A conductor whose other end is a loose part is that part's own lead, held in the clamp here.
std::optional<Message> leadInWords(const Job& job, const EndRef& end)
{
    const Landing* landing = landingOf(end.there());
    const Kind* kind = landing ? kindOf(job, landing->device) : nullptr;
    if (!kind || !isLoosePart(*kind) || end.conductor->make != ConductorMake::Lead)
        return std::nullopt;
    const DiodeEnd diode = diodeEndAt(*kind, landing->terminal);
    const Text words = diode == DiodeEnd::Cathode ? bandHere : diode == DiodeEnd::Anode ? plainHere : leadOf;
    return Message(words, {{"tag", tagOf(job, landing->device)}});
}

Message wireInWords(const Job& job, const EndRef& end)
{
    const Conductor& conductor = *end.conductor;
    if (conductor.make == ConductorMake::Core) {
        const Core* core = coreOf(job, conductor);
        const Text words = core && core->drain  ? drainWords
                           : core && core->pair ? pairedCoreWords
                                                : coreWords;
        return {words,
                {{"cable", cableTag(job, conductor)},
                 {"core", std::to_string(conductor.core)},
                 {"pair", std::to_string(core ? core->pair : 0)}}};
    }
    if (auto lead = leadInWords(job, end))
        return *lead;
    return conductor.make == ConductorMake::Lead ? ownLead : wireWords;
}

// Who is most to be left alone decides: the conductor, its cable or the device.
Standing strictest(Standing a, Standing b)
{
    const auto rank = [](Standing standing) {
        switch (standing) {
        case Standing::LeaveAlone:
            return 4;
        case Standing::ByOthers:
            return 3;
        case Standing::Existing:
            return 2;
        case Standing::Moved:
            return 1;
        case Standing::New:
            break;
        }
        return 0;
    };
    return rank(a) >= rank(b) ? a : b;
}

Standing standingOf(const Job& job, const Conductor& conductor)
{
    const Cable* cable = cableOf(job, conductor);
    return cable ? strictest(conductor.standing, cable->standing) : conductor.standing;
}

ScheduleRow rowOf(const Index& index, const EndRef& end, PlaceId here)
{
    const Conductor& conductor = *end.conductor;
    const Core* core = coreOf(index.job, conductor);
    ScheduleRow row;
    row.conductor = conductor.id;
    row.end = end.which;
    row.cable = cableTag(index.job, conductor);
    row.core = conductor.make == ConductorMake::Core ? conductor.core : 0;
    row.pair = core ? core->pair : 0;
    row.wire = wireInWords(index.job, end);
    row.colour = colourOf(index.job, conductor);
    row.tag = conductor.tag;
    row.gauge = gaugeOf(index.job, conductor);
    row.carries = index.carries.of(conductor.id);
    row.far = farEndOf(index, end, here);
    row.standing = standingOf(index.job, conductor);
    return row;
}

std::string clampName(const Index& index, const EndRef& end)
{
    return end.conductor->tag.empty() ? inWords(wireInWords(index.job, end)) : end.conductor->tag;
}

std::vector<std::string> othersIn(const Index& index, const std::vector<EndRef>& clamp, const EndRef& end)
{
    std::vector<std::string> others;
    for (const EndRef& other : clamp)
        if (&other != &end)
            others.push_back(clampName(index, other));
    return others;
}

// ---- A device.

std::vector<Message> signsOf(const Terminal& terminal, const Device& device, const Kind& kind)
{
    std::vector<Message> signs;
    if (terminal.lead)
        signs.push_back(
            {leadColour,
             {{"letters", *terminal.lead}, {"colour", std::vector{colourInWords(*terminal.lead)}}}});
    for (const TerminalSign& sign : terminal.signs)
        if (holds(device, sign.when))
            signs.push_back(verbatim(sign.words));
    if (isLoosePart(kind))
        if (const DiodeEnd diode = diodeEndAt(kind, terminal.key); diode != DiodeEnd::None)
            signs.push_back(diode == DiodeEnd::Cathode ? bandEnd : plainEnd);
    return signs;
}

bool mustBeLanded(const Terminal& terminal, const Device& device)
{
    return device.standing != Standing::LeaveAlone &&
           std::any_of(terminal.required.begin(), terminal.required.end(),
                       [&](const Condition& when) { return holds(device, when); });
}

// Terminals that the kind always joins, each group in printed order.
std::vector<std::vector<const Terminal*>> factoryLinks(const Kind& kind)
{
    std::map<Key, Key> parents;
    const auto root = [&](Key key) {
        while (parents.contains(key) && parents[key] != key)
            key = parents[key];
        return key;
    };
    for (const Part& part : kind.parts)
        if (const auto* link = std::get_if<LinkPart>(&part.body); link && part.when.empty())
            parents[root(link->a)] = root(link->b);
    std::map<Key, std::vector<const Terminal*>> groups;
    for (const Terminal* terminal : terminalsOf(kind))
        groups[root(terminal->key)].push_back(terminal);
    std::vector<std::vector<const Terminal*>> links;
    for (auto& [key, terminals] : groups)
        if (terminals.size() > 1)
            links.push_back(std::move(terminals));
    return links;
}

ScheduleRow linkRow(const std::vector<const Terminal*>& linked, const Device& device)
{
    std::vector<std::string> others;
    for (const Terminal* terminal : linked)
        if (terminal != linked.front())
            others.push_back(terminal->printed);
    ScheduleRow row;
    row.kind = RowKind::Link;
    row.terminal = linked.front()->printed;
    row.note = {joinedTo, {{"others", fmt::format("{}", fmt::join(others, ", "))}}};
    row.far.state = EndState::Landed;
    row.far.device = device.tag;
    row.far.terminal = fmt::format("{}", fmt::join(others, "; "));
    row.far.sameBox = true;
    return row;
}

ScheduleRow emptyRow(const Terminal& terminal, const Device& device)
{
    ScheduleRow row;
    row.kind = RowKind::Empty;
    row.note = mustBeLanded(terminal, device) ? mustLand : terminal.lead ? unusedLead : empty;
    row.standing = device.standing;
    return row;
}

void addTerminal(ScheduleBlock& block, const Index& index, const Device& device, const Kind& kind,
                 const Strip& strip, const Terminal& terminal)
{
    static const std::vector<EndRef> none;
    const auto onDevice = index.onDevice.find(device.id.number);
    const bool landed = onDevice != index.onDevice.end() && onDevice->second.contains(terminal.key);
    const std::vector<EndRef>& clamp = landed ? onDevice->second.at(terminal.key) : none;
    std::vector<ScheduleRow> rows;
    if (clamp.empty())
        rows.push_back(emptyRow(terminal, device));
    for (const EndRef& end : clamp) {
        rows.push_back(rowOf(index, end, device.place));
        rows.back().alsoInClamp = othersIn(index, clamp, end);
        rows.back().standing = strictest(rows.back().standing, device.standing);
    }
    for (ScheduleRow& row : rows) {
        row.strip = strip.words;
        row.terminal = terminal.printed;
        row.signs = signsOf(terminal, device, kind);
        block.rows.push_back(std::move(row));
    }
}

void addLinks(ScheduleBlock& block, const std::vector<std::vector<const Terminal*>>& links,
              const Device& device, const Strip& strip, const Terminal& terminal)
{
    for (const auto& linked : links)
        if (linked.front() == &terminal) {
            block.rows.push_back(linkRow(linked, device));
            block.rows.back().strip = strip.words;
        }
}

void addBare(ScheduleBlock& block)
{
    ScheduleRow row;
    row.kind = RowKind::Bare;
    row.note = nothingToLand;
    block.rows.push_back(std::move(row));
}

ScheduleBlock blockOf(const Index& index, const Device& device)
{
    ScheduleBlock block;
    block.device = device.id;
    block.tag = device.tag;
    block.words = device.words;
    block.standing = device.standing;
    block.before = beforeWork(index.job, device, index.carries);
    if (const Kind* kind = kindOf(index.job, device)) {
        block.title = titleOf(*kind);
        block.facts = factsOf(*kind, device);
        block.kindName = kind->name;
        block.options = optionsText(*kind, device);
        block.settings = settingsText(*kind, device);
        block.showsStrips = kind->strips.size() > 1;
        const auto links = factoryLinks(*kind);
        for (const Strip& strip : kind->strips)
            for (const Terminal& terminal : strip.terminals) {
                addTerminal(block, index, device, *kind, strip, terminal);
                addLinks(block, links, device, strip, terminal);
            }
    }
    if (block.rows.empty())
        addBare(block);
    return block;
}

// ---- Splices and loose ends.

ScheduleBlock blockOf(const Index& index, const Splice& splice)
{
    ScheduleBlock block;
    block.kind = BlockKind::Splice;
    block.tag = index.spliceNames.at(splice.id.number);
    const Message connector = splice.connector.empty() ? Message(anyConnector) : verbatim(splice.connector);
    block.title = {spliceTitle,
                   {{"connector", std::vector{connector}}, {"capacity", std::to_string(splice.capacity)}}};
    if (const auto ends = index.onSplice.find(splice.id.number); ends != index.onSplice.end())
        for (const EndRef& end : ends->second) {
            block.rows.push_back(rowOf(index, end, splice.place));
            block.rows.back().alsoInClamp = othersIn(index, ends->second, end);
        }
    if (block.rows.empty())
        addBare(block);
    return block;
}

ScheduleRow looseRow(const Index& index, const EndRef& end, PlaceId here)
{
    ScheduleRow row = rowOf(index, end, here);
    switch (end.here().state) {
    case EndState::Spare:
        row.kind = RowKind::Spare;
        row.note = spare;
        break;
    case EndState::Insulated:
        row.kind = RowKind::Insulated;
        row.note = insulated;
        break;
    default:
        row.kind = RowKind::Waiting;
        row.note = waiting;
    }
    return row;
}

Message looseTitleOf(const Job& job, const Conductor& conductor)
{
    const Cable* cable = cableOf(job, conductor);
    const CableType* type = cable ? job.cableTypes.find(cable->type) : nullptr;
    return type ? Message(cableTitle, {{"type", type->name}}) : Message(looseTitle);
}

void addLooseEnds(std::vector<ScheduleBlock>& blocks, const Index& index, const std::vector<EndRef>& ends,
                  PlaceId here)
{
    CableId cable;
    bool first = true;
    for (const EndRef& end : ends) {
        if (first || end.conductor->cable != cable) {
            ScheduleBlock block;
            block.kind = BlockKind::LooseEnds;
            block.tag = cableTag(index.job, *end.conductor);
            block.title = looseTitleOf(index.job, *end.conductor);
            blocks.push_back(std::move(block));
        }
        first = false;
        cable = end.conductor->cable;
        blocks.back().rows.push_back(looseRow(index, end, here));
    }
}

// ---- Boxes.

using SheetSpot = std::tuple<bool, int, std::uint32_t, std::int32_t, std::int32_t>; // unplaced, sheet, y, x

std::unordered_map<std::uint32_t, SheetSpot> spotsOnSheets(const Job& job)
{
    std::unordered_map<std::uint32_t, SheetSpot> spots;
    for (const Placement& placement : job.placements)
        if (const auto* device = std::get_if<DeviceId>(&placement.what)) {
            const Sheet* sheet = job.sheets.find(placement.sheet);
            const SheetSpot spot{false, sheet ? sheet->order : 0, placement.sheet.number, placement.at.y,
                                 placement.at.x};
            const auto [known, isNew] = spots.emplace(device->number, spot);
            if (!isNew)
                known->second = std::min(known->second, spot);
        }
    return spots;
}

std::map<std::uint32_t, std::vector<const Device*>> devicesByPlace(const Job& job)
{
    const auto spots = spotsOnSheets(job);
    const auto spotOf = [&](const Device& device) {
        const auto found = spots.find(device.id.number);
        return found == spots.end() ? SheetSpot{true, 0, 0, 0, 0} : found->second;
    };
    std::map<std::uint32_t, std::vector<const Device*>> devices;
    for (const Device& device : job.devices)
        devices[device.place.number].push_back(&device);
    for (auto& [place, here] : devices)
        std::sort(here.begin(), here.end(), [&](const Device* a, const Device* b) {
            const SheetSpot x = spotOf(*a), y = spotOf(*b);
            return x != y ? x < y : naturallyLess(a->tag, b->tag);
        });
    return devices;
}

std::map<std::uint32_t, std::vector<const Splice*>> splicesByPlace(const Index& index)
{
    std::map<std::uint32_t, std::vector<const Splice*>> splices;
    for (const Splice& splice : index.job.splices)
        splices[splice.place.number].push_back(&splice);
    for (auto& [place, here] : splices)
        std::sort(here.begin(), here.end(), [&](const Splice* a, const Splice* b) {
            return naturallyLess(index.spliceNames.at(a->id.number), index.spliceNames.at(b->id.number));
        });
    return splices;
}

// Boxes first, then the other places, then what has no place yet.
std::vector<PlaceId> placesInOrder(const Job& job)
{
    std::vector<const Place*> places;
    for (const Place& place : job.places)
        places.push_back(&place);
    std::sort(places.begin(), places.end(), [](const Place* a, const Place* b) {
        if (a->isBox != b->isBox)
            return a->isBox;
        return a->tag != b->tag ? naturallyLess(a->tag, b->tag) : a->id < b->id;
    });
    std::vector<PlaceId> ids;
    for (const Place* place : places)
        ids.push_back(place->id);
    ids.push_back({});
    return ids;
}

Counts countsOf(const std::vector<ScheduleRow>& rows)
{
    Counts counts;
    for (const ScheduleRow& row : rows) {
        counts.landings += row.kind == RowKind::Landing;
        counts.empties += row.kind == RowKind::Empty;
        counts.spares += row.kind == RowKind::Spare || row.kind == RowKind::Insulated;
        counts.waiting += row.kind == RowKind::Waiting;
    }
    return counts;
}

void add(Counts& all, const Counts& more)
{
    all.landings += more.landings;
    all.empties += more.empties;
    all.spares += more.spares;
    all.waiting += more.waiting;
}

template <class Rows> const auto* at(const Rows& rows, PlaceId place)
{
    const auto found = rows.find(place.number);
    return found == rows.end() ? nullptr : &found->second;
}

} // namespace

ScheduleBox boxAt(const Job& job, PlaceId id)
{
    ScheduleBox box;
    box.place = id;
    if (const Place* place = job.places.find(id)) {
        box.tag = place->tag;
        box.words = place->words;
        box.breaker = place->breaker;
        box.isBox = place->isBox;
    }
    return box;
}

Schedule scheduleOf(const Job& job, std::string digest)
{
    const Index index = indexOf(job);
    const auto devices = devicesByPlace(job);
    const auto splices = splicesByPlace(index);
    Schedule schedule;
    schedule.title = titleBlockOf(job, std::move(digest));
    for (PlaceId place : placesInOrder(job)) {
        ScheduleBox box = boxAt(job, place);
        if (const auto* here = at(devices, place))
            for (const Device* device : *here)
                box.blocks.push_back(blockOf(index, *device));
        if (const auto* here = at(splices, place))
            for (const Splice* splice : *here)
                box.blocks.push_back(blockOf(index, *splice));
        if (const auto* ends = at(index.looseAt, place))
            addLooseEnds(box.blocks, index, *ends, place);
        if (box.blocks.empty())
            continue;
        for (ScheduleBlock& block : box.blocks) {
            block.counts = countsOf(block.rows);
            add(box.counts, block.counts);
        }
        add(schedule.counts, box.counts);
        schedule.boxes.push_back(std::move(box));
    }
    return schedule;
}

} // namespace doorloom
