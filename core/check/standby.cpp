#include "check/check.h"
#include "check/tell.h"

#include <optional>

// Hours that a battery carries what is fed at rest, against the hours that the job asks of its charger's 'standby' setting.
namespace doorloom {

namespace {

constexpr Text why = {.en = "The battery on {charger} has {have} Ah; {hours} h at {amperes} A want {want} Ah, a fifth more for age with them.",
                      .es = "La batería de {charger} tiene {have} Ah; {hours} h a {amperes} A piden {want} Ah, con un quinto más por la edad."};
constexpr Text larger = {.en = "Fit batteries of {want} Ah or more on {charger}, or ask fewer hours of them.",
                         .es = "Monte baterías de {want} Ah o más en {charger}, o pídales menos horas."};

constexpr double shareWhenOld = 0.8; // of its ampere-hours that a battery keeps: common practice, no source
const Key standbySetting = "standby"; // hours

const BatteryPortPart* portOf(const Kind& kind)
{
    for (const Part& part : kind.parts)
        if (const auto* port = std::get_if<BatteryPortPart>(&part.body))
            return port;
    return nullptr;
}

// Ampere-hours of a string are those of its smallest battery; nothing: none there, or one does not say.
std::optional<double> ampereHoursAt(const Facts& facts, Vertex plus)
{
    std::optional<double> least;
    for (const Device& device : facts.job.devices)
        if (const Kind* kind = kindOf(facts.job, device))
            for (const Part& part : kind->parts)
                if (const auto* battery = std::get_if<BatteryPart>(&part.body)) {
                    const auto vertex = facts.net.vertexOf(device.id, battery->plus);
                    if (!vertex || !facts.ask.sameIsland(*vertex, plus))
                        continue;
                    if (!battery->capacity)
                        return std::nullopt;
                    least = std::min(least.value_or(battery->capacity->value), battery->capacity->value);
                }
    return least;
}

double drawnAtRest(const Facts& facts, DeviceId charger)
{
    double amperes = 0;
    for (std::uint32_t i = 0; i < facts.circuit().feeds.size(); ++i)
        if (facts.deviceOfFeed(i) == charger)
            amperes += facts.figures().outAtRest[i];
    return amperes;
}

std::vector<Finding> findShortStandby(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Device& device : facts.job.devices) {
        const Kind* kind = kindOf(facts.job, device);
        const BatteryPortPart* port = kind ? portOf(*kind) : nullptr;
        const auto setting = port ? settingOf(device, standbySetting) : std::nullopt;
        const double* hours = setting ? std::get_if<double>(&*setting) : nullptr;
        const auto plus = hours ? facts.net.vertexOf(device.id, port->plus) : std::nullopt;
        const auto have = plus ? ampereHoursAt(facts, *plus) : std::nullopt;
        if (!have)
            continue;
        const double amperes = drawnAtRest(facts, device.id), want = amperes * *hours / shareWhenOld;
        if (want <= *have + 1e-9)
            continue;
        Finding finding;
        finding.rule = "short-standby";
        finding.severity = Severity::Doubt;
        finding.at = {deviceSpot(device.id)};
        finding.why = {why,
                       {{"charger", device.tag},
                        {"have", figureText(*have)},
                        {"hours", figureText(*hours)},
                        {"amperes", figureText(amperes)},
                        {"want", figureText(want)}}};
        finding.remedy = {larger, {{"want", figureText(want)}, {"charger", device.tag}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check shortStandby = {
    .code = "short-standby",
    .worst = Severity::Doubt,
    .title = {.en = "Battery too small for its hours", .es = "Batería pequeña para sus horas"},
    .notCovered = {.en = "batteries inside supplies; what is used besides rest; cold; jobs that ask no hours",
                   .es = "baterías dentro de fuentes; el consumo fuera del reposo; el frío; trabajos que no piden horas"},
    .run = findShortStandby,
    .readsFigures = true};

} // namespace doorloom
