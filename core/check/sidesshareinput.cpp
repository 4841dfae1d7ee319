#include "check/check.h"
#include "check/tell.h"

#include <algorithm>

// An input that a hand outside and a hand inside operate alike, where somebody can be locked in: what it starts cannot tell
// the two, and either opens on whoever is inside or leaves them without their own way out.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{outside} (outside) and {inside} (inside) of {opening} operate the same input, {input}: while it is occupied, one side works "
                            "that must not, or one does not that must.",
                      .es = "{outside} (fuera) e {inside} (dentro) de {opening} accionan la misma entrada, {input}: estando ocupado, funciona un lado que "
                            "no debe, o no funciona el que debe."};
constexpr Text remedy = {.en = "Land what is asked outside and what is asked inside on inputs of their own, not both on {input}.",
                         .es = "Conecte lo que se pide fuera y lo que se pide dentro en entradas propias, no ambos en {input}."};

bool isAHand(const Facts& facts, OperatorId moved)
{
    const Operator* row = facts.job.operators.find(moved);
    return row && row->nature != OperatorNature::Relay;
}

// The position with the request's hands alone; what answers to them stays at rest.
Position handsAlone(const Facts& facts, const Act& act)
{
    Position position = atRest(facts.circuit());
    for (const Thrown& each : act.throws)
        if (const auto moved = facts.net.indexOf(each.moved); moved && isAHand(facts, each.moved))
            if (const auto thrown = findThrow(facts.net.moved(*moved).throws, each.thrown))
                position[*moved] = static_cast<ThrowIndex>(*thrown);
    return position;
}

struct Sides {
    const Act *outside, *inside;
};

std::vector<Sides> pairsOf(const Opening& opening)
{
    std::vector<Sides> pairs;
    for (const Act& outside : opening.requests)
        for (const Act& inside : opening.requests)
            if (outside.side == Side::Outside && inside.side == Side::Inside)
                pairs.push_back({&outside, &inside});
    return pairs;
}

Finding findingFor(const Facts& facts, const Opening& opening, const Sides& sides, std::uint32_t input)
{
    Finding finding;
    finding.rule = "sides-share-input";
    finding.severity = Severity::Danger;
    const Vertex terminal = facts.circuit().inputs[input].terminal;
    finding.at = {spotOf(facts, terminal)};
    finding.why = {why,
                   {{"outside", sides.outside->name},
                    {"inside", sides.inside->name},
                    {"opening", opening.tag},
                    {"input", nameOf(facts, terminal)}}};
    finding.remedy = {remedy, {{"input", nameOf(facts, terminal)}}};
    return finding;
}

std::vector<Finding> findShared(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Opening& opening : facts.job.openings) {
        if (opening.occupied.empty() || !facts.rest())
            continue;
        for (const Sides& sides : pairsOf(opening)) {
            const auto outside = facts.ask.settled(handsAlone(facts, *sides.outside)), inside = facts.ask.settled(handsAlone(facts, *sides.inside));
            for (std::uint32_t input = 0; outside && inside && input < facts.circuit().inputs.size(); ++input)
                if (!facts.ask.operatedIn(*facts.rest(), input) && facts.ask.operatedIn(*outside, input) && facts.ask.operatedIn(*inside, input) &&
                    *outside != *inside)
                    findings.push_back(findingFor(facts, opening, sides, input));
        }
    }
    return findings;
}

} // namespace

extern const Check sidesShareInput = {
    .code = "sides-share-input",
    .worst = Severity::Danger,
    .title = {.en = "Inside and outside on one input", .es = "Dentro y fuera en una misma entrada"},
    .notCovered = {.en = "openings of which nobody says what 'occupied' is, or on which side a request is made",
                   .es = "aberturas de las que no consta qué es 'ocupado' o de qué lado es una petición"},
    .run = findShared,
};

} // namespace doorloom
