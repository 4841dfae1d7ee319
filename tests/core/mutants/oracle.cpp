#include "oracle.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

namespace doorloom {

namespace {

constexpr double sourceOhms = 0.002, diodeOhms = 0.01, leak = 1e-9, blocking = 1e-8;
constexpr double unlike = 0.005;          // no two sources have quite the same volts
constexpr double shortedTimes = 5;        // of what a source gives
constexpr double wettingVolts = 5, wettingOhms = 4700; // where a kind does not say

PartAt partAt(const Netlist& net, std::uint32_t origin) { return {net.origin(origin).device, net.origin(origin).part}; }

} // namespace

Oracle::Oracle(const Job& job)
    : job_(job), net_(job), circuit_(net_.circuit()), ohms_(circuit_.elements.size()), wetting_(circuit_.elements.size()),
      loads_(circuit_.elements.size())
{
    for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i) {
        const Element& element = circuit_.elements[i];
        if (element.kind == ElementKind::Resistor)
            ohms_[i] = element.ohms;
        if (const auto* input = partBehind<DryInputPart>(job_, net_.origin(element.origin))) {
            ohms_[i] = input->wettingOhms.value_or(Ohms{wettingOhms}).value;
            wetting_[i] = input->wettingVolts.value_or(Volts{wettingVolts}).value;
        }
        if (const auto* load = partBehind<LoadPart>(job_, net_.origin(element.origin)); load && !load->rated.empty()) {
            loads_[i] = load;
            ohms_[i] = load->rated.back().volts.value / load->rated.back().amperes.value;
        }
    }
}

namespace {

std::vector<Vertex> netsOf(const Circuit& circuit, const Position& position)
{
    std::vector<Vertex> parent(circuit.vertices);
    std::iota(parent.begin(), parent.end(), Vertex{0});
    const auto root = [&](Vertex vertex) {
        while (parent[vertex] != vertex)
            vertex = parent[vertex] = parent[parent[vertex]];
        return vertex;
    };
    for (const Joint& joint : circuit.joints)
        if (holds(joint.guard, position))
            parent[root(joint.a)] = root(joint.b);
    std::vector<Vertex> net(circuit.vertices), number(circuit.vertices, circuit.vertices);
    Vertex count = 0;
    for (Vertex vertex = 0; vertex < circuit.vertices; ++vertex) {
        Vertex& of = number[root(vertex)];
        if (of == circuit.vertices)
            of = count++;
        net[vertex] = of;
    }
    return net;
}

} // namespace

std::vector<Vertex> Oracle::netsIn(const Position& position) const { return netsOf(circuit_, position); }

double Oracle::voltsOf(std::uint32_t feed) const
{
    const Feed& at = circuit_.feeds[feed];
    if (level_ == Level::Nominal)
        return at.nominal / 1000.0 * (1 + unlike * feed);
    if (level_ == Level::Highest)
        return at.highest / 1000.0;
    const auto* source = partBehind<SourcePart>(job_, net_.origin(at.origin));
    return std::min(source->lowest.value, source->lowestOnBattery.value_or(source->lowest).value);
}

// Each net's volts against earth, to which everything leaks a little.
std::vector<double> Oracle::solvedWith(std::vector<Branch> branches, const std::vector<Vertex>& net, const std::vector<bool>& conducts) const
{
    for (std::size_t i = 0; i < circuit_.diodes.size(); ++i) {
        const Diode& diode = circuit_.diodes[i];
        branches.push_back({net[diode.anode], net[diode.cathode], conducts[i] ? 1 / diodeOhms : blocking,
                            conducts[i] ? -diode.drop / 1000.0 / diodeOhms : 0});
    }
    const Vertex all = circuit_.vertices;
    std::vector<Vertex> row(all, all), used; // nets with a branch
    for (const Branch& at : branches)
        for (Vertex end : {at.a, at.b})
            if (at.a != at.b && row[end] == all) {
                row[end] = static_cast<Vertex>(used.size());
                used.push_back(end);
            }
    const std::size_t n = used.size(), width = n + 1;
    std::vector<double> m(n * width);
    for (std::size_t i = 0; i < n; ++i)
        m[i * width + i] = leak;
    for (const Branch& at : branches) {
        if (at.a == at.b)
            continue;
        const std::size_t a = row[at.a], b = row[at.b];
        m[a * width + a] += at.siemens;
        m[b * width + b] += at.siemens;
        m[a * width + b] -= at.siemens;
        m[b * width + a] -= at.siemens;
        m[a * width + n] -= at.constant;
        m[b * width + n] += at.constant;
    }
    for (std::size_t c = 0; c < n; ++c) { // symmetric and diagonally dominant: no pivot is needed
        for (std::size_t r = c + 1; r < n; ++r) {
            const double times = m[r * width + c] / m[c * width + c];
            if (times == 0)
                continue;
            for (std::size_t i = c; i < width; ++i)
                m[r * width + i] -= times * m[c * width + i];
        }
    }
    std::vector<double> volts(all);
    for (std::size_t r = n; r-- > 0;) {
        double sum = m[r * width + n];
        for (std::size_t i = r + 1; i < n; ++i)
            sum -= m[r * width + i] * volts[used[i]];
        volts[used[r]] = sum / m[r * width + r];
    }
    return volts;
}

