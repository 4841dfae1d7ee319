#pragma once

#include "model/job.h"

#include <QDialog>

class QCheckBox;
class QLineEdit;

namespace doorloom {

// What stands on every sheet of every paper.
class TitleBlockDialog : public QDialog {
    Q_OBJECT
public:
    TitleBlockDialog(const JobInfo& info, QWidget* parent = nullptr);

    JobInfo info() const; // as it stands in the fields

private:
    JobInfo before_;
    QLineEdit *number_, *title_, *site_, *client_, *author_, *revision_, *date_, *notes_;
    QCheckBox *english_, *spanish_;
};

} // namespace doorloom
