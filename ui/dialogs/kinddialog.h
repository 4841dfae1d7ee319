#pragma once

#include "base/result.h"
#include "model/kind.h"

#include <QDialog>

#include <functional>
#include <optional>
#include <string>

class QCheckBox;
class QListWidget;
class QPlainTextEdit;
class QPushButton;

namespace doorloom {

class KindTree;

// Makes or changes a kind from the sheet in the box. What the kind says against itself stands beside it while
// one writes, and so does what a meter would find at one such device by itself.
class KindDialog : public QDialog {
    Q_OBJECT
public:
    struct Begin {
        Kind kind;
        int devices = 0; // of this kind in the job, which may be changed with it
        // What else stands against keeping a kind: a name that is taken …
        std::function<std::optional<Problem>(const Kind&)> objection;
        // Another kind, whose place on the shelf this one would take; null: none.
        std::function<const Kind*(const Kind&)> replaced;
    };
    explicit KindDialog(Begin begin, QWidget* parent = nullptr);

    const Kind& kind() const { return kind_; } // as it was when it last said nothing against itself
    bool changesDevices() const;

    // A cell that is being written counts; what was written is not let go, nor another kind replaced,
    // unasked.
    void done(int result) override;

private:
    QWidget* form();
    QWidget* side();
    QWidget* buttons();
    void read();
    void showTrial();
    void write(); // to a file, to hand on

    bool mayBeKept();
    bool mayBeLetGo();
    bool isAnswered(const QString& title, const QString& question, const QString& doIt, const QString& back);

    Begin begin_;
    Kind kind_;
    KindTree* tree_;
    std::string begun_; // what the form said at first, or when it was written to a file
    QListWidget* problems_;
    QPlainTextEdit* trial_;
    QCheckBox* devices_;
    QPushButton* add_;
    QPushButton* addAlike_;
    QPushButton* takeOut_;
    QPushButton* write_;
    QPushButton* keep_;
};

} // namespace doorloom
