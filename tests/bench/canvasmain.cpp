#include "bench/canvasfindings.h"
#include "bench/canvasfloor.h"
#include "bench/measure.h"
#include "bench/spreadjob.h"

#include "canvas/sheetview.h"

#include <QApplication>
#include <QMouseEvent>
#include <QProcess>
#include <QTest>
#include <QWheelEvent>

#include <algorithm>
#include <cstdio>
#include <cstring>
#include <functional>
#include <vector>

// The sheet with 2,500 devices and 10,000 conductors: from the event to the painted picture, while the
// checks' worker runs. 95 of 100 are no slower than what is printed. Beside it the same primitives painted
// bare.
namespace doorloom::bench {
namespace {

constexpr int width = 1280, height = 800, samples = 100;

// Judges the same snapshot from nothing again and again until another is there: the worker never rests.
std::optional<Judged> judgeRestlessly(const Job& job, const IsWanted& isWanted)
{
    while (isWanted())
        windowJudge()(job, isWanted);
    return std::nullopt;
}

class Bench {
public:
    explicit Bench(Gate gate) : rows_(gate)
    {
        open_.begin(spreadJob());
        view_.resize(width, height);
        view_.show();
        if (!QTest::qWaitForWindowExposed(&view_))
            std::fputs("The window is not shown: nothing is painted.\n", stderr);
        const double before = threadMilliseconds();
        const bool isSettled = QTest::qWaitFor([&] { return view_.isSettled(); }, 120'000);
        std::printf("%s after %.0f ms of this thread, between events\n",
                    isSettled ? "every way is found" : "NOT every way is found", threadMilliseconds() - before);
        for (const Device& device : open_.job().devices)
            devices_.push_back(device.id.number);
    }

    bool run()
    {
        const double before = otherThreadsMilliseconds();
        repaint("repaint 1:1", 1, 5);
        repaint("repaint at half size", 0.5, 10);
        view_.fit();
        repaint("repaint half the job", view_.scale() * 1.4142, 10); // half of its area in view
        repaint("repaint the whole job", 0, 16);
        pan();
        zoom();
        drag();
        hit();
        rows_.tell("10,000 findings", findingsFillTimes(9), 16, 0);
        const double judging = otherThreadsMilliseconds() - before;
        std::printf("meanwhile the worker judged for %.0f ms of its own\n", judging);
        return rows_.areWithin() && judging > 0;
    }

private:
    // Painted now, without waiting for the screen.
    void painted() { QCoreApplication::sendPostedEvents(&view_, QEvent::UpdateRequest); }

    void lookAt(int sample, double scale)
    {
        if (scale == 0) {
            view_.fit();
            return;
        }
        view_.scaleTo(scale * 1.01); // so that the middle of the view follows
        view_.scaleTo(scale);
        view_.showMiddleOf(devices_[static_cast<std::size_t>(sample) * 7919 % devices_.size()]);
    }

    double timeOf(const std::function<void()>& act)
    {
        const double start = threadMilliseconds();
        act();
        return threadMilliseconds() - start;
    }

    double floorOf()
    {
        const PaintedPrimitives primitives = PaintedPrimitives::of(view_);
        QImage image(view_.size() * view_.devicePixelRatio(), QImage::Format_RGB32);
        const double milliseconds = timesOf([&] { primitives.paint(image); }).medianMilliseconds;
        return milliseconds;
    }

    void repaint(const char* name, double scale, double most)
    {
        std::vector<double> times;
        for (int i = 0; i < samples; ++i) {
            lookAt(i, scale);
            painted();
            times.push_back(timeOf([&] { view_.repaint(); }));
        }
        rows_.tell(name, std::move(times), most, floorOf());
    }

    void wheel(QPoint turn, Qt::KeyboardModifiers keys)
    {
        QWheelEvent event(QPointF(width / 2, height / 2), view_.mapToGlobal(QPointF(width / 2, height / 2)),
                          turn, turn, Qt::NoButton, keys, Qt::NoScrollPhase, false);
        QCoreApplication::sendEvent(&view_, &event);
        painted();
    }

    void pan()
    {
        lookAt(0, 1);
        painted();
        std::vector<double> times;
        for (int i = 0; i < samples; ++i)
            times.push_back(
                timeOf([&] { wheel(i % 2 == 0 ? QPoint(0, -40) : QPoint(-40, 0), Qt::NoModifier); }));
        rows_.tell("pan", std::move(times), 4);
    }

    void zoom()
    {
        std::vector<double> times;
        for (int round = 0; round < 4; ++round) {
            lookAt(round, 1.5);
            painted();
            for (int i = 0; i < 25; ++i)
                times.push_back(timeOf([&] { wheel({0, i < 13 ? -120 : 120}, Qt::ControlModifier); }));
        }
        rows_.tell("zoom step", std::move(times), 16);
    }

    void mouse(QEvent::Type type, QPoint at, Qt::MouseButton button, Qt::MouseButtons buttons)
    {
        QMouseEvent event(type, at, view_.mapToGlobal(at), button, buttons, Qt::NoModifier);
        QCoreApplication::sendEvent(&view_, &event);
        painted();
    }

    void drag()
    {
        std::vector<double> times;
        for (int round = 0; round < 10; ++round) {
            lookAt(round, 1);
            painted();
            QPoint at =
                view_.rectOf(devices_[static_cast<std::size_t>(round) * 7919 % devices_.size()]).topLeft() +
                QPoint(5, 5);
            mouse(QEvent::MouseButtonPress, at, Qt::LeftButton, Qt::LeftButton);
            for (int i = 0; i < 20; ++i) {
                at += QPoint(i % 4 < 2 ? 17 : -13, 12);
                times.push_back(timeOf([&] { mouse(QEvent::MouseMove, at, Qt::NoButton, Qt::LeftButton); }));
            }
            QKeyEvent escape(QEvent::KeyPress, Qt::Key_Escape, Qt::NoModifier);
            QCoreApplication::sendEvent(&view_, &escape);
            mouse(QEvent::MouseButtonRelease, at, Qt::LeftButton, Qt::NoButton);
        }
        rows_.tell("drag with conductors", std::move(times), 8);
    }

    void hit()
    {
        std::vector<double> times;
        for (const double scale : {1.0, 0.5, 0.0}) {
            lookAt(3, scale);
            for (int i = 0; i < samples; ++i) {
                const QRect device =
                    view_.rectOf(devices_[static_cast<std::size_t>(i) * 7919 % devices_.size()]);
                const QPoint at = i % 2 == 0 ? QPoint(i * 37 % width, i * 91 % height) : device.center();
                times.push_back(timeOf([&] {
                                    for (int repeat = 0; repeat < 10; ++repeat)
                                        static_cast<void>(view_.rowAt(at));
                                }) /
                                10);
            }
        }
        rows_.tell("hit-test", std::move(times), 0.050);
    }

    Percentiles rows_;
    OpenJob open_{nullptr, judgeRestlessly};
    Selection selection_;
    SheetView view_{open_, selection_};
    std::vector<std::uint32_t> devices_;
};

// Qt takes the ratio when it starts: each has a run of its own.
int runRatio(int count, char** arguments, Gate gate)
{
    QApplication application(count, arguments);
    std::printf("device pixel ratio %s, %d by %d\n", qgetenv("QT_SCALE_FACTOR").constData(), width, height);
    return Bench(gate).run() ? 0 : 1;
}

} // namespace
} // namespace doorloom::bench

int main(int count, char** arguments)
{
    using namespace doorloom::bench;
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    const bool gated = count > 1 && std::strcmp(arguments[1], "--gate") == 0;
    if (!qEnvironmentVariableIsEmpty("QT_SCALE_FACTOR"))
        return runRatio(count, arguments, gated ? Gate::On : Gate::Off);
    bool areWithin = true;
    for (const char* ratio : {"1", "2"}) {
        qputenv("QT_SCALE_FACTOR", ratio);
        areWithin =
            QProcess::execute(arguments[0], gated ? QStringList{"--gate"} : QStringList{}) == 0 && areWithin;
    }
    return areWithin ? 0 : 1;
}
