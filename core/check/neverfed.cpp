#include "check/check.h"
#include "check/unfed.h"

#include <algorithm>

// A load, coil or voltage input that no position feeds: in none does a closed path lead from one source through
// it and back. Which of the cases it is follows from what its sides meet, and from what would feed it if something
// else were otherwise.
namespace doorloom {

namespace {

// The first that fits speaks.
constexpr UnfedCase cases[] = {unfedWhileShorted,  unfedByDeadRelay,         unfedOnOnePole,       unfedInSeries,
                               unfedByTurnedDiode, unfedByExclusiveContacts, unfedBetweenSupplies, unfedWithoutReturn};

// Then reverse polarity speaks.
bool returnsReversed(const Facts& facts, std::uint32_t number)
{
    const Element& element = facts.circuit().elements[number];
    const auto feeds = facts.ask.feedsNear(element.a);
    return element.polarised && std::any_of(feeds.begin(), feeds.end(), [&](std::uint32_t feed) {
               return occurs(facts.ask.returnedVia(number, feed, Direction::Reverse));
           });
}

void explain(Finding& finding, const UnfedLoad& load)
{
    for (UnfedCase each : cases)
        if (auto because = each(load)) {
            finding.reason = because->reason;
            finding.why = std::move(because->why);
            finding.why.arguments.emplace_back("load", load.name());
            finding.path = std::move(because->path);
            finding.remedies = std::move(because->remedies);
            return;
        }
}

Finding findingFor(const Facts& facts, std::uint32_t number)
{
    Finding finding;
    finding.rule = "never-fed";
    finding.at = {loadSpot(facts, number)};
    if (facts.telling == Telling::Reasons)
        explain(finding, UnfedLoad(facts, number));
    return finding;
}

std::vector<Finding> findNeverFed(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& element = facts.circuit().elements[number];
        if (element.kind != ElementKind::Load || (!facts.isLanded(element.a) && !facts.isLanded(element.b)))
            continue;
        const Verdict& verdict = facts.returned(number);
        if (verdict.answer == Answer::Unknown)
            findings.push_back(notProved("never-fed", loadSpot(facts, number)));
        if (verdict.answer == Answer::Never && !returnsReversed(facts, number))
            findings.push_back(findingFor(facts, number));
    }
    return findings;
}

} // namespace

extern const Check neverFed = {
    .code = "never-fed",
    .worst = Severity::Fault,
    .title = {.en = "Never fed: no way back to the source", .es = "Nunca recibe tensión: sin retorno a la fuente"},
    .notCovered = {.en = "whether the volts that arrive are enough", .es = "si la tensión que llega es suficiente"},
    .run = findNeverFed,
};

} // namespace doorloom
