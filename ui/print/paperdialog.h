#pragma once

#include "papers/papers.h"
#include "print/printedpage.h"

#include <QDialog>

class QComboBox;

namespace doorloom {

// Which paper, in which form.
class PaperDialog : public QDialog {
    Q_OBJECT
public:
    PaperDialog(Language language, QWidget* parent = nullptr);

    const Paper& paper() const;
    std::string form() const; // "pdf", "printer", "csv", "txt"
    Language language() const;
    SheetSize size() const;

private:
    void showForms(); // that the chosen paper has

    QComboBox *paper_, *form_, *language_, *size_;
};

} // namespace doorloom
