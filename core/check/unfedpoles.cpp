#include "check/unfed.h"

#include <algorithm>

// Why a load is never fed, by the poles that its two sides meet.
namespace doorloom {

namespace {

constexpr Text whileShorted = {.en = "{load} is fed only while {source} is shorted.",
                               .es = "{load} recibe tensión solo mientras {source} está en cortocircuito."};
constexpr Text onePole = {.en = "Both sides of {load} come to one pole, {pole}: there are no volts across it.",
                          .es = "Ambos lados de {load} llegan a un solo polo, {pole}: no hay tensión entre ellos."};
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

bool couldBeBetween(const UnfedLoad& load, const Feed& feed)
{
    return occurs(load.facts.ask.joined(load.element.a, feed.plus)) &&
           occurs(load.facts.ask.joined(load.element.b, feed.minus));
}

// The far ends of what is landed on this side go from this pole to the other.
void moveToOtherPole(const UnfedLoad& load, Vertex side, const Pole& pole, Remedies& remedies)
{
    const Facts& facts = load.facts;
    const auto other = facts.landingAt(load.opposite(pole));
    for (const Conductor* conductor : facts.conductorsAt(side))
        for (const End* end : {&conductor->from, &conductor->to})
            if (const Landing* landing = landingOf(*end); landing && other)
                if (const auto far = facts.net.vertexOf(landing->device, landing->terminal);
                    far && *far != side && facts.ask.joined(*far, pole.vertex).answer == Answer::Always)
                    remedies.moveEnd(*conductor, *landing, *other);
}

// Where the path from this side stops: the terminals that it reaches farthest from the load.
std::string lastOf(const Facts& facts, Vertex side)
{
    std::string last = nameOf(facts, side);
    for (Vertex vertex : reachOf(facts, side))
        if (vertex != side && facts.landingAt(vertex) && facts.isLanded(vertex))
            last = nameOf(facts, vertex);
    return last;
}

} // namespace

std::optional<UnfedBecause> unfedWhileShorted(const UnfedLoad& load)
{
    for (std::uint32_t feed : load.facts.ask.feedsNear(load.element.a))
        if (load.facts.shorted(feed).answer == Answer::Always && couldBeBetween(load, load.facts.circuit().feeds[feed]))
            return UnfedBecause{"only while shorted",
                                {whileShorted, {{"source", tagOf(load.facts.job, load.facts.deviceOfFeed(feed))}}}};
    return std::nullopt;
}

std::optional<UnfedBecause> unfedOnOnePole(const UnfedLoad& load)
{
    const Vertex a = load.element.a, b = load.element.b;
    for (const Pole& pole : load.poles)
        if (load.meets(a, load.otherPole(pole)) && load.meets(b, pole))
            return std::nullopt;
    for (const Pole& pole : load.poles) {
        if (!load.meets(a, pole) || !load.meets(b, pole))
            continue;
        UnfedBecause because{"both sides on one pole", {onePole, {{"pole", nameOf(load.facts, pole.vertex)}}}};
        because.path = wayBetween(load.facts, load.facts.ask.joined(b, pole.vertex).cubes.front(), b, pole.vertex, false);
        Remedies remedies(load.facts);
        for (Vertex side : {b, a})
            moveToOtherPole(load, side, pole, remedies);
        because.remedies = remedies.taken();
        return because;
    }
    return std::nullopt;
}

UnfedBecause exclusiveContacts(const UnfedLoad& load, std::uint32_t feed)
{
    return {"contacts that exclude each other",
            {exclusive, {{"source", tagOf(load.facts.job, load.facts.deviceOfFeed(feed))}}}};
}

std::optional<UnfedBecause> unfedByExclusiveContacts(const UnfedLoad& load)
{
    for (const Pole& pole : load.poles)
        if (load.meets(load.element.a, pole) && load.meets(load.element.b, load.otherPole(pole)))
            return exclusiveContacts(load, pole.feed);
    return std::nullopt;
}

std::optional<UnfedBecause> unfedBetweenSupplies(const UnfedLoad& load)
{
    const Facts& facts = load.facts;
    const auto meet = [&](Vertex x, Vertex y) { return occurs(facts.ask.joined(x, y)); };
    for (const Pole& one : load.poles)
        for (const Pole& other : load.poles) {
            if (one.feed == other.feed || !load.meets(load.element.a, one) || !load.meets(load.element.b, other))
                continue;
            const bool tied = meet(one.vertex, load.opposite(other)) || meet(load.opposite(one), other.vertex) ||
                              meet(load.opposite(one), load.opposite(other)) || meet(one.vertex, other.vertex);
            UnfedBecause because{tied ? "poles of two supplies" : "poles of two untied supplies",
                                 {tied ? twoSupplies : untied,
                                  {{"one", nameOf(facts, one.vertex)}, {"other", nameOf(facts, other.vertex)}}}};
            const auto cube = [&](Vertex side, const Pole& pole) {
                return facts.ask.joined(side, pole.vertex).cubes.front();
            };
            because.path = wayBetween(facts, cube(load.element.a, one), one.vertex, load.element.a, false);
            for (const Origin& origin : wayBetween(facts, cube(load.element.b, other), load.element.b, other.vertex, false))
                because.path.push_back(origin);
            const Vertex a = facts.circuit().feeds[one.feed].minus, b = facts.circuit().feeds[other.feed].minus;
            Remedies remedies(facts);
            if (!tied)
                remedies.land(std::min(a, b), std::max(a, b));
            because.remedies = remedies.taken();
            return because;
        }
    return std::nullopt;
}

std::optional<UnfedBecause> unfedWithoutReturn(const UnfedLoad& load)
{
    const Vertex side = load.cutSide().value_or(load.element.b);
    UnfedBecause because{"missing return",
                         {missingReturn,
                          {{"side", nameOf(load.facts, side)}, {"stop", lastOf(load.facts, side)}}}};
    Remedies remedies(load.facts);
    load.landCutSide(remedies);
    if (remedies.empty())
        for (const Pole& pole : load.poles)
            remedies.land(side, pole.vertex);
    because.remedies = remedies.taken();
    return because;
}

} // namespace doorloom
