#include "print/labelpages.h"
#include "print/printpdf.h"

#include "core/papersite.h"
#include "external/poppler.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <set>

// What other programs find on the printed labels: where poppler says that the words are, where ink is on its pictures, and what a
// reader of codes (zbar) reads.
namespace doorloom {
namespace {

constexpr double millimetre = 72 / 25.4, tolerance = 0.05; // mm
constexpr double capitals = 0.729; // of DejaVu Sans: its OS/2 table says 1493 of 2048 units (read)

struct Printed {
    LabelSheet sheet;
    TagSheet tags;
    std::filesystem::path pdf;
};

class PrintedLabels : public testing::Test {
protected:
    static void SetUpTestSuite() { beginPages(); }
    void SetUp() override { std::filesystem::create_directories(folder_); }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    Printed printed(const std::string& sheet, LabelSetup setup)
    {
        const Job job = papersite::oneOfEverything();
        setup.sheet = *readLabelSheets(SOURCE_FOLDER "/resources/labels").value().find(sheet);
        const PaperSetup paper{Language::English, "0123456789ab"};
        const auto pdf = paperPdf("tags", job, paper, {.fontFolder = SOURCE_FOLDER "/resources/font", .labels = setup});
        if (!pdf.ok())
            throw std::runtime_error(inWords(pdf.problem()));
        std::ofstream(folder_ / "labels.pdf", std::ios::binary) << pdf.value();
        return {setup.sheet, tagsOf(job, paper.digest), folder_ / "labels.pdf"};
    }

    const std::filesystem::path folder_ = std::filesystem::temp_directory_path() / ("printedlabels" + std::to_string(::getpid()));
};

// Row and column of the label that a spot is on, by the data of the sheet alone.
std::pair<int, int> cellAt(const LabelSheet& sheet, double left, double top)
{
    return {static_cast<int>(std::floor((top - sheet.first.top.value) / sheet.pitch.down.value)),
            static_cast<int>(std::floor((left - sheet.first.left.value) / sheet.pitch.across.value))};
}

using Cells = std::map<std::pair<int, int>, std::vector<WordBox>>;

Cells wordsByCell(const LabelSheet& sheet, const std::vector<WordBox>& page)
{
    Cells cells;
    for (const WordBox& word : page)
        cells[cellAt(sheet, (word.x + word.right) / 2 / millimetre, word.baseline / millimetre)].push_back(word);
    return cells;
}

// The line's words from first to last, and its middle.
double middleOfLine(const std::vector<WordBox>& words, double baseline)
{
    double left = 1e9, right = 0;
    for (const WordBox& word : words)
        if (std::abs(word.baseline - baseline) < 0.5) {
            left = std::min(left, word.x);
            right = std::max(right, word.right);
        }
    return (left + right) / 2 / millimetre;
}

void expectInTheMiddle(const LabelSheet& sheet, std::pair<int, int> cell, const std::vector<WordBox>& words)
{
    const double left = sheet.first.left.value + cell.second * sheet.pitch.across.value, top = sheet.first.top.value + cell.first * sheet.pitch.down.value;
    const double height = sheet.written.value_or(sheet.label.height).value;
    const auto [first, last] = std::minmax_element(words.begin(), words.end(), [](const auto& a, const auto& b) { return a.baseline < b.baseline; });
    EXPECT_NEAR((first->baseline - capitals * first->size + last->baseline) / 2 / millimetre, top + height / 2, tolerance) << first->text;
    for (const WordBox& word : words) {
        EXPECT_NEAR(middleOfLine(words, word.baseline), left + sheet.label.width.value / 2, tolerance) << word.text;
        EXPECT_GE(word.x / millimetre, left + sheet.margin.value - tolerance) << word.text;
        EXPECT_LE(word.right / millimetre, left + sheet.label.width.value - sheet.margin.value + tolerance) << word.text;
    }
}

// From the upper line to the lower, from left to right.
std::string textOf(std::vector<WordBox> words)
{
    std::sort(words.begin(), words.end(), [](const WordBox& a, const WordBox& b) {
        return std::abs(a.baseline - b.baseline) > 0.5 ? a.baseline < b.baseline : a.x < b.x;
    });
    std::string text;
    for (const WordBox& word : words)
        text += (text.empty() ? "" : " ") + word.text;
    return text;
}

TEST_F(PrintedLabels, AreWhereTheDataOfTheSheetSays)
{
    if (!isThere("pdftotext"))
        GTEST_SKIP() << "pdftotext is missing (package poppler-utils)";
    for (const char* name : {"a4-3x8", "a4-3x7", "a4-4x12", "a4-5x13", "letter-3x10", "letter-2x5", "letter-4x20", "a4-wrap-7x6"})
        for (const LabelOrder order : {LabelOrder::ByRows, LabelOrder::ByColumns}) {
            SCOPED_TRACE(name);
            LabelSetup setup;
            setup.start = 6;
            setup.order = order;
            if (std::string(name).find("wrap") != std::string::npos) // of which no text is short enough to be there twice
                setup.only = TagKind::ConductorEnd;
            const auto [sheet, tags, pdf] = printed(name, setup);
            std::size_t next = 5, tag = 0;
            for (const auto& page : wordsByPage(pdf)) {
                const Cells cells = wordsByCell(sheet, page);
                const int across = sheet.count.across, down = sheet.count.down;
                for (; next < static_cast<std::size_t>(across * down) && tag < tags.tags.size(); ++next, ++tag) {
                    while (setup.only && tags.tags[tag].kind != *setup.only)
                        ++tag;
                    const int i = static_cast<int>(next);
                    const std::pair cell = order == LabelOrder::ByRows ? std::pair(i / across, i % across) : std::pair(i % down, i / down);
                    ASSERT_TRUE(cells.contains(cell)) << inWords(tags.tags[tag].large);
                    EXPECT_TRUE(textOf(cells.at(cell)).starts_with(inWords(tags.tags[tag].large))) << textOf(cells.at(cell));
                    expectInTheMiddle(sheet, cell, cells.at(cell));
                }
                next = 0;
            }
            EXPECT_EQ(tag, tags.tags.size());
        }
}

// ---- Pictures.

struct Picture {
    int width = 0, height = 0;
    std::string grey;
    bool isInk(int x, int y) const { return static_cast<unsigned char>(grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)]) < 128; }
};

