#include "solve/network.h"

#include "solve/heldvolts.h"
#include "solve/linear.h"

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr double voltTolerance = 1e-9, diodeTolerance = 1e-7, ampereTolerance = 1e-7;
// What a blocking diode is given while the diodes settle, so that what hangs on diodes alone has volts.
constexpr double leakSiemens = 1e-9;
constexpr double mostSoftOhms = 1e-3, leastSoftOhms = 1e-5; // of a conducting one meanwhile; far less than all else
constexpr int mostNewtonSteps = 60, mostPlainSteps = 400;

// A draw as it is at some volts: amperes = constant + siemens × volts.
struct Companion {
    double siemens = 0, constant = 0;
};

class Solver {
public:
    Solver(const Network& network, Want want) : net_(network), want_(want), isOn_(network.diodes.size()), companions_(network.draws.size())
    {
        for (const auto& [a, b, ohms] : network.resistors)
            if (ohms > 0)
                softOhms_ = std::min(softOhms_, std::max(leastSoftOhms, ohms / 1000));
    }

    Solution run()
    {
        for (std::size_t i = 0; i < net_.draws.size(); ++i)
            companions_[i] = asOhms(net_.draws[i]);
        settle();
        solution_.byLaw.assign(net_.draws.size(), 0);
        const Solution asResistors = solution_;
        std::vector<std::uint32_t> fed;
        for (const Network::Draw& draw : net_.draws)
            sign_.push_back(voltsOf(draw) > 0 ? 1 : -1);
        for (std::uint32_t i = 0; i < net_.draws.size(); ++i)
            if (std::abs(voltsOf(net_.draws[i])) > std::max(voltTolerance, net_.draws[i].leastVolts))
                fed.push_back(i);
        std::vector<std::uint32_t> lost;
        while (!fed.empty() && solution_.settled && !carries(fed))
            giveUp(fed, lost, asResistors);
        if (!lost.empty() && fed.empty())
            solution_ = asResistors;
        std::sort(lost.begin(), lost.end());
        solution_.notCarried = std::move(lost);
        solution_.settled = solution_.settled && isInNumbers();
        return std::move(solution_);
    }

private:
    // Volts and ohms past all bounds overflow.
    bool isInNumbers() const
    {
        const auto isFinite = [](double value) { return std::isfinite(value); };
        const auto are = [&](const std::vector<double>& list) { return std::all_of(list.begin(), list.end(), isFinite); };
        return are(solution_.volts) && are(solution_.resistors) && are(solution_.sources) && are(solution_.diodes) && are(solution_.draws);
    }

    static Companion asOhms(const Network::Draw& draw) { return {draw.ohms > 0 ? 1 / draw.ohms : 0, 0}; }
    double voltsOf(const Network::Draw& draw) const
    {
        return solution_.piece[draw.a] == solution_.piece[draw.b] ? solution_.volts[draw.a] - solution_.volts[draw.b] : 0;
    }

    // ---- Loads of constant current and power: Newton's steps from no load downwards, which meet the higher of two
    // solutions first, and find the matrix not definite where there is none.

    // The one with the least left of what it has as a plain resistance is not carried; it is tried again without it.
    void giveUp(std::vector<std::uint32_t>& fed, std::vector<std::uint32_t>& lost, const Solution& asResistors)
    {
        const auto left = [&](std::uint32_t i) {
            const double whole = asResistors.volts[net_.draws[i].a] - asResistors.volts[net_.draws[i].b];
            return solution_.settled ? voltsOf(net_.draws[i]) / whole : 0;
        };
        const auto least = std::min_element(fed.begin(), fed.end(), [&](std::uint32_t one, std::uint32_t other) { return left(one) < left(other); });
        companions_[*least] = asOhms(net_.draws[*least]);
        lost.push_back(*least);
        fed.erase(least);
        solution_.settled = true;
    }

    // Where the slope of constant power has nothing to lean on, once more without it: a diode that the load's own current
    // turns on is still off on the way there; and without a slope it is seen whose volts go.
    enum class Slope { Tangent, Level };
    bool carries(const std::vector<std::uint32_t>& fed)
    {
        const auto isOfPower = [&](std::uint32_t i) { return net_.draws[i].law == LoadLaw::ConstantPower; };
        return carries(fed, Slope::Tangent) || (std::any_of(fed.begin(), fed.end(), isOfPower) && carries(fed, Slope::Level));
    }

