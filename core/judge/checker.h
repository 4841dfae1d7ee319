#pragma once

#include "judge/findings.h"
#include "model/job.h"

#include <functional>
#include <map>
#include <optional>

namespace doorloom {

// Judges a job again and again while it is edited: parts that hang together and are as they were keep their
// findings. The same findings as checkJob's, in the same order. For one thread at a time.
// Owns: the parts of the last job, and what was found in them
class Checker {
public:
    explicit Checker(std::uint64_t budget = windowBudget) : budget_(budget) {}

    // Cost: parts that differ from the last job's are judged; comparing the others is linear in the job.
    CheckResult check(const Job& job);
    // The same, given up between two parts once nobody wants it any more: nothing then, but what was judged is kept.
    std::optional<CheckResult> checkWhile(const Job& job, const std::function<bool()>& isWanted);
    std::size_t partsJudged() const { return partsJudged_; } // by the last check

private:
    struct Part {
        Job job;
        std::vector<Finding> findings;
        Coverage coverage;
    };

    std::uint64_t budget_;
    std::map<std::uint32_t, Part> parts_; // by the lowest number among a part's rows
    std::size_t partsJudged_ = 0;
};

} // namespace doorloom
