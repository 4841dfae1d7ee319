#include "verdict/questions.h"

#include "verdict/inside.h"
#include "verdict/lanes.h"

#include <algorithm>
#include <limits>

namespace doorloom {

namespace {

constexpr double mostTablePositions = 1u << 22;
constexpr double exactTablePositions = 65536;

Verdict unknown()
{
    Verdict verdict;
    verdict.answer = Answer::Unknown;
    return verdict;
}

std::vector<MovedIndex> operatorsOf(const Guard& guard)
{
    std::vector<MovedIndex> named;
    addOperators(named, guard);
    sortOperators(named);
    return named;
}

bool names(const std::vector<MovedIndex>& operators, const Position& partial)
{
    return std::any_of(operators.begin(), operators.end(), [&](MovedIndex each) { return partial[each] < leftOut; });
}

Position asPartial(const Circuit& circuit, const Cube& cube)
{
    Position partial(circuit.operators.size(), leftOut);
    for (const ThrowAt& each : cube)
        partial[each.moved] = each.thrown;
    return partial;
}

} // namespace

double countPositions(const Circuit& circuit, const std::vector<MovedIndex>& operators)
{
    double count = 1;
    for (MovedIndex each : operators)
        count *= circuit.operators[each].throws;
    return count;
}

Questions::Inside::Inside(const Circuit& of, std::uint64_t steps)
    : circuit(of), budget(steps), nets(of), driveOf(of.operators.size(), nullptr), movable(of.operators.size(), 0)
{
    for (const Drive& drive : circuit.drives)
        driveOf[drive.moved] = &drive;
    for (MovedIndex moved = 0; moved < movable.size(); ++moved)
        movable[moved] = driveOf[moved] == nullptr;
    findMovable();
}

// A question that grows as joints close, over parts that can be searched alone.
Verdict Questions::Inside::growing(
    const std::vector<Region>& parts,
    const std::function<bool(const Region&, const std::function<bool(const Guard&)>&)>& asked,
    std::optional<std::uint32_t> feed, Budget& steps)
{
    Verdict verdict;
    Fewest all;
    const std::vector<MovedIndex> live = feed ? operatorsOf(circuit.feeds[*feed].live) : std::vector<MovedIndex>();
    std::vector<MovedIndex> everyOperator;
    for (const Region& part : parts) {
        std::vector<MovedIndex> operators = part.operators;
        if (names(live, [&] {
                Position marks(circuit.operators.size(), leftOut);
                for (MovedIndex each : operators)
                    marks[each] = 0;
                return marks;
            }())) {
            operators.insert(operators.end(), live.begin(), live.end());
            sortOperators(operators);
        }
        const Growing question{
            circuit, operators, [&](const auto& closed) { return asked(part, closed); },
            [&](const Position& partial) {
                return !feed || !names(live, partial) || impliedBy(circuit.feeds[*feed].live, partial);
            },
            [&](MovedIndex moved, ThrowIndex thrown) { return allowed(moved, thrown); },
            [&](const Cube& cube) { return positionWith(cube, feed, steps).has_value(); }};
        mergeFewest(all, fewestThrows(question, steps));
        verdict.coverage.positions += countPositions(circuit, operators);
        everyOperator.insert(everyOperator.end(), operators.begin(), operators.end());
    }
    verdict.coverage.covered = verdict.coverage.positions;
    verdict.cubes = std::move(all.cubes);
    verdict.more = all.more;
    if (verdict.cubes.empty())
        return verdict;
    verdict.answer = Answer::Some;
    if (verdict.cubes[0].empty()) {
        verdict.answer = Answer::Always;
        return verdict;
    }
    sortOperators(everyOperator);
    if (countPositions(circuit, everyOperator) > exactTablePositions)
        return verdict; // said to be 'some', which asks less than 'always'
    bool always = true;
    Position position(circuit.operators.size(), undecided);
    forEachPosition(circuit, everyOperator, position, [&] {
        const auto closed = [&](const Guard& guard) {
            steps.spend(1);
            return impliedBy(guard, position);
        };
        if (std::any_of(parts.begin(), parts.end(), [&](const Region& part) { return asked(part, closed); }))
            return true;
        Cube cube;
        for (MovedIndex each : everyOperator)
            cube.push_back({each, position[each]});
        always = !positionWith(cube, feed, steps).has_value();
        return always;
    });
    if (always)
        verdict.answer = Answer::Always;
    return verdict;
}

namespace {

bool endsJoined(const Region& part, const Circuit& circuit, const std::function<bool(const Guard&)>& closed)
{
    JoinedSets sets(part.vertices);
    for (const RegionJoint& joint : part.joints)
        if (closed(circuit.joints[joint.joint].guard))
            sets.join(joint.a, joint.b);
    for (std::size_t i = 0; i + 1 < part.ends.size(); i += 2)
        if (sets.find(part.ends[i]) != sets.find(part.ends[i + 1]))
            return false;
    return true;
}

// The least sum of ohms between the two ends, closed joints costing nothing.
bool endsWithin(const Region& part, const Circuit& circuit, double ohms,
                const std::function<bool(const Guard&)>& closed)
{
    JoinedSets sets(part.vertices);
    for (const RegionJoint& joint : part.joints)
        if (closed(circuit.joints[joint.joint].guard))
            sets.join(joint.a, joint.b);
    std::vector<double> sum(part.vertices, std::numeric_limits<double>::infinity());
    sum[sets.find(part.ends[0])] = 0;
    for (bool changed = true; changed;) {
        changed = false;
        for (const RegionEdge& edge : part.edges)
            for (const auto& [from, to] : {std::pair(edge.a, edge.b), std::pair(edge.b, edge.a)}) {
                const double through = sum[sets.find(from)] + circuit.elements[edge.number].ohms;
                if (through < sum[sets.find(to)]) {
                    sum[sets.find(to)] = through;
                    changed = true;
                }
            }
    }
    return sum[sets.find(part.ends[1])] <= ohms;
}

Verdict alwaysYes(double positions)
{
    Verdict verdict;
    verdict.answer = Answer::Always;
    verdict.cubes = {Cube{}};
    verdict.coverage.positions = verdict.coverage.covered = positions;
    return verdict;
}

} // namespace

Verdict Questions::Inside::operated(std::uint32_t number, Budget& steps)
{
    const DryInput& input = circuit.inputs[number];
    if (nets.netOf(input.terminal) == nets.netOf(input.reference))
        return alwaysYes(1);
    const Region region = nets.regionOf({input.terminal, input.reference}, {input.terminal}, {input.reference},
                                        {.resistorsUpToOhms = input.closedBelowOhms});
    return growing(
        Nets::parallelParts(region, circuit),
        [&](const Region& part, const auto& closed) { return endsWithin(part, circuit, input.closedBelowOhms, closed); },
        {}, steps);
}

Fewest fewestFromTable(const Circuit& circuit, const std::vector<MovedIndex>& operators,
                       const std::vector<std::uint8_t>& table, const std::function<bool(const Cube&)>& witnesses,
                       Budget& steps)
{
    std::vector<std::size_t> stride(operators.size() + 1, 1);
    for (std::size_t i = 0; i < operators.size(); ++i)
        stride[i + 1] = stride[i] * circuit.operators[operators[i]].throws;

    // Are all completions of what is fixed a yes (or of no account), and one at least a yes?
    const auto all = [&](const std::vector<std::size_t>& open, std::size_t base) {
        bool any = false;
        std::vector<ThrowIndex> at(open.size(), 0);
        for (std::size_t index = base;;) {
            steps.spend(1);
            if (table[index] == 0)
                return false;
            any = any || table[index] == 1;
            std::size_t i = 0;
            for (; i < open.size(); ++i) {
                index += stride[open[i]];
                if (++at[i] < circuit.operators[operators[open[i]]].throws)
                    break;
                index -= stride[open[i]] * at[i];
                at[i] = 0;
            }
            if (i == open.size())
                return any;
        }
    };

    Fewest found;
    Cube cube;
    const std::function<void(std::size_t, std::size_t, std::size_t, std::vector<std::size_t>&)> descend =
        [&](std::size_t next, std::size_t left, std::size_t base, std::vector<std::size_t>& open) {
            if (found.more)
                return;
            if (left == 0) {
                const std::size_t before = open.size();
                for (std::size_t i = next; i < operators.size(); ++i)
                    open.push_back(i);
                if (all(open, base) && witnesses(cube)) {
                    if (found.cubes.size() == mostCubes)
                        found.more = true;
                    else
                        found.cubes.push_back(cube);
                }
                open.resize(before);
                return;
            }
            if (operators.size() - next < left)
                return;
            for (ThrowIndex thrown = 0; thrown < circuit.operators[operators[next]].throws; ++thrown) {
                cube.push_back({operators[next], thrown});
                descend(next + 1, left - 1, base + thrown * stride[next], open);
                cube.pop_back();
            }
            open.push_back(next);
            descend(next + 1, left, base, open);
            open.pop_back();
        };
    for (std::size_t size = 0; size <= operators.size() && found.cubes.empty(); ++size) {
        std::vector<std::size_t> open;
        descend(0, size, 0, open);
    }
    return found;
}

namespace {

// Every answer of one case, and whether each counts.
struct ReturnTable {
    std::vector<std::uint8_t> values; // 0 no, 1 yes, 2 the source is off
    bool anyYes = false, anyNo = false;
};

LaneNet laneNetOf(const Region& region, const Circuit& circuit, const Lanes& lanes)
{
    LaneNet net{region.vertices, {}};
    for (const RegionJoint& joint : region.joints)
        net.joints.push_back({joint.a, joint.b, lanes.holding(circuit.joints[joint.joint].guard)});
    return net;
}

bool isJointsAlone(const Region& region) { return region.edges.empty(); }

// Joints alone: 64 positions at a time.
void fillByLanes(Questions::Inside& inside, const ReturnCase& at, Direction direction, ReturnTable& table,
                 Budget& steps)
{
    const Circuit& circuit = inside.circuit;
    Lanes lanes(circuit, at.operators);
    std::vector<std::uint64_t> room;
    do {
        std::uint64_t looked = 0;
        const LaneNet net = laneNetOf(at.region, circuit, lanes);
        const auto joined = [&](const LaneNet& in, Vertex x, Vertex y) {
            return in.joined(x, y, lanes.all(), room, looked);
        };
        const Vertex a = at.region.ends[0], b = at.region.ends[1], plus = at.region.ends[2], minus = at.region.ends[3];
        std::uint64_t yes = 0;
        if (direction != Direction::Reverse || circuit.feeds[at.feed].ac)
            yes |= joined(net, a, plus) & joined(net, b, minus);
        if (direction != Direction::Forward || circuit.feeds[at.feed].ac)
            yes |= joined(net, b, plus) & joined(net, a, minus);
        for (const Region& part : inside.shortCase(at.feed).parts)
            yes &= ~joined(laneNetOf(part, circuit, lanes), part.ends[0], part.ends[1]);
        const std::uint64_t live = at.liveMatters ? lanes.holding(circuit.feeds[at.feed].live) : lanes.all();
        for (unsigned lane = 0; lane < lanes.lanes(); ++lane)
            table.values.push_back(!((live >> lane) & 1u) ? 2 : (yes >> lane) & 1u);
        steps.spend(looked + 1);
    } while (lanes.next());
}

void fillOneByOne(Questions::Inside& inside, const ReturnCase& at, Direction direction, ReturnTable& table,
                  Budget& steps)
{
    Position position(inside.circuit.operators.size());
    for (MovedIndex moved = 0; moved < position.size(); ++moved)
        position[moved] = inside.circuit.operators[moved].idle;
    forEachPosition(inside.circuit, at.operators, position, [&] {
        const bool live = !at.liveMatters || holds(inside.circuit.feeds[at.feed].live, position);
        table.values.push_back(!live ? 2 : inside.returnedAt(at, position, direction, steps) ? 1 : 0);
        return true;
    });
}

ReturnTable returnTable(Questions::Inside& inside, const ReturnCase& at, Direction direction, Budget& steps)
{
    ReturnTable table;
    const auto& shorts = inside.shortCase(at.feed).parts;
    if (isJointsAlone(at.region) && std::all_of(shorts.begin(), shorts.end(), isJointsAlone))
        fillByLanes(inside, at, direction, table, steps);
    else
        fillOneByOne(inside, at, direction, table, steps);
    table.anyYes = std::find(table.values.begin(), table.values.end(), 1) != table.values.end();
    table.anyNo = std::find(table.values.begin(), table.values.end(), 0) != table.values.end();
    return table;
}

// Can some position of the table with this value happen, the source live?
bool happens(Questions::Inside& inside, const ReturnCase& at, const ReturnTable& table, std::uint8_t value,
             Budget& steps)
{
    Position position(inside.circuit.operators.size(), 0);
    std::size_t index = 0;
    bool found = false;
    forEachPosition(inside.circuit, at.operators, position, [&] {
        if (table.values[index++] != value)
            return true;
        Cube cube;
        for (MovedIndex each : at.operators)
            cube.push_back({each, position[each]});
        found = inside.positionWith(cube, at.feed, steps).has_value();
        return !found;
    });
    return found;
}

Fewest fewestReturns(Questions::Inside& inside, const ReturnCase& at, const ReturnTable& table, Budget& steps)
{
    const Circuit& circuit = inside.circuit;
    const std::vector<MovedIndex> live = operatorsOf(circuit.feeds[at.feed].live);
    return fewestFromTable(circuit, at.operators, table.values,
                           [&](const Cube& cube) {
                               const Position partial = asPartial(circuit, cube);
                               return (!names(live, partial) || impliedBy(circuit.feeds[at.feed].live, partial)) &&
                                      inside.positionWith(cube, at.feed, steps).has_value();
                           },
                           steps);
}

} // namespace

Verdict Questions::Inside::returnedVia(std::uint32_t element, std::uint32_t feed, Direction direction, Budget& steps)
{
    const ReturnCase& at = returnCase(element, feed);
    Verdict verdict;
    verdict.coverage.positions = verdict.coverage.covered = countPositions(circuit, at.operators);
    if (!at.possible || shortCase(feed).always)
        return verdict;
    if (verdict.coverage.positions > exactTablePositions && at.simple && !at.liveMatters) {
        const bool forward = direction != Direction::Reverse, reverse = direction != Direction::Forward;
        const auto asked = [&](const Region& part, const std::function<bool(const Guard&)>& closed) {
            JoinedSets sets(part.vertices);
            for (const RegionJoint& joint : part.joints)
                if (closed(circuit.joints[joint.joint].guard))
                    sets.join(joint.a, joint.b);
            const Vertex a = sets.find(part.ends[0]), b = sets.find(part.ends[1]);
            const Vertex plus = sets.find(part.ends[2]), minus = sets.find(part.ends[3]);
            return (forward && a == plus && b == minus) || (reverse && a == minus && b == plus);
        };
        return growing({at.region}, asked, feed, steps);
    }
    if (verdict.coverage.positions > mostTablePositions)
        return unknown();
    const ReturnTable table = returnTable(*this, at, direction, steps);
    if (!table.anyYes || !happens(*this, at, table, 1, steps))
        return verdict;
    Fewest fewest = fewestReturns(*this, at, table, steps);
    verdict.cubes = std::move(fewest.cubes);
    verdict.more = fewest.more;
    verdict.answer = table.anyNo && happens(*this, at, table, 0, steps) ? Answer::Some : Answer::Always;
    return verdict;
}

// ---- The questions as others ask them: each with a budget of its own.

Questions::Questions(const Circuit& circuit, std::uint64_t budget) : inside_(std::make_unique<Inside>(circuit, budget))
{
}

Questions::~Questions() = default;

const Circuit& Questions::circuit() const { return inside_->circuit; }
bool Questions::canMove(MovedIndex moved) const { return inside_->movable[moved] != 0; }
Coverage Questions::coverage() const { return inside_->total; }

std::vector<std::uint32_t> Questions::feedsNear(Vertex vertex) const
{
    return inside_->nets.feedsOfIsland(inside_->nets.islandOf(vertex));
}

bool Questions::sameIsland(Vertex x, Vertex y) const { return inside_->nets.sameIsland(x, y); }

std::vector<MovedIndex> Questions::operatorsThatMatter(std::uint32_t element) const
{
    std::vector<MovedIndex> all = inside_->operatorsFeeding(element);
    for (std::size_t i = 0; i < all.size(); ++i)
        if (const Drive* drive = inside_->driveOf[all[i]])
            for (MovedIndex moved : inside_->operatorsMoving(*drive))
                if (std::find(all.begin(), all.end(), moved) == all.end())
                    all.push_back(moved);
    sortOperators(all);
    return all;
}

namespace {

template <class Ask>
Verdict withinBudget(std::uint64_t budget, Coverage& total, Ask ask)
{
    Budget steps(budget);
    Verdict verdict;
    try {
        verdict = ask(steps);
    } catch (const BudgetSpent&) {
        verdict = unknown();
    }
    verdict.coverage.steps = steps.spent();
    total.add(verdict.coverage);
    return verdict;
}

} // namespace

Verdict Questions::joined(Vertex x, Vertex y, const std::vector<std::uint32_t>& without) const
{
    return allJoined({{x, y}}, without);
}

Verdict Questions::allJoined(const std::vector<Pair>& pairs, const std::vector<std::uint32_t>& without) const
{
    const Circuit& circuit = inside_->circuit;
    const Circuit* used = &circuit;
    // Conductors and links are merged before any search: taking one of them out needs nets of its own.
    std::optional<Circuit> cut;
    std::optional<Nets> cutNets;
    const bool cutsAlways = std::any_of(without.begin(), without.end(),
                                        [&](std::uint32_t joint) { return circuit.joints[joint].guard.always() && !circuit.joints[joint].byJumper; });
    if (cutsAlways) {
        cut = circuit;
        for (std::uint32_t joint : without)
            cut->joints[joint].guard.anyOf.clear();
        used = &*cut;
        cutNets.emplace(*used);
    }
    const Nets& nets = cutNets ? *cutNets : inside_->nets;
    return withinBudget(inside_->budget, inside_->total, [&](Budget& steps) {
        std::vector<Region> parts;
        Region both;
        for (const Pair& pair : pairs) {
            if (nets.netOf(pair.x) == nets.netOf(pair.y))
                continue;
            if (pair.avoiding && (nets.netOf(pair.x) == nets.netOf(*pair.avoiding) ||
                                  nets.netOf(pair.y) == nets.netOf(*pair.avoiding)))
                return Verdict{};
            const Region region = nets.regionOf(
                {pair.x, pair.y}, {pair.x}, {pair.y},
                {.without = without.empty() ? nullptr : &without, .avoiding = pair.avoiding});
            if (!region.possible)
                return Verdict{};
            if (pairs.size() == 1) {
                parts = Nets::parallelParts(region, *used);
                break;
            }
            const Vertex shift = both.vertices; // one region beside the other: they share operators, not vertices
            both.vertices += region.vertices;
            for (RegionJoint joint : region.joints) {
                joint.a += shift;
                joint.b += shift;
                both.joints.push_back(joint);
            }
            for (Vertex end : region.ends)
                both.ends.push_back(end + shift);
            both.operators.insert(both.operators.end(), region.operators.begin(), region.operators.end());
        }
        if (pairs.size() > 1 && !both.ends.empty()) {
            sortOperators(both.operators);
            parts = {both};
        }
        if (parts.empty())
            return alwaysYes(1);
        return inside_->growing(
            parts, [&](const Region& part, const auto& closed) { return endsJoined(part, *used, closed); }, {}, steps);
    });
}

Verdict Questions::shorted(std::uint32_t number) const
{
    const Feed& feed = inside_->circuit.feeds[number];
    return withinBudget(inside_->budget, inside_->total, [&](Budget& steps) {
        const ShortCase& at = inside_->shortCase(number);
        if (at.always)
            return inside_->positionWith({}, number, steps) ? alwaysYes(1) : Verdict{};
        return inside_->growing(
            at.parts,
            [&](const Region& part, const auto& closed) { return shortedWith(part, inside_->circuit, feed, closed, steps); },
            number, steps);
    });
}

Verdict Questions::returnedVia(std::uint32_t element, std::uint32_t feed, Direction direction) const
{
    return withinBudget(inside_->budget, inside_->total,
                        [&](Budget& steps) { return inside_->returnedVia(element, feed, direction, steps); });
}

Verdict Questions::returned(std::uint32_t element) const
{
    Verdict all;
    bool unsure = false;
    Fewest fewest;
    for (std::uint32_t feed :
         inside_->nets.feedsOfIsland(inside_->nets.islandOf(inside_->circuit.elements[element].a))) {
        const Verdict each = returnedVia(element, feed, inside_->naturalDirection(element));
        all.coverage.add(each.coverage);
        unsure = unsure || each.answer == Answer::Unknown;
        if (each.answer == Answer::Some || each.answer == Answer::Always) {
            mergeFewest(fewest, {each.cubes, each.more});
            if (all.answer != Answer::Always)
                all.answer = each.answer;
        }
    }
    all.cubes = std::move(fewest.cubes);
    all.more = fewest.more;
    if (all.answer == Answer::Never && unsure)
        all.answer = Answer::Unknown;
    return all;
}

Answer Questions::alwaysReturnedVia(std::uint32_t element, std::uint32_t feed) const
{
    return returnedVia(element, feed, inside_->naturalDirection(element)).answer;
}

Verdict Questions::operated(std::uint32_t input) const
{
    return withinBudget(inside_->budget, inside_->total,
                        [&](Budget& steps) { return inside_->operated(input, steps); });
}

std::optional<Position> Questions::positionWith(const Cube& throws, std::optional<std::uint32_t> liveFeed) const
{
    Budget steps(inside_->budget);
    try {
        return inside_->positionWith(throws, liveFeed, steps);
    } catch (const BudgetSpent&) {
        return std::nullopt;
    }
}

bool Questions::returnedIn(const Position& position, std::uint32_t element) const
{
    Budget steps(std::numeric_limits<std::uint64_t>::max());
    return inside_->returnedIn(position, element, steps);
}

bool Questions::shortedIn(const Position& position, std::uint32_t feed) const
{
    Budget steps(std::numeric_limits<std::uint64_t>::max());
    return holds(inside_->circuit.feeds[feed].live, position) &&
           inside_->shortedAt(inside_->shortCase(feed), feed, position, steps);
}

bool Questions::canHappen(const Position& position) const
{
    const Circuit& circuit = inside_->circuit;
    return std::all_of(circuit.drives.begin(), circuit.drives.end(), [&](const Drive& drive) {
        const ThrowIndex unpowered = circuit.operators[drive.moved].unpowered;
        if (position[drive.moved] == unpowered)
            return true;
        if (!canMove(drive.moved) || !holds(drive.powered, position))
            return false;
        Position without = position;
        without[drive.moved] = unpowered;
        return !drive.load || returnedIn(position, *drive.load) || returnedIn(without, *drive.load);
    });
}

} // namespace doorloom
