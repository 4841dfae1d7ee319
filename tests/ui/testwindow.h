#pragma once

#include "catalogue/catalogue.h"
#include "window/window.h"

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include <gtest/gtest.h>

namespace doorloom {

// A window as a user has it, with settings of its own and nothing remembered from other tests.
class TestWindow {
public:
    // In: resources: the folder with the catalogue and the font of papers
    //     ownKinds: the user's own; nothing: a folder of this window's, not made yet
    explicit TestWindow(const std::string& resources = SOURCE_FOLDER "/resources", const QString& ownKinds = {})
    {
        const QString own = ownKinds.isEmpty() ? folder_.path() + "/kinds" : ownKinds;
        QSettings::setDefaultFormat(QSettings::IniFormat);
        QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, folder_.path());
        Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
        EXPECT_TRUE(catalogue.ok());
        window_ = std::make_unique<Window>(
            Surroundings{std::move(catalogue.value().kinds), resources, SOURCE_FOLDER "/samples", own.toStdString()});
        window_->resize(1280, 800);
        window_->QWidget::show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(window_.get()));
        QApplication::setActiveWindow(window_.get()); // nobody else does where there is no window manager
    }
    // What is unsaved is let go without asking.
    ~TestWindow() { window_->open().begin(Job{}); }

    Window& window() { return *window_; }
    const Job& job() const { return window_->open().job(); }
    QString folder() const { return folder_.path(); }

    template <class Widget> Widget& the(const char* name)
    {
        auto* found = window_->findChild<Widget*>(name);
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }
    QAction& action(const char* key) { return the<QAction>(key); }

    // One accepted typed line.
    void type(const char* words)
    {
        action("typeLanding").trigger();
        auto& line = the<QLineEdit>("typedLine");
        QTest::keyClicks(&line, words);
        QTest::keyClick(&line, Qt::Key_Return);
    }

    std::string notice() { return the<QLabel>("noticeWords").text().toStdString(); }
    bool isJudged()
    {
        return QTest::qWaitFor([&] { return window_->open().judged() != nullptr; }, 10'000);
    }

private:
    QTemporaryDir folder_;
    std::unique_ptr<Window> window_;
};

// Presses a button of the next question that comes, and keeps what it said.
class Reply {
public:
    explicit Reply(const QString& button)
    {
        timer_.callOnTimeout([this, button] {
            auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (!box)
                return;
            timer_.stop();
            asked_ = (box->text() + " " + box->informativeText()).toStdString();
            for (QAbstractButton* each : box->buttons())
                if (each->text().remove('&') == button)
                    return each->click();
            ADD_FAILURE() << "no button says so: " << qPrintable(button);
            box->reject();
        });
        timer_.start(0);
    }
    bool isGiven()
    {
        return QTest::qWaitFor([this] { return !timer_.isActive(); }, 10'000);
    }
    const std::string& asked() const { return asked_; }

private:
    QTimer timer_;
    std::string asked_;
};

} // namespace doorloom
