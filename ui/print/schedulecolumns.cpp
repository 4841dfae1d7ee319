#include "print/schedulecolumns.h"

#include "print/printwords.h"

#include <algorithm>

namespace doorloom {
namespace {

constexpr Text tooWide = {.en = "'{text}' is too long for the page.", .es = "'{text}' no cabe en la página."};
constexpr Text shorten = {.en = "Shorten that name, or print the text or CSV form.",
                          .es = "Acorte ese nombre, o imprima en texto o CSV."};

bool isTickColumn(std::size_t column)
{
    return column == LandedColumn || column == CheckedColumn;
}

struct Wanted {
    ColumnWidths natural{}, least{};
};

class ColumnMeasure {
public:
    ColumnMeasure(const PaperFont& font, Breaks breaks) : font_(font), breaks_(breaks) {}

    void add(const ScheduleCells& cells, CellUse use)
    {
        for (std::size_t column = 0; column < scheduleColumns; ++column) {
            const QString text = printWords(cells[column]);
            const double points = printSizeOf(column, text, use);
            const Weight weight = weightOf(column, use);
            const double width = font_.widthOf(text, points, weight) + 2 * cellPadding;
            if (use == CellUse::Body)
                wanted_.natural[column] = std::max(wanted_.natural[column], width);
            if (width <= wanted_.least[column])
                continue;
            const double piece = widestPiece(font_, text, points, weight, breaks_) + 2 * cellPadding;
            if (piece > wanted_.least[column]) {
                wanted_.least[column] = piece;
                widest_[column] = text;
            }
        }
    }

    const Wanted& wanted() const { return wanted_; }
    const QString& widestIn(std::size_t column) const { return widest_[column]; }

private:
    const PaperFont& font_;
    Breaks breaks_;
    Wanted wanted_;
    std::array<QString, scheduleColumns> widest_;
};

double sum(const ColumnWidths& widths)
{
    double all = 0;
    for (double width : widths)
        all += width;
    return all;
}

// Narrow columns keep what they want; only those wider than a common limit are cut down to it.
ColumnWidths limited(const Wanted& wanted, double limit)
{
    ColumnWidths widths;
    for (std::size_t column = 0; column < scheduleColumns; ++column)
        widths[column] = std::max(wanted.least[column], std::min(wanted.natural[column], limit));
    return widths;
}

std::optional<ColumnWidths> fitted(const Wanted& wanted, double room)
{
    if (sum(limited(wanted, 0)) > room)
        return std::nullopt;
    double low = 0, high = room;
    for (int halving = 0; halving < 24; ++halving) {
        const double middle = (low + high) / 2;
        (sum(limited(wanted, middle)) <= room ? low : high) = middle;
    }
    ColumnWidths widths = limited(wanted, low);
    const double spare = (room - sum(widths)) / scheduleColumns;
    for (double& width : widths)
        width += spare;
    return widths;
}

ColumnMeasure measured(const Schedule& schedule, const PaperFont& font, Language language, Breaks breaks)
{
    ColumnMeasure measure(font, breaks);
    measure.add(headCells(language), CellUse::Head);
    for (const ScheduleBox& box : schedule.boxes)
        for (const ScheduleBlock& block : box.blocks)
            for (const ScheduleRow& row : block.rows)
                if (!spansColumns(row))
                    measure.add(cellsOf(row, language), CellUse::Body);
    return measure;
}

// Of the column that takes most.
QString widestOf(const ColumnMeasure& measure)
{
    const ColumnWidths& least = measure.wanted().least;
    return measure.widestIn(
        static_cast<std::size_t>(std::max_element(least.begin(), least.end()) - least.begin()));
}

} // namespace

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

Problem tooLongForThePage(const QString& text)
{
    return {.what = {tooWide, {{"text", text.toStdString()}}},
            .where = inWords(Message(scheduleTitle)),
            .remedy = shorten};
}

Result<FittedColumns> fittedColumns(const Schedule& schedule, const PaperFont& font, Language language,
                                    double room)
{
    for (const Breaks breaks : {Breaks::BetweenWords, Breaks::InsideWords}) {
        const ColumnMeasure measure = measured(schedule, font, language, breaks);
        if (const auto widths = fitted(measure.wanted(), room))
            return FittedColumns{*widths, breaks};
        if (breaks == Breaks::InsideWords)
            return tooLongForThePage(widestOf(measure));
    }
    return FittedColumns{};
}

} // namespace doorloom
