#include "solve/alternating.h"
#include "core/random.h"
#include "solve/linear.h"
#include "solve/network.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace doorloom {
namespace {

// ---- The same circuits solved again, densely: volts of all vertices and amperes of all sources as unknowns, Gauss with
// pivots. Written without anything of core/solve.

struct Dense {
    std::vector<double> volts, sources, diodes;
};

// Null: the matrix is singular (something floats, or sources lie side by side).
std::optional<std::vector<double>> gauss(std::vector<std::vector<double>> rows)
{
    const std::size_t n = rows.size();
    for (std::size_t column = 0; column < n; ++column) {
        std::size_t pivot = column;
        for (std::size_t row = column; row < n; ++row)
            if (std::abs(rows[row][column]) > std::abs(rows[pivot][column]))
                pivot = row;
        if (std::abs(rows[pivot][column]) < 1e-11)
            return std::nullopt;
        std::swap(rows[pivot], rows[column]);
        for (std::size_t row = 0; row < n; ++row)
            if (row != column) {
                const double times = rows[row][column] / rows[column][column];
                for (std::size_t i = column; i <= n; ++i)
                    rows[row][i] -= times * rows[column][i];
            }
    }
    std::vector<double> solution(n);
    for (std::size_t i = 0; i < n; ++i)
        solution[i] = rows[i][n] / rows[i][i];
    return solution;
}

// Vertex 0 stands at nothing. Joints, sources and conducting diodes are volts that are held, each with its amperes.
std::optional<Dense> solvedDensely(const Network& net, const std::vector<char>& conducts)
{
    struct Held {
        Vertex a, b;
        double volts;
    };
    std::vector<Held> held; // current runs from b to a inside: out of a
    for (const auto& [plus, minus, volts] : net.sources)
        held.push_back({plus, minus, volts});
    for (std::size_t i = 0; i < net.diodes.size(); ++i)
        if (conducts[i])
            held.push_back({net.diodes[i].anode, net.diodes[i].cathode, net.diodes[i].drop});
    for (const auto& [a, b, ohms] : net.resistors)
        if (ohms == 0)
            held.push_back({a, b, 0});
    const std::size_t n = net.vertices - 1 + held.size();
    std::vector<std::vector<double>> rows(n, std::vector<double>(n + 1));
    const auto put = [&](Vertex row, std::size_t column, double value) {
        if (row > 0)
            rows[row - 1][column] += value;
    };
    for (const auto& [a, b, ohms] : net.resistors)
        if (ohms > 0)
            for (const auto& [one, other] : {std::pair(a, b), std::pair(b, a)}) {
                if (one > 0)
                    put(one, one - 1, 1 / ohms);
                if (other > 0)
                    put(one, other - 1, -1 / ohms);
            }
    for (std::size_t i = 0; i < held.size(); ++i) {
        const std::size_t column = net.vertices - 1 + i;
        put(held[i].a, column, -1);
        put(held[i].b, column, 1);
        if (held[i].a > 0)
            rows[column][held[i].a - 1] += 1;
        if (held[i].b > 0)
            rows[column][held[i].b - 1] -= 1;
        rows[column][n] = held[i].volts;
    }
    const auto solution = gauss(std::move(rows));
    if (!solution)
        return std::nullopt;
    Dense dense{std::vector<double>(net.vertices), {}, std::vector<double>(net.diodes.size())};
    std::copy(solution->begin(), solution->begin() + net.vertices - 1, dense.volts.begin() + 1);
    std::size_t next = net.vertices - 1;
    for (std::size_t i = 0; i < net.sources.size(); ++i)
        dense.sources.push_back((*solution)[next++]);
    for (std::size_t i = 0; i < net.diodes.size(); ++i)
        if (conducts[i])
            dense.diodes[i] = -(*solution)[next++];
    return dense;
}

// Every state of the diodes; the one that agrees with itself.
std::optional<Dense> byAllStates(const Network& net)
{
    for (unsigned states = 0; states < 1u << net.diodes.size(); ++states) {
        std::vector<char> conducts(net.diodes.size());
        for (std::size_t i = 0; i < conducts.size(); ++i)
            conducts[i] = (states >> i) & 1u;
        const auto dense = solvedDensely(net, conducts);
        bool agrees = dense.has_value();
        for (std::size_t i = 0; i < conducts.size() && agrees; ++i) {
            const auto& [anode, cathode, drop] = net.diodes[i];
            agrees = conducts[i] ? dense->diodes[i] >= 0 : dense->volts[anode] - dense->volts[cathode] <= drop;
        }
        if (agrees)
            return dense;
    }
    return std::nullopt;
}

Network someNetwork(Random& random, int diodes)
{
    Network net;
    net.vertices = static_cast<Vertex>(random.between(2, 9));
    const auto some = [&] { return static_cast<Vertex>(random.below(net.vertices)); };
    const int resistors = random.between(2, 14), sources = random.between(1, 2);
    for (int i = 0; i < resistors; ++i)
        net.resistors.push_back({some(), some(), random.oneIn(6) ? 0 : std::pow(10.0, random.between(-20, 40) / 10.0)});
    for (int i = 0; i < sources; ++i)
        net.sources.push_back({some(), some(), random.between(1, 30) * 1.0});
    for (int i = random.between(0, diodes); i > 0; --i)
        net.diodes.push_back({some(), some(), random.oneIn(3) ? 0 : 0.7});
    return net;
}

std::string inWords(const Network& net)
{
    std::string words;
    for (const auto& [a, b, ohms] : net.resistors)
        words += fmt::format("{}-{} {} ohm, ", a, b, ohms);
    for (const auto& [plus, minus, volts] : net.sources)
        words += fmt::format("{}+{} {} V, ", plus, minus, volts);
    for (const auto& [anode, cathode, drop] : net.diodes)
        words += fmt::format("{}>{} {} V, ", anode, cathode, drop);
    return words;
}

double close(double expected) { return 1e-6 * std::max(1.0, std::abs(expected)); }

// ---- Networks.

TEST(Solve, ReadsWhatADenseSolveOfTheSameCircuitReads)
{
    int compared = 0;
    forEachSeed(20'000, [&](Random& random) {
        const Network net = someNetwork(random, 0);
        const auto dense = solvedDensely(net, {});
        if (!dense)
            return;
        const Solution solution = solved(net);
        ASSERT_TRUE(solution.settled && solution.fighting.empty());
        for (Vertex vertex = 1; vertex < net.vertices; ++vertex) {
            const auto volts = solution.between(vertex, 0);
            ASSERT_TRUE(volts) << vertex;
            ASSERT_NEAR(*volts, dense->volts[vertex], close(dense->volts[vertex])) << vertex;
        }
        for (std::size_t i = 0; i < net.sources.size(); ++i)
            ASSERT_NEAR(solution.sources[i], dense->sources[i], close(dense->sources[i])) << i;
        ++compared;
    });
    fmt::print("{} compared\n", compared);
    EXPECT_GT(compared, 1000);
}

