#pragma once

#include "canvas/sheetview.h"
#include "core/jobs.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include <string>

// A sheet on a desk without a screen, with what tests point at.
namespace doorloom {

inline std::optional<Judged> judgedByNobody(const Job&, const IsWanted&)
{
    return Judged{};
}

// In: a job whose devices are placed by the automatic arrangement.
struct SheetDesk {
    OpenJob open{nullptr, judgedByNobody};
    Selection selection;
    SheetView view{open, selection};
    std::vector<std::string> refusals;

    explicit SheetDesk(const Job& job = {})
    {
        open.begin(job);
        view.resize(1200, 900);
        view.show();
        view.activateWindow();
        view.setFocus();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&view));
        view.fit();
        QObject::connect(&view, &SheetView::refused, &view,
                         [this](const Problem& problem) { refusals.push_back(inWords(problem)); });
    }

    const Job& job() const { return open.job(); }
    DeviceId device(const std::string& tag) const { return deviceTagged(job(), tag)->id; }

    // ---- Points of the widget
    QPoint head(const std::string& tag) const;                 // near the upper left corner
    QPoint terminal(const std::string& name) const;            // "PS1:+"
    QPoint paper() const;                                      // where nothing is
    QPoint ring(CableId cable, WhichEnd which) const;          // of a cable's waiting ends
    QPoint endOf(const std::string& terminal) const;           // of the conductor landed there
    QPoint nearest(QPoint at, const std::string& words) const; // where these words begin what is said
    std::string wordsAt(QPoint at) const { return inWords(view.wordsAt(at)); }

    void press(QPoint at, Qt::KeyboardModifiers keys = Qt::NoModifier)
    {
        QTest::mousePress(&view, Qt::LeftButton, keys, at);
    }
    void release(QPoint at, Qt::KeyboardModifiers keys = Qt::NoModifier)
    {
        QTest::mouseRelease(&view, Qt::LeftButton, keys, at);
    }
    void move(QPoint at) { QTest::mouseMove(&view, at); }
    void click(QPoint at, Qt::KeyboardModifiers keys = Qt::NoModifier)
    {
        QTest::mouseClick(&view, Qt::LeftButton, keys, at);
    }
    void drag(QPoint from, QPoint to);
    void wheel(QPoint at, int turn, Qt::KeyboardModifiers keys);
    void key(Qt::Key key, Qt::KeyboardModifiers keys = Qt::NoModifier) { QTest::keyClick(&view, key, keys); }
};

} // namespace doorloom
