#include "solve/ringout.h"

#include "solve/heldvolts.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

namespace doorloom {

namespace {

constexpr std::uint32_t none = ~0u;
constexpr double unreached = std::numeric_limits<double>::infinity();

// What a meter tells from what it should read: a twentieth, and its leads. Common practice, no source.
constexpr double share = 0.05, leads = 0.1;
// A meter's own volts and ohms, and the volts below which a diode takes nothing. From memory.
constexpr double meterVolts = 1, meterOhms = 1000, diodeVolts = 0.5;
// What electronics have at the least, and a winding. A supply that reads less is shorted: common practice, no source.
constexpr double leastElectronics = 10, leastWinding = 0.1;
constexpr std::size_t mostTried = 16; // terminals, of which all pairs

bool isNear(double read, double wanted)
{
    return read == wanted || std::abs(read - wanted) <= std::max(share * wanted, leads);
}

struct Edge {
    Vertex a = 0, b = 0;
    double ohms = 0;             // of electronics: at the least
    enum class Sort { Joint, Part, DryInput } sort = Sort::Part; // part: a resistor, a coil, electronics, a source
    std::uint32_t conductor = 0; // its number; 0: none
    DeviceId device;             // whose part it is
};

// The circuit with the power off: what has ohms, what has no useful ohms, and diodes.
struct Passive {
    Vertex vertices = 0;
    std::vector<Edge> known, electronics;
    std::vector<Diode> diodes;
    std::vector<DeviceId> deviceOfDiode;
    Vertex first = 0, second = 0; // the probes
};

// What is of this device, or what is not.
enum class Only { OfDevice, Elsewhere };
Passive part(const Passive& whole, DeviceId device, Only only)
{
    Passive some = whole;
    const auto isOut = [&](DeviceId of) { return (of == device) != (only == Only::OfDevice); };
    std::erase_if(some.known, [&](const Edge& edge) { return isOut(edge.device); });
    std::erase_if(some.electronics, [&](const Edge& edge) { return isOut(edge.device); });
    some.diodes.clear();
    for (std::size_t i = 0; i < whole.diodes.size(); ++i)
        if (!isOut(whole.deviceOfDiode[i]))
            some.diodes.push_back(whole.diodes[i]);
    return some;
}

enum class With { KnownAlone, Diodes, DiodesAndElectronics };

// What the meter shows with its red lead on one vertex; unreached: over its limit.
double shownOhms(const Passive& passive, Vertex red, Vertex black, With with)
{
    Network network;
    const Vertex inside = passive.vertices;
    network.vertices = passive.vertices + 1;
    for (const Edge& edge : passive.known)
        network.resistors.push_back({edge.a, edge.b, edge.ohms});
    if (with == With::DiodesAndElectronics)
        for (const Edge& edge : passive.electronics)
            network.resistors.push_back({edge.a, edge.b, edge.ohms});
    if (with != With::KnownAlone)
        for (const Diode& diode : passive.diodes)
            network.diodes.push_back({diode.anode, diode.cathode, diodeVolts});
    network.resistors.push_back({inside, red, meterOhms});
    network.sources.push_back({inside, black, meterVolts});
    const Solution solution = solved(network, Want::JustVolts);
    const auto volts = solution.between(red, black);
    const double across = volts ? *volts : meterVolts;
    const double amperes = (meterVolts - across) / meterOhms;
    return amperes < 1e-12 ? unreached : std::max(0.0, across) / amperes;
}

struct Shown {
    double known = 0, withDiodes = 0, withAll = 0;
};

Shown shownBetween(const Passive& passive, Vertex red, Vertex black)
{
    Shown shown{shownOhms(passive, red, black, With::KnownAlone), 0, 0};
    shown.withDiodes = passive.diodes.empty() ? shown.known : shownOhms(passive, red, black, With::Diodes);
    shown.withAll = passive.electronics.empty() ? shown.withDiodes : shownOhms(passive, red, black, With::DiodesAndElectronics);
    return shown;
}

bool isOpen(const Shown& shown) { return shown.withAll == unreached; }

OhmsRead asRead(const Shown& shown)
{
    const bool isOfElectronics = !isNear(shown.withAll, shown.withDiodes);
    if (shown.known < unreached) {
        const bool isSpoilt = isOfElectronics || !isNear(shown.withDiodes, shown.known);
        return {isSpoilt ? Reads::NotReadable : Reads::Resistance, isOfElectronics ? std::nullopt : std::optional(Ohms{shown.withDiodes})};
    }
    if (isOfElectronics)
        return {Reads::NotReadable, std::nullopt};
    return {shown.withDiodes < unreached ? Reads::DiodeDrop : Reads::Open, std::nullopt};
}

// ---- The way of least ohms through what is known.

struct KnownWay {
    double ohms = unreached;
    std::vector<std::uint32_t> conductors;
    std::vector<Vertex> passed;
};

KnownWay leastOhms(const Passive& passive)
{
    std::vector<std::vector<std::uint32_t>> at(passive.vertices);
    for (std::uint32_t i = 0; i < passive.known.size(); ++i)
        for (Vertex vertex : {passive.known[i].a, passive.known[i].b})
            at[vertex].push_back(i);
    std::vector<double> ohms(passive.vertices, unreached);
    std::vector<std::uint32_t> by(passive.vertices, none);
    using Next = std::pair<double, Vertex>;
    std::priority_queue<Next, std::vector<Next>, std::greater<>> next;
    next.push({0, passive.first});
    ohms[passive.first] = 0;
    while (!next.empty()) {
        const auto [sum, from] = next.top();
        next.pop();
        if (sum > ohms[from])
            continue;
        for (std::uint32_t edge : at[from]) {
            const Vertex to = passive.known[edge].a == from ? passive.known[edge].b : passive.known[edge].a;
            if (const double there = sum + passive.known[edge].ohms; there < ohms[to]) {
                ohms[to] = there;
                by[to] = edge;
                next.push({there, to});
            }
        }
    }
    KnownWay way{ohms[passive.second], {}, {passive.second}};
    for (Vertex vertex = passive.second; by[vertex] != none; way.passed.push_back(vertex)) {
        const Edge& edge = passive.known[by[vertex]];
        if (edge.conductor)
            way.conductors.push_back(edge.conductor);
        vertex = edge.a == vertex ? edge.b : edge.a;
    }
    return way;
}

enum class Inputs { Count, AreRead }; // read: what is landed on a dry input is measured, not the input

// Electronics whose two sides are joined to the probes: they are what is measured.
bool areElectronicsBetween(const Passive& passive, Inputs inputs)
{
    HeldVolts nets(passive.vertices);
    for (const Edge& edge : passive.known)
        if (edge.sort == Edge::Sort::Joint && !nets.between(edge.a, edge.b))
            nets.hold(edge.a, edge.b, 0);
    return std::any_of(passive.electronics.begin(), passive.electronics.end(), [&](const Edge& edge) {
        return (inputs == Inputs::Count || edge.sort != Edge::Sort::DryInput) &&
               ((nets.between(edge.a, passive.first) && nets.between(edge.b, passive.second)) ||
                (nets.between(edge.b, passive.first) && nets.between(edge.a, passive.second)));
    });
}

// ----

class Ringing {
public:
    Ringing(const Job& job, const Meter& meter, const Position& position, const Landing& first, const Landing& second)
        : job_(job), meter_(meter), position_(position), first_(first), second_(second)
    {
        one_ = meter.net.vertexOf(first.device, first.terminal);
        other_ = meter.net.vertexOf(second.device, second.terminal);
        isInside_ = one_ && other_ && first.device == second.device && hasPartBetween();
    }

