#include "solve/readings.h"

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr int mostRatingRounds = 3;

double voltsOf(const Feed& feed, const SourcePart* source, SupplyLevel level)
{
    switch (level) {
    case SupplyLevel::Lowest:
        return feed.lowest / 1000.0;
    case SupplyLevel::Highest:
        return feed.highest / 1000.0;
    case SupplyLevel::OnBattery:
        return source && source->lowestOnBattery ? source->lowestOnBattery->value : feed.lowest / 1000.0;
    case SupplyLevel::Nominal:
        break;
    }
    return feed.nominal / 1000.0;
}

} // namespace

Meter::Meter(const Job& job, const Netlist& netlist, const Conditions& with) : net(netlist), conditions(with)
{
    const Circuit& circuit = net.circuit();
    for (const Joint& joint : circuit.joints) {
        const Conductor* conductor = job.conductors.find(net.origin(joint.origin).conductor);
        const auto ohms = conductor ? ohmsOf(gaugeOf(job, *conductor), lengthOf(job, *conductor), conditions.celsius) : std::nullopt;
        ohmsOfJoint.push_back(ohms && std::isfinite(ohms->value) ? std::max(0.0, ohms->value) : 0);
    }
    for (const Feed& feed : circuit.feeds) {
        const auto* source = partBehind<SourcePart>(job, net.origin(feed.origin));
        for (std::size_t level = 0; level < voltsOfFeed.size(); ++level)
            voltsOfFeed[level].push_back(voltsOf(feed, source, static_cast<SupplyLevel>(level)));
        if (feed.ac == conditions.ac)
            highestNominal = std::max(highestNominal, feed.nominal / 1000.0);
    }
    for (const Element& element : circuit.elements) {
        loads.push_back(partBehind<LoadPart>(job, net.origin(element.origin)));
        inputs.push_back(partBehind<DryInputPart>(job, net.origin(element.origin)));
    }
}

Readings::Readings(const Meter& meter, const Position& position, Asked asked) : meter_(&meter), asked_(std::move(asked))
{
    // A load of several rated volts is taken by those that it gets, which are known afterwards.
    std::vector<const LoadAt*> taken;
    for (int round = 0; round < mostRatingRounds; ++round) {
        std::vector<const LoadAt*> rated;
        for (std::uint32_t i = 0; i < circuit().elements.size(); ++i)
            rated.push_back(meter.loads[i] ? ratedOf(i) : nullptr);
        if (round > 0 && rated == taken)
            return;
        taken = std::move(rated);
        network_ = {};
        powerFactor_.clear();
        network_.vertices = circuit().vertices;
        addJoints(position);
        addFeeds(position);
        addElements();
        for (const Diode& diode : circuit().diodes)
            network_.diodes.push_back({diode.anode, diode.cathode, diode.drop / 1000.0});
        solution_ = solved(network_, asked_.want);
        letLag();
    }
}

// Magnitudes alone do not add up then.
void Readings::letLag()
{
    alternating_.reset();
    const bool lags = std::any_of(powerFactor_.begin(), powerFactor_.end(), [](double factor) { return factor < 1; });
    if (!lags || !network_.draws.empty() || !solution_.fighting.empty() ||
        std::any_of(solution_.diodes.begin(), solution_.diodes.end(), [](double amperes) { return amperes != 0; }))
        return;
    alternating_ = solvedAlternating(network_, powerFactor_);
    if (alternating_) {
        solution_.resistors = alternating_->resistors;
        solution_.sources = alternating_->sources;
    }
}

void Readings::addResistor(Vertex a, Vertex b, double ohms, double powerFactor)
{
    network_.resistors.push_back({a, b, ohms});
    powerFactor_.push_back(powerFactor);
}

void Readings::addJoints(const Position& position)
{
    resistorOfJoint_.assign(circuit().joints.size(), none);
    for (std::uint32_t i = 0; i < circuit().joints.size(); ++i) {
        const Joint& joint = circuit().joints[i];
        if (!holds(joint.guard, position))
            continue;
        resistorOfJoint_[i] = static_cast<std::uint32_t>(network_.resistors.size());
        addResistor(joint.a, joint.b, meter_->ohmsOfJoint[i]);
    }
}

void Readings::addFeeds(const Position& position)
{
    sourceOfFeed_.assign(circuit().feeds.size(), none);
    for (std::uint32_t i = 0; i < circuit().feeds.size(); ++i) {
        const Feed& feed = circuit().feeds[i];
        if (feed.ac != meter_->conditions.ac || !holds(feed.live, position))
            continue;
        sourceOfFeed_[i] = static_cast<std::uint32_t>(network_.sources.size());
        network_.sources.push_back({feed.plus, feed.minus, meter_->volts(i, asked_.supplies)});
    }
}

