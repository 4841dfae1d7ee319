#include "print/labelchoice.h"
#include "print/labelpages.h"
#include "print/labeltext.h"
#include "print/paperdialog.h"
#include "print/qr.h"

#include "core/papersite.h"

#include <QComboBox>
#include <QSettings>
#include <QSpinBox>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace doorloom {
namespace {

constexpr double millimetre = 72 / 25.4;

const LabelSheets& shipped()
{
    static const LabelSheets all = readLabelSheets(SOURCE_FOLDER "/resources/labels").value();
    return all;
}

PaperFont paperFont()
{
    return PaperFont::load(SOURCE_FOLDER "/resources/font").value();
}

LabelSetup setupOn(const std::string& sheet)
{
    LabelSetup setup;
    setup.sheet = *shipped().find(sheet);
    return setup;
}

TagSheet tagged(const std::string& large, const std::string& small = "to B", TagKind kind = TagKind::ConductorEnd)
{
    TagSheet sheet;
    sheet.title.number = "J-7";
    Tag tag;
    tag.kind = kind;
    tag.large = verbatim(large);
    tag.small = verbatim(small);
    sheet.tags.push_back(tag);
    return sheet;
}

LabelPages pagesOf(const TagSheet& tags, const LabelSetup& setup)
{
    const auto pages = labelPages(tags, paperFont(), setup, Language::English);
    if (!pages.ok())
        throw std::runtime_error(inWords(pages.problem()));
    return pages.value();
}

std::string refusalOf(const TagSheet& tags, const LabelSetup& setup)
{
    const auto pages = labelPages(tags, paperFont(), setup, Language::English);
    return pages.ok() ? "printed" : inWords(pages.problem());
}

// Every text of every page, in the middle of what it takes.
double centreOf(const PlacedText& text, const PaperFont& font)
{
    return text.x + font.widthOf(text.text, text.points, text.weight) / 2;
}

TEST(LabelPages, StayWithinTheMarginsOfTheirLabelsOnEverySheet)
{
    const TagSheet tags = tagsOf(papersite::oneOfEverything(), "");
    const PaperFont font = paperFont();
    for (const LabelSheet& sheet : shipped().sheets) {
        LabelSetup setup;
        setup.sheet = sheet;
        if (sheet.name.ends_with("wrap")) // short lines alone go round a thin conductor
            setup.only = TagKind::Device;
        const LabelPages all = pagesOf(tags, setup);
        for (const PrintedPage& page : all.pages)
            for (const PlacedText& text : page.texts) {
                EXPECT_GE(text.points, 5) << sheet.name;
                const double width = font.widthOf(text.text, text.points, text.weight);
                EXPECT_GE(text.x, sheet.margin.value * millimetre - 0.01) << sheet.name << text.text.toStdString();
                EXPECT_LE(text.x + width, all.size.width - sheet.margin.value * millimetre + 0.01) << sheet.name << text.text.toStdString();
                if (sheet.tape)
                    continue;
                const double across = std::fmod(text.x / millimetre - sheet.first.left.value, sheet.pitch.across.value);
                EXPECT_GE(across, sheet.margin.value - 0.01) << sheet.name;
                EXPECT_LE(across + width / millimetre, sheet.label.width.value - sheet.margin.value + 0.01) << sheet.name << text.text.toStdString();
                const double down = std::fmod(text.baseline / millimetre - sheet.first.top.value, sheet.pitch.down.value);
                EXPECT_LE(down, sheet.written.value_or(sheet.label.height).value - sheet.margin.value + 0.01) << sheet.name;
                EXPECT_GE(down - text.points / millimetre * 0.729, sheet.margin.value - 0.01) << sheet.name << text.text.toStdString();
            }
    }
}

TEST(LabelPages, StartAtTheLabelThatIsStillThere)
{
    LabelSetup setup = setupOn("a4-3x8");
    setup.start = 24;
    TagSheet tags = tagged("A1");
    tags.tags.push_back(tags.tags.front());
    tags.tags.back().large = verbatim("B1");
    const LabelPages all = pagesOf(tags, setup);
    ASSERT_EQ(all.pages.size(), 2u);
    EXPECT_NEAR(centreOf(all.pages[0].texts[0], paperFont()), 175 * millimetre, 0.01);
    EXPECT_NEAR(centreOf(all.pages[1].texts[0], paperFont()), 35 * millimetre, 0.01);
    setup.start = 25;
    EXPECT_EQ(refusalOf(tags, setup), "Tags: 'a4-3x8' has no label 25. Start at a label from 1 to 24.");
    setup.start = 0;
    EXPECT_EQ(refusalOf(tags, setup), "Tags: 'a4-3x8' has no label 0. Start at a label from 1 to 24.");
}

TEST(LabelPages, MakeGoodForAPrinterThatPrintsBesideTheMark)
{
    LabelSetup setup = setupOn("a4-3x8");
    const PlacedText before = pagesOf(tagged("A1"), setup).pages[0].texts[0];
    setup.shift = shiftFor(Millimetres{30.4}, Millimetres{29.7}).value();
    const PlacedText after = pagesOf(tagged("A1"), setup).pages[0].texts[0];
    EXPECT_NEAR((after.x - before.x) / millimetre, -0.4, 1e-6);
    EXPECT_NEAR((after.baseline - before.baseline) / millimetre, 0.3, 1e-6);
    EXPECT_FALSE(shiftFor(Millimetres{41}, Millimetres{30}).has_value());
    EXPECT_FALSE(shiftFor(Millimetres{30}, Millimetres{std::nan("")}).has_value());
}

TEST(LabelPages, AreRefusedWithTheNameThatFitsOnNoLabel)
{
    const std::string name(40, 'W');
    EXPECT_EQ(refusalOf(tagged(name), setupOn("a4-7x27")),
              "Tags: '" + name + "' does not fit on a label of 'a4-7x27'. Take a larger label or wider tape, or shorten that name.");
    TagSheet three = tagged(name);
    three.tags.resize(3, three.tags.front());
    EXPECT_EQ(refusalOf(three, setupOn("a4-7x27")), "Tags: '" + name + "' does not fit on a label of 'a4-7x27', nor do 2 others. "
                                                                       "Take a larger label or wider tape, or shorten that name.");
    EXPECT_EQ(refusalOf(tagged("A", std::string(400, 'w')), setupOn("a4-3x8")),
              "Tags: 'A' does not fit on a label of 'a4-3x8'. Take a larger label or wider tape, or shorten that name.");
    EXPECT_EQ(refusalOf(tagged(name), setupOn("tape-12")), "printed"); // as long as it must be
}

TEST(LabelPages, BreakALongNameAtItsMarksBeforeTheyRefuse)
{
    const auto page = pagesOf(tagged("SECOND-FLOOR-NORTH-WING-DOOR-1:NO"), setupOn("a4-5x13")).pages[0];
    QString whole;
    for (const PlacedText& text : page.texts)
        if (text.weight == Weight::Bold)
            whole += text.text;
    EXPECT_EQ(whole, "SECOND-FLOOR-NORTH-WING-DOOR-1:NO");
}

TEST(LabelPages, NameLettersThatTheFontDoesNotHold)
{
    EXPECT_EQ(refusalOf(tagged("\u9580A\u9580"), setupOn("a4-3x8")),
              "Tags: The font of the papers has no '\u9580'. Write names with other letters, or print the text or CSV form.");
    EXPECT_NE(refusalOf(tagged("\U0001F6AA"), setupOn("tape-12")).find("has no '\U0001F6AA'"), std::string::npos);
    EXPECT_EQ(refusalOf(tagged("Ñandú\tŁódź"), setupOn("a4-3x8")), "printed");
}

TEST(LabelPages, NeedASheetAndSomethingToTag)
{
    EXPECT_EQ(refusalOf(tagged("A"), LabelSetup{}), "Tags: No label sheet is chosen. Choose a sheet or tape of labels.");
    EXPECT_EQ(refusalOf(TagSheet{}, setupOn("a4-3x8")),
              "Tags: There is nothing to tag. Draw devices, cables or conductors first, or print all kinds of tags.");
    LabelSetup cables = setupOn("a4-3x8");
    cables.only = TagKind::Cable;
    EXPECT_NE(refusalOf(tagged("A"), cables).find("nothing to tag"), std::string::npos);
}

TEST(LabelPages, WriteBothHalvesOfAFlagAlike)
{
    const auto page = pagesOf(tagged("ES1:1"), setupOn("a4-flag-2x18")).pages[0];
    const PaperFont font = paperFont();
    std::vector<double> centres;
    for (const PlacedText& text : page.texts)
        if (text.text == "ES1:1")
            centres.push_back(centreOf(text, font) / millimetre - 10);
    ASSERT_EQ(centres.size(), 2u); // 90 mm long, 12 of them round the conductor
    EXPECT_NEAR(centres[0], 19.5, 0.01);
    EXPECT_NEAR(centres[1], 70.5, 0.01);
}

TEST(LabelPages, ShowAWrapLabelOfATapeAgainAndAgain)
{
    const LabelPages all = pagesOf(tagged("ES1:1"), setupOn("tape-18-wrap"));
    EXPECT_NEAR(all.size.width, 18 * millimetre, 1e-6);
    EXPECT_GE(std::count_if(all.pages[0].texts.begin(), all.pages[0].texts.end(), [](const auto& text) { return text.text == "ES1:1"; }), 2);
}

TEST(LabelPages, CutATapeAsLongAsTheLongestTag)
{
    TagSheet tags = tagged("A");
    const double alone = pagesOf(tags, setupOn("tape-9")).size.width;
    tags.tags.push_back(tagged("A-RATHER-LONG-NAME").tags.front());
    const LabelPages both = pagesOf(tags, setupOn("tape-9"));
    EXPECT_GT(both.size.width, alone + 20);
    EXPECT_NEAR(both.size.height, 9 * millimetre, 1e-6);
    EXPECT_EQ(both.pages.size(), 2u);
}

TEST(LabelPages, RefuseACodeThatNobodyCouldScan)
{
    LabelSetup setup = setupOn("tape-12");
    setup.withQr = true;
    EXPECT_EQ(refusalOf(tagged("W1", "18/2, CAB1 to FRAME", TagKind::Cable), setup),
              "Tags: The code of 'W1' would be too fine to read on 'tape-12': with its white border it takes 11 mm. "
              "Take a larger label, or print without codes.");
    setup.sheet = *shipped().find("a4-wrap-7x6");
    EXPECT_EQ(refusalOf(tagged("W1", "18/2", TagKind::Cable), setup),
              "a4-wrap-7x6: A code that is wrapped round a cable can't be read. Take plain or flag labels, or print without codes.");
    EXPECT_EQ(qrOf(std::string(5000, 'x')).modules, 0);
}

TEST(OffsetPage, DrawsItsLinesThirtyMillimetresFromTheEdgesAndEveryLabelsOutline)
{
    LabelSetup setup = setupOn("a4-3x8");
    setup.offsetPage = true;
    setup.shift = shiftFor(Millimetres{31}, Millimetres{30}).value();
    const LabelPages all = pagesOf(TagSheet{}, setup);
    ASSERT_EQ(all.pages.size(), 2u);
    EXPECT_NEAR(all.pages[0].rules[0].x1 / millimetre, 30, 1e-6); // what is measured is never corrected
    EXPECT_NEAR(all.pages[0].rules[1].y1 / millimetre, 30, 1e-6);
    EXPECT_EQ(all.pages[1].rules.size(), 4u * 24);
    EXPECT_EQ(all.pages[1].texts.back().text, "24");
    EXPECT_NEAR(all.pages[1].rules[0].x2 / millimetre, 69, 1e-6); // 70 mm wide, a millimetre further left
    setup.sheet = *shipped().find("tape-12");
    EXPECT_EQ(refusalOf(TagSheet{}, setup), "tape-12: A tape has no offset page. Choose a sheet of labels.");
}

// ---- The dialog.

class LabelDialog : public testing::Test {
protected:
    LabelDialog()
    {
        QSettings::setDefaultFormat(QSettings::IniFormat);
        QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, folder_.path());
    }