    RingOut read(const std::vector<Landing>& lifted) const
    {
        if (!one_ || !other_)
            return {};
        const Passive passive = passiveWith(lifted);
        return isInside_ ? readInside(passive) : readOutside(passive);
    }

    std::vector<Landing> toLift(const std::vector<Landing>& lifted) const
    {
        const std::vector<Landing> tried = candidates(lifted);
        const Thing measured = thingIn(passiveWith(lifted));
        const auto helps = [&](std::vector<Landing> more) {
            more.insert(more.end(), lifted.begin(), lifted.end());
            const RingOut after = read(more);
            return after.redOnFirst.what != Reads::NotReadable && after.redOnSecond.what != Reads::NotReadable && (isInside_ || thingIn(passiveWith(more)) == measured);
        };
        for (const Landing& one : tried)
            if (helps({one}))
                return {one};
        for (std::size_t i = 0; i < tried.size(); ++i)
            for (std::size_t j = i + 1; j < tried.size(); ++j)
                if (helps({tried[i], tried[j]}))
                    return {tried[i], tried[j]};
        return {};
    }

private:
    const Circuit& circuit() const { return meter_.net.circuit(); }
    const Origin& origin(std::uint32_t number) const { return meter_.net.origin(number); }

    // ---- The circuit.

    std::optional<Ohms> coilOhms(std::uint32_t element) const
    {
        const LoadPart& load = *meter_.loads[element];
        const bool isCoil = (load.use == LoadUse::Lock || load.use == LoadUse::Coil) && load.law == LoadLaw::Resistive && !load.polarised &&
                            load.accepts != Current::Ac;
        const auto rated = std::find_if(load.rated.begin(), load.rated.end(), [](const LoadAt& at) { return at.amperes.value > 0; });
        return isCoil && rated != load.rated.end() ? std::optional(rated->volts / rated->amperes) : std::nullopt;
    }

