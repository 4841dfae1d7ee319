#include "route/router.h"

#include <cmath>
#include <limits>
#include <tuple>

namespace doorloom::routing {
namespace {

constexpr double mostCells = 12e6;    // of the grid: some 250 MB
constexpr double mostPlace = 4e9;     // farther away, doubles can't tell lines apart
constexpr double longestCost = 7'000; // across the sheet: leaves room for crossings in sixteen bits

Way wayOf(Side side)
{
    return side == Side::Left || side == Side::Right ? Way::Level : Way::Upright;
}

int outwards(Side side)
{
    return side == Side::Right || side == Side::Bottom ? 1 : -1;
}

bool isWithinBounds(double place)
{
    return std::abs(place) <= mostPlace; // not so for what is no number
}

bool isWithinBounds(const Box& box)
{
    return isWithinBounds(box.corner.x) && isWithinBounds(box.corner.y) && box.width >= 0 &&
           box.height >= 0 && isWithinBounds(box.width) && isWithinBounds(box.height);
}

bool isWithinBounds(const Connector& wanted, const Sheet& sheet)
{
    const auto isWithin = [](Spot spot) { return isWithinBounds(spot.x) && isWithinBounds(spot.y); };
    return isWithin(nth(sheet.ports, wanted.from).at) && isWithin(nth(sheet.ports, wanted.to).at) &&
           std::all_of(wanted.pinned.begin(), wanted.pinned.end(), isWithin);
}

// The places of all edges, ports and bends that stand: each needs its line.
struct Needed {
    std::vector<double> x, y;

