#include "file/jobfile.h"
#include "papers/ohmsreport.h"
#include "solve/namedposition.h"
#include "verbs/verb.h"

namespace doorloom {
namespace {

// "A,B"
Result<std::vector<Landing>> landingsIn(const Job& job, std::string_view text)
{
    std::vector<Landing> all;
    while (!text.empty()) {
        const auto comma = std::min(text.find(','), text.size());
        const Result<Landing> one = landingNamed(job, text.substr(0, comma));
        if (!one.ok())
            return one.problem();
        all.push_back(one.value());
        text.remove_prefix(std::min(comma + 1, text.size()));
    }
    return all;
}

Reply runOhms(const Request& request)
{
    const Result<Job> job = readJobFile(request.words.front());
    if (!job.ok())
        return refusal(job.problem(), request.language);
    const auto optionOr = [&](std::string_view name) { return request.find(name) ? *request.find(name) : std::string(); };
    const Result<Landing> first = landingNamed(job.value(), request.words[1]), second = landingNamed(job.value(), request.words[2]);
    for (const auto* each : {&first, &second})
        if (!each->ok())
            return refusal(each->problem(), request.language);
    const auto lifted = landingsIn(job.value(), optionOr("--lift"));
    if (!lifted.ok())
        return refusal(lifted.problem(), request.language);
    const Netlist net(job.value());
    const auto throws = givenThrows(job.value(), net, optionOr("--position"));
    if (!throws.ok())
        return refusal(throws.problem(), request.language);
    const OhmsReport report = ohmsReport(job.value(), net, throws.value(), {first.value(), second.value(), lifted.value()});
    return {.exit = Exit::Fine,
            .out = request.find("--json") ? ohmsJson(job.value(), report) : ohmsText(job.value(), report, request.words.front(), request.language),
            .err = {}};
}

constexpr VerbOption options[] = {{.name = "--position", .value = "KS1=on,…"}, {.name = "--lift", .value = "T,…"}, {.name = "--json", .value = {}}};

} // namespace

extern const Verb ohmsVerb;
const Verb ohmsVerb = {
    .name = "ohms",
    .words = "FILE A B",
    .fewestWords = 3,
    .mostWords = 3,
    .options = options,
    .purpose = {.en = "Says what an ohmmeter reads between two terminals with all power off, and what to lift for it.",
                .es = "Dice qué marca un óhmetro entre dos bornes con todo sin tensión, y qué levantar para ello."},
    .run = runOhms,
};

} // namespace doorloom
