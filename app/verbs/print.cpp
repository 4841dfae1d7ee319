#include "file/jobfile.h"
#include "papers/papers.h"
#include "print/paperapplication.h"
#include "print/printpdf.h"
#include "verbs/verb.h"

#include <QGuiApplication>

#include <filesystem>

namespace doorloom {
namespace {

constexpr Text noPaper = {.en = "There is no paper '{paper}'.", .es = "No existe el papel '{paper}'."};
constexpr Text papersThere = {.en = "Use one of: {papers}.", .es = "Use uno de: {papers}."};
constexpr Text noPages = {.en = "The paper '{paper}' has no pages to draw.",
                          .es = "El papel '{paper}' no tiene páginas que dibujar."};
constexpr Text plainForms = {.en = "Let the file's name end with .csv or .txt.",
                             .es = "Termine el nombre del archivo en .csv o .txt."};
constexpr Text unknownForm = {.en = "'{file}' ends with no form that a paper can have.",
                              .es = "'{file}' no termina en una forma que un papel pueda tener."};
constexpr Text formsThere = {.en = "Let its name end with .pdf, .csv or .txt.",
                             .es = "Termine su nombre en .pdf, .csv o .txt."};

Result<std::string> pdfOfPaper(const Paper& paper, const Job& job, const PaperSetup& setup)
{
    const PdfMaker make = pdfMakerFor(paper.name);
    if (!make)
        return Problem{
            .what = {noPages, {{"paper", std::string(paper.name)}}}, .where = "--to", .remedy = plainForms};
    const auto application = paperApplication();
    return make(job, setup, {.language = setup.language, .fontFolder = DOORLOOM_RESOURCES "/font"});
}

// The paper in the form that the file's name asks for.
Result<std::string> bytesOf(const Paper& paper, const Job& job, const PaperSetup& setup,
                            const std::string& file)
{
    const std::string form = std::filesystem::path(file).extension().string();
    if (form == ".csv")
        return paper.csv(job, setup);
    if (form == ".txt")
        return paper.text(job, setup);
    if (form == ".pdf")
        return pdfOfPaper(paper, job, setup);
    return Problem{.what = {unknownForm, {{"file", file}}}, .where = "--to", .remedy = formsThere};
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
    const Result<std::string> bytes = bytesOf(*paper, job.value(), setup, out);
    if (!bytes.ok())
        return refusal(bytes.problem(), request.language);
    const Result<Done> saved = saveBytes(bytes.value(), out);
    if (!saved.ok())
        return refusal(saved.problem(), request.language);
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
