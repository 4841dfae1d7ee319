#include "papers/csv.h"

#include "core/papercsv.h"
#include "core/random.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

using papercsv::readCells;
using papercsv::unguarded;

TEST(Csv, QuotesWhatWouldBreakARow)
{
    EXPECT_EQ(csvRow({"plain", "a,b", "say \"so\"", "two\r\nlines", ""}),
              "plain,\"a,b\",\"say \"\"so\"\"\",\"two\r\nlines\",\r\n");
}

TEST(Csv, LeavesTerminalsThatAreASignAlone)
{
    for (const char* terminal : {"+", "-", "−", "=", "@", "B+", "1'", "'", "''", ""})
        EXPECT_EQ(guardedCell(terminal), terminal);
}

TEST(Csv, KeepsASpreadsheetFromRunningACell)
{
    EXPECT_EQ(guardedCell("+24"), "'+24");
    EXPECT_EQ(guardedCell("=1+1"), "'=1+1");
    EXPECT_EQ(guardedCell("-5 V"), "'-5 V");
    EXPECT_EQ(guardedCell("@SUM(A1)"), "'@SUM(A1)");
    EXPECT_EQ(guardedCell("\t=1"), "'\t=1");
    EXPECT_EQ(guardedCell("'=1"), "''=1");
}

TEST(Csv, IsReadBackAsItWas)
{
    forEachSeed(300, [](Random& random) {
        const std::vector<std::string> letters = {"=",  "+",  "-",  "@", "'", "\"", ",",
                                                  "\r", "\n", "\t", "a", "−", " "};
        std::vector<std::vector<std::string>> rows;
        std::string text;
        for (int row = random.between(1, 4); row > 0; --row) {
            std::vector<std::string> cells(static_cast<std::size_t>(random.between(2, 4)));
            for (std::string& cell : cells)
                for (int length = random.between(0, 5); length > 0; --length)
                    cell += random.oneOf(letters);
            text += csvRow(cells);
            rows.push_back(cells);
        }
        auto read = readCells(text);
        for (auto& row : read)
            for (std::string& cell : row)
                cell = unguarded(cell);
        EXPECT_EQ(read, rows);
    });
}

} // namespace
} // namespace doorloom
