#include "check/check.h"
#include "check/protection.h"
#include "check/tell.h"

#include <fmt/format.h>

#include <algorithm>

// A fuse that never blows: what feeds it gives less than the fuse bears.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{fuse} bears {most} A, and {source} gives no more than {amperes} A: a short there takes down all that {source} feeds, and {fuse} stays whole.",
                      .es = "{fuse} soporta {most} A, y {source} no da más de {amperes} A: un cortocircuito ahí deja sin tensión todo lo que alimenta {source}, y {fuse} no se funde."};
constexpr Text smaller = {.en = "In place of {fuse}, fit a fuse well below {amperes} A, and above what its loads take.",
                          .es = "En lugar de {fuse}, ponga un fusible bastante menor de {amperes} A, y mayor que lo que toman sus cargas."};

bool anyFuse(const Facts& facts)
{
    return std::any_of(facts.circuit().joints.begin(), facts.circuit().joints.end(), [&](const Joint& joint) {
        return partBehind<FusePart>(facts.job, facts.net.origin(joint.origin)) != nullptr;
    });
}

std::vector<Finding> findLarge(const Facts& facts)
{
    std::vector<Finding> findings;
    if (!anyFuse(facts))
        return findings;
    const std::vector<Protection> protection = protectionFrom(facts, Sources::All);
    for (const Joint& joint : facts.circuit().joints) {
        const auto* fuse = partBehind<FusePart>(facts.job, facts.net.origin(joint.origin));
        const Protection& before = protection[joint.a].amperes >= protection[joint.b].amperes ? protection[joint.a] : protection[joint.b];
        if (!fuse || before.amperes <= 0 || fuse->limit.value <= before.amperes + 1e-9)
            continue;
        const Kind* kind = kindOf(facts.job, facts.deviceOf(joint.origin));
        const std::string name = tagOfOrigin(facts, joint.origin), source = tagOfOrigin(facts, before.limiter);
        Finding finding;
        finding.rule = "large-fuse";
        // A fuse built into a board cannot be chosen.
        finding.severity = kind && kind->family == "part" ? Severity::Doubt : Severity::Hint;
        finding.at = {finding.severity == Severity::Doubt ? deviceSpot(facts.deviceOf(joint.origin)) : spotOf(facts, joint.b)};
        const std::string amperes = fmt::format("{:.3g}", before.amperes);
        finding.why = {why, {{"fuse", name}, {"most", fmt::format("{:.3g}", fuse->limit.value)}, {"source", source}, {"amperes", amperes}}};
        finding.remedy = {smaller, {{"fuse", name}, {"amperes", amperes}}};
        finding.path = wayTo(facts, protection, &before == &protection[joint.a] ? joint.a : joint.b);
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check largeFuse = {
    .code = "large-fuse",
    .worst = Severity::Doubt,
    .title = {.en = "Fuse that never blows", .es = "Fusible que nunca se funde"},
    .notCovered = {.en = "how fast a fuse is; what a source gives for a moment beyond its rating",
                   .es = "la rapidez del fusible; lo que una fuente da un momento por encima de su valor"},
    .run = findLarge,
};

} // namespace doorloom
