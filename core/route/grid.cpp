#include "route/grid.h"

#include <cmath>

namespace doorloom::routing {
namespace {

constexpr int lanes = 8;
constexpr double besideBox = 2 * wantedGap + 0.05;
constexpr double onBox = 0.06; // nearer counts as on its edge

int padded(int count)
{
    return (count + lanes - 1) / lanes * lanes + lanes;
}

} // namespace

Grid::Grid(Lines x, Lines y, const Prices& prices) : x_(std::move(x)), y_(std::move(y)), prices_(prices)
{
    columns_ = padded(x_.count());
    rows_ = padded(y_.count());
    x_.step.resize(static_cast<std::size_t>(columns_) + 1, 1);
    y_.step.resize(static_cast<std::size_t>(rows_) + 1, 1);
    const std::size_t cells = static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_);
    still_.assign(cells, 0);
    for (Way way : {Way::Level, Way::Upright}) {
        Layer& layer = way == Way::Level ? level_ : upright_;
        layer.pass.assign(cells, 0);
        layer.turn.assign(cells, 0);
        layer.owner.assign(cells, 0);
        const int ahead = way == Way::Level ? x_.count() : y_.count();
        const int aside = way == Way::Level ? y_.count() : x_.count();
        for (std::vector<Cost>* costs : {&layer.pass, &layer.turn}) { // what is beyond the last lines
            for (int row = 0; row < ahead; ++row)
                std::fill_n(costs->begin() + row * stride(way) + aside, stride(way) - aside, never);
            std::fill(costs->begin() + ahead * stride(way), costs->end(), never);
        }
    }
    for (const Lines* lines : {&x_, &y_})
        for (std::size_t i = 0; i < lines->at.size(); ++i)
            hasNear_ = hasNear_ || lines->nearFirst[i] != lines->nearLast[i];
}

template <class Visit> void Grid::forEachCellIn(const Box& box, double margin, Visit visit) const
{
    const int x0 = x_.firstFrom(box.corner.x - margin), x1 = x_.firstFrom(box.corner.x + box.width + margin);
    const int y0 = y_.firstFrom(box.corner.y - margin), y1 = y_.firstFrom(box.corner.y + box.height + margin);
    for (int y = y0; y < y1; ++y)
        for (int x = x0; x < x1; ++x)
            visit(Cell{x, y});
}

void Grid::standBoxes(const std::vector<Box>& boxes)
{
    for (const Box& box : boxes)
        mark(box);
    for (const Box& box : boxes)
        forEachCellIn(box, besideBox, [&](Cell cell) { refresh(cell); });
}

void Grid::standAnew(const std::vector<Box>& boxes, const Box& where)
{
    forEachCellIn(where, besideBox, [&](Cell cell) { still_[index(Way::Upright, cell)] = 0; });
    const double reach = 2 * besideBox;
    for (const Box& box : boxes)
        if (box.corner.x - reach <= where.corner.x + where.width &&
            where.corner.x - reach <= box.corner.x + box.width &&
            box.corner.y - reach <= where.corner.y + where.height &&
            where.corner.y - reach <= box.corner.y + box.height)
            mark(box);
    forEachCellIn(where, besideBox, [&](Cell cell) { refresh(cell); });
}

void Grid::mark(const Box& box)
{
    const auto raise = [&](double margin, unsigned char value) {
        forEachCellIn(box, margin, [&](Cell cell) {
            unsigned char& still = still_[index(Way::Upright, cell)];
            still = std::max(still, value);
        });
    };
    raise(besideBox, static_cast<unsigned char>(prices_.beside));
    raise(wantedGap - 0.05, static_cast<unsigned char>(4 * prices_.beside));
    raise(onBox, blocked);
}

void Grid::close(Cell cell)
{
    unsigned char& still = still_[index(Way::Upright, cell)];
    if (still != blocked)
        still = closed;
    refresh(cell);
}

void Grid::open(Cell cell)
{
    unsigned char& still = still_[index(Way::Upright, cell)];
    if (still != closed)
        return;
    still = static_cast<unsigned char>(prices_.beside);
    level_.owner[index(Way::Level, cell)] = upright_.owner[index(Way::Upright, cell)] = 0;
    refresh(cell);
}

void Grid::refresh(const Runs& runs)
{
    for (const Run& run : runs)
        forEachCell(run, [&](Cell cell) { refresh(cell); });
}

void Grid::occupy(const Runs& runs, int connector)
{
    put(runs, connector + 1);
}

