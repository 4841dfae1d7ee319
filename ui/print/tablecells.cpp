#include "print/tablecells.h"

#include <algorithm>
#include <numeric>

namespace doorloom {
namespace {

constexpr double cellLine = 10, firstCellLine = 13, aboveBaseline = 11;
constexpr double leastLargePoints = 15, largeDrop = 1.5; // a large box stands as high above its baseline as capitals do

double sum(const std::vector<double>& widths)
{
    return std::accumulate(widths.begin(), widths.end(), 0.0);
}

} // namespace

TableMeasure::TableMeasure(const PaperFont& font, std::size_t columns, Breaks breaks)
    : font_(font), breaks_(breaks), natural_(columns), least_(columns), widest_(columns)
{
}

void TableMeasure::add(const PrintedCells& cells, bool wantsOneLine)
{
    for (std::size_t column = 0; column < cells.size(); ++column) {
        const auto& [text, points, weight] = cells[column];
        const double width = font_.widthOf(text, points, weight) + 2 * cellPadding;
        if (wantsOneLine)
            natural_[column] = std::max(natural_[column], width);
        if (width <= least_[column])
            continue;
        const double piece = widestPiece(font_, text, points, weight, breaks_) + 2 * cellPadding;
        if (piece > least_[column]) {
            least_[column] = piece;
            widest_[column] = text;
        }
    }
}

// Narrow columns keep what they want; only those wider than a common limit are cut down to it.
std::vector<double> TableMeasure::limited(double limit) const
{
    std::vector<double> widths;
    for (std::size_t column = 0; column < natural_.size(); ++column)
        widths.push_back(std::max(least_[column], std::min(natural_[column], limit)));
    return widths;
}

std::optional<FittedColumns> TableMeasure::fitted(double room) const
{
    if (sum(limited(0)) > room)
        return std::nullopt;
    double low = 0, high = room;
    for (int halving = 0; halving < 24; ++halving) {
        const double middle = (low + high) / 2;
        (sum(limited(middle)) <= room ? low : high) = middle;
    }
    std::vector<double> widths = limited(low);
    const double spare = (room - sum(widths)) / static_cast<double>(widths.size());
    for (double& width : widths)
        width += spare;
    return FittedColumns{std::move(widths), breaks_};
}

const QString& TableMeasure::widestText() const
{
    return widest_[static_cast<std::size_t>(std::max_element(least_.begin(), least_.end()) - least_.begin())];
}

Result<FittedColumns> fittedTable(const PaperFont& font, std::size_t columns, double room, Text paper,
                                  const std::function<void(TableMeasure&)>& addAll)
{
    for (const Breaks breaks : {Breaks::BetweenWords, Breaks::InsideWords}) {
        TableMeasure measure(font, columns, breaks);
        addAll(measure);
        if (auto fitted = measure.fitted(room))
            return std::move(*fitted);
        if (breaks == Breaks::InsideWords)
            return tooLongForThePage(measure.widestText(), paper);
    }
    return FittedColumns{};
}

std::vector<StoodCell> inColumns(const PrintedCells& cells, const FittedColumns& columns)
{
    std::vector<StoodCell> stood;
    double x = 0;
    for (std::size_t column = 0; column < cells.size(); x += columns.widths[column], ++column)
        stood.push_back({x + cellPadding, columns.widths[column] - 2 * cellPadding, cells[column]});
    return stood;
}

Piece cellsPiece(const std::vector<StoodCell>& cells, const PaperFont& font, Breaks breaks, double leastHeight)
{
    std::vector<std::vector<QString>> lines;
    std::size_t most = 1;
    for (const auto& [x, room, cell] : cells) {
        lines.push_back(wrapped(font, cell.text, cell.points, cell.weight, room, breaks));
        most = std::max(most, lines.back().size());
    }
    const double block = firstCellLine + static_cast<double>(most - 1) * cellLine;
    Piece piece = blankPiece(std::max(block + 3, leastHeight));
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const PrintedCell& cell = cells[i].cell;
        double baseline = (piece.height - block) / 2 + aboveBaseline + (cell.points >= leastLargePoints ? largeDrop : 0);
        for (const QString& text : lines[i]) {
            piece.texts.push_back({cells[i].x, baseline, cell.points, cell.weight, text});
            baseline += cellLine;
        }
    }
    return piece;
}

} // namespace doorloom