    static void choose(PaperDialog& dialog, const char* sheet, int start)
    {
        for (QComboBox* box : dialog.findChildren<QComboBox*>())
            if (const int tags = box->findText("Tags"); tags >= 0)
                box->setCurrentIndex(tags);
        auto* sheets = dialog.findChild<QComboBox*>("labelSheet");
        sheets->setCurrentIndex(sheets->findData(sheet));
        dialog.findChild<QSpinBox*>("labelStart")->setValue(start);
    }

    QTemporaryDir folder_;
};

TEST_F(LabelDialog, RemembersSheetAndStartWhenTagsWerePrinted)
{
    {
        PaperDialog dialog(Language::English, shipped());
        EXPECT_FALSE(dialog.wantsLabels());
        choose(dialog, "letter-4x20", 33);
        EXPECT_TRUE(dialog.wantsLabels());
        dialog.accept();
    }
    const LabelSetup again = PaperDialog(Language::English, shipped()).labels();
    EXPECT_EQ(again.sheet.name, "letter-4x20");
    EXPECT_EQ(again.start, 33);
}

TEST_F(LabelDialog, ForgetsWhatWasNotPrinted)
{
    {
        PaperDialog dialog(Language::English, shipped());
        choose(dialog, "letter-4x20", 33);
        dialog.reject();
    }
    EXPECT_EQ(PaperDialog(Language::English, shipped()).labels().start, 1);
}

TEST_F(LabelDialog, StartsATapeAtItsOnlyLabelAndSurvivesSettingsThatMakeNoSense)
{
    QSettings().setValue("labels/sheet", "no-such-sheet");
    QSettings().setValue("labels/start", "999");
    QSettings().setValue("labels/only", -7);
    QSettings().setValue("labels/measuredLeft", "far");
    PaperDialog dialog(Language::English, shipped());
    EXPECT_EQ(dialog.labels().start, labelsOn(dialog.labels().sheet));
    EXPECT_FALSE(dialog.labels().only.has_value());
    choose(dialog, "tape-12", 5);
    EXPECT_EQ(dialog.labels().start, 1);
    EXPECT_EQ(PaperDialog(Language::English, LabelSheets{}).labels(), LabelSetup{});
}

} // namespace
} // namespace doorloom
