#pragma once

#include "model/job.h"

#include <QDialog>

#include <cstdint>

class QLineEdit;
class QListWidget;

namespace doorloom {

// Anything in the job by its tag or words; whoever listens follows while one moves through the list.
class FindDialog : public QDialog {
    Q_OBJECT
public:
    FindDialog(const Job& job, QWidget* parent = nullptr);

signals:
    void chosen(std::uint32_t row);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override; // arrows in the letters move through the list

private:
    void fill();

    Job job_; // as it is while one looks: a copy costs microseconds
    QLineEdit* letters_;
    QListWidget* list_;
};

} // namespace doorloom
