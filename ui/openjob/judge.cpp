#include "file/jobfile.h"
#include "judge/checker.h"
#include "openjob/openjob.h"

#include <memory>

namespace doorloom {

Judge windowJudge()
{
    return [checker = std::make_shared<Checker>(windowBudget)](
               const Job& job, const IsWanted& isWanted) -> std::optional<Judged> {
        std::optional<CheckResult> check = checker->checkWhile(job, isWanted);
        if (!check || !isWanted())
            return std::nullopt;
        return Judged{*std::move(check), scheduleOf(job, digestOf(job)), std::make_shared<const TerminalReadings>(job),
                      std::make_shared<const LocksInSituations>(job)};
    };
}

} // namespace doorloom
