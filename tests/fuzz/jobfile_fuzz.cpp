#include "edit/change.h"
#include "file/jobfile.h"
#include "fuzz/insist.h"

// Any bytes are read or refused in words; what is read keeps every promise and reads back equal.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    using namespace doorloom;
    const Result<Job> job = readJob(textOf(data, size), "fuzz.doorjob");
    if (!job.ok()) {
        insistOnWords(job.problem());
        return 0;
    }
    insist(verifyJob(job.value()).empty(), "what was read keeps every promise of the model");
    const std::string text = jobText(job.value());
    const Result<Job> back = readJob(text, "fuzz.doorjob");
    insist(back.ok(), "what was written is read again");
    insist(back.value() == job.value() && back.value().nextNumber == job.value().nextNumber,
           "what is read again is equal");
    insist(jobText(back.value()) == text, "equal jobs give equal bytes");
    return 0;
}
