#include "print/schedulecolumns.h"

#include "print/printwords.h"

namespace doorloom {
namespace {

bool isTickColumn(std::size_t column)
{
    return column == LandedColumn || column == CheckedColumn;
}

double printSizeOf(std::size_t column, const QString& text, CellUse use)
{
    if (use == CellUse::Body && column == TerminalColumn)
        return terminalPrint;
    return use == CellUse::Body && isTickColumn(column) && text == QString(QChar(0x2610)) ? tickPrint
                                                                                          : smallPrint;
}

Weight weightOf(std::size_t column, CellUse use)
{
    return use == CellUse::Head || column == TerminalColumn || column == FarColumn ? Weight::Bold
                                                                                   : Weight::Plain;
}

} // namespace

PrintedCells printedCells(const ScheduleCells& cells, CellUse use)
{
    PrintedCells printed;
    for (std::size_t column = 0; column < scheduleColumns; ++column) {
        const QString text = printWords(cells[column]);
        printed.push_back({text, printSizeOf(column, text, use), weightOf(column, use)});
    }
    return printed;
}

Result<FittedColumns> fittedColumns(const Schedule& schedule, const PaperFont& font, Language language,
                                    double room)
{
    return fittedTable(font, scheduleColumns, room, scheduleTitle, [&](TableMeasure& measure) {
        measure.addHead(printedCells(headCells(language), CellUse::Head));
        for (const ScheduleBox& box : schedule.boxes)
            for (const ScheduleBlock& block : box.blocks)
                for (const ScheduleRow& row : block.rows)
                    if (!spansColumns(row))
                        measure.addRow(printedCells(cellsOf(row, language), CellUse::Body));
    });
}

} // namespace doorloom
