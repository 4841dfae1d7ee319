#include "route/router.h"

#include <cmath>

namespace doorloom::routing {
namespace {

constexpr int mostPasses = 8;

} // namespace

// Gives a conductor the cheapest way beside the others, if that is longer by no more than `room`. One that
// costs what it did when there was nothing cheaper is left alone: seldom has a way opened meanwhile. Out:
// whether it was changed
bool Router::improve(int connector, double room)
{
    Track& track = nth(tracks_, connector);
    if (!track.isPlaced)
        return false;
    openPorts(connector);
    const int cost = grid_.costOf(track.runs, connector);
    const int slack = cost - leastCost(track);
    bool isBetter = false;
    if (slack > 0 && cost != track.settledCost) {
        track.settledCost = cost;
        grid_.release(track.runs);
        std::optional<Found> found = find(connector, windowOf(track, slack), cost + track.from.first);
        if (found && !found->hasConflicts) {
            const double length = lengthOf(connector);
            std::swap(track.runs, found->runs);
            isBetter = lengthOf(connector) - length <= room;
            if (isBetter)
                track.settledCost = found->cost - endCost(track);
            else
                std::swap(track.runs, found->runs);
        }
        grid_.occupy(track.runs, connector);
    }
    closePorts(connector);
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

void Router::setCrossingPrice(Cost price)
{
    prices_.crossing = price;
    grid_.setPrices(prices_);
    search_.setPrices(prices_);
    for (Track& track : tracks_) {
        grid_.refresh(track.isPlaced ? track.runs : track.reserved);
        track.settledCost = 0;
    }
}

double Router::lengthOf(int connector) const
{
    double length = 0;
    const Route points = route(connector);
    for (std::size_t i = 1; i < points.size(); ++i)
        length += std::abs(points[i].x - points[i - 1].x) + std::abs(points[i].y - points[i - 1].y);
    return length;
}

// What all together are longer than that many times the least.
double Router::excess(double ratio) const
{
    double length = 0, least = 0;
    for (std::size_t i = 0; i < tracks_.size(); ++i) {
        const bool isWished = !tracks_[i].pinned.empty() || isLaid(static_cast<int>(i)); // a detour as well
        if (!tracks_[i].isPlaced || isWished)
            continue;
        length += lengthOf(static_cast<int>(i));
        least += tracks_[i].least;
    }
    return length - ratio * least;
}

// What a conductor would save in length at the present price of crossings, and what that costs at the true
// one.
std::optional<Router::Offer> Router::offerOf(int connector, Cost truePrice)
{
    Track& track = nth(tracks_, connector);
    const double length = lengthOf(connector);
    constexpr double worth = 40; // less is not looked for
    if (!track.isPlaced || length - track.least < worth)
        return std::nullopt;
    const auto trueCost = [&](const Runs& runs) {
        return grid_.costOf(runs, connector) +
               grid_.crossings(runs, connector) * (truePrice - prices_.crossing);
    };
    openPorts(connector);
    const int cost = grid_.costOf(track.runs, connector), before = trueCost(track.runs);
    const int slack = cost - leastCost(track);
    grid_.release(track.runs);
    std::optional<Found> found = find(connector, windowOf(track, slack), cost + track.from.first);
    std::optional<Offer> offer;
    if (found && !found->hasConflicts) {
        std::swap(track.runs, found->runs);
        const double saved = length - lengthOf(connector);
        if (saved > 0)
            offer = Offer{connector, saved, static_cast<double>(trueCost(track.runs) - before)};
        std::swap(track.runs, found->runs);
    }
    grid_.occupy(track.runs, connector);
    closePorts(connector);
    return offer;
}

// Gives up detours of these, the dearest first, until all together are short enough.
void Router::ease(const std::vector<int>& connectors, double ratio)
{
    double over = excess(ratio);
    if (over <= 0)
        return;
    const Cost price = prices_.crossing;
    while (over > 0 && prices_.crossing > 10) {
        setCrossingPrice(static_cast<Cost>(prices_.crossing / 2));
        std::vector<Offer> offers;
        for (int connector : connectors)
            if (const std::optional<Offer> offer = offerOf(connector, price))
                offers.push_back(*offer);
        std::stable_sort(offers.begin(), offers.end(),
                         [](const Offer& a, const Offer& b) { return a.loss * b.saved < b.loss * a.saved; });
        for (const Offer& offer : offers) {
            const double before = lengthOf(offer.connector);
            if (over > 0 && improve(offer.connector))
                over -= before - lengthOf(offer.connector);
        }
    }
    setCrossingPrice(price);
    for (int connector : connectors) { // what is left may be spent on crossings again
        const double before = lengthOf(connector);
        if (improve(connector, -over))
            over += lengthOf(connector) - before;
    }
}

} // namespace doorloom::routing
