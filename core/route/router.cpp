#include "route/router.h"

#include <cmath>
#include <tuple>

namespace doorloom::routing {
namespace {

constexpr double same = 0.05;

Way wayOf(Side side)
{
    return side == Side::Left || side == Side::Right ? Way::Level : Way::Upright;
}

int outwards(Side side)
{
    return side == Side::Right || side == Side::Bottom ? 1 : -1;
}

} // namespace

Router::Router(Sheet sheet, Prices prices, Effort effort)
    : sheet_(std::move(sheet)), prices_(prices), effort_(effort), search_(prices)
{
}

void Router::layGrid()
{
    std::vector<double> x, y;
    for (const Box& box : sheet_.boxes) {
        x.insert(x.end(), {box.corner.x, box.corner.x + box.width});
        y.insert(y.end(), {box.corner.y, box.corner.y + box.height});
    }
    for (const Port& port : sheet_.ports) {
        x.push_back(port.at.x);
        y.push_back(port.at.y);
    }
    const int spare = 30;
    const int most = 200;
    grid_ = Grid(layLines(x, spare, most, prices_.unit), layLines(y, spare, most, prices_.unit), prices_);
    if (!x.empty())
        grid_.standBoxes(sheet_.boxes, {grid_.x().at.front(), grid_.y().at.front()},
                         {grid_.x().at.back(), grid_.y().at.back()});
}

End Router::endOf(const Port& port) const
{
    End end;
    end.way = wayOf(port.side);
    Cell cell{grid_.x().nearest(port.at.x), grid_.y().nearest(port.at.y)};
    int& place = end.way == Way::Level ? cell.x : cell.y;
    const int on = place;
    end.out = outwards(port.side);
    place += end.out;
    end.first = grid_.along(end.way).step[static_cast<std::size_t>(std::max(on, place))];
    end.cell = cell;
    return end;
}

void Router::findEnds(int connector)
{
    Line& line = lines_[static_cast<std::size_t>(connector)];
    const Connector& wanted = sheet_.connectors[static_cast<std::size_t>(connector)];
    const Port& from = sheet_.ports[static_cast<std::size_t>(wanted.from)];
    const Port& to = sheet_.ports[static_cast<std::size_t>(wanted.to)];
    line.from = endOf(from);
    line.to = endOf(to);
    const bool facing = line.from.way == line.to.way && outwards(from.side) != outwards(to.side);
    const Cell fromPort{grid_.x().nearest(from.at.x), grid_.y().nearest(from.at.y)};
    const bool meet = line.to.cell.x == fromPort.x && line.to.cell.y == fromPort.y;
    const bool isPoint = std::abs(from.at.x - to.at.x) < same && std::abs(from.at.y - to.at.y) < same;
    line.isDirect = isPoint || (facing && meet);
    line.isImpossible = !line.isDirect && (grid_.isBlocked(line.from.cell) || grid_.isBlocked(line.to.cell));
}

void Router::reserve(int connector)
{
    Line& line = lines_[static_cast<std::size_t>(connector)];
    if (line.isDirect || line.isImpossible)
        return;
    const Connector& wanted = sheet_.connectors[static_cast<std::size_t>(connector)];
    int which = 0;
    for (const End* end : {&line.from, &line.to}) {
        const int port = which++ == 0 ? wanted.from : wanted.to;
        const int out = outwards(sheet_.ports[static_cast<std::size_t>(port)].side);
        Cell cell = end->cell;
        for (int i = 0; i < effort_.stub; ++i) {
            if (grid_.isBlocked(cell) || grid_.owner(end->way, cell) != 0)
                break;
            const bool level = end->way == Way::Level;
            const int place = level ? cell.x : cell.y;
            const Run run{end->way, level ? cell.y : cell.x, place, place};
            line.reserved.push_back(run);
            grid_.occupy({run}, connector);
            (level ? cell.x : cell.y) += out;
        }
    }
}

void Router::unreserve(int connector)
{
    Line& line = lines_[static_cast<std::size_t>(connector)];
    grid_.release(line.reserved);
    line.reserved.clear();
}

Window Router::windowOf(const Line& line, int margin) const
{
    Window window;
    window.x0 = std::max(0, std::min(line.from.cell.x, line.to.cell.x) - margin);
    window.y0 = std::max(0, std::min(line.from.cell.y, line.to.cell.y) - margin);
    window.x1 = std::min(grid_.x().count() - 1, std::max(line.from.cell.x, line.to.cell.x) + margin);
    window.y1 = std::min(grid_.y().count() - 1, std::max(line.from.cell.y, line.to.cell.y) + margin);
    return window;
}

Window Router::windowWithin(const Line& line, int slack, int margin) const
{
    Window window = windowOf(line, margin);
    const auto shrink = [&](const Lines& lines, int& first, int& last, int a, int b) {
        if (a > b)
            std::swap(a, b);
        while (lines.distance[static_cast<std::size_t>(a)] - lines.distance[static_cast<std::size_t>(first)] > slack / 2)
            ++first;
        while (lines.distance[static_cast<std::size_t>(last)] - lines.distance[static_cast<std::size_t>(b)] > slack / 2)
            --last;
    };
    shrink(grid_.x(), window.x0, window.x1, line.from.cell.x, line.to.cell.x);
    shrink(grid_.y(), window.y0, window.y1, line.from.cell.y, line.to.cell.y);
    return window;
}

int Router::leastCost(const Line& line) const
{
    const auto apart = [](const Lines& lines, int a, int b) {
        return std::abs(lines.distance[static_cast<std::size_t>(a)] - lines.distance[static_cast<std::size_t>(b)]);
    };
    const int length = apart(grid_.x(), line.from.cell.x, line.to.cell.x) + apart(grid_.y(), line.from.cell.y, line.to.cell.y);
    return length + fewestBends(line.from, line.to) * prices_.bend;
}

void Router::lift(int connector)
{
    Line& line = lines_[static_cast<std::size_t>(connector)];
    if (!line.isPlaced)
        return;
    grid_.release(line.runs);
    line.isPlaced = false;
}

void Router::put(int connector, Runs runs)
{
    Line& line = lines_[static_cast<std::size_t>(connector)];
    line.runs = std::move(runs);
    grid_.occupy(line.runs, connector);
    line.isPlaced = true;
}

bool Router::place(int connector)
{
    Line& line = lines_[static_cast<std::size_t>(connector)];
    unreserve(connector);
    std::optional<Found> found;
    for (int slack : {effort_.slack, 4 * effort_.slack, int{never}}) {
        const bool isLast = slack == never;
        const int least = leastCost(line) + line.from.first;
        const Window window = isLast ? windowOf(line, 100'000) : windowWithin(line, slack, effort_.margin);
        found = search_.between(grid_, line.from, line.to, window, isLast ? int{never} : least + slack);
        if (found && !found->hasConflicts)
            break;
    }
    ++line.tries;
    if (!found || (found->hasConflicts && line.tries > 6))
        return false;
    std::vector<int> others;
    if (found->hasConflicts) {
        grid_.forEachConflict(found->runs, connector, [&](int other) { others.push_back(other); });
        std::sort(others.begin(), others.end());
        others.erase(std::unique(others.begin(), others.end()), others.end());
        for (int other : others) {
            if (lines_[static_cast<std::size_t>(other)].isPlaced)
                lift(other);
            else
                unreserve(other);
        }
    }
    put(connector, std::move(found->runs));
    for (int other : others) {
        reserve(other);
        if (std::find(waiting_.begin(), waiting_.end(), other) == waiting_.end())
            waiting_.push_back(other);
    }
    return true;
}

std::vector<int> Router::inOrder() const
{
    std::vector<int> order;
    using Key = std::tuple<double, double, double, double, double>;
    std::vector<Key> keys;
    for (const Connector& wanted : sheet_.connectors) {
        Spot a = sheet_.ports[static_cast<std::size_t>(wanted.from)].at, b = sheet_.ports[static_cast<std::size_t>(wanted.to)].at;
        if (std::tie(b.x, b.y) < std::tie(a.x, a.y))
            std::swap(a, b);
        double length = std::abs(a.x - b.x) + std::abs(a.y - b.y);
        if (effort_.order == 1)
            length = -length;
        if (effort_.order == 2)
            length = 0;
        keys.emplace_back(length, -a.x, b.y > a.y ? -a.y : a.y, b.x, b.y);
        order.push_back(static_cast<int>(order.size()));
    }
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return keys[static_cast<std::size_t>(a)] < keys[static_cast<std::size_t>(b)];
    });
    return order;
}

