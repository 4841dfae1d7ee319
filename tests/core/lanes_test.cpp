#include "core/brute.h"
#include "core/randomcircuit.h"
#include "verdict/lanes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace doorloom {
namespace {

std::vector<MovedIndex> allOperators(const Circuit& circuit)
{
    std::vector<MovedIndex> operators(circuit.operators.size());
    std::iota(operators.begin(), operators.end(), 0u);
    return operators;
}

LaneNet wholeNet(const Circuit& circuit, const Lanes& lanes)
{
    LaneNet net{circuit.vertices, {}};
    for (const Joint& joint : circuit.joints)
        net.joints.push_back({joint.a, joint.b, lanes.holding(joint.guard)});
    return net;
}

// One answer a position, the first operator counting fastest.
std::vector<bool> joinedByLanes(const Circuit& circuit, Vertex x, Vertex y)
{
    std::vector<bool> answers;
    Lanes lanes(circuit, allOperators(circuit));
    std::vector<std::uint64_t> room;
    std::uint64_t steps = 0;
    do {
        const std::uint64_t joined = wholeNet(circuit, lanes).joined(x, y, lanes.all(), room, steps);
        EXPECT_EQ(joined & ~lanes.all(), 0u);
        for (unsigned lane = 0; lane < lanes.lanes(); ++lane)
            answers.push_back((joined >> lane) & 1u);
    } while (lanes.next());
    return answers;
}

std::vector<bool> joinedByBruteForce(const BruteForce& brute, Vertex x, Vertex y)
{
    std::vector<bool> answers;
    for (const Position& position : brute.positions())
        answers.push_back(brute.joinedIn(position, x, y));
    return answers;
}

TEST(Lanes, AnswerForEveryPositionAsTheBruteForceDoes)
{
    std::size_t positions = 0, joined = 0;
    for (std::uint32_t seed = 1; seed <= 400; ++seed) {
        const Circuit circuit = randomCircuit(seed);
        const BruteForce brute(circuit);
        for (Vertex x = 0; x + 1 < circuit.vertices; x += 2) {
            const Vertex y = (x + 1 + seed % (circuit.vertices - 1)) % circuit.vertices;
            const std::vector<bool> answers = joinedByLanes(circuit, x, y);
            ASSERT_EQ(answers, joinedByBruteForce(brute, x, y)) << "SEED=" << seed << ": " << x << ", " << y;
            positions += answers.size();
            joined += static_cast<std::size_t>(std::count(answers.begin(), answers.end(), true));
        }
    }
    EXPECT_GT(joined, positions / 10);
    EXPECT_LT(joined, positions * 9 / 10);
}

} // namespace
} // namespace doorloom
