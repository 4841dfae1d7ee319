#include "print/printpdf.h"

#include "core/papersite.h"
#include "external/poppler.h"
#include "external/samples.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

// What other programs (poppler's pdftotext and pdffonts) find in the printed schedule.
namespace doorloom {
namespace {

std::filesystem::path writtenPdf(const Schedule& schedule, SheetSize size, Language language)
{
    beginPages();
    const auto pdf = schedulePdf(
        schedule, {.size = size, .language = language, .fontFolder = SOURCE_FOLDER "/resources/font"});
    if (!pdf.ok())
        throw std::runtime_error(inWords(pdf.problem()));
    const auto path =
        std::filesystem::temp_directory_path() / ("schedule" + std::to_string(::getpid()) + ".pdf");
    std::ofstream(path, std::ios::binary) << pdf.value();
    return path;
}

// Runs of blanks as one, none at the ends.
std::string squeezed(const std::string& text)
{
    std::istringstream in(text);
    std::string all;
    for (std::string word; in >> word;)
        all += (all.empty() ? "" : " ") + word;
    return all;
}

// A row as it is to be read off the page: a row without a conductor leaves its dashes out.
std::vector<std::string> expectedCells(const ScheduleRow& row, Language language)
{
    std::vector<std::string> cells;
    const ScheduleCells all = cellsOf(row, language);
    for (std::size_t column = 0; column < all.size(); ++column) {
        const bool leftOut = !row.conductor && column > TerminalColumn && all[column] == "–";
        cells.push_back(leftOut ? "" : squeezed(all[column]));
    }
    return cells;
}

std::vector<std::vector<std::string>> expectedRows(const Schedule& schedule, Language language)
{
    std::vector<std::vector<std::string>> rows;
    for (const ScheduleBox& box : schedule.boxes)
        for (const ScheduleBlock& block : box.blocks)
            for (const ScheduleRow& row : block.rows)
                rows.push_back(expectedCells(row, language));
    return rows;
}

// ---- Columns, from the boxes that pdftotext gives every word.

std::string firstWord(const std::string& text)
{
    return text.substr(0, text.find(' '));
}

// Where the columns begin, from the first line of their heads; empty where the page has none.
std::vector<double> columnsOf(const std::vector<WordBox>& page, const ScheduleCells& heads)
{
    for (const WordBox& terminal : page) {
        if (terminal.text != heads[0])
            continue;
        std::vector<double> starts;
        for (const std::string& head : heads)
            for (const WordBox& word : page)
                if (word.text == firstWord(head) && std::abs(word.baseline - terminal.baseline) < 1 &&
                    (starts.empty() || word.x > starts.back() + 1)) {
                    starts.push_back(word.x);
                    break;
                }
        if (starts.size() == heads.size())
            return starts;
    }
    return {};
}

using Line = std::vector<WordBox>;

// Words on one baseline (a tick box hangs a little lower), from left to right.
std::vector<Line> inLines(std::vector<WordBox> words)
{
    std::sort(words.begin(), words.end(),
              [](const WordBox& a, const WordBox& b) { return a.baseline < b.baseline; });
    std::vector<Line> lines;
    for (const WordBox& word : words) {
        if (lines.empty() || word.baseline - lines.back().front().baseline > 2.5)
            lines.emplace_back();
        lines.back().push_back(word);
    }
    for (Line& line : lines)
        std::sort(line.begin(), line.end(), [](const WordBox& a, const WordBox& b) { return a.x < b.x; });
    return lines;
}

class TableReader {
public:
    TableReader(const ScheduleCells& heads, std::vector<std::string> feet)
        : heads_(heads), feet_(std::move(feet))
    {
    }

    void read(const std::vector<WordBox>& page)
    {
        const auto starts = columnsOf(page, heads_);
        for (const Line& line : inLines(page)) {
            const std::string& first = line.front().text;
            if (std::find(feet_.begin(), feet_.end(), first) != feet_.end())
                part_ = Part::Outside;
            else if (first == heads_[0] && line.back().text == firstWord(heads_.back()))
                part_ = Part::Heads;
            else if (part_ == Part::Rows && first == "strip:")
                continue;
            else if (part_ == Part::Heads && (line.front().size > 11 || first == "strip:"))
                part_ = Part::Rows;
            if (part_ == Part::Rows && first != "strip:")
                add(line, starts);
        }
        part_ = Part::Outside; // the next page has heads of its own
    }

    std::vector<std::vector<std::string>> rows;

private:
    enum class Part { Outside, Heads, Rows };

    void add(const Line& line, const std::vector<double>& starts)
    {
        if (std::abs(line.front().x - starts[0]) < 1.5)
            rows.emplace_back(heads_.size());
        for (const WordBox& word : line) {
            const auto column = static_cast<std::size_t>(
                std::upper_bound(starts.begin(), starts.end(), word.x + 1.5) - starts.begin());
            if (column == 0 || rows.empty())
                continue; // the foot of the page
            std::string& cell = rows.back()[column - 1];
            cell += (cell.empty() ? "" : " ") + word.text;
        }
    }

