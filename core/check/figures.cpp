#include "check/figures.h"

#include "verdict/positions.h"

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr double spare = 1.05; // a load that is no plain resistance drops a little more at fewer volts
constexpr std::uint64_t stepsForAPosition = 30'000;

Figures nothing(const Circuit& circuit)
{
    Figures figures;
    for (auto* list : {&figures.lowestVolts, &figures.lowestOnBattery, &figures.highestVolts})
        list->resize(circuit.elements.size());
    figures.mostOutOfFeed.resize(circuit.feeds.size());
    figures.mostThroughJoint.resize(circuit.joints.size());
    return figures;
}

class Gathering {
public:
    Gathering(const Job& job, const Netlist& net, const Questions& ask, std::uint64_t budget)
        : figures_(nothing(net.circuit())), net_(net), ask_(ask), most_(static_cast<double>(budget / stepsForAPosition)), meter_(job, net)
    {
    }

    Figures gathered()
    {
        for (std::uint32_t i = 0; i < net_.circuit().feeds.size(); ++i)
            if (const double lowest = meter_.volts(i, SupplyLevel::Lowest), nominal = meter_.volts(i, SupplyLevel::Nominal);
                lowest > 0 && nominal > 0) {
                batteryShare_ = std::min(batteryShare_, meter_.volts(i, SupplyLevel::OnBattery) / lowest);
                highestShare_ = std::max(highestShare_, meter_.volts(i, SupplyLevel::Highest) / nominal);
            }
        const std::vector<MovedIndex> tried = operatorsTried();
        const Position rest = atRest(net_.circuit());
        if (countOf(tried) <= most_) {
            lookAtAll(tried, rest);
        } else {
            lookAt(rest);
            const Position most = drawingMost(tried, rest);
            lookAt(most);
            for (std::uint32_t i = 0; i < net_.circuit().elements.size(); ++i)
                if (const std::vector<MovedIndex> own = ownOf(i, tried); meter_.loads[i] && countOf(own) <= most_)
                    lookAtAll(own, most);
        }
        figures_.coverage.positions = countOf(tried);
        figures_.coverage.covered = std::min(figures_.coverage.covered, figures_.coverage.positions);
        return std::move(figures_);
    }

private:
    // Of those that matter to a load: no coil, which goes as the circuit has it, nor what turns a supply on.
    std::vector<MovedIndex> operatorsTried() const
    {
        std::vector<char> tried(net_.circuit().operators.size());
        for (std::uint32_t i = 0; i < net_.circuit().elements.size(); ++i)
            if (meter_.loads[i])
                for (MovedIndex moved : ask_.operatorsThatMatter(i))
                    tried[moved] = 1;
        for (const Drive& drive : net_.circuit().drives)
            if (drive.manner == Drive::Manner::Plain || drive.isSensing || !ask_.canMove(drive.moved))
                tried[drive.moved] = 0;
        for (const Feed& feed : net_.circuit().feeds)
            for (const Term& term : feed.live.anyOf)
                for (const Atom& atom : term)
                    tried[atom.moved] = 0;
        std::vector<MovedIndex> all;
        for (MovedIndex moved = 0; moved < tried.size(); ++moved)
            if (tried[moved])
                all.push_back(moved);
        return all;
    }

    double countOf(const std::vector<MovedIndex>& operators) const
    {
        double count = 1;
        for (MovedIndex moved : operators)
            count *= net_.circuit().operators[moved].throws;
        return count;
    }

    std::vector<MovedIndex> ownOf(std::uint32_t element, const std::vector<MovedIndex>& tried) const
    {
        std::vector<MovedIndex> own = ask_.operatorsThatMatter(element);
        std::erase_if(own, [&](MovedIndex moved) { return !std::binary_search(tried.begin(), tried.end(), moved); });
        return own;
    }

    // One operator after another in the throw with which the supplies give most.
    Position drawingMost(const std::vector<MovedIndex>& tried, Position position) const
    {
        const auto drawn = [&](const Position& given) {
            const auto settled = ask_.settled(given);
            if (!settled)
                return 0.0;
            const Readings readings(meter_, *settled);
            double amperes = 0;
            for (std::uint32_t i = 0; i < net_.circuit().feeds.size(); ++i)
                amperes += readings.outOf(i).value;
            return amperes;
        };
        for (MovedIndex moved : tried) {
            Position best = position;
            double most = drawn(position);
            for (ThrowIndex thrown = 0; thrown < net_.circuit().operators[moved].throws; ++thrown) {
                Position other = position;
                other[moved] = thrown;
                if (const double amperes = drawn(other); amperes > most + 1e-9) {
                    most = amperes;
                    best = other;
                }
            }
            position = best;
        }
        return position;
    }

    void lookAtAll(const std::vector<MovedIndex>& operators, Position position)
    {
        forEachPosition(net_.circuit(), operators, position, [&] {
            lookAt(position);
            return true;
        });
    }

