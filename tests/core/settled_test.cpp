#include "core/brute.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

Guard when(MovedIndex moved, ThrowIndex thrown)
{
    return {{{{moved, 1u << thrown}}}};
}

// Vertex 0 is plus, 1 minus; the first operator is a hand's switch.
Circuit relays(std::uint32_t relays)
{
    Circuit circuit;
    circuit.vertices = 2 + relays;
    circuit.feeds.push_back({});
    circuit.feeds[0].plus = 0;
    circuit.feeds[0].minus = 1;
    circuit.operators.resize(1 + relays);
    for (std::uint32_t relay = 0; relay < relays; ++relay) {
        circuit.elements.push_back({2 + relay, 1, ElementKind::Load, false, 0, 0});
        Drive drive;
        drive.moved = 1 + relay;
        drive.load = relay;
        circuit.drives.push_back(drive);
    }
    return circuit;
}

Guard bothOf(const Guard& one, const Guard& other)
{
    Guard guard = one;
    guard.anyOf[0].push_back(other.anyOf[0][0]);
    return guard;
}

TEST(BruteSettled, PullsRelaysInOneAfterAnother)
{
    Circuit circuit = relays(2);
    circuit.joints.push_back({0, 2, when(0, 1), 0});
    circuit.joints.push_back({0, 3, when(1, 1), 0});
    const BruteForce brute(circuit);

    EXPECT_EQ(brute.settled({1, 0, 0}), (Position{1, 1, 1}));
    EXPECT_EQ(brute.settled({0, 1, 1}), (Position{0, 0, 0})); // what coils were given does not count
    EXPECT_EQ(brute.buzzes(0).answer, Answer::Never);
}

TEST(BruteSettled, FindsTheRelayThatPullsInThroughItsOwnRestContact)
{
    Circuit circuit = relays(1);
    circuit.joints.push_back({0, 2, bothOf(when(0, 1), when(1, 0)), 0});
    const BruteForce brute(circuit);

    EXPECT_EQ(brute.settled({0, 0}), (Position{0, 0}));
    EXPECT_FALSE(brute.settled({1, 0}));
    EXPECT_EQ(brute.buzzes(0).answer, Answer::Some);
    EXPECT_EQ(brute.buzzes(0).cubes, (std::vector<Cube>{{{0, 1}}}));
}

TEST(BruteSettled, LetsOneOfTwoRacingRelaysWin)
{
    Circuit circuit = relays(2);
    circuit.joints.push_back({0, 2, bothOf(when(0, 1), when(2, 0)), 0});
    circuit.joints.push_back({0, 3, bothOf(when(0, 1), when(1, 0)), 0});
    const BruteForce brute(circuit);

    EXPECT_EQ(brute.settled({1, 0, 0}), (Position{1, 1, 0}));
    EXPECT_EQ(brute.buzzes(0).answer, Answer::Never);
}

TEST(BruteSettled, FollowsASensorOnlyWhileItIsPowered)
{
    Circuit circuit = relays(1);
    circuit.operators[1].throws = 3;
    circuit.drives[0].manner = Drive::Manner::Follows;
    circuit.joints.push_back({0, 2, when(0, 1), 0});
    const BruteForce brute(circuit);

    EXPECT_EQ(brute.settled({1, 2}), (Position{1, 2}));
    EXPECT_EQ(brute.settled({0, 2}), (Position{0, 0}));
}

} // namespace
} // namespace doorloom