TEST(Solve, FindsTheStateOfDiodesThatAgreesWithItself)
{
    int compared = 0, conducting = 0;
    forEachSeed(40'000, [&](Random& random) {
        const Network net = someNetwork(random, 4);
        if (net.diodes.empty() || !solvedDensely(net, std::vector<char>(net.diodes.size())))
            return; // something hangs on diodes alone
        const auto dense = byAllStates(net);
        if (!dense)
            return;
        const Solution solution = solved(net);
        ASSERT_TRUE(solution.settled && solution.unlimited.empty()) << inWords(net);
        for (Vertex vertex = 1; vertex < net.vertices; ++vertex)
            ASSERT_NEAR(solution.between(vertex, 0).value(), dense->volts[vertex], 10 * close(dense->volts[vertex])) << vertex;
        for (double amperes : solution.diodes)
            conducting += amperes > 1e-6;
        ++compared;
    });
    fmt::print("{} compared, {} diodes conducting\n", compared, conducting);
    EXPECT_GT(compared, 1000);
    EXPECT_GT(conducting, 500);
}

// What flows into a vertex flows out of it, and a resistor carries its volts over its ohms.
TEST(Solve, LosesNoCurrent)
{
    forEachSeed(5'000, [&](Random& random) {
        const Network net = someNetwork(random, 5);
        const Solution solution = solved(net);
        if (!solution.settled || !solution.unlimited.empty())
            return;
        std::vector<double> out(net.vertices);
        double most = 1;
        const auto carry = [&](Vertex from, Vertex to, double amperes) {
            out[from] += amperes;
            out[to] -= amperes;
            most = std::max(most, std::abs(amperes));
        };
        for (std::size_t i = 0; i < net.resistors.size(); ++i)
            carry(net.resistors[i].a, net.resistors[i].b, solution.resistors[i]);
        for (std::size_t i = 0; i < net.sources.size(); ++i)
            carry(net.sources[i].minus, net.sources[i].plus, solution.sources[i]);
        for (std::size_t i = 0; i < net.diodes.size(); ++i) {
            carry(net.diodes[i].anode, net.diodes[i].cathode, solution.diodes[i]);
            EXPECT_GE(solution.diodes[i], -1e-6 * most);
        }
        for (Vertex vertex = 0; vertex < net.vertices; ++vertex)
            ASSERT_NEAR(out[vertex], 0, 1e-7 * most) << vertex;
    });
}

