#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"
#include "edit/operations.h"

#include <algorithm>
#include <memory>

// A load, coil or voltage input that no position feeds: in none does a closed path lead from one source through
// it and back. Which of the cases it is follows from what would feed it if something else were otherwise.
namespace doorloom {

namespace {

constexpr Text whileShorted = {.en = "{load} is fed only while {source} is shorted.",
                               .es = "{load} recibe tensión solo mientras {source} está en cortocircuito."};
constexpr Text ownContact = {.en = "{load} can pull in only through its own contact: it must be in before it can pull in.",
                             .es = "{load} solo se activa por su propio contacto: tendría que estar activado antes."};
constexpr Text deadRelay = {.en = "{load} waits for {relay}, which can never pull in.",
                            .es = "{load} depende de {relay}, que nunca puede activarse."};
constexpr Text onePole = {.en = "Both sides of {load} come to one pole, {pole}: there are no volts across it.",
                          .es = "Ambos lados de {load} llegan a un solo polo, {pole}: no hay tensión entre ellos."};
constexpr Text inSeries = {.en = "{load} has its way back only through another load, {other}{cut}.",
                           .es = "{load} solo retorna a través de otra carga, {other}{cut}."};
constexpr Text cutToo = {.en = "; {side} comes to no pole", .es = "; {side} no llega a ningún polo"};
constexpr Text nothingMore = {.en = "", .es = ""};
constexpr Text turnedDiode = {.en = "A diode the wrong way round, {diode}, blocks the only path of {load}.",
                              .es = "Un diodo al revés, {diode}, bloquea el único camino de {load}."};
constexpr Text exclusive = {
    .en = "{load} meets plus and minus of {source}, but never in one position: the contacts on its two sides exclude "
          "each other.",
    .es = "{load} llega al positivo y al negativo de {source}, pero nunca a la vez: los contactos de sus dos lados se "
          "excluyen."};
constexpr Text untied = {
    .en = "{load} stands between {one} and {other}, poles of two supplies with nothing between them: no path leads back.",
    .es = "{load} queda entre {one} y {other}, polos de dos fuentes sin unión entre sí: no hay camino de retorno."};
constexpr Text twoSupplies = {.en = "{load} stands between {one} and {other}, poles of two supplies.",
                              .es = "{load} queda entre {one} y {other}, polos de dos fuentes."};
constexpr Text missingReturn = {
    .en = "{load} has no way back to a source: from {side} the path stops at {stop}.",
    .es = "{load} no tiene retorno a ninguna fuente: desde {side} el camino termina en {stop}."};
constexpr Text startWords = {
    .en = "Give {coil} a way to pull in that does not pass its own contact: from {plus} through a start contact to {coil}.",
    .es = "Dé a {coil} un camino para activarse que no pase por su propio contacto: de {plus}, por un contacto de "
          "arranque, a {coil}."};

// A circuit in which something else is otherwise, and the questions asked of it.
struct WhatIf {
    Circuit circuit;
    std::unique_ptr<Questions> ask;

    WhatIf(Circuit made, std::uint64_t steps) : circuit(std::move(made)), ask(std::make_unique<Questions>(circuit, steps)) {}
};

constexpr std::uint64_t whatIfSteps = windowBudget;

class NeverFed {
public:
    NeverFed(const Facts& facts, std::uint32_t number)
        : facts_(facts), number_(number), element_(facts.circuit().elements[number]), poles_(polesNear(facts, element_.a))
    {
    }

    // Nothing: reverse polarity speaks.
    std::optional<Finding> finding()
    {
        if (returnsReversed())
            return std::nullopt;
        finding_.rule = "never-fed";
        finding_.at = {place()};
        const bool said = isWhileShorted() || isCoilTrouble() || isOnePole() || isInSeries() || isTurnedDiode() ||
                          isExclusive() || isTwoSupplies();
        if (!said)
            isMissingReturn();
        finding_.remedies = remedies_.taken();
        return std::move(finding_);
    }

private:
    Spot place() const { return loadSpot(facts_, number_); }

    std::string name() const
    {
        const Spot at = place();
        return at.key.empty() ? tagOf(facts_.job, at.device) : nameOf(facts_.job, Landing{at.device, at.key});
    }

