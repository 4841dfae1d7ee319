#include "jobs.h"

#include "catalogue/catalogue.h"

#include <algorithm>
#include <map>
#include <random>
#include <stdexcept>

namespace doorloom {

namespace {

[[noreturn]] void misspelt(const std::string& what, std::string_view text)
{
    throw std::runtime_error(what + ": '" + std::string(text) + "'");
}

std::string_view trimmed(std::string_view text)
{
    const auto first = text.find_first_not_of(" \n");
    return first == std::string_view::npos ? std::string_view()
                                           : text.substr(first, text.find_last_not_of(" \n") - first + 1);
}

std::vector<std::string_view> splitAt(std::string_view text, std::string_view mark)
{
    std::vector<std::string_view> pieces;
    for (auto at = text.find(mark); at != std::string_view::npos; at = text.find(mark)) {
        pieces.push_back(trimmed(text.substr(0, at)));
        text.remove_prefix(at + mark.size());
    }
    pieces.push_back(trimmed(text));
    return pieces;
}

std::pair<std::string, std::string> pairAt(std::string_view text, std::string_view mark)
{
    const auto pieces = splitAt(text, mark);
    if (pieces.size() != 2)
        misspelt("Two things with '" + std::string(mark) + "' between them are needed", text);
    return {std::string(pieces[0]), std::string(pieces[1])};
}

std::string replaced(std::string text, std::string_view what, std::string_view by)
{
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
        text.replace(at, what.size(), by);
    return text;
}

bool sameTerminal(const Terminal& terminal, const std::string& name)
{
    const auto plain = [](const std::string& text) { return replaced(text, "−", "-"); };
    return plain(terminal.key) == plain(name) || plain(terminal.printed) == plain(name);
}

bool stands(const Job& job, const End& end, std::string_view name)
{
    return end == endNamed(job, name);
}

} // namespace

std::vector<std::string> splitWords(std::string_view text)
{
    std::vector<std::string> words;
    for (std::string_view piece : splitAt(text, " "))
        if (!piece.empty())
            words.emplace_back(piece);
    return words;
}

const Kind& catalogueKind(const std::string& name)
{
    static const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    if (!catalogue.ok())
        throw std::runtime_error(inWords(catalogue.problem()));
    const Kind* kind = catalogue.value().find(name);
    if (!kind)
        misspelt("The catalogue has no such kind", name);
    return *kind;
}

// ---- Look-ups by name

Landing landingNamed(const Job& job, std::string_view name)
{
    const auto colon = name.find(':');
    const Device* device = deviceTagged(job, name.substr(0, colon));
    if (colon == std::string_view::npos || !device)
        misspelt("No such device", name);
    const std::string wanted(name.substr(colon + 1));
    for (const Terminal* terminal : terminalsOf(*kindOf(job, *device)))
        if (sameTerminal(*terminal, wanted))
            return {device->id, terminal->key};
    misspelt("No such terminal", name);
}

End endNamed(const Job& job, std::string_view name)
{
    if (name == "waiting")
        return {EndState::Waiting, {}};
    if (name == "spare")
        return {EndState::Spare, {}};
    if (name == "insulated")
        return {EndState::Insulated, {}};
    return {EndState::Landed, landingNamed(job, name)};
}

ConductorId conductorNamed(const Job& job, std::string_view wire)
{
    const auto [from, to] = pairAt(wire, "→");
    for (const Conductor& conductor : job.conductors)
        if ((stands(job, conductor.from, from) && stands(job, conductor.to, to)) ||
            (stands(job, conductor.from, to) && stands(job, conductor.to, from)))
            return conductor.id;
    misspelt("No such conductor", wire);
}

OperatorId operatorNamed(const Job& job, std::string_view name)
{
    for (const Operator& moved : job.operators)
        if (nameOf(job, moved) == name)
            return moved.id;
    misspelt("No such operator", name);
}

std::vector<Thrown> throwsNamed(const Job& job, std::string_view text)
{
    std::vector<Thrown> throws;
    for (const std::string& word : splitWords(text)) {
        const auto [name, key] = pairAt(word, "=");
        const OperatorId moved = operatorNamed(job, name);
        if (!findThrow(job.operators.find(moved)->throws, key))
            misspelt("No such throw", word);
        throws.push_back({moved, key});
    }
    return throws;
}

Situation situationNamed(const Job& job, std::string_view text)
{
    static const std::map<std::string, SituationKind, std::less<>> plain = {
        {"rest", SituationKind::Rest},
        {"occupied", SituationKind::Occupied},
        {"other door open", SituationKind::OtherDoorOpen},
        {"mains lost", SituationKind::MainsLost},
        {"all power lost", SituationKind::AllPowerLost},
        {"fire alarm", SituationKind::FireAlarm},
        {"fire reset", SituationKind::FireReset}};
    if (const auto found = plain.find(text); found != plain.end())
        return {found->second, {}, {}};
    const auto begins = [&](std::string_view start) { return text.substr(0, start.size()) == start; };
    const auto ends = [&](std::string_view end) {
        return text.size() > end.size() && text.substr(text.size() - end.size()) == end;
    };
    if (begins("request ") && ends(" while occupied"))
        return {SituationKind::RequestWhileOccupied, std::string(text.substr(8, text.size() - 8 - 15)), {}};
    if (begins("request "))
        return {SituationKind::Request, std::string(text.substr(8)), {}};
    if (begins("release "))
        return {SituationKind::Release, std::string(text.substr(8)), {}};
    if (ends(" lost"))
        return {SituationKind::LostAlone, {}, operatorNamed(job, text.substr(0, text.size() - 5))};
    misspelt("No such situation", text);
}

// ---- The builder

template <class T> T JobBuilder::carriedOut(Result<T> result) const
{
    if (!result.ok())
        throw std::runtime_error(inWords(result.problem()));
    return std::move(result.value());
}

JobBuilder& JobBuilder::apply(const Change& change)
{
    carriedOut(applyChange(job_, change));
    change_ = joined(std::move(change_), change);
    return *this;
}

const Device& JobBuilder::deviceCalled(std::string_view tag) const
{
    const Device* device = deviceTagged(job_, tag);
    if (!device)
        misspelt("No such device", tag);
    return *device;
}

Kind JobBuilder::fitted(Kind kind) const
{
    if (clamps_ == Clamps::Roomy)
        for (Strip& strip : kind.strips)
            for (Terminal& terminal : strip.terminals) {
                terminal.clampCapacity = 99;
                terminal.wire = {};
            }
    return kind;
}

JobBuilder& JobBuilder::device(const std::string& tag, const std::string& kind)
{
    return device(tag, catalogueKind(kind));
}

JobBuilder& JobBuilder::device(const std::string& tag, const Kind& kind)
{
    Numbers numbers(job_);
    return apply(placeDevice(job_, numbers, fitted(kind), tag).second);
}

JobBuilder& JobBuilder::wire(std::string_view from, std::string_view to)
{
    Numbers numbers(job_);
    return apply(addWire(job_, numbers, endNamed(job_, from), endNamed(job_, to)).second);
}

JobBuilder& JobBuilder::wires(std::string_view text)
{
    for (std::string_view piece : splitAt(text, ";"))
        if (!piece.empty()) {
            const auto [from, to] = pairAt(piece, "→");
            wire(from, to);
        }
    return *this;
}

JobBuilder& JobBuilder::power(const std::string& supply, const std::string& devices)
{
    for (const std::string& tag : splitWords(devices))
        wire(supply + ":+", tag + ":+").wire(supply + ":-", tag + ":-");
    return *this;
}

JobBuilder& JobBuilder::takeOff(std::string_view wire)
{
    return apply(carriedOut(doorloom::takeOff(job_, conductorNamed(job_, wire))));
}

JobBuilder& JobBuilder::move(std::string_view wire, std::string_view to)
{
    const ConductorId id = conductorNamed(job_, wire);
    const bool isFrom = stands(job_, job_.conductors.find(id)->from, pairAt(wire, "→").first);
    return apply(carriedOut(setEnd(job_, id, isFrom ? WhichEnd::From : WhichEnd::To, endNamed(job_, to))));
}

JobBuilder& JobBuilder::exchange(std::string_view one, std::string_view other)
{
    const Landing first = landingNamed(job_, one), second = landingNamed(job_, other);
    if (first.device != second.device)
        misspelt("Terminals of one device are needed", other);
    return apply(carriedOut(exchangeTerminals(job_, first.device, first.terminal, second.terminal)));
}

JobBuilder& JobBuilder::option(const std::string& tag, const std::string& option, const std::string& value)
{
    return apply(carriedOut(setOption(job_, deviceCalled(tag).id, option, value)));
}

JobBuilder& JobBuilder::jumper(const std::string& tag, const std::string& option, const std::string& jumper,
                               const std::string& value)
{
    return apply(carriedOut(setJumper(job_, deviceCalled(tag).id, option, jumper, value)));
}

JobBuilder& JobBuilder::setting(const std::string& tag, const std::string& setting, SettingValue value)
{
    return apply(carriedOut(setSetting(job_, deviceCalled(tag).id, setting, std::move(value))));
}

JobBuilder& JobBuilder::kind(const std::string& tag, const std::string& kind)
{
    return this->kind(tag, catalogueKind(kind));
}

JobBuilder& JobBuilder::kind(const std::string& tag, const Kind& kind)
{
    Numbers numbers(job_);
    return apply(carriedOut(setKind(job_, numbers, deviceCalled(tag).id, fitted(kind))).change);
}

JobBuilder& JobBuilder::idle(const std::string& operatorName, const std::string& thrown)
{
    return apply(carriedOut(setIdle(job_, operatorNamed(job_, operatorName), thrown)));
}

JobBuilder& JobBuilder::bind(const std::string& tag, const std::string& role, const std::string& operatorName)
{
    return apply(carriedOut(bindRole(job_, deviceCalled(tag).id, role, operatorNamed(job_, operatorName))));
}

JobBuilder& JobBuilder::rename(const std::string& tag, const std::string& newTag)
{
    return apply(carriedOut(renameDevice(job_, deviceCalled(tag).id, newTag)));
}

JobBuilder& JobBuilder::remove(const std::string& tag)
{
    return apply(carriedOut(removeDevice(job_, deviceCalled(tag).id)));
}

JobBuilder& JobBuilder::opening(const OpeningSketch& sketch)
{
    Numbers numbers(job_);
    Opening opening;
    opening.id = {numbers.take()};
    opening.tag = sketch.tag;
    opening.egress = sketch.egress;
    opening.fireRated = sketch.fireRated;
    if (!sketch.fire.empty())
        opening.fire = operatorNamed(job_, sketch.fire);
    for (const std::string& tag : sketch.locks)
        opening.locks.push_back(deviceCalled(tag).id);
    for (const std::string& tag : sketch.doorOperators)
        opening.doorOperators.push_back(deviceCalled(tag).id);
    for (const ActSketch& act : sketch.requests)
        opening.requests.push_back({act.name, act.side, throwsNamed(job_, act.throws)});
    for (const ActSketch& act : sketch.releases)
        opening.releases.push_back({act.name, act.side, throwsNamed(job_, act.throws)});
    opening.occupied = throwsNamed(job_, sketch.occupied);
    for (const PromiseSketch& promise : sketch.promises)
        opening.promises.push_back(
            {situationNamed(job_, promise.situation),
             promise.device.empty() ? opening.locks.at(0) : deviceCalled(promise.device).id,
             promise.promised});
    return apply({{Put<Opening>{opening.id, opening}}});
}

JobBuilder oneDoor(Clamps clamps)
{
    JobBuilder door(clamps);
    door.device("PS1", "dc-supply-24").device("LM1", "relay-module-negative").device("PB1", "push-plate");
    door.device("ES1", "strike-fail-secure").option("LM1", "K1", "wet").option("LM1", "K3", "dry");
    door.power("PS1", "LM1").wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1; ES1:1 → LM1:K1.C; ES1:2 → LM1:K1.NO");
    return door;
}

// ---- The same job under other numbers

namespace {

using NewNumbers = std::map<std::uint32_t, std::uint32_t>;

NewNumbers shuffledNumbers(const Job& job, unsigned seed)
{
    std::vector<std::uint32_t> numbers;
    forEachTable(job, [&](const char*, const auto& rows) {
        for (const auto& row : rows)
            numbers.push_back(row.id.number);
    });
    std::vector<std::uint32_t> shuffled = numbers;
    std::mt19937 random(seed);
    std::shuffle(shuffled.begin(), shuffled.end(), random);
    NewNumbers found;
    for (std::size_t i = 0; i < numbers.size(); ++i)
        found[numbers[i]] = shuffled[i];
    return found;
}

// Gives every id inside a row its new number.
struct Renumber {
    const NewNumbers& numbers;

