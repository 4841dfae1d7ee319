#pragma once

#include <QCoreApplication>

#include <QTest>

#include <string>

namespace doorloom {

// A user at the window, whose actions are counted: one press-and-release, one drag, one accepted typed line
// or one shortcut each.
class CountedUser {
public:
    int actions() const { return actions_; }

    void presses(QWidget& on, Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier)
    {
        ++actions_;
        QTest::keyClick(&on, key, with);
        QCoreApplication::processEvents();
    }
    // A line in a field that has the keyboard already, accepted.
    void types(QWidget& field, const QString& words)
    {
        ++actions_;
        QTest::keyClicks(&field, words);
        QTest::keyClick(&field, Qt::Key_Return);
        QCoreApplication::processEvents();
    }
    void clicks(QWidget& on, QPoint at)
    {
        ++actions_;
        QTest::mouseClick(&on, Qt::LeftButton, {}, at);
        QCoreApplication::processEvents();
    }
    void clicks(QWidget& on) { clicks(on, on.rect().center()); }
    void drags(QWidget& on, QPoint from, QPoint to)
    {
        ++actions_;
        QTest::mousePress(&on, Qt::LeftButton, {}, from);
        for (int step = 1; step <= 8; ++step)
            QTest::mouseMove(&on, from + (to - from) * step / 8);
        QTest::mouseRelease(&on, Qt::LeftButton, {}, to);
        QCoreApplication::processEvents();
    }

private:
    int actions_ = 0;
};

} // namespace doorloom
