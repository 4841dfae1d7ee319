#pragma once

#include "papers/papers.h"
#include "print/printedpage.h"

#include <QDialog>

class QComboBox;
class QPushButton;

namespace doorloom {

class LabelChoice;

// Which paper, in which form; for tags also on which labels.
class PaperDialog : public QDialog {
    Q_OBJECT
public:
    PaperDialog(Language language, LabelSheets sheets, QWidget* parent = nullptr);

    const Paper& paper() const;
    std::string form() const; // "pdf", "printer", "csv", "txt"
    Language language() const;
    SheetSize size() const;
    bool wantsLabels() const; // tags, as pages
    LabelSetup labels() const;

    void accept() override; // remembers the labels

private:
    void showWhatBelongs(); // to the chosen paper in the chosen form
    bool drawsPages() const;

    QComboBox *paper_, *form_, *language_, *size_;
    LabelChoice* labels_;
    QPushButton* accept_;
};

} // namespace doorloom
