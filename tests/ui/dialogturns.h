#pragma once

#include <QApplication>
#include <QDialog>
#include <QLineEdit>
#include <QPointer>
#include <QTest>
#include <QTimer>

#include <gtest/gtest.h>

#include <functional>
#include <utility>
#include <vector>

namespace doorloom {

// Answers the dialogs that come, one after another, each by its own turn; a dialog that a turn leaves open is
// closed, and counts as a failure.
class DialogTurns {
public:
    using Turn = std::function<void(QDialog&)>;

    explicit DialogTurns(std::vector<Turn> turns) : turns_(std::move(turns)) { watch(); }
    bool allTaken() const { return next_ == turns_.size(); }

    // In a file dialog.
    static Turn nameFile(const QString& path)
    {
        return [path](QDialog& dialog) {
            auto* line = dialog.findChild<QLineEdit*>("fileNameEdit");
            ASSERT_NE(line, nullptr) << "no file is asked for";
            line->setText(path);
            QTest::keyClick(line, Qt::Key_Return);
        };
    }

private:
    // Armed anew before each look: a turn may open a dialog of its own, which the next turn answers.
    void watch()
    {
        QTimer::singleShot(0, &context_, [this] {
            watch();
            look();
        });
    }

    void look()
    {
        const QPointer<QDialog> dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        if (!dialog || dialog == answering_)
            return;
        if (next_ == turns_.size()) {
            ADD_FAILURE() << "a dialog that nobody answers: " << qPrintable(dialog->windowTitle());
            return dialog->hide(); // a dialog may ask before it is rejected
        }
        const QPointer<QDialog> before = std::exchange(answering_, dialog);
        turns_[next_++](*dialog);
        answering_ = before;
        if (dialog && dialog->isVisible()) {
            ADD_FAILURE() << "left open: " << qPrintable(dialog->windowTitle());
            dialog->hide();
        }
    }

    QObject context_; // of the looks: they end with it
    std::vector<Turn> turns_;
    std::size_t next_ = 0;
    QPointer<QDialog> answering_;
};

template <class Widget> Widget& childOf(const QDialog& dialog, const char* name)
{
    auto* found = dialog.findChild<Widget*>(name);
    if (!found)
        throw std::runtime_error(std::string("the dialog has no ") + name);
    return *found;
}

} // namespace doorloom