Runs Grid::occupyFree(const Runs& runs, int connector)
{
    Runs taken;
    for (const Run& run : runs)
        forEachCell(run, [&](Cell cell) {
            const int place = run.way == Way::Level ? cell.x : cell.y;
            if (owner(run.way, cell) == 0)
                taken.push_back({run.way, run.line, place, place});
        });
    occupy(taken, connector);
    return taken;
}

void Grid::release(const Runs& runs)
{
    put(runs, 0);
}

void Grid::put(const Runs& runs, int owner)
{
    for (const Run& run : runs) {
        Layer& layer = run.way == Way::Level ? level_ : upright_;
        forEachCell(run, [&](Cell cell) {
            layer.owner[index(run.way, cell)] = owner;
            if (hasNear_)
                refreshRound(cell);
            else
                refresh(cell);
        });
    }
}

void Grid::refreshRound(Cell cell)
{
    const auto ix = static_cast<std::size_t>(cell.x), iy = static_cast<std::size_t>(cell.y);
    for (int k = x_.nearFirst[ix]; k <= x_.nearLast[ix]; ++k)
        if (k != cell.x)
            refresh({k, cell.y});
    for (int k = y_.nearFirst[iy]; k <= y_.nearLast[iy]; ++k)
        refresh({cell.x, k});
}

// Adds what parallels on lines beside this one cost.
void Grid::nearby(Way way, Cell cell, int& passCost) const
{
    const Lines& lines = way == Way::Level ? y_ : x_;
    const int line = way == Way::Level ? cell.y : cell.x;
    const auto i = static_cast<std::size_t>(line);
    for (int k = lines.nearFirst[i]; k <= lines.nearLast[i]; ++k) {
        const Cell other = way == Way::Level ? Cell{cell.x, k} : Cell{k, cell.y};
        if (k == line || owner(way, other) == 0)
            continue;
        const double gap = std::abs(lines.at[static_cast<std::size_t>(k)] - lines.at[i]);
        passCost += gap < leastGap ? conflict : prices_.near;
    }
}

void Grid::refresh(Cell cell)
{
    const std::size_t l = index(Way::Level, cell), u = index(Way::Upright, cell);
    const unsigned char still = still_[u];
    if (still >= closed) {
        level_.pass[l] = upright_.pass[u] = level_.turn[l] = upright_.turn[u] = never;
        return;
    }
    const int levelOwner = level_.owner[l], uprightOwner = upright_.owner[u];
    int level = still, upright = still, turn = 0;
    if (levelOwner != 0 && levelOwner == uprightOwner) {
        level += conflict;
        upright += conflict;
        turn += conflict;
    } else {
        if (levelOwner != 0) {
            level += conflict;
            upright += prices_.crossing;
            turn += conflict;
        }
        if (uprightOwner != 0) {
            upright += conflict;
            level += prices_.crossing;
            turn += conflict;
        }
    }
    if (hasNear_) {
        nearby(Way::Level, cell, level);
        nearby(Way::Upright, cell, upright);
        if (level >= conflict || upright >= conflict)
            turn = std::max<int>(turn, conflict);
    }
    level_.pass[l] = capped(level);
    upright_.pass[u] = capped(upright);
    level_.turn[l] = upright_.turn[u] = capped(turn);
}

int Grid::crossings(const Runs& runs, int connector) const
{
    int count = 0;
    for (const Run& run : runs)
        forEachCell(run, [&](Cell cell) {
            const int other = owner(across(run.way), cell);
            count += other != 0 && other != connector + 1;
        });
    return count;
}

std::vector<int> Grid::partners(const Runs& runs, int connector) const
{
    std::vector<int> crossed;
    for (const Run& run : runs)
        forEachCell(run, [&](Cell cell) {
            const int other = owner(across(run.way), cell);
            if (other != 0 && other != connector + 1)
                crossed.push_back(other - 1);
        });
    return crossed;
}

int Grid::costOf(const Runs& runs, int connector) const
{
    int cost =
        crossings(runs, connector) * prices_.crossing + (static_cast<int>(runs.size()) - 1) * prices_.bend;
    for (const Run& run : runs) {
        const Lines& lines = along(run.way);
        cost += std::abs(lines.distance[static_cast<std::size_t>(run.to)] -
                         lines.distance[static_cast<std::size_t>(run.from)]);
        const Cell corner = cellOf(run, run.from); // counted with the run before
        forEachCell(run, [&](Cell cell) {
            if (&run != &runs.front() && cell.x == corner.x && cell.y == corner.y)
                return;
            cost += still_[index(Way::Upright, cell)];
            if (hasNear_)
                nearby(run.way, cell, cost);
        });
    }
    return cost;
}

} // namespace doorloom::routing
