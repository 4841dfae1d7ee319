#include "bench/windowrows.h"

#include <QElapsedTimer>
#include <QProcess>

#include <algorithm>
#include <array>
#include <cstdio>
#include <optional>

#include <unistd.h>

namespace doorloom::bench {
namespace {

constexpr double mostMilliseconds = 500;

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

// The median of nine, after one that warms the machine's caches of files.
std::optional<double> medianStart(const QString& program, const QStringList& arguments)
{
    if (!startOf(program, arguments))
        return std::nullopt;
    std::array<double, 9> times{};
    for (double& time : times) {
        const std::optional<double> once = startOf(program, arguments);
        if (!once)
            return std::nullopt;
        time = *once;
    }
    std::sort(times.begin(), times.end());
    return times[4];
}

bool isRowWithin(const char* name, const QStringList& arguments, double floor, Gate gate)
{
    const std::optional<double> median = medianStart(DOORLOOM_PROGRAM, arguments);
    if (!median) {
        std::printf("%-26s no window is painted\n", name);
        return false;
    }
    const bool within = *median <= mostMilliseconds;
    std::printf("%-26s wall %6.1f ms  bare window %6.1f  gate %6.0f  %s\n", name, *median, floor,
                mostMilliseconds,
                gate == Gate::Off ? ""
                : within          ? "within"
                                  : "OVER");
    return within || gate == Gate::Off;
}

} // namespace

int startRows(const QString& file, Gate gate)
{
    const QString self = QStringLiteral("/proc/%1/exe").arg(::getpid());
    const std::optional<double> floor = medianStart(self, {"--bare"});
    if (!floor)
        return 2;
    const QString sample = SOURCE_FOLDER "/samples/restroom-public.doorjob";
    const bool isSampleWithin = isRowWithin("start, one door", {sample}, *floor, gate);
    return isRowWithin("start, large job", {file}, *floor, gate) && isSampleWithin ? 0 : 1;
}

} // namespace doorloom::bench
