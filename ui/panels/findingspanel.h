#pragma once

#include "base/result.h"
#include "openjob/openjob.h"
#include "openjob/selection.h"

#include <QWidget>

#include <optional>

class QLabel;
class QListView;
class QScrollArea;
class QTextBrowser;

namespace doorloom {

class FindingsModel;

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
    void chooseAgain(); // the finding that was chosen before the job was looked at again
    void showWords();   // of the chosen finding, with its remedies; its way is lit
    void showOnSheet(); // what the user has chosen
    void offerRemedies(const Finding& finding);
    int row() const; // that is chosen; -1: none
    const Finding* current() const;

    OpenJob& open_;
    Selection& selection_;
    QLabel* summary_;
    FindingsModel* model_;
    QListView* list_;
    QTextBrowser* words_;
    QScrollArea* offers_;
    QWidget* remedies_ = nullptr; // of the chosen finding; made anew with each
    std::optional<Finding> chosen_;
    bool isShowing_ = false; // the list is being filled: nobody has chosen anything
};

} // namespace doorloom