void Router::note(const Runs& before, const Runs& after)
{
    Window around{grid_.x().count(), grid_.y().count(), 0, 0};
    for (const Runs* runs : {&before, &after})
        for (const Run& run : *runs)
            for (int place : {run.from, run.to}) {
                const Cell cell = cellOf(run, place);
                around.x0 = std::min(around.x0, cell.x);
                around.x1 = std::max(around.x1, cell.x);
                around.y0 = std::min(around.y0, cell.y);
                around.y1 = std::max(around.y1, cell.y);
            }
    changes_.push_back(around);
}

Window Router::around(const Line& line, int reach) const
{
    Window window = windowOf(line, 0);
    for (const Run& run : line.runs)
        for (int place : {run.from, run.to}) {
            const Cell cell = cellOf(run, place);
            window.x0 = std::min(window.x0, cell.x);
            window.x1 = std::max(window.x1, cell.x);
            window.y0 = std::min(window.y0, cell.y);
            window.y1 = std::max(window.y1, cell.y);
        }
    return {window.x0 - reach, window.y0 - reach, window.x1 + reach, window.y1 + reach};
}

bool Router::hasChanged(const Line& line, const Window& window) const
{
    for (std::size_t i = line.seen; i < changes_.size(); ++i) {
        const Window& change = changes_[i];
        if (change.x0 <= window.x1 && change.x1 >= window.x0 && change.y0 <= window.y1 && change.y1 >= window.y0)
            return true;
    }
    return false;
}

