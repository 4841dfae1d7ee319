// route_sheet SHEET [--moves MOVES --n N] [--settle]
//
// Routes a sheet and prints its routes, one a line; those without a route are left out. With --moves the
// first N boxes are moved one after another, as in a drag; --settle then routes everything from nothing, as
// on release. The last line: thread CPU time in milliseconds of the whole and of the median move, and of the
// longest.
#include "base/wholefile.h"
#include "route/readsheet.h"
#include "route/router.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <string>

namespace doorloom::routing {
namespace {

struct Asked {
    std::string sheet, moves;
    std::size_t count = static_cast<std::size_t>(-1);
    bool isSettled = false;
};

[[noreturn]] void stop(const std::string& why)
{
    std::fprintf(stderr, "route_sheet: %s\n", why.c_str());
    std::exit(2);
}

Asked askedBy(int count, char** arguments)
{
    Asked asked;
    for (int i = 1; i < count; ++i) {
        const std::string argument = arguments[i];
        if (argument == "--settle")
            asked.isSettled = true;
        else if (argument == "--moves" && i + 1 < count)
            asked.moves = arguments[++i];
        else if (argument == "--n" && i + 1 < count)
            asked.count = std::strtoul(arguments[++i], nullptr, 10);
        else if (asked.sheet.empty() && argument.rfind("--", 0) != 0)
            asked.sheet = argument;
        else
            stop("usage: route_sheet SHEET [--moves MOVES --n N] [--settle]");
    }
    if (asked.sheet.empty())
        stop("usage: route_sheet SHEET [--moves MOVES --n N] [--settle]");
    return asked;
}

template <class Thing> Thing wanted(Result<Thing> result, const std::string& file)
{
    if (!result.ok())
        stop(file + ": " + inWords(result.problem()));
    return std::move(result.value());
}

double milliseconds()
{
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) * 1e-6;
}

void print(const Router& router)
{
    const std::vector<Route> routes = router.routes();
    for (std::size_t i = 0; i < routes.size(); ++i) {
        if (routes[i].empty())
            continue;
        std::printf("route %s", router.sheet().connectors[i].id.c_str());
        for (const Spot& spot : routes[i])
            std::printf(" %.12g %.12g", spot.x, spot.y);
        std::printf("\n");
    }
}

void run(const Asked& asked)
{
    const auto textOf = [](const std::string& file) { return wanted(wholeFile(file, 200u << 20), file); };
    Router router(wanted(readSheet(textOf(asked.sheet)), asked.sheet));
    std::vector<Move> moves;
    if (!asked.moves.empty())
        moves = wanted(readMoves(textOf(asked.moves), router.sheet()), asked.moves);
    moves.resize(std::min(moves.size(), asked.count));

    double start = milliseconds();
    router.routeAll();
    const double full = milliseconds() - start;
    std::vector<double> times;
    std::size_t kept = 0, unmoved = 0;
    for (const Move& move : moves) {
        const std::vector<Route> before = router.routes();
        start = milliseconds();
        router.moveBox(move.box, move.corner);
        times.push_back(milliseconds() - start);
        for (std::size_t i = 0; i < before.size(); ++i) {
            const Connector& connector = router.sheet().connectors[i];
            const auto isOfBox = [&](int port) {
                return router.sheet().ports[static_cast<std::size_t>(port)].box == move.box;
            };
            if (isOfBox(connector.from) || isOfBox(connector.to))
                continue;
            ++unmoved;
            kept += router.route(static_cast<int>(i)) == before[i];
        }
    }
    if (asked.isSettled)
        router.routeAll();
    print(router);
    std::sort(times.begin(), times.end());
    std::printf("# %.3f ms full", full);
    if (!times.empty())
        std::printf(
            ", %.3f ms a move (median of %zu), %.3f the longest, %.2f %% of the unmoved kept their points",
            times[times.size() / 2], times.size(), times.back(),
            unmoved == 0 ? 100.0 : 100.0 * static_cast<double>(kept) / static_cast<double>(unmoved));
    std::printf("\n");
}

} // namespace
} // namespace doorloom::routing

int main(int count, char** arguments)
{
    doorloom::routing::run(doorloom::routing::askedBy(count, arguments));
}
