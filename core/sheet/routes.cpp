#include "sheet/routes.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

namespace doorloom {
namespace {

constexpr int reach = 200; // how far ways of one group go round its boxes, and more

routing::Side sideOf(Facing facing)
{
    constexpr routing::Side sides[] = {routing::Side::Right, routing::Side::Bottom, routing::Side::Left,
                                       routing::Side::Top};
    return sides[static_cast<std::size_t>(facing)];
}

std::string nameOf(DrawnPart part)
{
    return std::to_string(part.row) + "." + std::to_string(part.number);
}

Area areaOf(const WayWish& wish)
{
    Area area = areaOf(wish.from.port.at, wish.to.port.at);
    for (const Point point : wish.pinned)
        area = together(area, areaOf(point, point));
    return area;
}

// Sets that are joined one after another.
class Sets {
public:
    explicit Sets(std::size_t count) : parents_(count) { std::iota(parents_.begin(), parents_.end(), 0u); }

    std::size_t find(std::size_t i)
    {
        while (parents_[i] != i)
            i = parents_[i] = parents_[parents_[i]];
        return i;
    }
    // Out: whether they were apart
    bool join(std::size_t a, std::size_t b)
    {
        a = find(a);
        b = find(b);
        parents_[std::max(a, b)] = std::min(a, b);
        return a != b;
    }

private:
    std::vector<std::size_t> parents_;
};

// Joins sets whose areas meet, until none do.
void joinMeeting(Sets& sets, std::vector<Area> areas)
{
    for (bool isJoined = true; isJoined;) {
        isJoined = false;
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < areas.size(); ++i) {
            const std::size_t set = sets.find(i);
            if (set != i)
                areas[set] = together(areas[set], std::exchange(areas[i], Area{}));
        }
        for (std::size_t i = 0; i < areas.size(); ++i)
            if (!areas[i].isEmpty())
                order.push_back(i);
        std::sort(order.begin(), order.end(),
                  [&](std::size_t a, std::size_t b) { return areas[a].left < areas[b].left; });
        for (auto i = order.begin(); i != order.end(); ++i)
            for (auto k = i + 1; k != order.end() && areas[*k].left <= areas[*i].right; ++k)
                if (areas[*i].meets(areas[*k]))
                    isJoined = sets.join(*i, *k) || isJoined;
    }
}

// The ports of a sheet, each once: ways that leave one box at one point share it.
class Ports {
public:
    explicit Ports(routing::Sheet& sheet) : sheet_(sheet) {}

    int add(const WayEnd& end, int box, routing::Spot at)
    {
        const std::tuple key{box, end.port.at.x, end.port.at.y, end.port.facing};
        const auto [found, isNew] = known_.try_emplace(key, static_cast<int>(sheet_.ports.size()));
        if (isNew)
            sheet_.ports.push_back({"", box, sideOf(end.port.facing), at});
        return found->second;
    }

private:
    routing::Sheet& sheet_;
    std::map<std::tuple<int, int, int, Facing>, int> known_;
};

bool isSameSize(const routing::Sheet& a, const routing::Sheet& b)
{
    return a.boxes.size() == b.boxes.size() && a.ports.size() == b.ports.size() &&
           a.connectors.size() == b.connectors.size();
}

} // namespace

Routes::Routes(int pitch, const routing::Prices& prices) : unit_(pitch / routing::wantedGap), prices_(prices) {}

// A crossing is drawn with a gap and does little harm: it is worth no way round a whole cabinet.
routing::Prices Routes::conductorPrices()
{
    routing::Prices prices;
    prices.crossing = 25;
    return prices;
}

routing::Spot Routes::spotOf(Point point) const
{
    return {point.x / unit_, point.y / unit_};
}

Point Routes::pointOf(routing::Spot spot) const
{
    return {static_cast<int>(std::lround(spot.x * unit_)), static_cast<int>(std::lround(spot.y * unit_))};
}

void Routes::stand(DrawnPart box, const Area& area)
{
    const auto found = boxes_.find(box);
    if (found == boxes_.end() ? area.isEmpty() : found->second == area)
        return;
    moved_.insert(box);
    changed_.insert(box);
    if (area.isEmpty())
        boxes_.erase(found);
    else
        boxes_[box] = area;
}

void Routes::wish(DrawnPart way, std::optional<WayWish> wish)
{
    const auto found = ways_.find(way);
    if (found == ways_.end() ? !wish : wish && found->second.wish == *wish)
        return;
    moved_.insert(way);
    changed_.insert(way);
    if (!wish)
        ways_.erase(found);
    else if (found == ways_.end())
        ways_[way] = {std::move(*wish), {}};
    else
        found->second.wish = std::move(*wish);
}

const DrawnWay* Routes::find(DrawnPart way) const
{
    const auto found = ways_.find(way);
    return found == ways_.end() ? nullptr : &found->second.way;
}

void Routes::show(DrawnPart way, DrawnWay shown, Rows& changed)
{
    DrawnWay& known = ways_.at(way).way;
    if (known == shown)
        return;
    known = std::move(shown);
    changed.insert(way.row);
}