    bool carries(const std::vector<std::uint32_t>& fed, Slope slope)
    {
        solution_.settled = true;
        std::vector<double> at(net_.draws.size());
        for (std::uint32_t i : fed)
            companions_[i] = {};
        settle();
        for (int step = 0; step < (slope == Slope::Tangent ? mostNewtonSteps : mostPlainSteps); ++step) {
            double moved = 0;
            for (std::uint32_t i : fed) {
                const double volts = sign_[i] * voltsOf(net_.draws[i]);
                if (!solution_.settled || !isDefinite_ || volts <= 0)
                    return false;
                moved = std::max(moved, std::abs(volts - at[i]) / volts);
                at[i] = volts;
                const double amount = net_.draws[i].amount;
                const bool isOfPower = net_.draws[i].law == LoadLaw::ConstantPower;
                if (isOfPower && slope == Slope::Tangent)
                    companions_[i] = {-amount / (volts * volts), sign_[i] * 2 * amount / volts};
                else
                    companions_[i] = {0, sign_[i] * (isOfPower ? amount / volts : amount)};
            }
            if (step > 1 && moved < 1e-12) {
                for (std::uint32_t i : fed)
                    solution_.byLaw[i] = 1;
                return true;
            }
            settle();
        }
        return false;
    }

    // ---- Diodes: all that contradict their state are switched at once while that makes fewer of them; else the first one
    // alone, which ends (Murty's least index, and the block steps of Kostreva). First each with a little resistance, so
    // that of two side by side the one with the lower drop is found; then as they are.

    void settle()
    {
        solution_.settled = net_.diodes.empty() || (settles(true), settles(false));
        solveStates({false, 0});
    }

    bool settles(bool soft)
    {
        std::size_t fewest = net_.diodes.size() + 1;
        int patience = 3;
        for (std::size_t step = 0; step < 50 + 20 * net_.diodes.size(); ++step) {
            solveStates({soft, leakSiemens});
            std::vector<std::uint32_t> wrong = contradictions();
            if (wrong.empty())
                return true;
            if (wrong.size() < fewest) {
                fewest = wrong.size();
                patience = 3;
            } else if (--patience < 0) {
                wrong.erase(wrong.begin() + 1, wrong.end());
            }
            for (std::uint32_t diode : wrong)
                isOn_[diode] = !isOn_[diode];
        }
        return false;
    }

    std::vector<std::uint32_t> contradictions() const
    {
        std::vector<std::uint32_t> wrong;
        for (std::uint32_t i = 0; i < net_.diodes.size(); ++i) {
            const auto& [anode, cathode, drop] = net_.diodes[i];
            const auto volts = solution_.between(anode, cathode);
            const bool isUnlimited = std::binary_search(solution_.unlimited.begin(), solution_.unlimited.end(), i);
            if (isOn_[i] ? solution_.diodes[i] < -ampereTolerance : volts && !isUnlimited && *volts > drop + diodeTolerance)
                wrong.push_back(i);
        }
        return wrong;
    }

    struct Manner {
        bool soft = false; // conducting diodes with a little resistance
        double leak = 0;   // siemens of the others
    };

    void solveStates(Manner manner)
    {
        HeldVolts held(net_.vertices);
        holdVolts(held, manner.soft);
        place_.clear(); // of each vertex: which of those that nothing holds, and volts above it
        std::vector<Vertex> number(net_.vertices, none);
        Vertex roots = 0;
        for (Vertex vertex = 0; vertex < net_.vertices; ++vertex) {
            auto at = held.find(vertex);
            Vertex& root = number[at.root];
            root = root == none ? roots++ : root;
            place_.push_back({root, at.volts});
        }
        std::vector<Conductance> conductances;
        std::vector<double> into(roots);
        const auto conduct = [&](Vertex a, Vertex b, double siemens, double constant) {
            const auto &one = place_[a], &other = place_[b];
            const double amperes = siemens * (one.volts - other.volts) + constant; // from a to b while the roots are level
            if (one.root == other.root)
                return;
            conductances.push_back({one.root, other.root, siemens});
            into[one.root] -= amperes;
            into[other.root] += amperes;
        };
        for (const auto& [a, b, ohms] : net_.resistors)
            if (ohms > 0)
                conduct(a, b, 1 / ohms, 0);
        for (std::size_t i = 0; i < net_.draws.size(); ++i)
            conduct(net_.draws[i].a, net_.draws[i].b, companions_[i].siemens, companions_[i].constant);
        for (std::size_t i = 0; i < net_.diodes.size(); ++i)
            if (const auto& [anode, cathode, drop] = net_.diodes[i]; isOn_[i] && manner.soft)
                conduct(anode, cathode, 1 / softOhms_, -drop / softOhms_);
            else if (!isOn_[i] && manner.leak > 0)
                conduct(anode, cathode, manner.leak, 0);
        const LinearAnswer answer = solveLinear(roots, conductances, std::move(into));
        isDefinite_ = answer.definite;
        solution_.volts.resize(net_.vertices);
        solution_.piece.resize(net_.vertices);
        for (Vertex vertex = 0; vertex < net_.vertices; ++vertex) {
            solution_.volts[vertex] = answer.volts[place_[vertex].root] + place_[vertex].volts;
            solution_.piece[vertex] = answer.piece[place_[vertex].root];
        }
        findAmperes(manner);
    }