TEST(Solve, SaysFloatingWhereNothingFixesThePotential)
{
    Network net{4, {{1, 2, 100}}, {{1, 0, 24}}, {}, {}};
    const Solution solution = solved(net);
    EXPECT_DOUBLE_EQ(solution.between(2, 0).value(), 24); // a dead end
    EXPECT_FALSE(solution.between(3, 0));
}

TEST(Solve, LeavesOutSourcesThatFightAndDiodesThatNothingLimits)
{
    Network joined{3, {{0, 1, 0}, {1, 2, 10}}, {{1, 0, 24}, {2, 0, 12}}, {}, {}};
    const Solution one = solved(joined);
    EXPECT_EQ(one.fighting, std::vector<std::uint32_t>{0});
    EXPECT_NEAR(one.between(2, 1).value(), 12, 1e-12);

    Network apart{2, {}, {{1, 0, 24}, {1, 0, 12}}, {}, {}};
    EXPECT_EQ(solved(apart).fighting, std::vector<std::uint32_t>{1});

    Network chain{4, {}, {{1, 0, 12}}, {{1, 2, 0.7}, {2, 3, 0.7}, {3, 0, 0.7}}, {}};
    const Solution forward = solved(chain);
    EXPECT_TRUE(forward.settled);
    EXPECT_FALSE(forward.unlimited.empty());
    chain.sources[0].volts = 2;
    EXPECT_TRUE(solved(chain).unlimited.empty());
}

TEST(Solve, SharesWhatLiesSideBySide)
{
    Network net{3, {{1, 2, 0}, {1, 2, 0}, {2, 0, 10}}, {{1, 0, 20}, {1, 0, 20}}, {}, {}};
    const Solution solution = solved(net);
    EXPECT_NEAR(solution.resistors[0], 1, 1e-12);
    EXPECT_NEAR(solution.resistors[1], 1, 1e-12);
    EXPECT_NEAR(solution.sources[0], 1, 1e-12);
    EXPECT_NEAR(solution.sources[1], 1, 1e-12);
}

TEST(Solve, RectifiesThroughABridge)
{
    // Legs 1 and 2; plus 3, minus 4; 10 ohms between them.
    Network net{5, {{3, 4, 10}}, {{1, 2, 11.4}}, {{1, 3, 0.7}, {2, 3, 0.7}, {4, 1, 0.7}, {4, 2, 0.7}}, {}};
    EXPECT_NEAR(solved(net).between(3, 4).value(), 10, 1e-9);
    std::swap(net.sources[0].plus, net.sources[0].minus);
    EXPECT_NEAR(solved(net).between(3, 4).value(), 10, 1e-9);
    EXPECT_NEAR(solved(net).sources[0], 1, 1e-9);
}

