#pragma once

#include "print/labelsetup.h"

#include <QWidget>

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QSpinBox;

namespace doorloom {

// Which labels the tags go on, where to start on a sheet that was used before, and where this computer's printer prints.
// All of it is remembered (QSettings).
class LabelChoice : public QWidget {
    Q_OBJECT
public:
    explicit LabelChoice(LabelSheets sheets, QWidget* parent = nullptr);

    LabelSetup setup() const;
    void remember() const;

private:
    void recall();
    void showWhatTheSheetHas();
    const LabelSheet* sheet() const; // null when there are none

    LabelSheets sheets_;
    QComboBox *sheet_, *order_, *only_;
    QSpinBox* start_;
    QCheckBox *withQr_, *offsetPage_;
    QDoubleSpinBox *left_, *top_; // as measured on the offset page
};

} // namespace doorloom
