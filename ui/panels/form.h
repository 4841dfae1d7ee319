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
    void choiceField(const QString& name, const QString& label, const std::vector<Item>& items, int current);
    void field(const QString& label, QWidget* editor); // any other editor
    void wide(QWidget* editor);
    void button(const QString& name, const QString& words, std::function<void()> pressed);

    // Makes the change; a refusal is shown under the editor.
    bool make(QWidget* editor, const Result<Change>& change);
    std::uint32_t subject = 0; // the row it is about, for the words of undo

private:
    OpenJob& open_;
    QFormLayout* rows_;
};

} // namespace doorloom
