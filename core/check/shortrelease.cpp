#include "check/check.h"
#include "check/tell.h"

#include <fmt/format.h>

#include <algorithm>

// An exit button with a timer beside a sensor that releases: model codes ask for thirty seconds of it.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{button} frees {opening} for {seconds} s. Where a sensor releases the lock, model codes ask for {least} s of the button.",
                      .es = "{button} libera {opening} durante {seconds} s. Donde un sensor libera la cerradura, los códigos modelo piden {least} s al botón."};
constexpr Text remedy = {.en = "Set {button} to {least} s or more. The figure is from a code's summary: the AHJ decides.",
                         .es = "Ponga {button} en {least} s o más. La cifra es de un resumen de código: decide la autoridad."};

constexpr double leastSeconds = 30; // Source: trade page, model code for sensor-release locks, read in excerpt

// The device behind a hand of this release that has a time of its own.
const Device* timedButton(const Facts& facts, const Act& release)
{
    for (const Thrown& each : release.throws) {
        const Operator* row = facts.job.operators.find(each.moved);
        const Device* device = row && row->nature == OperatorNature::Hand ? facts.job.devices.find(row->owner) : nullptr;
        if (device && settingOf(*device, "hold"))
            return device;
    }
    return nullptr;
}

bool isReleasedByASensor(const Facts& facts, const Opening& opening)
{
    const auto isSensor = [&](const Thrown& each) {
        const Operator* row = facts.job.operators.find(each.moved);
        return row && row->nature == OperatorNature::Sensor;
    };
    return std::any_of(opening.releases.begin(), opening.releases.end(),
                       [&](const Act& release) { return std::any_of(release.throws.begin(), release.throws.end(), isSensor); });
}

std::vector<Finding> findShort(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Opening& opening : facts.job.openings) {
        if (opening.egress != Egress::ByElectricity || !isReleasedByASensor(facts, opening))
            continue;
        for (const Act& release : opening.releases) {
            const Device* device = timedButton(facts, release);
            const auto value = device ? settingOf(*device, "hold") : std::nullopt;
            const double* seconds = value ? std::get_if<double>(&*value) : nullptr;
            if (!seconds || *seconds >= leastSeconds)
                continue;
            Finding finding;
            finding.rule = "short-release";
            finding.severity = Severity::Doubt;
            finding.at = {deviceSpot(device->id)};
            const std::string least = fmt::format("{:g}", leastSeconds);
            finding.why = {why, {{"button", device->tag}, {"opening", opening.tag}, {"seconds", fmt::format("{:g}", *seconds)}, {"least", least}}};
            finding.remedy = {remedy, {{"button", device->tag}, {"least", least}}};
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

} // namespace

extern const Check shortRelease = {
    .code = "short-release",
    .worst = Severity::Doubt,
    .title = {.en = "Exit timer too short", .es = "Temporizador de salida corto"},
    .notCovered = {.en = "what the local code asks; locks that no sensor releases", .es = "lo que pide la norma local; cerraduras que no libera un sensor"},
    .run = findShort,
};

} // namespace doorloom
