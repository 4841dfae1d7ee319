#include "check/check.h"
#include "check/settingfigures.h"
#include "check/tell.h"

#include <fmt/format.h>

// Touchless actuators side by side that see one hand both.
namespace doorloom {

namespace {

constexpr Text why = {
    .en = "{device} is {spacing} mm from the next touchless actuator on its wall, centre to centre. Common "
          "practice is {least} mm (12 in) or more: nearer, one hand asks both.",
    .es = "{device} está a {spacing} mm del próximo accionador sin contacto de su pared, de centro a centro. "
          "Lo habitual son {least} mm (12 in) o más: más cerca, una mano acciona ambos."};
constexpr Text remedy = {
    .en = "Set them {least} mm or more apart, or turn down how far they see and try each with a hand at the "
          "other.",
    .es = "Sepárelos {least} mm o más, o reduzca su alcance y pruebe cada uno con una mano en el otro."};

std::vector<Finding> findClose(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Device& device : facts.job.devices) {
        const auto value = settingOf(device, "spacing");
        const double* spacing = value ? std::get_if<double>(&*value) : nullptr;
        if (!spacing || *spacing >= leastActuatorSpacing)
            continue;
        Finding finding;
        finding.rule = "close-actuators";
        finding.severity = Severity::Doubt;
        finding.at = {deviceSpot(device.id)};
        const std::string least = fmt::format("{:g}", leastActuatorSpacing);
        finding.why = {
            why, {{"device", device.tag}, {"spacing", fmt::format("{:g}", *spacing)}, {"least", least}}};
        finding.remedy = {remedy, {{"least", least}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check closeActuators = {
    .code = "close-actuators",
    .worst = Severity::Doubt,
    .title = {.en = "Touchless actuators close together", .es = "Accionadores sin contacto muy juntos"},
    .notCovered = {.en = "actuators whose spacing nobody gave; walls between them",
                   .es = "accionadores cuya separación nadie indicó; paredes entre ellos"},
    .run = findClose,
};

} // namespace doorloom
