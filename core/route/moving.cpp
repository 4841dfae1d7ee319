#include "route/router.h"

#include <cmath>

namespace doorloom::routing {

// Conductors that lie where the box is now.
std::vector<int> Router::inTheWay(const Box& box) const
{
    std::vector<int> found;
    const Lines &x = grid_.x(), &y = grid_.y();
    const int x0 = x.firstFrom(box.corner.x - 0.06), x1 = x.firstFrom(box.corner.x + box.width + 0.06);
    const int y0 = y.firstFrom(box.corner.y - 0.06), y1 = y.firstFrom(box.corner.y + box.height + 0.06);
    for (int iy = y0; iy < y1; ++iy)
        for (int ix = x0; ix < x1; ++ix)
            for (Way way : {Way::Level, Way::Upright})
                if (const int owner = grid_.owner(way, {ix, iy}); owner != 0)
                    found.push_back(owner - 1);
    return found;
}

// A route as it lies on the lines there are now; empty where they don't have its bends.
Runs Router::runsAlong(int connector, const Route& points) const
{
    const Track& track = nth(tracks_, connector);
    Runs runs;
    Way way = track.from.way;
    Cell from = track.from.cell;
    for (std::size_t i = 1; i < points.size(); ++i, way = across(way)) {
        const bool isLast = i + 1 == points.size();
        const Cell to = isLast ? track.to.cell : cellAt(points[i]);
        const bool isLevel = way == Way::Level;
        if ((isLevel ? to.y != from.y : to.x != from.x) || (!isLast && !grid_.hasLines(points[i])))
            return {};
        runs.push_back({way, isLevel ? from.y : from.x, isLevel ? from.x : from.y, isLevel ? to.x : to.y});
        from = to;
    }
    return runs;
}

// A grid with the lines of all that stands, and the conductors on it where they were.
void Router::layAnew(const std::vector<Route>& kept)
{
    std::vector<Spot> bends;
    for (const Route& points : kept)
        bends.insert(bends.end(), points.begin(), points.end());
    layGrid(bends);
    for (std::size_t i = 0; i < tracks_.size(); ++i) {
        const int connector = static_cast<int>(i);
        tracks_[i].reserved.clear();
        tracks_[i].settledCost = 0;
        tracks_[i].isPlaced = false;
        findEnds(connector);
        if (kept[i].empty() || tracks_[i].isDirect || tracks_[i].isImpossible)
            continue;
        Runs runs = runsAlong(connector, kept[i]);
        if (!runs.empty())
            put(connector, std::move(runs));
    }
}

// The points of a connector that lies as the sheet says.
Route Router::laidPoints(int connector) const
{
    const Connector& laid = nth(sheet_.connectors, connector);
    Route points{nth(sheet_.ports, laid.from).at};
    points.insert(points.end(), laid.pinned.begin(), laid.pinned.end());
    points.push_back(nth(sheet_.ports, laid.to).at);
    return points;
}

// Out: the others that were in its way, taken away
std::vector<int> Router::layDown(int connector)
{
    const Track& track = nth(tracks_, connector);
    if (track.isDirect || track.isImpossible || track.isPlaced)
        return {};
    Runs runs = runsAlong(connector, laidPoints(connector));
    if (runs.empty() || meetsLaid(connector, runs))
        return {};
    std::vector<int> others = makeRoom(connector, runs);
    put(connector, std::move(runs));
    return others;
}

// Whether the grid has lines for boxes in these places with some outside them, and for the ends and bends of
// these.
bool Router::hasLinesOf(const std::vector<Box>& places, const std::vector<int>& changed) const
{
    constexpr double outside = 4 * wantedGap;
    const Lines &x = grid_.x(), &y = grid_.y();
    bool hasLines = x.count() > 0 && y.count() > 0;
    for (const Box& box : places) {
        const Spot far{box.corner.x + box.width, box.corner.y + box.height};
        hasLines = hasLines && grid_.hasLines(box.corner) && grid_.hasLines(far) &&
                   box.corner.x - outside >= x.at.front() && far.x + outside <= x.at.back() &&
                   box.corner.y - outside >= y.at.front() && far.y + outside <= y.at.back();
    }
    for (int connector : changed)
        for (const Spot& spot : laidPoints(connector))
            hasLines = hasLines && grid_.hasLines(spot);
    return hasLines;
}

// What has changed, what lies in these places, and what had no way before.
std::vector<int> Router::looseAfter(const std::vector<Box>& places, std::vector<int> changed) const
{
    std::vector<int> loose = std::move(changed);
    for (const Box& box : places)
        for (int connector : inTheWay(box))
            if (!isLaid(connector))
                loose.push_back(connector);
    for (std::size_t i = 0; i < tracks_.size(); ++i)
        if (!tracks_[i].isPlaced && !tracks_[i].isDirect)
            loose.push_back(static_cast<int>(i));
    std::sort(loose.begin(), loose.end());
    loose.erase(std::unique(loose.begin(), loose.end()), loose.end());
    return loose;
}

void Router::moveBox(int box, Spot corner)
{
    Box& moved = nth(sheet_.boxes, box);
    const Box before = moved;
    const Spot by{corner.x - moved.corner.x, corner.y - moved.corner.y};
    moved.corner = corner;
    for (Port& port : sheet_.ports)
        if (port.box == box)
            port.at = {port.at.x + by.x, port.at.y + by.y};
    std::vector<int> changed;
    for (std::size_t i = 0; i < tracks_.size(); ++i) {
        const Connector& wanted = sheet_.connectors[i];
        if (nth(sheet_.ports, wanted.from).box == box || nth(sheet_.ports, wanted.to).box == box)
            changed.push_back(static_cast<int>(i));
    }
    ease(follow({before, moved}, changed), longestWhileMoving);
}

void Router::update(Sheet sheet)
{
    std::vector<Box> places;
    for (std::size_t i = 0; i < sheet.boxes.size(); ++i)
        if (!(sheet.boxes[i] == sheet_.boxes[i]))
            places.insert(places.end(), {sheet_.boxes[i], sheet.boxes[i]});
    const auto isElsewhere = [&](int port) { return !(nth(sheet.ports, port) == nth(sheet_.ports, port)); };
    std::vector<int> changed;
    for (std::size_t i = 0; i < sheet.connectors.size(); ++i) {
        const Connector& wanted = sheet.connectors[i];
        if (!(wanted == sheet_.connectors[i]) || isElsewhere(wanted.from) || isElsewhere(wanted.to))
            changed.push_back(static_cast<int>(i));
    }
    sheet_ = std::move(sheet);
    isFollowing_ = true;
    follow(places, changed);
    isFollowing_ = false;
}

void Router::layAs(const std::vector<Route>& routes)
{
    forgetTracks();
    std::vector<Route> kept = routes;
    for (std::size_t i = 0; i < kept.size(); ++i)
        if (isLaid(static_cast<int>(i)))
            kept[i] = laidPoints(static_cast<int>(i));
    layAnew(kept);
}

// In: places: of boxes, before and after
//     changed: connectors whose ends or bends are elsewhere
// Out: the connectors that were laid anew, in the order in which that was done
std::vector<int> Router::follow(const std::vector<Box>& places, const std::vector<int>& changed)
{
    std::vector<int> loose = looseAfter(places, changed);
    for (int connector : loose) {
        lift(connector);
        unreserve(connector);
        nth(tracks_, connector).tries = 0;
    }
    if (hasLinesOf(places, changed)) {
        for (const Box& place : places)
            grid_.standAnew(sheet_.boxes, place);
        for (int connector : loose)
            findEnds(connector);
    } else {
        std::vector<Route> kept = routes();
        for (int connector : loose)
            nth(kept, connector).clear();
        layAnew(kept);
    }
    for (std::size_t i = 0, count = loose.size(); i < count; ++i)
        if (isLaid(loose[i]))
            for (int other : layDown(loose[i]))
                loose.push_back(other);
    std::erase_if(loose, [&](int connector) { return isLaid(connector); });
    return relay(clearShared(loose));
}

// Takes away what lies in front of the ports of these where conductors share a port. Out: these, and what was
// taken away
std::vector<int> Router::clearShared(std::vector<int> loose)
{
    const std::size_t count = loose.size();
    for (std::size_t i = 0; i < count; ++i) {
        const Track& track = nth(tracks_, loose[i]);
        const Connector& wanted = nth(sheet_.connectors, loose[i]);
        if (track.isDirect || track.isImpossible)
            continue;
        for (const auto& [port, cell] :
             {std::pair{wanted.from, track.from.cell}, std::pair{wanted.to, track.to.cell}})
            for (Way way : {Way::Level, Way::Upright}) {
                const int other = grid_.owner(way, cell) - 1;
                if (nth(sharers_, port) < 2 || other < 0 || nth(sheet_.connectors, other).from == port ||
                    nth(sheet_.connectors, other).to == port)
                    continue;
                lift(other);
                unreserve(other);
                loose.push_back(other);
            }
    }
    return loose;
}

// Places these, shortest first, and improves them with those that they displaced. Out: these, in that order
std::vector<int> Router::relay(const std::vector<int>& loose)
{
    std::vector<bool> isLoose(tracks_.size(), false);
    for (int connector : loose)
        isLoose[static_cast<std::size_t>(connector)] = true;
    std::vector<int> order;
    for (int connector : order_)
        if (isLoose[static_cast<std::size_t>(connector)])
            order.push_back(connector);
    for (std::size_t i = 0; i < tracks_.size(); ++i)
        closePorts(static_cast<int>(i));
    for (int connector : order)
        reserve(connector);
    for (Track& track : tracks_)
        track.settledCost = 0;
    workBefore_ = search_.cells();
    placeAll(order);
    settle(order);
    return order;
}

} // namespace doorloom::routing
