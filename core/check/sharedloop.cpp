#include "check/check.h"
#include "check/loops.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>
#include <map>
#include <set>

// Dry inputs on one net: the wetting of one feeds the other.
namespace doorloom {

namespace {

constexpr Text loopWhy = {.en = "{inputs} share one loop: each puts its volts on it, and neither measures what it knows.",
                          .es = "{inputs} comparten un lazo: cada una pone en él su tensión, y ninguna mide lo que conoce."};
constexpr Text contactWhy = {.en = "{inputs} are joined and share one contact, which what is known of them does not allow: one feeds the other.",
                             .es = "{inputs} están unidas y comparten un contacto, lo que sus datos no permiten: una alimenta a la otra."};

constexpr std::size_t mostRemedies = 8;

bool isEmptyAndNeeded(const Facts& facts, const Device& device, const Terminal& terminal)
{
    const auto vertex = facts.net.vertexOf(device.id, terminal.key);
    return vertex && !facts.isLanded(*vertex) &&
           std::any_of(terminal.required.begin(), terminal.required.end(), [&](const Condition& when) { return holds(device, when); });
}

// Empty terminals that want a conductor and hang together with an input's reference: there may be a loop of its own.
std::vector<Landing> emptyNear(const Facts& facts, const DryInput& input)
{
    std::vector<Landing> found;
    for (const Device& device : facts.job.devices)
        if (const Kind* kind = kindOf(facts.job, device))
            for (const Terminal* terminal : terminalsOf(*kind))
                if (found.size() < mostRemedies && isEmptyAndNeeded(facts, device, *terminal) &&
                    facts.ask.sameIsland(*facts.net.vertexOf(device.id, terminal->key), input.reference))
                    found.push_back({device.id, terminal->key});
    return found;
}

// Moves the far end of what is landed on an input onto a loop of its own, or takes it off.
void mend(const Facts& facts, const DryInput& input, Remedies& remedies)
{
    const auto own = facts.landingAt(input.terminal);
    if (!own)
        return;
    const std::vector<Landing> empty = emptyNear(facts, input);
    for (const Conductor* conductor : facts.conductorsAt(input.terminal)) {
        const Landing *from = landingOf(conductor->from), *to = landingOf(conductor->to);
        if (from && to)
            for (const Landing& landing : empty)
                remedies.moveEnd(*conductor, *from == *own ? *to : *from, landing);
        remedies.takeOff(conductor->id);
    }
}

Finding findingFor(const Facts& facts, const std::vector<std::uint32_t>& inputs)
{
    Finding finding;
    finding.rule = "inputs-share-loop";
    const bool supervised = std::any_of(inputs.begin(), inputs.end(), [&](std::uint32_t each) { return supervisedInput(facts, each); });
    finding.severity = supervised ? Severity::Fault : Severity::Doubt;
    std::vector<Message> names;
    Remedies remedies(facts);
    for (std::uint32_t each : inputs) {
        const DryInput& input = facts.circuit().inputs[each];
        finding.at.push_back(spotOf(facts, input.terminal));
        names.push_back(verbatim(nameOf(facts, input.terminal)));
        mend(facts, input, remedies);
    }
    finding.why = {supervised ? loopWhy : contactWhy, {{"inputs", names}}};
    finding.remedies = remedies.taken();
    return finding;
}

// All that hangs on an input through conductors and contacts, short of its own reference and of any pole.
std::vector<char> hangsOn(const Facts& facts, const DryInput& input)
{
    std::set<Vertex> stops{facts.ask.netOf(input.reference)};
    for (const Feed& feed : facts.circuit().feeds)
        stops.insert({facts.ask.netOf(feed.plus), facts.ask.netOf(feed.minus)});
    std::vector<char> met(facts.circuit().vertices);
    std::vector<Vertex> next{input.terminal};
    met[input.terminal] = 1;
    while (!next.empty()) {
        const Vertex at = next.back();
        next.pop_back();
        for (std::uint32_t number : facts.jointsAt(at))
            for (Vertex to : {facts.circuit().joints[number].a, facts.circuit().joints[number].b})
                if (!met[to] && !stops.contains(facts.ask.netOf(to))) {
                    met[to] = 1;
                    next.push_back(to);
                }
    }
    return met;
}

// A contact that leads from one input to another and not to their reference: neither is operated by it.
void addJoinedByContacts(const Facts& facts, std::vector<Finding>& findings)
{
    const std::vector<DryInput>& inputs = facts.circuit().inputs;
    for (std::uint32_t one = 0; one < inputs.size(); ++one) {
        if (inputs[one].mayShare || !facts.isLanded(inputs[one].terminal))
            continue;
        const std::vector<char> met = hangsOn(facts, inputs[one]);
        for (std::uint32_t other = one + 1; other < inputs.size(); ++other) {
            const DryInput& second = inputs[other];
            const bool isApart = facts.ask.netOf(second.terminal) != facts.ask.netOf(inputs[one].terminal) &&
                                 facts.ask.netOf(second.terminal) != facts.ask.netOf(inputs[one].reference);
            if (second.mayShare || !isApart || !met[second.terminal] || !facts.isLanded(second.terminal) ||
                !occurs(facts.ask.allJoined({{inputs[one].terminal, second.terminal, inputs[one].reference}})))
                continue;
            Finding finding = findingFor(facts, {one, other});
            finding.reason = "through a contact";
            findings.push_back(std::move(finding));
        }
    }
}

std::vector<Finding> findShared(const Facts& facts)
{
    std::map<Vertex, std::vector<std::uint32_t>> byNet;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number)
        if (const DryInput& input = facts.circuit().inputs[number]; !input.mayShare && facts.isLanded(input.terminal))
            byNet[facts.ask.netOf(input.terminal)].push_back(number);
    std::vector<Finding> findings;
    for (const auto& [net, inputs] : byNet)
        if (inputs.size() > 1 && std::any_of(inputs.begin(), inputs.end(), [&](std::uint32_t each) {
                return facts.ask.netOf(facts.circuit().inputs[each].reference) != net;
            }))
            findings.push_back(findingFor(facts, inputs));
    addJoinedByContacts(facts, findings);
    return findings;
}

} // namespace

extern const Check sharedLoop = {
    .code = "inputs-share-loop",
    .worst = Severity::Fault,
    .title = {.en = "Inputs share one loop", .es = "Entradas que comparten un lazo"},
    .notCovered = {.en = "which contact is meant for which input", .es = "qué contacto es para qué entrada"},
    .run = findShared,
};

} // namespace doorloom
