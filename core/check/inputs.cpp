#include "check/inputs.h"

#include "check/loops.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>

namespace doorloom {

namespace {

// Landed on its reference alone, which belongs to inputs and to no pole: somebody meant this input or one beside it.
bool isHalfLanded(const Facts& facts, const DryInput& input)
{
    if (!input.isolated || input.mustBeClosed || facts.isLanded(input.terminal) || !facts.isLanded(input.reference))
        return false;
    return std::none_of(facts.circuit().inputs.begin(), facts.circuit().inputs.end(), [&](const DryInput& other) {
        return facts.ask.netOf(other.reference) == facts.ask.netOf(input.reference) && facts.isLanded(other.terminal);
    });
}

// A door operator's loop that must be closed watches for people in its way.
bool guardsPeople(const Facts& facts, const DryInput& input)
{
    const Kind* kind = kindOf(facts.job, facts.deviceOf(input.origin));
    return input.mustBeClosed && kind && kind->family == "operator";
}

} // namespace

std::vector<Finding> inputsThatAre(Answer wanted, const Facts& facts, std::string_view rule, const Text& why, const Text& remedy)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number) {
        const DryInput& input = facts.circuit().inputs[number];
        const bool landed = facts.isLanded(input.terminal);
        if (!landed && !(wanted == Answer::Never && (input.mustBeClosed || isHalfLanded(facts, input))))
            continue;
        const Verdict& verdict = facts.operated(number);
        if (verdict.answer == Answer::Unknown && wanted == Answer::Never)
            findings.push_back(notProved(rule, spotOf(facts, input.terminal)));
        if (verdict.answer != wanted || (wanted == Answer::Never && hasWrongLoop(facts, number)))
            continue;
        Finding finding;
        finding.rule = rule;
        finding.at = {spotOf(facts, input.terminal)};
        if (wanted == Answer::Always && guardsPeople(facts, input))
            finding.severity = Severity::Danger;
        finding.why = {why, {{"input", nameOf(facts, input.terminal)}, {"reference", nameOf(facts, input.reference)}}};
        finding.remedy = {remedy, finding.why.arguments};
        if (wanted == Answer::Always) {
            finding.path = wayBetween(facts, {}, input.terminal, input.reference, false);
            Remedies remedies(facts);
            remedies.breakWay(finding.path);
            finding.remedies = remedies.taken();
        }
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace doorloom
