#include "check/check.h"
#include "check/remedies.h"
#include "check/settingfigures.h"
#include "check/tell.h"
#include "edit/operations.h"

#include <algorithm>

// A function left where the device does nothing: boards come out of the box so.
namespace doorloom {

namespace {

constexpr Text why = {.en = "'{setting}' of {device} stands at '{value}'{factory}: the device does nothing.",
                      .es = "'{setting}' de {device} está en '{value}'{factory}: el equipo no hace nada."};
constexpr Text asItComes = {.en = ", as it comes from the factory", .es = ", como sale de fábrica"};
constexpr Text asSet = {.en = "", .es = ""};
constexpr Text choose = {.en = "Set '{setting}' of {device} to what the door must do.",
                         .es = "Ponga '{setting}' de {device} en lo que la puerta debe hacer."};
constexpr Text setTo = {.en = "Set '{setting}' of {device} to '{value}'.",
                        .es = "Ponga '{setting}' de {device} en '{value}'."};

bool isWired(const Job& job, DeviceId device)
{
    return std::any_of(job.conductors.begin(), job.conductors.end(), [&](const Conductor& row) {
        const Landing *from = landingOf(row.from), *to = landingOf(row.to);
        return (from && from->device == device) || (to && to->device == device);
    });
}

Finding findingFor(const Facts& facts, const Device& device, const Setting& about, const Throw& value)
{
    Finding finding;
    finding.rule = "does-nothing";
    finding.severity = Severity::Fault;
    finding.at = {deviceSpot(device.id)};
    const Text& factory = about.factory && isNothing(*about.factory) ? asItComes : asSet;
    finding.why = {why,
                   {{"setting", about.words},
                    {"device", device.tag},
                    {"value", value.words},
                    {"factory", std::vector<Message>{factory}}}};
    finding.remedy = {choose, {{"setting", about.words}, {"device", device.tag}}};
    Remedies remedies(facts);
    for (const Throw& each : about.values)
        if (!isNothing(each.key))
            remedies.add({setTo, {{"setting", about.words}, {"device", device.tag}, {"value", each.words}}},
                         setSetting(facts.job, device.id, about.key, each.key));
    finding.remedies = remedies.taken();
    return finding;
}

std::vector<Finding> findIdle(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Device& device : facts.job.devices) {
        const Kind* kind = kindOf(facts.job, device);
        for (const Setting& about : kind ? kind->settings : std::vector<Setting>{}) {
            const auto own = settingOf(device, about.key);
            const auto value = own ? own : about.factory;
            if (value && isNothing(*value) && isWired(facts.job, device.id))
                if (const auto nothing = findThrow(about.values, std::get<std::string>(*value)))
                    findings.push_back(findingFor(facts, device, about, about.values[*nothing]));
        }
    }
    return findings;
}

} // namespace

extern const Check doesNothing = {
    .code = "does-nothing",
    .worst = Severity::Fault,
    .title = {.en = "Function left at nothing", .es = "Función sin elegir"},
    .notCovered = {.en =
                       "functions that a kind's data does not list; whether the chosen one is the right one",
                   .es = "funciones que los datos del tipo no listan; si la elegida es la correcta"},
    .run = findIdle,
};

} // namespace doorloom
