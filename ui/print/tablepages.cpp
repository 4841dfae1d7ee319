#include "print/tablepages.h"

#include "print/printwords.h"

#include <QRegularExpression>

namespace doorloom {
namespace {

constexpr double leastRows = 3; // under the heads of a table, or it begins on the next sheet

// A number stays with its unit, and with its †.
QString keptTogether(QString text)
{
    static const QRegularExpression units(QStringLiteral("(?<=[0-9]) (?=(AWG|mm2|V|A|Ω|m|ft|%)(?![A-Za-z]))| (?=†)"));
    return text.replace(units, QString(QChar(QChar::Nbsp)));
}

PrintedTable printedTable(const PaperTable& table)
{
    PrintedTable all{printWords(table.title), printWords(table.none), printedHeads(table.heads), {}};
    for (const auto& cells : table.rows)
        all.rows.push_back({printedRow(cells, table.bold), tableRowHeight, {}});
    return all;
}

} // namespace

PrintedCells printedRow(const std::vector<std::string>& cells, const std::set<std::size_t>& bold)
{
    PrintedCells all;
    for (std::size_t column = 0; column < cells.size(); ++column)
        all.push_back({keptTogether(printWords(cells[column])), smallPrint, bold.contains(column) ? Weight::Bold : Weight::Plain});
    return all;
}

PrintedCells printedHeads(const std::vector<std::string>& heads)
{
    PrintedCells all = printedRow(heads, {});
    for (PrintedCell& cell : all)
        cell.weight = Weight::Bold;
    return all;
}

Result<FittedColumns> columnsOf(const PrintedTable& table, const PaperFont& font, double room, Text paper)
{
    return fittedTable(font, table.heads.size(), room, paper, [&](TableMeasure& measure) {
        measure.addHead(table.heads);
        for (const TableRow& row : table.rows)
            measure.addRow(row.cells);
    });
}

void putTable(PageStack& stack, const PaperPieces& make, const PrintedTable& table, const FittedColumns& columns)
{
    const auto pieceOf = [&](const TableRow& row, double rule) {
        Piece piece = cellsPiece(inColumns(row.cells, columns), make.font(), columns.breaks, row.height);
        if (!row.under.isEmpty())
            append(piece, make.paragraph(row.under, smallPrint, Weight::Plain, cellPadding, 3.5));
        piece.rules.push_back({0, piece.height, make.width(), piece.height, rule});
        return piece;
    };
    const Piece heads = pieceOf({table.heads, 0, {}}, thinRule);
    const auto begin = [&](Start start) {
        stack.put(make.heading(table.title, start));
        stack.put(heads);
    };
    if (make.heading({}, Start::First).height + heads.height + leastRows * tableRowHeight > stack.left())
        stack.turn();
    begin(Start::First);
    if (table.rows.empty())
        stack.put(make.paragraph(table.none, smallPrint, Weight::Plain, cellPadding, 4));
    for (const TableRow& row : table.rows) {
        const Piece piece = pieceOf(row, hairRule);
        if (piece.height > stack.left()) {
            stack.turn();
            begin(Start::Continued);
        }
        stack.put(piece);
    }
    if (!stack.atTop())
        stack.put(blankPiece(12));
}

Result<std::vector<PrintedPage>> tablePages(const TablePaper& paper, const PaperFont& font, const PageSetup& setup)
{
    const PageSize room = roomOn(setup.size);
    const PaperPieces make(font, setup.language, room.width);
    PageStack stack(room.height, dangersPiece(make, paper.title));
    putOpening(stack, make, paper.title, paper.name, setup.size, paper.opening);
    for (const PaperTable& each : paper.tables) {
        const PrintedTable table = printedTable(each);
        const Result<FittedColumns> columns = columnsOf(table, font, room.width, paper.name);
        if (!font.lettersMissing().isEmpty())
            return lettersMissing(font, paper.name);
        if (!columns.ok())
            return columns.problem();
        putTable(stack, make, table, columns.value());
    }
    return finishedSheets(stack.taken(), make, paper.title, paper.name, setup.size);
}

} // namespace doorloom