bool Router::improve(int connector)
{
    Line& line = lines_[static_cast<std::size_t>(connector)];
    if (!line.isPlaced)
        return false;
    const int cost = grid_.costOf(line.runs, connector);
    const int slack = cost - leastCost(line);
    if (slack <= 0)
        return false;
    const Window window = windowWithin(line, slack, effort_.margin);
    if (line.seen > 0 && !hasChanged(line, effort_.wide ? window : around(line, effort_.reach)))
        return false;
    grid_.release(line.runs);
    std::optional<Found> found = search_.between(grid_, line.from, line.to, window, cost + line.from.first);
    const bool isBetter = found && !found->hasConflicts;
    if (isBetter) {
        note(line.runs, found->runs);
        line.runs = std::move(found->runs);
    }
    grid_.occupy(line.runs, connector);
    line.seen = changes_.size();
    return isBetter;
}

bool Router::shake(int connector, int how)
{
    Line& line = lines_[static_cast<std::size_t>(connector)];
    if (!line.isPlaced)
        return false;
    std::vector<int> group = grid_.partners(line.runs, connector);
    std::sort(group.begin(), group.end());
    group.erase(std::unique(group.begin(), group.end()), group.end());
    if (group.empty())
        return false;
    if (static_cast<int>(group.size()) > effort_.group)
        group.resize(static_cast<std::size_t>(effort_.group));
    if ((how + effort_.wide) % 2 == 0)
        group.insert(group.begin(), connector);
    else
        group.push_back(connector);
    std::vector<Runs> saved;
    int before = 0;
    for (int other : group) {
        Line& that = lines_[static_cast<std::size_t>(other)];
        before += grid_.costOf(that.runs, other) + that.from.first + that.to.first;
        saved.push_back(that.runs);
        grid_.release(that.runs);
    }
    int after = 0, rest = 0;
    for (int other : group)
        rest += leastCost(lines_[static_cast<std::size_t>(other)]) + lines_[static_cast<std::size_t>(other)].from.first + lines_[static_cast<std::size_t>(other)].to.first;
    std::size_t done = 0;
    for (; done < group.size(); ++done) {
        Line& that = lines_[static_cast<std::size_t>(group[done])];
        const int least = leastCost(that) + that.from.first + that.to.first;
        rest -= least;
        const int most = before - after - rest;
        if (most <= least)
            break;
        std::optional<Found> found = search_.between(grid_, that.from, that.to, windowWithin(that, most - least, effort_.margin), most - that.to.first);
        if (!found || found->hasConflicts)
            break;
        after += found->cost;
        if (after >= before)
            break;
        that.runs = std::move(found->runs);
        grid_.occupy(that.runs, group[done]);
    }
    if (done == group.size()) {
        for (std::size_t i = 0; i < group.size(); ++i)
            note(saved[i], lines_[static_cast<std::size_t>(group[i])].runs);
        return true;
    }
    for (std::size_t i = 0; i < done; ++i)
        grid_.release(lines_[static_cast<std::size_t>(group[i])].runs);
    for (std::size_t i = 0; i < group.size(); ++i) {
        lines_[static_cast<std::size_t>(group[i])].runs = saved[i];
        grid_.occupy(saved[i], group[i]);
    }
    return false;
}

double Router::lengthOf(int connector) const
{
    double length = 0;
    const Route route = pointsOf(connector);
    for (std::size_t k = 1; k < route.size(); ++k)
        length += std::abs(route[k].x - route[k - 1].x) + std::abs(route[k].y - route[k - 1].y);
    return length;
}

