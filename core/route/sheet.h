#pragma once

#include <string>
#include <vector>

// Where lines are drawn between the ports of boxes: plain geometry, nothing about doors.
namespace doorloom::routing {

// x grows right, y down.
struct Spot {
    double x = 0;
    double y = 0;

    friend bool operator==(const Spot&, const Spot&) = default;
};

enum class Side { Left, Right, Top, Bottom };

struct Box {
    std::string id;
    Spot corner; // top left
    double width = 0;
    double height = 0;

    friend bool operator==(const Box&, const Box&) = default;
};

// Where a connector leaves a box, square to that side.
struct Port {
    std::string id;
    int box = 0; // its place in Sheet::boxes
    Side side = Side::Left;
    Spot at;

    friend bool operator==(const Port&, const Port&) = default;
};

struct Connector {
    std::string id;
    int from = 0; // places in Sheet::ports
    int to = 0;
    std::vector<Spot> pinned = {}; // bends that somebody placed, in their order: the route passes them
    bool isLaid = false; // it lies from bend to bend of these and nowhere else: others go round it or across

    friend bool operator==(const Connector&, const Connector&) = default;
};

struct Sheet {
    std::vector<Box> boxes;
    std::vector<Port> ports;
    std::vector<Connector> connectors;

    friend bool operator==(const Sheet&, const Sheet&) = default;
};

// From the first port to the second, level and upright pieces in turn; a pinned bend may stand in a straight
// piece. Empty: there is no legal route, or none was found within the bounds of work.
using Route = std::vector<Spot>;

} // namespace doorloom::routing