Oracle::Half Oracle::solved(const std::vector<Vertex>& net, const Position& position, double sign) const
{
    std::vector<Branch> branches;
    for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i)
        if (const Feed& feed = circuit_.feeds[i]; holds(feed.live, position))
            branches.push_back({net[feed.plus], net[feed.minus], 1 / sourceOhms, -voltsOf(i) * (feed.ac ? sign : 1) / sourceOhms});
    for (std::size_t i = 0; i < circuit_.elements.size(); ++i)
        if (ohms_[i] > 0)
            branches.push_back({net[circuit_.elements[i].a], net[circuit_.elements[i].b], 1 / ohms_[i], -wetting_[i] / ohms_[i]});
    std::vector<bool> conducts(circuit_.diodes.size());
    Half half{solvedWith(branches, net, conducts)};
    for (std::size_t round = 0; round < 2 * circuit_.diodes.size() + 2; ++round) { // one more diode each time, the most eager one
        std::optional<std::size_t> turned;
        double most = 1e-4;
        for (std::size_t i = 0; i < circuit_.diodes.size(); ++i) {
            const Diode& diode = circuit_.diodes[i];
            const double over = half.across(net[diode.anode], net[diode.cathode]) - diode.drop / 1000.0;
            if (const double wish = conducts[i] ? -over : over; wish > most) {
                most = wish;
                turned = i;
            }
        }
        if (!turned)
            break;
        conducts[*turned] = !conducts[*turned];
        half.volts = solvedWith(branches, net, conducts);
    }
    return half;
}

Oracle::Read Oracle::readIn(const Position& position) const
{
    Read read{netsIn(position), {}};
    const bool alternates =
        std::any_of(circuit_.feeds.begin(), circuit_.feeds.end(), [&](const Feed& feed) { return feed.ac && holds(feed.live, position); });
    read.halves.push_back(solved(read.net, position, 1));
    if (alternates)
        read.halves.push_back(solved(read.net, position, -1));
    return read;
}

LoadState Oracle::stateOf(std::uint32_t element, const Read& read) const
{
    const Element& at = circuit_.elements[element];
    const LoadPart& load = *loads_[element];
    const double rated = load.rated.front().volts.value;
    double least = 1e9, most = -1e9;
    for (const Half& half : read.halves) {
        const double volts = half.across(read.net[at.a], read.net[at.b]);
        least = std::min(least, volts);
        most = std::max(most, volts);
    }
    const double size = std::max(std::abs(least), std::abs(most));
    if (size < load.releaseVolts.value_or(Volts{0.1 * rated}).value)
        return LoadState::Dead;
    const bool alternates = read.halves.size() == 2 && least < -0.3 * rated && most > 0.3 * rated;
    if (size > 0.3 * rated && ((alternates && load.accepts == Current::Dc) || (!alternates && load.accepts == Current::Ac)))
        return LoadState::WrongCurrent;
    if (load.polarised && !alternates && most < 0.5 * rated && least < -0.5 * rated)
        return LoadState::Reversed;
    if (size > 1.02 * load.mostVolts.value_or(Volts{1.2 * load.rated.back().volts.value}).value)
        return LoadState::TooManyVolts;
    if (load.polarised && !alternates && most < 0)
        return LoadState::Weak;
    return size < load.leastVolts.value_or(Volts{0.8 * rated}).value ? LoadState::Weak : LoadState::Works;
}

