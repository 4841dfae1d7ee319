#include "route/router.h"

#include <cmath>

namespace doorloom::routing {
namespace {

constexpr int mostPasses = 8;
constexpr double longestRatio = 1.147; // of all lengths to what they would be with nothing in the way
constexpr std::size_t wholeGroup = 8;

} // namespace

void Router::note(const Runs& before, const Runs& after)
{
    Window window{grid_.x().count(), grid_.y().count(), 0, 0};
    for (const Runs* runs : {&before, &after})
        for (const Run& run : *runs)
            for (int place : {run.from, run.to})
                window.include(cellOf(run, place));
    changes_.push_back(window);
}

Window Router::around(const Track& track) const
{
    constexpr int reach = 2;
    Window window{track.from.cell.x, track.from.cell.y, track.from.cell.x, track.from.cell.y};
    window.include(track.to.cell);
    for (const Run& run : track.runs)
        for (int place : {run.from, run.to})
            window.include(cellOf(run, place));
    return {window.x0 - reach, window.y0 - reach, window.x1 + reach, window.y1 + reach};
}

bool Router::hasChanged(const Window& window, std::size_t since) const
{
    return std::any_of(changes_.begin() + static_cast<std::ptrdiff_t>(since), changes_.end(), [&](const Window& change) {
        return change.x0 <= window.x1 && change.x1 >= window.x0 && change.y0 <= window.y1 && change.y1 >= window.y0;
    });
}

// Gives a conductor the cheapest way beside the others. Out: whether it is cheaper than before
bool Router::improve(int connector)
{
    Track& track = nth(tracks_, connector);
    if (!track.isPlaced || (track.seen > 0 && !hasChanged(around(track), track.seen)))
        return false;
    openPorts(connector);
    const int cost = grid_.costOf(track.runs, connector);
    const int slack = cost - leastCost(track);
    grid_.release(track.runs);
    std::optional<Found> found;
    if (slack > 0)
        found = find(connector, windowOf(track, slack), cost + track.from.first);
    const bool isBetter = found && !found->hasConflicts;
    if (isBetter) {
        note(track.runs, found->runs);
        track.runs = std::move(found->runs);
    }
    grid_.occupy(track.runs, connector);
    closePorts(connector);
    track.seen = changes_.size();
    return isBetter;
}

void Router::settle(const std::vector<int>& connectors)
{
    for (int pass = 0; pass < mostPasses; ++pass) {
        bool isChanged = false;
        for (int connector : connectors)
            isChanged = improve(connector) || isChanged;
        if (!isChanged)
            return;
    }
}

// Takes up a conductor with some that it crosses, and lays them anew: two in each other's way can't be mended
// one at a time.
bool Router::shake(int connector, std::size_t most)
{
    Track& track = nth(tracks_, connector);
    if (!track.isPlaced || (track.shaken > 0 && !hasChanged(around(track), track.shaken)))
        return false;
    std::vector<int> group = grid_.partners(track.runs, connector);
    std::sort(group.begin(), group.end());
    group.erase(std::unique(group.begin(), group.end()), group.end());
    if (group.size() > most)
        group.resize(most);
    group.push_back(connector);
    const bool isBetter = group.size() > 1 && replaceAll(group);
    track.shaken = changes_.size();
    return isBetter;
}

// Lays these anew in this order; as they were, unless the sum is lower.
bool Router::replaceAll(const std::vector<int>& group)
{
    std::vector<Runs> before;
    int cost = 0, least = 0;
    for (int connector : group) {
        Track& track = nth(tracks_, connector);
        openPorts(connector);
        cost += grid_.costOf(track.runs, connector) + endCost(track);
        least += leastCost(track) + endCost(track);
        before.push_back(track.runs);
        lift(connector);
    }
    for (int connector : group) {
        Track& track = nth(tracks_, connector);
        const int own = leastCost(track) + endCost(track);
        least -= own;
        const int most = cost - least;
        std::optional<Found> found;
        if (most > own)
            found = find(connector, windowOf(track, most - own), most - track.to.first);
        if (!found || found->hasConflicts)
            break;
        cost -= found->cost;
        put(connector, std::move(found->runs));
    }
    const bool isBetter = nth(tracks_, group.back()).isPlaced;
    if (!isBetter)
        for (int connector : group)
            lift(connector);
    for (std::size_t i = 0; i < group.size(); ++i) {
        if (isBetter)
            note(before[i], nth(tracks_, group[i]).runs);
        else
            put(group[i], std::move(before[i]));
        closePorts(group[i]);
    }
    return isBetter;
}

// In: work: cells that may be looked at, those so far included
void Router::shakeWithin(const std::vector<int>& connectors, std::uint64_t work)
{
    for (std::size_t most : {std::size_t{1}, wholeGroup}) {
        for (Track& track : tracks_)
            track.shaken = 0;
        for (bool isChanged = true; isChanged;) {
            isChanged = false;
            for (int connector : connectors) {
                if (search_.cells() > work)
                    return;
                if (shake(connector, most)) {
                    isChanged = true;
                    improve(connector);
                }
            }
            settle(connectors);
        }
    }
}

void Router::setCrossingPrice(Cost price)
{
    prices_.crossing = price;
    grid_.setPrices(prices_);
    search_.setPrices(prices_);
    for (Track& track : tracks_)
        track.seen = 0;
}

double Router::lengthOf(int connector) const
{
    double length = 0;
    const Route points = route(connector);
    for (std::size_t i = 1; i < points.size(); ++i)
        length += std::abs(points[i].x - points[i - 1].x) + std::abs(points[i].y - points[i - 1].y);
    return length;
}

// What all together are too long by.
double Router::excess() const
{
    double length = 0, least = 0;
    for (std::size_t i = 0; i < tracks_.size(); ++i) {
        if (!tracks_[i].isPlaced)
            continue;
        length += lengthOf(static_cast<int>(i));
        least += tracks_[i].least;
    }
    return length - longestRatio * least;
}

// Makes crossings cheaper until the detours are short enough together.
void Router::ease(const std::vector<int>& connectors)
{
    double over = excess();
    if (over <= 0)
        return;
    const Cost price = prices_.crossing;
    while (over > 0 && prices_.crossing > 10) {
        setCrossingPrice(static_cast<Cost>(prices_.crossing * 85 / 100));
        for (int connector : connectors) {
            const double before = lengthOf(connector);
            if (over > 0 && before > nth(tracks_, connector).least && improve(connector))
                over -= before - lengthOf(connector);
        }
    }
    setCrossingPrice(price);
}

} // namespace doorloom::routing
