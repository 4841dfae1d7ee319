#include "judge/checker.h"

#include "judge/jobparts.h"
#include "judge/judgepart.h"

#include <algorithm>

namespace doorloom {

namespace {

// Rows that a remedy would add are numbered from the job's counter, which may have risen since.
void moveCounter(std::vector<Finding>& findings, std::uint32_t from, std::uint32_t to)
{
    for (Finding& finding : findings) {
        for (Remedy& remedy : finding.remedies)
            for (Step& step : remedy.change.steps)
                if (auto* put = std::get_if<Put<Conductor>>(&step); put && put->id.number >= from)
                    put->after->id = put->id = {put->id.number - from + to};
        moveCounter(finding.lines, from, to);
    }
}

std::uint32_t lowestNumber(const Job& part)
{
    std::uint32_t lowest = part.nextNumber;
    for (const auto number : {part.devices.empty() ? lowest : part.devices.begin()->id.number,
                              part.operators.empty() ? lowest : part.operators.begin()->id.number,
                              part.splices.empty() ? lowest : part.splices.begin()->id.number,
                              part.conductors.empty() ? lowest : part.conductors.begin()->id.number,
                              part.openings.empty() ? lowest : part.openings.begin()->id.number})
        lowest = std::min(lowest, number);
    return lowest;
}

} // namespace

CheckResult Checker::check(const Job& job)
{
    return *checkWhile(job, [] { return true; });
}

std::optional<CheckResult> Checker::checkWhile(const Job& job, const std::function<bool()>& isWanted)
{
    CheckResult result;
    std::map<std::uint32_t, Part> parts;
    partsJudged_ = 0;
    const auto add = [&](const std::vector<Finding>& findings) {
        for (const Finding& finding : findings)
            result.everyQuestionAnswered = result.everyQuestionAnswered && !finding.undecided;
        result.findings.insert(result.findings.end(), findings.begin(), findings.end());
    };
    for (Job& part : partsOf(job)) {
        if (!isWanted()) {
            parts_.merge(parts);
            return std::nullopt;
        }
        const std::uint32_t key = lowestNumber(part);
        auto known = parts_.extract(key);
        if (known.empty() || !(known.mapped().job == part)) {
            JudgedPart judged = judgePart(part, budget_);
            ++partsJudged_;
            known = {};
            parts.emplace(key, Part{std::move(part), std::move(judged.findings), judged.coverage});
        } else {
            moveCounter(known.mapped().findings, known.mapped().job.nextNumber, job.nextNumber);
            known.mapped().job.nextNumber = job.nextNumber;
            parts.insert(std::move(known));
        }
        result.coverage.add(parts.at(key).coverage);
        add(parts.at(key).findings);
    }
    parts_ = std::move(parts);
    add(judgeWhole(job));
    std::stable_sort(result.findings.begin(), result.findings.end(),
                     [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
    return result;
}

CheckResult checkJob(const Job& job, std::uint64_t budget) { return Checker(budget).check(job); }

std::vector<Finding> findingsOf(const Job& job, std::uint64_t budget)
{
    return checkJob(job, budget).findings;
}

} // namespace doorloom
