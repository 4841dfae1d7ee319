#pragma once

#include "route/lines.h"
#include "route/sheet.h"

#include <vector>

namespace doorloom::routing {

enum class Way : unsigned char { Level, Upright };

inline Way across(Way way)
{
    return way == Way::Level ? Way::Upright : Way::Level;
}

struct Cell {
    int x = 0;
    int y = 0;

    friend bool operator==(const Cell&, const Cell&) = default;
};

// A straight piece on a line of the grid, from one cell to another (both belong to it; they may be the same).
struct Run {
    Way way = Way::Level;
    int line = 0;
    int from = 0;
    int to = 0;

    friend bool operator==(const Run&, const Run&) = default;
};
using Runs = std::vector<Run>; // each begins in the cell where the one before ends

// What it costs to pass the cells of one way, in rows that follow one another in that way: the next cell
// straight ahead is one row further, so that a row is worked on at once.
struct Layer {
    std::vector<Cost> pass; // on through the cell
    std::vector<Cost> turn; // turning in it, from or to the other way
    std::vector<int> owner; // 0 nobody, else the connector's place and 1
};

// Which conductor lies in which cell, and what that makes of the cell for the others.
class Grid {
public:
    Grid() = default;
    Grid(Lines x, Lines y, const Prices& prices);

    const Lines& x() const { return x_; }
    const Lines& y() const { return y_; }
    const Lines& along(Way way) const { return way == Way::Level ? x_ : y_; }
    const Layer& layer(Way way) const { return way == Way::Level ? level_ : upright_; }
    // From one row to the next; rows have eight cells more than there are lines, at least.
    int stride(Way way) const { return way == Way::Level ? rows_ : columns_; }
    std::size_t index(Way way, Cell cell) const
    {
        const int place = way == Way::Level ? cell.x * rows_ + cell.y : cell.y * columns_ + cell.x;
        return static_cast<std::size_t>(place);
    }
    int owner(Way way, Cell cell) const { return layer(way).owner[index(way, cell)]; }
    bool has(Cell cell) const
    {
        return cell.x >= 0 && cell.y >= 0 && cell.x < x_.count() && cell.y < y_.count();
    }
    bool hasLines(Spot spot) const { return x_.has(spot.x) && y_.has(spot.y); }
    bool isBlocked(Cell cell) const { return still_[index(Way::Upright, cell)] == blocked; }

    void standBoxes(const std::vector<Box>& boxes); // on a grid without any
    // Works out again which cells in this place are inside a box or beside one.
    void standAnew(const std::vector<Box>& boxes, const Box& where);

    void setPrices(const Prices& prices) { prices_ = prices; } // of what is put or refreshed from now on
    void refresh(const Runs& runs);
    void occupy(const Runs& runs, int connector);
    Runs occupyFree(const Runs& runs, int connector); // only cells where nobody lies; these
    void release(const Runs& runs);

    // Closes a cell to all; opens it, empty. Not where a box is.
    void close(Cell cell);
    void open(Cell cell);

    // Calls visit(connector) for each other conductor on whose line or bend the runs lie.
    template <class Visit> void forEachConflict(const Runs& runs, int connector, Visit visit) const;
    int crossings(const Runs& runs, int connector) const;             // of other conductors
    std::vector<int> partners(const Runs& runs, int connector) const; // whom they cross, as often as they do
    // Length, bends, crossings and what lies beside, in prices.
    int costOf(const Runs& runs, int connector) const;

private:
    static constexpr unsigned char blocked = 255, closed = 254;

    void mark(const Box& box);
    template <class Visit> void forEachCellIn(const Box& box, double margin, Visit visit) const;
    void put(const Runs& runs, int owner);
    void refreshRound(Cell cell);
    void refresh(Cell cell);
    void nearby(Way way, Cell cell, int& passCost) const;

    Lines x_, y_;
    Prices prices_;
    int columns_ = 0;
    int rows_ = 0;
    bool hasNear_ = false;
    Layer level_, upright_;
    std::vector<unsigned char> still_; // cost of the cell without conductors, or blocked by a box, or closed
};

inline Cell cellOf(const Run& run, int place)
{
    return run.way == Way::Level ? Cell{place, run.line} : Cell{run.line, place};
}

template <class Visit> void forEachCell(const Run& run, Visit visit)
{
    const int first = std::min(run.from, run.to), last = std::max(run.from, run.to);
    for (int place = first; place <= last; ++place)
        visit(cellOf(run, place));
}

template <class Visit> void Grid::forEachConflict(const Runs& runs, int connector, Visit visit) const
{
    const auto meet = [&](Way way, Cell cell) {
        const int other = owner(way, cell);
        if (other != 0 && other != connector + 1)
            visit(other - 1);
    };
    for (const Run& run : runs) {
        const Lines& lines = run.way == Way::Level ? y_ : x_;
        forEachCell(run, [&](Cell cell) {
            const auto line = static_cast<std::size_t>(run.line);
            for (int k = lines.nearFirst[line]; k <= lines.nearLast[line]; ++k)
                if (std::abs(lines.at[static_cast<std::size_t>(k)] - lines.at[line]) < leastGap)
                    meet(run.way, run.way == Way::Level ? Cell{cell.x, k} : Cell{k, cell.y});
        });
        // a bend lies on the other conductor whichever way that one goes
        if (&run != &runs.front())
            meet(across(run.way), cellOf(run, run.from));
        if (&run != &runs.back())
            meet(across(run.way), cellOf(run, run.to));
    }
}

} // namespace doorloom::routing
