#include "verdict/inside.h"

#include <algorithm>
#include <limits>

// The questions as others ask them: each with a budget of its own.
namespace doorloom {

Verdict unknown()
{
    Verdict verdict;
    verdict.answer = Answer::Unknown;
    return verdict;
}

Verdict alwaysYes(double positions)
{
    Verdict verdict;
    verdict.answer = Answer::Always;
    verdict.cubes = {Cube{}};
    verdict.coverage.positions = verdict.coverage.covered = positions;
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

// Conductors and links are made one net before any search: taking one of them out needs nets of its own.
bool Questions::Inside::mergedAny(const std::vector<std::uint32_t>& joints) const
{
    return std::any_of(joints.begin(), joints.end(), [&](std::uint32_t joint) {
        return circuit.joints[joint].guard.always() && !circuit.joints[joint].byJumper;
    });
}

const Cut& Questions::Inside::cutAt(const std::vector<std::uint32_t>& joints)
{
    if (!lastCut_ || lastCut_->without != joints)
        lastCut_ = std::make_unique<Cut>(circuit, joints);
    return *lastCut_;
}

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
bool Questions::couldMeet(Vertex x, Vertex y) const { return inside_->nets.couldMeet(x, y); }
Vertex Questions::netOf(Vertex vertex) const { return inside_->nets.netOf(vertex); }

std::vector<MovedIndex> Questions::operatorsThatMatter(std::uint32_t element) const
{
    return inside_->withThoseThatMove(inside_->operatorsFeeding(element));
}

std::vector<MovedIndex> Questions::operatorsThatMatterToInput(std::uint32_t input) const
{
    return inside_->withThoseThatMove(inside_->regionOfInput(input).operators);
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
    const bool possible = std::all_of(pairs.begin(), pairs.end(),
                                      [&](const Pair& pair) { return couldMeet(pair.x, pair.y); });
    if (!possible)
        return {};
    const Circuit* used = &inside_->circuit;
    const Nets* nets = &inside_->nets;
    if (inside_->mergedAny(without)) {
        const Cut& cut = inside_->cutAt(without);
        used = &cut.circuit;
        nets = &cut.nets;
    }
    return withinBudget(inside_->budget, inside_->total, [&](Budget& steps) {
        std::vector<Region> parts;
        Region both;
        for (const Pair& pair : pairs) {
            if (nets->netOf(pair.x) == nets->netOf(pair.y))
                continue;
            if (pair.avoiding && (nets->netOf(pair.x) == nets->netOf(*pair.avoiding) ||
                                  nets->netOf(pair.y) == nets->netOf(*pair.avoiding)))
                return Verdict{};
            const Region region = nets->regionOf(
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

Region Questions::loopOf(std::uint32_t input) const
{
    return inside_->regionOfInput(input, std::numeric_limits<double>::infinity());
}

Verdict Questions::wherever(const std::vector<MovedIndex>& operators, const std::function<bool(const Position&)>& isSo) const
{
    return withinBudget(inside_->budget, inside_->total,
                        [&](Budget& steps) { return inside_->wherever(operators, isSo, steps); });
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

bool Questions::operatedIn(const Position& position, std::uint32_t input) const
{
    return inside_->operatedIn(position, input);
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
        if (drive.closedInput && !operatedIn(position, *drive.closedInput))
            return false;
        Position without = position;
        without[drive.moved] = unpowered;
        return !drive.load || returnedIn(position, *drive.load) || returnedIn(without, *drive.load);
    });
}

} // namespace doorloom
