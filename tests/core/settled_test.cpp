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

const Guard always;

void join(Circuit& circuit, Vertex a, Vertex b, const Guard& guard)
{
    circuit.joints.push_back({a, b, guard, 0});
}

Guard bothOf(const Guard& one, const Guard& other)
{
    Guard guard = one;
    guard.anyOf[0].push_back(other.anyOf[0][0]);
    return guard;
}

template <class Judge> class Settled : public testing::Test {
};
using Judges = testing::Types<BruteForce, Questions>;
TYPED_TEST_SUITE(Settled, Judges);

TYPED_TEST(Settled, PullsRelaysInOneAfterAnother)
{
    Circuit circuit = relays(2);
    join(circuit, 0, 2, when(0, 1));
    join(circuit, 0, 3, when(1, 1));
    const TypeParam judge(circuit);

    EXPECT_EQ(judge.settled({1, 0, 0}), (Position{1, 1, 1}));
    EXPECT_EQ(judge.settled({0, 1, 1}), (Position{0, 0, 0})); // what coils were given does not count
    EXPECT_EQ(judge.buzzes(0).answer, Answer::Never);
}

TYPED_TEST(Settled, FindsTheRelayThatPullsInThroughItsOwnRestContact)
{
    Circuit circuit = relays(1);
    join(circuit, 0, 2, bothOf(when(0, 1), when(1, 0)));
    const TypeParam judge(circuit);

    EXPECT_EQ(judge.settled({0, 0}), (Position{0, 0}));
    EXPECT_FALSE(judge.settled({1, 0}));
    EXPECT_EQ(judge.buzzes(0).answer, Answer::Some);
    EXPECT_EQ(judge.buzzes(0).cubes, (std::vector<Cube>{{{0, 1}}}));
}

TYPED_TEST(Settled, FindsTheCoilWhoseContactTakesItsOwnSupplyAway)
{
    Circuit circuit = relays(1);
    join(circuit, 0, 2, always);
    circuit.feeds[0].live = bothOf(when(0, 1), when(1, 0));
    const TypeParam judge(circuit);

    EXPECT_FALSE(judge.settled({1, 0}));
    EXPECT_EQ(judge.buzzes(0).answer, Answer::Some);
    EXPECT_EQ(judge.buzzes(0).cubes, (std::vector<Cube>{{{0, 1}}}));
}

TYPED_TEST(Settled, LetsOneOfTwoRacingRelaysWin)
{
    Circuit circuit = relays(2);
    join(circuit, 0, 2, bothOf(when(0, 1), when(2, 0)));
    join(circuit, 0, 3, bothOf(when(0, 1), when(1, 0)));
    const TypeParam judge(circuit);

    EXPECT_EQ(judge.settled({1, 0, 0}), (Position{1, 1, 0}));
    EXPECT_EQ(judge.buzzes(0).answer, Answer::Never);
}

TYPED_TEST(Settled, FollowsASensorOnlyWhileItIsPowered)
{
    Circuit circuit = relays(1);
    circuit.operators[1].throws = 3;
    circuit.drives[0].manner = Drive::Manner::Follows;
    join(circuit, 0, 2, when(0, 1));
    const TypeParam judge(circuit);

    EXPECT_EQ(judge.settled({1, 2}), (Position{1, 2}));
    EXPECT_EQ(judge.settled({0, 2}), (Position{0, 0}));
}

// Away whenever it is powered: by what its device senses …
Circuit sensing()
{
    Circuit circuit = relays(1);
    join(circuit, 0, 2, always);
    circuit.drives[0].manner = Drive::Manner::Follows;
    circuit.drives[0].isSensing = true;
    circuit.drives[0].powered = when(0, 1);
    return circuit;
}

// … or while a dry input is closed.
Circuit withClosedInput()
{
    Circuit circuit = sensing();
    circuit.drives[0].powered = {};
    const Vertex terminal = circuit.vertices++, reference = circuit.vertices++;
    circuit.inputs.push_back({.terminal = terminal, .reference = reference, .closedBelowOhms = 500});
    join(circuit, terminal, reference, when(0, 1));
    circuit.drives[0].closedInput = 0;
    return circuit;
}

TEST(Following, IsAwayExactlyWhileItSensesOrItsInputIsClosed)
{
    for (const Circuit& circuit : {sensing(), withClosedInput()}) {
        const Questions ask(circuit);
        EXPECT_TRUE(ask.canMove(1));
        EXPECT_EQ(ask.settled({1, 0}), (Position{1, 1}));
        EXPECT_EQ(ask.settled({0, 1}), (Position{0, 0}));
        EXPECT_TRUE(ask.canHappen({1, 1}));
        EXPECT_TRUE(ask.canHappen({1, 0})); // dead, or not yet
        EXPECT_FALSE(ask.canHappen({0, 1}));
        EXPECT_EQ(ask.positionWith({{1, 1}}), (Position{1, 1}));
        EXPECT_FALSE(ask.positionWith({{0, 0}, {1, 1}}));
        EXPECT_EQ(ask.settled({1, 0}, {1}), (Position{1, 0})) << "what is dead stays so";
    }
}

TEST(Following, NeverMovesWhereItsInputCannotBeClosed)
{
    Circuit circuit = withClosedInput();
    circuit.joints.pop_back();
    EXPECT_FALSE(Questions(circuit).canMove(1));
}

TEST(HeldCircuit, HasNoGuardThatNamesTheHeldOperator)
{
    Circuit circuit = relays(1);
    join(circuit, 0, 2, bothOf(when(0, 1), when(1, 0)));
    join(circuit, 0, 1, when(0, 0));
    const Circuit pressed = held(circuit, {{0, 1}});
    EXPECT_EQ(pressed.joints[pressed.joints.size() - 2].guard, when(1, 0));
    EXPECT_TRUE(pressed.joints.back().guard.anyOf.empty()); // never
    EXPECT_TRUE(held(circuit, {{0, 0}}).joints.back().guard.always());
}

} // namespace
} // namespace doorloom
