#include "check/check.h"
#include "check/findings.h"
#include "check/findingtext.h"
#include "check/jobparts.h"

#include <algorithm>
#include <tuple>

namespace doorloom {

namespace {

std::vector<Finding> rawFindings(const Job& job, std::uint64_t budget, Coverage* coverage = nullptr)
{
    const Facts facts(job, budget);
    std::vector<Finding> all;
    for (const Check* check : allChecks())
        for (Finding& finding : check->run(facts))
            all.push_back(std::move(finding));
    if (coverage)
        coverage->add(facts.ask.coverage());
    return all;
}

// Is it still there, and no milder? Two feeds may shrink to a hint at their common return.
bool isAmong(const Finding& finding, const std::vector<Finding>& findings)
{
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& each) {
        return each.rule == finding.rule && each.at == finding.at && each.severity >= finding.severity;
    });
}

double badness(const std::vector<Finding>& findings)
{
    double sum = 0;
    for (const Finding& finding : findings)
        sum += finding.severity == Severity::Danger ? 1000 : finding.severity == Severity::Fault ? 100
               : finding.severity == Severity::Doubt ? 10 : 1;
    return sum;
}

// How many remedies may be tried on a part: each costs a check of all of it.
std::size_t mostTrials(const Job& job) { return std::max<std::size_t>(8, 20'000 / std::max<std::size_t>(1, job.devices.size())); }

// Judges one part: finds the best remedy of each finding, and what else that remedy would mend.
class PartJudge {
public:
    PartJudge(const Job& job, std::uint64_t budget, Coverage& coverage)
        : job_(job), budget_(budget), findings_(rawFindings(job, budget, &coverage)), after_(findings_.size()),
          isLine_(findings_.size(), false), trialsLeft_(mostTrials(job))
    {
    }

    std::vector<Finding> judged()
    {
        for (std::size_t i = 0; i < findings_.size(); ++i)
            tryRemedies(i);
        for (std::size_t i = 0; i < findings_.size(); ++i)
            if (!isLine_[i] && after_[i])
                takeLines(i);
        std::vector<Finding> speaking;
        for (std::size_t i = 0; i < findings_.size(); ++i)
            if (!isLine_[i])
                speaking.push_back(std::move(findings_[i]));
        return speaking;
    }

private:
    // The first of those after which the least is wrong.
    void tryRemedies(std::size_t i)
    {
        Finding& finding = findings_[i];
        if (finding.remedies.empty())
            return;
        finding.remedy = finding.remedies.front().words;
        double least = 0;
        for (const Remedy& remedy : finding.remedies) {
            if (trialsLeft_ == 0)
                return;
            --trialsLeft_;
            Job mended = job_;
            if (!applyChange(mended, remedy.change).ok())
                continue;
            std::vector<Finding> after = rawFindings(mended, std::min(budget_, windowBudget));
            const double left = badness(after) + (isAmong(finding, after) ? 1e6 : 0);
            if (after_[i] && left >= least)
                continue;
            least = left;
            finding.remedy = remedy.words;
            after_[i] = std::move(after);
        }
        if (after_[i] && isAmong(finding, *after_[i]))
            after_[i].reset(); // none of them mends it
    }

    void takeLines(std::size_t head)
    {
        for (std::size_t i = 0; i < findings_.size(); ++i) {
            if (i == head || isLine_[i] || findings_[i].undecided || isAmong(findings_[i], *after_[head]))
                continue;
            isLine_[i] = true;
            findings_[head].severity = std::max(findings_[head].severity, findings_[i].severity);
            std::vector<Finding> own = std::move(findings_[i].lines);
            findings_[i].lines.clear();
            findings_[head].lines.push_back(std::move(findings_[i]));
            for (Finding& line : own)
                findings_[head].lines.push_back(std::move(line));
        }
    }

    const Job& job_;
    std::uint64_t budget_;
    std::vector<Finding> findings_;
    std::vector<std::optional<std::vector<Finding>>> after_; // the best remedy of each
    std::vector<bool> isLine_;
    std::size_t trialsLeft_;
};

} // namespace

CheckResult checkJob(const Job& job, std::uint64_t budget)
{
    CheckResult result;
    for (const Job& part : partsOf(job))
        for (Finding& finding : PartJudge(part, budget, result.coverage).judged()) {
            result.everyQuestionAnswered = result.everyQuestionAnswered && !finding.undecided;
            finding.remedies.clear();
            result.findings.push_back(std::move(finding));
        }
    std::stable_sort(result.findings.begin(), result.findings.end(),
                     [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
    return result;
}

std::vector<Finding> findingsOf(const Job& job, std::uint64_t budget) { return checkJob(job, budget).findings; }

} // namespace doorloom
