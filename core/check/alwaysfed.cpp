#include "check/alwaysfed.h"

#include "check/check.h"
#include "check/tell.h"

#include <algorithm>

// A load that is fed in every position though a contact is landed on one of its legs: the contact does nothing.
namespace doorloom {

namespace {

constexpr Text why = {
    .en = "{load} is fed in every position with {source} live, though {terminal} is on its leg: the contact does nothing.",
    .es = "{load} recibe tensión en toda posición con {source} activa, aunque {terminal} está en su hilo: el contacto "
          "no hace nada."};

bool isSwitched(const LoadPart* load)
{
    return load && (load->use == LoadUse::Lock || load->use == LoadUse::Lamp || load->use == LoadUse::Sounder ||
                    load->use == LoadUse::Motor || load->use == LoadUse::Coil);
}

// Terminals that one switch has in common: an output's, or those of the contacts with one role.
std::vector<Key> switchWith(const Kind& kind, const Key& terminal)
{
    for (const SwitchedOutput& output : kind.outputs)
        if (std::find(output.terminals.begin(), output.terminals.end(), terminal) != output.terminals.end())
            return output.terminals;
    std::vector<Key> keys;
    for (const Part& part : kind.parts)
        if (const auto* contact = std::get_if<ContactPart>(&part.body); contact && (contact->a == terminal || contact->b == terminal))
            for (const Key& key : {contact->a, contact->b})
                if (findTerminal(kind, key) && std::find(keys.begin(), keys.end(), key) == keys.end())
                    keys.push_back(key);
    return keys;
}

struct SwitchOnLeg {
    Vertex leg, otherLeg;
    Landing terminal;
    std::vector<Key> keys;
};

// Is nothing landed on the switch but here? Otherwise it may be there for another load, and this one only passes.
bool isIdle(const Facts& facts, const Landing& here, const std::vector<Key>& keys)
{
    return std::none_of(keys.begin(), keys.end(), [&](const Key& key) {
        const auto vertex = facts.net.vertexOf(here.device, key);
        return key != here.terminal && vertex && facts.isLanded(*vertex);
    });
}

// Do conductors, links and fuses alone lead from here to a source's pole?
bool isWiredToPole(const Facts& facts, Vertex from)
{
    const std::vector<Pole> poles = polesNear(facts, from);
    return std::any_of(poles.begin(), poles.end(),
                       [&](const Pole& pole) { return facts.ask.netOf(pole.vertex) == facts.ask.netOf(from); });
}

std::optional<SwitchOnLeg> switchOnLeg(const Facts& facts, const Element& element)
{
    for (const auto& [leg, other] : {std::pair(element.a, element.b), std::pair(element.b, element.a)})
        for (const Conductor* conductor : facts.conductorsAt(leg))
            for (const End* end : {&conductor->from, &conductor->to}) {
                const Landing* landing = landingOf(*end);
                const Kind* kind = landing ? kindOf(facts.job, landing->device) : nullptr;
                if (!kind || landing->device == facts.deviceOf(element.origin))
                    continue;
                auto keys = switchWith(*kind, landing->terminal);
                if (!keys.empty() && (isIdle(facts, *landing, keys) || !isWiredToPole(facts, leg)))
                    return SwitchOnLeg{leg, other, *landing, std::move(keys)};
            }
    return std::nullopt;
}

std::optional<std::uint32_t> feedThatNeverStops(const Facts& facts, std::uint32_t number)
{
    for (std::uint32_t feed : facts.ask.feedsNear(facts.circuit().elements[number].a))
        if (facts.ask.alwaysReturnedVia(number, feed) == Answer::Always)
            return feed;
    return std::nullopt;
}

std::vector<Finding> findAlwaysFed(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        if (!alwaysFedPastASwitch(facts, number))
            continue;
        const Element& element = facts.circuit().elements[number];
        Finding finding;
        finding.rule = "always-fed";
        finding.at = {loadSpot(facts, number)};
        finding.why = {why,
                       {{"load", tagOfOrigin(facts, element.origin)},
                        {"source", tagOf(facts.job, facts.deviceOfFeed(*feedThatNeverStops(facts, number)))},
                        {"terminal", nameOf(facts.job, switchOnLeg(facts, element)->terminal)}}};
        Remedies remedies(facts);
        addMovesOntoSwitch(facts, number, remedies);
        finding.remedies = remedies.taken();
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

bool alwaysFedPastASwitch(const Facts& facts, std::uint32_t number)
{
    return isSwitched(facts.loadOf(number)) && switchOnLeg(facts, facts.circuit().elements[number]) &&
           feedThatNeverStops(facts, number);
}

void addMovesOntoSwitch(const Facts& facts, std::uint32_t number, Remedies& remedies)
{
    const auto here = switchOnLeg(facts, facts.circuit().elements[number]);
    if (!here)
        return;
    for (Vertex leg : {here->otherLeg, here->leg})
        for (const Conductor* conductor : facts.conductorsAt(leg))
            for (const End* end : {&conductor->from, &conductor->to})
                if (const Landing* landing = landingOf(*end);
                    landing && facts.net.vertexOf(landing->device, landing->terminal) != leg)
                    for (const Key& key : here->keys)
                        if (const Landing to{here->terminal.device, key}; to != *landing)
                            remedies.moveEnd(*conductor, *landing, to);
}

extern const Check alwaysFed = {
    .code = "always-fed",
    .worst = Severity::Fault,
    .title = {.en = "Always fed past its contact", .es = "Siempre alimentada sin pasar por su contacto"},
    .notCovered = {.en = "loads whose contact is landed further along than on their own conductor",
                   .es = "cargas cuyo contacto está más allá de su propio conductor"},
    .run = findAlwaysFed,
};

} // namespace doorloom
