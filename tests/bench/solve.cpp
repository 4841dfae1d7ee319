#include "bench/measure.h"
#include "core/jobs.h"
#include "solve/linear.h"
#include "solve/spicedeck.h"

#include <Eigen/SparseCholesky>
#include <fmt/format.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

#include <sys/resource.h>
#include <unistd.h>

// Solving one position: a long line, a grid, and all positions of a door, beside a bare Cholesky and ngspice.
namespace doorloom::bench {

namespace {

// A supply, so many conductors in line with a load at every tenth, and back.
Network chainOf(Vertex conductors)
{
    Network net;
    net.vertices = conductors + 2;
    net.sources.push_back({1, 0, 24});
    for (Vertex i = 0; i < conductors; ++i) {
        net.resistors.push_back({i + 1, i + 2, 0.05});
        if (i % 10 == 9)
            net.resistors.push_back({i + 2, 0, 20'000});
    }
    return net;
}

struct Analysis {
    double seconds = -1;        // as ngspice itself says; −1: it is not here
    double runMilliseconds = 0; // CPU time of the whole run
};

double childrenMilliseconds()
{
    rusage used = {};
    ::getrusage(RUSAGE_CHILDREN, &used);
    const auto in = [](const timeval& time) { return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3; };
    return in(used.ru_utime) + in(used.ru_stime);
}

Analysis simulated(const std::string& deckOfElements)
{
    const auto file = std::filesystem::temp_directory_path() / fmt::format("doorloom-bench-{}.cir", ::getpid());
    std::ofstream(file) << "* bench\n" << deckOfElements << ".control\nop\nrusage all\n.endc\n.end\n";
    Analysis analysis;
    const double before = childrenMilliseconds();
    FILE* pipe = ::popen(fmt::format("ngspice -b {} 2>/dev/null", file.string()).c_str(), "r");
    char line[512];
    while (pipe && std::fgets(line, sizeof line, pipe))
        std::sscanf(line, "Total analysis time (seconds) = %lf", &analysis.seconds);
    if (pipe)
        ::pclose(pipe);
    analysis.runMilliseconds = childrenMilliseconds() - before;
    std::filesystem::remove(file);
    return analysis;
}

std::string elementsOf(const Network& net)
{
    std::string deck;
    for (std::size_t i = 0; i < net.sources.size(); ++i)
        deck += fmt::format("V{} {} {} {}\n", i, net.sources[i].plus, net.sources[i].minus, net.sources[i].volts);
    for (std::size_t i = 0; i < net.resistors.size(); ++i)
        deck += fmt::format("R{} {} {} {}\n", i, net.resistors[i].a, net.resistors[i].b, net.resistors[i].ohms);
    return deck;
}

bool solvesChains(Gate gate)
{
    bool within = true;
    for (const auto& [conductors, most] : {std::pair(Vertex{1'000}, 0.3), std::pair(Vertex{100'000}, 25.0)}) {
        const Network net = chainOf(conductors);
        double volts = 0;
        within = isWithin(fmt::format("chain {}", conductors).c_str(), most, gate,
                          [&] { volts = solved(net).between(conductors + 1, 0).value(); }) &&
                 within;
    }
    const Network net = chainOf(100'000);
    const double ours = timesOf([&] { solved(net); }).medianMilliseconds, theirs = 1000 * simulated(elementsOf(net)).seconds;
    if (theirs < 0) {
        std::printf("  ngspice is not here\n");
        return within;
    }
    const bool enough = theirs >= 10 * ours;
    std::printf("  chain of 100,000: ngspice's own analysis %.1f ms, %.1f times ours (at least 10) %s\n", theirs, theirs / ours,
                gate == Gate::Off ? "" : enough ? "within" : "OVER");
    return within && (gate == Gate::Off || enough);
}

bool solvesGrid(Gate gate)
{
    constexpr Vertex side = 100;
    std::vector<Conductance> grid;
    const auto at = [](Vertex row, Vertex column) { return row * side + column; };
    for (Vertex row = 0; row < side; ++row)
        for (Vertex column = 0; column < side; ++column) {
            const double siemens = 1 + 0.1 * ((row * 7 + column * 3) % 10);
            if (column + 1 < side)
                grid.push_back({at(row, column), at(row, column + 1), siemens});
            if (row + 1 < side)
                grid.push_back({at(row, column), at(row + 1, column), siemens});
        }
    std::vector<double> into(side * side);
    into.front() = 1;
    into.back() = -1;
    const bool within = isWithin("grid 10,000", 40, gate, [&] { solveLinear(side * side, grid, into); });

    // The same matrix, the last vertex at nothing, filled from triplets as anybody would.
    using Matrix = Eigen::SparseMatrix<double>;
    const auto bare = [&] {
        std::vector<Eigen::Triplet<double>> entries;
        const int last = side * side - 1;
        for (const auto& [a, b, siemens] : grid) {
            const int i = static_cast<int>(a), j = static_cast<int>(b);
            entries.emplace_back(i, i, siemens);
            if (j != last) {
                entries.emplace_back(j, j, siemens);
                entries.emplace_back(std::max(i, j), std::min(i, j), -siemens);
            }
        }
        Matrix matrix(last, last);
        matrix.setFromTriplets(entries.begin(), entries.end());
        const Eigen::SimplicialLDLT<Matrix> factors(matrix);
        Eigen::VectorXd right = Eigen::VectorXd::Zero(last);
        right[0] = 1;
        volatile double kept = factors.solve(right)[0];
        static_cast<void>(kept);
    };
    const double ratio = timesOf([&] { solveLinear(side * side, grid, into); }).medianMilliseconds / timesOf(bare).medianMilliseconds;
    std::printf("  grid: %.2f of bare sparse Cholesky (at most 1.3) %s\n", ratio, gate == Gate::Off ? "" : ratio <= 1.3 ? "within" : "OVER");
    return within && (gate == Gate::Off || ratio <= 1.3);
}

// A module, a strike, a lamp and six more hands: all 4,096 positions of twelve operators of two throws.
Job doorOfTwelve()
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("LM1", "relay-module-negative").power("PS1", "LM1");
    job.option("LM1", "K1", "wet").option("LM1", "K3", "dry").device("ES1", "strike-fail-secure").device("OL1", "lamp");
    job.wire("LM1:K1.C", "ES1:1").wire("LM1:K1.NO", "ES1:2").wire("PS1:+", "LM1:K3.C").wire("LM1:K3.NO", "OL1:+").wire("OL1:−", "PS1:−");
    for (int i = 1; i <= 7; ++i) {
        const std::string n = std::to_string(i);
        job.device("KS" + n, "key-switch").device("EL" + n, "lamp");
        job.wire("PS1:+", "KS" + n + ":C").wire("KS" + n + ":NO", "EL" + n + ":+").wire("EL" + n + ":−", "PS1:−");
    }
    return job.job();
}

bool solvesAllPositions(Gate gate)
{
    Job job = doorOfTwelve();
    Change change;
    for (const Conductor& row : job.conductors) {
        Conductor changed = row;
        changed.gauge = "18 AWG";
        changed.length = {20};
        change.steps.emplace_back(Put<Conductor>{row.id, changed});
    }
    if (!applyChange(job, change).ok())
        return false;
    const Netlist net(job);
    const std::size_t operators = net.circuit().operators.size();
    std::vector<Position> positions;
    for (std::size_t bits = 0; bits < 4096; ++bits) {
        Position position(operators);
        for (std::size_t i = 0; i < operators; ++i)
            position[i] = static_cast<ThrowIndex>(i < 12 ? (bits >> i) & 1u : net.circuit().operators[i].idle);
        positions.push_back(std::move(position));
    }
    const double ours = timesOf([&] {
                            const Meter meter(job, net);
                            for (const Position& position : positions)
                                Readings(meter, position);
                        }).medianMilliseconds /
                        static_cast<double>(positions.size());
    const Meter meter(job, net);
    const Readings one(meter, positions[4095]);
    const Analysis analysis = simulated(elementsOf(one.network()));
    const double theirs = analysis.runMilliseconds;
    std::printf("positions of a door  %8.4f ms each, %zu operators, 4,096 positions\n", ours, operators);
    if (analysis.seconds < 0)
        return true;
    std::printf("  a run of ngspice for one, its start with it, %.2f ms: %.0f times (at least 50) %s\n", theirs, theirs / ours,
                gate == Gate::Off ? "" : theirs >= 50 * ours ? "within" : "OVER");
    return gate == Gate::Off || theirs >= 50 * ours;
}

bool solves(Gate gate)
{
    const bool chains = solvesChains(gate), grid = solvesGrid(gate), positions = solvesAllPositions(gate);
    return chains && grid && positions;
}

} // namespace

extern const Row solving;
const Row solving = {"solve", solves};

} // namespace doorloom::bench
