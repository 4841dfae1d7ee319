#include "verdict/inside.h"

#include <algorithm>
#include <limits>

// Whether a load is fed: the cases that can lie on a cycle with its source, and one position of such a case.
namespace doorloom {

namespace {

bool meet(const std::vector<MovedIndex>& sorted, const Guard& guard)
{
    std::vector<MovedIndex> named;
    addOperators(named, guard);
    return std::any_of(named.begin(), named.end(),
                       [&](MovedIndex each) { return std::binary_search(sorted.begin(), sorted.end(), each); });
}

// Dijkstra over a few vertices: the least sum of drops from one net to another.
bool reachableWithin(JoinedSets& sets, const Region& region, const Circuit& circuit, Vertex from, Vertex to,
                     Millivolts below, Budget& steps)
{
    constexpr Millivolts far = std::numeric_limits<Millivolts>::max();
    std::vector<Millivolts> drop(region.vertices, far);
    drop[sets.find(from)] = 0;
    for (Vertex round = 0; round < region.vertices; ++round) {
        bool changed = false;
        for (const RegionEdge& edge : region.edges) {
            if (edge.sort != RegionEdge::Sort::Diode)
                continue;
            steps.spend(1);
            const Vertex a = sets.find(edge.a), b = sets.find(edge.b);
            if (drop[a] == far)
                continue;
            const Millivolts through = drop[a] + circuit.diodes[edge.number].drop;
            if (through < drop[b] && through < below) {
                drop[b] = through;
                changed = true;
            }
        }
        if (!changed)
            break;
    }
    return drop[sets.find(to)] < below;
}

} // namespace

bool shortedWith(const Region& part, const Circuit& circuit, const Feed& feed,
                 const std::function<bool(const Guard&)>& closed, Budget& steps)
{
    JoinedSets sets(part.vertices);
    for (const RegionJoint& joint : part.joints)
        if (closed(circuit.joints[joint.joint].guard))
            sets.join(joint.a, joint.b);
    const Vertex plus = part.ends[0], minus = part.ends[1];
    return reachableWithin(sets, part, circuit, plus, minus, feed.highest, steps) ||
           (feed.ac && reachableWithin(sets, part, circuit, minus, plus, feed.highest, steps));
}

ShortCase Questions::Inside::makeShortCase(std::uint32_t number)
{
    const Feed& feed = circuit.feeds[number];
    ShortCase made;
    made.always = nets.netOf(feed.plus) == nets.netOf(feed.minus);
    if (made.always)
        return made;
    const Region all = nets.regionOf({feed.plus, feed.minus}, {feed.plus}, {feed.minus},
                                     {.diodes = true, .notFeed = number});
    Budget structural(budget);
    for (Region& part : Nets::parallelParts(all, circuit)) {
        const Growing anyThrow{circuit, part.operators,
                               [&](const auto& closed) { return shortedWith(part, circuit, feed, closed, structural); },
                               {}, [](MovedIndex, ThrowIndex) { return true; }, [](const Cube&) { return true; }};
        bool possible = true;
        try {
            possible = !fewestThrows(anyThrow, structural).cubes.empty();
        } catch (const BudgetSpent&) {
        }
        if (!possible)
            continue;
        made.operators.insert(made.operators.end(), part.operators.begin(), part.operators.end());
        made.parts.push_back(std::move(part));
    }
    sortOperators(made.operators);
    return made;
}

const ShortCase& Questions::Inside::shortCase(std::uint32_t feed)
{
    const auto found = shorts_.find(feed);
    return found != shorts_.end() ? found->second : shorts_.emplace(feed, makeShortCase(feed)).first->second;
}

ReturnCase Questions::Inside::makeReturnCase(std::uint32_t element, std::uint32_t feed)
{
    const Element& load = circuit.elements[element];
    const Feed& source = circuit.feeds[feed];
    ReturnCase made;
    made.element = element;
    made.feed = feed;
    if (nets.netOf(load.a) == nets.netOf(load.b) || nets.netOf(source.plus) == nets.netOf(source.minus))
        return made;
    made.region = nets.regionOf({load.a, load.b, source.plus, source.minus}, {load.a, load.b},
                                {source.plus, source.minus},
                                {.diodes = true,
                                 .sources = true,
                                 .resistorsUpToOhms = std::numeric_limits<double>::infinity(),
                                 .notFeed = feed});
    made.possible = made.region.possible;
    if (!made.possible)
        return made;
    made.operators = made.region.operators;
    const ShortCase& own = shortCase(feed);
    made.simple = made.region.edges.empty() && own.parts.empty();
    made.operators.insert(made.operators.end(), own.operators.begin(), own.operators.end());
    for (const RegionEdge& edge : made.region.edges)
        if (edge.sort == RegionEdge::Sort::Source) {
            const ShortCase& other = shortCase(edge.number);
            made.operators.insert(made.operators.end(), other.operators.begin(), other.operators.end());
            addOperators(made.operators, circuit.feeds[edge.number].live);
        }
    sortOperators(made.operators);
    made.liveMatters = meet(made.operators, source.live);
    if (made.liveMatters) {
        addOperators(made.operators, source.live);
        sortOperators(made.operators);
    }
    return made;
}

const ReturnCase& Questions::Inside::returnCase(std::uint32_t element, std::uint32_t feed)
{
    const auto key = std::pair(element, feed);
    const auto found = returns_.find(key);
    return found != returns_.end() ? found->second : returns_.emplace(key, makeReturnCase(element, feed)).first->second;
}

std::vector<MovedIndex> Questions::Inside::operatorsFeeding(std::uint32_t element)
{
    std::vector<MovedIndex> all;
    for (std::uint32_t feed : nets.feedsOfIsland(nets.islandOf(circuit.elements[element].a)))
        if (const ReturnCase& at = returnCase(element, feed); at.possible) {
            all.insert(all.end(), at.operators.begin(), at.operators.end());
            addOperators(all, circuit.feeds[feed].live);
        }
    sortOperators(all);
    return all;
}

std::vector<MovedIndex> Questions::Inside::operatorsMoving(const Drive& drive)
{
    std::vector<MovedIndex> all = drive.load ? operatorsFeeding(*drive.load) : std::vector<MovedIndex>();
    addOperators(all, drive.powered);
    if (drive.closedInput) {
        const std::vector<MovedIndex> closing = regionOfInput(*drive.closedInput).operators;
        all.insert(all.end(), closing.begin(), closing.end());
    }
    sortOperators(all);
    return all;
}

std::vector<MovedIndex> Questions::Inside::withThoseThatMove(std::vector<MovedIndex> all)
{
    for (std::size_t i = 0; i < all.size(); ++i)
        if (const Drive* drive = driveOf[all[i]])
            for (MovedIndex moved : operatorsMoving(*drive))
                if (std::find(all.begin(), all.end(), moved) == all.end())
                    all.push_back(moved);
    sortOperators(all);
    return all;
}

bool Questions::Inside::shortedAt(const ShortCase& at, std::uint32_t feed, const Position& position, Budget& steps)
{
    return at.always || std::any_of(at.parts.begin(), at.parts.end(), [&](const Region& part) {
               return shortedWith(
                   part, circuit, circuit.feeds[feed],
                   [&](const Guard& guard) {
                       steps.spend(1);
                       return doorloom::holds(guard, position);
                   },
                   steps);
           });
}

namespace {

// A simple path from one net into a load and, from its other side, on to another net, through what conducts.
class CycleSearch {
public:
    CycleSearch(Vertex vertices, Budget& steps) : next_(vertices), used_(vertices, 0), steps_(steps) {}

