#include "solve/readings.h"

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr int mostRatingRounds = 3;

} // namespace

Readings::Readings(const Job& job, const Netlist& net, const Position& position, const Conditions& conditions)
    : job_(job), net_(net), conditions_(conditions)
{
    // A load of several rated volts is taken by those that it gets, which are known afterwards.
    std::vector<const LoadAt*> taken;
    for (int round = 0; round < mostRatingRounds; ++round) {
        std::vector<const LoadAt*> rated;
        for (std::uint32_t i = 0; i < net.circuit().elements.size(); ++i) {
            const Part* part = partAt(net.circuit().elements[i].origin);
            const auto* load = part ? std::get_if<LoadPart>(&part->body) : nullptr;
            rated.push_back(load ? ratedOf(i, *load) : nullptr);
        }
        if (round > 0 && rated == taken)
            return;
        taken = std::move(rated);
        network_ = {};
        network_.vertices = net.circuit().vertices;
        addJoints(position);
        addFeeds(position);
        addElements();
        for (const Diode& diode : net.circuit().diodes)
            network_.diodes.push_back({diode.anode, diode.cathode, diode.drop / 1000.0});
        solution_ = solved(network_);
    }
}

const Part* Readings::partAt(std::uint32_t number) const
{
    const Origin& origin = net_.origin(number);
    const Kind* kind = origin.device ? kindOf(job_, origin.device) : nullptr;
    return kind ? findPart(*kind, origin.part) : nullptr;
}

double Readings::ohmsOfJoint(const Joint& joint) const
{
    const Conductor* conductor = job_.conductors.find(net_.origin(joint.origin).conductor);
    if (!conductor)
        return 0;
    const auto ohms = ohmsOf(gaugeOf(job_, *conductor), lengthOf(job_, *conductor), conditions_.celsius);
    return ohms ? std::max(0.0, ohms->value) : 0;
}

void Readings::addJoints(const Position& position)
{
    resistorOfJoint_.assign(net_.circuit().joints.size(), none);
    for (std::uint32_t i = 0; i < net_.circuit().joints.size(); ++i) {
        const Joint& joint = net_.circuit().joints[i];
        if (!holds(joint.guard, position))
            continue;
        resistorOfJoint_[i] = static_cast<std::uint32_t>(network_.resistors.size());
        network_.resistors.push_back({joint.a, joint.b, ohmsOfJoint(joint)});
    }
}

double Readings::voltsOf(const Feed& feed) const
{
    const Part* part = partAt(feed.origin);
    const auto* source = part ? std::get_if<SourcePart>(&part->body) : nullptr;
    switch (conditions_.supplies) {
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

void Readings::addFeeds(const Position& position)
{
    sourceOfFeed_.assign(net_.circuit().feeds.size(), none);
    for (std::uint32_t i = 0; i < net_.circuit().feeds.size(); ++i) {
        const Feed& feed = net_.circuit().feeds[i];
        if (feed.ac != conditions_.ac || !holds(feed.live, position))
            continue;
        sourceOfFeed_[i] = static_cast<std::uint32_t>(network_.sources.size());
        network_.sources.push_back({feed.plus, feed.minus, voltsOf(feed)});
    }
}

void Readings::addElements()
{
    resistorOfElement_.assign(net_.circuit().elements.size(), none);
    drawOfElement_.assign(net_.circuit().elements.size(), none);
    elementOfDraw_.clear();
    for (std::uint32_t i = 0; i < net_.circuit().elements.size(); ++i) {
        const Element& element = net_.circuit().elements[i];
        const Part* part = partAt(element.origin);
        if (element.kind == ElementKind::Resistor) {
            resistorOfElement_[i] = static_cast<std::uint32_t>(network_.resistors.size());
            network_.resistors.push_back({element.a, element.b, element.ohms});
        } else if (const auto* load = part ? std::get_if<LoadPart>(&part->body) : nullptr) {
            addLoad(i, *load);
        } else if (const auto* input = part ? std::get_if<DryInputPart>(&part->body) : nullptr) {
            addWetting(i, *input);
        }
    }
}

// The rated volts that come next to those across it; of the first round, the lowest.
const LoadAt* Readings::ratedOf(std::uint32_t element, const LoadPart& load) const
{
    const double across = solution_.piece.empty() ? 0 : std::abs(acrossElement(element).value_or(Volts{0}).value);
    const LoadAt* best = nullptr;
    for (const LoadAt& rated : load.rated)
        if (rated.amperes.value > 0 && rated.volts.value > 0 &&
            (!best || std::abs(rated.volts.value - across) < std::abs(best->volts.value - across)))
            best = &rated;
    return best;
}

void Readings::addLoad(std::uint32_t element, const LoadPart& load)
{
    const LoadAt* rated = ratedOf(element, load);
    if (!rated)
        return;
    const Element& at = net_.circuit().elements[element];
    const Ohms ohms = rated->volts / rated->amperes;
    if (load.law == LoadLaw::Resistive) {
        resistorOfElement_[element] = static_cast<std::uint32_t>(network_.resistors.size());
        network_.resistors.push_back({at.a, at.b, ohms.value});
        return;
    }
    drawOfElement_[element] = static_cast<std::uint32_t>(network_.draws.size());
    elementOfDraw_.push_back(element);
    const double amount =
        load.law == LoadLaw::ConstantPower ? (rated->volts * rated->amperes).value : rated->amperes.value;
    network_.draws.push_back({at.a, at.b, load.law, amount, ohms.value, load.releaseVolts.value_or(Volts{0}).value});
}

// Its volts behind its ohms.
void Readings::addWetting(std::uint32_t element, const DryInputPart& input)
{
    if (!input.wettingVolts || !input.wettingOhms || input.wettingOhms->value <= 0 || conditions_.ac)
        return;
    const Element& at = net_.circuit().elements[element];
    const Vertex inside = network_.vertices++;
    network_.sources.push_back({inside, at.b, input.wettingVolts->value});
    resistorOfElement_[element] = static_cast<std::uint32_t>(network_.resistors.size());
    network_.resistors.push_back({at.a, inside, input.wettingOhms->value});
}

std::optional<Volts> Readings::between(Vertex x, Vertex y) const
{
    const auto volts = solution_.between(x, y);
    return volts ? std::optional(Volts{*volts}) : std::nullopt;
}

Amperes Readings::throughElement(std::uint32_t element) const
{
    return drawOfElement_[element] != none ? Amperes{solution_.draws[drawOfElement_[element]]}
                                           : amperes(solution_.resistors, resistorOfElement_[element]);
}

std::optional<Volts> Readings::acrossElement(std::uint32_t element) const
{
    const Element& at = net_.circuit().elements[element];
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
