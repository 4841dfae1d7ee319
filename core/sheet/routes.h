#pragma once

#include "route/router.h"
#include "sheet/area.h"
#include "sheet/plainroute.h"

#include <atomic>
#include <chrono>
#include <compare>
#include <cstdint>
#include <future>
#include <map>
#include <memory>
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
// settled; at most one thread.
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
    // another until `most` ways are; the others wait for the next call. A group of more than `mostAtOnce` ways is laid
    // on a thread of its own, and its ways are as they were meanwhile, where they still fit their ends.
    // Out: rows whose ways are others now
    std::vector<std::uint32_t> settle(int most);
    bool isWaiting() const;           // for settle
    bool isWaitingForThread() const;  // and for nothing else: call settle again after a while

    const DrawnWay* find(DrawnPart way) const;

    static constexpr int mostAtOnce = 150;
    // While a group with more ways than that is changed, its ways that end elsewhere wait.
    static constexpr int mostFollowed = 700;

private:
    // Ways of a sheet looked for on a thread of its own. Going away gives that up.
    class Errand {
    public:
        Errand(const routing::Sheet& sheet, const routing::Prices& prices);
        ~Errand() { isGivenUp_ = true; }
        bool isDone() const { return routes_.wait_for(std::chrono::seconds(0)) == std::future_status::ready; }
        std::vector<routing::Route> routes() { return routes_.get(); }

    private:
        std::atomic<bool> isGivenUp_ = false;
        std::future<std::vector<routing::Route>> routes_; // last: its thread uses the rest, and it waits for that
    };
    struct Group {
        std::vector<DrawnPart> boxes, ways; // sorted
        routing::Sheet sheet;
        std::vector<DrawnWay> settled; // of its ways, on this sheet
        std::optional<routing::Router> router;
        bool isSettled = false;
        std::unique_ptr<Errand> away;

        bool isLarge() const { return static_cast<int>(ways.size()) > mostAtOnce; }
        bool isFollowed() const { return isSettled && static_cast<int>(ways.size()) <= mostFollowed; }
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
    void unsettle(Group& group, Rows& changed);
    void settleGroup(Group& group, const std::vector<routing::Route>& routes, Rows& changed);
    void settleLarge(Rows& changed);
    bool isFitting(DrawnPart way) const;
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