DrawnWay Routes::wayOf(DrawnPart way, const routing::Route& route) const
{
    const WayWish& wish = ways_.at(way).wish;
    DrawnWay found{route.empty() ? DrawnWay::State::Impossible : DrawnWay::State::Found, {}};
    for (const routing::Spot spot : route)
        found.line.push_back(pointOf(spot));
    if (!route.empty()) { // exactly, whatever the unit
        found.line.front() = wish.from.port.at;
        found.line.back() = wish.to.port.at;
    }
    return found;
}

// ---- Groups

std::vector<Routes::Group> Routes::grouped() const
{
    std::vector<DrawnPart> boxes; // sorted
    std::vector<Area> areas;
    for (const auto& [part, area] : boxes_) {
        boxes.push_back(part);
        areas.push_back(area.grownBy(reach));
    }
    const auto placeOf = [&](DrawnPart box) {
        const auto found = std::lower_bound(boxes.begin(), boxes.end(), box);
        return static_cast<std::size_t>((found != boxes.end() && *found == box ? found : boxes.end()) -
                                        boxes.begin());
    };
    Sets sets(boxes.size());
    std::vector<std::pair<DrawnPart, std::size_t>> ways;
    for (const auto& [part, entry] : ways_) {
        const std::size_t from = placeOf(entry.wish.from.box), to = placeOf(entry.wish.to.box);
        if (from == boxes.size() || to == boxes.size())
            continue;
        sets.join(from, to);
        areas[from] = together(areas[from], areaOf(entry.wish).grownBy(reach));
        ways.emplace_back(part, from);
    }
    joinMeeting(sets, std::move(areas));
    std::map<std::size_t, Group> bySet;
    for (const auto& [part, box] : ways)
        bySet[sets.find(box)].ways.push_back(part);
    for (std::size_t i = 0; i < boxes.size(); ++i)
        if (const auto group = bySet.find(sets.find(i)); group != bySet.end())
            group->second.boxes.push_back(boxes[i]);
    std::vector<Group> groups;
    for (auto& [set, group] : bySet)
        groups.push_back(std::move(group));
    return groups;
}

// Takes these groups; what is known of those that had the same members is kept.
void Routes::keepGroups(std::vector<Group> groups)
{
    std::map<DrawnPart, std::size_t> before; // by the first way
    for (std::size_t i = 0; i < groups_.size(); ++i)
        before[groups_[i].ways.front()] = i;
    for (Group& group : groups) {
        const auto known = before.find(group.ways.front());
        if (known == before.end())
            continue;
        Group& old = groups_[known->second];
        if (old.ways == group.ways && old.boxes == group.boxes)
            group = std::move(old);
    }
    groups_ = std::move(groups);
    groupOfBox_.clear();
    for (std::size_t i = 0; i < groups_.size(); ++i)
        for (const DrawnPart& box : groups_[i].boxes)
            groupOfBox_[box] = i;
}

// Places of the groups that these belong to: a way to that of the box where it begins.
std::set<std::size_t> Routes::groupsOf(const std::set<DrawnPart>& parts) const
{
    std::set<std::size_t> groups;
    for (const DrawnPart& part : parts) {
        const auto way = ways_.find(part);
        const auto group = groupOfBox_.find(way == ways_.end() ? part : way->second.wish.from.box);
        if (group != groupOfBox_.end())
            groups.insert(group->second);
    }
    return groups;
}

// Nothing where a member is gone.
std::optional<routing::Sheet> Routes::sheetOf(const Group& group) const
{
    routing::Sheet sheet;
    std::map<DrawnPart, int> places;
    for (const DrawnPart& part : group.boxes) {
        const auto box = boxes_.find(part);
        if (box == boxes_.end())
            return std::nullopt;
        const Area& area = box->second;
        places[part] = static_cast<int>(sheet.boxes.size());
        sheet.boxes.push_back({nameOf(part), spotOf({area.left, area.top}), area.width() / unit_,
                               area.height() / unit_});
    }
    Ports ports(sheet);
    for (const DrawnPart& part : group.ways) {
        const auto entry = ways_.find(part);
        if (entry == ways_.end())
            return std::nullopt;
        const WayWish& wish = entry->second.wish;
        const auto from = places.find(wish.from.box), to = places.find(wish.to.box);
        if (from == places.end() || to == places.end())
            return std::nullopt;
        routing::Connector connector{nameOf(part), ports.add(wish.from, from->second, spotOf(wish.from.port.at)),
                                     ports.add(wish.to, to->second, spotOf(wish.to.port.at))};
        for (const Point point : wish.pinned)
            connector.pinned.push_back(spotOf(point));
        connector.isLaid = wish.isLaid;
        sheet.connectors.push_back(std::move(connector));
    }
    return sheet;
}

// ---- Following and settling

