#include "check/remedies.h"

#include "edit/operations.h"
#include "edit/removeany.h"

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

constexpr Text takeOutWords = {.en = "With power off, take {part} out, with its conductors.",
                                .es = "Sin tensión, quite {part} con sus hilos."};
constexpr Text takeOffWords = {.en = "With power off, take off the conductor from {from} to {to}.",
                               .es = "Sin tensión, retire el conductor de {from} a {to}."};
constexpr Text setOptionWords = {.en = "With power off, set {jumpers} of {output} to '{value}'.",
                                 .es = "Con la alimentación cortada, ponga {jumpers} de {output} en '{value}'."};
constexpr Text jumperWords = {.en = "jumper {jumper}", .es = "puente {jumper}"};
constexpr Text exchangeWords = {.en = "With power off, exchange what is landed on {one} and {other}.",
                                .es = "Sin tensión, intercambie lo conectado en {one} y {other}."};
constexpr Text landWords = {.en = "Land a conductor from {from} to {to}.",
                            .es = "Conecte un conductor de {from} a {to}."};
constexpr Text moveWords = {.en = "With power off, move the conductor from {far}: off {from}, onto {to}.",
                            .es = "Sin tensión, mueva el conductor de {far}: de {from} a {to}."};
constexpr Text landFreeWords = {.en = "Land the free end of conductor {tag}, which comes from {far}, on {to}.",
                                .es = "Conecte el extremo libre del conductor {tag}, que viene de {far}, en {to}."};
constexpr Text inTurn = {.en = "{first} {then}", .es = "{first} {then}"};
constexpr Text freeEnd = {.en = "nothing", .es = "nada"};

std::string inName(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        return nameOf(job, *landing);
    if (const SpliceId* splice = spliceOf(end))
        if (const Splice* row = job.splices.find(*splice))
            return row->tag;
    return std::string(freeEnd.en);
}

} // namespace

void Remedies::add(Message words, Result<Change> change)
{
    const bool isNew = change.ok() && std::none_of(remedies_.begin(), remedies_.end(), [&](const Remedy& each) {
        return each.change == change.value();
    });
    if (isNew)
        remedies_.push_back({std::move(words), std::move(change.value())});
}

void Remedies::addTogether(std::vector<Remedy> steps)
{
    Remedy all;
    for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
        all.words = step == steps.rbegin()
                        ? step->words
                        : Message{inTurn, {{"first", std::vector<Message>{step->words}}, {"then", std::vector<Message>{all.words}}}};
        all.change = joined(std::move(step->change), std::move(all.change));
    }
    if (!steps.empty())
        remedies_.push_back(std::move(all));
}

void Remedies::takeOff(ConductorId conductor)
{
    if (const Conductor* row = facts_.job.conductors.find(conductor))
        add({takeOffWords, {{"from", inName(facts_.job, row->from)}, {"to", inName(facts_.job, row->to)}}},
            doorloom::takeOff(facts_.job, conductor));
}

void Remedies::takeOut(DeviceId device)
{
    std::vector<std::uint32_t> rows{device.number};
    for (const Conductor* conductor : conductorsOn(facts_.job, device))
        rows.push_back(conductor->id.number);
    add({takeOutWords, {{"part", tagOf(facts_.job, device)}}}, removeAny(facts_.job, rows));
}

void Remedies::setOption(DeviceId device, const Key& option, const Key& value)
{
    const Kind* kind = kindOf(facts_.job, device);
    const Option* row = kind ? findOption(*kind, option) : nullptr;
    if (!row)
        return;
    std::vector<Message> jumpers;
    for (const Jumper& jumper : row->jumpers)
        jumpers.push_back({jumperWords, {{"jumper", jumper.key}}});
    const auto index = findThrow(row->values, value);
    add({setOptionWords,
         {{"output", tagOf(facts_.job, device) + ":" + option},
          {"value", index ? Argument(row->values[*index].words) : Argument(value)},
          {"jumpers", std::move(jumpers)}}},
        doorloom::setOption(facts_.job, device, option, value));
}

void Remedies::setOtherValues(DeviceId device, const Key& option)
{
    const Kind* kind = kindOf(facts_.job, device);
    const Device* row = facts_.job.devices.find(device);
    const Option* choices = kind ? findOption(*kind, option) : nullptr;
    if (!choices || !row)
        return;
    for (const Throw& value : choices->values)
        if (std::any_of(choices->jumpers.begin(), choices->jumpers.end(),
                        [&](const Jumper& jumper) { return chosen(*row, option, jumper.key) != value.key; }))
            setOption(device, option, value.key);
}

