#include "bench/measure.h"
#include "bench/row.h"
#include "route/router.h"

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <string>

namespace doorloom::bench {
namespace {

using namespace routing;

// Numbers that are the same in every run.
class Draw {
public:
    int below(int count)
    {
        state_ = state_ * 6364136223846793005u + 1442695040888963407u;
        return static_cast<int>((state_ >> 33) % static_cast<std::uint64_t>(count));
    }

private:
    std::uint64_t state_ = 300;
};

// Boxes on a jittered grid, joined mostly to their neighbours: as large as a sheet of tests/tools/routing.
class WiredSheet {
public:
    WiredSheet(int boxes, int connectors) : columns_(static_cast<int>(std::ceil(std::sqrt(1.5 * boxes))))
    {
        for (int i = 0; i < boxes; ++i)
            addBox(i);
        for (int tries = 0;
             static_cast<int>(sheet_.connectors.size()) < connectors && tries < 50 * connectors; ++tries)
            addConnector();
    }

    const Sheet& sheet() const { return sheet_; }

private:
    void addBox(int i)
    {
        const Spot corner{260.0 * (i % columns_) + 35 + 5 * draw_.below(14),
                          240.0 * (i / columns_) + 35 + 5 * draw_.below(10)};
        sheet_.boxes.push_back({"b" + std::to_string(i), corner, 120, 120});
        for (int side = 0; side < 4; ++side)
            free_.push_back(11);
    }
    // The next port of a side, or −1.
    int addPort(int box, int side)
    {
        int& left = free_[static_cast<std::size_t>(4 * box + side)];
        if (left == 0)
            return -1;
        const Spot corner = sheet_.boxes[static_cast<std::size_t>(box)].corner;
        const double at = 10 * left--;
        const Spot spots[] = {{corner.x, corner.y + at},
                              {corner.x + 120, corner.y + at},
                              {corner.x + at, corner.y},
                              {corner.x + at, corner.y + 120}};
        sheet_.ports.push_back({std::to_string(at), box, static_cast<Side>(side), spots[side]});
        return static_cast<int>(sheet_.ports.size()) - 1;
    }
    void addConnector()
    {
        const int boxes = static_cast<int>(sheet_.boxes.size());
        const int from = draw_.below(boxes);
        const int column = from % columns_ + draw_.below(3) - 1, row = from / columns_ + draw_.below(3) - 1;
        const bool isFar = draw_.below(25) == 0 || column < 0 || column >= columns_;
        const int to = isFar ? draw_.below(boxes) : row * columns_ + column;
        if (to < 0 || to >= boxes || to == from)
            return;
        const int start = addPort(from, draw_.below(4)), end = addPort(to, draw_.below(4));
        if (start >= 0 && end >= 0)
            sheet_.connectors.push_back({"c" + std::to_string(sheet_.connectors.size()), start, end});
    }

    int columns_;
    Draw draw_;
    Sheet sheet_;
    std::vector<int> free_; // [4 box + side]
};

bool routes(Gate gate)
{
    struct Size {
        const char* name;
        int boxes, connectors;
        double mostMilliseconds;
    };
    bool within = true;
    for (const Size& size : {Size{"route 60", 20, 60, 10}, Size{"route 200", 50, 200, 50},
                             Size{"route 500", 120, 500, 200}, Size{"route 1500", 300, 1500, 1000}}) {
        Router router(WiredSheet(size.boxes, size.connectors).sheet());
        within = isWithin(size.name, size.mostMilliseconds, gate, [&] { router.routeAll(); }) && within;
        if (size.boxes < 300)
            continue;
        const Spot corner = router.sheet().boxes[150].corner;
        double by = 20;
        within = isWithin("route move", 8, gate,
                          [&] {
                              router.moveBox(150, {corner.x + (by = -by), corner.y});
                          }) &&
                 within;
    }
    return within;
}

} // namespace

extern const Row routeSheets;
const Row routeSheets = {"route", routes};

} // namespace doorloom::bench
