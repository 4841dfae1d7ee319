#pragma once

#include "check/finding.h"
#include "model/job.h"

#include <QAbstractListModel>

#include <vector>

namespace doorloom {

// Findings as a list, each in two lines: how bad it is and where, then what it is. Words are made when a row
// is shown, for a job may have thousands.
class FindingsModel : public QAbstractListModel {
    Q_OBJECT
public:
    using QAbstractListModel::QAbstractListModel;

    // In: what they were found in, too; both must live until the next call
    void show(const Job& job, const std::vector<Finding>& findings);
    void clear();

    const Finding* at(int row) const; // null: there is no such row

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    const Job* job_ = nullptr;
    const std::vector<Finding>* findings_ = nullptr;
};

} // namespace doorloom
