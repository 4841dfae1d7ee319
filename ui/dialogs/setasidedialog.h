#pragma once

#include <QDialog>

class QLineEdit;

namespace doorloom {

// Who answers for a finding, and why.
class SetAsideDialog : public QDialog {
    Q_OBJECT
public:
    SetAsideDialog(const QString& finding, QWidget* parent = nullptr);

    std::string reason() const, name() const, date() const;

private:
    QLineEdit *reason_, *name_, *date_;
};

} // namespace doorloom
