#include "file/jobfile.h"
#include "sheet/tidy.h"
#include "verbs/verb.h"

#include <algorithm>

namespace doorloom {
namespace {

constexpr Text placed = {.en = "{count} devices, splices and notes have another place.",
                         .es = "{count} dispositivos, empalmes y notas tienen otro lugar."};
constexpr Text tidyAlready = {.en = "Every sheet is tidy already.", .es = "Todas las hojas están ordenadas ya."};

bool isPlacing(const Step& step)
{
    return std::holds_alternative<Put<Placement>>(step) || std::holds_alternative<Put<Note>>(step);
}

// Writes the file even where nothing is moved: whoever asks for a copy gets one.
Reply runTidy(const Request& request)
{
    const std::string& file = request.words.front();
    const std::string* to = request.find("--to");
    Result<Job> job = readJobFile(file);
    if (!job.ok())
        return refusal(job.problem(), request.language);
    const Result<Change> change = tidySheets(job.value());
    if (!change.ok())
        return refusal(change.problem(), request.language);
    if (const Result<Change> made = applyChange(job.value(), change.value()); !made.ok())
        return refusal(made.problem(), request.language);
    const std::vector<Step>& steps = change.value().steps;
    if (steps.empty() && !to)
        return {.exit = Exit::Fine, .out = inWords(Message{tidyAlready}, request.language) + "\n", .err = {}};
    const std::string& out = to ? *to : file;
    if (const Result<Done> saved = saveJobFile(job.value(), out); !saved.ok())
        return refusal(saved.problem(), request.language);
    Reply reply = wrote(out, request.language);
    const auto count = std::count_if(steps.begin(), steps.end(), isPlacing);
    const Message words = steps.empty() ? Message{tidyAlready} : Message{placed, {{"count", std::to_string(count)}}};
    reply.out = inWords(words, request.language) + "\n" + reply.out;
    return reply;
}

constexpr VerbOption options[] = {{.name = "--to", .value = "OUT"}};

} // namespace

extern const Verb tidyVerb;
const Verb tidyVerb = {
    .name = "tidy",
    .words = "FILE",
    .fewestWords = 1,
    .mostWords = 1,
    .options = options,
    .purpose = {.en = "Sets the devices of every sheet out by box and door, in the file or in a copy of it.",
                .es = "Ordena los dispositivos de cada hoja por caja y puerta, en el archivo o en una copia."},
    .run = runTidy,
};

} // namespace doorloom
