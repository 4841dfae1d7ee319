#pragma once

#include "route/search.h"
#include "route/sheet.h"

#include <atomic>
#include <deque>
#include <limits>

namespace doorloom::routing {

// Routes of a sheet, and of the same sheet while one box after another is moved.
// Owns: a grid of the lines on which conductors may lie, some twenty bytes a cell, and who lies where.
class Router {
public:
    // In: isGivenUp: when it becomes true, whatever is being done ends soon, and ways that are missing stay so
    explicit Router(Sheet sheet, const Prices& prices = {}, const std::atomic<bool>* isGivenUp = nullptr);

    // Routes everything from nothing: what comes out is a function of the sheet alone, in whatever order its
    // rows come and whatever was moved before.
    // Cost: a bounded number of cells looked at, counted and not timed; what is beyond has no route
    void routeAll();

    // Moves a box with its ports. Conductors that neither end there nor lie in its way keep their points,
    // except where there is no other room.
    // Cost: grows with the conductors of the box; a box that leaves the grid makes it anew
    void moveBox(int box, Spot corner);

    // Takes routes as they are, instead of looking for them; those that don't fit the sheet are not placed.
    void layAs(const std::vector<Route>& routes);
    // The same boxes, ports and connectors in other places. What is elsewhere or in the way gets a route anew;
    // the others keep their points as after moveBox.
    // Cost: a bounded number of cells looked at: ways that are hard to find have none for the time being, and all
    // together may be longer than after moveBox
    void update(Sheet sheet);

    std::uint64_t cells() const { return search_.cells(); } // looked at so far
    const Sheet& sheet() const { return sheet_; }
    Route route(int connector) const; // empty: none
    std::vector<Route> routes() const;

private:
    // Of all lengths to what they would be with nothing in the way; while boxes are moved.
    static constexpr double longestRatio = 1.1495, longestWhileMoving = 1.2;

    // How a connector is drawn on the grid.
    struct Track {
        End from, to;
        std::vector<Cell> pinned;
        bool isDirect = false;     // from port to port with no line of the grid between
        bool isImpossible = false; // an end opens into a box
        bool isPlaced = false;
        int tries = 0;
        double least = 0;    // length, if nothing were in the way
        int settledCost = 0; // when it was last found to be as cheap as can be
        Runs runs;
        Runs reserved; // cells in front of the ports, until it is placed
    };

    // The grid and what stands on it (router.cpp)
    void layGrid(const std::vector<Spot>& kept);
    Cell cellAt(Spot spot) const;
    Spot spotAt(Cell cell) const;
    End endOf(const Port& port) const;
    void findEnds(int connector);
    Window windowOf(const Track& track, int slack) const;
    int leastCost(const Track& track) const;
    int endCost(const Track& track) const { return track.from.first + track.to.first; }
    std::vector<int> inOrder() const;

    // Placing (placing.cpp)
    void reserve(int connector);
    void unreserve(int connector);
    void put(int connector, Runs runs);
    void lift(int connector);
    void openPorts(int connector);
    void closePorts(int connector);
    std::optional<Found> find(int connector, const Window& window, int limit);
    std::optional<Found> findByPins(int connector, Window window);
    std::optional<Found> legTo(const Track& track, std::size_t leg, const End& from, const Window& window);
    std::optional<Found> findSomehow(int connector);
    void place(int connector);
    bool meetsLaid(int connector, const Runs& runs) const;
    std::vector<int> makeRoom(int connector, const Runs& runs);
    void placeWaiting();
    void placeAll(const std::vector<int>& connectors);

    // Improving (improving.cpp)
    bool improve(int connector, double room = std::numeric_limits<double>::infinity());
    void settle(const std::vector<int>& connectors);
    struct Offer {
        int connector;
        double saved; // length
        double loss;  // in prices
    };
    std::optional<Offer> offerOf(int connector, Cost truePrice);
    void ease(const std::vector<int>& connectors, double ratio);
    void setCrossingPrice(Cost price);
    double lengthOf(int connector) const;
    double excess(double ratio) const;

    // Moving (moving.cpp)
    std::vector<int> looseAfter(const std::vector<Box>& places, std::vector<int> changed) const;
    std::vector<int> inTheWay(const Box& box) const;
    std::vector<int> follow(const std::vector<Box>& places, const std::vector<int>& changed);
    bool hasLinesOf(const std::vector<Box>& places, const std::vector<int>& changed) const;
    bool isLaid(int connector) const { return nth(sheet_.connectors, connector).isLaid; }
    Route laidPoints(int connector) const;
    std::vector<int> layDown(int connector);
    void forgetTracks();
    void layAnew(const std::vector<Route>& kept);
    Runs runsAlong(int connector, const Route& points) const;
    std::vector<int> clearShared(std::vector<int> loose);
    std::vector<int> relay(const std::vector<int>& loose);

    Sheet sheet_;
    const std::atomic<bool>* isGivenUp_;
    Prices usual_, prices_; // prices_: while something is tried
    Grid grid_;
    Search search_;
    bool isFollowing_ = false; // a sheet that changes step by step: bounded work for each
    std::uint64_t workBefore_ = 0; // cells that were looked at for something else
    std::vector<Track> tracks_;
    std::vector<int> order_;   // in which they are placed
    std::vector<int> sharers_; // [port]: how many connectors end there
    std::deque<int> waiting_;
};

} // namespace doorloom::routing
