#pragma once

#include "route/router.h"
#include "sheet/area.h"
#include "sheet/plainroute.h"

#include <compare>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <vector>

// The ways of a sheet's conductors round its devices: what core/route finds for what stands on the sheet.
namespace doorloom {

// What is drawn of a row: a device, a gland of a cable, a conductor or one stretch of it.
struct DrawnPart {
    std::uint32_t row = 0;
    int number = 0;

    friend auto operator<=>(const DrawnPart&, const DrawnPart&) = default;
};

struct WayEnd {
    Port port;
    DrawnPart box; // on whose edge it is

    friend bool operator==(const WayEnd&, const WayEnd&) = default;
};

struct WayWish {
    WayEnd from, to;
    std::vector<Point> pinned = {}; // points that it passes
    bool isLaid = false;            // it lies from point to point of these and nowhere else

    friend bool operator==(const WayWish&, const WayWish&) = default;
};

struct DrawnWay {
    enum class State { Waiting, Found, Impossible };

    State state = State::Waiting;
    std::vector<Point> line; // Found alone: level and upright pieces in turn

    friend bool operator==(const DrawnWay&, const DrawnWay&) = default;
};

// Boxes, the ways wished between them, and where these run. Ways that hang together, or stand within each
// other's reach, make a group: one group knows nothing of the next, and what changes in one is laid anew there
// alone. Owns: the sheets and routes of all groups, and a grid for each that has been followed since it
// settled.
class Routes {
public:
    // In: pitch: from one way to the next beside it, wherever there is room
    explicit Routes(int pitch = gridStep, const routing::Prices& prices = conductorPrices());
    static routing::Prices conductorPrices();

    void stand(DrawnPart box, const Area& area); // empty: it is gone
    void wish(DrawnPart way, std::optional<WayWish> wish);

    // What has changed since is followed: ways that end elsewhere or are stood upon are laid anew, the others
    // keep their points where they can. Out: rows whose ways are others now
    // Cost: grows with the conductors of what is moved; the first step of each group takes its whole grid
    std::vector<std::uint32_t> follow();
    // As from nothing: what comes out is a function of boxes and wishes alone. Groups are laid one after
    // another until `most` ways are; the others wait for the next call. Out: rows whose ways are others now
    std::vector<std::uint32_t> settle(int most);
    bool isWaiting() const; // for settle

    const DrawnWay* find(DrawnPart way) const;

    // A group with more ways than that is not laid: its ways wait for ever.
    static constexpr int mostWays = 700;

private:
    struct Group {
        std::vector<DrawnPart> boxes, ways; // sorted
        routing::Sheet sheet;
        std::vector<DrawnWay> settled; // of its ways, on this sheet
        std::optional<routing::Router> router;
        bool isSettled = false;

        bool isTooLarge() const { return static_cast<int>(ways.size()) > mostWays; }
    };
    struct Entry {
        WayWish wish;
        DrawnWay way;
    };
    using Rows = std::set<std::uint32_t>;

    std::vector<Group> grouped() const;
    void keepGroups(std::vector<Group> groups);
    std::optional<routing::Sheet> sheetOf(const Group& group) const;
    void followGroup(Group& group, Rows& changed);
    void settleGroup(Group& group, Rows& changed);
    void show(DrawnPart way, DrawnWay shown, Rows& changed);
    DrawnWay wayOf(DrawnPart way, const routing::Route& route) const;
    std::set<std::size_t> groupsOf(const std::set<DrawnPart>& parts) const;

    routing::Spot spotOf(Point point) const;
    Point pointOf(routing::Spot spot) const;

    double unit_; // of the router, in tenths of a millimetre
    routing::Prices prices_;
    std::map<DrawnPart, Area> boxes_;
    std::map<DrawnPart, Entry> ways_;
    std::vector<Group> groups_;
    std::map<DrawnPart, std::size_t> groupOfBox_;
    std::set<DrawnPart> moved_, changed_; // since the last follow, and the last settle
};

} // namespace doorloom
