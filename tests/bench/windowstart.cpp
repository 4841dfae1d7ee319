#include "bench/measure.h"
#include "bench/windowrows.h"

#include <QElapsedTimer>
#include <QFile>
#include <QFileInfo>
#include <QProcess>

#include <algorithm>
#include <array>
#include <cstdio>
#include <optional>

#include <sys/resource.h>
#include <unistd.h>

namespace doorloom::bench {
namespace {

constexpr double mostMilliseconds = 500, mostSpread = 0.15;

// From exec until it says that it has painted. Nothing: it never did.
std::optional<double> startOf(const QString& program, const QStringList& arguments)
{
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("LD_PRELOAD", FIRST_PAINT);
    process.setProcessEnvironment(environment);
    process.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    QElapsedTimer clock;
    clock.start();
    process.start(program, arguments);
    const bool isPainted = process.waitForReadyRead(30'000);
    const double milliseconds = static_cast<double>(clock.nsecsElapsed()) / 1e6;
    process.waitForFinished();
    return isPainted && process.exitCode() == 0 ? std::optional(milliseconds) : std::nullopt;
}

struct Starts {
    double median = 0, spread = 0; // of wall time; the middle half's, as a part of the median
    double cpu = 0;                // of all its threads, on average
};

double childrensMilliseconds()
{
    rusage used = {};
    ::getrusage(RUSAGE_CHILDREN, &used);
    const auto of = [](const timeval& time) {
        return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
    };
    return of(used.ru_utime) + of(used.ru_stime);
}

// Of nine, after one that warms the machine's caches of files.
std::optional<Starts> startsOf(const QString& program, const QStringList& arguments)
{
    if (!startOf(program, arguments))
        return std::nullopt;
    const double before = childrensMilliseconds();
    std::array<double, 9> times{};
    for (double& time : times) {
        const std::optional<double> once = startOf(program, arguments);
        if (!once)
            return std::nullopt;
        time = *once;
    }
    std::sort(times.begin(), times.end());
    return Starts{times[4], (times[6] - times[2]) / times[4], (childrensMilliseconds() - before) / 9};
}

// Wall time is not judged while the runs differ: the machine is busy with something else.
bool isRowWithin(const char* name, const QStringList& arguments, const Starts& floor, Gate gate)
{
    const std::optional<Starts> starts = startsOf(DOORLOOM_PROGRAM, arguments);
    if (!starts) {
        std::printf("%-26s no window is painted\n", name);
        return false;
    }
    const double most = mostMilliseconds * (gate == Gate::On ? timesSlower() : 1.0);
    const bool judged = std::max(starts->spread, floor.spread) <= mostSpread;
    const bool within = starts->median <= most;
    std::printf("%-26s wall %6.1f ms  cpu %6.1f  spread %2.0f %%  bare window: wall %6.1f cpu %6.1f  "
                "gate %6.0f  %s\n",
                name, starts->median, starts->cpu, 100 * starts->spread, floor.median, floor.cpu, most,
                gate == Gate::Off ? ""
                : !judged         ? "NOT JUDGED: too busy"
                : within          ? "within"
                                  : "OVER");
    return within || !judged || gate == Gate::Off;
}

} // namespace

int startRows(const QString& file, Gate gate)
{
    const QString self = QStringLiteral("/proc/%1/exe").arg(::getpid());
    const std::optional<Starts> floor = startsOf(self, {"--bare"});
    if (!floor)
        return 2;
    const QString sample =
        QFileInfo(file).path() + "/door.doorjob"; // a lock stays beside it: the program ends at once
    if (!QFile::copy(SOURCE_FOLDER "/samples/restroom-public.doorjob", sample))
        return 2;
    const bool isSampleWithin = isRowWithin("start, one door", {sample}, *floor, gate);
    return isRowWithin("start, large job", {file}, *floor, gate) && isSampleWithin ? 0 : 1;
}

} // namespace doorloom::bench
