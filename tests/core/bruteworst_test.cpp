#include "check/figures.h"
#include "core/brute.h"
#include "core/brutevolts.h"
#include "core/randomcircuit.h"
#include "core/randomjob.h"
#include "edit/operations.h"
#include "graph/joinedsets.h"
#include "solve/lookedat.h"
#include "solve/worst.h"
#include "verdict/positions.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <set>
#include <string>

// The worst of all positions of small jobs, each position multiplied out and solved densely. JOBS=20000: so many.
// What rest itself can't be read in (a short, a fight) is left out, as are loads that the line leaves too little.
namespace doorloom {
namespace {

using Level = BruteVolts::Level;
using Read = std::optional<BruteVolts::Read>;

struct Seen { // a settled position, no source shorted
    Position position;
    Read low, nominal, high;
};

// Every position that the operators given and what follows from them come to; the first is rest.
class AllPositions {
public:
    AllPositions(const Circuit& circuit, const BruteForce& brute, const BruteVolts& volts, const std::vector<MovedIndex>& tried)
    {
        Position position = atRest(circuit);
        isRestRead_ = add(circuit, brute, volts, position);
        forEachPosition(circuit, tried, position, [&] {
            add(circuit, brute, volts, position);
            return true;
        });
    }
    const std::vector<Seen>& seen() const { return seen_; }
    bool isRestRead() const { return isRestRead_; }
    bool isCarried() const { return isCarried_; }

private:
    bool add(const Circuit& circuit, const BruteForce& brute, const BruteVolts& volts, const Position& given)
    {
        const auto settled = brute.settled(given);
        if (!settled || !known_.emplace(settled->begin(), settled->end()).second)
            return false;
        for (std::uint32_t feed = 0; feed < circuit.feeds.size(); ++feed)
            if (brute.shortedIn(*settled, feed))
                return false;
        Seen seen{*settled, volts.read(*settled, Level::Lowest), volts.read(*settled, Level::Nominal), volts.read(*settled, Level::Highest)};
        for (const Read* read : {&seen.low, &seen.nominal, &seen.high})
            isCarried_ = isCarried_ && (!*read || (*read)->isCarried);
        seen_.push_back(std::move(seen));
        return seen_.back().low && seen_.back().nominal && seen_.back().high;
    }