    void holdVolts(HeldVolts& held, bool soft)
    {
        solution_.fighting.clear();
        solution_.unlimited.clear();
        for (const auto& [a, b, ohms] : net_.resistors)
            if (ohms == 0 && !held.between(a, b))
                held.hold(a, b, 0);
        for (std::uint32_t i = 0; i < net_.sources.size(); ++i) {
            const auto& [plus, minus, volts] = net_.sources[i];
            const auto already = held.between(plus, minus);
            if (!already)
                held.hold(plus, minus, volts);
            else if (std::abs(*already - volts) > voltTolerance)
                solution_.fighting.push_back(i);
        }
        for (std::uint32_t i = 0; i < net_.diodes.size() && !soft; ++i) {
            const auto& [anode, cathode, drop] = net_.diodes[i];
            const auto already = held.between(anode, cathode);
            if (already && std::abs(*already - drop) > voltTolerance) {
                isOn_[i] = 0;
                if (*already > drop)
                    solution_.unlimited.push_back(i);
            } else if (isOn_[i] && !already) {
                held.hold(anode, cathode, drop);
            }
        }
    }

    void findAmperes(Manner manner)
    {
        std::vector<double> out(net_.vertices); // of each vertex, through what has ohms
        const auto carry = [&](Vertex a, Vertex b, double amperes) {
            out[a] += amperes;
            out[b] -= amperes;
            return amperes;
        };
        const auto across = [&](Vertex a, Vertex b) { return solution_.between(a, b).value_or(0); };
        solution_.resistors.resize(net_.resistors.size());
        for (std::size_t i = 0; i < net_.resistors.size(); ++i)
            if (const auto& [a, b, ohms] = net_.resistors[i]; ohms > 0)
                solution_.resistors[i] = carry(a, b, across(a, b) / ohms);
        solution_.draws.resize(net_.draws.size());
        for (std::size_t i = 0; i < net_.draws.size(); ++i) {
            const auto& [siemens, constant] = companions_[i];
            const Vertex a = net_.draws[i].a, b = net_.draws[i].b;
            solution_.draws[i] = carry(a, b, siemens * across(a, b) + constant);
        }
        std::vector<double> diodes(net_.diodes.size());
        for (std::size_t i = 0; i < net_.diodes.size(); ++i)
            if (const auto& [anode, cathode, drop] = net_.diodes[i]; isOn_[i] && manner.soft)
                diodes[i] = carry(anode, cathode, (across(anode, cathode) - drop) / softOhms_);
            else if (!isOn_[i])
                carry(anode, cathode, manner.leak * across(anode, cathode));
        if (want_ == Want::AmperesToo || !net_.diodes.empty())
            shareAmperes(out, manner.soft);
        if (manner.soft)
            solution_.diodes = std::move(diodes);
    }

    // What has no ohms is given one each: then joints, sources and diodes that lie in one line carry what comes, and those
    // that lie side by side share it.
    void shareAmperes(const std::vector<double>& out, bool soft)
    {
        std::vector<Conductance> ways;
        std::vector<double*> amperes; // from a to b of each
        std::vector<Vertex> number(net_.vertices, none);
        std::vector<double> into;
        const auto numbered = [&](Vertex vertex) {
            if (number[vertex] == none) {
                number[vertex] = static_cast<Vertex>(into.size());
                into.push_back(-out[vertex]);
            }
            return number[vertex];
        };
        const auto add = [&](Vertex a, Vertex b, double& to) {
            to = 0;
            if (a == b)
                return;
            ways.push_back({numbered(a), numbered(b), 1});
            amperes.push_back(&to);
        };
        for (std::size_t i = 0; i < net_.resistors.size(); ++i)
            if (net_.resistors[i].ohms == 0)
                add(net_.resistors[i].a, net_.resistors[i].b, solution_.resistors[i]);
        solution_.sources.assign(net_.sources.size(), 0);
        for (std::uint32_t i = 0; i < net_.sources.size(); ++i)
            if (!std::binary_search(solution_.fighting.begin(), solution_.fighting.end(), i))
                add(net_.sources[i].minus, net_.sources[i].plus, solution_.sources[i]);
        solution_.diodes.assign(net_.diodes.size(), 0);
        for (std::size_t i = 0; i < net_.diodes.size(); ++i)
            if (isOn_[i] && !soft)
                add(net_.diodes[i].anode, net_.diodes[i].cathode, solution_.diodes[i]);
        const auto count = static_cast<Vertex>(into.size());
        const LinearAnswer shared = solveLinear(count, ways, std::move(into));
        for (std::size_t i = 0; i < ways.size(); ++i)
            *amperes[i] = shared.volts[ways[i].a] - shared.volts[ways[i].b];
    }

    static constexpr Vertex none = ~Vertex{0};

    const Network& net_;
    Want want_;
    Solution solution_;
    std::vector<HeldVolts::Place> place_;
    std::vector<char> isOn_; // by diode
    double softOhms_ = mostSoftOhms;
    std::vector<Companion> companions_;
    std::vector<double> sign_; // by draw: of its volts as a plain resistance
    bool isDefinite_ = true;
};

} // namespace

Solution solved(const Network& network, Want want) { return Solver(network, want).run(); }

} // namespace doorloom
