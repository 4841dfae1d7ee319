#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <set>

// Jumpers that are meant to stand alike and do not.
namespace doorloom {

namespace {

constexpr Text why = {.en = "The jumpers of {option} stand apart: {jumpers}. Both move together, with power off.",
                      .es = "Los puentes de {option} no coinciden: {jumpers}. Se mueven juntos, sin tensión."};
constexpr Text stands = {.en = "{jumper} at {value}", .es = "{jumper} en {value}"};

std::vector<Finding> findDisagreement(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Device& device : facts.job.devices) {
        const Kind* kind = kindOf(facts.job, device);
        for (const Option& option : kind ? kind->options : std::vector<Option>{}) {
            std::set<Key> values;
            std::vector<Message> jumpers;
            for (const Jumper& jumper : option.jumpers)
                if (const auto value = chosen(device, option.key, jumper.key)) {
                    values.insert(*value);
                    const auto index = findThrow(option.values, *value);
                    jumpers.push_back({stands,
                                       {{"jumper", jumper.key},
                                        {"value", index ? Argument(option.values[*index].words) : Argument(*value)}}});
                }
            if (values.size() < 2)
                continue;
            Finding finding;
            finding.rule = "jumpers-disagree";
            finding.severity = Severity::Fault;
            finding.at = {optionSpot(device.id, option.key)};
            finding.why = {why, {{"option", device.tag + ":" + option.key}, {"jumpers", std::move(jumpers)}}};
            Remedies remedies(facts);
            remedies.setOtherValues(device.id, option.key);
            finding.remedies = remedies.taken();
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

} // namespace

extern const Check jumpersDisagree = {
    .code = "jumpers-disagree",
    .worst = Severity::Fault,
    .title = {.en = "Jumpers that disagree", .es = "Puentes que no coinciden"},
    .notCovered = {.en = "jumpers that are not recorded in the job", .es = "puentes que no constan en el trabajo"},
    .run = findDisagreement,
};

} // namespace doorloom
