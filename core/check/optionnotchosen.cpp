#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>

// A jumper that nobody has chosen yet, on something that is wired.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{option} is not chosen yet: {jumpers} may stand at {values}. Every value was tried.",
                      .es = "{option} aún no está elegida: {jumpers} puede estar en {values}. Se probó cada valor."};

bool isUsed(const Facts& facts, const Device& device, const Kind& kind, const Key& option)
{
    bool ofAnOutput = false;
    for (const SwitchedOutput& output : kind.outputs) {
        if (output.option != option)
            continue;
        ofAnOutput = true;
        for (const Key& terminal : output.terminals)
            if (const auto vertex = facts.net.vertexOf(device.id, terminal); vertex && facts.isLanded(*vertex))
                return true;
    }
    return !ofAnOutput && !conductorsOn(facts.job, device.id).empty();
}

std::vector<Finding> findUnchosen(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Device& device : facts.job.devices) {
        const Kind* kind = kindOf(facts.job, device);
        for (const Option& option : kind ? kind->options : std::vector<Option>{}) {
            std::vector<Message> open, values;
            for (const Jumper& jumper : option.jumpers)
                if (!chosen(device, option.key, jumper.key))
                    open.push_back(verbatim(jumper.key));
            if (open.empty() || !isUsed(facts, device, *kind, option.key))
                continue;
            for (const Throw& value : option.values)
                values.push_back(verbatim(value.words));
            Finding finding;
            finding.rule = "option-not-chosen";
            finding.severity = Severity::Doubt;
            finding.at = {optionSpot(device.id, option.key)};
            finding.why = {why,
                           {{"option", device.tag + ":" + option.key}, {"jumpers", std::move(open)}, {"values", std::move(values)}}};
            Remedies remedies(facts);
            remedies.setOtherValues(device.id, option.key);
            finding.remedies = remedies.taken();
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

} // namespace

extern const Check optionNotChosen = {
    .code = "option-not-chosen",
    .worst = Severity::Doubt,
    .title = {.en = "Option not chosen", .es = "Opción sin elegir"},
    .notCovered = {.en = "options of outputs on which nothing is landed", .es = "opciones de salidas sin nada conectado"},
    .run = findUnchosen,
};

} // namespace doorloom
