#include "core/brute.h"
#include "core/randomcircuit.h"

#include <gtest/gtest.h>

// Circuits small enough to be worked by hand: the brute force and the search must both get them right.
namespace doorloom {
namespace {

Guard when(MovedIndex moved, ThrowIndex thrown)
{
    return {{{{moved, 1u << thrown}}}};
}

struct Sketch {
    Circuit circuit;

    Vertex vertex() { return circuit.vertices++; }
    MovedIndex moved(ThrowIndex throws = 2)
    {
        circuit.operators.push_back({throws, 0, 0});
        return static_cast<MovedIndex>(circuit.operators.size() - 1);
    }
    void join(Vertex a, Vertex b, Guard guard = {}) { circuit.joints.push_back({a, b, std::move(guard), 0}); }
    std::uint32_t feed(Vertex plus, Vertex minus, Millivolts highest = 27600, Guard live = {})
    {
        Feed feed;
        feed.plus = plus;
        feed.minus = minus;
        feed.highest = highest;
        feed.live = std::move(live);
        circuit.feeds.push_back(feed);
        return static_cast<std::uint32_t>(circuit.feeds.size() - 1);
    }
    std::uint32_t element(Vertex a, Vertex b, ElementKind kind = ElementKind::Load, double ohms = 0)
    {
        circuit.elements.push_back({a, b, kind, false, ohms, 0});
        return static_cast<std::uint32_t>(circuit.elements.size() - 1);
    }
    std::uint32_t polarised(Vertex plus, Vertex minus)
    {
        const std::uint32_t number = element(plus, minus);
        circuit.elements[number].polarised = true;
        return number;
    }
    std::uint32_t coil(Vertex a, Vertex b, MovedIndex moved)
    {
        const std::uint32_t number = element(a, b);
        Drive drive;
        drive.moved = moved;
        drive.load = number;
        circuit.drives.push_back(drive);
        return number;
    }
};

using Cubes = std::vector<Cube>;

template <class Judge> class HandWorked : public testing::Test {
};
using Judges = testing::Types<BruteForce, Questions>;
TYPED_TEST_SUITE(HandWorked, Judges);

TYPED_TEST(HandWorked, FindsTheShortThroughTwoContactsInSeries) // trap a
{
    Sketch s;
    const Vertex plus = s.vertex(), x = s.vertex(), minus = s.vertex();
    const MovedIndex k1 = s.moved(), k2 = s.moved();
    s.feed(plus, minus);
    s.join(plus, x, when(k1, 1));
    s.join(x, minus, when(k2, 1));

    const auto verdict = TypeParam(s.circuit).shorted(0);

    EXPECT_EQ(verdict.answer, Answer::Some);
    EXPECT_EQ(verdict.cubes, (Cubes{{{k1, 1}, {k2, 1}}}));
}

TYPED_TEST(HandWorked, KnowsThatOneRelayIsNotInAndAtRestTogether) // trap b
{
    Sketch s;
    const Vertex plus = s.vertex(), x = s.vertex(), minus = s.vertex();
    const MovedIndex k1 = s.moved();
    s.feed(plus, minus);
    s.join(plus, x, when(k1, 1));
    s.join(x, minus, when(k1, 0));

    EXPECT_EQ(TypeParam(s.circuit).shorted(0).answer, Answer::Never);
    EXPECT_EQ(TypeParam(s.circuit).joined(plus, minus).answer, Answer::Never);
    EXPECT_EQ(TypeParam(s.circuit).joined(plus, x).cubes, (Cubes{{{k1, 1}}}));
}

TYPED_TEST(HandWorked, ContractsNetsBeforeItLooksForCycles) // trap c
{
    Sketch s;
    const Vertex plus = s.vertex(), tied = s.vertex(), minus = s.vertex(), z = s.vertex();
    s.feed(plus, minus);
    s.join(plus, tied);
    const std::uint32_t dead = s.element(plus, z), lit = s.element(tied, minus);
    s.element(z, tied, ElementKind::Resistor, 1000);

    const TypeParam judge(s.circuit);

    EXPECT_EQ(judge.returned(dead).answer, Answer::Never);
    EXPECT_EQ(judge.returned(lit).answer, Answer::Always);
    EXPECT_EQ(judge.returned(lit).cubes, Cubes{Cube{}});
}

TYPED_TEST(HandWorked, TriesAContactOfTheSourcesOwnMainsOnBattery) // trap f
{
    Sketch s;
    const Vertex plus = s.vertex(), minus = s.vertex();
    const MovedIndex mains = s.moved(), battery = s.moved(); // 0: lost, flat
    s.feed(plus, minus, 27600, Guard{{{{mains, 2}}, {{battery, 2}}}});
    s.join(plus, minus, when(mains, 0));

    const auto verdict = TypeParam(s.circuit).shorted(0);

    EXPECT_EQ(verdict.answer, Answer::Some);
    EXPECT_EQ(verdict.cubes, (Cubes{{{mains, 0}, {battery, 1}}}));
}

TYPED_TEST(HandWorked, TriesTheThrowBetweenOfAMakeBeforeBreak) // trap g
{
    Sketch s;
    const Vertex plus = s.vertex(), minus = s.vertex(), common = s.vertex();
    const MovedIndex selector = s.moved(3);
    s.feed(plus, minus);
    s.join(plus, common, Guard{{{{selector, 0b011}}}});
    s.join(minus, common, Guard{{{{selector, 0b110}}}});
    const std::uint32_t lamp = s.element(common, minus);

    const TypeParam judge(s.circuit);

    EXPECT_EQ(judge.shorted(0).cubes, (Cubes{{{selector, 1}}}));
    EXPECT_EQ(judge.returned(lamp).cubes, (Cubes{{{selector, 0}}})); // between: shorted, not fed
}

TYPED_TEST(HandWorked, AddsUpTheDropsOfAChainOfDiodes) // trap h
{
    const auto chain = [](std::uint32_t diodes, Millivolts highest) {
        Sketch s;
        const Vertex plus = s.vertex(), minus = s.vertex();
        s.feed(plus, minus, highest);
        Vertex last = plus;
        for (std::uint32_t i = 1; i <= diodes; ++i) {
            const Vertex next = i == diodes ? minus : s.vertex();
            s.circuit.diodes.push_back({last, next, 700, 0});
            last = next;
        }
        return TypeParam(s.circuit).shorted(0).answer;
    };

    EXPECT_EQ(chain(20, 13800), Answer::Never);  // 14.0 V
    EXPECT_EQ(chain(19, 13800), Answer::Always); // 13.3 V
    EXPECT_EQ(chain(20, 14000), Answer::Never);  // no volts are left to push
}

struct TwoStrikes {
    Sketch s;
    std::uint32_t one = 0, other = 0;
    MovedIndex k1 = 0, k2 = 0;
};

TwoStrikes strikesOnACutReturn(bool ofOneSource)
{
    TwoStrikes t;
    const Vertex minus = t.s.vertex(), plus = t.s.vertex(), on1 = t.s.vertex(), on2 = t.s.vertex(),
                 cut = t.s.vertex();
    const Vertex plus2 = ofOneSource ? plus : t.s.vertex();
    t.k1 = t.s.moved();
    t.k2 = t.s.moved();
    t.s.feed(plus, minus, 13800);
    if (!ofOneSource)
        t.s.feed(plus2, minus, 27600);
    t.s.join(plus, on1, when(t.k1, 1));
    t.s.join(plus2, on2, when(t.k2, 1));
    t.one = t.s.element(on1, cut);
    t.other = t.s.element(on2, cut);
    return t;
}

TYPED_TEST(HandWorked, FeedsNoLoadThroughAnotherLoad) // traps i1, i2
{
    for (const bool ofOneSource : {true, false}) {
        const TwoStrikes t = strikesOnACutReturn(ofOneSource);
        const TypeParam judge(t.s.circuit);
        EXPECT_EQ(judge.returned(t.one).answer, Answer::Never);
        EXPECT_EQ(judge.returned(t.other).answer, Answer::Never);
    }
}

TYPED_TEST(HandWorked, FeedsBothLoadsOnceTheCutReturnIsMended)
{
    TwoStrikes t = strikesOnACutReturn(true);
    t.s.join(4, 0); // the cut, and minus

    const TypeParam judge(t.s.circuit);

    EXPECT_EQ(judge.returned(t.one).cubes, (Cubes{{{t.k1, 1}}}));
    EXPECT_EQ(judge.returned(t.other).cubes, (Cubes{{{t.k2, 1}}}));
}

TYPED_TEST(HandWorked, OperatesADryInputWithoutCallingItShorted) // trap j
{
    Sketch s;
    const Vertex plus = s.vertex(), minus = s.vertex(), input = s.vertex();
    const MovedIndex button = s.moved();
    s.feed(plus, minus);
    s.circuit.inputs.push_back({input, minus, 500, false, false, false, 0});
    s.element(input, minus, ElementKind::Wetting);
    s.join(input, minus, when(button, 1));

    const TypeParam judge(s.circuit);

    EXPECT_EQ(judge.operated(0).cubes, (Cubes{{{button, 1}}}));
    EXPECT_EQ(judge.shorted(0).answer, Answer::Never);
}

TYPED_TEST(HandWorked, ClosesAnInputThroughResistorsInsideItsBandOnly)
{
    const auto operatedThrough = [](double ohms) {
        Sketch s;
        const Vertex input = s.vertex(), middle = s.vertex(), reference = s.vertex();
        s.circuit.inputs.push_back({input, reference, 500, false, false, false, 0});
        s.element(input, middle, ElementKind::Resistor, 200);
        s.element(reference, middle, ElementKind::Resistor, ohms);
        return TypeParam(s.circuit).operated(0).answer;
    };

    EXPECT_EQ(operatedThrough(300), Answer::Always);
    EXPECT_EQ(operatedThrough(301), Answer::Never);
}

TYPED_TEST(HandWorked, JoinsNoPlusesOverACommonMinus) // trap l
{
    Sketch s;
    const Vertex plus1 = s.vertex(), minus1 = s.vertex(), plus2 = s.vertex(), minus2 = s.vertex();
    s.feed(plus1, minus1, 13800);
    s.feed(plus2, minus2, 27600);
    s.join(minus1, minus2);
    const std::uint32_t lamp = s.element(plus1, minus1);

    const TypeParam judge(s.circuit);

    EXPECT_EQ(judge.joined(plus1, plus2).answer, Answer::Never);
    EXPECT_EQ(judge.allJoined({{minus1, minus2}, {plus1, plus2}}).answer, Answer::Never);
    EXPECT_EQ(judge.shorted(0).answer, Answer::Never);
    EXPECT_EQ(judge.shorted(1).answer, Answer::Never);
    EXPECT_EQ(judge.alwaysReturnedVia(lamp, 0), Answer::Always);
    EXPECT_EQ(judge.alwaysReturnedVia(lamp, 1), Answer::Never);
}

TYPED_TEST(HandWorked, TurnsAPolarisedLoadRound)
{
    Sketch s;
    const Vertex plus = s.vertex(), minus = s.vertex();
    s.feed(plus, minus);
    const std::uint32_t lamp = s.polarised(minus, plus);

    const TypeParam judge(s.circuit);

    EXPECT_EQ(judge.returned(lamp).answer, Answer::Never);
    EXPECT_EQ(judge.returnedVia(lamp, 0, Direction::Reverse).answer, Answer::Always);
    EXPECT_EQ(judge.returnedVia(lamp, 0, Direction::Either).answer, Answer::Always);
}

TYPED_TEST(HandWorked, StacksAidingSourcesAlone)
{
    const auto acrossBoth = [](bool aiding) {
        Sketch s;
        const Vertex top = s.vertex(), middle = s.vertex(), bottom = s.vertex();
        s.feed(top, middle);
        aiding ? s.feed(middle, bottom) : s.feed(bottom, middle);
        const std::uint32_t load = s.polarised(top, bottom);
        return TypeParam(s.circuit).returned(load).answer;
    };

    EXPECT_EQ(acrossBoth(true), Answer::Always);
    EXPECT_EQ(acrossBoth(false), Answer::Never);
}

TYPED_TEST(HandWorked, NeedsTheContactOfTheLoadClosedAndItsBypassOpen)
{
    Sketch s;
    const Vertex plus = s.vertex(), a = s.vertex(), minus = s.vertex();
    const MovedIndex feeds = s.moved(), bypasses = s.moved();
    s.feed(plus, minus);
    s.join(plus, a, when(feeds, 1));
    const std::uint32_t load = s.element(a, minus);
    s.join(a, minus, when(bypasses, 1));

    const auto verdict = TypeParam(s.circuit).returned(load);

    EXPECT_EQ(verdict.answer, Answer::Some);
    EXPECT_EQ(verdict.cubes, (Cubes{{{feeds, 1}, {bypasses, 0}}}));
}

// Two relays, each pulled in through a switch and the other's contact that is closed at rest; their contacts
// in series join the poles.
struct Interlock {
    Sketch s;
    MovedIndex ks1 = 0, ks2 = 0, r1 = 0, r2 = 0;
    Vertex plus = 0, minus = 0, between = 0;
};

Interlock interlock()
{
    Interlock i;
    i.plus = i.s.vertex();
    i.minus = i.s.vertex();
    i.between = i.s.vertex();
    i.ks1 = i.s.moved();
    i.ks2 = i.s.moved();
    i.r1 = i.s.moved();
    i.r2 = i.s.moved();
    i.s.feed(i.plus, i.minus);
    const Vertex on1 = i.s.vertex(), on2 = i.s.vertex(), a1 = i.s.vertex(), a2 = i.s.vertex();
    i.s.join(i.plus, on1, when(i.ks1, 1));
    i.s.join(on1, a1, when(i.r2, 0));
    i.s.join(i.plus, on2, when(i.ks2, 1));
    i.s.join(on2, a2, when(i.r1, 0));
    i.s.coil(a1, i.minus, i.r1);
    i.s.coil(a2, i.minus, i.r2);
    i.s.join(i.plus, i.between, when(i.r1, 1));
    i.s.join(i.between, i.minus, when(i.r2, 1));
    return i;
}

TYPED_TEST(HandWorked, LetsNoInterlockBeInOnBothSides)
{
    const Interlock i = interlock();

    const TypeParam judge(i.s.circuit);

    EXPECT_TRUE(judge.canMove(i.r1));
    EXPECT_TRUE(judge.canMove(i.r2));
    EXPECT_FALSE(judge.canHappen({1, 1, 1, 1}));
    EXPECT_TRUE(judge.canHappen({1, 1, 0, 1}));
    EXPECT_FALSE(judge.canHappen({1, 0, 0, 1}));
    EXPECT_EQ(judge.shorted(0).answer, Answer::Never);
    EXPECT_EQ(judge.joined(i.plus, i.between).cubes, (Cubes{{{i.r1, 1}}}));
}

TYPED_TEST(HandWorked, TrustsNoCoilThatOnlyItsOwnContactFeeds)
{
    Sketch s;
    const Vertex plus = s.vertex(), minus = s.vertex(), a = s.vertex();
    const MovedIndex relay = s.moved();
    s.feed(plus, minus);
    s.join(plus, a, when(relay, 1));
    const std::uint32_t coil = s.coil(a, minus, relay);

    EXPECT_FALSE(TypeParam(s.circuit).canMove(relay));
    EXPECT_EQ(TypeParam(s.circuit).returned(coil).answer, Answer::Never);

    const MovedIndex button = s.moved();
    s.join(plus, a, when(button, 1));

    EXPECT_TRUE(TypeParam(s.circuit).canMove(relay));
    EXPECT_TRUE(TypeParam(s.circuit).canHappen({1, 0})); // sealed in
    EXPECT_EQ(TypeParam(s.circuit).returned(coil).cubes, (Cubes{{{relay, 1}}, {{button, 1}}}));
}

TYPED_TEST(HandWorked, MovesLogicOnlyWhenItIsPoweredAndAsked)
{
    Sketch s;
    const Vertex plus = s.vertex(), minus = s.vertex(), input = s.vertex(), supplied = s.vertex();
    const MovedIndex k1 = s.moved(), button = s.moved();
    s.feed(plus, minus);
    const std::uint32_t logic = s.element(supplied, minus);
    s.circuit.inputs.push_back({input, minus, 500, false, false, false, 0});
    Drive drive;
    drive.moved = k1;
    drive.manner = Drive::Manner::Programmed;
    drive.load = logic;
    drive.dryInputs = {0};
    drive.needsInput = true;
    s.circuit.drives.push_back(drive);

    EXPECT_FALSE(TypeParam(s.circuit).canMove(k1)); // neither
    s.join(input, minus, when(button, 1));
    EXPECT_FALSE(TypeParam(s.circuit).canMove(k1)); // asked, not powered
    s.join(plus, supplied);
    EXPECT_TRUE(TypeParam(s.circuit).canMove(k1));
    EXPECT_TRUE(TypeParam(s.circuit).canHappen({1, 0})); // held after the button is let go
}

} // namespace
} // namespace doorloom
