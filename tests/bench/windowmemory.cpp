#include "bench/windowedits.h"
#include "bench/windowrows.h"

#include <QApplication>

#include <cstdio>
#include <fstream>
#include <string>

namespace doorloom::bench {
namespace {

constexpr int edits = 1000;
constexpr double mostMegabytes = 250;

double peakMegabytes()
{
    std::ifstream status("/proc/self/status");
    std::string word;
    while (status >> word)
        if (double kilobytes = 0; word == "VmHWM:" && status >> kilobytes)
            return kilobytes / 1000;
    return 0;
}

} // namespace

// Opened, judged, painted as a whole, edited a thousand times and all of it undone.
int memoryRow(const QString& file, Gate gate)
{
    int count = 1;
    char name[] = "window_bench", *arguments[] = {name, nullptr};
    QApplication application(count, arguments);
    const std::unique_ptr<Window> window = judgedWindow(file);
    window->sheet().fit();
    window->sheet().repaint();
    const double opened = peakMegabytes();
    Edits all(*window);
    for (int edit = 0; edit < edits; ++edit) {
        all.choose(edit);
        all.make(edit);
        QCoreApplication::processEvents();
    }
    waitUntilJudged(*window);
    while (window->open().history().canUndo()) {
        window->open().history().undo();
        QCoreApplication::processEvents();
    }
    waitUntilJudged(*window);
    const double peak = peakMegabytes();
    const bool within = peak <= mostMegabytes;
    std::printf("%-26s peak %6.1f MB  when judged and painted %6.1f  gate %6.0f  %s\n", "memory, 1,000 edits",
                peak, opened, mostMegabytes,
                gate == Gate::Off ? ""
                : within          ? "within"
                                  : "OVER");
    return within || gate == Gate::Off ? 0 : 1;
}

} // namespace doorloom::bench
