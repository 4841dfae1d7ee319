#include "verdict/inside.h"
#include "verdict/lanes.h"

#include <algorithm>

// Questions that do not grow as joints close: every position of the operators that matter is counted through, and
// the fewest throws are read from the table.
namespace doorloom {

namespace {

constexpr double mostTablePositions = 1u << 22;

Position asPartial(const Circuit& circuit, const Cube& cube)
{
    Position partial(circuit.operators.size(), leftOut);
    for (const ThrowAt& each : cube)
        partial[each.moved] = each.thrown;
    return partial;
}

} // namespace

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
    Position position = atRest(inside.circuit);
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

Verdict Questions::Inside::wherever(const std::vector<MovedIndex>& operators, const std::function<bool(const Position&)>& isSo,
                                    Budget& steps)
{
    Verdict verdict;
    verdict.coverage.positions = verdict.coverage.covered = countPositions(circuit, operators);
    if (verdict.coverage.positions > exactTablePositions)
        return unknown();
    std::vector<std::uint8_t> table;
    Position position = atRest(circuit);
    forEachPosition(circuit, operators, position, [&] {
        Cube cube;
        for (MovedIndex each : operators)
            cube.push_back({each, position[each]});
        table.push_back(!positionWith(cube, {}, steps) ? 2 : isSo(position) ? 1 : 0);
        steps.spend(1);
        return true;
    });
    const auto isThere = [&](std::uint8_t value) { return std::find(table.begin(), table.end(), value) != table.end(); };
    if (!isThere(1))
        return verdict;
    verdict.answer = isThere(0) ? Answer::Some : Answer::Always;
    Fewest fewest = fewestFromTable(circuit, operators, table,
                                    [&](const Cube& cube) { return positionWith(cube, {}, steps).has_value(); }, steps);
    verdict.cubes = std::move(fewest.cubes);
    verdict.more = fewest.more;
    return verdict;
}

} // namespace doorloom
