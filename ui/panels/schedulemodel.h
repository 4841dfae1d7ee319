#pragma once

#include "papers/schedule.h"

#include <QAbstractTableModel>

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

namespace doorloom {

// The rows of a schedule under headings of boxes and devices. Words are made when a cell is shown.
class ScheduleModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;

    void show(const Schedule* schedule); // null: nothing. It must live until the next call.

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    bool isHeading(int row) const;
    std::vector<std::uint32_t> rowsAt(int row) const; // of the job: the conductor, or the device of a heading
    std::optional<int> lineOf(std::uint32_t number) const; // the first that shows this row of the job

private:
    struct Line {
        const ScheduleBox* box = nullptr;
        const ScheduleBlock* block = nullptr; // none: the box's own heading
        const ScheduleRow* row = nullptr;     // none: the block's own heading
    };
    QString headingOf(const Line& line) const;

    std::vector<Line> lines_;
    std::unordered_map<std::uint32_t, int> lineOf_;
};

} // namespace doorloom
