#include "print/writepaper.h"

#include "file/jobfile.h"
#include "print/printpdf.h"

#include <filesystem>

namespace doorloom {
namespace {

constexpr Text unknownForm = {.en = "'{file}' ends with no form that a paper can have.",
                              .es = "'{file}' no termina en una forma que un papel pueda tener."};
constexpr Text formsThere = {.en = "Let its name end with .pdf, .csv or .txt.",
                             .es = "Termine su nombre en .pdf, .csv o .txt."};

Result<std::string> bytesOf(const Paper& paper, const Job& job, const PaperSetup& setup,
                            const PageSetup& page, const std::string& file)
{
    const std::string form = std::filesystem::path(file).extension().string();
    if (form == ".csv")
        return paper.csv(job, setup);
    if (form == ".txt")
        return textOf(paper, job, setup);
    if (form == ".pdf")
        return paperPdf(paper.name, job, setup, page);
    return Problem{.what = {unknownForm, {{"file", file}}}, .where = "--to", .remedy = formsThere};
}

} // namespace

Result<Done> writePaper(const Paper& paper, const Job& job, const PaperSetup& setup, const PageSetup& page,
                        const std::string& file)
{
    const Result<std::string> bytes = bytesOf(paper, job, setup, page, file);
    if (!bytes.ok())
        return bytes.problem();
    return saveBytes(bytes.value(), file);
}

} // namespace doorloom
