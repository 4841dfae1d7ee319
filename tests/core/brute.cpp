#include "core/brute.h"

#include <algorithm>
#include <limits>

namespace doorloom {
namespace {

using Nets = std::vector<Vertex>; // by vertex: the least vertex of its net
using Closed = std::vector<bool>; // by joint

Nets netsOf(const Circuit& circuit, const Closed& closed)
{
    Nets nets(circuit.vertices);
    for (Vertex v = 0; v < circuit.vertices; ++v)
        nets[v] = v;
    for (std::size_t j = 0; j < circuit.joints.size(); ++j) {
        if (!closed[j])
            continue;
        const Vertex one = nets[circuit.joints[j].a], other = nets[circuit.joints[j].b];
        for (Vertex& net : nets)
            if (net == one || net == other)
                net = std::min(one, other);
    }
    return nets;
}

Closed closedIn(const Circuit& circuit, const Position& position)
{
    Closed closed;
    for (const Joint& joint : circuit.joints)
        closed.push_back(holds(joint.guard, position));
    return closed;
}

bool implied(const Cube& cube, const Guard& guard)
{
    const auto atomImplied = [&](const Atom& atom) {
        return std::any_of(cube.begin(), cube.end(), [&](const ThrowAt& at) {
            return at.moved == atom.moved && ((atom.mask >> at.thrown) & 1u);
        });
    };
    return std::any_of(guard.anyOf.begin(), guard.anyOf.end(),
                       [&](const Term& term) { return std::all_of(term.begin(), term.end(), atomImplied); });
}

Closed closedUnder(const Circuit& circuit, const Cube& cube)
{
    Closed closed;
    for (const Joint& joint : circuit.joints)
        closed.push_back(implied(cube, joint.guard));
    return closed;
}

Closed withoutJoints(Closed closed, const std::vector<std::uint32_t>& without)
{
    for (const std::uint32_t joint : without)
        closed[joint] = false;
    return closed;
}

struct Step { // from one net to another, at a price
    Vertex from, to;
    double price;
};

// Infinite where there is no way.
double cheapest(const Nets& nets, const std::vector<Step>& steps, Vertex from, Vertex to)
{
    std::vector<double> price(nets.size(), std::numeric_limits<double>::infinity());
    price[nets[from]] = 0;
    for (std::size_t again = 0; again < nets.size(); ++again)
        for (const Step& step : steps)
            price[nets[step.to]] = std::min(price[nets[step.to]], price[nets[step.from]] + step.price);
    return price[nets[to]];
}

bool polesMeet(const Circuit& circuit, const Nets& nets, const Feed& feed)
{
    std::vector<Step> steps;
    for (const Diode& diode : circuit.diodes)
        steps.push_back({diode.anode, diode.cathode, static_cast<double>(diode.drop)});
    return cheapest(nets, steps, feed.plus, feed.minus) < feed.highest ||
           (feed.ac && cheapest(nets, steps, feed.minus, feed.plus) < feed.highest);
}

bool inputCloses(const Circuit& circuit, const Nets& nets, const DryInput& input)
{
    std::vector<Step> steps;
    for (const Element& element : circuit.elements)
        if (element.kind == ElementKind::Resistor) {
            steps.push_back({element.a, element.b, element.ohms});
            steps.push_back({element.b, element.a, element.ohms});
        }
    return cheapest(nets, steps, input.terminal, input.reference) <= input.closedBelowOhms;
}

struct Hop {
    Vertex from, to;
    bool isLoad;
};

// A way over nets, none of them twice, that takes the load's hop.
bool wayThroughLoad(const std::vector<Hop>& hops, Vertex at, Vertex target, bool loadTaken,
                    std::vector<bool>& been)
{
    if (at == target)
        return loadTaken;
    been[at] = true;
    for (const Hop& hop : hops)
        if (hop.from == at && !been[hop.to] &&
            wayThroughLoad(hops, hop.to, target, loadTaken || hop.isLoad, been)) {
            been[at] = false;
            return true;
        }
    been[at] = false;
    return false;
}

// What current may take outside the load and the feed that is asked about.
std::vector<Hop> conductingHops(const Circuit& circuit, const Nets& nets, const std::vector<bool>& feedPushes,
                                std::uint32_t element, std::uint32_t feed)
{
    std::vector<Hop> hops;
    for (const Diode& diode : circuit.diodes)
        hops.push_back({nets[diode.anode], nets[diode.cathode], false});
    for (std::size_t e = 0; e < circuit.elements.size(); ++e)
        if (const Element& other = circuit.elements[e]; e != element && other.kind == ElementKind::Resistor) {
            hops.push_back({nets[other.a], nets[other.b], false});
            hops.push_back({nets[other.b], nets[other.a], false});
        }
    for (std::size_t f = 0; f < circuit.feeds.size(); ++f)
        if (const Feed& other = circuit.feeds[f]; f != feed && feedPushes[f]) {
            hops.push_back({nets[other.minus], nets[other.plus], false});
            if (other.ac)
                hops.push_back({nets[other.plus], nets[other.minus], false});
        }
    return hops;
}

// Current leaves the feed at plus (of AC: at either leg) and enters the load at `in`.
bool currentRuns(const Circuit& circuit, const Nets& nets, std::vector<Hop> hops, const Feed& feed, Vertex in,
                 Vertex out)
{
    hops.push_back({nets[in], nets[out], true});
    std::vector<bool> been(circuit.vertices, false);
    return wayThroughLoad(hops, nets[feed.plus], nets[feed.minus], false, been) ||
           (feed.ac && wayThroughLoad(hops, nets[feed.minus], nets[feed.plus], false, been));
}

std::vector<Position> allPositions(const Circuit& circuit)
{
    std::vector<Position> all{Position{}};
    for (const MovedOperator& moved : circuit.operators) {
        std::vector<Position> longer;
        for (ThrowIndex thrown = 0; thrown < moved.throws; ++thrown)
            for (Position position : all) {
                position.push_back(thrown);
                longer.push_back(position);
            }
        all = longer;
    }
    return all; // the first operator turns fastest
}

bool isPlainOrFollows(const Drive& drive)
{
    return drive.manner != Drive::Manner::Programmed;
}

ThrowIndex pulledIn(const MovedOperator& moved)
{
    return moved.unpowered == 0 ? ThrowIndex{1} : ThrowIndex{0};
}

} // namespace

BruteForce::BruteForce(const Circuit& circuit) : circuit_(circuit), positions_(allPositions(circuit))
{
    for (const MovedOperator& moved : circuit.operators)
        cubes_ *= moved.throws + 1u;
    cubesBySize_.resize(circuit.operators.size() + 1);
    for (CubeNumber number = 0; number < cubes_; ++number)
        cubesBySize_[cubeAt(number).size()].push_back(number);

    const OverPositions no(positions_.size(), 0);
    live_.assign(circuit.feeds.size(), no);
    shorted_ = live_;
    returned_.assign(circuit.elements.size(), no);
    forward_.assign(circuit.elements.size(), live_);
    reverse_ = forward_;
    operated_.assign(circuit.inputs.size(), no);
    for (std::size_t p = 0; p < positions_.size(); ++p) {
        const Nets nets = netsOf(circuit, closedIn(circuit, positions_[p]));
        std::vector<bool> pushes(circuit.feeds.size());
        for (std::size_t f = 0; f < circuit.feeds.size(); ++f) {
            live_[f][p] = holds(circuit.feeds[f].live, positions_[p]);
            shorted_[f][p] = live_[f][p] && polesMeet(circuit, nets, circuit.feeds[f]);
            pushes[f] = live_[f][p] && !shorted_[f][p];
        }
        for (std::uint32_t e = 0; e < circuit.elements.size(); ++e)
            for (std::uint32_t f = 0; f < circuit.feeds.size(); ++f) {
                if (!pushes[f])
                    continue;
                const Element& element = circuit.elements[e];
                const std::vector<Hop> hops = conductingHops(circuit, nets, pushes, e, f);
                forward_[e][f][p] = currentRuns(circuit, nets, hops, circuit.feeds[f], element.a, element.b);
                reverse_[e][f][p] = currentRuns(circuit, nets, hops, circuit.feeds[f], element.b, element.a);
                if (forward_[e][f][p] || (reverse_[e][f][p] && !element.polarised))
                    returned_[e][p] = true;
            }
        for (std::size_t i = 0; i < circuit.inputs.size(); ++i)
            operated_[i][p] = inputCloses(circuit, nets, circuit.inputs[i]);
    }
    findAble();
    happens_ = happening(able_);
}

// ---- Numbers

std::size_t BruteForce::numberOf(const Position& position) const
{
    std::size_t number = 0;
    for (std::size_t o = position.size(); o-- > 0;)
        number = number * circuit_.operators[o].throws + position[o];
    return number;
}

// The digit past an operator's last throw says 'left out'.
Cube BruteForce::cubeAt(CubeNumber number) const
{
    Cube cube;
    for (MovedIndex o = 0; o < circuit_.operators.size(); ++o) {
        const std::size_t throws = circuit_.operators[o].throws;
        const std::size_t digit = number % (throws + 1);
        if (digit < throws)
            cube.push_back({o, static_cast<ThrowIndex>(digit)});
        number /= throws + 1;
    }
    return cube;
}

namespace {

// Folds a value of positions into one of cubes: a cube that leaves an operator out takes all its throws
// together.
std::vector<char> folded(const Circuit& circuit, std::size_t cubes, const std::vector<char>& over,
                         const std::function<bool(bool, bool)>& together)
{
    std::vector<char> result(cubes);
    for (std::size_t number = 0; number < cubes; ++number) {
        std::size_t weight = 1, positionWeight = 1, position = 0;
        bool isPosition = true;
        for (const MovedOperator& moved : circuit.operators) {
            const std::size_t digit = number / weight % (moved.throws + 1u);
            if (digit == moved.throws) { // the same cube with this operator named has a smaller number
                bool value = result[number - weight];
                for (std::size_t back = 2; back <= moved.throws; ++back)
                    value = together(value, result[number - back * weight]);
                result[number] = value;
                isPosition = false;
                break;
            }
            position += digit * positionWeight;
            weight *= moved.throws + 1u;
            positionWeight *= moved.throws;
        }
        if (isPosition)
            result[number] = over[position];
    }
    return result;
}

} // namespace

BruteForce::OverCubes BruteForce::everyCompletion(const OverPositions& over) const
{
    return folded(circuit_, cubes_, over, std::logical_and<>());
}

BruteForce::OverCubes BruteForce::someCompletion(const OverPositions& over) const
{
    return folded(circuit_, cubes_, over, std::logical_or<>());
}

std::vector<Cube> BruteForce::fewest(const std::function<bool(CubeNumber)>& isWitness) const
{
    std::vector<Cube> cubes;
    for (const std::vector<CubeNumber>& ofOneSize : cubesBySize_) {
        for (const CubeNumber number : ofOneSize)
            if (isWitness(number))
                cubes.push_back(cubeAt(number));
        if (!cubes.empty())
            break;
    }
    std::sort(cubes.begin(), cubes.end());
    return cubes;
}

// ---- What can happen

bool BruteForce::fedIn(std::size_t position, const Drive& drive) const
{
    return holds(drive.powered, positions_[position]) && (!drive.load || returned_[*drive.load][position]);
}

bool BruteForce::happensIn(std::size_t position, const std::vector<bool>& able) const
{
    for (const Drive& drive : circuit_.drives) {
        const ThrowIndex unpowered = circuit_.operators[drive.moved].unpowered;
        if (positions_[position][drive.moved] == unpowered)
            continue;
        Position released = positions_[position];
        released[drive.moved] = unpowered;
        if (!able[drive.moved] || !holds(drive.powered, positions_[position]))
            return false;
        if (drive.load && !returned_[*drive.load][position] && !returned_[*drive.load][numberOf(released)])
            return false;
    }
    return true;
}

BruteForce::OverPositions BruteForce::happening(const std::vector<bool>& able) const
{
    OverPositions happens(positions_.size());
    for (std::size_t p = 0; p < positions_.size(); ++p)
        happens[p] = happensIn(p, able);
    return happens;
}

bool BruteForce::becomesAble(const Drive& drive, const OverPositions& happens) const
{
    bool powered = false, asked = !drive.needsInput;
    for (std::size_t p = 0; p < positions_.size(); ++p) {
        if (!happens[p] || positions_[p][drive.moved] != circuit_.operators[drive.moved].unpowered)
            continue;
        powered = powered || fedIn(p, drive);
        for (const std::uint32_t input : drive.dryInputs)
            asked = asked || operated_[input][p];
        for (const std::uint32_t element : drive.voltageInputs)
            asked = asked || returned_[element][p];
    }
    return powered && (asked || isPlainOrFollows(drive));
}

void BruteForce::findAble()
{
    able_.assign(circuit_.operators.size(), true);
    for (const Drive& drive : circuit_.drives)
        able_[drive.moved] = false;
    for (bool changed = true; changed;) {
        changed = false;
        const OverPositions happens = happening(able_);
        for (const Drive& drive : circuit_.drives)
            if (!able_[drive.moved] && becomesAble(drive, happens))
                changed = able_[drive.moved] = true;
    }
}

bool BruteForce::canHappen(const Position& position) const
{
    return happens_[numberOf(position)];
}

bool BruteForce::canHappenWith(const Cube& throws, std::optional<std::uint32_t> liveFeed) const
{
    for (std::size_t p = 0; p < positions_.size(); ++p) {
        const bool has = std::all_of(throws.begin(), throws.end(),
                                     [&](const ThrowAt& at) { return positions_[p][at.moved] == at.thrown; });
        if (has && happens_[p] && (!liveFeed || live_[*liveFeed][p]))
            return true;
    }
    return false;
}

// ---- Verdicts

namespace {

std::vector<char> both(const std::vector<char>& one, const std::vector<char>& other)
{
    std::vector<char> result(one.size());
    for (std::size_t i = 0; i < one.size(); ++i)
        result[i] = one[i] && other[i];
    return result;
}

// `over` where it is asked: in none, some or all of `asked`.
Answer answerOver(const std::vector<char>& over, const std::vector<char>& asked)
{
    const std::vector<char> yes = both(over, asked);
    const auto count = [](const std::vector<char>& values) {
        return std::count(values.begin(), values.end(), 1);
    };
    if (count(yes) == 0)
        return Answer::Never;
    return count(yes) == count(asked) ? Answer::Always : Answer::Some;
}

} // namespace

BruteVerdict BruteForce::answered(const OverPositions& over, const OverPositions& asked,
                                  const std::function<bool(const Cube&)>& holdsWithContactsOpen) const
{
    BruteVerdict verdict{answerOver(over, asked), {}};
    if (verdict.answer == Answer::Never)
        return verdict;
    const OverCubes canBe = someCompletion(asked);
    verdict.cubes =
        fewest([&](CubeNumber number) { return canBe[number] && holdsWithContactsOpen(cubeAt(number)); });
    return verdict;
}

// Nothing passes what is joined to this vertex without any contact.
BruteForce::Closed BruteForce::withoutNet(Closed closed, Vertex vertex) const
{
    Closed unguarded;
    for (const Joint& joint : circuit_.joints)
        unguarded.push_back(joint.guard.always());
    const Nets nets = netsOf(circuit_, unguarded);
    for (std::size_t j = 0; j < closed.size(); ++j)
        if (nets[circuit_.joints[j].a] == nets[vertex] || nets[circuit_.joints[j].b] == nets[vertex])
            closed[j] = false;
    return closed;
}

BruteVerdict BruteForce::joined(Vertex x, Vertex y, const Joints& without) const
{
    return allJoined({{x, y}}, without);
}

BruteVerdict BruteForce::allJoined(const Pairs& pairs, const Joints& without) const
{
    const auto isJoined = [&](const Closed& closed, const Questions::Pair& pair) {
        const Nets nets = netsOf(circuit_, pair.avoiding ? withoutNet(closed, *pair.avoiding) : closed);
        return nets[pair.x] == nets[pair.y];
    };
    const auto areJoined = [&](const Closed& all) {
        const Closed closed = withoutJoints(all, without);
        return std::all_of(pairs.begin(), pairs.end(),
                           [&](const Questions::Pair& pair) { return isJoined(closed, pair); });
    };
    OverPositions over;
    for (const Position& position : positions_)
        over.push_back(areJoined(closedIn(circuit_, position)));
    return answered(over, happens_, [&](const Cube& cube) { return areJoined(closedUnder(circuit_, cube)); });
}

bool BruteForce::namesLiveness(const Cube& cube, std::uint32_t feed) const
{
    const Guard& live = circuit_.feeds[feed].live;
    for (const ThrowAt& at : cube)
        for (const Term& term : live.anyOf)
            for (const Atom& atom : term)
                if (atom.moved == at.moved)
                    return implied(cube, live);
    return true;
}

BruteVerdict BruteForce::shorted(std::uint32_t feed) const
{
    return answered(shorted_[feed], both(happens_, live_[feed]), [&](const Cube& cube) {
        return namesLiveness(cube, feed) &&
               polesMeet(circuit_, netsOf(circuit_, closedUnder(circuit_, cube)), circuit_.feeds[feed]);
    });
}

BruteVerdict BruteForce::returnedVia(std::uint32_t element, std::uint32_t feed, Direction direction) const
{
    const OverPositions &forward = forward_[element][feed], &reverse = reverse_[element][feed];
    OverPositions over(positions_.size()), whereLive(positions_.size());
    for (std::size_t p = 0; p < positions_.size(); ++p) {
        over[p] = (direction != Direction::Reverse && forward[p]) ||
                  (direction != Direction::Forward && reverse[p]);
        whereLive[p] = over[p] || !live_[feed][p];
    }
    const OverPositions asked = both(happens_, live_[feed]);
    BruteVerdict verdict{answerOver(over, asked), {}};
    if (verdict.answer == Answer::Never)
        return verdict;
    const OverCubes every = everyCompletion(whereLive), some = someCompletion(both(over, asked));
    verdict.cubes = fewest([&](CubeNumber number) {
        return every[number] && some[number] && namesLiveness(cubeAt(number), feed);
    });
    return verdict;
}

BruteVerdict BruteForce::returned(std::uint32_t element) const
{
    const Direction direction = circuit_.elements[element].polarised ? Direction::Forward : Direction::Either;
    BruteVerdict verdict;
    for (std::uint32_t feed = 0; feed < circuit_.feeds.size(); ++feed) {
        const BruteVerdict via = returnedVia(element, feed, direction);
        verdict.answer = std::max(verdict.answer, via.answer); // never, some, always
        verdict.cubes.insert(verdict.cubes.end(), via.cubes.begin(), via.cubes.end());
    }
    std::size_t least = std::numeric_limits<std::size_t>::max();
    for (const Cube& cube : verdict.cubes)
        least = std::min(least, cube.size());
    std::erase_if(verdict.cubes, [&](const Cube& cube) { return cube.size() > least; });
    std::sort(verdict.cubes.begin(), verdict.cubes.end());
    verdict.cubes.erase(std::unique(verdict.cubes.begin(), verdict.cubes.end()), verdict.cubes.end());
    return verdict;
}

Answer BruteForce::alwaysReturnedVia(std::uint32_t element, std::uint32_t feed) const
{
    return returnedVia(element, feed,
                       circuit_.elements[element].polarised ? Direction::Forward : Direction::Either)
        .answer;
}

BruteVerdict BruteForce::operated(std::uint32_t input) const
{
    return answered(operated_[input], happens_, [&](const Cube& cube) {
        return inputCloses(circuit_, netsOf(circuit_, closedUnder(circuit_, cube)), circuit_.inputs[input]);
    });
}

bool BruteForce::joinedIn(const Position& position, Vertex x, Vertex y) const
{
    const Nets nets = netsOf(circuit_, closedIn(circuit_, position));
    return nets[x] == nets[y];
}

bool BruteForce::operatedIn(const Position& position, std::uint32_t input) const
{
    return operated_[input][numberOf(position)];
}

bool BruteForce::returnedIn(const Position& position, std::uint32_t element) const
{
    return returned_[element][numberOf(position)];
}

bool BruteForce::shortedIn(const Position& position, std::uint32_t feed) const
{
    return shorted_[feed][numberOf(position)];
}

// ---- What the circuit does by itself

Position BruteForce::next(const Position& now, const Position& fixed) const
{
    Position next = now;
    for (const Drive& drive : circuit_.drives) {
        if (!isPlainOrFollows(drive))
            continue;
        const MovedOperator& moved = circuit_.operators[drive.moved];
        const bool goesItself = drive.manner == Drive::Manner::Plain || drive.isSensing;
        const ThrowIndex fed = goesItself ? pulledIn(moved) : fixed[drive.moved];
        next[drive.moved] = fedIn(numberOf(now), drive) ? fed : moved.unpowered;
    }
    return next;
}

Position BruteForce::nextOneByOne(Position now, const Position& fixed) const
{
    for (const Drive& drive : circuit_.drives)
        now[drive.moved] = next(now, fixed)[drive.moved];
    return now;
}

BruteForce::Run BruteForce::run(const Position& fixed,
                                const std::function<Position(const Position&)>& step) const
{
    Position now = fixed;
    for (const Drive& drive : circuit_.drives)
        if (isPlainOrFollows(drive))
            now[drive.moved] = circuit_.operators[drive.moved].unpowered;
    std::vector<Position> been;
    for (;;) {
        const auto before = std::find(been.begin(), been.end(), now);
        if (before != been.end())
            return {{}, {before, been.end()}};
        been.push_back(now);
        const Position after = step(now);
        if (after == now)
            return {now, {}};
        now = after;
    }
}

std::optional<Position> BruteForce::settled(Position fixed) const
{
    const Run together = run(fixed, [&](const Position& now) { return next(now, fixed); });
    if (together.settled)
        return together.settled;
    return run(fixed, [&](const Position& now) { return nextOneByOne(now, fixed); }).settled;
}

// What coils have no say in: a position that can happen, with all coils let go.
BruteForce::OverPositions BruteForce::withCoilsLetGo() const
{
    OverPositions asked(positions_.size(), 0);
    for (std::size_t p = 0; p < positions_.size(); ++p) {
        Position letGo = positions_[p];
        for (const Drive& drive : circuit_.drives)
            if (drive.manner == Drive::Manner::Plain)
                letGo[drive.moved] = circuit_.operators[drive.moved].unpowered;
        if (happens_[p])
            asked[numberOf(letGo)] = true;
    }
    return asked;
}

// Nothing has moved that can't.
bool BruteForce::isWithinReach(const Position& position) const
{
    return std::all_of(circuit_.drives.begin(), circuit_.drives.end(), [&](const Drive& drive) {
        return able_[drive.moved] || position[drive.moved] == circuit_.operators[drive.moved].unpowered;
    });
}

bool BruteForce::namesACoil(const Cube& cube) const
{
    return std::any_of(cube.begin(), cube.end(), [&](const ThrowAt& at) {
        return std::any_of(circuit_.drives.begin(), circuit_.drives.end(), [&](const Drive& drive) {
            return drive.moved == at.moved && drive.manner == Drive::Manner::Plain;
        });
    });
}

// It never settles either way, and this operator moves in what comes round one by one.
bool BruteForce::buzzesFrom(const Position& fixed, MovedIndex moved) const
{
    if (settled(fixed))
        return false;
    const Run run = this->run(fixed, [&](const Position& now) { return nextOneByOne(now, fixed); });
    return std::any_of(run.round.begin(), run.round.end(),
                       [&](const Position& position) { return position[moved] != run.round.front()[moved]; });
}

BruteVerdict BruteForce::buzzes(std::uint32_t drive) const
{
    const OverPositions asked = withCoilsLetGo();
    OverPositions over(positions_.size()), overOrCannotBe(positions_.size());
    for (std::size_t p = 0; p < positions_.size(); ++p) {
        over[p] = buzzesFrom(positions_[p], circuit_.drives[drive].moved);
        overOrCannotBe[p] = over[p] || !isWithinReach(positions_[p]);
    }
    BruteVerdict verdict{answerOver(over, asked), {}};
    if (verdict.answer == Answer::Never)
        return verdict;
    const OverCubes every = everyCompletion(overOrCannotBe), some = someCompletion(asked);
    verdict.cubes = fewest(
        [&](CubeNumber number) { return every[number] && some[number] && !namesACoil(cubeAt(number)); });
    return verdict;
}

} // namespace doorloom
