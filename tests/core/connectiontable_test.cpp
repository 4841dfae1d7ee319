#include "file/connectiontable.h"

#include "papers/csv.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

using Cells = std::vector<std::vector<std::string>>;

Cells cellsOf(std::string_view text)
{
    const Result<std::vector<CellRow>> table = readTable(text, "list.csv");
    EXPECT_TRUE(table.ok()) << (table.ok() ? "" : inWords(table.problem()));
    Cells cells;
    if (table.ok())
        for (const CellRow& row : table.value())
            cells.push_back(row.cells);
    return cells;
}

std::string refusal(std::string_view text)
{
    const Result<std::vector<CellRow>> table = readTable(text, "list.csv");
    return table.ok() ? "was read" : inWords(table.problem());
}

ListLayout layoutOf(std::string_view head)
{
    return guessedLayout(readTable(head, "list.csv").value());
}

std::array<std::optional<std::size_t>, listColumnCount>
columns(std::initializer_list<std::optional<std::size_t>> list)
{
    std::array<std::optional<std::size_t>, listColumnCount> all;
    std::copy(list.begin(), list.end(), all.begin());
    return all;
}

constexpr std::nullopt_t none = std::nullopt;

TEST(ConnectionTable, IsReadWithCommasSemicolonsAndTabs)
{
    const Cells cells = {{"PS1", "+", "LM1", "+"}, {"PS1", "−", "", "x,y;z"}};
    EXPECT_EQ(cellsOf("PS1,+,LM1,+\nPS1,−,,\"x,y;z\"\n"), cells);
    EXPECT_EQ(cellsOf("PS1;+;LM1;+\nPS1;−;;\"x,y;z\"\n"), cells);
    EXPECT_EQ(cellsOf("PS1\t+\tLM1\t+\nPS1\t−\t\tx,y;z\n"), cells);
    EXPECT_EQ(cellsOf("sep=;\r\nPS1;+;LM1;+\r\nPS1;−;;\"x,y;z\"\r\n"), cells);
}

TEST(ConnectionTable, IsReadWithAByteOrderMarkAndTheLineEndsOfAnySystem)
{
    const Cells cells = {{"a", "b"}, {"c", "d"}};
    EXPECT_EQ(cellsOf("\xEF\xBB\xBF"
                      "a,b\r\nc,d\r\n"),
              cells);
    EXPECT_EQ(cellsOf("a,b\rc,d"), cells);
    EXPECT_EQ(cellsOf("a,b\n\n , \nc,d\n\n"), cells) << "rows without a word are left out";
}

TEST(ConnectionTable, KeepsQuotesLineEndsAndFormulasOfACell)
{
    EXPECT_EQ(cellsOf("\"say \"\"NO\"\"\",\"two\r\nlines\"\n"), (Cells{{"say \"NO\"", "two\nlines"}}));
    const std::vector<std::string> odd = {"+24", "+", "'+24", "=1", "\"", "a,b", "−"};
    EXPECT_EQ(cellsOf(csvRow(odd)), (Cells{odd})) << "the guard of our own CSV is taken off";
}

TEST(ConnectionTable, KnowsTheLineOfEachRow)
{
    const auto table = readTable("a,b\n\n\"x\ny\",d\ne,f", "list.csv");
    ASSERT_TRUE(table.ok());
    ASSERT_EQ(table.value().size(), 3u);
    EXPECT_EQ(table.value()[1].line, 3u);
    EXPECT_EQ(table.value()[2].line, 5u);
}

TEST(ConnectionTable, IsRefusedWithTheLineAndWhatToDo)
{
    EXPECT_EQ(refusal(""), "list.csv: The list has no rows. Export the sheet that has the connections.");
    EXPECT_EQ(refusal("\n , \n"),
              "list.csv: The list has no rows. Export the sheet that has the connections.");
    EXPECT_EQ(refusal("a,b\nc,\"d\ne,f\n"),
              "list.csv, line 2: A quote that begins here has no end. Close it, or double a quote that "
              "belongs to the words.");
    EXPECT_EQ(refusal("a,b\nse\xF1"
                      "al,d\n"),
              "list.csv, line 2: This is no UTF-8 text. Save the sheet as 'CSV UTF-8'.");
    EXPECT_EQ(refusal("\xFF\xFE"
                      "a"),
              "list.csv, line 1: This is no UTF-8 text. Save the sheet as 'CSV UTF-8'.");
    EXPECT_EQ(refusal(std::string("a\0b", 3)),
              "list.csv, line 1: This is no UTF-8 text. Save the sheet as 'CSV UTF-8'.");
    EXPECT_EQ(refusal(std::string(mostTableColumns, ',')),
              "list.csv: The list has no rows. Export the sheet that has the connections.");
    EXPECT_EQ(refusal("x" + std::string(mostTableColumns, ',')),
              "list.csv, line 1: The list has more than 100000 rows or 200 columns. "
              "Export only the connections, in several lists if need be.");
}

TEST(ConnectionTable, GuessesColumnsByTheirNamesInEnglishAndSpanish)
{
    const ListLayout english =
        layoutOf("No,From device,From terminal,To device,To terminal,Cable,Core,Colour\n");
    EXPECT_TRUE(english.hasHead);
    EXPECT_EQ(english.columns, columns({1, 2, 3, 4, 5, 6, 7}));
    EXPECT_EQ(layoutOf("Cable;Núm. de hilo;Desde;Borne;Hasta;Borne;Color\n").columns,
              columns({2, 3, 4, 5, 0, 1, 6}));
    EXPECT_EQ(layoutOf("DEVICE,TERMINAL,DEVICE,TERMINAL\n").columns, columns({0, 1, 2, 3, none, none, none}))
        << "first from, then to";
    EXPECT_EQ(layoutOf("device,terminal,cable,core,colour,far_device,far_terminal\n").columns,
              columns({0, 1, 5, 6, 2, 3, 4}));
}

TEST(ConnectionTable, TakesColumnsInTheirOrderWithoutNames)
{
    const ListLayout plain = layoutOf("PS1,+,LM1,+,C1\nPS1,−,LM1,−,C1\n");
    EXPECT_FALSE(plain.hasHead);
    EXPECT_EQ(plain.columns, columns({0, 1, 2, 3, 4, none, none}));
    EXPECT_EQ(layoutOf("PS1:+,LM1:+\n").columns, columns({0, none, 1, none, none, none, none}));
}

} // namespace
} // namespace doorloom
