#pragma once

#include "route/search.h"
#include "route/sheet.h"

#include <deque>

namespace doorloom::routing {

struct Effort {
    int passes = 8;
    int margin = 80;
    int order = 0;
    int stub = 8;
    int shakes = 0;
    int group = 6;
    int slack = 200;
    int reach = 2;
    int wide = 0;
    std::vector<int> phases;
    double ratio = 1.14;
    int easing = 85;
};

class Router {
public:
    explicit Router(Sheet sheet, Prices prices = {}, Effort effort = {});

    void routeAll();
    void move(int box, Spot corner);
    std::vector<Route> routes() const;
    const Sheet& sheet() const { return sheet_; }
    std::uint64_t cells() const { return search_.cells(); }
    std::string stats() const;

private:
    struct Line { // a conductor on the grid
        End from, to;
        bool isDirect = false;   // nothing between the ports: no cell of the grid is needed
        bool isImpossible = false;
        bool isPlaced = false;
        int tries = 0;
        std::size_t seen = 0; // changes that were made when it could not be improved
        Runs runs;
        Runs reserved;
    };

    void layGrid();
    void findEnds(int connector);
    End endOf(const Port& port) const;
    void reserve(int connector);
    void unreserve(int connector);
    Window windowOf(const Line& line, int margin) const;
    Window windowWithin(const Line& line, int slack, int margin) const;
    int leastCost(const Line& line) const;
    bool place(int connector);
    void placeAll(std::deque<int> waiting);
    void lift(int connector);
    void put(int connector, Runs runs);
    void note(const Runs& before, const Runs& after);
    Window around(const Line& line, int reach) const;
    bool hasChanged(const Line& line, const Window& window) const;
    bool improve(int connector);
    bool shake(int connector, int how);
    std::vector<int> inOrder() const;
    double lengthRatio() const;
    double lengthOf(int connector) const;
    Route pointsOf(int connector) const;

    Sheet sheet_;
    Prices prices_;
    Effort effort_;
    Grid grid_;
    Search search_;
    std::vector<Line> lines_;
    std::deque<int> waiting_;
    std::vector<Window> changes_;
};

} // namespace doorloom::routing
