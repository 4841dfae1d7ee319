#include "check/check.h"
#include "check/tell.h"

#include <map>

// One tag on several conductors or cables.
namespace doorloom {

namespace {

constexpr Text twiceWhy = {.en = "The tag '{tag}' is on {count} conductors or cables: nobody can tell them apart.",
                           .es = "La etiqueta '{tag}' está en {count} conductores o cables: no se distinguen."};
constexpr Text twiceRemedy = {.en = "Give each of them a tag of its own, other than '{tag}'.",
                              .es = "Dé a cada uno una etiqueta propia, distinta de '{tag}'."};

std::vector<Finding> findTwice(const Job& job)
{
    std::map<std::string, std::vector<Spot>> tagged;
    for (const Conductor& conductor : job.conductors)
        if (!conductor.tag.empty())
            tagged[conductor.tag].push_back({{}, {}, conductor.id, {}});
    for (const Cable& cable : job.cables)
        if (!cable.tag.empty())
            tagged[cable.tag].push_back({{}, {}, {}, cable.id});
    std::vector<Finding> findings;
    for (const auto& [tag, spots] : tagged)
        if (spots.size() > 1) {
            Finding finding;
            finding.rule = "duplicate-tag";
            finding.severity = Severity::Doubt;
            finding.at = spots;
            finding.why = {twiceWhy, {{"tag", tag}, {"count", std::to_string(spots.size())}}};
            finding.remedy = {twiceRemedy, {{"tag", tag}}};
            findings.push_back(std::move(finding));
        }
    return findings;
}

} // namespace

extern const Check duplicateTag = {
    .code = "duplicate-tag",
    .worst = Severity::Doubt,
    .title = {.en = "Tag used twice", .es = "Etiqueta repetida"},
    .notCovered = {.en = "tags of places and splices", .es = "etiquetas de lugares y empalmes"},
    .runOnJob = findTwice,
};

} // namespace doorloom