bool Oracle::isFed(std::uint32_t element, const Read& read) const
{
    const LoadState state = loads_[element] ? stateOf(element, read) : LoadState::Works;
    return state == LoadState::Works || state == LoadState::TooManyVolts;
}

InputState Oracle::stateOf(const DryInput& input, const Read& read) const
{
    const auto* part = partBehind<DryInputPart>(job_, net_.origin(input.origin));
    const double own = part->wettingVolts.value_or(Volts{wettingVolts}).value, behind = part->wettingOhms.value_or(Ohms{wettingOhms}).value;
    InputState state;
    double volts = 0;
    for (const Half& half : read.halves) {
        volts = half.across(read.net[input.terminal], read.net[input.reference]);
        state.foreign = state.foreign || volts > own + 0.5 || volts < -0.5;
    }
    state.foreign = state.foreign || liesBetweenSources(input, read);
    const double loop = own - volts < 1e-3 ? 1e9 : volts * behind / (own - volts);
    if (loop <= part->closedBelow.value)
        state.reads = 1;
    for (std::size_t band = 0; band < part->bands.size(); ++band)
        if (loop >= 0.99 * part->bands[band].least.value && loop <= 1.01 * part->bands[band].most.value)
            state.reads = static_cast<int>(band) + 2;
    if (state.reads == 0 && loop < 1e6)
        state.reads = -1;
    return state;
}

// On a pole of one source at its terminal and of another at its reference: no volts yet where nothing ties the two, and all of them
// as soon as earth does.
bool Oracle::liesBetweenSources(const DryInput& input, const Read& read) const
{
    const auto sourceAt = [&](Vertex vertex, const Feed* besides) -> const Feed* {
        for (const Feed& feed : circuit_.feeds)
            if (&feed != besides && (read.net[feed.plus] == read.net[vertex] || read.net[feed.minus] == read.net[vertex]))
                return &feed;
        return nullptr;
    };
    if (read.net[input.terminal] == read.net[input.reference])
        return false;
    const Feed* one = sourceAt(input.terminal, nullptr);
    return one && sourceAt(input.reference, one) != nullptr;
}

SourceState Oracle::stateOf(std::uint32_t number, const Read& read, const Position& position) const
{
    const Feed& feed = circuit_.feeds[number];
    if (!holds(feed.live, position))
        return SourceState::Off;
    if (read.net[feed.plus] == read.net[feed.minus])
        return SourceState::Shorted;
    const double most = partBehind<SourcePart>(job_, net_.origin(feed.origin))->most.value;
    double amperes = 0;
    for (std::size_t i = 0; i < read.halves.size(); ++i) {
        const double volts = voltsOf(number) * (feed.ac && i == 1 ? -1 : 1);
        amperes = std::max(amperes, std::abs(volts - read.halves[i].across(read.net[feed.plus], read.net[feed.minus])) / sourceOhms);
    }
    return amperes > shortedTimes * most ? SourceState::Shorted : amperes > 1.05 * most ? SourceState::Overloaded : SourceState::Carries;
}

// Coils and sensors by what the circuit gives them, logic back where it is without power.
Position Oracle::next(const Position& now, const Position& fixed) const
{
    const Read read = readIn(now);
    Position after = now;
    for (const Drive& drive : circuit_.drives) {
        const MovedOperator& moved = circuit_.operators[drive.moved];
        bool powered = holds(drive.powered, now) && (!drive.load || isFed(*drive.load, read));
        if (drive.closedInput)
            powered = powered && stateOf(circuit_.inputs[*drive.closedInput], read).reads == 1;
        const bool byItself = drive.manner == Drive::Manner::Plain || drive.isSensing;
        const ThrowIndex in = byItself ? (moved.unpowered == 0 ? 1 : 0) : fixed[drive.moved];
        after[drive.moved] = powered ? in : moved.unpowered;
    }
    return after;
}

// From coils that have let go. One by one: of two that lock each other out the first is in.
Position Oracle::settledFrom(const Position& fixed, bool together, bool& settles) const
{
    Position position = fixed;
    for (const Drive& drive : circuit_.drives)
        if (drive.manner != Drive::Manner::Programmed)
            position[drive.moved] = circuit_.operators[drive.moved].unpowered;
    settles = false;
    for (std::size_t round = 0; round < 2 * circuit_.drives.size() + 3 && !settles; ++round) {
        const Position before = position;
        if (together)
            position = next(position, fixed);
        else
            for (const Drive& drive : circuit_.drives)
                position[drive.moved] = next(position, fixed)[drive.moved];
        settles = position == before;
    }
    return position;
}

