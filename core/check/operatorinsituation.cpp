#include "check/activation.h"
#include "check/check.h"
#include "check/remedies.h"
#include "check/situations.h"
#include "check/tell.h"

#include <algorithm>

// Every door operator compared with its opening's promise: whether its activation input is closed in the situation.
namespace doorloom {

namespace {

constexpr Text whyStarts = {
    .en = "{operator} of {opening} is promised not to start and does: {input} is joined to {reference}.",
    .es = "{operator} de {opening} no debe arrancar y arranca: {input} está unido a {reference}."};
constexpr Text whyStays = {
    .en = "{operator} of {opening} is promised to start and stays: nothing joins {input} to {reference}.",
    .es = "{operator} de {opening} debe poder arrancar y no arranca: nada une {input} con {reference}."};
constexpr Text whyDead = {.en = "{operator} of {opening} is promised to start and is without mains.",
                          .es = "{operator} de {opening} debe poder arrancar y está sin red."};

constexpr Text landContact = {.en = "Land a contact that closes then between {input} and {reference}.",
                              .es = "Conecte un contacto que entonces cierre entre {input} y {reference}."};

// Operators that are the mains of this device.
std::vector<MovedIndex> mainsOf(const Facts& facts, DeviceId device)
{
    std::vector<MovedIndex> mains;
    if (const Device* row = facts.job.devices.find(device))
        for (const Binding& binding : row->bindings)
            if (const Operator* moved = facts.job.operators.find(binding.moved);
                moved && moved->nature == OperatorNature::Mains)
                mains.push_back(*facts.net.indexOf(moved->id));
    return mains;
}

struct Activation {
    DeviceId device;
    std::uint32_t input;
    std::vector<MovedIndex> mains, mattering;

    bool hasMains(const Facts& facts, const Position& position) const
    {
        return std::none_of(mains.begin(), mains.end(), [&](MovedIndex moved) {
            return position[moved] == facts.circuit().operators[moved].unpowered;
        });
    }
};

enum class Broken { No, Starts, Stays, Dead };

struct Outcome {
    Broken broken = Broken::No;
    Cube throws{}; // of the operators that matter, where it starts
};

// May start: it can, in one of the situation's positions. Must not start: in none.
Outcome outcomeOf(const Facts& facts, const Activation& at, const Opening& opening, const Promise& promise)
{
    const bool must = promise.promised == Promised::MayStart;
    bool powered = false;
    for (const Position& position : positionsIn(facts, opening, promise.situation, at.mattering)) {
        const bool hasMains = at.hasMains(facts, position);
        powered = powered || hasMains;
        if (!hasMains || !facts.ask.operatedIn(position, at.input))
            continue;
        Outcome starts{must ? Broken::No : Broken::Starts};
        for (MovedIndex moved : at.mattering)
            starts.throws.push_back({moved, position[moved]});
        return starts;
    }
    return {!must ? Broken::No : powered ? Broken::Stays : Broken::Dead};
}

// One side of a contact is there already, and nothing is on the other.
void landOnFreeContacts(const Facts& facts, Vertex landed, Vertex waiting, Remedies& remedies)
{
    for (const Joint& joint : facts.circuit().joints)
        if (!joint.guard.always())
            for (const auto& [near, far] : {std::pair(joint.a, joint.b), std::pair(joint.b, joint.a)})
                if (facts.ask.netOf(near) == facts.ask.netOf(landed) && facts.landingAt(far) && !facts.isLanded(far))
                    remedies.land(far, waiting);
}

Finding findingFor(const Facts& facts, const Activation& at, const Opening& opening, const Promise& promise, const Outcome& outcome)
{
    const DryInput& input = facts.circuit().inputs[at.input];
    Finding finding;
    finding.rule = "operator-in-situation";
    finding.severity = outcome.broken == Broken::Starts && isOccupied(promise.situation) ? Severity::Danger : Severity::Fault;
    finding.at = {spotOf(facts, input.terminal)};
    finding.throws = {Witness{{}, {promise.situation}}};
    finding.why = {outcome.broken == Broken::Starts  ? whyStarts
                   : outcome.broken == Broken::Stays ? whyStays
                                                     : whyDead,
                   {{"operator", tagOf(facts.job, at.device)},
                    {"opening", opening.tag},
                    {"input", nameOf(facts, input.terminal)},
                    {"reference", nameOf(facts, input.reference)}}};
    Remedies remedies(facts);
    remedies.turnContacts(at.mattering);
    if (outcome.broken == Broken::Starts) {
        finding.path = wayBetween(facts, outcome.throws, input.terminal, input.reference, false);
        remedies.breakWay(finding.path);
    } else {
        finding.remedy = {landContact,
                          {{"input", nameOf(facts, input.terminal)}, {"reference", nameOf(facts, input.reference)}}};
        landOnFreeContacts(facts, input.reference, input.terminal, remedies);
        landOnFreeContacts(facts, input.terminal, input.reference, remedies);
    }
    finding.remedies = remedies.taken();
    return finding;
}

std::vector<Finding> findWrong(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Opening& opening : facts.job.openings)
        for (DeviceId device : opening.doorOperators) {
            const auto input = activationOf(facts, device);
            if (!input)
                continue;
            const Activation at{device, *input, mainsOf(facts, device), facts.ask.operatorsThatMatterToInput(*input)};
            for (const Promise& promise : opening.promises) {
                if (promise.device != device || promise.promised == Promised::Nothing)
                    continue;
                if (const Outcome outcome = outcomeOf(facts, at, opening, promise); outcome.broken != Broken::No)
                    findings.push_back(findingFor(facts, at, opening, promise, outcome));
            }
        }
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        return a.severity != b.severity ? a.severity > b.severity
                                        : a.throws[0].situation[0] < b.throws[0].situation[0];
    });
    return findings;
}

} // namespace

std::optional<std::uint32_t> activationOf(const Facts& facts, DeviceId device)
{
    const Kind* kind = kindOf(facts.job, device);
    for (const Part& part : kind ? kind->parts : std::vector<Part>{})
        if (const auto* input = std::get_if<DryInputPart>(&part.body); input && !input->mustBeClosed)
            return facts.net.inputOf(device, part.key);
    return std::nullopt;
}

extern const Check operatorInSituation = {
    .code = "operator-in-situation",
    .worst = Severity::Danger,
    .title = {.en = "Door operator wrong in a situation", .es = "Operador de puerta incorrecto en una situación"},
    .notCovered = {.en = "inputs of an operator other than the one that starts it",
                   .es = "entradas del operador distintas de la que lo arranca"},
    .run = findWrong,
};

} // namespace doorloom