    Passive passiveWith(const std::vector<Landing>& lifted) const
    {
        Passive passive;
        passive.vertices = circuit().vertices + 2; // two more for the ends that come off under the probes
        passive.first = probeOf(first_, *one_, circuit().vertices, lifted);
        passive.second = probeOf(second_, *other_, circuit().vertices + 1, lifted);
        for (std::uint32_t i = 0; i < circuit().joints.size(); ++i)
            if (holds(circuit().joints[i].guard, position_))
                addJoint(passive, i, lifted);
        for (std::uint32_t i = 0; i < circuit().elements.size(); ++i)
            addElement(passive, i);
        for (const Feed& feed : circuit().feeds)
            passive.electronics.push_back({feed.plus, feed.minus, feed.ac ? leastWinding : leastElectronics, Edge::Sort::Part, 0, origin(feed.origin).device});
        for (const Diode& diode : circuit().diodes) {
            passive.diodes.push_back(diode);
            passive.deviceOfDiode.push_back(origin(diode.origin).device);
        }
        return passive;
    }

    Vertex probeOf(const Landing& probe, Vertex onDevice, Vertex onEnds, const std::vector<Landing>& lifted) const
    {
        const bool goesWithEnds = !isInside_ && std::find(lifted.begin(), lifted.end(), probe) != lifted.end();
        return goesWithEnds ? onEnds : onDevice;
    }

    void addJoint(Passive& passive, std::uint32_t number, const std::vector<Landing>& lifted) const
    {
        const Joint& joint = circuit().joints[number];
        Edge edge{joint.a, joint.b, meter_.ohmsOfJoint[number], Edge::Sort::Joint, 0, origin(joint.origin).device};
        if (const Conductor* conductor = job_.conductors.find(origin(joint.origin).conductor)) {
            edge.conductor = conductor->id.number;
            for (const End* end : {&conductor->from, &conductor->to}) {
                const Landing* landing = landingOf(*end);
                if (!landing || std::find(lifted.begin(), lifted.end(), *landing) == lifted.end())
                    continue;
                const auto moved = *landing == first_ ? passive.first : *landing == second_ ? passive.second : none;
                const auto here = meter_.net.vertexOf(landing->device, landing->terminal);
                if (moved == none || moved == *here)
                    return; // off, and nothing touches it
                (edge.a == *here ? edge.a : edge.b) = moved;
            }
        }
        passive.known.push_back(edge);
    }

