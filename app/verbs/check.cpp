#include "file/jobfile.h"
#include "judge/report.h"
#include "verbs/verb.h"

namespace doorloom {
namespace {

Exit exitFor(Outcome outcome)
{
    switch (outcome) {
    case Outcome::Fine:
        return Exit::Fine;
    case Outcome::Found:
        return Exit::Found;
    case Outcome::Unanswered:
        break;
    }
    return Exit::Unanswered;
}

Reply runCheck(const Request& request)
{
    const std::string& file = request.words.front();
    const Result<Job> job = readJobFile(file);
    if (!job.ok())
        return refusal(job.problem(), request.language);
    const CheckResult result = checkJob(job.value());
    return {.exit = exitFor(outcomeOf(job.value(), result)),
            .out = request.find("--json") ? reportJson(job.value(), result, request.language)
                                          : reportText(job.value(), result, file, request.language),
            .err = {}};
}

constexpr VerbOption options[] = {{.name = "--json", .value = {}}};

} // namespace

extern const Verb checkVerb;
const Verb checkVerb = {
    .name = "check",
    .words = "FILE",
    .fewestWords = 1,
    .mostWords = 1,
    .options = options,
    .purpose = {.en = "Judges a job in every position that can happen.",
                .es = "Juzga un trabajo en todas las posiciones que pueden darse."},
    .run = runCheck,
};

} // namespace doorloom
