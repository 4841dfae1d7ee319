#include "edit/change.h"

#include "edit/lookups.h"
#include "edit/references.h"
#include "edit/rownames.h"
#include "edit/verifyrow.h"
#include "model/tags.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>

namespace doorloom {

namespace {

// How far the promises of other rows depend on what stands in a row: 1, its referrers; 2, theirs too.
template <class Row> constexpr int reach()
{
    if constexpr (std::is_same_v<Row, JobKind> || std::is_same_v<Row, CableType>)
        return 2;
    else if constexpr (std::is_same_v<Row, Device> || std::is_same_v<Row, Operator> ||
                       std::is_same_v<Row, Cable> || std::is_same_v<Row, Typical>)
        return 1;
    else
        return 0;
}

// ---- Writing

template <class Row> Put<Row> swapped(Job& job, const Put<Row>& put)
{
    auto& table = tableOf<Row>(job);
    followLookups(job, table.find(put.id), put.after ? &*put.after : nullptr);
    return {put.id, table.put(put.id, put.after)};
}

// Out: the change that puts everything back.
Change swapAll(Job& job, const Change& change)
{
    Change undo;
    undo.steps.reserve(change.steps.size());
    for (const Step& step : change.steps)
        std::visit([&](const auto& put) { undo.steps.emplace_back(swapped(job, put)); }, step);
    std::reverse(undo.steps.begin(), undo.steps.end());
    return undo;
}

void raiseCounter(Job& job, const Change& change)
{
    for (const Step& step : change.steps)
        std::visit(
            [&](const auto& put) {
                if (put.after)
                    job.nextNumber = std::max(job.nextNumber, put.id.number + 1);
            },
            step);
}

// ---- Judging

std::optional<Problem> badNumber(const Job& job, const Change& change)
{
    for (const Step& step : change.steps) {
        const auto [number, named] = std::visit(
            [](const auto& put) { return std::pair(put.id.number, !put.after || put.after->id == put.id); },
            step);
        if (named && number != 0 && number != std::numeric_limits<std::uint32_t>::max())
            continue;
        return problemAt({},
                         {.en = "A row can't be put under the number '{number}'.",
                          .es = "No se puede poner un elemento con el número '{number}'."},
                         {.en = "Use the row's own number: a new row takes {next} or higher.",
                          .es = "Use el número propio del elemento: uno nuevo toma {next} o mayor."},
                         {{"number", std::to_string(number)}, {"next", std::to_string(job.nextNumber)}});
    }
    return std::nullopt;
}

// Where the rows are that must be judged again. Each number once, in rising order.
struct Judged {
    std::vector<std::uint32_t> numbers;

