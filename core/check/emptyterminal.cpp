#include "check/check.h"
#include "check/tell.h"

#include <algorithm>

// Nothing on a terminal without which the device does not work.
namespace doorloom {

namespace {

constexpr Text emptyWhy = {.en = "Nothing is landed on {terminals}, without which {device} does not work.",
                           .es = "No hay nada conectado en {terminals}; sin ello {device} no funciona."};
constexpr Text emptyRemedy = {.en = "Land {terminals}.", .es = "Conecte {terminals}."};

// By a link that is always there: a conductor on the other terminal does as well.
bool isLinkedToLanded(const Facts& facts, const Device& device, const Kind& kind, const Key& terminal)
{
    return std::any_of(kind.parts.begin(), kind.parts.end(), [&](const Part& part) {
        const auto* link = std::get_if<LinkPart>(&part.body);
        if (!link || !part.when.empty() || (link->a != terminal && link->b != terminal))
            return false;
        const auto other = facts.net.vertexOf(device.id, link->a == terminal ? link->b : link->a);
        return other && facts.isLanded(*other);
    });
}

std::vector<Finding> findEmpty(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Device& device : facts.job.devices) {
        const Kind* kind = kindOf(facts.job, device);
        Finding finding;
        std::vector<Message> names;
        for (const Terminal* terminal : kind ? terminalsOf(*kind) : std::vector<const Terminal*>{}) {
            const bool required = std::any_of(terminal->required.begin(), terminal->required.end(),
                                              [&](const Condition& when) { return holds(device, when); });
            const auto vertex = facts.net.vertexOf(device.id, terminal->key);
            if (!required || !vertex || facts.isLanded(*vertex) || isLinkedToLanded(facts, device, *kind, terminal->key))
                continue;
            finding.at.push_back(terminalSpot({device.id, terminal->key}));
            names.push_back(verbatim(nameOf(facts.job, Landing{device.id, terminal->key})));
        }
        if (names.empty())
            continue;
        finding.rule = "empty-terminal";
        finding.why = {emptyWhy, {{"terminals", names}, {"device", device.tag}}};
        finding.remedy = {emptyRemedy, {{"terminals", names}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check emptyTerminal = {
    .code = "empty-terminal",
    .worst = Severity::Fault,
    .title = {.en = "Empty required terminal", .es = "Borne necesario vacío"},
    .notCovered = {.en = "terminals that only some functions need", .es = "bornes que solo necesitan algunas funciones"},
    .run = findEmpty,
};

} // namespace doorloom
