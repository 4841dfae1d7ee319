#include "route/router.h"

#include <tuple>

namespace doorloom::routing {
namespace {

// Cells kept free in front of a port until its connector is placed: others then nest round it.
constexpr int stubCells = 7;
constexpr int mostTries = 7;    // of one connector, each time in the way of another
constexpr int firstSlack = 300; // what most ways cost at most above the least

// Whether a run goes straight on from the end of another: not so where it turns back.
bool goesOn(const Run& run, const Run& next)
{
    const bool isBack =
        (run.to > run.from && next.to < next.from) || (run.to < run.from && next.to > next.from);
    return run.way == next.way && !isBack;
}

// Whether runs come to a cell a second time, but for crossing themselves.
bool lieOnThemselves(const Runs& runs)
{
    using Passed = std::tuple<int, int, Way>;
    std::vector<Passed> passed;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        forEachCell(runs[i], [&](Cell cell) { passed.emplace_back(cell.x, cell.y, runs[i].way); });
        const bool isReversed = i > 0 && runs[i].way == runs[i - 1].way;
        if (isReversed)
            return true;
    }
    std::sort(passed.begin(), passed.end());
    return std::adjacent_find(passed.begin(), passed.end()) != passed.end();
}

} // namespace

// Keeps the first cells in front of both ports from others.
void Router::reserve(int connector)
{
    Track& track = nth(tracks_, connector);
    if (track.isDirect || track.isImpossible)
        return;
    for (const End& end : {track.from, track.to}) {
        Cell cell = end.cell;
        int& place = end.way == Way::Level ? cell.x : cell.y;
        const int line = end.way == Way::Level ? cell.y : cell.x;
        for (int i = 0; i < stubCells && grid_.has(cell); ++i, place += end.out) {
            if (grid_.isBlocked(cell) || grid_.owner(end.way, cell) != 0)
                break;
            const Run run{end.way, line, place, place};
            track.reserved.push_back(run);
            grid_.occupy({run}, connector);
        }
    }
}

void Router::unreserve(int connector)
{
    Track& track = nth(tracks_, connector);
    grid_.release(track.reserved);
    track.reserved.clear();
}

// Connectors that share a port share the cell in front of it, which is closed to all others.
void Router::openPorts(int connector)
{
    const Track& track = nth(tracks_, connector);
    const Connector& wanted = nth(sheet_.connectors, connector);
    if (track.isDirect || track.isImpossible)
        return;
    if (nth(sharers_, wanted.from) > 1)
        grid_.open(track.from.cell);
    if (nth(sharers_, wanted.to) > 1)
        grid_.open(track.to.cell);
}

void Router::closePorts(int connector)
{
    const Track& track = nth(tracks_, connector);
    const Connector& wanted = nth(sheet_.connectors, connector);
    if (track.isDirect || track.isImpossible)
        return;
    if (nth(sharers_, wanted.from) > 1)
        grid_.close(track.from.cell);
    if (nth(sharers_, wanted.to) > 1)
        grid_.close(track.to.cell);
}

void Router::put(int connector, Runs runs)
{
    Track& track = nth(tracks_, connector);
    track.runs = std::move(runs);
    track.isPlaced = true;
    grid_.occupy(track.runs, connector);
}

void Router::lift(int connector)
{
    Track& track = nth(tracks_, connector);
    if (!track.isPlaced)
        return;
    grid_.release(track.runs);
    track.isPlaced = false;
}

// The cheapest way beside the others; its own runs must not lie on the grid.
std::optional<Found> Router::find(int connector, const Window& window, int limit)
{
    const std::uint64_t mostWork = isFollowing_ ? 10'000'000 : 2'000'000'000; // cells: some 5 ms, a second or two
    const Track& track = nth(tracks_, connector);
    if (search_.cells() > workBefore_ + mostWork || (isGivenUp_ && *isGivenUp_))
        return std::nullopt;
    if (track.pinned.empty())
        return search_.between(grid_, track.from, track.to, window, limit);
    std::optional<Found> found = findByPins(connector, window);
    return found && found->cost - track.to.first < limit ? found : std::nullopt;
}

// The next leg of a way by pinned bends: to the pin either way, or to the other port.
std::optional<Found> Router::legTo(const Track& track, std::size_t leg, const End& from, const Window& window)
{
    if (leg == track.pinned.size())
        return search_.between(grid_, from, track.to, window);
    std::optional<Found> best;
    for (Way way : {Way::Level, Way::Upright}) {
        const End pin{track.pinned[leg], way};
        std::optional<Found> found =
            search_.between(grid_, from, pin, window, best ? best->cost : int{never});
        if (found)
            best = std::move(found);
    }
    return best;
}