double Router::lengthRatio() const
{
    double length = 0, least = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        const Line& line = lines_[i];
        if (!line.isPlaced)
            continue;
        const Connector& wanted = sheet_.connectors[i];
        const Spot from = sheet_.ports[static_cast<std::size_t>(wanted.from)].at, to = sheet_.ports[static_cast<std::size_t>(wanted.to)].at;
        least += std::abs(from.x - to.x) + std::abs(from.y - to.y);
        length += lengthOf(static_cast<int>(i));
    }
    return least > 0 ? length / least : 1;
}

void Router::routeAll()
{
    layGrid();
    lines_.assign(sheet_.connectors.size(), {});
    changes_.assign(1, {});
    const std::vector<int> order = inOrder();
    for (int connector : order) {
        findEnds(connector);
        reserve(connector);
    }
    for (int connector : order) {
        const Line& line = lines_[static_cast<std::size_t>(connector)];
        if (!line.isDirect && !line.isImpossible)
            waiting_.push_back(connector);
    }
    while (!waiting_.empty()) {
        const int connector = waiting_.front();
        waiting_.pop_front();
        place(connector);
    }
    const auto settleDown = [&] {
        for (int pass = 0; pass < effort_.passes; ++pass) {
            int changed = 0;
            for (int connector : order)
                changed += improve(connector);
            if (changed == 0)
                break;
        }
    };
    settleDown();
    const auto reprice = [&](int price) {
        prices_.crossing = static_cast<Cost>(price);
        grid_.setPrices(prices_);
        search_.setPrices(prices_);
        for (Line& line : lines_)
            line.seen = 0;
        settleDown();
    };
    for (int price : effort_.phases)
        reprice(price);
    const auto ease = [&] {
        double least = 0;
        const double ratio = lengthRatio();
        if (ratio <= effort_.ratio)
            return;
        for (std::size_t i = 0; i < lines_.size(); ++i)
            if (lines_[i].isPlaced) {
                const Connector& wanted = sheet_.connectors[i];
                const Spot from = sheet_.ports[static_cast<std::size_t>(wanted.from)].at, to = sheet_.ports[static_cast<std::size_t>(wanted.to)].at;
                least += std::abs(from.x - to.x) + std::abs(from.y - to.y);
            }
        double over = (ratio - effort_.ratio) * least;
        while (over > 0 && prices_.crossing > 10) {
            prices_.crossing = static_cast<Cost>(prices_.crossing * effort_.easing / 100);
            grid_.setPrices(prices_);
            search_.setPrices(prices_);
            for (Line& line : lines_)
                line.seen = 0;
            for (int connector : order) {
                const double before = lengthOf(connector);
                if (over > 0 && improve(connector))
                    over -= before - lengthOf(connector);
            }
        }
    };
    ease();
    for (int pass = 0; pass < effort_.shakes; ++pass) {
        for (int connector : order)
            shake(connector, pass);
        settleDown();
        ease();
    }
}

std::string Router::stats() const
{
    int crossings = 0, bends = 0, tries = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        if (!lines_[i].isPlaced)
            continue;
        crossings += grid_.crossings(lines_[i].runs, static_cast<int>(i));
        bends += static_cast<int>(lines_[i].runs.size()) - 1;
        tries = std::max(tries, lines_[i].tries);
    }
    return "price " + std::to_string(prices_.crossing) + " crossings " + std::to_string(crossings / 2) + " bends " + std::to_string(bends) + " tries " + std::to_string(tries) +
           " cells " + std::to_string(cells()) + " grid " + std::to_string(grid_.x().count()) + "x" + std::to_string(grid_.y().count());
}

Route Router::pointsOf(int connector) const
{
    const Line& line = lines_[static_cast<std::size_t>(connector)];
    const Connector& wanted = sheet_.connectors[static_cast<std::size_t>(connector)];
    const Spot from = sheet_.ports[static_cast<std::size_t>(wanted.from)].at, to = sheet_.ports[static_cast<std::size_t>(wanted.to)].at;
    if (line.isDirect)
        return {from, to};
    if (!line.isPlaced)
        return {};
    Route route{from};
    for (std::size_t i = 0; i + 1 < line.runs.size(); ++i) {
        const Cell cell = cellOf(line.runs[i], line.runs[i].to);
        route.push_back({grid_.x().at[static_cast<std::size_t>(cell.x)], grid_.y().at[static_cast<std::size_t>(cell.y)]});
    }
    route.push_back(to);
    return route;
}

std::vector<Route> Router::routes() const
{
    std::vector<Route> all;
    for (std::size_t i = 0; i < lines_.size(); ++i)
        all.push_back(pointsOf(static_cast<int>(i)));
    return all;
}

void Router::move(int, Spot) {}

} // namespace doorloom::routing
