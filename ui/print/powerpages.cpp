#include "print/powerpages.h"

#include "papers/powerforms.h"
#include "print/papersheet.h"
#include "print/printwords.h"
#include "print/tablecells.h"

#include <QRegularExpression>

#include <set>

namespace doorloom {
namespace {

constexpr double rowHeight = 7 * 72 / 25.4, drawnHeight = 4.5 * 72 / 25.4; // 7 and 4.5 mm
constexpr double leastRows = 3; // under the heads of a table, or it begins on the next sheet

struct TableRow {
    PrintedCells cells;
    double height = rowHeight;
    QString under; // across the row, below its cells
};

// One table under its heading.
struct PrintedTable {
    Text title, none; // none: what is said where there is no row
    PrintedCells heads;
    std::vector<TableRow> rows;
};

// A number stays with its unit, and with its †.
QString keptTogether(QString text)
{
    static const QRegularExpression units(QStringLiteral("(?<=[0-9]) (?=(AWG|mm2|V|A|Ω|m|ft|%)(?![A-Za-z]))| (?=†)"));
    return text.replace(units, QString(QChar(QChar::Nbsp)));
}

PrintedCells printed(const std::vector<std::string>& cells, const std::set<std::size_t>& bold)
{
    PrintedCells all;
    for (std::size_t column = 0; column < cells.size(); ++column)
        all.push_back({keptTogether(printWords(cells[column])), smallPrint, bold.contains(column) ? Weight::Bold : Weight::Plain});
    return all;
}

PrintedCells printedHeads(const std::vector<std::string>& heads)
{
    PrintedCells all = printed(heads, {});
    for (PrintedCell& cell : all)
        cell.weight = Weight::Bold;
    return all;
}

constexpr Text noLoads = {.en = "No load stands on terminals.", .es = "Ninguna carga está en bornes."};
constexpr Text noSources = {.en = "There is no source.", .es = "No hay ninguna fuente."};

// What a load is stands under its figures, where there is room for it.
template <class Cells> Cells withoutWhat(Cells cells)
{
    cells.erase(cells.begin() + LoadWhatColumn);
    return cells;
}

PrintedTable tableOfLoads(const PowerSheet& sheet, Language language)
{
    PrintedTable table{loadsTitle, noLoads, withoutWhat(printedHeads(loadHeads(language))), {}};
    for (const LoadLine& line : sheet.loads) {
        std::set<std::size_t> bold = {LoadNameColumn};
        if (line.verdict != PowerVerdict::Enough)
            bold.insert(VerdictColumn);
        const std::vector<std::string> cells = cellsOf(line, language);
        table.rows.push_back({withoutWhat(printed(cells, bold)), 0, printWords(cells[LoadWhatColumn])});
    }
    return table;
}

PrintedTable tableOfSources(const PowerSheet& sheet, Language language)
{
    PrintedTable table{sourcesTitle, noSources, printedHeads(sourceHeads(language)), {}};
    for (const SourceLine& line : sheet.sources) {
        std::set<std::size_t> bold = {SourceNameColumn, SumColumn};
        if (line.verdict != SourceVerdict::Under80)
            bold.insert(SourceVerdictColumn);
        for (const auto& cells : rowsOf(line, language)) {
            const bool isDrawn = cells[SourceNameColumn].empty();
            table.rows.push_back({printed(cells, isDrawn ? std::set<std::size_t>() : bold), isDrawn ? drawnHeight : rowHeight, {}});
        }
    }
    return table;
}

Result<FittedColumns> columnsOf(const PrintedTable& table, const PaperFont& font, double room)
{
    return fittedTable(font, table.heads.size(), room, powerTitle, [&](TableMeasure& measure) {
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
        stack.put(make.heading(printWords(table.title, make.language()), start));
        stack.put(heads);
    };
    if (make.heading({}, Start::First).height + heads.height + leastRows * rowHeight > stack.left())
        stack.turn();
    begin(Start::First);
    if (table.rows.empty())
        stack.put(make.paragraph(printWords(table.none, make.language()), smallPrint, Weight::Plain, cellPadding, 4));
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

} // namespace

Result<std::vector<PrintedPage>> powerPages(const PowerSheet& sheet, const PaperFont& font, const PageSetup& setup)
{
    const PageSize room = roomOn(setup.size);
    const PaperPieces make(font, setup.language, room.width);
    PageStack stack(room.height);
    putOpening(stack, make, sheet.title, powerTitle, setup.size, conditionsOf(sheet));
    for (const PrintedTable& table : {tableOfLoads(sheet, setup.language), tableOfSources(sheet, setup.language)}) {
        const Result<FittedColumns> columns = columnsOf(table, font, room.width);
        if (!font.lettersMissing().isEmpty())
            return lettersMissing(font, powerTitle);
        if (!columns.ok())
            return columns.problem();
        putTable(stack, make, table, columns.value());
    }
    return finishedSheets(stack.taken(), make, sheet.title, powerTitle, setup.size);
}

} // namespace doorloom
