#pragma once

#include "openjob/openjob.h"
#include "openjob/selection.h"

#include <QWidget>

class QTableView;

namespace doorloom {

class ScheduleModel;

// The terminal schedule while it is being drawn: choosing a row shows its conductor on the sheet, and back.
class SchedulePanel : public QWidget {
    Q_OBJECT
public:
    SchedulePanel(OpenJob& open, Selection& selection, QWidget* parent = nullptr);

signals:
    void jump(const std::vector<std::uint32_t>& rows);

private:
    void showJudged();
    void chooseRow();
    void followSelection();

    OpenJob& open_;
    Selection& selection_;
    ScheduleModel* model_;
    QTableView* table_;
    int scrolled_ = 0;       // where the user had left it, while the job is being looked at
    bool following_ = false; // the table is being moved by the selection, not by the user
};

} // namespace doorloom
