#pragma once

#include "openjob/openjob.h"
#include "openjob/selection.h"

#include <QWidget>

class QComboBox;
class QTableWidget;

namespace doorloom {

// What every lock of an opening does in every situation, beside what the opening promises; the opening of what is selected, or
// another one of the job. It is worked out while the panel is on the screen.
class LocksPanel : public QWidget {
    Q_OBJECT
public:
    LocksPanel(OpenJob& open, Selection& selection, QWidget* parent = nullptr);

signals:
    void jump(const std::vector<std::uint32_t>& rows);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void showOpenings();
    void showLocks();
    void followSelection();

    OpenJob& open_;
    Selection& selection_;
    QComboBox* openings_;
    QTableWidget* table_;
};

} // namespace doorloom