    void conducts(Vertex from, Vertex to) { next_[from].push_back(to); }

    bool runs(Vertex from, Vertex enter, Vertex leave, Vertex to)
    {
        if (enter == leave || from == to || leave == from || enter == to)
            return false;
        enter_ = enter;
        leave_ = leave;
        to_ = to;
        used_[from] = 1;
        const bool found = walk(from);
        used_[from] = 0;
        return found;
    }

private:
    bool walk(Vertex at)
    {
        steps_.spend(1);
        if (at == enter_)
            return reachesEnd();
        for (Vertex other : next_[at]) {
            if (used_[other] || other == to_ || other == leave_)
                continue;
            used_[other] = 1;
            const bool found = walk(other);
            used_[other] = 0;
            if (found)
                return true;
        }
        return false;
    }

    bool reachesEnd()
    {
        std::vector<char> seen = used_;
        std::vector<Vertex> queue{leave_};
        seen[leave_] = 1;
        for (std::size_t i = 0; i < queue.size(); ++i) {
            steps_.spend(1);
            if (queue[i] == to_)
                return true;
            for (Vertex other : next_[queue[i]])
                if (!seen[other]) {
                    seen[other] = 1;
                    queue.push_back(other);
                }
        }
        return false;
    }

    std::vector<std::vector<Vertex>> next_;
    std::vector<char> used_;
    Budget& steps_;
    Vertex enter_ = 0, leave_ = 0, to_ = 0;
};

} // namespace

bool Questions::Inside::returnedAt(const ReturnCase& at, const Position& position, Direction direction, Budget& steps)
{
    if (!at.possible || shortedAt(shortCase(at.feed), at.feed, position, steps))
        return false;
    JoinedSets sets(at.region.vertices);
    steps.spend(at.region.joints.size() + 1);
    for (const RegionJoint& joint : at.region.joints)
        if (doorloom::holds(circuit.joints[joint.joint].guard, position))
            sets.join(joint.a, joint.b);
    const Vertex a = sets.find(at.region.ends[0]), b = sets.find(at.region.ends[1]);
    const Vertex plus = sets.find(at.region.ends[2]), minus = sets.find(at.region.ends[3]);
    if (a == b || plus == minus)
        return false;
    CycleSearch cycle(at.region.vertices, steps);
    for (const RegionEdge& edge : at.region.edges) {
        const Vertex from = sets.find(edge.a), to = sets.find(edge.b);
        steps.spend(1);
        if (edge.sort == RegionEdge::Sort::Source &&
            (!doorloom::holds(circuit.feeds[edge.number].live, position) ||
             shortedAt(shortCase(edge.number), edge.number, position, steps)))
            continue;
        cycle.conducts(from, to);
        // Two transformers are independent: in part of each cycle they aid.
        if (edge.sort == RegionEdge::Sort::Resistor ||
            (edge.sort == RegionEdge::Sort::Source && circuit.feeds[edge.number].ac))
            cycle.conducts(to, from);
    }
    const bool forward = direction != Direction::Reverse, reverse = direction != Direction::Forward;
    const auto runs = [&](Vertex from, Vertex to) {
        return (forward && cycle.runs(from, a, b, to)) || (reverse && cycle.runs(from, b, a, to));
    };
    return runs(plus, minus) || (circuit.feeds[at.feed].ac && runs(minus, plus));
}

bool Questions::Inside::couldReturn(const ReturnCase& at, const Position& partial, Budget& steps)
{
    if (!at.simple)
        return true;
    JoinedSets sets(at.region.vertices);
    steps.spend(at.region.joints.size() + 1);
    for (const RegionJoint& joint : at.region.joints)
        if (possibleWith(circuit.joints[joint.joint].guard, partial))
            sets.join(joint.a, joint.b);
    const Vertex a = sets.find(at.region.ends[0]), b = sets.find(at.region.ends[1]);
    const Vertex plus = sets.find(at.region.ends[2]), minus = sets.find(at.region.ends[3]);
    return (a == plus && b == minus) || (b == plus && a == minus);
}

Direction Questions::Inside::naturalDirection(std::uint32_t element) const
{
    return circuit.elements[element].polarised ? Direction::Forward : Direction::Either;
}

bool Questions::Inside::returnedIn(const Position& position, std::uint32_t element, Budget& steps)
{
    const auto& feeds = nets.feedsOfIsland(nets.islandOf(circuit.elements[element].a));
    return std::any_of(feeds.begin(), feeds.end(), [&](std::uint32_t feed) {
        return doorloom::holds(circuit.feeds[feed].live, position) &&
               returnedAt(returnCase(element, feed), position, naturalDirection(element), steps);
    });
}

} // namespace doorloom