// 12 W at the end of a line of 1 ohm, 24 V: U = (24 + √(24² − 4·12·1)) / 2.
TEST(Solve, CarriesConstantPowerAtTheHigherOfTwoSolutions)
{
    Network net{3, {{1, 2, 1}}, {{1, 0, 24}}, {}, {{2, 0, LoadLaw::ConstantPower, 12, 48, 1}}};
    const Solution solution = solved(net);
    EXPECT_TRUE(solution.notCarried.empty());
    EXPECT_NEAR(solution.between(2, 0).value(), (24 + std::sqrt(24 * 24 - 48.0)) / 2, 1e-9);

    net.resistors[0].ohms = 11.99; // the most that a line can carry is U²/4R: 12 W over 12 ohms
    EXPECT_TRUE(solved(net).notCarried.empty());
    EXPECT_NEAR(solved(net).between(2, 0).value(), (24 + std::sqrt(24 * 24 - 48.0 * 11.99)) / 2, 1e-6);
    net.resistors[0].ohms = 12.01;
    EXPECT_EQ(solved(net).notCarried, std::vector<std::uint32_t>{0});
    EXPECT_NEAR(solved(net).between(2, 0).value(), 24 * 48 / 60.01, 1e-9); // as the 48 ohms that it is
}

// 0.5 A at 24 V on the source itself, and 0.05 A behind 4,700 ohms, which carry 5 mA at the most.
TEST(Solve, NamesTheLoadThatTheLineCantCarryAndCarriesTheOthers)
{
    Network net{3, {{1, 2, 4700}}, {{1, 0, 24}}, {}, {{1, 0, LoadLaw::ConstantCurrent, 0.5, 48, 1}, {2, 0, LoadLaw::ConstantCurrent, 0.05, 480, 1}}};
    const Solution solution = solved(net);
    EXPECT_EQ(solution.notCarried, std::vector<std::uint32_t>{1});
    EXPECT_NEAR(solution.draws[0], 0.5, 1e-12);
    EXPECT_NEAR(solution.draws[1], 24 / 5180.0, 1e-9); // as its 480 ohms
    EXPECT_EQ(solution.byLaw, (std::vector<char>{1, 0}));
}

// 36 W behind 40 ohms, and behind a diode and 1 ohm that the load's own current turns on: U = (x + √(x² − 4·36·y)) / 2 with
// x = (24/40 + 23.3/1)·y, y the two in parallel.
TEST(Solve, CarriesConstantPowerThroughADiodeThatItTurnsOn)
{
    Network net{4, {{1, 2, 40}, {3, 2, 1}}, {{1, 0, 24}}, {{1, 3, 0.7}}, {{2, 0, LoadLaw::ConstantPower, 36, 16, 1}}};
    const Solution solution = solved(net);
    const double y = 40 / 41.0, x = (24 / 40.0 + 23.3) * y;
    EXPECT_TRUE(solution.notCarried.empty());
    EXPECT_NEAR(solution.between(2, 0).value(), (x + std::sqrt(x * x - 4 * 36 * y)) / 2, 1e-9);
}

// The one of constant power is beyond its line, and where it is sought the other's volts mean nothing.
TEST(Solve, CarriesALoadBesideOneThatIsNotCarried)
{
    Network net{4, {{1, 2, 10}, {2, 3, 30}}, {{1, 0, 24}}, {}, {{3, 0, LoadLaw::ConstantPower, 24, 24, 1}, {2, 0, LoadLaw::ConstantCurrent, 0.1, 240, 1}}};
    const Solution solution = solved(net);
    EXPECT_EQ(solution.notCarried, std::vector<std::uint32_t>{0});
    EXPECT_NEAR(solution.draws[1], 0.1, 1e-12);
}

TEST(Solve, CarriesConstantCurrentEitherWayRound)
{
    Network net{3, {{1, 2, 2}}, {{1, 0, 24}}, {}, {{0, 2, LoadLaw::ConstantCurrent, 0.5, 48, 1}}};
    const Solution solution = solved(net);
    EXPECT_NEAR(solution.between(2, 0).value(), 23, 1e-12);
    EXPECT_NEAR(solution.draws[0], -0.5, 1e-12);
    net.sources.clear();
    EXPECT_EQ(solved(net).draws[0], 0);
}

// ---- What nobody would wire.

bool isInNumbers(const Solution& solution)
{
    for (const auto& list : {solution.volts, solution.resistors, solution.sources, solution.diodes, solution.draws})
        for (double value : list)
            if (!std::isfinite(value))
                return false;
    return true;
}

