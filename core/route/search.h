#pragma once

#include "route/grid.h"

#include <optional>

namespace doorloom::routing {

// Where a way begins or ends: the first cell outside the box, and how it is passed there.
struct End {
    Cell cell;
    Way way = Way::Level;
    int out = 1;   // of the box: towards higher or lower places
    int first = 0; // cost of the piece between the port and the cell
};

// The fewest bends that a way between these ends can have with nothing else on the sheet.
int fewestBends(const End& from, const End& to);

// A part of the grid, both ends included.
struct Window {
    int x0 = 0, y0 = 0, x1 = 0, y1 = 0;
};

struct Found {
    Runs runs; // from the first end to the second
    int cost = 0;
    bool hasConflicts = false;
};

// The cheapest way between two cells: length, bends and crossings weighed exactly, for one conductor beside
// others that lie where they lie. Cost: three or four passes over the window, eight cells at a time.
class Search {
public:
    static constexpr int usualBends = 7, manyBends = 25; // at most, of a way

    explicit Search(const Prices& prices) : prices_(prices) {}

    // Out: nothing where boxes leave no way inside the window
    //      or nothing costs less than the limit
    std::optional<Found> between(const Grid& grid, const End& from, const End& to, Window window,
                                 int limit = never);

    void setPrices(const Prices& prices) { prices_ = prices; }
    void allowBends(int most) { mostBends_ = most; }
    std::uint64_t cells() const { return cells_; } // passed over so far: the work done, counted

private:
    // The rows of a column of eight cells that are lower than before.
    struct Touched {
        int first = 1;
        int last = 0;

        bool any() const { return first <= last; }
        void add(int from, int to)
        {
            first = any() ? std::min(first, from) : from;
            last = std::max(last, to);
        }
    };
    // Costs of one way of the window, its rows one after another in that way.
    struct Plane {
        Cost* cost = nullptr;
        const Cost* pass = nullptr;
        const Cost* turn = nullptr;
        const Cost* step = nullptr;
        int rows = 0, columns = 0, stride = 0;
        std::vector<Cost> steps;      // each eight times
        std::vector<Touched> touched; // [column / 8]
        std::vector<Cost> rest;       // [row / 8]: the least that is left from there to the goal's row
        std::vector<Cost> bends;      // [column / 8]: the least price of bends from there to the goal
    };
    struct Place {
        int row, column;

        friend bool operator==(const Place&, const Place&) = default;
    };
    static Cost& costAt(const Plane& on, Place place)
    {
        return on.cost[static_cast<std::ptrdiff_t>(place.row) * on.columns + place.column];
    }

    Plane& plane(Way way) { return way == Way::Level ? level_ : upright_; }
    Place placeOf(Way way, Cell cell) const;
    void lay(const Grid& grid, Window window);
    void spread(Plane& plane, int limit);
    template <std::size_t count> std::size_t spreadColumns(Plane& plane, std::size_t first, int limit);
    void spreadAlong(Plane& plane, Place start);
    void reach(const Plane& from, Plane& to, Place goal);
    bool turnAll(Plane& from, Plane& to, int limit);
    bool turnBlock(const Plane& from, Plane& to, Place place, int bound) const;
    void turnFrom(const Plane& from, Plane& to, int column);
    void measureRest(const Grid& grid, const End& to);
    void turnUntilBest(const End& from, const End& to, int least, int limit);
    int rowsBack(const Plane& here, Place place) const;
    Found traced(const End& from, const End& to, int startCost);

    Prices prices_;
    int mostBends_ = usualBends;
    Window window_;
    Plane level_, upright_;
    std::vector<Cost> levelCost_, uprightCost_;
    std::uint64_t cells_ = 0;
};

} // namespace doorloom::routing
