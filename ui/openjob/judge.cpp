#include "file/jobfile.h"
#include "judge/checker.h"
#include "openjob/openjob.h"

#include <memory>

namespace doorloom {

Judge windowJudge()
{
    return [checker = std::make_shared<Checker>(windowBudget)](const Job& job) -> Judged {
        return {checker->check(job), scheduleOf(job, digestOf(job))};
    };
}

} // namespace doorloom
