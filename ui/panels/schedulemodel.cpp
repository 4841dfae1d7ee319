#include "panels/schedulemodel.h"

#include "openjob/shown.h"

#include <QFont>

namespace doorloom {
namespace {

// Boxes to tick are for paper.
constexpr int columns = LandedColumn;

} // namespace

void ScheduleModel::show(const Schedule* schedule)
{
    beginResetModel();
    lines_.clear();
    lineOf_.clear();
    const auto add = [&](Line line, std::uint32_t number) {
        if (number != 0)
            lineOf_.emplace(number, static_cast<int>(lines_.size()));
        lines_.push_back(line);
    };
    if (schedule)
        for (const ScheduleBox& box : schedule->boxes) {
            add({&box, nullptr, nullptr}, 0);
            for (const ScheduleBlock& block : box.blocks) {
                add({&box, &block, nullptr}, block.device.number);
                for (const ScheduleRow& row : block.rows)
                    add({&box, &block, &row}, row.conductor.number);
            }
        }
    endResetModel();
}

int ScheduleModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int ScheduleModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columns;
}

bool ScheduleModel::isHeading(int row) const
{
    return !lines_[static_cast<std::size_t>(row)].row;
}

QString ScheduleModel::headingOf(const Line& line) const
{
    if (!line.block)
        return shown(doorloom::headingOf(*line.box, windowLanguage));
    return tr("%1 · %2").arg(shown(nameOf(*line.block, windowLanguage)),
                             shown(aboutOf(*line.block, windowLanguage)));
}

QVariant ScheduleModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) // Ctrl+C in a table that has no current line asks so
        return {};
    const Line& line = lines_[static_cast<std::size_t>(index.row())];
    if (role == Qt::FontRole && (!line.row || index.column() == TerminalColumn)) {
        QFont font;
        font.setBold(true);
        return font;
    }
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole)
        return {};
    if (!line.row)
        return index.column() == 0 ? headingOf(line) : QVariant();
    return shown(cellsOf(*line.row, windowLanguage)[static_cast<std::size_t>(index.column())]);
}

QVariant ScheduleModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    return shown(headCells(windowLanguage)[static_cast<std::size_t>(section)]);
}

Qt::ItemFlags ScheduleModel::flags(const QModelIndex&) const
{
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

std::vector<std::uint32_t> ScheduleModel::rowsAt(int row) const
{
    const Line& line = lines_[static_cast<std::size_t>(row)];
    if (line.row && line.row->conductor)
        return {line.row->conductor.number};
    if (line.block && line.block->device)
        return {line.block->device.number};
    return {};
}

std::optional<int> ScheduleModel::lineOf(std::uint32_t number) const
{
    const auto found = lineOf_.find(number);
    return found == lineOf_.end() ? std::nullopt : std::optional(found->second);
}

} // namespace doorloom