    template <class Row> void operator()(Id<Row>& id) const
    {
        if (id)
            id.number = numbers.at(id.number);
    }
    template <class Row> void operator()(std::vector<Id<Row>>& ids) const
    {
        for (Id<Row>& id : ids)
            (*this)(id);
    }
    void operator()(std::vector<Thrown>& throws) const
    {
        for (Thrown& thrown : throws)
            (*this)(thrown.moved);
    }
    void operator()(End& end) const
    {
        if (auto* landing = std::get_if<Landing>(&end.on))
            (*this)(landing->device);
        if (auto* splice = std::get_if<SpliceId>(&end.on))
            (*this)(*splice);
    }

    void inside(JobInfo&) const {}
    void inside(JobKind&) const {}
    void inside(CableType&) const {}
    void inside(Place&) const {}
    void inside(Sheet&) const {}
    void inside(SetAside&) const {}
    void inside(Operator& row) const { (*this)(row.owner); }
    void inside(Splice& row) const { (*this)(row.place); }
    void inside(Bends& row) const { (*this)(row.conductor); }
    void inside(Note& row) const { (*this)(row.sheet); }
    void inside(Device& row) const
    {
        (*this)(row.kind);
        (*this)(row.place);
        for (Binding& binding : row.bindings)
            (*this)(binding.moved);
    }
    void inside(Cable& row) const
    {
        (*this)(row.type);
        (*this)(row.from);
        (*this)(row.to);
    }
    void inside(Conductor& row) const
    {
        (*this)(row.cable);
        (*this)(row.from);
        (*this)(row.to);
    }
    void inside(Opening& row) const
    {
        (*this)(row.door);
        (*this)(row.fire);
        (*this)(row.locks);
        (*this)(row.doorOperators);
        for (Act& act : row.requests)
            (*this)(act.throws);
        for (Act& act : row.releases)
            (*this)(act.throws);
        (*this)(row.occupied);
        for (Promise& promise : row.promises) {
            (*this)(promise.situation.lost);
            (*this)(promise.device);
        }
    }
    void inside(Placement& row) const
    {
        (*this)(row.sheet);
        std::visit(*this, row.what);
    }
    void inside(Typical& row) const
    {
        for (std::uint32_t& number : row.rows)
            number = numbers.at(number);
        for (Edition& edition : row.editions)
            for (DoorRow& drawn : edition.rows)
                std::visit(
                    [&](auto& each) {
                        (*this)(each.id);
                        inside(each);
                    },
                    drawn);
    }
    void inside(Stamp& row) const
    {
        (*this)(row.typical);
        for (auto& [typical, stamped] : row.rows) {
            typical = numbers.at(typical);
            stamped = numbers.at(stamped);
        }
    }
};

} // namespace

Job renumbered(const Job& job, unsigned seed)
{
    const NewNumbers numbers = shuffledNumbers(job, seed);
    const Renumber renumber{numbers};
    Change everything;
    forEachTable(job, [&]<class Row>(const char*, const Table<Row>& rows) {
        for (Row row : rows) {
            renumber(row.id);
            renumber.inside(row);
            everything.steps.push_back(Put<Row>{row.id, row});
        }
    });
    return JobBuilder().apply(everything).job();
}

} // namespace doorloom
