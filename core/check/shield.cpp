#include "check/cablecores.h"
#include "check/check.h"
#include "check/tell.h"

#include <algorithm>

// A cable's drain on earth at both its ends, or at neither.
namespace doorloom {

namespace {

constexpr Text twiceWhy = {.en = "The shield of {cable} is earthed at {places}: a loop through the building, which hums.",
                           .es = "La pantalla de {cable} está a tierra en {places}: un bucle por el edificio, que zumba."};
constexpr Text twiceRemedy = {.en = "Leave the drain of {cable} on earth at one end, the controller's, and insulate the other.",
                              .es = "Deje el drenaje de {cable} a tierra en un extremo, el del controlador, y aísle el otro."};
constexpr Text nothingWhy = {.en = "The shield of {cable} is on earth at neither end: it shields nothing.",
                             .es = "La pantalla de {cable} no está a tierra en ningún extremo: no apantalla."};
constexpr Text nothingRemedy = {.en = "Land the drain of {cable} on earth at one end.", .es = "Conecte el drenaje de {cable} a tierra en un extremo."};

bool isEarthed(const Job& job, const End& end)
{
    const Landing* landing = landingOf(end);
    const Device* device = landing ? job.devices.find(landing->device) : nullptr;
    const Kind* kind = device ? kindOf(job, *device) : nullptr;
    return kind && isEarth(*device, *kind, landing->terminal);
}

bool isInTheAir(const End& end) { return end.state == EndState::Spare || end.state == EndState::Insulated; }

Finding findingFor(const Cable& cable, std::string_view reason, Message why, const Text& remedy)
{
    Finding finding;
    finding.rule = "shield";
    finding.reason = reason;
    finding.severity = Severity::Doubt;
    finding.at = {{{}, {}, {}, cable.id}};
    finding.why = std::move(why);
    finding.remedy = {remedy, {{"cable", cable.tag}}};
    return finding;
}

bool hasDrain(const CableType& type)
{
    return std::any_of(type.cores.begin(), type.cores.end(), [](const Core& core) { return core.drain; });
}

std::vector<Finding> findShields(const Job& job)
{
    std::vector<Finding> findings;
    if (std::none_of(job.cableTypes.begin(), job.cableTypes.end(), hasDrain))
        return findings;
    for (const Conductor& conductor : job.conductors) {
        const Core* core = conductor.cable ? coreOf(job, conductor) : nullptr;
        const Cable* cable = core && core->drain ? job.cables.find(conductor.cable) : nullptr;
        if (!cable)
            continue;
        if (isEarthed(job, conductor.from) && isEarthed(job, conductor.to)) {
            const std::string places = nameOf(job, *landingOf(conductor.from)) + ", " + nameOf(job, *landingOf(conductor.to));
            findings.push_back(findingFor(*cable, "earthed twice", {twiceWhy, {{"cable", cable->tag}, {"places", places}}}, twiceRemedy));
        } else if (isInTheAir(conductor.from) && isInTheAir(conductor.to))
            findings.push_back(findingFor(*cable, "on nothing", {nothingWhy, {{"cable", cable->tag}}}, nothingRemedy));
    }
    return findings;
}

} // namespace

extern const Check shieldEarthing = {
    .code = "shield",
    .worst = Severity::Doubt,
    .title = {.en = "Shield earthed twice or not at all", .es = "Pantalla a tierra dos veces o ninguna"},
    .notCovered = {.en = "drains that go on through a strip or a splice", .es = "drenajes que siguen por una regleta o un empalme"},
    .runOnJob = findShields,
};

} // namespace doorloom