    void lookAt(const Position& given)
    {
        ++figures_.coverage.covered;
        const auto settled = ask_.settled(given);
        if (!settled || isShorted(*settled))
            return; // no figure means anything
        const Readings low(meter_, *settled, SupplyLevel::Lowest, Want::JustVolts), nominal(meter_, *settled);
        for (const Readings* each : {&low, &nominal})
            if (!each->settled() || !each->fightingFeeds().empty() || !each->solution().unlimited.empty())
                return;
        bool nearLeast = false; // with so little to spare that the end of a battery may be too low
        for (std::uint32_t i = 0; i < figures_.lowestVolts.size(); ++i)
            if (isOnDc(i) && ask_.returnedIn(*settled, i)) {
                put(figures_.lowestVolts[i], -voltsAt(low, i), *settled);
                nearLeast = nearLeast || voltsAt(low, i) * batteryShare_ < meter_.loads[i]->leastVolts.value_or(Volts{0}).value * spare;
            }
        if (nearLeast)
            lookAtBattery(*settled);
        bool nearMost = false;
        for (std::uint32_t i = 0; i < figures_.highestVolts.size(); ++i)
            if (const LoadPart* load = meter_.loads[i]; load && load->mostVolts)
                nearMost = nearMost || voltsAt(nominal, i) * highestShare_ * spare > load->mostVolts->value;
        if (nearMost)
            lookAtHighest(*settled);
        for (std::uint32_t i = 0; i < figures_.mostOutOfFeed.size(); ++i)
            put(figures_.mostOutOfFeed[i], nominal.outOf(i).value, *settled);
        for (std::uint32_t i = 0; i < figures_.mostThroughJoint.size(); ++i)
            put(figures_.mostThroughJoint[i], std::abs(nominal.throughJoint(i).value), *settled);
    }

    void lookAtBattery(const Position& settled)
    {
        const Readings battery(meter_, settled, SupplyLevel::OnBattery, Want::JustVolts);
        for (std::uint32_t i = 0; i < figures_.lowestOnBattery.size(); ++i)
            if (isOnDc(i) && ask_.returnedIn(settled, i))
                put(figures_.lowestOnBattery[i], -voltsAt(battery, i), settled);
    }

    void lookAtHighest(const Position& settled)
    {
        const Readings high(meter_, settled, SupplyLevel::Highest, Want::JustVolts);
        for (std::uint32_t i = 0; i < figures_.highestVolts.size(); ++i)
            if (isOnDc(i))
                put(figures_.highestVolts[i], voltsAt(high, i), settled);
    }

    bool isShorted(const Position& position) const
    {
        for (std::uint32_t i = 0; i < net_.circuit().feeds.size(); ++i)
            if (ask_.shortedIn(position, i))
                return true;
        return false;
    }

    bool isOnDc(std::uint32_t element) const
    {
        const std::vector<std::uint32_t> feeds = ask_.feedsNear(net_.circuit().elements[element].a);
        return meter_.loads[element] && std::none_of(feeds.begin(), feeds.end(), [&](std::uint32_t feed) { return net_.circuit().feeds[feed].ac; });
    }

    static double voltsAt(const Readings& readings, std::uint32_t element)
    {
        const auto volts = readings.acrossElement(element);
        return volts ? std::abs(volts->value) : 0;
    }

    std::size_t throwsIn(const Position& position) const
    {
        std::size_t count = 0;
        for (MovedIndex moved = 0; moved < position.size(); ++moved)
            count += position[moved] != net_.circuit().operators[moved].idle;
        return count;
    }

    // Higher counts; of equals, the fewest throws.
    void put(std::optional<Worst>& held, double value, const Position& at) const
    {
        const double slack = 1e-9 * std::max(1.0, std::abs(value));
        if (!held || value > held->value + slack || (value > held->value - slack && throwsIn(at) < throwsIn(held->at)))
            held = Worst{value, at};
    }

    Figures figures_;
    const Netlist& net_;
    const Questions& ask_;
    double most_, batteryShare_ = 1, highestShare_ = 1;
    const Meter meter_;
};

} // namespace

Figures figuresOf(const Job& job, const Netlist& net, const Questions& ask, std::uint64_t budget)
{
    const auto& elements = net.circuit().elements;
    const bool hasLoads = std::any_of(elements.begin(), elements.end(), [](const Element& each) { return each.kind == ElementKind::Load; });
    Figures figures = net.circuit().feeds.empty() || !hasLoads ? nothing(net.circuit()) : Gathering(job, net, ask, budget).gathered();
    for (auto* list : {&figures.lowestVolts, &figures.lowestOnBattery}) // they were sought as the highest of what is below nothing
        for (auto& worst : *list)
            if (worst)
                worst->value = -worst->value;
    return figures;
}

} // namespace doorloom
