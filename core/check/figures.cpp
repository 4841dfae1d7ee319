#include "check/figures.h"

#include "solve/inputways.h"
#include "solve/lookedat.h"
#include "verdict/positions.h"

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr double spare = 1.05;      // a load that is no plain resistance drops a little more at fewer volts
constexpr double inputSpare = 1;    // volts past its own that an input may see
constexpr double noCurrent = 1e-9;  // amperes
constexpr double slack = 1e-9;

// Than it holds.
bool pullsInHarder(const LoadPart& load)
{
    return load.inrush && std::all_of(load.rated.begin(), load.rated.end(), [&](const LoadAt& rated) { return load.inrush->value > rated.amperes.value + slack; });
}

Figures nothing(const Circuit& circuit)
{
    Figures figures;
    for (Worsts* list : {&figures.lowestVolts, &figures.lowestOnBattery, &figures.highestVolts, &figures.lowestPullingIn, &figures.unfedVolts})
        list->resize(circuit.elements.size());
    for (Worsts* list : {&figures.outOfFeed, &figures.outPullingIn, &figures.outPastLoads})
        list->resize(circuit.feeds.size());
    for (Worsts* list : {&figures.throughJoint, &figures.throughPullingIn})
        list->resize(circuit.joints.size());
    figures.inputVolts.resize(circuit.inputs.size());
    figures.outAtReturn.resize(circuit.feeds.size());
    figures.outAtRest.resize(circuit.feeds.size());
    figures.throughAtRest.resize(circuit.joints.size());
    return figures;
}

// Of DC or of AC sources alone.
class Gathering {
public:
    Gathering(const Job& job, const Netlist& net, const Questions& ask, bool ac, VoltsWanted volts)
        : figures_(nothing(net.circuit())), circuit_(net.circuit()), ask_(ask), meter_(job, net, {.ac = ac}), wanted_(volts)
    {
        findShares();
        for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i) {
            isMetered_.push_back(meter_.loads[i] && isOn(circuit_.elements[i].a));
            hasInrush_ = hasInrush_ || (isMetered_[i] && pullsInHarder(*meter_.loads[i]));
            passesBesideLoads_ = passesBesideLoads_ || circuit_.elements[i].kind == ElementKind::Resistor;
        }
        for (const DryInput& input : circuit_.inputs)
            wetting_.push_back(wettingOf(input));
    }

    // Over all positions, within the budget of steps.
    Figures gathered(std::uint64_t budget)
    {
        const LookedAt look(meter_, ask_, LookedAt::For::Loads, budget);
        mostOut_.resize(look.groups().size());
        for (const LookedAt::Group& group : look.groups())
            tried_.insert(tried_.end(), group.operators.begin(), group.operators.end());
        figures_.coverage = look.forEach([&](std::size_t group, const Position& settled) { return lookAt(group, settled); });
        lookTowardsLoads();
        sumUp();
        return std::move(figures_);
    }

    // Of these positions alone, and without what pulls in.
    Figures gatheredIn(const std::vector<Position>& positions)
    {
        hasInrush_ = false;
        for (const Position& position : positions)
            if (const auto settled = ask_.settled(position))
                lookAt(noGroup, *settled);
        return std::move(figures_);
    }

