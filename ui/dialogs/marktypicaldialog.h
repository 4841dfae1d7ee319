#pragma once

#include "model/job.h"

#include <QDialog>

#include <string>
#include <vector>

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;

namespace doorloom {

// Which door becomes a typical, and what is drawn again with it.
class MarkTypicalDialog : public QDialog {
    Q_OBJECT
public:
    // In: chosen: rows chosen on the sheet: they say which door is meant, and what goes along
    MarkTypicalDialog(const Job& job, const std::vector<std::uint32_t>& chosen, QWidget* parent = nullptr);

    OpeningId opening() const;
    std::string name() const;
    std::vector<DeviceId> also() const;

private:
    void showDoor();

    const Job job_;
    const std::vector<std::uint32_t> chosen_;
    std::vector<OpeningId> openings_;
    std::vector<DeviceId> near_; // in the order of the list
    QComboBox* which_;
    QLineEdit* name_;
    QLabel* own_;
    QListWidget* also_;
};

} // namespace doorloom
