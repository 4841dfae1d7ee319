#pragma once

#include "edit/typicals.h"

#include <QDialog>

class QComboBox;
class QLabel;
class QPushButton;
class QTreeWidget;

namespace doorloom {

// What a typical's change does to each of its doors, to be ticked door by door before it is done.
class DoorChangesDialog : public QDialog {
    Q_OBJECT
public:
    explicit DoorChangesDialog(const Job& job, QWidget* parent = nullptr);

    TypicalId typical() const;
    Change change() const; // of the doors that are ticked
    std::size_t chosenCount() const;

private:
    void showTypical();
    void showWhatIsChosen();
    std::vector<StampId> chosen() const;

    const Job job_;
    std::vector<TypicalId> typicals_;
    std::optional<DoorChanges> changes_;
    QComboBox* which_;
    QTreeWidget* doors_;
    QLabel* words_;
    QPushButton* ok_;
};

} // namespace doorloom