    void addElement(Passive& passive, std::uint32_t number) const
    {
        const Element& element = circuit().elements[number];
        Edge edge{element.a, element.b, leastElectronics, Edge::Sort::Part, 0, origin(element.origin).device};
        if (element.kind == ElementKind::Suppressor)
            return; // open below its volts
        if (element.kind == ElementKind::Resistor) {
            edge.ohms = element.ohms;
        } else if (const auto ohms = meter_.loads[number] ? coilOhms(number) : std::nullopt) {
            edge.ohms = ohms->value;
        } else {
            edge.sort = element.kind == ElementKind::Wetting ? Edge::Sort::DryInput : Edge::Sort::Part;
            passive.electronics.push_back(edge);
            return;
        }
        passive.known.push_back(edge);
    }

    // Is there anything of the device itself to measure between the two, in any position?
    bool hasPartBetween() const
    {
        HeldVolts nets(circuit().vertices);
        const auto join = [&](Vertex a, Vertex b, std::uint32_t from) {
            if (origin(from).device == first_.device && !nets.between(a, b))
                nets.hold(a, b, 0);
        };
        for (const Joint& joint : circuit().joints)
            join(joint.a, joint.b, joint.origin);
        for (const Diode& diode : circuit().diodes)
            join(diode.anode, diode.cathode, diode.origin);
        for (std::uint32_t i = 0; i < circuit().elements.size(); ++i)
            if (const Element& element = circuit().elements[i]; element.kind == ElementKind::Resistor || (meter_.loads[i] && coilOhms(i)))
                join(element.a, element.b, element.origin);
        return nets.between(*one_, *other_).has_value();
    }

    // ---- Readings.

    RingOut readInside(const Passive& passive) const
    {
        const Passive own = part(passive, first_.device, Only::OfDevice), elsewhere = part(passive, first_.device, Only::Elsewhere);
        const auto oneWay = [&](Vertex red, Vertex black) {
            OhmsRead wanted = asRead(shownBetween(own, red, black));
            if (wanted.what == Reads::NotReadable)
                return OhmsRead{Reads::NoUsefulOhms, std::nullopt};
            const OhmsRead whole = asRead(shownBetween(passive, red, black));
            const bool isSame = wanted.what == Reads::Resistance ? whole.what == Reads::Resistance && isNear(whole.ohms->value, wanted.ohms->value)
                                                           : whole.what == wanted.what && isOpen(shownBetween(elsewhere, red, black));
            return isSame ? whole : OhmsRead{Reads::NotReadable, whole.ohms};
        };
        return {oneWay(passive.first, passive.second), oneWay(passive.second, passive.first), 0, {}};
    }

    RingOut readOutside(const Passive& passive) const
    {
        const KnownWay way = leastOhms(passive);
        const Inputs inputs = hasConductors(first_) && hasConductors(second_) ? Inputs::AreRead : Inputs::Count;
        const bool isElectronics = way.ohms == unreached && areElectronicsBetween(passive, inputs);
        const auto oneWay = [&](Vertex red, Vertex black) {
            if (isElectronics)
                return OhmsRead{Reads::NoUsefulOhms, std::nullopt};
            OhmsRead read = asRead(shownBetween(passive, red, black));
            if (read.what == Reads::Resistance && !isNear(read.ohms->value, way.ohms))
                read.what = Reads::NotReadable;
            return read;
        };
        RingOut out{oneWay(passive.first, passive.second), oneWay(passive.second, passive.first), 0, {}};
        for (std::uint32_t number : way.conductors) {
            const Conductor& conductor = *job_.conductors.find(ConductorId{number});
            out.withoutOhms += lengthOf(job_, conductor).value <= 0 || !squareMillimetresOf(gaugeOf(job_, conductor));
        }
        return out;
    }