void Remedies::exchange(DeviceId device, const Key& one, const Key& other)
{
    add({exchangeWords, {{"one", nameOf(facts_.job, Landing{device, one})}, {"other", nameOf(facts_.job, Landing{device, other})}}},
        exchangeTerminals(facts_.job, device, one, other));
}

void Remedies::land(Vertex from, Vertex to)
{
    const auto a = facts_.landingAt(from), b = facts_.landingAt(to);
    if (!a || !b)
        return;
    Numbers numbers(facts_.job);
    add({landWords, {{"from", nameOf(facts_.job, *a)}, {"to", nameOf(facts_.job, *b)}}},
        addWire(facts_.job, numbers, End{EndState::Landed, *a}, End{EndState::Landed, *b}).second);
}

void Remedies::landFreeEnd(const Conductor& conductor, const Landing& to)
{
    const bool isFrom = conductor.from.state != EndState::Landed;
    add({landFreeWords,
         {{"tag", conductor.tag.empty() ? inName(facts_.job, isFrom ? conductor.to : conductor.from) : conductor.tag},
          {"far", inName(facts_.job, isFrom ? conductor.to : conductor.from)},
          {"to", nameOf(facts_.job, to)}}},
        setEnd(facts_.job, conductor.id, isFrom ? WhichEnd::From : WhichEnd::To, End{EndState::Landed, to}));
}

void Remedies::moveEnd(const Conductor& conductor, const Landing& from, const Landing& to)
{
    const Landing* first = landingOf(conductor.from);
    const bool isFrom = first && *first == from;
    add({moveWords,
         {{"far", inName(facts_.job, isFrom ? conductor.to : conductor.from)},
          {"from", nameOf(facts_.job, from)},
          {"to", nameOf(facts_.job, to)}}},
        setEnd(facts_.job, conductor.id, isFrom ? WhichEnd::From : WhichEnd::To, End{EndState::Landed, to}));
}

void Remedies::exchangeChangeovers(const Device& device, const Kind& kind, MovedIndex moved)
{
    const auto isLanded = [&](const Key& node) {
        const auto vertex = facts_.net.vertexOf(device.id, node);
        return vertex && facts_.isLanded(*vertex);
    };
    for (std::size_t i = 0; i < kind.parts.size(); ++i)
        for (std::size_t k = i + 1; k < kind.parts.size(); ++k) {
            const auto *one = std::get_if<ContactPart>(&kind.parts[i].body),
                       *other = std::get_if<ContactPart>(&kind.parts[k].body);
            if (one && other && one->a == other->a && one->role == other->role &&
                facts_.net.indexOf(boundTo(device, one->role)) == moved && (isLanded(one->b) || isLanded(other->b)))
                exchange(device.id, one->b, other->b);
        }
}

void Remedies::turnContacts(const std::vector<MovedIndex>& operators)
{
    std::set<std::pair<DeviceId, Key>> options;
    for (MovedIndex moved : operators)
        for (const Device& device : facts_.job.devices) {
            const Kind* kind = kindOf(facts_.job, device);
            if (!kind)
                continue;
            exchangeChangeovers(device, *kind, moved);
            for (const SwitchedOutput& output : kind->outputs)
                if (facts_.net.indexOf(boundTo(device, output.key)) == moved)
                    options.insert({device.id, output.option});
        }
    for (const auto& [device, option] : options)
        setOtherValues(device, option);
}

void Remedies::breakWay(const std::vector<Origin>& way)
{
    for (const Origin& origin : way)
        if (!origin.because.empty())
            setOtherValues(origin.device, origin.because.front().option);
    for (const Origin& origin : way)
        if (const Kind* kind = kindOf(facts_.job, origin.device))
            if (const auto* diode = findPartAs<DiodePart>(*kind, origin.part);
                diode && findTerminal(*kind, diode->anode) && findTerminal(*kind, diode->cathode))
                exchange(origin.device, diode->anode, diode->cathode);
    for (const Origin& origin : way)
        if (const Kind* kind = kindOf(facts_.job, origin.device); kind && kind->family == "part")
            takeOut(origin.device);
    for (const Origin& origin : way)
        if (origin.conductor)
            takeOff(origin.conductor);
}

} // namespace doorloom