    ScheduleCells heads_;
    std::vector<std::string> feet_;
    Part part_ = Part::Outside;
};

// A note runs across: its words are put back into the column where it starts.
std::vector<std::string> withNoteJoined(std::vector<std::string> cells,
                                        const std::vector<std::string>& expected)
{
    if (!expected[TagColumn].empty())
        return cells;
    for (std::size_t column = WireColumn + 1; column < cells.size(); ++column)
        if (!cells[column].empty()) {
            cells[WireColumn] += " " + cells[column];
            cells[column].clear();
        }
    return cells;
}

// Marks inside a name may end a line, which then reads as a blank.
std::string withoutBlanks(std::string text)
{
    std::erase(text, ' ');
    return text;
}

void expectSameColumns(const Schedule& schedule, SheetSize size)
{
    constexpr Language language = Language::English;
    TableReader reader(headCells(Language::English), {"Count", "Nothing", "Revision"});
    for (const auto& page : wordsByPage(writtenPdf(schedule, size, language)))
        reader.read(page);
    const auto expected = expectedRows(schedule, language);
    ASSERT_EQ(reader.rows.size(), expected.size());
    for (std::size_t row = 0; row < expected.size(); ++row) {
        const auto read = withNoteJoined(reader.rows[row], expected[row]);
        for (std::size_t column = 0; column < scheduleColumns; ++column)
            EXPECT_EQ(withoutBlanks(read[column]), withoutBlanks(expected[row][column]))
                << "row " << row << ", column " << column;
    }
}

// ---- Order, from the page's plain text: the rows' first lines one after another.

void expectSameOrder(const Schedule& schedule, SheetSize size, Language language)
{
    const auto lines =
        linesOf(outputOf("pdftotext -layout " + writtenPdf(schedule, size, language).string() + " -"));
    std::size_t at = 0;
    for (const auto& row : expectedRows(schedule, language)) {
        const std::string start = squeezed(row[TerminalColumn] + " " + row[SignColumn]);
        const auto found =
            std::find_if(lines.begin() + static_cast<std::ptrdiff_t>(at), lines.end(), [&](const auto& line) {
                const std::string whole = squeezed(line);
                return whole.starts_with(firstWord(start) + " ") &&
                       whole.find(firstWord(row[WireColumn])) != std::string::npos &&
                       whole.find(firstWord(row[FarColumn])) != std::string::npos;
            });
        ASSERT_NE(found, lines.end())
            << "no line for " << start << ", " << row[WireColumn] << " after line " << at;
        at = static_cast<std::size_t>(found - lines.begin()) + 1;
    }
}

std::vector<std::pair<std::string, Job>> jobs()
{
    std::vector<std::pair<std::string, Job>> all = {{"one of everything", papersite::oneOfEverything()}};
    for (auto& [name, job] : sampleJobs())
        all.emplace_back(name, job);
    return all;
}

TEST(PrintedSchedule, HoldsTheSameCellsInTheSameColumns)
{
    if (!isThere("pdftotext"))
        GTEST_SKIP() << "pdftotext is missing (package poppler-utils)";
    for (const auto& [name, job] : jobs())
        for (const SheetSize size : {SheetSize::A4, SheetSize::Letter}) {
            SCOPED_TRACE(name);
            expectSameColumns(scheduleOf(job, "0123456789ab"), size);
        }
}

TEST(PrintedSchedule, HoldsTheRowsInTheirOrder)
{
    if (!isThere("pdftotext"))
        GTEST_SKIP() << "pdftotext is missing (package poppler-utils)";
    for (const auto& [name, job] : jobs())
        for (const Language language : {Language::English, Language::Spanish}) {
            SCOPED_TRACE(name);
            expectSameOrder(scheduleOf(job, "0123456789ab"), SheetSize::A4, language);
        }
}

TEST(PrintedSchedule, EmbedsTheShippedFontAndNoOther)
{
    if (!isThere("pdffonts"))
        GTEST_SKIP() << "pdffonts is missing (package poppler-utils)";
    const auto lines = linesOf(outputOf(
        "pdffonts " +
        writtenPdf(scheduleOf(papersite::oneOfEverything(), ""), SheetSize::A4, Language::Spanish).string()));
    ASSERT_EQ(lines.size(), 4u); // two of heads
    for (std::size_t font = 2; font < lines.size(); ++font) {
        std::istringstream columns(lines[font]);
        std::string name, first, second, encoding, embedded;
        columns >> name >> first >> second >> encoding >> embedded;
        EXPECT_TRUE(name.ends_with("DejaVuSans") || name.ends_with("DejaVuSans-Bold")) << name;
        EXPECT_EQ(embedded, "yes") << lines[font];
    }
}

} // namespace
} // namespace doorloom