    void say(std::string_view reason, const Text& text, std::vector<std::pair<std::string, Argument>> arguments)
    {
        arguments.emplace_back("load", name());
        finding_.reason = reason;
        finding_.why = {text, std::move(arguments)};
    }

    // By a way that does not pass the source's other pole: where the source is shorted, all would meet all.
    bool meets(Vertex side, const Pole& pole) const
    {
        return occurs(facts_.ask.allJoined({{side, pole.vertex, opposite(pole)}}));
    }
    bool meetsNoPole(Vertex side) const
    {
        return std::none_of(poles_.begin(), poles_.end(), [&](const Pole& pole) { return meets(side, pole); });
    }
    Pole otherPole(const Pole& pole) const { return {opposite(pole), pole.feed, !pole.isPlus}; }
    Vertex opposite(const Pole& pole) const
    {
        const Feed& feed = facts_.circuit().feeds[pole.feed];
        return pole.isPlus ? feed.minus : feed.plus;
    }

    bool returnsReversed() const
    {
        const auto feeds = facts_.ask.feedsNear(element_.a);
        return element_.polarised && std::any_of(feeds.begin(), feeds.end(), [&](std::uint32_t feed) {
                   return occurs(facts_.ask.returnedVia(number_, feed, Direction::Reverse));
               });
    }

    bool isWhileShorted()
    {
        for (std::uint32_t feed : facts_.ask.feedsNear(element_.a))
            if (facts_.shorted(feed).answer == Answer::Always && structurallyBetween(feed)) {
                say("only while shorted", whileShorted, {{"source", tagOf(facts_.job, facts_.deviceOfFeed(feed))}});
                return true;
            }
        return false;
    }

    bool structurallyBetween(std::uint32_t number) const
    {
        const Feed& feed = facts_.circuit().feeds[number];
        return occurs(facts_.ask.joined(element_.a, feed.plus)) && occurs(facts_.ask.joined(element_.b, feed.minus));
    }

    // What would feed it if every relay could be where it likes?
    bool isCoilTrouble()
    {
        Circuit undriven = facts_.circuit();
        undriven.drives.clear();
        const WhatIf free(std::move(undriven), whatIfSteps);
        const Verdict verdict = free.ask->returned(number_);
        if (!occurs(verdict))
            return false;
        for (const Cube& cube : verdict.cubes)
            for (const ThrowAt& each : cube)
                if (!facts_.ask.canMove(each.moved) && each.thrown != facts_.circuit().operators[each.moved].unpowered)
                    return sayDeadRelay(each.moved, cube);
        say("contacts that exclude each other", exclusive, {{"source", sourceName()}});
        finding_.path = wayBetween(facts_, verdict.cubes.front(), element_.a, poles_.front().vertex, false);
        return true;
    }

    std::string sourceName() const { return tagOf(facts_.job, facts_.deviceOfFeed(poles_.front().feed)); }

    bool sayDeadRelay(MovedIndex moved, const Cube& cube)
    {
        const auto& drives = facts_.circuit().drives;
        const bool own = std::any_of(drives.begin(), drives.end(), [&](const Drive& drive) {
            return drive.moved == moved && drive.load == number_;
        });
        if (!own) {
            say("its relay can never pull in", deadRelay, {{"relay", nameOf(facts_.job, facts_.net.moved(moved).id)}});
            return true;
        }
        say("must be in before it can pull in", ownContact, {});
        for (const Pole& pole : poles_)
            if (const auto way = wayBetween(facts_, cube, pole.vertex, element_.a, true); pole.isPlus && !way.empty()) {
                finding_.path = way;
                Numbers numbers(facts_.job);
                const auto from = facts_.landingAt(pole.vertex), to = facts_.landingAt(element_.a);
                if (from && to)
                    remedies_.add({startWords, {{"coil", nameOf(facts_, element_.a)}, {"plus", nameOf(facts_, pole.vertex)}}},
                                  addWire(facts_.job, numbers, End{EndState::Landed, *from}, End{EndState::Landed, *to}).second);
                break;
            }
        return true;
    }