private:
    static constexpr std::size_t noGroup = LookedAt::rest - 1;
    bool ac() const { return meter_.conditions.ac; }

    void findShares()
    {
        for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i)
            if (const double lowest = meter_.volts(i, SupplyLevel::Lowest), nominal = meter_.volts(i, SupplyLevel::Nominal);
                circuit_.feeds[i].ac == ac() && lowest > 0 && nominal > 0) {
                figures_.batteryShare = std::min(figures_.batteryShare, meter_.volts(i, SupplyLevel::OnBattery) / lowest);
                highestShare_ = std::max(highestShare_, meter_.volts(i, SupplyLevel::Highest) / nominal);
            }
    }

    // Are all sources near it of the kind that is looked at?
    bool isOn(Vertex vertex) const
    {
        const std::vector<std::uint32_t> feeds = ask_.feedsNear(vertex);
        return !feeds.empty() && std::all_of(feeds.begin(), feeds.end(), [&](std::uint32_t feed) { return circuit_.feeds[feed].ac == ac(); });
    }

    // Rectified current has no magnitude that could be told from one number.
    bool holds(const Readings& readings) const
    {
        const auto& diodes = readings.solution().diodes;
        return readings.hold() && (!ac() || std::all_of(diodes.begin(), diodes.end(), [](double amperes) { return std::abs(amperes) < noCurrent; }));
    }

    double lookAt(std::size_t group, const Position& settled)
    {
        if (isShorted(settled))
            return 0; // no figure means anything
        const Readings low(meter_, settled, {.supplies = SupplyLevel::Lowest, .want = Want::JustVolts}), nominal(meter_, settled);
        if (!holds(low) || !holds(nominal))
            return 0;
        const std::vector<char> isFed = fedIn(settled);
        lookAtVolts(settled, isFed, low, nominal);
        lookAtInputs(settled, nominal);
        for (std::uint32_t i = 0; i < circuit_.joints.size(); ++i) {
            const double amperes = std::abs(nominal.throughJoint(i).value);
            put(figures_.throughJoint[i], amperes, settled);
            if (group == LookedAt::rest)
                figures_.throughAtRest[i] = amperes;
        }
        if (hasInrush_)
            lookAtInrush(settled, isFed);
        if (passesBesideLoads_)
            lookPastLoads(settled);
        return lookAtFeeds(group, settled, nominal);
    }

    std::vector<char> fedIn(const Position& settled) const
    {
        std::vector<char> isFed;
        for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i)
            isFed.push_back(isMetered_[i] && ask_.returnedIn(settled, i));
        return isFed;
    }

    void lookAtVolts(const Position& settled, const std::vector<char>& isFed, const Readings& low, const Readings& nominal)
    {
        bool nearLeast = wanted_ == VoltsWanted::All; // with so little to spare that the end of a battery may be too low
        bool nearMost = nearLeast;
        for (std::uint32_t i = 0; i < isFed.size(); ++i) {
            if (!isMetered_[i])
                continue;
            const LoadPart& load = *meter_.loads[i];
            if (isFed[i]) {
                put(figures_.lowestVolts[i], -voltsAt(low, i), settled);
                nearLeast = nearLeast || voltsAt(low, i) * figures_.batteryShare < load.leastVolts.value_or(Volts{0}).value * spare;
            } else if (load.releaseVolts && load.leastVolts && voltsAt(nominal, i) > load.releaseVolts->value + slack) {
                putFewest(figures_.unfedVolts[i], nominal.acrossElement(i)->value, settled);
            }
            nearMost = nearMost || (load.mostVolts && voltsAt(nominal, i) * highestShare_ * spare > load.mostVolts->value);
        }
        if (nearLeast && figures_.batteryShare < 1)
            lookAtBattery(settled, isFed);
        if (nearMost)
            lookAtHighest(settled);
    }

    void lookAtBattery(const Position& settled, const std::vector<char>& isFed)
    {
        const Readings battery(meter_, settled, {.supplies = SupplyLevel::OnBattery, .want = Want::JustVolts});
        if (!battery.settled())
            return;
        for (std::uint32_t i = 0; i < isFed.size(); ++i)
            if (isFed[i])
                put(figures_.lowestOnBattery[i], -voltsAt(battery, i), settled);
    }

    void lookAtHighest(const Position& settled)
    {
        const Readings high(meter_, settled, {.supplies = SupplyLevel::Highest, .want = Want::JustVolts});
        if (!high.settled())
            return;
        for (std::uint32_t i = 0; i < isMetered_.size(); ++i)
            if (isMetered_[i])
                put(figures_.highestVolts[i], voltsAt(high, i), settled);
    }

    // What no load asks for: contacts that bring a load to an input.
    void lookTowardsLoads()
    {
        constexpr std::size_t mostOperators = 6;
        for (std::vector<MovedIndex> operators : ac() ? std::vector<std::vector<MovedIndex>>{} : operatorsTowardsLoads(meter_, ask_)) {
            operators.resize(std::min(operators.size(), mostOperators));
            Position position = atRest(circuit_);
            if (!operators.empty())
                forEachPosition(circuit_, operators, position, [&] {
                    const auto settled = ask_.settled(position);
                    if (!settled || isShorted(*settled))
                        return true;
                    if (const Readings nominal(meter_, *settled); holds(nominal))
                        lookAtInputs(*settled, nominal);
                    return true;
                });
        }
    }

    void lookAtInputs(const Position& settled, const Readings& nominal)
    {
        for (std::uint32_t i = 0; !ac() && i < circuit_.inputs.size(); ++i) {
            const DryInput& input = circuit_.inputs[i];
            const auto own = wetting_[i];
            const auto volts = nominal.between(input.terminal, input.reference);
            if (own && volts && (volts->value > *own + inputSpare || volts->value < -inputSpare))
                putFewest(figures_.inputVolts[i], volts->value, settled);
        }
    }

    std::optional<double> wettingOf(const DryInput& input) const
    {
        for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i)
            if (circuit_.elements[i].origin == input.origin && meter_.inputs[i] && meter_.inputs[i]->wettingVolts)
                return meter_.inputs[i]->wettingVolts->value;
        return std::nullopt;
    }

    // What one operator has just switched on: fed now, and not in another throw of it.
    void lookAtInrush(const Position& settled, const std::vector<char>& isFed)
    {
        std::vector<std::vector<std::uint32_t>> seen;
        for (MovedIndex moved : tried_)
            for (ThrowIndex thrown = 0; thrown < circuit_.operators[moved].throws; ++thrown) {
                Position other = settled;
                other[moved] = thrown;
                const auto before = thrown == settled[moved] ? std::nullopt : ask_.settled(other);
                std::vector<std::uint32_t> pulling = before ? startedSince(*before, isFed) : std::vector<std::uint32_t>{};
                if (!pulling.empty() && std::find(seen.begin(), seen.end(), pulling) == seen.end()) {
                    lookPullingIn(settled, pulling);
                    seen.push_back(std::move(pulling));
                }
            }
    }

    std::vector<std::uint32_t> startedSince(const Position& before, const std::vector<char>& isFed) const
    {
        std::vector<std::uint32_t> started;
        for (std::uint32_t i = 0; i < isFed.size(); ++i)
            if (isFed[i] && pullsInHarder(*meter_.loads[i]) && !ask_.returnedIn(before, i))
                started.push_back(i);
        return started;
    }

    void lookPullingIn(const Position& settled, const std::vector<std::uint32_t>& pulling)
    {
        const Readings nominal(meter_, settled, {.pullingIn = pulling});
        const Readings low(meter_, settled, {.supplies = SupplyLevel::Lowest, .want = Want::JustVolts, .pullingIn = pulling});
        if (!holds(low) || !holds(nominal))
            return;
        for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i)
            put(figures_.outPullingIn[i], nominal.outOf(i).value, settled);
        for (std::uint32_t i = 0; i < circuit_.joints.size(); ++i)
            put(figures_.throughPullingIn[i], std::abs(nominal.throughJoint(i).value), settled);
        const std::vector<std::uint32_t> lost = low.notCarried();
        for (std::uint32_t element : pulling) {
            const bool isCarried = std::find(lost.begin(), lost.end(), element) == lost.end();
            put(figures_.lowestPullingIn[element], isCarried ? -voltsAt(low, element) : 0, settled);
        }
    }

    void lookPastLoads(const Position& settled)
    {
        const Readings bare(meter_, settled, {.supplies = SupplyLevel::Highest, .loads = Asked::Loads::LeftOut});
        if (bare.hold())
            for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i)
                put(figures_.outPastLoads[i], bare.outOf(i).value, settled);
    }

    double lookAtFeeds(std::size_t group, const Position& settled, const Readings& nominal)
    {
        if (group == LookedAt::rest) {
            restPosition_ = settled;
            lookAtReturn(settled);
        }
        double drawn = 0;
        for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i) {
            const double amperes = nominal.outOf(i).value;
            drawn += amperes;
            put(figures_.outOfFeed[i], amperes, settled);
            if (group == LookedAt::rest)
                figures_.outAtRest[i] = amperes;
            if (group >= mostOut_.size())
                continue;
            mostOut_[group].resize(circuit_.feeds.size());
            put(mostOut_[group][i], amperes, settled);
        }
        return drawn;
    }

    // The mains comes back: all that is fed at rest pulls in at once.
    void lookAtReturn(const Position& settled)
    {
        std::vector<std::uint32_t> pulling;
        const std::vector<char> isFed = fedIn(settled);
        for (std::uint32_t i = 0; i < isFed.size(); ++i)
            if (isFed[i] && pullsInHarder(*meter_.loads[i]))
                pulling.push_back(i);
        if (pulling.empty())
            return;
        const Readings nominal(meter_, settled, {.pullingIn = pulling});
        for (std::uint32_t i = 0; nominal.hold() && i < circuit_.feeds.size(); ++i)
            figures_.outAtReturn[i] = nominal.outOf(i).value;
    }

    // Groups do not change each other: what each adds to rest at the most is drawn together.
    void sumUp()
    {
        if (!restPosition_)
            return;
        for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i) {
            Worst together{figures_.outAtRest[i], *restPosition_};
            for (const Worsts& most : mostOut_)
                if (!most.empty() && most[i] && most[i]->value > figures_.outAtRest[i] + slack) {
                    together.value += most[i]->value - figures_.outAtRest[i];
                    for (MovedIndex moved = 0; moved < together.at.size(); ++moved)
                        if (most[i]->at[moved] != (*restPosition_)[moved])
                            together.at[moved] = most[i]->at[moved];
                }
            put(figures_.outOfFeed[i], together.value, together.at);
        }
    }

    bool isShorted(const Position& position) const
    {
        for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i)
            if (ask_.shortedIn(position, i))
                return true;
        return false;
    }

    static double voltsAt(const Readings& readings, std::uint32_t element)
    {
        const auto volts = readings.acrossElement(element);
        return volts ? std::abs(volts->value) : 0;
    }

    void put(std::optional<Worst>& held, double value, const Position& at) const { putHighest(circuit_, held, value, at); }
    void putFewest(std::optional<Worst>& held, double value, const Position& at) const { doorloom::putFewest(circuit_, held, value, at); }

    Figures figures_;
    const Circuit& circuit_;
    const Questions& ask_;
    const Meter meter_;
    const VoltsWanted wanted_;
    std::vector<MovedIndex> tried_;
    double highestShare_ = 1;
    std::vector<std::optional<double>> wetting_; // by input: its own volts
    std::vector<char> isMetered_; // by element: a load, on sources of the kind that is looked at
    bool hasInrush_ = false, passesBesideLoads_ = false;
    std::optional<Position> restPosition_;
    std::vector<Worsts> mostOut_; // by group, feed
};

