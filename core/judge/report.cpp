#include "judge/report.h"

#include "judge/findingtext.h"

#include <algorithm>

namespace doorloom {

std::string throwsKey(const Job& job, const Finding& finding)
{
    std::string key;
    for (const std::vector<std::string>& witness : throwTexts(job, finding)) {
        std::string throws;
        for (const std::string& thrown : witness)
            throws += (throws.empty() ? "" : ", ") + thrown;
        key += (key.empty() ? "" : "; ") + throws;
    }
    return key;
}

const SetAside* setAsideFor(const Job& job, const Finding& finding)
{
    if (finding.severity == Severity::Danger)
        return nullptr;
    for (const SetAside& row : job.setAside)
        if (row.rule == finding.rule && row.at == atText(job, finding) &&
            row.throws == throwsKey(job, finding))
            return &row;
    return nullptr;
}

Outcome outcomeOf(const Job& job, const CheckResult& result)
{
    const auto counts = [&](const Finding& finding) {
        return finding.severity >= Severity::Fault && !finding.undecided && !setAsideFor(job, finding);
    };
    if (std::any_of(result.findings.begin(), result.findings.end(), counts))
        return Outcome::Found;
    return result.everyQuestionAnswered ? Outcome::Fine : Outcome::Unanswered;
}

} // namespace doorloom