Picture pictureOf(const std::filesystem::path& pdf, int page, int dpi)
{
    const std::string which = " -f " + std::to_string(page) + " -l " + std::to_string(page);
    std::istringstream in(outputOf("pdftoppm -gray -r " + std::to_string(dpi) + which + " " + pdf.string()));
    std::string magic;
    Picture picture;
    int most = 0;
    in >> magic >> picture.width >> picture.height >> most;
    in.get();
    picture.grey.assign(std::istreambuf_iterator<char>(in), {});
    EXPECT_EQ(picture.grey.size(), static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height));
    return picture;
}

TEST_F(PrintedLabels, HaveInkOnNothingElseThanTheirLabels)
{
    if (!isThere("pdftoppm"))
        GTEST_SKIP() << "pdftoppm is missing (package poppler-utils)";
    LabelSetup setup;
    setup.start = 12;
    const auto [sheet, tags, pdf] = printed("a4-7x27", setup);
    const Picture picture = pictureOf(pdf, 1, 600);
    std::set<std::pair<int, int>> inked;
    int outside = 0;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            if (picture.isInk(x, y)) {
                const double left = x * 25.4 / 600, top = y * 25.4 / 600;
                const auto cell = cellAt(sheet, left, top);
                const double across = left - sheet.first.left.value - cell.second * sheet.pitch.across.value, down = top - sheet.first.top.value - cell.first * sheet.pitch.down.value;
                outside += across < sheet.margin.value / 2 || across > sheet.label.width.value - sheet.margin.value / 2 || down < sheet.margin.value / 2 ||
                           down > sheet.label.height.value - sheet.margin.value / 2;
                inked.insert(cell);
            }
    EXPECT_EQ(outside, 0);
    EXPECT_EQ(inked.size(), tags.tags.size());
    EXPECT_FALSE(inked.contains(std::pair(1, 3)));
    EXPECT_TRUE(inked.contains(std::pair(1, 4))); // the twelfth, seven in a row
}

TEST_F(PrintedLabels, HaveAnOffsetPageWhoseLinesAreWhereItSays)
{
    if (!isThere("pdftoppm"))
        GTEST_SKIP() << "pdftoppm is missing (package poppler-utils)";
    LabelSetup setup;
    setup.offsetPage = true;
    const Picture picture = pictureOf(printed("a4-3x8", setup).pdf, 1, 600);
    const auto middleOf = [](auto isInk, int length) {
        std::vector<int> at;
        for (int i = 0; i < length; ++i)
            if (isInk(i))
                at.push_back(i);
        return at.empty() ? -1.0 : (at.front() + at.back() + 1) / 2.0 * 25.4 / 600;
    };
    EXPECT_NEAR(middleOf([&](int x) { return picture.isInk(x, picture.height - 20); }, picture.width), 30, tolerance);
    EXPECT_NEAR(middleOf([&](int y) { return picture.isInk(20, y); }, picture.height), 30, tolerance);
}

TEST_F(PrintedLabels, CarryCodesThatAReaderReads)
{
    if (!isThere("pdftoppm") || !isThere("zbarimg"))
        GTEST_SKIP() << "pdftoppm or zbarimg is missing (packages poppler-utils, zbar-tools)";
    LabelSetup setup;
    setup.withQr = true;
    setup.only = TagKind::Cable;
    for (const char* name : {"a4-3x8", "letter-3x10"}) {
        const auto [sheet, tags, pdf] = printed(name, setup);
        outputOf("pdftoppm -r 300 -png -gray " + pdf.string() + " " + (folder_ / name).string());
        std::multiset<std::string> wanted, read;
        for (const Tag& tag : tags.tags)
            if (tag.kind == TagKind::Cable)
                wanted.insert(inWords(tag.large) + " " + inWords(tag.small) + " J-7 B 0123456789ab");
        std::string code;
        for (const std::string& line : linesOf(outputOf("zbarimg -q --raw -Sdisable -Sqrcode.enable " + (folder_ / name).string() + "-*.png 2>/dev/null")))
            if (line.starts_with("J-7")) { // each ends with the job
                read.insert(code + line);
                code.clear();
            } else {
                code += line + " ";
            }
        EXPECT_EQ(read, wanted) << name;
    }
}

} // namespace
} // namespace doorloom
