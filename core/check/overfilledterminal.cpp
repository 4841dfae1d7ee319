#include "check/check.h"
#include "check/tell.h"

#include <map>

// More conductors in a clamp or splice than it takes.
namespace doorloom {

namespace {

constexpr Text fullWhy = {.en = "{terminal} holds {count} conductors; its clamp takes {most}.",
                          .es = "{terminal} tiene {count} conductores; su borne admite {most}."};
constexpr Text fullRemedy = {.en = "Use a terminal strip or a splice, so that {terminal} holds no more than {most}.",
                             .es = "Use una regleta o un empalme, de modo que {terminal} no tenga más de {most}."};

Finding overfull(Spot at, const std::string& name, std::size_t count, int most)
{
    Finding finding;
    finding.rule = "overfilled-terminal";
    finding.severity = Severity::Doubt;
    finding.at = {std::move(at)};
    finding.why = {fullWhy, {{"terminal", name}, {"count", std::to_string(count)}, {"most", std::to_string(most)}}};
    finding.remedy = {fullRemedy, {{"terminal", name}, {"most", std::to_string(most)}}};
    return finding;
}

// A conductor with both its ends on one clamp fills it twice.
std::vector<std::size_t> landingCounts(const Facts& facts) // by vertex
{
    std::vector<std::size_t> counts(facts.circuit().vertices);
    for (const Conductor& conductor : facts.job.conductors)
        for (const End* end : {&conductor.from, &conductor.to})
            if (const Landing* landing = landingOf(*end))
                if (const auto vertex = facts.net.vertexOf(landing->device, landing->terminal))
                    ++counts[*vertex];
    return counts;
}

std::vector<Finding> findOverfull(const Facts& facts)
{
    std::vector<Finding> findings;
    const std::vector<std::size_t> counts = landingCounts(facts);
    for (Vertex vertex = 0; vertex < counts.size(); ++vertex) {
        const std::size_t count = counts[vertex];
        if (count < 2)
            continue; // every clamp takes one
        const Landing landing = *facts.landingAt(vertex);
        const int most = findTerminal(*kindOf(facts.job, landing.device), landing.terminal)->clampCapacity;
        if (count > static_cast<std::size_t>(most))
            findings.push_back(overfull(terminalSpot(landing), nameOf(facts.job, landing), count, most));
    }
    for (const Splice& splice : facts.job.splices)
        if (const std::size_t count = conductorsOn(facts.job, splice.id).size();
            count > static_cast<std::size_t>(splice.capacity))
            findings.push_back(overfull({{}, splice.tag, {}, {}}, splice.tag, count, splice.capacity));
    return findings;
}

} // namespace

extern const Check overfilledTerminal = {
    .code = "overfilled-terminal",
    .worst = Severity::Doubt,
    .title = {.en = "Overfilled terminal", .es = "Borne con demasiados conductores"},
    .notCovered = {.en = "gauges that do not fit the clamp", .es = "secciones que no caben en el borne"},
    .run = findOverfull,
};

} // namespace doorloom