void turnRound(Worsts& list) // sought as the highest of what is below nothing
{
    for (auto& worst : list)
        if (worst)
            worst->value = -worst->value;
}

template <class Held> void takeOver(std::vector<Held>& into, const std::vector<Held>& from)
{
    for (std::size_t i = 0; i < into.size(); ++i)
        if (from[i])
            into[i] = from[i];
}

// Of loads and feeds on AC; a joint carries one or the other.
void addAc(Figures& figures, const Figures& ac)
{
    figures.coverage.positions = std::max(figures.coverage.positions, ac.coverage.positions);
    figures.coverage.covered = std::max(figures.coverage.covered, ac.coverage.covered);
    figures.batteryShare = std::min(figures.batteryShare, ac.batteryShare);
    for (Worsts Figures::*list : {&Figures::lowestVolts, &Figures::lowestOnBattery, &Figures::highestVolts, &Figures::lowestPullingIn,
                                  &Figures::unfedVolts})
        takeOver(figures.*list, ac.*list);
    for (std::size_t i = 0; i < figures.outOfFeed.size(); ++i)
        for (Worsts Figures::*list : {&Figures::outOfFeed, &Figures::outPullingIn, &Figures::outPastLoads})
            if ((ac.*list)[i] && (ac.*list)[i]->value > 0)
                (figures.*list)[i] = (ac.*list)[i];
    for (std::size_t i = 0; i < figures.throughJoint.size(); ++i)
        for (Worsts Figures::*list : {&Figures::throughJoint, &Figures::throughPullingIn})
            if ((ac.*list)[i] && (!(figures.*list)[i] || (ac.*list)[i]->value > (figures.*list)[i]->value))
                (figures.*list)[i] = (ac.*list)[i];
    for (std::vector<double> Figures::*list : {&Figures::outAtReturn, &Figures::outAtRest, &Figures::throughAtRest})
        for (std::size_t i = 0; i < (figures.*list).size(); ++i)
            (figures.*list)[i] = std::max((figures.*list)[i], (ac.*list)[i]);
}