    bool hasConductors(const Landing& landing) const
    {
        const std::vector<const Conductor*> on = conductorsOn(job_, landing.device);
        return std::any_of(on.begin(), on.end(), [&](const Conductor* conductor) {
            const Landing *from = landingOf(conductor->from), *to = landingOf(conductor->to);
            return (from && *from == landing) || (to && *to == landing);
        });
    }

    // ---- Lifting.

    // The probes' own terminals first; then those of conductors that leave the way measured.
    std::vector<Landing> candidates(const std::vector<Landing>& lifted) const
    {
        std::vector<Landing> all;
        const auto add = [&](const Landing& landing) {
            const auto isIn = [&](const std::vector<Landing>& list) { return std::find(list.begin(), list.end(), landing) != list.end(); };
            if (!isIn(all) && !isIn(lifted) && hasConductors(landing) && all.size() < mostTried)
                all.push_back(landing);
        };
        add(first_);
        add(second_);
        if (isInside_)
            return all;
        const Passive passive = passiveWith(lifted);
        const KnownWay way = leastOhms(passive);
        for (const Edge& edge : passive.known) {
            const bool leaves = edge.conductor && std::find(way.conductors.begin(), way.conductors.end(), edge.conductor) == way.conductors.end() &&
                                std::any_of(way.passed.begin(), way.passed.end(), [&](Vertex passed) { return passed == edge.a || passed == edge.b; });
            if (const Conductor* conductor = leaves ? job_.conductors.find(ConductorId{edge.conductor}) : nullptr)
                for (const End* end : {&conductor->from, &conductor->to})
                    if (const Landing* landing = landingOf(*end))
                        add(*landing);
        }
        return all;
    }

    // What is measured outside a device: lifting must leave it as it is, and neither cut it nor send the way elsewhere.
    struct Thing {
        double ohms = 0;
        std::vector<std::uint32_t> conductors;
        bool isDiodeOneWay = false, isDiodeOtherWay = false;

        friend bool operator==(const Thing&, const Thing&) = default;
    };
    static Thing thingIn(const Passive& passive)
    {
        const KnownWay way = leastOhms(passive);
        const auto reaches = [&](Vertex red, Vertex black) {
            return way.ohms == unreached && shownOhms(passive, red, black, With::Diodes) < unreached;
        };
        return {way.ohms, way.conductors, reaches(passive.first, passive.second), reaches(passive.second, passive.first)};
    }

    const Job& job_;
    const Meter& meter_;
    const Position& position_;
    const Landing first_, second_;
    std::optional<Vertex> one_, other_;
    bool isInside_ = false;
};

} // namespace

Position positionOff(const Job& job, const Netlist& net, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws)
{
    const Circuit& circuit = net.circuit();
    Position position = atRest(circuit);
    const auto turnOff = [&](MovedIndex moved) { position[moved] = circuit.operators[moved].unpowered; };
    for (const Drive& drive : circuit.drives)
        turnOff(drive.moved);
    for (MovedIndex moved = 0; moved < position.size(); ++moved)
        if (const Operator* row = job.operators.find(net.moved(moved).id);
            row && (row->nature == OperatorNature::Mains || row->nature == OperatorNature::Battery || row->nature == OperatorNature::Relay))
            turnOff(moved);
    for (const auto& [moved, thrown] : throws)
        position[moved] = thrown;
    return position;
}

RingOut ringOut(const Job& job, const Meter& meter, const Position& position, const Probes& probes)
{
    const Ringing ringing(job, meter, position, probes.first, probes.second);
    RingOut out = ringing.read(probes.lifted);
    if (out.redOnFirst.what == Reads::NotReadable || out.redOnSecond.what == Reads::NotReadable)
        out.lift = ringing.toLift(probes.lifted);
    return out;
}

} // namespace doorloom