    void add(Spot spot)
    {
        if (isWithinBounds(spot.x) && isWithinBounds(spot.y)) {
            x.push_back(spot.x);
            y.push_back(spot.y);
        }
    }
};

// Between boxes that face each other too close for the wanted gap there is still a line, for a jog.
void addNarrow(const std::vector<Box>& boxes, Needed& needed)
{
    const auto isBetween = [](double gap) { return gap >= 2 * leastGap && gap < 2 * wantedGap; };
    const auto overlap = [](double a, double wide, double b, double alsoWide) {
        return a < b + alsoWide && b < a + wide;
    };
    std::vector<const Box*> byLeft, byTop;
    for (const Box& box : boxes)
        if (isWithinBounds(box))
            byLeft.push_back(&box);
    byTop = byLeft;
    const auto startsBefore = [](double start, double other) { return start < other; };
    std::sort(byLeft.begin(), byLeft.end(),
              [](const Box* a, const Box* b) { return a->corner.x < b->corner.x; });
    std::sort(byTop.begin(), byTop.end(),
              [](const Box* a, const Box* b) { return a->corner.y < b->corner.y; });
    for (const Box* box : byLeft) {
        const double right = box->corner.x + box->width, bottom = box->corner.y + box->height;
        auto next = std::lower_bound(byLeft.begin(), byLeft.end(), right, [&](const Box* b, double place) {
            return startsBefore(b->corner.x, place);
        });
        for (; next != byLeft.end() && (*next)->corner.x - right < 2 * wantedGap; ++next)
            if (isBetween((*next)->corner.x - right) &&
                overlap(box->corner.y, box->height, (*next)->corner.y, (*next)->height))
                needed.x.push_back((right + (*next)->corner.x) / 2);
        next = std::lower_bound(byTop.begin(), byTop.end(), bottom,
                                [&](const Box* b, double place) { return startsBefore(b->corner.y, place); });
        for (; next != byTop.end() && (*next)->corner.y - bottom < 2 * wantedGap; ++next)
            if (isBetween((*next)->corner.y - bottom) &&
                overlap(box->corner.x, box->width, (*next)->corner.x, (*next)->width))
                needed.y.push_back((bottom + (*next)->corner.y) / 2);
    }
}

Needed neededBy(const Sheet& sheet)
{
    Needed needed;
    for (const Box& box : sheet.boxes) {
        if (!isWithinBounds(box))
            continue;
        const Spot far{box.corner.x + box.width, box.corner.y + box.height};
        needed.add(box.corner);
        needed.add(far);
    }
    for (const Connector& wanted : sheet.connectors)
        for (int port : {wanted.from, wanted.to})
            needed.add(nth(sheet.ports, port).at);
    for (const Connector& wanted : sheet.connectors)
        for (const Spot& spot : wanted.pinned)
            needed.add(spot);
    addNarrow(sheet.boxes, needed);
    return needed;
}

double extentOf(const std::vector<double>& places)
{
    if (places.empty())
        return 0;
    const auto [low, high] = std::minmax_element(places.begin(), places.end());
    return *high - *low;
}

} // namespace

Router::Router(Sheet sheet, const Prices& prices, const std::atomic<bool>* isGivenUp)
    : sheet_(std::move(sheet)), isGivenUp_(isGivenUp), usual_(prices), prices_(prices), search_(prices_)
{
}

// In: kept: bends of routes that stay, whose lines have to be there
void Router::layGrid(const std::vector<Spot>& kept)
{
    Needed needed = neededBy(sheet_);
    for (const Spot& spot : kept)
        needed.add(spot);
    const double across = extentOf(needed.x) + extentOf(needed.y);
    const double scale = std::min(prices_.length, longestCost / std::max(across, 1.0));
    grid_ = Grid();
    for (int most : {200, 50, 10, 2}) { // lines in the space between two that are needed
        Lines x = layLines(needed.x, std::min(most, 30), most, scale);
        Lines y = layLines(needed.y, std::min(most, 30), most, scale);
        if (static_cast<double>(x.count()) * static_cast<double>(y.count()) > mostCells || x.count() == 0)
            continue;
        grid_ = Grid(std::move(x), std::move(y), prices_);
        break;
    }
    grid_.standBoxes(sheet_.boxes);
}

Cell Router::cellAt(Spot spot) const
{
    return {grid_.x().nearest(spot.x), grid_.y().nearest(spot.y)};
}

Spot Router::spotAt(Cell cell) const
{
    return {nth(grid_.x().at, cell.x), nth(grid_.y().at, cell.y)};
}

End Router::endOf(const Port& port) const
{
    End end{cellAt(port.at), wayOf(port.side), outwards(port.side)};
    int& place = end.way == Way::Level ? end.cell.x : end.cell.y;
    const int on = place;
    place += end.out;
    end.first = nth(grid_.along(end.way).step, std::max(on, place));
    return end;
}

void Router::findEnds(int connector)
{
    Track& track = nth(tracks_, connector);
    const Connector& wanted = nth(sheet_.connectors, connector);
    const Port& from = nth(sheet_.ports, wanted.from);
    const Port& to = nth(sheet_.ports, wanted.to);
    track.least = std::abs(from.at.x - to.at.x) + std::abs(from.at.y - to.at.y);
    track.isDirect = from.at == to.at;
    track.isImpossible = grid_.x().count() == 0 || !isWithinBounds(wanted, sheet_);
    if (track.isDirect || track.isImpossible)
        return;
    track.from = endOf(from);
    track.to = endOf(to);
    track.pinned.clear();
    for (const Spot& spot : wanted.pinned)
        track.pinned.push_back(cellAt(spot));
    const bool isFacing = track.from.way == track.to.way && track.from.out != track.to.out;
    const Cell fromPort = cellAt(from.at);
    track.isDirect = isFacing && track.to.cell == fromPort && wanted.pinned.empty();
    track.isImpossible =
        !track.isDirect && (grid_.isBlocked(track.from.cell) || grid_.isBlocked(track.to.cell));
}

// Where a way may lie that costs at most that much more than the shortest.
Window Router::windowOf(const Track& track, int slack) const
{
    constexpr int most = 80; // lines on each side
    const auto widened = [&](const Lines& lines, int& first, int& last) {
        const int low = std::min(first, last), high = std::max(first, last);
        first = low;
        last = high;
        while (first > 0 && low - first < most &&
               nth(lines.distance, low) - nth(lines.distance, first - 1) <= slack / 2)
            --first;
        while (last + 1 < lines.count() && last - high < most &&
               nth(lines.distance, last + 1) - nth(lines.distance, high) <= slack / 2)
            ++last;
    };
    Window window{track.from.cell.x, track.from.cell.y, track.to.cell.x, track.to.cell.y};
    widened(grid_.x(), window.x0, window.x1);
    widened(grid_.y(), window.y0, window.y1);
    return window;
}

int Router::leastCost(const Track& track) const
{
    return grid_.x().between(track.from.cell.x, track.to.cell.x) +
           grid_.y().between(track.from.cell.y, track.to.cell.y) +
           fewestBends(track.from, track.to) * prices_.bend;
}

// Short ones first, for they have the least choice. Of a bundle that goes down the highest is first: each
// turns as late as it can, and leaves the lines before to the next.
std::vector<int> Router::inOrder() const
{
    using Key = std::tuple<double, double, double, double, double>;
    std::vector<Key> keys;
    std::vector<int> order;
    for (const Connector& wanted : sheet_.connectors) {
        Spot a = nth(sheet_.ports, wanted.from).at, b = nth(sheet_.ports, wanted.to).at;
        if (std::tie(b.x, b.y) < std::tie(a.x, a.y))
            std::swap(a, b);
        const double length = std::abs(a.x - b.x) + std::abs(a.y - b.y);
        keys.emplace_back(length, a.x, b.y > a.y ? a.y : -a.y, b.x, b.y);
        order.push_back(static_cast<int>(order.size()));
    }
    std::sort(order.begin(), order.end(), [&](int a, int b) {
        return std::tie(nth(keys, a), nth(sheet_.connectors, a).id) <
               std::tie(nth(keys, b), nth(sheet_.connectors, b).id);
    });
    std::erase_if(order, [&](int connector) { return isLaid(connector); });
    return order;
}

void Router::forgetTracks()
{
    prices_ = usual_;
    search_.setPrices(prices_);
    workBefore_ = search_.cells();
    tracks_.assign(sheet_.connectors.size(), {});
    sharers_.assign(sheet_.ports.size(), 0);
    for (const Connector& wanted : sheet_.connectors)
        for (int port : {wanted.from, wanted.to})
            ++nth(sharers_, port);
    order_ = inOrder();
}

void Router::routeAll()
{
    forgetTracks();
    layGrid({});
    for (int connector = 0; connector < static_cast<int>(tracks_.size()); ++connector)
        findEnds(connector);
    for (int connector = 0; connector < static_cast<int>(tracks_.size()); ++connector)
        if (isLaid(connector))
            layDown(connector);
    for (int connector : order_)
        closePorts(connector);
    for (int connector : order_)
        reserve(connector);
    placeAll(order_);
    settle(order_);
    ease(order_, longestRatio);
}

Route Router::route(int connector) const
{
    const Track& track = nth(tracks_, connector);
    const Connector& wanted = nth(sheet_.connectors, connector);
    const Spot from = nth(sheet_.ports, wanted.from).at, to = nth(sheet_.ports, wanted.to).at;
    if (track.isDirect)
        return {from, to};
    if (!track.isPlaced)
        return {};
    Route route{from};
    for (std::size_t i = 0; i + 1 < track.runs.size(); ++i)
        route.push_back(spotAt(cellOf(track.runs[i], track.runs[i].to)));
    route.push_back(to);
    return route;
}

std::vector<Route> Router::routes() const
{
    std::vector<Route> all;
    for (std::size_t i = 0; i < tracks_.size(); ++i)
        all.push_back(route(static_cast<int>(i)));
    return all;
}

} // namespace doorloom::routing