WhatHappens Oracle::in(const Given& given) const
{
    Position fixed = atRest(circuit_);
    for (const auto& [moved, thrown] : given)
        if (const auto index = net_.indexOf(moved))
            if (const auto at = findThrow(net_.moved(*index).throws, thrown))
                fixed[*index] = static_cast<ThrowIndex>(*at);
    WhatHappens all;
    Position position = settledFrom(fixed, true, all.settles);
    if (!all.settles)
        position = settledFrom(fixed, false, all.settles);
    const Read read = readIn(position);
    for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i) {
        const Element& element = circuit_.elements[i];
        if (loads_[i])
            all.loads[partAt(net_, element.origin)] = stateOf(i, read);
        else if (const auto* part = partBehind<SuppressorPart>(job_, net_.origin(element.origin)))
            all.suppressors[partAt(net_, element.origin)] = std::abs(read.halves[0].across(read.net[element.a], read.net[element.b])) > part->rating.value;
    }
    for (const DryInput& input : circuit_.inputs)
        all.inputs[partAt(net_, input.origin)] = stateOf(input, read);
    for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i)
        all.sources[partAt(net_, circuit_.feeds[i].origin)] = stateOf(i, read, position);
    return all;
}

namespace {

struct Cell {
    Vertex plus, minus;
    double volts;
};

// The signed sum of a string from here to there; nothing: no string.
std::optional<double> stringFrom(Vertex from, Vertex to, std::vector<Cell> cells)
{
    if (from == to)
        return 0;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const Cell cell = cells[i];
        if (cell.plus != from && cell.minus != from)
            continue;
        std::vector<Cell> others = cells;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        if (const auto rest = stringFrom(cell.plus == from ? cell.minus : cell.plus, to, others))
            return *rest + (cell.plus == from ? cell.volts : -cell.volts);
    }
    return std::nullopt;
}

bool standAlike(const Device& device, const Option& option)
{
    return std::all_of(option.jumpers.begin(), option.jumpers.end(), [&](const Jumper& jumper) {
        return chosen(device, option.key, jumper.key) == chosen(device, option.key, option.jumpers.front().key);
    });
}

} // namespace

