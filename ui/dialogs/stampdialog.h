#pragma once

#include "edit/typicals.h"

#include <QDialog>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;
class QTableWidget;

namespace doorloom {

// How many doors of which typical, and how they are tagged: shown before they are stamped.
class StampDialog : public QDialog {
    Q_OBJECT
public:
    explicit StampDialog(const Job& job, QWidget* parent = nullptr);

    TypicalId typical() const;
    int count() const;
    Numbering numbering() const;

private:
    void preview();

    const Job job_;
    std::vector<TypicalId> typicals_;
    QComboBox *which_, *tags_;
    QSpinBox* count_;
    QLineEdit* first_;
    QTableWidget* doors_;
    QLabel* words_;
    QPushButton* ok_;
};

} // namespace doorloom