    std::set<std::string> known_; // positions, a letter a throw
    std::vector<Seen> seen_;
    bool isRestRead_ = false, isCarried_ = true;
};

// Operators of which every throw is tried: not what goes by itself, what can't move, or what turns a supply on.
std::vector<MovedIndex> moving(const Circuit& circuit, const BruteForce& brute, std::vector<MovedIndex> all)
{
    std::erase_if(all, [&](MovedIndex moved) {
        const auto isDriven = [&](const Drive& drive) {
            return drive.moved == moved && (drive.manner != Drive::Manner::Programmed || !brute.canMove(moved));
        };
        const auto turnsOn = [&](const Feed& feed) {
            return std::any_of(feed.live.anyOf.begin(), feed.live.anyOf.end(), [&](const Term& term) {
                return std::any_of(term.begin(), term.end(), [&](const Atom& atom) { return atom.moved == moved; });
            });
        };
        return std::any_of(circuit.drives.begin(), circuit.drives.end(), isDriven) ||
               std::any_of(circuit.feeds.begin(), circuit.feeds.end(), turnsOn);
    });
    return all;
}

std::vector<MovedIndex> operatorsOf(const Circuit& circuit)
{
    std::vector<MovedIndex> all;
    for (MovedIndex moved = 0; moved < circuit.operators.size(); ++moved)
        all.push_back(moved);
    return all;
}

std::vector<MovedIndex> operatorsOfLoads(const Circuit& circuit, const Questions& ask)
{
    std::set<MovedIndex> all;
    for (std::uint32_t i = 0; i < circuit.elements.size(); ++i)
        if (circuit.elements[i].kind == ElementKind::Load || circuit.elements[i].kind == ElementKind::Resistor)
            for (MovedIndex moved : ask.operatorsThatMatter(i))
                all.insert(moved);
    return {all.begin(), all.end()};
}

struct Extremes {
    std::optional<double> lowest, highest;
    void add(double value)
    {
        lowest = std::min(lowest.value_or(value), value);
        highest = std::max(highest.value_or(value), value);
    }
};

using IsClosed = std::function<bool(const Joint&)>;

JoinedSets joinedBy(const Circuit& circuit, const std::function<bool(std::uint32_t)>& joint)
{
    JoinedSets nets(circuit.vertices);
    for (std::uint32_t i = 0; i < circuit.joints.size(); ++i)
        if (joint(i))
            nets.join(circuit.joints[i].a, circuit.joints[i].b);
    return nets;
}

JoinedSets withoutOhms(const Circuit& circuit, const BruteVolts& volts, const IsClosed& isClosed)
{
    return joinedBy(circuit, [&](std::uint32_t i) { return volts.isBare(i) && isClosed(circuit.joints[i]); });
}

std::size_t netsOfPoles(const Circuit& circuit, JoinedSets& nets)
{
    std::set<Vertex> poles;
    for (const Feed& feed : circuit.feeds)
        poles.insert({nets.find(feed.plus), nets.find(feed.minus)});
    return poles.size();
}

// Contacts that join poles of two sources at rest: whether a load is fed then hangs, by graph, on the operators of others.
bool hasARingAtRest(const Circuit& circuit)
{
    JoinedSets always = joinedBy(circuit, [&](std::uint32_t i) { return circuit.joints[i].guard.always(); });
    JoinedSets rest = joinedBy(circuit, [&](std::uint32_t i) { return holds(circuit.joints[i].guard, atRest(circuit)); });
    return netsOfPoles(circuit, rest) < netsOfPoles(circuit, always);
}

bool hasDiodesSideBySide(const Circuit& circuit, JoinedSets& nets)
{
    std::set<std::pair<Vertex, Vertex>> all;
    for (const Diode& diode : circuit.diodes)
        all.insert({nets.find(diode.anode), nets.find(diode.cathode)});
    return all.size() < circuit.diodes.size();
}

// Sources or diodes that contacts put side by side with no ohms between: nothing tells how they share.
bool areSideBySide(const Circuit& circuit, const BruteVolts& volts, const std::vector<Seen>& all)
{
    JoinedSets always = withoutOhms(circuit, volts, [](const Joint& joint) { return joint.guard.always(); });
    const std::size_t apart = netsOfPoles(circuit, always);
    return std::any_of(all.begin(), all.end(), [&](const Seen& seen) {
        JoinedSets nets = withoutOhms(circuit, volts, [&](const Joint& joint) { return holds(joint.guard, seen.position); });
        return netsOfPoles(circuit, nets) < apart || hasDiodesSideBySide(circuit, nets);
    });
}

// One random job, and all about it that is asked.
struct Site {
    Site(Random& random, Copper copper)
        : job(randomSmallJob(random, copper)), net(job), circuit(net.circuit()), ask(circuit), brute(circuit), volts(job, net), meter(job, net),
          tolerance(copper == Copper::Metric ? 1e-4 : 2e-2) // the table of gauges has four digits
    {
    }
    Job job;
    Netlist net;
    const Circuit& circuit;
    Questions ask;
    BruteForce brute;
    BruteVolts volts;
    Meter meter;
    double tolerance;
};

std::string inWords(const Site& site)
{
    std::string words = "\n";
    for (const Device& device : site.job.devices)
        words += fmt::format("{} {}\n", device.tag, kindOf(site.job, device)->name);
    for (const Conductor& conductor : site.job.conductors)
        words += fmt::format("{} → {} {} {} m\n", nameOf(site.job, *landingOf(conductor.from)), nameOf(site.job, *landingOf(conductor.to)),
                             conductor.gauge, conductor.length.value);
    return words;
}

void expectSame(const std::optional<double>& found, const std::optional<Worst>& worst, double tolerance, const std::string& what)
{
    EXPECT_EQ(found.has_value(), worst.has_value()) << what;
    if (found && worst) {
        EXPECT_NEAR(*found, worst->value, tolerance * std::max(1.0, std::abs(*found))) << what;
    }
}

struct Tally {
    int jobs = 0, positions = 0, figures = 0, ranges = 0, apart = 0, restUnread = 0, notCarried = 0, sideBySide = 0;
};

void compareRanges(const Site& site, Random& random, Tally& tally)
{
    const AllPositions all(site.circuit, site.brute, site.volts, moving(site.circuit, site.brute, operatorsOf(site.circuit)));
    if (!all.isRestRead() || !all.isCarried()) {
        ++(all.isCarried() ? tally.restUnread : tally.notCarried);
        return;
    }
    for (int pair = 0; pair < 8; ++pair) {
        const Vertex x = static_cast<Vertex>(random.below(site.circuit.vertices)), y = static_cast<Vertex>(random.below(site.circuit.vertices));
        Extremes extremes;
        for (const Seen& seen : all.seen())
            if (seen.low && seen.high && seen.low->between(x, y) && seen.high->between(x, y)) {
                extremes.add(*seen.low->between(x, y));
                extremes.add(*seen.high->between(x, y));
            }
        const ReadingRange range = rangeBetween(site.meter, site.ask, x, y, commandBudget);
        const std::string what = fmt::format("between {} and {}", x, y);
        EXPECT_EQ(range.coverage.covered, range.coverage.positions) << what;
        expectSame(extremes.lowest, range.lowest, site.tolerance, "lowest " + what);
        expectSame(extremes.highest, range.highest, site.tolerance, "highest " + what);
        ++tally.ranges;
    }
}

// Of positions in which figures mean anything at the lowest and at nominal volts.
void forEachRead(const AllPositions& all, const std::function<void(const Seen&)>& visit)
{
    for (const Seen& seen : all.seen())
        if (seen.low && seen.nominal)
            visit(seen);
}

void compareVolts(const Site& site, const AllPositions& all, const Figures& figures, Tally& tally)
{
    bool fightAtHighest = false; // two that agree at their nominal volts alone: which of them counts is not said
    forEachRead(all, [&](const Seen& seen) { fightAtHighest = fightAtHighest || !seen.high; });
    for (std::uint32_t i = 0; i < site.circuit.elements.size(); ++i) {
        const Element& element = site.circuit.elements[i];
        if (element.kind != ElementKind::Load || site.ask.feedsNear(element.a).empty())
            continue;
        Extremes fed, any;
        forEachRead(all, [&](const Seen& seen) {
            if (site.brute.returnedIn(seen.position, i))
                fed.add(std::abs(seen.low->across(element)));
            if (seen.high)
                any.add(std::abs(seen.high->across(element)));
        });
        expectSame(fed.lowest, figures.lowestVolts[i], site.tolerance, fmt::format("lowest across {}", i));
        if (const Worst nothing; !fightAtHighest)
            expectSame(any.highest.value_or(0), figures.highestVolts[i].value_or(nothing), site.tolerance, fmt::format("highest across {}", i));
        ++tally.figures;
    }
}

void compareAmperes(const Site& site, const AllPositions& all, const Figures& figures, Tally& tally)
{
    if (areSideBySide(site.circuit, site.volts, all.seen())) {
        ++tally.sideBySide;
        return;
    }
    for (std::uint32_t i = 0; i < site.circuit.feeds.size(); ++i) {
        Extremes out;
        forEachRead(all, [&](const Seen& seen) { out.add(seen.nominal->outOf[i]); });
        expectSame(out.highest, figures.outOfFeed[i], site.tolerance, fmt::format("out of feed {}", i));
        ++tally.figures;
    }
    for (std::uint32_t i = 0; i < site.circuit.joints.size(); ++i)
        if (!site.circuit.joints[i].guard.always()) { // a contact
            Extremes through;
            forEachRead(all, [&](const Seen& seen) { through.add(std::abs(seen.nominal->throughJoint[i])); });
            expectSame(through.highest, figures.throughJoint[i], site.tolerance, fmt::format("through joint {}", i));
            ++tally.figures;
        }
}

void compareFigures(const Site& site, Tally& tally)
{
    const AllPositions all(site.circuit, site.brute, site.volts, moving(site.circuit, site.brute, operatorsOfLoads(site.circuit, site.ask)));
    if (!all.isRestRead() || !all.isCarried() || hasARingAtRest(site.circuit))
        return;
    const Figures figures = figuresOf(site.job, site.net, site.ask, commandBudget, VoltsWanted::All);
    EXPECT_EQ(figures.coverage.covered, figures.coverage.positions);
    compareVolts(site, all, figures, tally);
    compareAmperes(site, all, figures, tally);
    ++tally.jobs;
    tally.positions += static_cast<int>(all.seen().size());
    tally.apart += LookedAt(site.meter, site.ask, LookedAt::For::Loads, commandBudget).groups().size() > 1;
}

void tell(const Tally& tally)
{
    fmt::print("{} jobs ({} with operators that are gone through apart), {} positions, {} figures and {} ranges compared; "
               "rest not readable {}, loads not carried {}, side by side {}\n",
               tally.jobs, tally.apart, tally.positions, tally.figures, tally.ranges, tally.restUnread, tally.notCarried, tally.sideBySide);
}

std::uint64_t jobsWanted()
{
    const char* wanted = std::getenv("JOBS");
    return wanted ? std::strtoull(wanted, nullptr, 10) : 2000;
}

TEST(WorstOfRandomJobs, IsTheWorstOfAllPositionsMultipliedOut)
{
    Tally tally;
    forEachSeed(jobsWanted(), [&](Random& random) {
        const Site site(random, random.oneIn(4) ? Copper::Awg : Copper::Metric);
        compareRanges(site, random, tally);
        compareFigures(site, tally);
        if (testing::Test::HasFailure())
            ADD_FAILURE() << inWords(site) << described(site.circuit);
    });
    tell(tally);
    if (!std::getenv("SEED")) {
        EXPECT_GT(tally.jobs, 9 * tally.restUnread);
        EXPECT_GT(tally.apart, tally.jobs / 20);
    }
}

} // namespace
} // namespace doorloom
