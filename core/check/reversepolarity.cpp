#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

// A polarised load that is fed the wrong way round, and never the right one.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{load} gets plus on {minus} and minus on {plus}.",
                      .es = "{load} recibe el positivo en {minus} y el negativo en {plus}."};

std::vector<Finding> findReversed(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& element = facts.circuit().elements[number];
        if (element.kind != ElementKind::Load || !element.polarised ||
            facts.returned(number).answer != Answer::Never)
            continue;
        for (std::uint32_t feed : facts.ask.feedsNear(element.a)) {
            const Verdict verdict = facts.ask.returnedVia(number, feed, Direction::Reverse);
            if (!occurs(verdict))
                continue;
            Finding finding;
            finding.rule = "reverse-polarity";
            finding.at = {loadSpot(facts, number)};
            happensIn(finding, facts, verdict);
            finding.why = {why,
                           {{"load", tagOfOrigin(facts, element.origin)},
                            {"plus", nameOf(facts, element.a)},
                            {"minus", nameOf(facts, element.b)}}};
            finding.path = wayBetween(facts, verdict.cubes.front(), facts.circuit().feeds[feed].plus, element.b, true);
            const auto a = facts.landingAt(element.a), b = facts.landingAt(element.b);
            Remedies remedies(facts);
            if (a && b)
                remedies.exchange(a->device, a->terminal, b->terminal);
            remedies.breakWay(finding.path);
            finding.remedies = remedies.taken();
            findings.push_back(std::move(finding));
            break;
        }
    }
    return findings;
}

} // namespace

extern const Check reversePolarity = {
    .code = "reverse-polarity",
    .worst = Severity::Fault,
    .title = {.en = "Reverse polarity", .es = "Polaridad invertida"},
    .notCovered = {.en = "loads that are reversed in some positions and right in others",
                   .es = "cargas invertidas en unas posiciones y correctas en otras"},
    .run = findReversed,
};

} // namespace doorloom