    bool isOnePole()
    {
        for (const Pole& pole : poles_)
            if (meets(element_.a, otherPole(pole)) && meets(element_.b, pole))
                return false;
        for (const Pole& pole : poles_) {
            const Verdict second = facts_.ask.joined(element_.b, pole.vertex);
            if (!meets(element_.a, pole) || !meets(element_.b, pole))
                continue;
            say("both sides on one pole", onePole, {{"pole", nameOf(facts_, pole.vertex)}});
            finding_.path = wayBetween(facts_, second.cubes.front(), element_.b, pole.vertex, false);
            for (Vertex side : {element_.b, element_.a})
                moveToOtherPole(side, pole);
            return true;
        }
        return false;
    }

    // The far ends of what is landed on this side go from this pole to the other.
    void moveToOtherPole(Vertex side, const Pole& pole)
    {
        const auto other = facts_.landingAt(opposite(pole));
        for (const Conductor* conductor : facts_.conductorsAt(side))
            for (const End* end : {&conductor->from, &conductor->to})
                if (const Landing* landing = landingOf(*end); landing && other)
                    if (const auto far = facts_.net.vertexOf(landing->device, landing->terminal);
                        far && *far != side && facts_.ask.joined(*far, pole.vertex).answer == Answer::Always)
                        remedies_.moveEnd(*conductor, *landing, *other);
    }

    bool isInSeries()
    {
        Circuit conducting = facts_.circuit();
        for (std::uint32_t each = 0; each < conducting.elements.size(); ++each)
            if (each != number_ && conducting.elements[each].kind == ElementKind::Load)
                conducting.elements[each].kind = ElementKind::Resistor;
        for (const Feed& feed : facts_.circuit().feeds) // a source takes current backwards too
            conducting.elements.push_back({feed.plus, feed.minus, ElementKind::Resistor, false, 0, feed.origin});
        const WhatIf series(std::move(conducting), whatIfSteps);
        for (std::uint32_t feed : facts_.ask.feedsNear(element_.a)) {
            const Verdict verdict = series.ask->returnedVia(number_, feed, Direction::Either);
            if (!occurs(verdict))
                continue;
            say("in series with another load", inSeries,
                {{"other", neighbour()},
                 {"cut", std::vector<Message>{cutSide() ? Message{cutToo, {{"side", nameOf(facts_, *cutSide())}}}
                                                        : Message{nothingMore}}}});
            finding_.path = wayBetween(facts_, verdict.cubes.front(), facts_.circuit().feeds[feed].plus, element_.a, true);
            landCutSide();
            return true;
        }
        return false;
    }

    std::optional<Vertex> cutSide() const
    {
        for (Vertex side : {element_.b, element_.a})
            if (meetsNoPole(side))
                return side;
        return std::nullopt;
    }

    // The load that hangs on the side which meets no pole, or beside it on the other.
    std::string neighbour() const
    {
        const std::vector<Vertex> reach = reachOf(facts_, cutSide().value_or(element_.b));
        const auto hangs = [&](Vertex vertex) { return std::binary_search(reach.begin(), reach.end(), vertex); };
        for (std::uint32_t each = 0; each < facts_.circuit().elements.size(); ++each) {
            const Element& other = facts_.circuit().elements[each];
            if (each != number_ && other.kind == ElementKind::Load && (hangs(other.a) || hangs(other.b)))
                return tagOfOrigin(facts_, other.origin);
        }
        return {};
    }

    // Lands the side that meets no pole on the pole opposite to the other side's.
    void landCutSide()
    {
        const auto cut = cutSide();
        if (!cut)
            return;
        const Vertex other = *cut == element_.b ? element_.a : element_.b;
        for (const Pole& pole : poles_)
            if (meets(other, pole)) {
                landFreeEnds(*cut, opposite(pole));
                remedies_.land(*cut, opposite(pole));
            }
    }

    // A core may be there already, its far end capped or waiting.
    void landFreeEnds(Vertex side, Vertex pole)
    {
        const auto landing = facts_.landingAt(pole);
        if (!landing)
            return;
        for (Vertex vertex : reachOf(facts_, side))
            for (const Conductor* conductor : facts_.conductorsAt(vertex))
                if (conductor->from.state != EndState::Landed || conductor->to.state != EndState::Landed)
                    remedies_.landFreeEnd(*conductor, *landing);
    }

