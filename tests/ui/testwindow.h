#pragma once

#include "catalogue/catalogue.h"
#include "window/window.h"

#include <QAction>
#include <QApplication>
#include <QLineEdit>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

namespace doorloom {

// A window as a user has it, with settings of its own and nothing remembered from other tests.
class TestWindow {
public:
    TestWindow()
    {
        QStandardPaths::setTestModeEnabled(true);
        QSettings::setDefaultFormat(QSettings::IniFormat);
        QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, folder_.path());
        Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
        EXPECT_TRUE(catalogue.ok());
        window_ = std::make_unique<Window>(Surroundings{
            std::move(catalogue.value().kinds), SOURCE_FOLDER "/resources", SOURCE_FOLDER "/samples"});
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

    bool isJudged()
    {
        return QTest::qWaitFor([&] { return window_->open().judged() != nullptr; }, 10'000);
    }

private:
    QTemporaryDir folder_;
    std::unique_ptr<Window> window_;
};

} // namespace doorloom
