#pragma once

#include "edit/typedline.h"
#include "openjob/openjob.h"
#include "openjob/selection.h"

#include <QWidget>

class QCompleter;
class QLabel;
class QLineEdit;
class QStandardItemModel;

namespace doorloom {

// One line in which landings, pulls and settings are typed, with completion. What is not understood stands
// under the line, which stays as it was typed.
class TypedEntry : public QWidget {
    Q_OBJECT
public:
    TypedEntry(OpenJob& open, Selection& selection, const Stock& stock, QWidget* parent = nullptr);

    void startTyping();
    void setStock(const Stock& stock) { stock_ = stock; }

signals:
    void jump(const std::vector<std::uint32_t>& rows);
    void left(); // Escape: the sheet is to have the keyboard again

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void complete();
    void takeCompletion(const QString& text);
    void accept();
    void say(const QString& words);

    OpenJob& open_;
    Selection& selection_;
    Stock stock_;
    QLineEdit* line_;
    QLabel* answer_;
    QStandardItemModel* choices_;
    QCompleter* completer_;
};

} // namespace doorloom
