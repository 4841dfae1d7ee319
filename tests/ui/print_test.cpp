#include "print/paperfont.h"
#include "print/powerpages.h"
#include "print/printpdf.h"
#include "print/schedulecolumns.h"
#include "print/schedulepages.h"

#include "core/papersite.h"

#include <QFile>
#include <QPrinter>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <algorithm>

namespace doorloom {
namespace {

using papersite::Site;

constexpr const char* fontFolder = SOURCE_FOLDER "/resources/font";

PageSetup setupOf(SheetSize size = SheetSize::A4, Language language = Language::English)
{
    return {.size = size, .language = language, .fontFolder = fontFolder};
}

PaperFont paperFont()
{
    return PaperFont::load(fontFolder).value();
}

Schedule everything()
{
    return scheduleOf(papersite::oneOfEverything(), "0123456789ab");
}

std::vector<PrintedPage> pagesOf(const Schedule& schedule, const PageSetup& setup = setupOf())
{
    const auto pages = schedulePages(schedule, paperFont(), setup);
    if (!pages.ok())
        throw std::runtime_error(inWords(pages.problem()));
    return pages.value();
}

bool holdsText(const PrintedPage& page, const QString& text)
{
    return std::any_of(page.texts.begin(), page.texts.end(),
                       [&](const PlacedText& placed) { return placed.text.contains(text); });
}

int textsWith(const std::vector<PrintedPage>& pages, const QString& text)
{
    return static_cast<int>(std::count_if(pages.begin(), pages.end(),
                                          [&](const PrintedPage& page) { return holdsText(page, text); }));
}

// A cabinet with a device of this many terminals.
Job longDevice(int terminals, const std::string& tag = "XX1")
{
    Site site;
    Kind kind = papersite::kindOf("long-strip", "Long strip", "Regleta larga", "joint");
    std::vector<std::string> printed;
    for (int number = 1; number <= terminals; ++number)
        printed.push_back("T" + std::to_string(number));
    kind.strips = {papersite::stripOf("clamps", "bornes", printed)};
    site.device(tag, kind, site.place("CAB", "cabinet", true));
    return site.job;
}

// ---- The font.

TEST(PaperFont, HoldsTheSignsOfThePapers)
{
    const PaperFont font = paperFont();
    for (const Weight weight : {Weight::Plain, Weight::Bold})
        EXPECT_GT(font.widthOf(QString::fromUtf8("☐☑†Ω−áñ·–•±½²°≥µ¿¡üÁÑ"), 9, weight), 0);
    EXPECT_EQ(font.lettersMissing().toStdString(), "");
    font.widthOf(QString::fromUtf8("\u6f22"), 9, Weight::Plain);
    EXPECT_EQ(font.lettersMissing().toStdString(), "\u6f22");
}

TEST(PaperFont, MeasuresInProportionToItsSizeButForTheSpaceBetweenLetters)
{
    const PaperFont font = paperFont();
    const auto wide = [&](double points) { return font.widthOf("LM1:K1.C", points, Weight::Plain); };
    EXPECT_NEAR(wide(18) - wide(9), wide(27) - wide(18), 1e-9);
    EXPECT_NEAR(2 * wide(9) - wide(18), 8 / 64.0 * 72 / 96, 1e-9); // a 64th of a pixel after each letter
    EXPECT_NEAR(font.shapedWidthOf("LM1:K1.C", 9, Weight::Plain), wide(9), 0.01);
    EXPECT_GT(font.widthOf("LM1", 9, Weight::Bold), font.widthOf("LM1", 9, Weight::Plain));
}

TEST(PaperFont, WrapsWithoutLosingAWord)
{
    const PaperFont font = paperFont();
    const QString text = "one two three four";
    const auto lines =
        wrapped(font, text, 9, Weight::Plain, font.widthOf("three four", 9, Weight::Plain) + 1);
    EXPECT_EQ(lines, (std::vector<QString>{"one two", "three four"}));
    EXPECT_EQ(wrapped(font, "CAB1:K1.NO", 9, Weight::Plain, font.widthOf("CAB1:", 9, Weight::Plain) + 1,
                      Breaks::InsideWords),
              (std::vector<QString>{"CAB1:", "K1.NO"}));
}

TEST(PaperFont, ThatIsMissingIsNamed)
{
    const auto pdf = schedulePdf(
        everything(), {.size = SheetSize::A4, .language = Language::English, .fontFolder = "/nowhere"});
    ASSERT_FALSE(pdf.ok());
    EXPECT_EQ(inWords(pdf.problem()),
              "/nowhere/DejaVuSans.ttf: The font '/nowhere/DejaVuSans.ttf' can't be read. "
              "Put the program's folder resources/font back as it came.");
}

// ---- Pages.

TEST(SchedulePages, BeginWithTheDangersThatNobodyHasMended)
{
    Schedule schedule = everything();
    const std::size_t count = pagesOf(schedule, setupOf()).size();
    schedule.title.dangers = {verbatim("!! DANGER one"), verbatim("!! DANGER two")};
    const auto pages = pagesOf(schedule, setupOf());
    EXPECT_GE(pages.size(), count);
    for (const PrintedPage& page : pages) {
        std::vector<double> at;
        double first = page.texts.front().baseline + 1000; // of what follows under them
        for (const PlacedText& text : page.texts)
            if (text.text.startsWith("!! DANGER"))
                at.push_back(text.baseline);
        ASSERT_EQ(at.size(), 2u);
        for (const PlacedText& text : page.texts)
            if (text.baseline > at[1])
                first = std::min(first, text.baseline);
        EXPECT_LT(at[0], at[1]);
        EXPECT_LT(at[1], 90);
        EXPECT_GT(first, at[1] + 8);
    }
}

TEST(SchedulePages, KeepEveryTextInsideThePageAndNoTextOverAnother)
{
    const PaperFont font = paperFont();
    for (const SheetSize size : {SheetSize::A4, SheetSize::Letter})
        for (const Language language : {Language::English, Language::Spanish}) {
            const PageSize page = landscapeOf(size);
            for (const PrintedPage& printed : pagesOf(everything(), setupOf(size, language)))
                for (const PlacedText& text : printed.texts) {
                    const double right = text.x + font.widthOf(text.text, text.points, text.weight);
                    EXPECT_GE(text.x, 25) << text.text.toStdString();
                    EXPECT_LE(right, page.width - 25) << text.text.toStdString();
                    EXPECT_LE(text.baseline, page.height - 22);
                    for (const PlacedText& other : printed.texts)
                        if (&other != &text && other.baseline == text.baseline && other.x > text.x) {
                            EXPECT_GE(other.x, right)
                                << text.text.toStdString() << " | " << other.text.toStdString();
                        }
                }
        }
}

TEST(SchedulePages, PrintTerminalsLargeAndNothingUnderNinePoints)
{
    for (const PrintedPage& page : pagesOf(everything()))
        for (const PlacedText& text : page.texts) {
            EXPECT_GE(text.points, 9);
            if (text.text == "COM" || text.text == "IN1") {
                EXPECT_GE(text.points, 11);
                EXPECT_EQ(text.weight, Weight::Bold);
            }
        }
}

TEST(SchedulePages, GiveEveryRowEightMillimetres)
{
    const double eight = 8 * 72 / 25.4;
    const auto pages = pagesOf(scheduleOf(longDevice(10), ""));
    std::vector<double> baselines;
    for (const PlacedText& text : pages[0].texts)
        if (text.text.startsWith("T") && text.points == terminalPrint)
            baselines.push_back(text.baseline);
    ASSERT_GT(baselines.size(), 5u);
    for (std::size_t row = 1; row < baselines.size(); ++row)
        EXPECT_GE(baselines[row] - baselines[row - 1], eight - 1e-6);
}

TEST(SchedulePages, AreNumberedAndCarryTheDigestAndTheCautions)
{
    const auto pages = pagesOf(everything());
    ASSERT_GT(pages.size(), 2u);
    for (std::size_t number = 0; number < pages.size(); ++number) {
        EXPECT_TRUE(holdsText(pages[number], QString("page %1 of %2").arg(number + 1).arg(pages.size())));
        EXPECT_TRUE(holdsText(pages[number], "0123456789ab"));
        EXPECT_TRUE(holdsText(pages[number], "Prove dead before work."));
        EXPECT_TRUE(holdsText(pages[number], "J-7"));
    }
    EXPECT_TRUE(holdsText(pages[0], "Never put two sources on one load."));
    EXPECT_TRUE(holdsText(pages[0], "Nunca ponga dos fuentes en una misma carga."));
}

TEST(SchedulePages, StartABoxOnASheetOfItsOwn)
{
    Site site;
    for (const char* tag : {"BOX1", "BOX2"})
        site.device(std::string("PB") + tag, papersite::plate(), site.place(tag, "box", true));
    const auto pages = pagesOf(scheduleOf(site.job, ""));
    ASSERT_EQ(pages.size(), 2u);
    EXPECT_TRUE(holdsText(pages[0], "BOX1 · box"));
    EXPECT_TRUE(holdsText(pages[1], "BOX2 · box"));
}

TEST(SchedulePages, SayContinuedAndRepeatTheHeadsWhereADeviceGoesOn)
{
    const auto pages = pagesOf(scheduleOf(longDevice(60), ""));
    ASSERT_GT(pages.size(), 2u);
    EXPECT_EQ(textsWith(pages, "XX1"), static_cast<int>(pages.size()));
    EXPECT_EQ(textsWith(pages, "Goes to"), static_cast<int>(pages.size()));
    EXPECT_EQ(textsWith(pages, "long-strip, continued"), static_cast<int>(pages.size()) - 1);
    EXPECT_EQ(textsWith(pages, "CAB · cabinet, continued"), static_cast<int>(pages.size()) - 1);
}

TEST(SchedulePages, KeepADeviceWholeWhereHalfASheetWouldNotBeLostByIt)
{
    Site site;
    const PlaceId box = site.place("CAB", "cabinet", true);
    for (int number = 1; number <= 12; ++number)
        site.device("PB" + std::to_string(number), papersite::plate(), box);
    const auto pages = pagesOf(scheduleOf(site.job, ""));
    EXPECT_GT(pages.size(), 2u);
    EXPECT_EQ(textsWith(pages, "test-plate, continued"), 0);
}

TEST(SchedulePages, AreRefusedRatherThanClipped)
{
    const auto pages =
        schedulePages(scheduleOf(longDevice(1, std::string(90, 'W')), ""), paperFont(), setupOf());
    ASSERT_FALSE(pages.ok());
    EXPECT_EQ(inWords(pages.problem()), "Terminal schedule: '" + std::string(90, 'W') +
                                            "' is too long for the page. "
                                            "Shorten that name, or print the text or CSV form.");
}

TEST(SchedulePages, BreakALongNameAtItsMarksBeforeTheyRefuse)
{
    Site site;
    const DeviceId far = site.device("SECOND-FLOOR-NORTH-WING-STORE-ROOM-DOOR-PUSH-PLATE-1",
                                     papersite::plate(), {}),
                   near = site.device("THIRD-FLOOR-NORTH-WING-STORE-ROOM-DOOR-PUSH-PLATE-2",
                                      papersite::plate(), {});
    site.wire("SECOND-FLOOR-NORTH-WING-STORE-ROOM-DOOR-WIRE-1", "RD", Site::at(far, "C"),
              Site::at(near, "C"));
    site.wire("THIRD-FLOOR-NORTH-WING-STORE-ROOM-DOOR-WIRE-1", "RD", Site::at(far, "C"), Site::at(near, "C"));
    const auto pages = schedulePages(scheduleOf(site.job, ""), paperFont(), setupOf());
    EXPECT_TRUE(pages.ok()) << inWords(pages.problem());
}

TEST(SchedulePages, AreRefusedWhereTheFontHasNoLetterForAName)
{
    const auto pages = schedulePages(scheduleOf(longDevice(1, "\u95e8"), ""), paperFont(), setupOf());
    ASSERT_FALSE(pages.ok());
    EXPECT_EQ(inWords(pages.problem()), "Terminal schedule: The font of the papers has no '\u95e8'. "
                                        "Write names with other letters, or print the text or CSV form.");
}

TEST(SchedulePages, AreNotSpoiltByAnotherJobsLetters)
{
    const PaperFont font = paperFont();
    EXPECT_FALSE(schedulePages(scheduleOf(longDevice(1, "\u95e8"), ""), font, setupOf()).ok());
    EXPECT_TRUE(schedulePdf(everything(), setupOf()).ok());
}

TEST(SchedulePages, OfAnEmptyJobIsOneSheetOfCautions)
{
    EXPECT_EQ(pagesOf(scheduleOf(Job{}, "")).size(), 1u);
}

// ---- The power sheet.

PowerSheet sheetOf(int loads)
{
    PowerSheet sheet;
    sheet.title = titleBlockOf(papersite::oneOfEverything(), "0123456789ab");
    sheet.conductors = 2;
    sheet.withoutOhms = 1;
    SourceLine source;
    source.source = "PS1:+, −";
    source.limit = Amperes{2};
    source.sum = Amperes{0.12};
    source.verdict = SourceVerdict::Under80;
    for (int number = 1; number <= loads; ++number) {
        LoadLine line;
        line.load = "ES" + std::to_string(number) + ":1, 2";
        line.title = verbatim("Electric strike, fail-secure");
        line.holding = Volts{23.25};
        line.amperes = Amperes{0.12};
        line.least = Volts{21.6};
        line.verdict = number % 2 ? PowerVerdict::Enough : PowerVerdict::LengthMissing;
        source.loads.emplace_back(line.load, Amperes{0.12});
        sheet.loads.push_back(std::move(line));
    }
    sheet.sources.push_back(std::move(source));
    return sheet;
}

std::vector<PrintedPage> powerPagesOf(const PowerSheet& sheet, const PageSetup& setup = setupOf())
{
    const auto pages = powerPages(sheet, paperFont(), setup);
    if (!pages.ok())
        throw std::runtime_error(inWords(pages.problem()));
    return pages.value();
}

TEST(PowerPages, SayConditionsAndCautionsFirstAndTheRevisionOnEverySheet)
{
    const auto pages = powerPagesOf(sheetOf(60));
    EXPECT_GT(pages.size(), 2u);
    EXPECT_TRUE(holdsText(pages.front(), "Conductors at 20 °C."));
    EXPECT_TRUE(holdsText(pages.front(), "1 of 2 conductors have no length or no gauge"));
    EXPECT_TRUE(holdsText(pages.front(), "Antes de todo"));
    EXPECT_EQ(textsWith(pages, "Revision B · digest 0123456789ab"), static_cast<int>(pages.size()));
    EXPECT_EQ(textsWith(pages, "Power and voltage drop"), static_cast<int>(pages.size()));
}

TEST(PowerPages, GoOnUnderTheirHeadsWithEveryRowOnce)
{
    for (const SheetSize size : {SheetSize::A4, SheetSize::Letter}) {
        const auto pages = powerPagesOf(sheetOf(60), setupOf(size));
        for (int number = 1; number <= 60; ++number) { // as a load, and under its source
            const QString name = "ES" + QString::number(number) + ":1, 2";
            int times = 0;
            for (const PrintedPage& page : pages)
                times += static_cast<int>(std::count_if(page.texts.begin(), page.texts.end(), [&](const PlacedText& text) { return text.text == name; }));
            EXPECT_EQ(times, 2) << number;
        }
        for (const PrintedPage& page : pages) {
            EXPECT_TRUE(holdsText(page, "Loads: volts at") || holdsText(page, "Sources: what is drawn"));
            for (const PlacedText& text : page.texts) {
                EXPECT_LT(text.baseline, landscapeOf(size).height - 8 * 72 / 25.4);
                EXPECT_LT(text.x + paperFont().widthOf(text.text, text.points, text.weight), landscapeOf(size).width - 10 * 72 / 25.4);
            }
        }
        EXPECT_GT(textsWith(pages, "conductors, continued"), 0);
    }
}

TEST(PowerPages, KeepANumberWithItsUnit)
{
    const auto pages = powerPagesOf(sheetOf(1));
    EXPECT_TRUE(holdsText(pages.front(), QString("21.6\u00a0V\u00a0†")));
}

TEST(PowerPages, OfAnEmptyJobSayThatThereIsNothing)
{
    const auto pages = powerPagesOf(powerOf(Job{}, ""), setupOf(SheetSize::A4, Language::Spanish));
    EXPECT_EQ(textsWith(pages, "No hay ninguna fuente."), 1);
}

// ---- PDF.

TEST(SchedulePdf, IsAPdfThatEnds)
{
    const auto pdf = schedulePdf(everything(), setupOf());
    ASSERT_TRUE(pdf.ok());
    EXPECT_TRUE(pdf.value().starts_with("%PDF-1."));
    EXPECT_NE(pdf.value().rfind("%%EOF"), std::string::npos);
}

TEST(PaperPdf, IsMadeForEveryPaper)
{
    PageSetup setup = setupOf();
    setup.labels.sheet = *readLabelSheets(SOURCE_FOLDER "/resources/labels").value().find("a4-3x8");
    for (const Paper* paper : allPapers()) {
        const auto pdf = paperPdf(paper->name, papersite::oneOfEverything(), {Language::English, "0123456789ab"}, setup);
        ASSERT_TRUE(pdf.ok()) << paper->name << ": " << inWords(pdf.problem());
        EXPECT_TRUE(pdf.value().starts_with("%PDF-1.")) << paper->name;
    }
}

// ---- A printer: one whose pages go into a file.

std::string bytesIn(const QString& path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

TEST(PrintPaper, PutsEveryPageOnASheetOfItsOwn)
{
    const QTemporaryDir folder;
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(folder.filePath("printed.pdf"));
    const Job job = papersite::oneOfEverything();
    ASSERT_TRUE(printPaper("schedule", job, {Language::English, ""}, setupOf(SheetSize::Letter), printer).ok());
    const std::string printed = bytesIn(folder.filePath("printed.pdf"));
    std::size_t pages = 0;
    for (std::size_t at = printed.find("/Type /Page\n"); at != std::string::npos; at = printed.find("/Type /Page\n", at + 1))
        ++pages;
    EXPECT_EQ(pages, pagesOf(scheduleOf(job, ""), setupOf(SheetSize::Letter)).size());
    EXPECT_NE(printed.find("/MediaBox [0 0 792"), std::string::npos); // letter, lying: 11 in are 792 points
}

TEST(PrintPaper, SaysThatThePrinterTookNothing)
{
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName("/nowhere/at/all.pdf");
    const auto printed = printPaper("schedule", papersite::oneOfEverything(), {Language::English, ""}, setupOf(), printer);
    ASSERT_FALSE(printed.ok());
    EXPECT_TRUE(inWords(printed.problem()).find("took no page") != std::string::npos) << inWords(printed.problem());
}

} // namespace
} // namespace doorloom