    bool isTurnedDiode()
    {
        for (std::uint32_t each = 0; each < facts_.circuit().diodes.size(); ++each) {
            Circuit turned = facts_.circuit();
            std::swap(turned.diodes[each].anode, turned.diodes[each].cathode);
            if (!facts_.ask.sameIsland(turned.diodes[each].anode, element_.a))
                continue;
            const WhatIf mended(std::move(turned), whatIfSteps);
            if (!occurs(mended.ask->returned(number_)))
                continue;
            const Diode& diode = facts_.circuit().diodes[each];
            say("a diode the wrong way", turnedDiode, {{"diode", tagOfOrigin(facts_, diode.origin)}});
            const auto anode = facts_.landingAt(diode.anode), cathode = facts_.landingAt(diode.cathode);
            if (anode && cathode)
                remedies_.exchange(anode->device, anode->terminal, cathode->terminal);
            return true;
        }
        return false;
    }

    bool isExclusive()
    {
        for (const Pole& pole : poles_)
            if (meets(element_.a, pole) && meets(element_.b, otherPole(pole))) {
                say("contacts that exclude each other", exclusive,
                    {{"source", tagOf(facts_.job, facts_.deviceOfFeed(pole.feed))}});
                return true;
            }
        return false;
    }

    bool isTwoSupplies()
    {
        for (const Pole& one : poles_)
            for (const Pole& other : poles_) {
                if (one.feed == other.feed || !meets(element_.a, one) || !meets(element_.b, other))
                    continue;
                const auto meet = [&](Vertex x, Vertex y) { return occurs(facts_.ask.joined(x, y)); };
                const bool tied = meet(one.vertex, opposite(other)) || meet(opposite(one), other.vertex) ||
                                  meet(opposite(one), opposite(other)) || meet(one.vertex, other.vertex);
                say(tied ? "poles of two supplies" : "poles of two untied supplies", tied ? twoSupplies : untied,
                    {{"one", nameOf(facts_, one.vertex)}, {"other", nameOf(facts_, other.vertex)}});
                finding_.path = wayBetween(facts_, facts_.ask.joined(element_.a, one.vertex).cubes.front(), one.vertex,
                                           element_.a, false);
                for (const Origin& origin : wayBetween(
                         facts_, facts_.ask.joined(element_.b, other.vertex).cubes.front(), element_.b, other.vertex, false))
                    finding_.path.push_back(origin);
                const Feed &a = facts_.circuit().feeds[one.feed], &b = facts_.circuit().feeds[other.feed];
                if (!tied)
                    remedies_.land(a.minus < b.minus ? a.minus : b.minus, a.minus < b.minus ? b.minus : a.minus);
                return true;
            }
        return false;
    }

    void isMissingReturn()
    {
        const Vertex side = cutSide().value_or(element_.b);
        say("missing return", missingReturn, {{"side", nameOf(facts_, side)}, {"stop", lastOf(side)}});
        landCutSide();
        if (remedies_.empty())
            for (const Pole& pole : poles_)
                remedies_.land(side, pole.vertex);
    }

    // Where the path from this side stops: the terminals that it reaches farthest from the load.
    std::string lastOf(Vertex side) const
    {
        std::string last = nameOf(facts_, side);
        for (Vertex vertex : reachOf(facts_, side))
            if (vertex != side && facts_.landingAt(vertex) && facts_.isLanded(vertex))
                last = nameOf(facts_, vertex);
        return last;
    }

    const Facts& facts_;
    std::uint32_t number_;
    const Element& element_;
    std::vector<Pole> poles_;
    Finding finding_;
    Remedies remedies_{facts_};
};

std::vector<Finding> findNeverFed(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& element = facts.circuit().elements[number];
        if (element.kind != ElementKind::Load || (!facts.isLanded(element.a) && !facts.isLanded(element.b)))
            continue;
        const Verdict& verdict = facts.returned(number);
        if (verdict.answer == Answer::Unknown)
            findings.push_back(notProved("never-fed", loadSpot(facts, number)));
        if (verdict.answer != Answer::Never)
            continue;
        if (auto finding = NeverFed(facts, number).finding())
            findings.push_back(std::move(*finding));
    }
    return findings;
}

} // namespace

extern const Check neverFed = {
    .code = "never-fed",
    .worst = Severity::Fault,
    .title = {.en = "Never fed: no way back to the source", .es = "Nunca recibe tensión: sin retorno a la fuente"},
    .notCovered = {.en = "whether the volts that arrive are enough", .es = "si la tensión que llega es suficiente"},
    .run = findNeverFed,
};

} // namespace doorloom
