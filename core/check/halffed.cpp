#include "check/check.h"
#include "check/tell.h"

#include <algorithm>
#include <cmath>

// Loads that no source feeds in a position, and that get more than their release volts there all the same: through another
// load, or backwards.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{net} is left without a pole, and what hangs there feeds each other: {loads}.",
                      .es = "{net} queda sin polo, y lo que cuelga de allí se alimenta entre sí: {loads}."};
constexpr Text oneLoad = {.en = "{load} gets {volts} V through another load", .es = "{load} recibe {volts} V a través de otra carga"};
constexpr Text backwards = {.en = "{load} gets {volts} V backwards", .es = "{load} recibe {volts} V al revés"};

constexpr Text giveReturn = {.en = "Land {net} on the pole that it is meant for, in every position.",
                             .es = "Conecte {net} al polo que le corresponde, en toda posición."};

// Terminals that are one net in a position.
std::vector<Vertex> netIn(const Facts& facts, const Position& position, Vertex from)
{
    std::vector<Vertex> net{from};
    std::vector<char> seen(facts.circuit().vertices);
    seen[from] = 1;
    for (std::size_t i = 0; i < net.size(); ++i)
        for (std::uint32_t number : facts.jointsAt(net[i])) {
            const Joint& joint = facts.circuit().joints[number];
            const Vertex other = joint.a == net[i] ? joint.b : joint.a;
            if (!seen[other] && holds(joint.guard, position)) {
                seen[other] = 1;
                net.push_back(other);
            }
        }
    std::sort(net.begin(), net.end());
    return net;
}

bool hasPole(const Facts& facts, const std::vector<Vertex>& net)
{
    return std::any_of(facts.circuit().feeds.begin(), facts.circuit().feeds.end(), [&](const Feed& feed) {
        return std::binary_search(net.begin(), net.end(), feed.plus) || std::binary_search(net.begin(), net.end(), feed.minus);
    });
}

// Where most conductors meet on the side that reaches no pole: there the missing one belongs.
Vertex meetingPoint(const Facts& facts, std::uint32_t element, const Position& position)
{
    const Element& load = facts.circuit().elements[element];
    std::vector<Vertex> net = netIn(facts, position, load.a);
    if (hasPole(facts, net))
        net = netIn(facts, position, load.b);
    const auto landed = [&](Vertex vertex) {
        std::size_t count = 0;
        for (std::uint32_t joint : facts.jointsAt(vertex))
            count += facts.net.origin(facts.circuit().joints[joint].origin).conductor ? 1 : 0;
        return count;
    };
    return *std::max_element(net.begin(), net.end(), [&](Vertex one, Vertex other) { return landed(one) < landed(other); });
}

// Operators without whose throws some load there would be fed.
Cube neededThrows(const Facts& facts, const std::vector<std::uint32_t>& loads, const Position& at)
{
    Cube cube;
    for (MovedIndex moved = 0; moved < at.size(); ++moved) {
        bool isNeeded = false;
        for (ThrowIndex thrown = 0; thrown < facts.circuit().operators[moved].throws; ++thrown) {
            Position other = at;
            other[moved] = thrown;
            const auto settled = thrown == at[moved] ? std::nullopt : facts.ask.settled(other);
            isNeeded = isNeeded || (settled && std::any_of(loads.begin(), loads.end(), [&](std::uint32_t load) { return facts.ask.returnedIn(*settled, load); }));
        }
        if (isNeeded)
            cube.push_back({moved, at[moved]});
    }
    return cube;
}

Message saidOf(const Facts& facts, std::uint32_t element, double volts)
{
    return {volts < 0 ? backwards : oneLoad,
            {{"load", tagOfOrigin(facts, facts.circuit().elements[element].origin)}, {"volts", figureText(std::abs(volts))}}};
}

// One net in one position, and what hangs there.
struct Place {
    Vertex vertex;
    Position at;
    std::vector<std::uint32_t> loads;
};

std::vector<Finding> findHalfFed(const Facts& facts)
{
    std::vector<Place> places;
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i)
        if (const auto& worst = facts.figures().unfedVolts[i]) {
            const Vertex vertex = meetingPoint(facts, i, worst->at);
            const auto same = std::find_if(places.begin(), places.end(), [&](const Place& each) { return each.vertex == vertex && each.at == worst->at; });
            (same == places.end() ? places.emplace_back(Place{vertex, worst->at, {}}) : *same).loads.push_back(i);
        }
    std::vector<Finding> findings;
    for (const auto& [vertex, at, loads] : places) {
        Finding finding;
        finding.rule = "half-fed";
        finding.severity = Severity::Fault;
        finding.at = {spotOf(facts, vertex)};
        finding.throws = witnessesOf(facts, {neededThrows(facts, loads, at)});
        std::vector<Message> said;
        for (std::uint32_t load : loads)
            said.push_back(saidOf(facts, load, facts.figures().unfedVolts[load]->value));
        finding.why = {why, {{"net", nameOf(facts, vertex)}, {"loads", said}}};
        finding.remedy = {giveReturn, {{"net", nameOf(facts, vertex)}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check halfFed = {
    .code = "half-fed",
    .worst = Severity::Fault,
    .title = {.en = "Half fed, or fed backwards", .es = "Alimentación a medias o al revés"},
    .notCovered = {.en = "loads whose release volts are not known; one supply dead while another lives",
                   .es = "cargas cuya tensión de liberación no se conoce; una fuente muerta mientras otra vive"},
    .run = findHalfFed,
    .readsFigures = true};

} // namespace doorloom