TEST(Solve, SaysThatNothingIsMeantWhereNumbersOverflow)
{
    const Network absurd{3, {{1, 2, 1e-300}, {2, 0, 1e-300}}, {{1, 0, 1.7e308}}, {}, {}};
    EXPECT_FALSE(solved(absurd).settled);
    const Network high{3, {{1, 2, 1e6}, {2, 0, 1e6}}, {{1, 0, 1e100}}, {}, {}};
    EXPECT_TRUE(solved(high).settled);
    EXPECT_NEAR(solved(high).between(2, 0).value() / 1e100, 0.5, 1e-12);
}

TEST(Solve, ClaimsNoReadingsInARingOfDiodesThatNothingLimits)
{
    for (const double drop : {0.0, 0.7}) {
        // 24 V on one side of a ring that conducts one way round only; 200 ohms across two of its corners.
        const Network ring{4, {{1, 3, 200}}, {{1, 0, 24}}, {{0, 2, drop}, {2, 1, drop}, {1, 3, drop}, {3, 0, drop}}, {}};
        const Solution solution = solved(ring);
        EXPECT_FALSE(solution.settled && solution.unlimited.empty()); // from 1 by 3 to 0 nothing limits it
        EXPECT_TRUE(isInNumbers(solution));
    }
}

TEST(Solve, ReadsNothingAroundALoopOfJointsOrASourceOnOneNet)
{
    const Network loop{4, {{1, 2, 0}, {2, 3, 0}, {3, 1, 0}, {1, 0, 12}}, {{3, 0, 24}, {2, 1, 5}}, {}, {}};
    const Solution solution = solved(loop);
    EXPECT_EQ(solution.fighting, std::vector<std::uint32_t>{1});
    EXPECT_NEAR(solution.sources[0], 2, 1e-12);
    EXPECT_TRUE(isInNumbers(solution));
}

// 21.6 V over 2.5 ohms to 32 ohms that lag with a power factor of 0.6 (19.2 + 25.6j): 21.6 · 32 / |21.7 + 25.6j| V, and
// |21.7 + 25.6j| ohms in all.
TEST(Solve, AddsWhatLagsByItsAngleOnAlternatingCurrent)
{
    const Network net{3, {{1, 2, 2.5}, {2, 0, 32}}, {{1, 0, 21.6}}, {}, {}};
    const auto lagging = solvedAlternating(net, {1, 0.6});
    ASSERT_TRUE(lagging);
    const double ohms = std::hypot(2.5 + 19.2, 25.6);
    EXPECT_NEAR(std::abs(lagging->volts[2] - lagging->volts[0]), 21.6 * 32 / ohms, 1e-9);
    EXPECT_NEAR(lagging->sources[0], 21.6 / ohms, 1e-9);
    EXPECT_NEAR(lagging->resistors[1], 21.6 / ohms, 1e-9);
    const auto plain = solvedAlternating(net, {1, 1}); // as the magnitudes alone
    EXPECT_NEAR(std::abs(plain->volts[2] - plain->volts[0]), solved(net).between(2, 0).value(), 1e-9);
    Network shorted = net;
    shorted.sources.push_back({1, 0, 12});
    EXPECT_FALSE(solvedAlternating(shorted, {1, 0.6}));
}

// ---- Folding.

TEST(Solve, FoldsALadderOfAnyLengthExactly)
{
    // Loads of 100 ohms along a line of 1 ohm steps, the resistance in of the endless one: (1 + √(1 + 4·100)) / 2.
    std::vector<Conductance> ladder;
    const Vertex steps = 100'000;
    for (Vertex i = 1; i <= steps; ++i) {
        ladder.push_back({i, i + 1, 1});
        ladder.push_back({i + 1, 0, 0.01});
    }
    std::vector<double> into(steps + 2);
    into[1] = 1;
    into[0] = -1;
    const LinearAnswer answer = solveLinear(steps + 2, ladder, into);
    EXPECT_NEAR(answer.volts[1] - answer.volts[0], (1 + std::sqrt(401.0)) / 2, 1e-9);
}

TEST(Solve, KnowsWhenConductancesAreNotDefinite)
{
    EXPECT_FALSE(solveLinear(3, {{0, 1, 1}, {1, 2, -2}}, {0, 0, 0}).definite);
    EXPECT_TRUE(solveLinear(3, {{0, 1, 1}, {1, 2, 1}, {2, 0, -0.1}}, {0, 0, 0}).definite);
}

} // namespace
} // namespace doorloom
