#include "bench/measure.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>
#include <ctime>
#include <string>
#include <vector>

namespace doorloom::bench {

static double millisecondsOn(clockid_t clock)
{
    timespec now = {};
    ::clock_gettime(clock, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

double threadMilliseconds()
{
    return millisecondsOn(CLOCK_THREAD_CPUTIME_ID);
}

double otherThreadsMilliseconds()
{
    return millisecondsOn(CLOCK_PROCESS_CPUTIME_ID) - threadMilliseconds();
}

namespace {

// The calibration loop on the machine where the gates were set: two cores of an AMD EPYC, g++ 12 -O3.
constexpr double loopMillisecondsWhenSet = 9.0;
constexpr double mostSpread = 0.15;
constexpr int mostAttempts = 5;

double millisecondsOf(const std::function<void()>& run)
{
    const double start = threadMilliseconds();
    run();
    return threadMilliseconds() - start;
}

// Small allocations and comparisons, as most of this program's work is.
void calibrationLoop()
{
    std::vector<std::string> words;
    std::uint64_t state = 1;
    for (int i = 0; i < 40'000; ++i) {
        state =
            state * 6364136223846793005u + 1442695040888963407u; // a linear congruence: any spread will do
        words.push_back("a word of more than sixteen letters " + std::to_string(state >> 40));
    }
    std::sort(words.begin(), words.end());
    volatile std::size_t kept = words[words.size() / 2].size(); // so that nothing is left out
    static_cast<void>(kept);
}

} // namespace

Times timesOf(const std::function<void()>& run)
{
    run();
    std::array<double, 9> times{};
    std::generate(times.begin(), times.end(), [&] { return millisecondsOf(run); });
    std::sort(times.begin(), times.end());
    return {times[4], (times[6] - times[2]) / times[4]};
}

double timesSlower()
{
    return std::max(1.0, timesOf(calibrationLoop).medianMilliseconds / loopMillisecondsWhenSet);
}

bool isWithin(const char* name, double mostMilliseconds, Gate gate, const std::function<void()>& run)
{
    Times loop, times;
    for (int attempt = 0; attempt < mostAttempts; ++attempt) {
        loop = timesOf(calibrationLoop);
        times = timesOf(run);
        if (std::max(loop.spread, times.spread) <= mostSpread)
            break;
    }
    const double most = mostMilliseconds * std::max(1.0, loop.medianMilliseconds / loopMillisecondsWhenSet);
    const bool judged = std::max(loop.spread, times.spread) <= mostSpread;
    const bool within = times.medianMilliseconds <= most;
    std::printf("%-20s %8.2f ms  gate %8.2f ms  spread %2.0f %%  calibration %6.2f ms  %s\n", name,
                times.medianMilliseconds, most, 100 * times.spread, loop.medianMilliseconds,
                gate == Gate::Off ? ""
                : !judged         ? "NOT JUDGED: too busy"
                : within          ? "within"
                                  : "OVER");
    return gate == Gate::Off || !judged || within;
}

void Percentiles::tell(const char* name, std::vector<double> times, double most, double floor)
{
    std::sort(times.begin(), times.end());
    const double worst = times[times.size() * 95 / 100], gate = most * slower_;
    const bool within = worst <= gate;
    std::printf("%-26s p95 %9.4f ms  median %9.4f  gate %8.3f  ", name, worst, times[times.size() / 2], gate);
    if (floor > 0)
        std::printf("bare painter %7.3f ms  ", floor);
    std::printf("%s\n", gate_ == Gate::Off ? "" : within ? "within" : "OVER");
    areWithin_ = areWithin_ && (gate_ == Gate::Off || within);
}

} // namespace doorloom::bench
