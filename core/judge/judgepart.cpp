#include "judge/judgepart.h"

#include "check/check.h"
#include "judge/findingtext.h"

#include <algorithm>
#include <deque>
#include <iterator>
#include <optional>

namespace doorloom {

namespace {

// By tag, not by id: of two with one root, the same speaks however the job was drawn.
void addSorted(std::vector<Finding>& all, std::vector<Finding> found, const Job& job)
{
    std::stable_sort(found.begin(), found.end(),
                     [&](const Finding& a, const Finding& b) { return atText(job, a) < atText(job, b); });
    std::move(found.begin(), found.end(), std::back_inserter(all));
}

enum class With { Figures, VerdictsAlone };

std::vector<Finding> rawFindings(const Job& job, std::uint64_t budget, With with, JudgedPart* judged = nullptr)
{
    const Facts facts(job, budget, judged ? Telling::Reasons : Telling::Places);
    std::vector<Finding> all;
    for (const Check* check : allChecks())
        if (check->run && (with == With::Figures || !check->readsFigures))
            addSorted(all, check->run(facts), job);
    if (judged) {
        judged->coverage.add(facts.ask.coverage());
        judged->coverage.add(facts.figures().coverage);
        judged->load = loadOf(facts);
    }
    return all;
}

double weight(Severity severity)
{
    return severity == Severity::Danger  ? 1000
           : severity == Severity::Fault ? 100
           : severity == Severity::Doubt ? 10
                                         : 1;
}

// What a finding is known by while remedies are tried. A lock's situations are told apart: each may have
// another root.
struct Known {
    std::string_view rule;
    std::vector<Spot> at;
    std::vector<Situation> situation;
    Severity severity;
};

Known knownBy(const Finding& finding)
{
    return {finding.rule, finding.at,
            finding.throws.empty() ? std::vector<Situation>() : finding.throws.front().situation,
            finding.severity};
}

// How a part stands after a remedy.
struct Outcome {
    std::vector<Known> left;
    double badness = 0;

