#include "dialogs/listedrowsmodel.h"

#include "openjob/shown.h"

#include <QApplication>
#include <QStyle>

namespace doorloom {
namespace {

constexpr int fateColumn = 1 + static_cast<int>(listColumnCount);

QString fateOf(const ListedRow& row)
{
    switch (row.fate) {
    case RowFate::Taken:
        return ListedRowsModel::tr("taken: %1").arg(shown(row.words));
    case RowFate::Again:
        return ListedRowsModel::tr("told again: %1").arg(shown(row.words));
    case RowFate::Left:
        break;
    }
    return ListedRowsModel::tr("left: %1 %2").arg(shown(row.words), shown(row.remedy));
}

} // namespace

void ListedRowsModel::show(const std::vector<CellRow>& table, const ListLayout& layout,
                           const ConnectionList& list, Shown which)
{
    beginResetModel();
    table_ = &table;
    list_ = &list;
    layout_ = layout;
    rows_.clear();
    for (std::size_t row = 0; row < list.rows.size(); ++row)
        if (which == Shown::All || list.rows[row].fate == RowFate::Left)
            rows_.push_back(row);
    endResetModel();
}

int ListedRowsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int ListedRowsModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : fateColumn + 1;
}

QVariant ListedRowsModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid())
        return {};
    if (role == Qt::DecorationRole && index.column() == fateColumn)
        return list_->rows[rows_[static_cast<std::size_t>(index.row())]].fate == RowFate::Left
                   ? QApplication::style()->standardIcon(QStyle::SP_MessageBoxWarning)
                   : QVariant();
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole && role != Qt::AccessibleTextRole)
        return {};
    const std::size_t at = rows_[static_cast<std::size_t>(index.row())];
    const ListedRow& row = list_->rows[at];
    if (index.column() == 0)
        return QString::number(row.line);
    if (index.column() == fateColumn)
        return fateOf(row);
    return shown(cellOf(layout_, (*table_)[at + (layout_.hasHead ? 1 : 0)],
                        static_cast<ListColumn>(index.column() - 1)));
}

QVariant ListedRowsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    if (section == 0)
        return tr("line");
    return section == fateColumn ? tr("what becomes of it")
                                 : shown(wordsOf(static_cast<ListColumn>(section - 1)));
}

} // namespace doorloom
