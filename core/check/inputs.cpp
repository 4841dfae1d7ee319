#include "check/inputs.h"

#include "check/loops.h"
#include "check/remedies.h"
#include "check/tell.h"

namespace doorloom {

std::vector<Finding> inputsThatAre(Answer wanted, const Facts& facts, std::string_view rule, const Text& why, const Text& remedy)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number) {
        const DryInput& input = facts.circuit().inputs[number];
        const bool landed = facts.isLanded(input.terminal);
        if (!landed && !(input.mustBeClosed && wanted == Answer::Never))
            continue;
        const Verdict& verdict = facts.operated(number);
        if (verdict.answer == Answer::Unknown && wanted == Answer::Never)
            findings.push_back(notProved(rule, spotOf(facts, input.terminal)));
        if (verdict.answer != wanted || (wanted == Answer::Never && hasWrongLoop(facts, number)))
            continue;
        Finding finding;
        finding.rule = rule;
        finding.at = {spotOf(facts, input.terminal)};
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
