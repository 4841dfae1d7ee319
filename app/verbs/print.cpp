#include "file/jobfile.h"
#include "papers/papers.h"
#include "print/paperapplication.h"
#include "print/writepaper.h"
#include "verbs/verb.h"

#include <QGuiApplication>

#include <filesystem>

namespace doorloom {
namespace {

constexpr Text noPaper = {.en = "There is no paper '{paper}'.", .es = "No existe el papel '{paper}'."};
constexpr Text papersThere = {.en = "Use one of: {papers}.", .es = "Use uno de: {papers}."};
bool drawsPages(const std::string& file)
{
    return std::filesystem::path(file).extension() == ".pdf";
}

Reply runPrint(const Request& request)
{
    const std::string& name = *request.find("--paper");
    const std::string& out = *request.find("--to");
    const Paper* paper = paperNamed(name);
    if (!paper)
        return refusal({.what = {noPaper, {{"paper", name}}},
                        .where = "--paper",
                        .remedy = {papersThere, {{"papers", namesOfPapers()}}}},
                       request.language);
    const Result<Job> job = readJobFile(request.words.front());
    if (!job.ok())
        return refusal(job.problem(), request.language);
    const PaperSetup setup{.language = request.languageIsAsked ? request.language : languageOf(job.value()),
                           .digest = digestOf(job.value())};
    const auto application = drawsPages(out) ? paperApplication() : nullptr;
    const PageSetup page{.language = setup.language, .fontFolder = DOORLOOM_RESOURCES "/font"};
    if (const Result<Done> written = writePaper(*paper, job.value(), setup, page, out); !written.ok())
        return refusal(written.problem(), request.language);
    return wrote(out, request.language);
}

constexpr VerbOption options[] = {{.name = "--paper", .value = "NAME", .required = true},
                                  {.name = "--to", .value = "OUT.(pdf|csv|txt)", .required = true}};

} // namespace

extern const Verb printVerb;
const Verb printVerb = {
    .name = "print",
    .words = "FILE",
    .fewestWords = 1,
    .mostWords = 1,
    .options = options,
    .purpose = {.en = "Prints one paper of a job.", .es = "Imprime un papel de un trabajo."},
    .run = runPrint,
};

} // namespace doorloom
