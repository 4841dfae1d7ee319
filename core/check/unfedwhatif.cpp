#include "check/unfed.h"
#include "edit/operations.h"

#include <algorithm>
#include <memory>

// Why a load is never fed, by what would feed it if something else were otherwise.
namespace doorloom {

namespace {

constexpr Text ownContact = {.en = "{load} can pull in only through its own contact: it must be in before it can pull in.",
                             .es = "{load} solo se activa por su propio contacto: tendría que estar activado antes."};
constexpr Text deadRelay = {.en = "{load} waits for {relay}, which can never pull in.",
                            .es = "{load} depende de {relay}, que nunca puede activarse."};
constexpr Text inSeries = {.en = "{load} has its way back only through another load, {other}{cut}.",
                           .es = "{load} solo retorna a través de otra carga, {other}{cut}."};
constexpr Text cutToo = {.en = "; {side} comes to no pole", .es = "; {side} no llega a ningún polo"};
constexpr Text nothingMore = {.en = "", .es = ""};
constexpr Text turnedDiode = {.en = "A diode the wrong way round, {diode}, blocks the only path of {load}.",
                              .es = "Un diodo al revés, {diode}, bloquea el único camino de {load}."};
constexpr Text startWords = {
    .en = "Give {coil} a way to pull in that does not pass its own contact: from {plus} through a start contact to {coil}.",
    .es = "Dé a {coil} un camino para activarse que no pase por su propio contacto: de {plus}, por un contacto de "
          "arranque, a {coil}."};

// A circuit in which something else is otherwise, and the questions asked of it.
struct WhatIf {
    Circuit circuit;
    std::unique_ptr<Questions> ask;

    explicit WhatIf(Circuit made) : circuit(std::move(made)), ask(std::make_unique<Questions>(circuit, windowBudget)) {}
};

// From a plus through a start contact to the coil.
void addStart(const UnfedLoad& load, const Pole& plus, Remedies& remedies)
{
    const Facts& facts = load.facts;
    const auto from = facts.landingAt(plus.vertex), to = facts.landingAt(load.element.a);
    if (!from || !to)
        return;
    Numbers numbers(facts.job);
    remedies.add({startWords, {{"coil", nameOf(facts, load.element.a)}, {"plus", nameOf(facts, plus.vertex)}}},
                 addWire(facts.job, numbers, End{EndState::Landed, *from}, End{EndState::Landed, *to}).second);
}

UnfedBecause becauseOf(const UnfedLoad& load, MovedIndex deadOne, const Cube& cube)
{
    const Facts& facts = load.facts;
    const auto& drives = facts.circuit().drives;
    const bool own = std::any_of(drives.begin(), drives.end(), [&](const Drive& drive) {
        return drive.moved == deadOne && drive.load == load.number;
    });
    if (!own)
        return {"its relay can never pull in",
                {deadRelay, {{"relay", nameOf(facts.job, facts.net.moved(deadOne).id)}}}};
    UnfedBecause because{"must be in before it can pull in", {ownContact, {}}};
    for (const Pole& pole : load.poles)
        if (auto way = wayBetween(facts, cube, pole.vertex, load.element.a, true); pole.isPlus && !way.empty()) {
            because.path = std::move(way);
            Remedies remedies(facts);
            addStart(load, pole, remedies);
            because.remedies = remedies.taken();
            break;
        }
    return because;
}

// The load that hangs on the side which meets no pole, or beside it on the other.
std::string neighbourOf(const UnfedLoad& load)
{
    const std::vector<Vertex> reach = reachOf(load.facts, load.cutSide().value_or(load.element.b));
    const auto hangs = [&](Vertex vertex) { return std::binary_search(reach.begin(), reach.end(), vertex); };
    for (std::uint32_t each = 0; each < load.facts.circuit().elements.size(); ++each) {
        const Element& other = load.facts.circuit().elements[each];
        if (each != load.number && other.kind == ElementKind::Load && (hangs(other.a) || hangs(other.b)))
            return tagOfOrigin(load.facts, other.origin);
    }
    return {};
}

} // namespace

// If every relay could be where it likes?
std::optional<UnfedBecause> unfedByDeadRelay(const UnfedLoad& load)
{
    const Facts& facts = load.facts;
    Circuit undriven = facts.circuit();
    undriven.drives.clear();
    const WhatIf free(std::move(undriven));
    const Verdict verdict = free.ask->returned(load.number);
    if (!occurs(verdict))
        return std::nullopt;
    for (const Cube& cube : verdict.cubes)
        for (const ThrowAt& each : cube)
            if (!facts.ask.canMove(each.moved) && each.thrown != facts.circuit().operators[each.moved].unpowered)
                return becauseOf(load, each.moved, cube);
    const Pole& first = load.poles.front();
    UnfedBecause because = exclusiveContacts(load, first.feed);
    because.path = wayBetween(facts, verdict.cubes.front(), load.element.a, first.vertex, false);
    return because;
}

// If other loads were resistors?
std::optional<UnfedBecause> unfedInSeries(const UnfedLoad& load)
{
    const Facts& facts = load.facts;
    Circuit conducting = facts.circuit();
    for (std::uint32_t each = 0; each < conducting.elements.size(); ++each)
        if (each != load.number && conducting.elements[each].kind == ElementKind::Load)
            conducting.elements[each].kind = ElementKind::Resistor;
    for (const Feed& feed : facts.circuit().feeds) // a source takes current backwards too
        conducting.elements.push_back({feed.plus, feed.minus, ElementKind::Resistor, false, 0, feed.origin});
    const WhatIf series(std::move(conducting));
    for (std::uint32_t feed : facts.ask.feedsNear(load.element.a)) {
        const Verdict verdict = series.ask->returnedVia(load.number, feed, Direction::Either);
        if (!occurs(verdict))
            continue;
        const auto cut = load.cutSide();
        const Message cutWords = cut ? Message{cutToo, {{"side", nameOf(facts, *cut)}}} : Message{nothingMore};
        UnfedBecause because{"in series with another load",
                             {inSeries, {{"other", neighbourOf(load)}, {"cut", std::vector<Message>{cutWords}}}}};
        because.path = wayBetween(facts, verdict.cubes.front(), facts.circuit().feeds[feed].plus, load.element.a, true);
        Remedies remedies(facts);
        load.landCutSide(remedies);
        because.remedies = remedies.taken();
        return because;
    }
    return std::nullopt;
}

// If one of the diodes were turned round?
std::optional<UnfedBecause> unfedByTurnedDiode(const UnfedLoad& load)
{
    const Facts& facts = load.facts;
    for (std::uint32_t each = 0; each < facts.circuit().diodes.size(); ++each) {
        const Diode& diode = facts.circuit().diodes[each];
        if (!facts.ask.sameIsland(diode.anode, load.element.a))
            continue;
        Circuit turned = facts.circuit();
        std::swap(turned.diodes[each].anode, turned.diodes[each].cathode);
        const WhatIf mended(std::move(turned));
        if (!occurs(mended.ask->returned(load.number)))
            continue;
        UnfedBecause because{"a diode the wrong way",
                             {turnedDiode, {{"diode", tagOfOrigin(facts, diode.origin)}}}};
        Remedies remedies(facts);
        const auto anode = facts.landingAt(diode.anode), cathode = facts.landingAt(diode.cathode);
        if (anode && cathode)
            remedies.exchange(anode->device, anode->terminal, cathode->terminal);
        because.remedies = remedies.taken();
        return because;
    }
    return std::nullopt;
}

} // namespace doorloom
