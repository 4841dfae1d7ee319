#pragma once

#include "file/connectionlist.h"

#include <QAbstractTableModel>

namespace doorloom {

// The rows of a connection list, with what becomes of each.
class ListedRowsModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;

    enum class Shown { All, OnlyLeft };
    // Both must live as long as they are shown.
    void show(const std::vector<CellRow>& table, const ListLayout& layout, const ConnectionList& list,
              Shown which);

    int rowCount(const QModelIndex& parent = {}) const override;
    int
    columnCount(const QModelIndex& parent = {}) const override; // line, the list's seven, what becomes of it
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    const std::vector<CellRow>* table_ = nullptr;
    const ConnectionList* list_ = nullptr;
    ListLayout layout_;
    std::vector<std::size_t> rows_; // of the list
};

} // namespace doorloom