    // Is it still there, and no milder? Two feeds may shrink to a hint at their common return.
    bool leaves(const Known& known) const
    {
        return std::any_of(left.begin(), left.end(), [&](const Known& each) {
            return each.rule == known.rule && each.at == known.at && each.situation == known.situation &&
                   each.severity >= known.severity;
        });
    }
};

// How many remedies may be tried on a part: each costs a check of all of it.
std::size_t mostTrials(const Job& job)
{
    return std::max<std::size_t>(8, 20'000 / std::max<std::size_t>(1, job.devices.size()));
}

constexpr std::size_t mostRemedies = 8; // that are named
constexpr Text either = {.en = "{first} Or: {others}", .es = "{first} O bien: {others}"};
constexpr Text noSingleEdit = {
    .en = "No single edit mends this: follow its path and draw it anew.",
    .es = "Ninguna modificación sola lo corrige: siga su camino y dibújelo de nuevo."};

Message oneOf(const std::vector<Remedy>& remedies)
{
    Message words = remedies.back().words;
    for (auto other = remedies.rbegin() + 1; other != remedies.rend(); ++other)
        words = {either, {{"first", std::vector<Message>{other->words}}, {"others", std::vector<Message>{words}}}};
    return words;
}

// Judges one part: finds the best remedy of each finding, and what else that remedy would mend.
class PartJudge {
public:
    PartJudge(const Job& job, std::uint64_t budget, JudgedPart& judged)
        : job_(job), budget_(budget), findings_(rawFindings(job, budget, With::Figures, &judged)), best_(findings_.size()),
          isLine_(findings_.size(), false), isTried_(findings_.size(), false), trialsLeft_(mostTrials(job))
    {
        for (const Finding& finding : findings_) {
            known_.push_back(knownBy(finding));
            badness_ += weight(finding.severity);
            if (checkCalled(finding.rule)->readsFigures)
                trialsWith_ = With::Figures; // otherwise no trial pays for them
        }
    }

    std::vector<Finding> judged()
    {
        for (std::size_t i = 0; i < findings_.size(); ++i)
            if (!isLine_[i] && (best_[i] = bestOutcome(i)))
                takeLines(i);
        takeWhatAllMend();
        std::vector<Finding> speaking;
        for (std::size_t i = 0; i < findings_.size(); ++i)
            if (!isLine_[i])
                addSpeaking(speaking, std::move(findings_[i]));
        return speaking;
    }

private:
    // Nothing: the change is refused, or no trial is left.
    const Outcome* tried(const Change& change)
    {
        for (const auto& [before, outcome] : trials_)
            if (before == change)
                return outcome ? &*outcome : nullptr;
        if (trialsLeft_ == 0)
            return nullptr;
        --trialsLeft_;
        Job mended = job_;
        std::optional<Outcome> outcome;
        if (applyChange(mended, change).ok())
            outcome = outcomeOf(mended);
        trials_.emplace_back(change, std::move(outcome));
        return trials_.back().second ? &*trials_.back().second : nullptr;
    }

    // After a remedy the finding is gone and less is wrong than before; of those the ones that leave the
    // least wrong. The finding keeps them, and its words name them.
    const Outcome* bestOutcome(std::size_t i)
    {
        Finding& finding = findings_[i];
        isTried_[i] = true;
        if (finding.remedies.empty())
            return nullptr;
        const Outcome* best = nullptr;
        std::vector<Remedy> mending;
        for (const Remedy& remedy : finding.remedies) {
            const Outcome* outcome = tried(remedy.change);
            if (!outcome || outcome->leaves(known_[i]) || outcome->badness >= badness_ ||
                (best && outcome->badness > best->badness))
                continue;
            if (best && outcome->badness < best->badness)
                mending.clear();
            if (mending.empty())
                best = outcome;
            // Two edits may be the same to whoever makes them.
            if (std::none_of(mending.begin(), mending.end(), [&](const Remedy& each) { return each.words == remedy.words; }))
                mending.push_back(remedy);
        }
        mending.resize(std::min(mending.size(), mostRemedies));
        if (!mending.empty())
            finding.remedy = oneOf(mending);
        else
            finding.remedy = trialsLeft_ > 0 ? Message{noSingleEdit} : finding.remedies.front().words;
        finding.remedies = std::move(mending);
        return best;
    }

    void takeLines(std::size_t head)
    {
        for (std::size_t i = 0; i < findings_.size(); ++i)
            if (i != head && !isLine_[i] && !findings_[i].undecided && !best_[head]->leaves(known_[i]))
                makeLine(head, i);
    }

    void makeLine(std::size_t head, std::size_t line)
    {
        isLine_[line] = true;
        if (!isTried_[line]) { // what mends the head mends it, and leaves the least
            findings_[line].remedies = findings_[head].remedies;
            findings_[line].remedy = findings_[head].remedy;
        }
        addLine(findings_[head], std::move(findings_[line]));
    }

    // What no single remedy mends, and all of them together do, has several roots: it goes with the first.
    void takeWhatAllMend()
    {
        std::optional<std::size_t> first;
        Job mended = job_;
        for (std::size_t i = 0; i < findings_.size(); ++i)
            if (!isLine_[i] && best_[i]) {
                first = first.value_or(i);
                // Two remedies may be one edit: the second is refused.
                (void)applyChange(mended, findings_[i].remedies.front().change);
            }
        const bool any = first && std::any_of(findings_.begin(), findings_.end(), [&](const Finding& each) {
                             const auto i = static_cast<std::size_t>(&each - findings_.data());
                             return !isLine_[i] && !best_[i] && !each.undecided;
                         });
        if (!any)
            return;
        const Outcome outcome = outcomeOf(mended);
        for (std::size_t i = 0; i < findings_.size(); ++i)
            if (!isLine_[i] && !best_[i] && !findings_[i].undecided && !outcome.leaves(known_[i]))
                makeLine(*first, i);
    }

    Outcome outcomeOf(const Job& job) const
    {
        Outcome outcome;
        for (const Finding& finding : rawFindings(job, std::min(budget_, windowBudget), trialsWith_)) {
            outcome.left.push_back(knownBy(finding));
            outcome.badness += weight(finding.severity);
        }
        return outcome;
    }

    static void addLine(Finding& head, Finding line)
    {
        head.severity = std::max(head.severity, line.severity);
        std::vector<Finding> own = std::move(line.lines);
        line.lines.clear();
        head.lines.push_back(std::move(line));
        for (Finding& each : own)
            head.lines.push_back(std::move(each));
    }

    // All situations of one lock are one finding, the worst first.
    static void addSpeaking(std::vector<Finding>& speaking, Finding finding)
    {
        const bool ofASituation = !knownBy(finding).situation.empty();
        for (Finding& each : speaking)
            if (ofASituation && each.rule == finding.rule && each.at == finding.at)
                return addLine(each, std::move(finding));
        speaking.push_back(std::move(finding));
    }

    const Job& job_;
    std::uint64_t budget_;
    std::vector<Finding> findings_;
    std::vector<Known> known_;         // of each, as it was found
    std::vector<const Outcome*> best_; // after the best remedy of each
    std::vector<bool> isLine_, isTried_;
    std::deque<std::pair<Change, std::optional<Outcome>>> trials_;
    std::size_t trialsLeft_;
    With trialsWith_ = With::VerdictsAlone;
    double badness_ = 0; // of all findings together
};

} // namespace

JudgedPart judgePart(const Job& part, std::uint64_t budget)
{
    JudgedPart judged;
    judged.findings = PartJudge(part, budget, judged).judged();
    return judged;
}

std::vector<Finding> judgeWhole(const Job& job)
{
    std::vector<Finding> all;
    for (const Check* check : allChecks())
        if (check->runOnJob)
            addSorted(all, check->runOnJob(job), job);
    return all;
}

} // namespace doorloom
