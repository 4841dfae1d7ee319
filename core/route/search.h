#pragma once

#include "route/grid.h"

#include <optional>

namespace doorloom::routing {

// Where a way begins or ends: the first cell outside the box, and how it is passed there.
struct End {
    Cell cell;
    Way way = Way::Level;
    int first = 0; // cost of the piece between the port and the cell
};

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
    explicit Search(const Prices& prices) : prices_(prices) {}

    // Out: nothing where boxes leave no way inside the window
    std::optional<Found> between(const Grid& grid, const End& from, const End& to, Window window);

    std::uint64_t cells() const { return cells_; } // passed over so far: the work done, counted

private:
    // Costs of one way of the window, its rows one after another in that way.
    struct Plane {
        Cost* cost;
        const Cost* pass;
        const Cost* turn;
        const Cost* step;
        int rows, columns, stride;
    };
    struct Place {
        int row, column;
    };

    Plane& plane(Way way) { return way == Way::Level ? level_ : upright_; }
    Place placeOf(Way way, Cell cell) const;
    Cell cellAt(Way way, Place place) const;
    void lay(const Grid& grid, Window window);
    void spread(Plane& plane);
    void spreadAlong(Plane& plane, int column);
    void turnAll(const Plane& from, Plane& to);
    void turnFrom(const Plane& from, Plane& to, int column);
    void turnOnto(const Plane& from, Plane& to, int column);
    Found traced(const End& from, const End& to, int startCost);

    Prices prices_;
    Window window_;
    Plane level_{}, upright_{};
    std::vector<Cost> levelCost_, uprightCost_;
    std::uint64_t cells_ = 0;
};

} // namespace doorloom::routing
