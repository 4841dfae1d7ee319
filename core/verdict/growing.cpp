#include "verdict/inside.h"

#include <algorithm>
#include <limits>

// Questions that grow as joints close: joined, shorted, operated. Searched part by part, the fewest throws first.
namespace doorloom {

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

} // namespace

Region Questions::Inside::regionOfInput(std::uint32_t number, double resistorsUpToOhms) const
{
    const DryInput& input = circuit.inputs[number];
    return nets.regionOf({input.terminal, input.reference}, {input.terminal}, {input.reference},
                         {.resistorsUpToOhms = resistorsUpToOhms});
}

bool Questions::Inside::operatedIn(const Position& position, std::uint32_t number) const
{
    const DryInput& input = circuit.inputs[number];
    if (nets.netOf(input.terminal) == nets.netOf(input.reference))
        return true;
    return endsWithin(regionOfInput(number), circuit, input.closedBelowOhms,
                      [&](const Guard& guard) { return doorloom::holds(guard, position); });
}

Verdict Questions::Inside::operated(std::uint32_t number, Budget& steps)
{
    const DryInput& input = circuit.inputs[number];
    if (nets.netOf(input.terminal) == nets.netOf(input.reference))
        return alwaysYes(1);
    return growing(
        Nets::parallelParts(regionOfInput(number), circuit),
        [&](const Region& part, const auto& closed) { return endsWithin(part, circuit, input.closedBelowOhms, closed); },
        {}, steps);
}

} // namespace doorloom
