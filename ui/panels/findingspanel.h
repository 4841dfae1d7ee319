#pragma once

#include "base/result.h"
#include "openjob/openjob.h"
#include "openjob/selection.h"

#include <QWidget>

class QLabel;
class QListWidget;
class QTextBrowser;
class QVBoxLayout;

namespace doorloom {

// What the checks say of the job as it is now, the worst first. Choosing a finding lights its way on the
// sheet and says in which position it happens; its remedies are buttons, each one undoable change.
class FindingsPanel : public QWidget {
    Q_OBJECT
public:
    FindingsPanel(OpenJob& open, Selection& selection, QWidget* parent = nullptr);

    void goTo(int steps); // to the next finding (1) or the one before (-1), round the ends

signals:
    void jump(const std::vector<std::uint32_t>& rows); // the sheet is to show these
    void setAsideAsked(const doorloom::Finding& finding);
    void refused(const doorloom::Problem& problem);

private:
    void showJudged();
    void fill(const std::vector<Finding>& findings);
    void showWords();   // of the chosen finding, with its remedies; its way is lit
    void showOnSheet(); // what the user has chosen
    void offerRemedies(const Finding& finding);
    const Finding* current() const;

    OpenJob& open_;
    Selection& selection_;
    QLabel* summary_;
    QListWidget* list_;
    QTextBrowser* words_;
    QVBoxLayout* below_ = nullptr;
    QWidget* remedies_;  // of the chosen finding; made anew with each
    std::string chosen_; // rule, at and throws: the same finding stays chosen when the job is looked at again
};

} // namespace doorloom
