#include "print/printpdf.h"

#include "papers/powerforms.h"
#include "print/labelpages.h"
#include "print/powerpages.h"
#include "print/printwords.h"
#include "print/schedulepages.h"
#include "print/tablepages.h"

#include <QPageLayout>
#include <QPrinter>

namespace doorloom {
namespace {

constexpr Text printerGone = {.en = "The printer '{printer}' took no page.", .es = "La impresora '{printer}' no aceptó la página."};
constexpr Text seeToPrinter = {.en = "See that it is on and not paused, or write the paper as PDF and print that.",
                               .es = "Compruebe que está encendida y no en pausa, o escriba el papel como PDF e imprímalo."};

struct Drawn {
    PaperFont font;
    std::vector<PrintedPage> pages;
    QPageLayout layout;
    QString title;
};

QString titleOf(const TitleBlock& title, Text paper, Language language)
{
    return printWords(paper, language) + ", " + printWords(title.number + " " + title.title);
}

// In: what makes the pages of these rows, which have a title block
template <class Rows, class PagesOf>
Result<Drawn> drawn(Rows rows, Text paper, PagesOf pagesOf, const PaperSetup& whole, const PageSetup& setup)
{
    rows.title.dangers = whole.dangers;
    Result<PaperFont> font = PaperFont::load(setup.fontFolder);
    if (!font.ok())
        return font.problem();
    auto pages = pagesOf(rows, font.value(), setup);
    if (!pages.ok())
        return pages.problem();
    return Drawn{std::move(font.value()), std::move(pages.value()), layoutOf(setup.size), titleOf(rows.title, paper, setup.language)};
}

Result<Drawn> drawnTags(const TagSheet& tags, const PageSetup& setup)
{
    Result<PaperFont> font = PaperFont::load(setup.fontFolder);
    if (!font.ok())
        return font.problem();
    Result<LabelPages> labels = labelPages(tags, font.value(), setup.labels, setup.language);
    if (!labels.ok())
        return labels.problem();
    return Drawn{std::move(font.value()), std::move(labels.value().pages), layoutOf(labels.value().size), titleOf(tags.title, tagsTitle, setup.language)};
}

Result<Drawn> drawnSchedule(Schedule schedule, const PaperSetup& setup, const PageSetup& page)
{
    return drawn(std::move(schedule), scheduleTitle, schedulePages, setup, page);
}

struct DrawnPaper {
    std::string_view name;
    Result<Drawn> (*draw)(const Job& job, const PaperSetup& setup, const PageSetup& page);
};
constexpr DrawnPaper drawnPapers[] = {
    {"schedule", [](const Job& job, const PaperSetup& setup, const PageSetup& page) {
         return drawnSchedule(scheduleOf(job, setup.digest), setup, page);
     }},
    {"tags", [](const Job& job, const PaperSetup& setup, const PageSetup& page) { return drawnTags(tagsOf(job, setup.digest), page); }},
    {"power", [](const Job& job, const PaperSetup& setup, const PageSetup& page) {
         return drawn(powerOf(job, setup.digest), powerTitle, powerPages, setup, page);
     }},
};

Result<Drawn> drawnPaper(std::string_view name, const Job& job, const PaperSetup& setup, const PageSetup& page)
{
    for (const DrawnPaper& each : drawnPapers)
        if (each.name == name)
            return each.draw(job, setup, page);
    const Paper& paper = *paperNamed(name);
    return drawn(paper.tables(job, setup), paper.title, tablePages, setup, page);
}

std::string pdfOfDrawn(const Drawn& drawn) { return pdfOf(drawn.pages, drawn.font, drawn.layout, drawn.title); }

} // namespace

Result<std::string> schedulePdf(const Schedule& schedule, const PageSetup& setup)
{
    const Result<Drawn> drawn = drawnSchedule(schedule, {}, setup);
    if (!drawn.ok())
        return drawn.problem();
    return pdfOfDrawn(drawn.value());
}

Result<std::string> paperPdf(std::string_view paper, const Job& job, const PaperSetup& setup, const PageSetup& page)
{
    const Result<Drawn> drawn = drawnPaper(paper, job, setup, page);
    if (!drawn.ok())
        return drawn.problem();
    return pdfOfDrawn(drawn.value());
}

Result<Done> printPaper(std::string_view paper, const Job& job, const PaperSetup& setup, const PageSetup& page,
                        QPrinter& printer)
{
    const Result<Drawn> drawn = drawnPaper(paper, job, setup, page);
    if (!drawn.ok())
        return drawn.problem();
    printer.setPageLayout(drawn.value().layout);
    printer.setDocName(drawn.value().title);
    if (!drawPages(drawn.value().pages, drawn.value().font, printer))
        return Problem{.what = {printerGone, {{"printer", printer.printerName().toStdString()}}}, .where = {}, .remedy = seeToPrinter};
    return Done{};
}

} // namespace doorloom
