#include "core/circuits/circuit.h"
#include "core/random.h"
#include "core/randomwiring.h"
#include "external/samples.h"
#include "papers/papers.h"
#include "solve/spicedeck.h"
#include "solve/worst.h"
#include "verdict/positions.h"
#include "verdict/questions.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <set>

#include <unistd.h>

// The decks that 'doorloom spice' writes, solved by ngspice (Debian's package), against our own readings.
namespace doorloom {
namespace {

constexpr std::size_t mostPositions = 64;

// Every conductor of some gauge and length, so that there are ohms to read; the same for the same job.
Job withOhms(Job job)
{
    static const char* const gauges[] = {"18 AWG", "22 AWG", "16 AWG", "0.75 mm2"};
    Change change;
    std::size_t i = 0;
    for (const Conductor& row : job.conductors)
        if (row.make != ConductorMake::Core) {
            Conductor changed = row;
            changed.gauge = gauges[i % 4];
            changed.length = {1.5 + static_cast<double>((i * 37) % 60)};
            change.steps.emplace_back(Put<Conductor>{row.id, changed});
            ++i;
        }
    EXPECT_TRUE(applyChange(job, change).ok());
    return job;
}

// All, or so many at random.
std::vector<Position> positionsOf(const Circuit& circuit, Random& random)
{
    double count = 1;
    for (const MovedOperator& moved : circuit.operators)
        count *= moved.throws;
    std::set<Position> all;
    if (count <= static_cast<double>(mostPositions)) {
        Position position(circuit.operators.size());
        for (bool more = true; more;) {
            all.insert(position);
            more = false;
            for (std::size_t i = 0; i < position.size() && !more; ++i) {
                more = ++position[i] < circuit.operators[i].throws;
                position[i] = more ? position[i] : ThrowIndex{0};
            }
        }
    } else {
        while (all.size() < mostPositions) {
            Position position;
            for (const MovedOperator& moved : circuit.operators)
                position.push_back(static_cast<ThrowIndex>(random.below(moved.throws)));
            all.insert(position);
        }
    }
    return {all.begin(), all.end()};
}

// Many decks in one run: ngspice reads one after another, and says each's nodes between two marks.
class Simulator {
public:
    Simulator() : folder_(std::filesystem::temp_directory_path() / fmt::format("doorloom-decks-{}", ::getpid()))
    {
        std::filesystem::create_directories(folder_);
    }
    ~Simulator()
    {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    Simulator(const Simulator&) = delete;
    Simulator& operator=(const Simulator&) = delete;

    void add(const std::string& deck)
    {
        std::ofstream(folder_ / fmt::format("{}.cir", decks_)) << deck;
        ++decks_;
    }
    // Volts by node of each deck; empty: it found no operating point.
    std::vector<std::map<std::string, double>> run() const
    {
        std::ofstream master(folder_ / "master.cir");
        master << "* decks\n.control\n";
        for (std::size_t i = 0; i < decks_; ++i)
            master << fmt::format("echo deck {0}\nsource {1}/{0}.cir\nremcirc\n", i, folder_.string());
        master << "quit\n.endc\n.end\n";
        master.close();
        std::vector<std::map<std::string, double>> all(decks_);
        FILE* pipe = ::popen(fmt::format("ngspice -b {}/master.cir 2>/dev/null", folder_.string()).c_str(), "r");
        char line[1024];
        std::size_t deck = 0;
        while (pipe && std::fgets(line, sizeof line, pipe)) {
            char name[64];
            double value = 0;
            if (std::sscanf(line, "deck %zu", &deck) != 1 && std::sscanf(line, "%63s = %lf", name, &value) == 2 && deck < decks_)
                all[deck][name] = value;
        }
        if (pipe)
            ::pclose(pipe);
        return all;
    }

private:
    std::filesystem::path folder_;
    std::size_t decks_ = 0;
};

struct Tally {
    std::size_t circuits = 0, positions = 0, readings = 0, withDiodes = 0, leftOut = 0;
    double worst = 0, worstWithDiodes = 0;
};

void compare(const std::string& name, const Job& job, Random& random, Tally& tally)
{
    const Netlist net(job);
    Simulator simulator;
    const Meter meter(job, net);
    std::vector<Readings> all;
    for (const Position& position : positionsOf(net.circuit(), random)) {
        Readings readings(meter, position);
        ASSERT_TRUE(readings.settled()) << name;
        if (!readings.solution().unlimited.empty()) { // a short through diodes: no reading is claimed
            ++tally.leftOut;
            continue;
        }
        simulator.add(spiceDeck(job, net, readings, name));
        all.push_back(std::move(readings));
    }
    const auto simulated = simulator.run();
    ++tally.circuits;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Network& network = all[i].network();
        const DeckNodes nodes(network);
        const bool hasDiodes = !network.diodes.empty();
        std::map<std::uint32_t, Vertex> firstOf; // by piece
        ASSERT_FALSE(simulated[i].empty()) << name << " position " << i;
        for (Vertex vertex = 0; vertex < network.vertices; ++vertex) {
            const Vertex first = firstOf.try_emplace(all[i].solution().piece[vertex], vertex).first->second;
            ASSERT_TRUE(simulated[i].contains(nodes[vertex]) && simulated[i].contains(nodes[first])) << name << " position " << i << " " << nodes[vertex];
            const double ours = all[i].between(vertex, first)->value;
            const double theirs = simulated[i].at(nodes[vertex]) - simulated[i].at(nodes[first]);
            const double off = std::abs(ours - theirs);
            if (hasDiodes) {
                ASSERT_LE(off, 1e-3) << name << " position " << i << " " << nodes[vertex];
                tally.worstWithDiodes = std::max(tally.worstWithDiodes, off);
            } else {
                ASSERT_LE(off, std::max(1e-6, 1e-6 * std::abs(theirs))) << name << " position " << i << " " << nodes[vertex];
                tally.worst = std::max(tally.worst, off);
            }
            ++tally.readings;
        }
        ++tally.positions;
        tally.withDiodes += hasDiodes;
    }
}

void tell(const Tally& tally)
{
    fmt::print("{} circuits, {} positions ({} with diodes, {} left out: shorted through diodes), {} readings, worst {:.2g} V, "
               "with diodes {:.2g} V\n",
               tally.circuits, tally.positions, tally.withDiodes, tally.leftOut, tally.readings, tally.worst, tally.worstWithDiodes);
}

TEST(Ngspice, ReadsTheJudgedCircuitsAsWeDo)
{
    Tally tally;
    Random random(1);
    for (const JudgedCircuit& circuit : allCircuits()) {
        compare(circuit.name, withOhms(circuit.right), random, tally);
        for (const WrongForm& form : circuit.wrong)
            compare(circuit.name + " " + form.name, withOhms(wrongJob(circuit, form)), random, tally);
        if (HasFatalFailure())
            return;
    }
    for (const auto& [name, job] : sampleJobs())
        compare(name, job, random, tally);
    tell(tally);
    EXPECT_GE(tally.circuits, 60u);
}

JobBuilder twoDoors(Random& random)
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("TP", "terminal-strip-8").device("TN", "terminal-strip-8");
    job.wires("PS1:+ → TP:1; PS1:− → TN:1").device("R1", "relay").device("RES1", "resistor");
    if (random.oneIn(2))
        job.device("D1", "diode");
    for (const std::string n : {"1", "2"}) {
        addPlateDoor(job, n, random.oneIn(2) ? "strike-fail-secure" : "strike-fail-safe", random.oneIn(2) ? "wet" : "dry");
        job.device("OL" + n, "lamp").wire("TP:2", "OL" + n + ":+").wire("OL" + n + ":−", "TN:2");
        job.wire("TP:" + n, "LM" + n + ":+").wire("TN:" + n, "LM" + n + ":−");
    }
    return job;
}

TEST(Ngspice, ReadsRandomDoorsAsWeDo)
{
    Tally tally;
    forEachSeed(30, [&](Random& random) {
        RandomWiring wiring(twoDoors(random).job(), random);
        for (int edit = 0; edit < 8; ++edit)
            wiring.edit();
        const Job drawn = withOhms(wiring.job());
        compare("random", drawn, random, tally);
    });
    tell(tally);
}

// The lowest and the highest that is found between a load's terminals is what ngspice reads there in that position.
TEST(Ngspice, ReadsTheWorstOfRandomDoorsWhereWeFindIt)
{
    std::size_t circuits = 0, compared = 0;
    double worst = 0;
    forEachSeed(68, [&](Random& random) {
        RandomWiring wiring(twoDoors(random).job(), random);
        for (int edit = 0; edit < 4; ++edit)
            wiring.edit();
        const Job job = withOhms(wiring.job());
        const Netlist net(job);
        const Questions ask(net.circuit());
        const Meter meter(job, net);
        Simulator simulator;
        struct Found {
            std::string x, y;
            double volts;
        };
        std::vector<Found> all;
        for (const Element& element : net.circuit().elements) {
            const ReadingRange range = rangeBetween(meter, ask, element.a, element.b, commandBudget);
            for (const auto& [found, level] : {std::pair(range.lowest, SupplyLevel::Lowest), std::pair(range.highest, SupplyLevel::Highest)}) {
                if (!found)
                    continue;
                // The lowest of what is below nothing is with supplies at their highest, and the other way round.
                for (const SupplyLevel supplies : {level, level == SupplyLevel::Lowest ? SupplyLevel::Highest : SupplyLevel::Lowest}) {
                    const Readings readings(meter, found->at, {.supplies = supplies});
                    const auto volts = readings.between(element.a, element.b);
                    if (!volts || std::abs(volts->value - found->value) > 1e-9)
                        continue;
                    const DeckNodes nodes(readings.network());
                    simulator.add(spiceDeck(job, net, readings, "worst"));
                    all.push_back({nodes[element.a], nodes[element.b], found->value});
                    break;
                }
            }
        }
        const auto simulated = simulator.run();
        for (std::size_t i = 0; i < all.size(); ++i) {
            ASSERT_TRUE(simulated[i].contains(all[i].x) && simulated[i].contains(all[i].y)) << i;
            const double off = std::abs(simulated[i].at(all[i].x) - simulated[i].at(all[i].y) - all[i].volts);
            ASSERT_LE(off, 1e-3) << all[i].x << " " << all[i].y;
            worst = std::max(worst, off);
            ++compared;
        }
        circuits += !all.empty();
    });
    fmt::print("{} circuits, {} worst readings, {:.2g} V off at the most\n", circuits, compared, worst);
    if (!std::getenv("SEED")) {
        EXPECT_GE(circuits, 60u);
        EXPECT_GT(compared, 10 * circuits);
    }
}

// "24.0 V" of the meter sheet of every sample is what ngspice reads at rest between the terminals named, on DC.
TEST(Ngspice, ReadsWhatTheMeterSheetsOfTheSamplesSay)
{
    std::size_t compared = 0;
    for (const auto& [name, job] : sampleJobs()) {
        const Netlist net(job);
        const Meter meter(job, net);
        const Readings readings(meter, atRest(net.circuit()));
        const DeckNodes nodes(readings.network());
        Simulator simulator;
        simulator.add(spiceDeck(job, net, readings, name));
        const auto volts = simulator.run().front();
        std::map<std::string, std::string> nodeOf; // of a terminal
        for (const Device& device : job.devices)
            for (const Terminal* terminal : terminalsOf(*kindOf(job, device)))
                if (const auto vertex = net.vertexOf(device.id, terminal->key))
                    nodeOf[nameOf(job, Landing{device.id, terminal->key})] = nodes[*vertex];
        for (const PaperTable& table : paperNamed("meter")->tables(job, {}).tables)
            for (const auto& row : table.rows) {
                if (row[3] != "DC" || row[4].find(" V") == std::string::npos)
                    continue;
                ASSERT_TRUE(volts.contains(nodeOf[row[1]]) && volts.contains(nodeOf[row[2]])) << name << " " << row[1];
                EXPECT_NEAR(std::stod(row[4]), volts.at(nodeOf[row[1]]) - volts.at(nodeOf[row[2]]), 0.0511) << name << " " << row[1] << " " << row[2];
                ++compared;
            }
    }
    fmt::print("{} readings of meter sheets\n", compared);
    EXPECT_GT(compared, 60u);
}

} // namespace
} // namespace doorloom
