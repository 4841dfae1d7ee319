#pragma once

#include "papers/tablepaper.h"
#include "print/papersheet.h"
#include "print/tablecells.h"

#include <set>

// Tables under their headings, which go on over as many sheets as they need.
namespace doorloom {

inline constexpr double tableRowHeight = 7 * 72 / 25.4; // 7 mm

struct TableRow {
    PrintedCells cells;
    double height = tableRowHeight;
    QString under; // across the row, below its cells
};

// One table under its heading.
struct PrintedTable {
    QString title, none; // none: what is said where there is no row
    PrintedCells heads;
    std::vector<TableRow> rows;
};

PrintedCells printedRow(const std::vector<std::string>& cells, const std::set<std::size_t>& bold);
PrintedCells printedHeads(const std::vector<std::string>& heads);

// Errors: as fittedTable
Result<FittedColumns> columnsOf(const PrintedTable& table, const PaperFont& font, double room, Text paper);
// A table begins on the next sheet where less than three of its rows would stand under its heads.
void putTable(PageStack& stack, const PaperPieces& make, const PrintedTable& table, const FittedColumns& columns);

// A paper that is nothing but tables. Nothing is clipped or elided: what is too wide is wrapped.
// Errors: as schedulePages
Result<std::vector<PrintedPage>> tablePages(const TablePaper& paper, const PaperFont& font, const PageSetup& setup);

} // namespace doorloom
