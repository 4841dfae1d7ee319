#include "bench/measure.h"
#include "bench/windowedits.h"
#include "bench/windowrows.h"

#include <QApplication>

#include <array>
#include <cstdio>
#include <string>

namespace doorloom::bench {
namespace {

constexpr int edits = 200;
constexpr double frameMilliseconds = 16;

} // namespace

// From the operation until everything in the window is painted again; and, once the worker has judged the
// job, what it takes to show that.
int editRows(const QString& file, Gate gate)
{
    int count = 1;
    char name[] = "window_bench", *arguments[] = {name, nullptr};
    QApplication application(count, arguments);
    const std::unique_ptr<Window> window = judgedWindow(file);
    window->sheet().scaleTo(1);
    Edits all(*window);
    std::array<std::vector<double>, Edits::sorts> shown;
    std::vector<double> together, answers;
    for (int edit = 0; edit < edits; ++edit) {
        all.choose(edit);
        QCoreApplication::processEvents();
        const double start = threadMilliseconds();
        all.make(edit);
        QCoreApplication::processEvents();
        const double afterwards = threadMilliseconds();
        waitUntilJudged(*window);
        shown[static_cast<std::size_t>(edit % Edits::sorts)].push_back(afterwards - start);
        together.push_back(afterwards - start);
        answers.push_back(threadMilliseconds() - afterwards);
    }
    Percentiles rows(gate);
    for (int sort = 0; sort < Edits::sorts; ++sort)
        rows.tell((std::string("edit: ") + Edits::sortOf(sort)).c_str(),
                  shown[static_cast<std::size_t>(sort)], frameMilliseconds);
    rows.tell("edit, of all sorts", together, frameMilliseconds);
    rows.tell("showing what is judged", answers, frameMilliseconds);
    std::printf("findings in the list: %zu\n", window->open().judged()->check.findings.size());
    return rows.areWithin() ? 0 : 1;
}

} // namespace doorloom::bench
