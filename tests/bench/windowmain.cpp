#include "bench/spreadjob.h"
#include "bench/windowrows.h"

#include "file/jobfile.h"

#include <QApplication>
#include <QProcess>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QWidget>

#include <algorithm>
#include <cstdio>

// The window on 2,500 devices and 10,000 conductors: how fast it starts, what one edit costs its thread, and
// how much memory it takes.
namespace doorloom::bench {
namespace {

struct Part {
    const char* name;
    int (*run)(const QString& file, Gate gate);
};
// Each in a process of its own: none finds memory or caches of another.
constexpr Part parts[] = {{"start", startRows}, {"edit", editRows}, {"memory", memoryRow}};

int usage()
{
    std::fputs("usage: window_bench [--gate] [start] [edit] [memory]\n", stderr);
    return 2;
}

int runAll(const char* program, const QStringList& names, const QStringList& gate)
{
    const QTemporaryDir folder;
    const QString file = folder.filePath("large.doorjob");
    if (!saveBytes(jobText(spreadJob()), file.toStdString()).ok())
        return 2;
    qputenv("HOME", folder.path().toUtf8()); // settings and journals are nobody's
    qputenv("XDG_CONFIG_HOME", folder.path().toUtf8());
    qputenv("XDG_DATA_HOME", folder.path().toUtf8());
    bool areWithin = true;
    for (const Part& part : parts)
        if (names.isEmpty() || names.contains(QString(part.name)))
            areWithin =
                QProcess::execute(program, QStringList{"--part", part.name, file} + gate) == 0 && areWithin;
    return areWithin ? 0 : 1;
}

// What any program with a window costs here: the floor under the program's own start.
int runBare(int count, char** arguments)
{
    QApplication application(count, arguments);
    QWidget window;
    window.resize(1280, 800);
    window.show();
    return QApplication::exec();
}

int run(int count, char** arguments)
{
    QStringList words;
    for (int i = 1; i < count; ++i)
        words << QString::fromLocal8Bit(arguments[i]);
    if (words.value(0) == "--bare")
        return runBare(count, arguments);
    const QStringList gate = words.removeAll("--gate") > 0 ? QStringList{"--gate"} : QStringList{};
    if (words.value(0) == "--part")
        for (const Part& part : parts)
            if (words.value(1) == part.name)
                return part.run(words.value(2), gate.isEmpty() ? Gate::Off : Gate::On);
    const bool areKnown = std::all_of(words.begin(), words.end(), [](const QString& word) {
        return std::any_of(std::begin(parts), std::end(parts),
                           [&](const Part& part) { return word == part.name; });
    });
    return areKnown ? runAll(arguments[0], words, gate) : usage();
}

} // namespace
} // namespace doorloom::bench

int main(int count, char** arguments)
{
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    return doorloom::bench::run(count, arguments);
}
