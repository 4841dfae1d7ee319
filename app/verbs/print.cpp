#include "file/jobfile.h"
#include "papers/dangers.h"
#include "papers/papers.h"
#include "print/paperapplication.h"
#include "print/writepaper.h"
#include "verbs/labeloptions.h"

#include <QGuiApplication>

#include <algorithm>
#include <array>
#include <filesystem>
#include <optional>

namespace doorloom {
namespace {

constexpr Text noPaper = {.en = "There is no paper '{paper}'.", .es = "No existe el papel '{paper}'."};
constexpr Text noPage = {.en = "There is no page size '{size}'.", .es = "No existe el tamaño de hoja '{size}'."};
constexpr Text pagesThere = {.en = "Use a4 or letter.", .es = "Use a4 o letter."};
constexpr Text noLabels = {.en = "'{option}' is about labels: the paper 'tags' as PDF.",
                          .es = "'{option}' es de etiquetas: el papel 'tags' en PDF."};
constexpr Text leaveOut = {.en = "Leave it out.", .es = "Omítalo."};
constexpr Text papersThere = {.en = "Use one of: {papers}.", .es = "Use uno de: {papers}."};

// A4 where nobody asks.
std::optional<SheetSize> sizeNamed(const std::string* name)
{
    if (!name || *name == "a4")
        return SheetSize::A4;
    return *name == "letter" ? std::optional(SheetSize::Letter) : std::nullopt;
}

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
    const std::optional<SheetSize> size = sizeNamed(request.find("--page"));
    if (!size)
        return refusal({.what = {noPage, {{"size", *request.find("--page")}}}, .where = "--page", .remedy = pagesThere},
                       request.language);
    const bool wantsLabels = paper->name == "tags" && drawsPages(out);
    if (const VerbOption* option = labelOptionIn(request); option && !wantsLabels)
        return refusal({.what = {noLabels, {{"option", std::string(option->name)}}}, .where = std::string(option->name), .remedy = leaveOut},
                       request.language);
    const Result<LabelSetup> labels = wantsLabels ? labelSetupOf(request, *size) : LabelSetup{};
    if (!labels.ok())
        return refusal(labels.problem(), request.language);
    const Result<Job> job = readJobFile(request.words.front());
    if (!job.ok())
        return refusal(job.problem(), request.language);
    const PaperSetup setup{.language = request.languageIsAsked ? request.language : languageOf(job.value()),
                           .digest = digestOf(job.value()),
                           .dangers = dangersOf(job.value(), checkJob(job.value()))};
    const auto application = drawsPages(out) ? paperApplication() : nullptr;
    const PageSetup page{.size = *size, .language = setup.language, .fontFolder = DOORLOOM_RESOURCES "/font", .labels = labels.value()};
    if (const Result<Done> written = writePaper(*paper, job.value(), setup, page, out); !written.ok())
        return refusal(written.problem(), request.language);
    return wrote(out, request.language);
}

constexpr VerbOption ownOptions[] = {{.name = "--paper", .value = "NAME", .required = true},
                                     {.name = "--to", .value = "OUT.(pdf|csv|txt)", .required = true},
                                     {.name = "--page", .value = "a4|letter"}};

constexpr auto options = [] {
    std::array<VerbOption, std::size(ownOptions) + std::size(labelOptions)> all{};
    std::copy(std::begin(labelOptions), std::end(labelOptions), std::copy(std::begin(ownOptions), std::end(ownOptions), all.begin()));
    return all;
}();

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
