#pragma once

#include "base/result.h"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// The cells of a connection list from a spreadsheet, and which of its columns says what.
namespace doorloom {

struct CellRow {
    std::size_t line = 0; // where it begins in the file
    std::vector<std::string> cells;

    friend bool operator==(const CellRow&, const CellRow&) = default;
};

inline constexpr std::size_t mostTableBytes = 16u * 1024 * 1024;
inline constexpr std::size_t mostTableRows = 100'000;
inline constexpr std::size_t mostTableColumns = 200;

// Reads a file as spreadsheets write it: commas, semicolons or tabs (whichever the first row has most of, or
// what "sep=;" in front of it says), cells in quotes, a byte-order mark, line ends of any system. The guard
// of papers/csv.h in front of a formula is taken off, blanks around a cell too; rows without a word are left
// out. Errors: what is not UTF-8, a quote without its end, too many rows or columns, each with its line; no
// rows Cost:   linear
Result<std::vector<CellRow>> readTable(std::string_view text, const std::string& name);

enum class ListColumn { FromDevice, FromTerminal, ToDevice, ToTerminal, Cable, Core, Colour };
inline constexpr std::size_t listColumnCount = 7;
Words wordsOf(ListColumn column); // "from device"

struct ListLayout {
    bool hasHead = false; // the first row names the columns
    std::array<std::optional<std::size_t>, listColumnCount>
        columns; // by ListColumn; nothing: not in this list

    friend bool operator==(const ListLayout&, const ListLayout&) = default;
};

// By the names in the first row, in English or Spanish; without such names: the columns in the order of
// ListColumn, or from and to where there are but two.
ListLayout guessedLayout(const std::vector<CellRow>& table);

std::size_t widthOf(const std::vector<CellRow>& table); // the most cells of a row

// Empty where the row or the layout does not have it.
std::string cellOf(const ListLayout& layout, const CellRow& row, ListColumn column);

} // namespace doorloom
