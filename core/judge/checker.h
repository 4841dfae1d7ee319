#pragma once

#include "judge/division.h"
#include "judge/findings.h"
#include "judge/together.h"
#include "model/job.h"

#include <functional>
#include <map>
#include <memory>
#include <optional>

namespace doorloom {

// Judges a job again and again while it is edited: what is judged together and is as it was keeps its findings. The same
// findings as checkJob's, in the same order. For one thread at a time.
// Owns: the parts of the last job, and what was found in them
class Checker {
public:
    // Pieces of more devices than this are divided at their supplies' rails.
    static constexpr std::size_t mostWhole = 40;

    explicit Checker(std::uint64_t budget = windowBudget, std::size_t largestWhole = mostWhole)
        : budget_(budget), largestWhole_(largestWhole)
    {
    }

    // Cost: nothing where the wiring is as it was; else linear in the job, and what differs is judged.
    CheckResult check(const Job& job);
    // The same, given up between two parts once nobody wants it any more: nothing then, but what was judged is kept.
    std::optional<CheckResult> checkWhile(const Job& job, const std::function<bool()>& isWanted);
    std::size_t partsJudged() const { return partsJudged_; } // by the last check

private:
    struct Part {
        std::shared_ptr<const Job> job;
        Division rows; // of that job
        std::vector<Finding> findings;
        Coverage coverage;
        PartLoad load;
    };
    using Parts = std::map<std::uint32_t, Part>; // by the division's key

    bool isAsBefore(const Job& job) const;
    Part partFor(Division rows, const std::shared_ptr<const Job>& job);
    void giveUp(Parts judged);
    void addFoundTogether(std::vector<Finding>& findings) const;

    std::uint64_t budget_;
    std::size_t largestWhole_;
    Parts parts_, before_; // those of the last check, and what it replaced: an undo brings it back
    std::shared_ptr<const Job> last_;
    std::optional<CheckResult> result_; // of the last job, where its check was not given up
    std::size_t partsJudged_ = 0;
};

} // namespace doorloom