std::vector<std::uint32_t> Routes::follow()
{
    Rows changed;
    std::set<DrawnPart> grouped;
    for (const std::size_t i : groupsOf(moved_))
        if (Group& group = groups_[i]; group.isFollowed()) {
            followGroup(group, changed);
            grouped.insert(group.ways.begin(), group.ways.end());
        }
    for (const DrawnPart& part : moved_) // what is new waits
        if (ways_.contains(part) && !grouped.contains(part))
            show(part, {}, changed);
    moved_.clear();
    return {changed.begin(), changed.end()};
}

void Routes::followGroup(Group& group, Rows& changed)
{
    std::optional<routing::Sheet> sheet = sheetOf(group);
    if (!sheet) {
        for (const DrawnPart& way : group.ways)
            if (ways_.contains(way) && moved_.contains(way))
                show(way, {}, changed);
        return;
    }
    if (!group.router) {
        group.router.emplace(group.sheet, prices_);
        std::vector<routing::Route> routes(group.ways.size());
        for (std::size_t i = 0; i < routes.size(); ++i)
            for (const Point point : group.settled[i].line)
                routes[i].push_back(spotOf(point));
        group.router->layAs(routes);
    }
    if (!isSameSize(group.router->sheet(), *sheet)) { // ports are shared otherwise than before
        const std::vector<routing::Route> routes = group.router->routes();
        group.router.emplace(*sheet, prices_);
        group.router->layAs(routes);
    }
    group.router->update(std::move(*sheet));
    for (std::size_t i = 0; i < group.ways.size(); ++i) {
        DrawnWay way = wayOf(group.ways[i], group.router->route(static_cast<int>(i)));
        if (way.state == DrawnWay::State::Impossible) // as yet: that is known when it settles
            way.state = DrawnWay::State::Waiting;
        show(group.ways[i], std::move(way), changed);
    }
}

std::vector<std::uint32_t> Routes::settle(int most)
{
    Rows changed;
    if (!changed_.empty()) {
        keepGroups(grouped());
        const std::set<std::size_t> touched = groupsOf(changed_);
        for (std::size_t k = 0; k < groups_.size(); ++k)
            if (touched.contains(k) || (!groups_[k].isSettled && !groups_[k].away))
                unsettle(groups_[k], changed);
        for (const DrawnPart& part : changed_) // of no group: it has no way
            if (const auto way = ways_.find(part);
                way != ways_.end() && !(boxes_.contains(way->second.wish.from.box) &&
                                        boxes_.contains(way->second.wish.to.box)))
                show(part, {}, changed);
        changed_.clear();
        moved_.clear();
    }
    for (Group& group : groups_)
        if (!group.isSettled && !group.isLarge() && most > 0) {
            routing::Router router(group.sheet, prices_);
            router.routeAll();
            settleGroup(group, router.routes(), changed);
            most -= static_cast<int>(group.ways.size());
        }
    settleLarge(changed);
    return {changed.begin(), changed.end()};
}

// Its sheet may be another now. What does not fit it any more waits.
void Routes::unsettle(Group& group, Rows& changed)
{
    const std::optional<routing::Sheet> sheet = sheetOf(group);
    const bool isSame = *sheet == group.sheet;
    group.router.reset();
    if (!isSame)
        group.away.reset();
    group.isSettled = group.isSettled && isSame;
    group.sheet = *sheet;
    for (std::size_t i = 0; i < group.ways.size(); ++i)
        if (group.isSettled)
            show(group.ways[i], group.settled[i], changed);
        else if (!group.isLarge() || !isFitting(group.ways[i]))
            show(group.ways[i], {}, changed);
}

// Whether a way still leads from end to end.
bool Routes::isFitting(DrawnPart way) const
{
    const auto& [wish, drawn] = ways_.at(way);
    return !drawn.line.empty() && drawn.line.front() == wish.from.port.at && drawn.line.back() == wish.to.port.at;
}

// One after another.
void Routes::settleLarge(Rows& changed)
{
    for (Group& group : groups_) {
        if (group.isSettled || !group.isLarge())
            continue;
        if (!group.away) {
            group.away = std::make_unique<Errand>(group.sheet, prices_);
            return;
        }
        if (!group.away->isDone())
            return;
        settleGroup(group, group.away->routes(), changed);
        group.away.reset();
    }
}

Routes::Errand::Errand(const routing::Sheet& sheet, const routing::Prices& prices)
    : routes_(std::async(std::launch::async, [this, sheet, prices] {
          routing::Router router(sheet, prices, &isGivenUp_);
          router.routeAll();
          return router.routes();
      }))
{
}

void Routes::settleGroup(Group& group, const std::vector<routing::Route>& routes, Rows& changed)
{
    group.settled.clear();
    for (std::size_t i = 0; i < group.ways.size(); ++i) {
        group.settled.push_back(wayOf(group.ways[i], routes[i]));
        show(group.ways[i], group.settled.back(), changed);
    }
    group.isSettled = true;
}

bool Routes::isWaiting() const
{
    return std::any_of(groups_.begin(), groups_.end(), [](const Group& group) { return !group.isSettled; });
}

bool Routes::isWaitingForThread() const
{
    return isWaiting() && std::all_of(groups_.begin(), groups_.end(), [](const Group& group) { return group.isSettled || group.isLarge(); });
}

} // namespace doorloom
