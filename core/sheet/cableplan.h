#pragma once

#include "sheet/area.h"
#include "sheet/plainroute.h"

#include <array>
#include <optional>
#include <vector>

namespace doorloom {

// Where one end of a cable's jacket may be: beside the box that it enters, or beside what its cores land on.
struct CableSide {
    Area area; // empty: nothing of that place is on the sheet
    bool isBox = false;
    std::vector<Port> landings; // of the cores landed at this side
    std::optional<int> along;   // where it goes through the wall of the box, as its neighbours leave room
};

// A cable on the sheet: its cores run side by side between two glands, and fan out from there.
struct CablePlan {
    std::array<Port, 2> glands; // the middle core's; their facing is where the jacket leaves to
    int cores = 0;
    std::vector<Point> trunk; // of the middle
};

constexpr int corePitch = gridStep;
constexpr int wallGap = 2 * gridStep;  // between jackets: room for a tag
constexpr int glandDepth = gridStep; // of the tick where a jacket ends
int halfWidthOf(int cores); // of a jacket with some room

// In:  bend: how far the jacket goes straight out first; cables side by side take different ones
// Out: nothing when the two sides lie over each other: then there is no room for a jacket
std::optional<CablePlan> planCable(const CableSide& from, const CableSide& to, int cores, int bend);

// Where cables go through one wall of a box: in the order in which they would like to, with room between.
struct ThroughWall {
    int along = 0, halfWidth = 0;
};
std::vector<int> spreadAlong(const std::vector<ThroughWall>& wishes, int low, int high);

// The way of the n-th core (from 0) between the glands, first gland first.
std::vector<Point> coreInTrunk(const CablePlan& plan, int core);

// From the first core to the last where the jacket ends, and so deep into the jacket.
Area glandOf(const CablePlan& plan, std::size_t side, int depth = glandDepth);

} // namespace doorloom
