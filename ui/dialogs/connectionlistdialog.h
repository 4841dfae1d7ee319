#pragma once

#include "file/connectionlist.h"

#include <QDialog>

#include <array>

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace doorloom {

class ListedRowsModel;

// A list of connections before it is taken: which of its columns is what, what becomes of each row, and why
// rows are left.
class ConnectionListDialog : public QDialog {
    Q_OBJECT
public:
    ConnectionListDialog(const Job& job, std::vector<CellRow> table, QWidget* parent = nullptr);

    const ConnectionList& list() const { return list_; }

private:
    void addChoosers(QVBoxLayout* layout);
    void addRows(QVBoxLayout* layout);
    void nameColumns(); // by the first row, where it has names
    void read();        // the list anew, as the columns are now

    Job job_; // as it is while one looks: a copy costs microseconds
    std::vector<CellRow> table_;
    ListLayout layout_;
    ConnectionList list_;
    QCheckBox* head_;
    QCheckBox* onlyLeft_;
    std::array<QComboBox*, listColumnCount> columns_{};
    ListedRowsModel* rows_;
    QLabel* summary_;
    QPushButton* take_ = nullptr;
};

} // namespace doorloom