// One leg after another, each kept off those before.
std::optional<Found> Router::findByPins(int connector, Window window)
{
    const Track& track = nth(tracks_, connector);
    for (const Cell& pin : track.pinned)
        window = {std::min(window.x0, pin.x), std::min(window.y0, pin.y), std::max(window.x1, pin.x),
                  std::max(window.y1, pin.y)};
    Found whole;
    Runs laid;
    End from = track.from;
    std::optional<Found> found;
    for (std::size_t leg = 0; leg <= track.pinned.size(); ++leg) {
        found = legTo(track, leg, from, window);
        if (!found)
            break;
        whole.cost += found->cost;
        whole.hasConflicts = whole.hasConflicts || found->hasConflicts;
        for (const Run& run : found->runs)
            if (whole.runs.empty() || !goesOn(whole.runs.back(), run))
                whole.runs.push_back(run);
            else
                whole.runs.back().to = run.to;
        Run& last = found->runs.back();
        from = {cellOf(last, last.to), last.way};
        if (last.from == last.to) // the pin itself stays free, for the next leg begins there
            found->runs.pop_back();
        else
            last.to += last.from < last.to ? -1 : 1;
        const Runs taken = grid_.occupyFree(found->runs, connector);
        laid.insert(laid.end(), taken.begin(), taken.end());
    }
    grid_.release(laid);
    return found && !lieOnThemselves(whole.runs) ? std::optional(std::move(whole)) : std::nullopt;
}

// A way without conflicts near the shortest if there is one, else farther off, else with conflicts.
std::optional<Found> Router::findSomehow(int connector)
{
    const Track& track = nth(tracks_, connector);
    const int least = leastCost(track) + track.from.first;
    for (int slack : {firstSlack, 4 * firstSlack}) {
        std::optional<Found> found = find(connector, windowOf(track, slack), least + slack);
        if (found && !found->hasConflicts)
            return found;
    }
    return find(connector, {0, 0, grid_.x().count() - 1, grid_.y().count() - 1}, never);
}

bool Router::meetsLaid(int connector, const Runs& runs) const
{
    bool isMet = false;
    grid_.forEachConflict(runs, connector, [&](int other) { isMet = isMet || isLaid(other); });
    return isMet;
}

// Takes away what lies in the way of these runs. Out: what was taken away, to be placed again
std::vector<int> Router::makeRoom(int connector, const Runs& runs)
{
    std::vector<int> others;
    grid_.forEachConflict(runs, connector, [&](int other) { others.push_back(other); });
    std::sort(others.begin(), others.end());
    others.erase(std::unique(others.begin(), others.end()), others.end());
    for (int other : others) {
        lift(other);
        unreserve(other);
    }
    return others;
}

void Router::place(int connector)
{
    Track& track = nth(tracks_, connector);
    if (track.isDirect || track.isImpossible || track.isPlaced)
        return;
    unreserve(connector);
    openPorts(connector);
    std::optional<Found> found = findSomehow(connector);
    std::vector<int> others;
    const bool hasRoom = found && (!found->hasConflicts ||
                                   (track.tries < mostTries && !meetsLaid(connector, found->runs)));
    if (hasRoom) {
        others = makeRoom(connector, found->runs);
        put(connector, std::move(found->runs));
    }
    ++track.tries;
    closePorts(connector);
    for (int other : others)
        if (!nth(tracks_, other).isPlaced) {
            reserve(other);
            waiting_.push_back(other);
        }
}

void Router::placeWaiting()
{
    while (!waiting_.empty()) {
        const int connector = waiting_.front();
        waiting_.pop_front();
        place(connector);
    }
}

// Places these in their order. A way over a hundred others costs more than there are numbers for: those that
// found none are tried again with cheap crossings, and as many bends as it takes; not step by step while a sheet is
// followed.
void Router::placeAll(const std::vector<int>& connectors)
{
    waiting_.assign(connectors.begin(), connectors.end());
    placeWaiting();
    if (isFollowing_)
        return;
    const Cost usual = prices_.crossing;
    for (int price : {usual / 8, 1}) {
        for (int connector : connectors)
            if (const Track& track = nth(tracks_, connector);
                !track.isPlaced && !track.isDirect && !track.isImpossible)
                waiting_.push_back(connector);
        if (waiting_.empty())
            break;
        for (Track& track : tracks_)
            track.tries = 0;
        setCrossingPrice(static_cast<Cost>(price));
        search_.allowBends(Search::manyBends);
        placeWaiting();
    }
    search_.allowBends(Search::usualBends);
    if (prices_.crossing != usual)
        setCrossingPrice(usual);
}

} // namespace doorloom::routing
