#include "judge/checker.h"

#include "judge/judgepart.h"
#include "judge/divider.h"
#include "judge/mergeparts.h"
#include "solve/gauge.h"

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

// Rows that a remedy would add are numbered from the job's counter, which may have risen since.
void moveRemedies(std::vector<Finding>& findings, std::uint32_t from, std::uint32_t to)
{
    for (Finding& finding : findings) {
        for (Remedy& remedy : finding.remedies)
            for (Step& step : remedy.change.steps)
                if (auto* put = std::get_if<Put<Conductor>>(&step); put && put->id.number >= from)
                    put->after->id = put->id = {put->id.number - from + to};
        moveRemedies(finding.lines, from, to);
    }
}

double sharedOhms(const Division& rows, const Job& job)
{
    double sum = 0;
    for (const Conductor* row : rows.conductors)
        if (rows.shares(row->id.number))
            sum += ohmsOf(gaugeOf(job, *row), lengthOf(job, *row)).value_or(Ohms{0}).value;
    return sum;
}

bool holdsLoadsOfOthers(const Division& rows, const Job& job)
{
    return std::any_of(rows.devices.begin(), rows.devices.end(), [&](const Device* device) {
        const Kind* kind = rows.shares(device->id.number) && !rows.onlyCarries(device->id) ? kindOf(job, device->id) : nullptr;
        return kind && std::any_of(kind->parts.begin(), kind->parts.end(), [](const Part& part) { return std::holds_alternative<LoadPart>(part.body); });
    });
}

template <class Row> bool sameTable(const Job& one, const Job& other) { return tableOf<Row>(one) == tableOf<Row>(other); }

template <class Row> bool sameRow(const Job& one, const Job& other, Id<Row> id)
{
    const Row *before = tableOf<Row>(one).find(id), *after = tableOf<Row>(other).find(id);
    return before && after ? *before == *after : before == after;
}

// What these rows' conductors are cores of, and where their devices are.
bool sameAround(const Division& rows, const Job& one, const Job& other)
{
    if (sameTable<Cable>(one, other) && sameTable<CableType>(one, other) && sameTable<Place>(one, other))
        return true;
    const auto isSameCopper = [&](const Conductor* row) {
        const Cable* cable = one.cables.find(row->cable);
        return sameRow(one, other, row->cable) && (!cable || sameRow(one, other, cable->type));
    };
    return std::all_of(rows.conductors.begin(), rows.conductors.end(), isSameCopper) &&
           std::all_of(rows.devices.begin(), rows.devices.end(), [&](const Device* row) { return sameRow(one, other, row->place); });
}

} // namespace

CheckResult Checker::check(const Job& job)
{
    return *checkWhile(job, [] { return true; });
}

// Drawing, notes and the like are not wiring.
bool Checker::isAsBefore(const Job& job) const
{
    const Job& last = *last_;
    return sameTable<Device>(job, last) && sameTable<Conductor>(job, last) && sameTable<Splice>(job, last) &&
           sameTable<Operator>(job, last) && sameTable<Opening>(job, last) && sameTable<JobKind>(job, last) &&
           sameTable<Cable>(job, last) && sameTable<CableType>(job, last) && sameTable<Place>(job, last);
}

Checker::Part Checker::partFor(Division rows, const std::shared_ptr<const Job>& job)
{
    for (Parts* parts : {&parts_, &before_})
        if (const auto known = parts->find(rows.key); known != parts->end() && sameRows(known->second.rows, rows) &&
                                                      sameAround(rows, *known->second.job, *job)) {
            Part part = std::move(known->second);
            parts->erase(known);
            moveRemedies(part.findings, part.job->nextNumber, job->nextNumber);
            part.rows = std::move(rows);
            part.job = job;
            return part;
        }
    ++partsJudged_;
    const Job alone = jobOf(rows, *job);
    JudgedPart judged = judgePart(alone, budget_);
    judged.load.sharedOhms = sharedOhms(rows, *job);
    judged.load.holdsOthers = holdsLoadsOfOthers(rows, *job);
    return {job, std::move(rows), std::move(judged.findings), judged.coverage, std::move(judged.load)};
}

// What was judged takes the place of what it was judged anew for.
void Checker::giveUp(Parts judged)
{
    for (auto& [key, part] : judged)
        parts_.insert_or_assign(key, std::move(part));
    result_.reset();
}

// What a part alone says at the same spot is said in its place only where it is worse.
void Checker::addFoundTogether(std::vector<Finding>& findings) const
{
    std::vector<LoadedPart> loaded;
    for (const auto& [key, part] : parts_)
        loaded.push_back({&part.rows, &part.load});
    for (Finding& together : foundTogether(*last_, loaded, budget_)) {
        const auto alone = std::find_if(findings.begin(), findings.end(),
                                        [&](const Finding& each) { return each.rule == together.rule && each.at == together.at; });
        if (alone == findings.end())
            findings.push_back(std::move(together));
        else if (alone->severity < together.severity)
            *alone = std::move(together);
    }
}

std::optional<CheckResult> Checker::checkWhile(const Job& job, const std::function<bool()>& isWanted)
{
    partsJudged_ = 0;
    const auto kept = std::make_shared<const Job>(job);
    if (result_ && isAsBefore(job)) {
        moveRemedies(result_->findings, last_->nextNumber, job.nextNumber);
        last_ = kept;
        return result_;
    }
    last_ = kept;
    const Wiring wiring(*kept);
    Parts parts;
    for (Division& rows : divisionsOf(wiring, largestWhole_)) {
        if (!isWanted()) {
            giveUp(std::move(parts));
            return std::nullopt;
        }
        const std::uint32_t key = rows.key;
        parts.emplace(key, partFor(std::move(rows), kept));
    }
    before_ = std::exchange(parts_, std::move(parts));

    CheckResult result;
    std::vector<FoundIn> found;
    for (const auto& [key, part] : parts_) {
        result.coverage.add(part.coverage);
        found.push_back({&part.rows, &part.findings});
    }
    result.findings = mergedFindings(wiring, found, job.nextNumber);
    addFoundTogether(result.findings);
    for (Finding& finding : judgeWhole(job))
        result.findings.push_back(std::move(finding));
    result.everyQuestionAnswered = std::none_of(result.findings.begin(), result.findings.end(),
                                                [](const Finding& finding) { return finding.undecided; });
    std::stable_sort(result.findings.begin(), result.findings.end(),
                     [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
    result_ = result;
    return result;
}

CheckResult checkJob(const Job& job, std::uint64_t budget) { return Checker(budget).check(job); }

std::vector<Finding> findingsOf(const Job& job, std::uint64_t budget)
{
    return checkJob(job, budget).findings;
}

} // namespace doorloom
