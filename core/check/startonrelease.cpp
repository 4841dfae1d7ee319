#include "check/activation.h"
#include "check/check.h"
#include "check/remedies.h"
#include "check/starters.h"
#include "check/tell.h"

// A door operator started through a contact that closes when its relay drops: it starts when that relay's
// device dies.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{input} is started by {contact} as it stands without power: {operator} is asked "
                            "to open whenever {device} loses its supply.",
                      .es = "{input} arranca con {contact} tal como queda sin alimentación: {operator} "
                            "recibe orden de abrir cada vez que {device} pierde su alimentación."};
constexpr Text remedy = {.en = "Land the request on a dry, normally open pair: a contact that closes when "
                               "{contact} is powered or pressed.",
                         .es = "Conecte la petición a un par seco normalmente abierto: un contacto que "
                               "cierre cuando {contact} recibe tensión o se pulsa."};

std::vector<Finding> findOnRelease(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Device& device : facts.job.devices) {
        const Kind* kind = kindOf(facts.job, device);
        const auto input = kind && kind->family == "operator" ? activationOf(facts, device.id) : std::nullopt;
        for (const Starter& starter : input ? startersOf(facts, *input) : std::vector<Starter>{}) {
            const Operator* row = facts.job.operators.find(facts.net.moved(starter.moved).id);
            const auto unpowered = row ? findThrow(row->throws, row->unpowered) : std::nullopt;
            if (!unpowered || *unpowered != starter.thrown || row->nature != OperatorNature::Relay)
                continue;
            const Vertex terminal = facts.circuit().inputs[*input].terminal;
            Finding finding;
            finding.rule = "start-on-release";
            finding.severity = Severity::Doubt;
            finding.at = {spotOf(facts, terminal)};
            finding.throws = witnessesOf(facts, {{{starter.moved, starter.thrown}}});
            const std::string contact = nameOf(facts.job, *row);
            finding.why = {why,
                           {{"input", nameOf(facts, terminal)},
                            {"contact", contact},
                            {"operator", device.tag},
                            {"device", tagOf(facts.job, row->owner)}}};
            finding.remedy = {remedy, {{"contact", contact}}};
            Remedies remedies(facts);
            remedies.turnContacts({starter.moved});
            finding.remedies = remedies.taken();
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

} // namespace

extern const Check startOnRelease = {
    .code = "start-on-release",
    .worst = Severity::Doubt,
    .title = {.en = "Operator started by a relay that drops",
              .es = "Operador que arranca con un relé que cae"},
    .notCovered =
        {.en = "requests by two contacts at once; what an operator does with a request that stays",
         .es =
             "peticiones con dos contactos a la vez; lo que hace un operador con una petición que permanece"},
    .run = findOnRelease,
};

} // namespace doorloom