template <class Gather>
Figures ofBoth(const Job& job, const Netlist& net, const Questions& ask, VoltsWanted volts, Gather gather)
{
    const Circuit& circuit = net.circuit();
    const bool hasLoads = std::any_of(circuit.elements.begin(), circuit.elements.end(), [](const Element& each) {
        return each.kind == ElementKind::Load || each.kind == ElementKind::Resistor;
    });
    const auto isAc = [](const Feed& feed) { return feed.ac; };
    Figures figures = nothing(circuit);
    if (!hasLoads)
        return figures;
    if (!std::all_of(circuit.feeds.begin(), circuit.feeds.end(), isAc))
        figures = gather(Gathering(job, net, ask, false, volts));
    if (std::any_of(circuit.feeds.begin(), circuit.feeds.end(), isAc))
        addAc(figures, gather(Gathering(job, net, ask, true, volts)));
    for (Worsts* list : {&figures.lowestVolts, &figures.lowestOnBattery, &figures.lowestPullingIn})
        turnRound(*list);
    return figures;
}

} // namespace

Figures figuresOf(const Job& job, const Netlist& net, const Questions& ask, std::uint64_t budget, VoltsWanted volts)
{
    return ofBoth(job, net, ask, volts, [&](Gathering gathering) { return gathering.gathered(budget); });
}

Figures figuresIn(const Job& job, const Netlist& net, const Questions& ask, const std::vector<Position>& positions)
{
    return ofBoth(job, net, ask, VoltsWanted::NearLimits, [&](Gathering gathering) { return gathering.gatheredIn(positions); });
}

} // namespace doorloom
