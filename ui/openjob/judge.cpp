#include "file/jobfile.h"
#include "openjob/openjob.h"

namespace doorloom {

Judge windowJudge()
{
    return [](const Job& job) -> Judged {
        return {checkJob(job, windowBudget), scheduleOf(job, digestOf(job))};
    };
}

} // namespace doorloom
