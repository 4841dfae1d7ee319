#include "print/printpdf.h"

#include "print/printwords.h"
#include "print/schedulepages.h"

namespace doorloom {
namespace {

Result<std::string> schedulePaperPdf(const Job& job, const PaperSetup& paper, const PageSetup& page)
{
    return schedulePdf(scheduleOf(job, paper.digest), page);
}

struct DrawnPaper {
    std::string_view name;
    PdfMaker make;
};
constexpr DrawnPaper drawnPapers[] = {{"schedule", schedulePaperPdf}};

QString titleOf(const Schedule& schedule, Language language)
{
    const std::string job = schedule.title.number + " " + schedule.title.title;
    return printWords(scheduleTitle, language) + ", " + printWords(job);
}

} // namespace

Result<std::string> schedulePdf(const Schedule& schedule, const PageSetup& setup)
{
    const Result<PaperFont> font = PaperFont::load(setup.fontFolder);
    if (!font.ok())
        return font.problem();
    const auto pages = schedulePages(schedule, font.value(), setup);
    if (!pages.ok())
        return pages.problem();
    return pdfOf(pages.value(), font.value(), setup.size, titleOf(schedule, setup.language));
}

PdfMaker pdfMakerFor(std::string_view paper)
{
    for (const DrawnPaper& drawn : drawnPapers)
        if (drawn.name == paper)
            return drawn.make;
    return nullptr;
}

} // namespace doorloom
