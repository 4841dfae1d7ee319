#include "check/check.h"
#include "check/tell.h"

// A core end that is neither landed nor capped nor insulated on purpose.
namespace doorloom {

namespace {

constexpr Text waitingWhy = {.en = "{conductor} has {count} that is not landed, capped or insulated.",
                             .es = "{conductor} tiene {count} sin conectar, sin tapar y sin aislar."};
constexpr Text oneEnd = {.en = "an end", .es = "un extremo"};
constexpr Text bothEnds = {.en = "both ends, each of them one", .es = "ambos extremos, cada uno"};
constexpr Text capWords = {.en = "Land the waiting end, or cap it as spare: {conductor}.",
                           .es = "Conecte el extremo pendiente, o tápelo como reserva: {conductor}."};
constexpr Text conductorWords = {.en = "the conductor from {from} to {to}", .es = "el conductor de {from} a {to}"};
constexpr Text taggedWords = {.en = "conductor {tag}", .es = "el conductor {tag}"};
constexpr Text nowhere = {.en = "nowhere yet", .es = "ningún sitio aún"};

Message endName(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        return verbatim(nameOf(job, *landing));
    if (const SpliceId* splice = spliceOf(end))
        if (const Splice* row = job.splices.find(*splice))
            return verbatim(row->tag);
    return nowhere;
}

Message conductorName(const Job& job, const Conductor& conductor)
{
    if (!conductor.tag.empty())
        return {taggedWords, {{"tag", conductor.tag}}};
    return {conductorWords,
            {{"from", std::vector<Message>{endName(job, conductor.from)}},
             {"to", std::vector<Message>{endName(job, conductor.to)}}}};
}

std::vector<Finding> findWaiting(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Conductor& conductor : facts.job.conductors) {
        const int waiting = (conductor.from.state == EndState::Waiting) + (conductor.to.state == EndState::Waiting);
        if (waiting == 0)
            continue;
        Finding finding;
        finding.rule = "waiting-end";
        finding.severity = Severity::Doubt;
        finding.at = {{{}, {}, conductor.id, {}}};
        const std::vector<Message> name{conductorName(facts.job, conductor)};
        finding.why = {waitingWhy, {{"conductor", name}, {"count", std::vector<Message>{waiting == 1 ? oneEnd : bothEnds}}}};
        finding.remedy = {capWords, {{"conductor", name}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check waitingEnd = {
    .code = "waiting-end",
    .worst = Severity::Doubt,
    .title = {.en = "Waiting core end", .es = "Extremo de hilo pendiente"},
    .notCovered = {.en = "ends that are capped or insulated in the job and not on site",
                   .es = "extremos tapados o aislados en el trabajo pero no en la obra"},
    .run = findWaiting,
};

} // namespace doorloom