    void addReferrers(const Job& job, std::uint32_t number, int depth)
    {
        if (depth == 0)
            return;
        for (std::uint32_t referrer : referrersOf(job, number)) {
            numbers.push_back(referrer);
            addReferrers(job, referrer, depth - 1);
        }
    }
    void sort()
    {
        std::sort(numbers.begin(), numbers.end());
        numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    }
};

// In: the job after the change, and a step of its undoing: it has the row as it was.
template <class Row> void addJudged(const Job& job, const Put<Row>& undo, Judged& judged)
{
    const bool isThere = tableOf<Row>(job).find(undo.id) != nullptr;
    if (isThere)
        judged.numbers.push_back(undo.id.number);
    if (!isThere || undo.after)
        judged.addReferrers(job, undo.id.number, isThere ? reach<Row>() : 1);
}

template <class Row> std::optional<Problem> stillInUse(const Job& job, const Put<Row>& undo)
{
    const auto users = referrersOf(job, undo.id.number);
    if (!undo.after || users.empty() || tablesWith(job, undo.id.number) > 0)
        return std::nullopt;
    const std::string name = nameOfRow(job, *undo.after);
    Gaps gaps = {{"noun", nounOf<Row>()}, {"name", name}};
    visitRow(job, users.front(), [&]<class User>(const User& user) {
        gaps.push_back({"userNoun", nounOf<User>()});
        gaps.push_back({"user", nameOfRow(job, user)});
    });
    return problemAt(name,
                     {.en = "The {noun} '{name}' is still in use by the {userNoun} '{user}'.",
                      .es = "{noun} '{name}': todavía en uso por {userNoun} '{user}'."},
                     {.en = "Free the {userNoun} '{user}' from it first, or take both away together.",
                      .es = "Libere antes {userNoun} '{user}' o quite ambos a la vez."},
                     std::move(gaps));
}

bool isTagTwice(const Job& job, const Device& device)
{
    const TagBucket* bucket = job.deviceTags.find(bucketOfTag(device.tag));
    return bucket && std::count_if(bucket->tags.begin(), bucket->tags.end(),
                                   [&](const auto& entry) { return entry.first == device.tag; }) > 1;
}

bool isCoreTwice(const Job& job, const Conductor& conductor)
{
    if (conductor.make != ConductorMake::Core)
        return false;
    const std::vector<const Conductor*> cores = coresOf(job, conductor.cable);
    return std::count_if(cores.begin(), cores.end(), [&](const Conductor* each) {
               return each->cable == conductor.cable && each->core == conductor.core;
           }) > 1;
}

void verifyNeighbours(const Job& job, const JobInfo&, Problems& problems)
{
    if (job.info.size() > 1)
        problems.push_back(secondTitleBlock(job));
}

void verifyNeighbours(const Job& job, const Device& device, Problems& problems)
{
    if (isTagTwice(job, device))
        problems.push_back(tagUsedTwice(device));
}

void verifyNeighbours(const Job& job, const Conductor& conductor, Problems& problems)
{
    if (isCoreTwice(job, conductor))
        problems.push_back(coreUsedTwice(job, conductor));
}

template <class Row> void verifyNeighbours(const Job&, const Row&, Problems&) {}

std::optional<Problem> judgedRow(const Job& job, std::uint32_t number)
{
    Problems problems;
    const int tables = visitRow(job, number, [&](const auto& row) {
        verifyRow(job, row, problems);
        verifyNeighbours(job, row, problems);
    });
    if (tables > 1)
        return numberUsedTwice(job, number);
    return problems.empty() ? std::nullopt : std::optional(std::move(problems.front()));
}

// In: the job after the change, and its undoing. Out: `row` too, when it is one row's promise.
std::optional<Problem> brokenPromise(const Job& job, const Change& undo, std::uint32_t& row)
{
    Judged judged;
    for (const Step& step : undo.steps) {
        if (auto problem = std::visit([&](const auto& put) { return stillInUse(job, put); }, step))
            return problem;
        std::visit([&](const auto& put) { addJudged(job, put, judged); }, step);
    }
    judged.sort();
    for (std::uint32_t number : judged.numbers)
        if (auto problem = judgedRow(job, number)) {
            row = number;
            return problem;
        }
    return std::nullopt;
}

} // namespace

Result<Change> applyChange(Job& job, const Change& change)
{
    std::uint32_t row = 0;
    return applyChange(job, change, row);
}

Result<Change> applyChange(Job& job, const Change& change, std::uint32_t& refusedRow)
{
    refusedRow = 0;
    if (auto problem = badNumber(job, change))
        return *std::move(problem);
    const std::uint32_t counter = job.nextNumber;
    Change undo = swapAll(job, change);
    raiseCounter(job, change);
    if (auto problem = brokenPromise(job, undo, refusedRow)) {
        swapAll(job, undo);
        job.nextNumber = counter;
        return *std::move(problem);
    }
    return undo;
}

Change joined(Change first, Change second)
{
    first.steps.insert(first.steps.end(), std::make_move_iterator(second.steps.begin()),
                       std::make_move_iterator(second.steps.end()));
    return first;
}

} // namespace doorloom