void Readings::addElements()
{
    resistorOfElement_.assign(circuit().elements.size(), none);
    drawOfElement_.assign(circuit().elements.size(), none);
    elementOfDraw_.clear();
    for (std::uint32_t i = 0; i < circuit().elements.size(); ++i) {
        const Element& element = circuit().elements[i];
        if (element.kind == ElementKind::Resistor) {
            resistorOfElement_[i] = static_cast<std::uint32_t>(network_.resistors.size());
            addResistor(element.a, element.b, element.ohms);
        } else if (meter_->loads[i]) {
            addLoad(i);
        } else if (meter_->inputs[i]) {
            addWetting(i, *meter_->inputs[i]);
        }
    }
}

// The rated volts that come next to those across it; in the first round, to those of the highest source.
const LoadAt* Readings::ratedOf(std::uint32_t element) const
{
    const LoadPart& load = *meter_->loads[element];
    const double across = solution_.piece.empty() ? meter_->highestNominal : std::abs(acrossElement(element).value_or(Volts{0}).value);
    const LoadAt* best = nullptr;
    for (const LoadAt& rated : load.rated)
        if (rated.amperes.value > 0 && rated.volts.value > 0 &&
            (!best || std::abs(rated.volts.value - across) < std::abs(best->volts.value - across)))
            best = &rated;
    return best;
}

void Readings::addLoad(std::uint32_t element)
{
    const LoadPart& load = *meter_->loads[element];
    const LoadAt* rated = ratedOf(element);
    if (!rated || asked_.loads == Asked::Loads::LeftOut)
        return;
    const Element& at = circuit().elements[element];
    const Ohms ohms = rated->volts / rated->amperes;
    const bool pullsIn = load.inrush && std::binary_search(asked_.pullingIn.begin(), asked_.pullingIn.end(), element);
    if (load.law == LoadLaw::Resistive && !pullsIn) {
        resistorOfElement_[element] = static_cast<std::uint32_t>(network_.resistors.size());
        addResistor(at.a, at.b, ohms.value, meter_->conditions.ac ? load.powerFactor.value_or(1) : 1);
        return;
    }
    drawOfElement_[element] = static_cast<std::uint32_t>(network_.draws.size());
    elementOfDraw_.push_back(element);
    const double least = load.releaseVolts.value_or(Volts{0}).value;
    if (pullsIn)
        network_.draws.push_back({at.a, at.b, LoadLaw::ConstantCurrent, load.inrush->value, (rated->volts / *load.inrush).value, least});
    else
        network_.draws.push_back({at.a, at.b, load.law,
                                  load.law == LoadLaw::ConstantPower ? (rated->volts * rated->amperes).value : rated->amperes.value,
                                  ohms.value, least});
}

// Its volts behind its ohms.
void Readings::addWetting(std::uint32_t element, const DryInputPart& input)
{
    if (!input.wettingVolts || !input.wettingOhms || input.wettingOhms->value <= 0 || meter_->conditions.ac)
        return;
    const Element& at = circuit().elements[element];
    const Vertex inside = network_.vertices++;
    network_.sources.push_back({inside, at.b, input.wettingVolts->value});
    resistorOfElement_[element] = static_cast<std::uint32_t>(network_.resistors.size());
    addResistor(at.a, inside, input.wettingOhms->value);
}

std::optional<Volts> Readings::between(Vertex x, Vertex y) const
{
    const auto volts = solution_.between(x, y);
    if (volts && alternating_)
        return Volts{std::abs(alternating_->volts[x] - alternating_->volts[y])};
    return volts ? std::optional(Volts{*volts}) : std::nullopt;
}

Amperes Readings::throughElement(std::uint32_t element) const
{
    return drawOfElement_[element] != none ? Amperes{solution_.draws[drawOfElement_[element]]}
                                           : amperes(solution_.resistors, resistorOfElement_[element]);
}

std::optional<Volts> Readings::acrossElement(std::uint32_t element) const
{
    const Element& at = circuit().elements[element];
    return between(at.a, at.b);
}

std::vector<std::uint32_t> Readings::fightingFeeds() const
{
    std::vector<std::uint32_t> feeds;
    for (std::uint32_t i = 0; i < sourceOfFeed_.size(); ++i)
        if (sourceOfFeed_[i] != none &&
            std::find(solution_.fighting.begin(), solution_.fighting.end(), sourceOfFeed_[i]) != solution_.fighting.end())
            feeds.push_back(i);
    return feeds;
}

std::vector<std::uint32_t> Readings::notCarried() const
{
    std::vector<std::uint32_t> elements;
    for (std::uint32_t draw : solution_.notCarried)
        elements.push_back(elementOfDraw_[draw]);
    return elements;
}

} // namespace doorloom