std::map<PartAt, std::string> Oracle::fixed() const
{
    const std::vector<Vertex> net = netsIn(atRest(circuit_));
    const auto netOf = [&](const Device& device, const Key& node) { return net[*net_.vertexOf(device.id, node)]; };
    std::vector<Cell> cells;
    std::map<PartAt, std::string> all;
    struct Line {
        PartAt at;
        Vertex terminal, reference;
        std::string name;
    };
    std::vector<Line> lines;
    const auto forEachPart = [&]<class Body>(Body*, auto visit) {
        for (const Device& device : job_.devices)
            for (const Part& part : kindOf(job_, device)->parts)
                if (const auto* body = std::get_if<Body>(&part.body); body && doorloom::holds(device, part.when))
                    visit(device, part.key, *body);
    };
    forEachPart(static_cast<BatteryPart*>(nullptr), [&](const Device& device, const Key&, const BatteryPart& battery) {
        cells.push_back({netOf(device, battery.plus), netOf(device, battery.minus), battery.nominal.value});
    });
    forEachPart(static_cast<BatteryPortPart*>(nullptr), [&](const Device& device, const Key& key, const BatteryPortPart& port) {
        const auto sum = stringFrom(netOf(device, port.plus), netOf(device, port.minus), cells);
        all[{device.id, key}] = sum ? std::to_string(std::lround(*sum)) + " V" : "no battery";
    });
    forEachPart(static_cast<SignalPart*>(nullptr), [&](const Device& device, const Key& key, const SignalPart& signal) {
        lines.push_back({{device.id, key}, netOf(device, signal.terminal), netOf(device, signal.reference), signal.line});
    });
    for (const Line& line : lines) {
        std::string& text = all[line.at];
        for (const Line& other : lines)
            if (line.terminal == other.terminal && line.at != other.at)
                text += std::to_string(other.at.first.number) + "." + other.at.second + (line.reference == other.reference ? " " : " without minus ");
    }
    for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i)
        if (loads_[i] && loads_[i]->use != LoadUse::Electronics && !loads_[i]->suppressed) {
            const Element& at = circuit_.elements[i];
            const auto lies = [&](Vertex a, Vertex b) {
                return net[a] != net[b] && std::min(net[a], net[b]) == std::min(net[at.a], net[at.b]) && std::max(net[a], net[b]) == std::max(net[at.a], net[at.b]);
            };
            const bool isTakenUp = std::any_of(circuit_.diodes.begin(), circuit_.diodes.end(), [&](const Diode& diode) { return lies(diode.anode, diode.cathode); }) ||
                                   std::any_of(circuit_.elements.begin(), circuit_.elements.end(), [&](const Element& other) {
                                       return other.kind == ElementKind::Suppressor && lies(other.a, other.b);
                                   });
            all[partAt(net_, at.origin)] = isTakenUp ? "with its kickback taken up" : "";
        }
    for (Level level : {Level::Lowest, Level::Highest}) {
        level_ = level;
        const Read read = readIn(atRest(circuit_));
        for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i)
            if (const LoadState state = loads_[i] ? stateOf(i, read) : LoadState::Dead; state == LoadState::Weak || state == LoadState::TooManyVolts)
                all[partAt(net_, circuit_.elements[i].origin)] += level == Level::Lowest ? " too few volts at the end of a battery" : " too many while it is charged";
    }
    level_ = Level::Nominal;
    for (const Device& device : job_.devices)
        for (const Option& option : kindOf(job_, device)->options)
            all[{device.id, option.key}] = standAlike(device, option) ? "" : "set unlike";
    for (const Joint& joint : circuit_.joints)
        if (partBehind<FusePart>(job_, net_.origin(joint.origin))) {
            Circuit without = circuit_;
            without.joints.erase(without.joints.begin() + (&joint - circuit_.joints.data()));
            const std::vector<Vertex> apart = netsOf(without, atRest(circuit_));
            const auto isAlone = [&](Vertex side) { return std::count(apart.begin(), apart.end(), apart[side]) == 1; };
            all[partAt(net_, joint.origin)] = isAlone(joint.a) || isAlone(joint.b) || apart[joint.a] == apart[joint.b] ? "protecting nothing" : "";
        }
    for (const Device& device : job_.devices)
        for (const SwitchedOutput& output : kindOf(job_, device)->outputs)
            if (std::string& state = all[{device.id, output.option}]; state.empty() && meetsAnotherSource(device, output))
                state = "wet on another source";
    for (std::uint32_t i = 0; i < circuit_.feeds.size(); ++i)
        all[partAt(net_, circuit_.feeds[i].origin)] = standsOnAnother(net, circuit_.feeds[i]) ? "standing on another" : "";
    return all;
}

// A conductor brings a pole to a wet output, of a source that does not feed its device.
bool Oracle::meetsAnotherSource(const Device& device, const SwitchedOutput& output) const
{
    const Option* option = findOption(*kindOf(job_, device), output.option);
    if (!option || output.wetValue.empty() || chosen(device, option->key, option->jumpers.front().key) != output.wetValue)
        return false;
    Circuit without = circuit_;
    std::erase_if(without.joints, [&](const Joint& joint) { return net_.origin(joint.origin).device == device.id; });
    const std::vector<Vertex> outside = netsOf(without, atRest(circuit_));
    const auto meets = [&](const Feed& feed, const Key& node) {
        const auto vertex = net_.vertexOf(device.id, node);
        return vertex && (outside[*vertex] == outside[feed.plus] || outside[*vertex] == outside[feed.minus]);
    };
    return std::any_of(circuit_.feeds.begin(), circuit_.feeds.end(), [&](const Feed& feed) {
        const bool feedsIt = net_.origin(feed.origin).device == device.id || meets(feed, "+");
        return !feedsIt && std::any_of(output.terminals.begin(), output.terminals.end(), [&](const Key& node) { return meets(feed, node); });
    });
}

// Opposite poles of two DC sources on one net: both volts together between the others.
bool Oracle::standsOnAnother(const std::vector<Vertex>& net, const Feed& feed) const
{
    return std::any_of(circuit_.feeds.begin(), circuit_.feeds.end(), [&](const Feed& other) {
        return &other != &feed && !feed.ac && !other.ac && (net[feed.plus] == net[other.minus] || net[feed.minus] == net[other.plus]);
    });
}

} // namespace doorloom
