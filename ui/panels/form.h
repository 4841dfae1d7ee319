#pragma once

#include "base/result.h"
#include "edit/change.h"
#include "openjob/openjob.h"

#include <QFormLayout>
#include <QStringList>
#include <QWidget>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace doorloom {

class ChoiceBox;

// A column of fields about one row of the job. What a field refuses stands under it with the reason, and the
// field shows the old value again.
class Form : public QWidget {
    Q_OBJECT
public:
    explicit Form(OpenJob& open, QWidget* parent = nullptr);

    OpenJob& open() { return open_; }
    const Job& job() const { return open_.job(); }

    void heading(const QString& words);
    void words(const QString& words);
    // In: a name that stays the same, so that the field keeps the keyboard when the form is made anew
    void textField(const QString& name, const QString& label, const std::string& value,
                   std::function<Result<Change>(std::string)> changed, const QString& hint = {});
    struct Item {
        QString words;
        std::function<Result<Change>()> chosen;
    };
    struct Choices {
        std::vector<Item> items;
        int current = -1;
    };
    void choiceField(const QString& name, const QString& label, Choices choices);
    // One whose list grows with the job, and is made when somebody turns to the field.
    // In: the words of the one that is chosen now
    void longChoiceField(const QString& name, const QString& label, const QString& now,
                         std::function<Choices()> choices);
    // Words one under the other, of which one can be picked.
    void list(const QString& name, const QString& label, const QStringList& lines,
              std::function<void(int)> picked);
    void wide(QWidget* editor); // any other editor
    void button(const QString& name, const QString& words, std::function<void()> pressed);

    // Makes the change; a refusal is shown under the editor.
    bool make(QWidget* editor, const Result<Change>& change);
    void forgetRefusals();
    std::uint32_t subject = 0; // the row it is about, for the words of undo

private:
    void field(const QString& label, QWidget* editor);
    ChoiceBox* addChoice(const QString& name, const QString& label, const QString& now,
                         std::function<Choices()> choices);

    OpenJob& open_;
    QFormLayout* rows_;
};

} // namespace doorloom
