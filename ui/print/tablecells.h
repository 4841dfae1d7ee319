#pragma once

#include "print/piece.h"

#include <functional>
#include <optional>
#include <vector>

// Tables: columns as wide as what stands in them, and their rows.
namespace doorloom {

inline constexpr double cellPadding = 4.5;

struct PrintedCell {
    QString text;
    double points = smallPrint;
    Weight weight = Weight::Plain;
};
using PrintedCells = std::vector<PrintedCell>; // one a column

// What has room to spare gives, and words are broken only where whole words do not fit.
struct FittedColumns {
    std::vector<double> widths; // points, padding included
    Breaks breaks = Breaks::BetweenWords;
};

class TableMeasure {
public:
    TableMeasure(const PaperFont& font, std::size_t columns, Breaks breaks);

    void addHead(const PrintedCells& cells) { add(cells, false); } // a head may be broken into lines
    void addRow(const PrintedCells& cells) { add(cells, true); }

    std::optional<FittedColumns> fitted(double room) const; // nothing: even broken words do not fit
    const QString& widestText() const;                      // of the column that takes most

private:
    void add(const PrintedCells& cells, bool wantsOneLine);
    std::vector<double> limited(double limit) const;

    const PaperFont& font_;
    Breaks breaks_;
    std::vector<double> natural_, least_;
    std::vector<QString> widest_;
};

// In:     adds heads and rows, and is called once or twice
// Errors: the text that is too wide, when even broken words do not fit
Result<FittedColumns> fittedTable(const PaperFont& font, std::size_t columns, double room, Text paper,
                                  const std::function<void(TableMeasure&)>& addAll);

// A cell where it stands, with the room for its words.
struct StoodCell {
    double x = 0, room = 0;
    PrintedCell cell;
};
std::vector<StoodCell> inColumns(const PrintedCells& cells, const FittedColumns& columns);

// The first lines of all cells on one baseline, so that the eye, and a reader of the PDF's text, keeps to the row.
Piece cellsPiece(const std::vector<StoodCell>& cells, const PaperFont& font, Breaks breaks, double leastHeight);

} // namespace doorloom
