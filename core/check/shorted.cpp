#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

// The two poles of a source joined through conductors, links, closed contacts, fuses and forward diodes alone.
namespace doorloom {

namespace {

constexpr Text why = {.en = "Plus and minus of {source} are joined with no load between: {from} to {to}.",
                      .es = "El positivo y el negativo de {source} se unen sin carga entre ellos: {from} a {to}."};

std::vector<Origin> wayFor(const Facts& facts, const Feed& feed, const Cube& cube)
{
    std::vector<Origin> way = wayBetween(facts, cube, feed.plus, feed.minus, true);
    return way.empty() && feed.ac ? wayBetween(facts, cube, feed.minus, feed.plus, true) : way;
}

std::vector<Finding> findShorted(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().feeds.size(); ++number) {
        const Feed& feed = facts.circuit().feeds[number];
        const Verdict& verdict = facts.shorted(number);
        if (verdict.answer == Answer::Unknown)
            findings.push_back(notProved("shorted", deviceSpot(facts.deviceOfFeed(number))));
        if (!occurs(verdict))
            continue;
        Finding finding;
        finding.rule = "shorted";
        finding.severity = Severity::Danger;
        finding.at = {deviceSpot(facts.deviceOfFeed(number))};
        happensIn(finding, facts, verdict);
        finding.why = {why,
                       {{"source", tagOfOrigin(facts, feed.origin)},
                        {"from", nameOf(facts, feed.plus)},
                        {"to", nameOf(facts, feed.minus)}}};
        finding.path = wayFor(facts, feed, verdict.cubes.front());
        Remedies remedies(facts);
        remedies.breakWay(finding.path);
        finding.remedies = remedies.taken();
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check shortedSource = {
    .code = "shorted",
    .worst = Severity::Danger,
    .title = {.en = "Shorted source", .es = "Fuente en cortocircuito"},
    .notCovered = {.en = "a way through so little resistance that the current passes the source's limit",
                   .es = "un camino con tan poca resistencia que la corriente supera el límite de la fuente"},
    .run = findShorted,
};

} // namespace doorloom
