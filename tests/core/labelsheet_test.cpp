#include "papers/labelsheet.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>

namespace doorloom {
namespace {

LabelSheets shipped()
{
    auto all = readLabelSheets(SOURCE_FOLDER "/resources/labels");
    EXPECT_TRUE(all.ok()) << (all.ok() ? "" : inWords(all.problem()));
    return all.ok() ? all.value() : LabelSheets{};
}

class LabelFolder : public testing::Test {
protected:
    void SetUp() override { std::filesystem::create_directories(folder_); }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    // What is said of a folder with this one file 's.json'; empty: it is read.
    std::string saidOf(const std::string& text)
    {
        std::ofstream(folder_ / "s.json") << text;
        const auto read = readLabelSheets(folder_.string());
        if (read.ok())
            return "";
        std::string said = inWords(read.problem());
        return said.substr(said.find("s.json"));
    }

    const std::filesystem::path folder_ = std::filesystem::temp_directory_path() / ("labels" + std::to_string(::getpid()));
};

std::string sheetText(const std::string& first, const std::string& pitch, const std::string& count, const std::string& more = "\"margin\": 1")
{
    return R"({"name": "s", "words": {"en": "s"}, "page": {"width": 100, "height": 50}, "first": )" + first + R"(, "pitch": )" + pitch +
           R"(, "count": )" + count + R"(, "label": {"width": 30, "height": 10}, )" + more + "}";
}

TEST(LabelSheets, ThatComeWithTheProgramHaveWordsInBothLanguagesAndFitTheirPages)
{
    std::set<std::string> tapes;
    for (const LabelSheet& sheet : shipped().sheets) {
        EXPECT_FALSE(sheet.words.en.empty()) << sheet.name;
        EXPECT_FALSE(sheet.words.es.empty()) << sheet.name;
        if (sheet.tape && sheet.form == LabelForm::Plain)
            tapes.insert(sheet.name);
        if (!sheet.tape) { // what is left over is left over alike on both sides
            const double right = sheet.page.width.value - sheet.first.left.value - (sheet.count.across - 1) * sheet.pitch.across.value - sheet.label.width.value;
            EXPECT_NEAR(right, sheet.first.left.value, 0.01) << sheet.name;
        }
    }
    EXPECT_EQ(tapes, (std::set<std::string>{"tape-6", "tape-9", "tape-12", "tape-18", "tape-24"}));
}

TEST(PlacedLabel, GoesAlongTheRowsOrDownTheColumns)
{
    const LabelSheet sheet = *shipped().find("a4-3x8"); // 70 × 37 mm, the first at 0, 0.5
    const auto at = [&](LabelOrder order, std::size_t number) {
        const PlacedLabel placed = placedLabel(sheet, order, number);
        return std::tuple(placed.page, placed.at.left.value, placed.at.top.value);
    };
    EXPECT_EQ(at(LabelOrder::ByRows, 0), std::tuple(0u, 0.0, 0.5));
    EXPECT_EQ(at(LabelOrder::ByRows, 4), std::tuple(0u, 70.0, 37.5));
    EXPECT_EQ(at(LabelOrder::ByColumns, 4), std::tuple(0u, 0.0, 148.5));
    EXPECT_EQ(at(LabelOrder::ByColumns, 9), std::tuple(0u, 70.0, 37.5));
    EXPECT_EQ(at(LabelOrder::ByRows, 23), std::tuple(0u, 140.0, 259.5));
    EXPECT_EQ(at(LabelOrder::ByRows, 24), std::tuple(1u, 0.0, 0.5));
    EXPECT_EQ(placedLabel(*shipped().find("tape-12"), LabelOrder::ByRows, 7).page, 7u);
}

TEST_F(LabelFolder, ThatIsNotThereIsNamed)
{
    EXPECT_EQ(inWords(readLabelSheets("/nowhere").problem()), "/nowhere: The folder of label sheets cannot be read: No such file or directory. "
                                                              "Put the program's folder resources/labels back as it came.");
}

TEST_F(LabelFolder, WithAnImpossibleSheetIsRefused)
{
    const std::string origin = R"({"left": 0, "top": 0})", pitch = R"({"across": 30, "down": 10})", three = R"({"across": 3, "down": 5})";
    EXPECT_EQ(saidOf(sheetText(origin, pitch, three)), "");
    EXPECT_EQ(saidOf(sheetText(origin, pitch, R"({"across": 4, "down": 5})")),
              "s.json: The labels reach beyond the page. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(sheetText(R"({"left": 0, "top": 1})", pitch, three)),
              "s.json: The labels reach beyond the page. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(sheetText(origin, R"({"across": 29, "down": 10})", three)),
              "s.json: 'pitch' is less than a label: they lie on one another. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(sheetText(origin, pitch, R"({"across": 0, "down": 5})")),
              "s.json: 'count' is not from 1 to 100 each way. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(sheetText(origin, pitch, three, "\"margin\": 5")),
              "s.json: 'margin' leaves nothing of a label to write on. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(sheetText(origin, pitch, three, R"("margin": 1, "fold": 8)")),
              "s.json: 'fold' belongs to a flag, and leaves room on both sides. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(sheetText(origin, pitch, three, R"("margin": 1, "form": "flag", "fold": 31)")),
              "s.json: 'fold' belongs to a flag, and leaves room on both sides. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(sheetText(origin, pitch, three, R"("margin": 1, "form": "wrap", "written": 11)")),
              "s.json: 'written' belongs to a wrap label on a sheet, and is no more than its height. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(R"({"name": "s", "words": {"en": "s"}, "tape": 1, "margin": 0})"),
              "s.json: 'tape' is no width from 3 to 100 mm. Measure the labels and write what is true, in mm.");
    EXPECT_EQ(saidOf(R"({"name": "other", "words": {"en": "s"}, "tape": 12, "margin": 1})"),
              "s.json: The label sheet 'other' does not bear its file's name. Call the file other.json, or the sheet as the file.");
    EXPECT_NE(saidOf(R"({"name": "s", "words": {"en": "s"}, "tape": 12, "margin": 1, "colour": "RD"})").find("colour"), std::string::npos);
    EXPECT_NE(saidOf("{").find("line 1"), std::string::npos);
}

} // namespace
} // namespace doorloom
