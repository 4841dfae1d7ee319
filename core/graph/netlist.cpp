#include "graph/netlist.h"

#include <algorithm>
#include <cmath>

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

constexpr double mostVolts = 2e6; // beyond any wiring, and within what millivolts can hold

Millivolts millivolts(Volts volts) { return static_cast<Millivolts>(std::lround(std::clamp(volts.value, -mostVolts, mostVolts) * 1000)); }

template <class Inner>
std::optional<std::uint32_t> lookUp(const std::unordered_map<std::uint32_t, Inner>& outer, std::uint32_t number,
                                    const Key& key)
{
    const auto found = outer.find(number);
    if (found == outer.end())
        return std::nullopt;
    const auto inner = found->second.find(key);
    return inner == found->second.end() ? std::nullopt : std::optional(inner->second);
}

} // namespace

class NetlistBuilder {
public:
    NetlistBuilder(const Job& job, Netlist& net) : job_(job), net_(net) {}

    void build()
    {
        for (const Operator& moved : job_.operators)
            addOperator(moved);
        for (const Device& device : job_.devices)
            if (const Kind* kind = kindOf(job_, device))
                addDevice(device, *kind);
        for (const Device& device : job_.devices)
            if (const Kind* kind = kindOf(job_, device))
                addMoves(device, *kind);
        for (const Splice& splice : job_.splices)
            net_.splices_[splice.id.number] = newVertex({{}, {}, splice.id});
        for (const Conductor& conductor : job_.conductors)
            addConductor(conductor);
        leadMains();
        net_.circuit_.vertices = static_cast<Vertex>(net_.vertices_.size());
    }

private:
    // While a device is added: what its jumpers mean for one part.
    struct Presence {
        bool possible = true;
        Term atoms; // of options not chosen yet
        std::vector<JumperAt> because;
    };

    Vertex newVertex(NetVertex name)
    {
        net_.vertices_.push_back(std::move(name));
        return static_cast<Vertex>(net_.vertices_.size() - 1);
    }

    std::uint32_t newOrigin(Origin origin)
    {
        net_.origins_.push_back(std::move(origin));
        return static_cast<std::uint32_t>(net_.origins_.size() - 1);
    }

    void addOperator(const Operator& moved)
    {
        MovedOperator plain;
        plain.throws = static_cast<ThrowIndex>(moved.throws.size());
        plain.unpowered = static_cast<ThrowIndex>(findThrow(moved.throws, moved.unpowered).value_or(0));
        plain.idle = static_cast<ThrowIndex>(findThrow(moved.throws, moved.idle).value_or(0));
        net_.operatorIndex_[moved.id.number] = static_cast<MovedIndex>(net_.operators_.size());
        net_.operators_.push_back({moved.id, {}, {}, moved.throws});
        net_.circuit_.operators.push_back(plain);
    }

    Vertex node(const Device& device, const Key& key)
    {
        auto& nodes = net_.nodes_[device.id.number];
        const auto found = nodes.find(key);
        return found != nodes.end() ? found->second : nodes[key] = newVertex({device.id, key, {}});
    }

    // The search's operator for an option whose jumpers are not all chosen.
    MovedIndex unchosen(const Device& device, const Option& option)
    {
        const auto [found, isNew] = unchosen_.try_emplace(option.key, static_cast<MovedIndex>(net_.operators_.size()));
        if (isNew) {
            MovedOperator plain;
            plain.throws = static_cast<ThrowIndex>(option.values.size());
            plain.idle = plain.unpowered = static_cast<ThrowIndex>(findThrow(option.values, option.factory).value_or(0));
            net_.operators_.push_back({{}, device.id, option.key, option.values});
            net_.circuit_.operators.push_back(plain);
        }
        return found->second;
    }

    Presence presenceOf(const Device& device, const Kind& kind, const Condition& when)
    {
        Presence presence;
        for (const JumperAt& at : when) {
            const std::optional<Key> value = chosen(device, at.option, at.jumper);
            if (value) {
                presence.possible = presence.possible && *value == at.value;
            } else if (const Option* option = findOption(kind, at.option)) {
                const auto index = findThrow(option->values, at.value);
                presence.atoms.push_back({unchosen(device, *option), index ? 1u << *index : 0u});
            }
            presence.because.push_back(at);
        }
        return presence;
    }

    std::optional<Atom> atomFor(const Device& device, const Key& role, const std::vector<Key>& throws)
    {
        const OperatorId bound = boundTo(device, role);
        const Operator* moved = job_.operators.find(bound);
        if (!moved)
            return std::nullopt;
        Atom atom{net_.operatorIndex_.at(bound.number), 0};
        for (const Key& key : throws)
            if (const auto index = findThrow(moved->throws, key))
                atom.mask |= 1u << *index;
        return atom;
    }

    Guard guardFor(const Device& device, const std::vector<std::vector<std::pair<Key, Key>>>& anyOf)
    {
        Guard guard;
        if (anyOf.empty())
            return guard;
        guard.anyOf.clear();
        for (const auto& all : anyOf) {
            Term term;
            for (const auto& [role, thrown] : all)
                if (const auto atom = atomFor(device, role, {thrown}))
                    term.push_back(*atom);
            guard.anyOf.push_back(std::move(term));
        }
        return guard;
    }

    void addDevice(const Device& device, const Kind& kind)
    {
        unchosen_.clear();
        for (const Terminal* terminal : terminalsOf(kind))
            node(device, terminal->key);
        for (const Part& part : kind.parts) {
            const Presence presence = presenceOf(device, kind, part.when);
            if (!presence.possible)
                continue;
            const std::uint32_t origin = newOrigin({{}, device.id, part.key, presence.because});
            std::visit([&](const auto& body) { add(device, part.key, body, presence, origin); }, part.body);
        }
    }

    void joint(Vertex a, Vertex b, Term atoms, std::uint32_t origin)
    {
        Guard guard;
        guard.anyOf = {std::move(atoms)};
        net_.circuit_.joints.push_back({a, b, std::move(guard), origin, !net_.origins_[origin].because.empty()});
    }

    // An end of a part that is there only with an option not chosen yet hangs on a joint of that option.
    Vertex end(const Device& device, const Key& key, const Presence& presence, std::uint32_t origin)
    {
        const Vertex at = node(device, key);
        if (presence.atoms.empty())
            return at;
        const Vertex inner = newVertex({device.id, ".", {}});
        joint(at, inner, presence.atoms, origin);
        return inner;
    }

    void add(const Device& device, const Key&, const LinkPart& link, const Presence& presence, std::uint32_t origin)
    {
        joint(node(device, link.a), node(device, link.b), presence.atoms, origin);
    }

    void add(const Device& device, const Key&, const ContactPart& contact, const Presence& presence,
             std::uint32_t origin)
    {
        Term atoms = presence.atoms;
        if (const auto atom = atomFor(device, contact.role, contact.closedIn))
            atoms.push_back(*atom);
        joint(node(device, contact.a), node(device, contact.b), std::move(atoms), origin);
    }

    void add(const Device& device, const Key&, const FusePart& fuse, const Presence& presence, std::uint32_t origin)
    {
        joint(node(device, fuse.a), node(device, fuse.b), presence.atoms, origin);
    }

    std::uint32_t element(Element made)
    {
        net_.circuit_.elements.push_back(made);
        return static_cast<std::uint32_t>(net_.circuit_.elements.size() - 1);
    }

    void add(const Device& device, const Key& key, const LoadPart& load, const Presence& presence, std::uint32_t origin)
    {
        net_.elements_[device.id.number][key] =
            element({end(device, load.a, presence, origin), node(device, load.b), ElementKind::Load, load.polarised, 0,
                     origin});
    }

    void add(const Device& device, const Key& key, const ResistorPart& resistor, const Presence& presence,
             std::uint32_t origin)
    {
        net_.elements_[device.id.number][key] =
            element({end(device, resistor.a, presence, origin), node(device, resistor.b), ElementKind::Resistor, false,
                     resistor.ohms.value, origin});
    }

    void add(const Device& device, const Key&, const SuppressorPart& part, const Presence& presence,
             std::uint32_t origin)
    {
        element({end(device, part.a, presence, origin), node(device, part.b), ElementKind::Suppressor, false, 0, origin});
    }

    void add(const Device& device, const Key&, const DiodePart& diode, const Presence& presence, std::uint32_t origin)
    {
        net_.circuit_.diodes.push_back({end(device, diode.anode, presence, origin), node(device, diode.cathode),
                                        millivolts(diode.drop), origin});
    }

    void add(const Device& device, const Key&, const SourcePart& source, const Presence& presence, std::uint32_t origin)
    {
        Feed feed;
        feed.plus = end(device, source.plus, presence, origin);
        feed.minus = node(device, source.minus);
        feed.lowest = millivolts(source.lowest);
        feed.nominal = millivolts(source.nominal);
        feed.highest = millivolts(source.highest);
        feed.ac = source.ac;
        feed.mayParallel = source.mayParallel;
        feed.live = guardFor(device, source.live);
        feed.origin = origin;
        net_.circuit_.feeds.push_back(std::move(feed));
    }

    void add(const Device& device, const Key& key, const DryInputPart& input, const Presence& presence,
             std::uint32_t origin)
    {
        const Vertex terminal = end(device, input.terminal, presence, origin);
        const Vertex reference = node(device, input.reference);
        net_.inputs_[device.id.number][key] = static_cast<std::uint32_t>(net_.circuit_.inputs.size());
        net_.circuit_.inputs.push_back({terminal, reference, input.closedBelow.value, input.isolated,
                                        input.mayShareContact, input.mustBeClosed, origin});
        element({terminal, reference, ElementKind::Wetting, false, 0, origin});
    }

    void add(const Device& device, const Key&, const EarthPart& earth, const Presence& presence, std::uint32_t origin)
    {
        if (!earth_)
            earth_ = newVertex({{}, "earth", {}});
        joint(node(device, earth.terminal), *earth_, presence.atoms, origin);
    }

    void add(const Device& device, const Key&, const MainsPart& mains, const Presence&, std::uint32_t)
    {
        if (mains.role.empty())
            mainsPoints_.insert(node(device, mains.terminal));
        else if (const auto atom = atomFor(device, mains.role, {}))
            inlets_.push_back({node(device, mains.terminal), device.id, atom->moved});
    }

    // A contact in a device's mains lead is no joint of its circuit: the device has its mains only while that is closed.
    void leadMains()
    {
        if (inlets_.empty() || mainsPoints_.empty())
            return;
        std::vector<std::vector<std::uint32_t>> jointsAt(net_.vertices_.size());
        for (std::uint32_t i = 0; i < net_.circuit_.joints.size(); ++i) {
            jointsAt[net_.circuit_.joints[i].a].push_back(i);
            jointsAt[net_.circuit_.joints[i].b].push_back(i);
        }
        for (const Inlet& inlet : inlets_) {
            std::vector<Term> ways;
            std::vector<char> passed(net_.vertices_.size());
            addWaysToMains(inlet.at, {}, jointsAt, passed, ways);
            if (ways.empty())
                continue; // by others, and not drawn
            for (Feed& feed : net_.circuit_.feeds)
                if (net_.origins_[feed.origin].device == inlet.device)
                    leadThrough(feed.live, inlet.moved, ways);
            for (std::size_t i = 0; i < net_.circuit_.drives.size(); ++i)
                if (driveDevices_[i] == inlet.device)
                    leadThrough(net_.circuit_.drives[i].powered, inlet.moved, ways);
        }
    }

    // What must be thrown for each way from here to a point where the mains is to be had.
    void addWaysToMains(Vertex from, const Term& thrown, const std::vector<std::vector<std::uint32_t>>& jointsAt, std::vector<char>& passed,
                        std::vector<Term>& ways)
    {
        if (mainsPoints_.contains(from)) {
            ways.push_back(thrown);
            return;
        }
        passed[from] = 1;
        for (std::uint32_t number : jointsAt[from]) {
            const Joint& joint = net_.circuit_.joints[number];
            const Vertex to = joint.a == from ? joint.b : joint.a;
            for (const Term& term : joint.guard.anyOf) {
                if (passed[to] || ways.size() >= mostWaysToMains)
                    break;
                Term both = thrown;
                both.insert(both.end(), term.begin(), term.end());
                addWaysToMains(to, both, jointsAt, passed, ways);
            }
        }
        passed[from] = 0;
    }

    // Each term that asks for the mains asks for one of the ways as well.
    static void leadThrough(Guard& guard, MovedIndex mains, const std::vector<Term>& ways)
    {
        Guard led;
        led.anyOf.clear();
        for (const Term& term : guard.anyOf) {
            const bool asks = std::any_of(term.begin(), term.end(), [&](const Atom& atom) { return atom.moved == mains; });
            for (const Term& way : asks ? ways : std::vector<Term>{{}}) {
                led.anyOf.push_back(term);
                led.anyOf.back().insert(led.anyOf.back().end(), way.begin(), way.end());
            }
        }
        guard = std::move(led);
    }

    // Battery ports and batteries are judged by a rule of their own; signals carry no power.
    void add(const Device&, const Key&, const BatteryPortPart&, const Presence&, std::uint32_t) {}
    void add(const Device&, const Key&, const BatteryPart&, const Presence&, std::uint32_t) {}
    void add(const Device&, const Key&, const SignalPart&, const Presence&, std::uint32_t) {}
    void add(const Device&, const Key&, const MovePart&, const Presence&, std::uint32_t) {}

    // After all devices: a move names loads and inputs, which must be there first.
    void addMoves(const Device& device, const Kind& kind)
    {
        for (const Part& part : kind.parts)
            if (const auto* move = std::get_if<MovePart>(&part.body); move && holds(device, part.when))
                addMove(device, *move);
    }

    void addMove(const Device& device, const MovePart& move)
    {
        const auto index = net_.indexOf(boundTo(device, move.role));
        if (!index)
            return;
        Drive drive;
        drive.moved = *index;
        drive.manner = move.manner == MoveManner::Plain     ? Drive::Manner::Plain
                       : move.manner == MoveManner::Follows ? Drive::Manner::Follows
                                                            : Drive::Manner::Programmed;
        drive.load = net_.elementOf(device.id, move.powered);
        if (!move.poweredIn.empty())
            drive.powered = guardFor(device, {move.poweredIn});
        if (move.manner == MoveManner::Follows)
            addSensing(device, move, drive);
        drive.needsInput = !move.by.empty() && !drive.closedInput;
        for (const Key& by : move.by)
            if (const auto input = net_.inputOf(device.id, by))
                drive.dryInputs.push_back(*input);
            else if (const auto load = net_.elementOf(device.id, by))
                drive.voltageInputs.push_back(*load);
        net_.circuit_.drives.push_back(std::move(drive));
        driveDevices_.push_back(device.id);
    }

    // It follows another role of its device, throw by throw; or one dry input, away while that is closed.
    void addSensing(const Device& device, const MovePart& move, Drive& drive)
    {
        const Operator* moved = job_.operators.find(boundTo(device, move.role));
        if (!moved || (move.sense.empty() && move.by.size() != 1))
            return;
        drive.isSensing = true;
        if (move.sense.empty()) {
            drive.closedInput = net_.inputOf(device.id, move.by.front());
            return;
        }
        std::vector<Key> away;
        for (const Throw& thrown : moved->throws)
            if (thrown.key != moved->unpowered)
                away.push_back(thrown.key);
        if (const auto atom = atomFor(device, move.sense, away))
            for (Term& term : drive.powered.anyOf)
                term.push_back(*atom);
    }

    std::optional<Vertex> vertexOf(const End& at)
    {
        if (const Landing* landing = landingOf(at))
            return net_.vertexOf(landing->device, landing->terminal);
        if (const SpliceId* splice = spliceOf(at)) {
            const auto found = net_.splices_.find(splice->number);
            return found == net_.splices_.end() ? std::nullopt : std::optional(found->second);
        }
        return std::nullopt;
    }

    void addConductor(const Conductor& conductor)
    {
        const auto from = vertexOf(conductor.from), to = vertexOf(conductor.to);
        if (from && to)
            joint(*from, *to, {}, newOrigin({conductor.id, {}, {}, {}}));
    }

    const Job& job_;
    Netlist& net_;
    std::unordered_map<Key, MovedIndex> unchosen_; // of the device being added
    std::optional<Vertex> earth_;

    static constexpr std::size_t mostWaysToMains = 16;
    struct Inlet {
        Vertex at;
        DeviceId device;
        MovedIndex moved;
    };
    std::vector<Inlet> inlets_;
    std::set<Vertex> mainsPoints_;
    std::vector<DeviceId> driveDevices_; // by drive
};

Netlist::Netlist(const Job& job) { NetlistBuilder(job, *this).build(); }

std::optional<Vertex> Netlist::vertexOf(DeviceId device, const Key& node) const
{
    return lookUp(nodes_, device.number, node);
}

std::optional<MovedIndex> Netlist::indexOf(OperatorId moved) const
{
    const auto found = operatorIndex_.find(moved.number);
    return found == operatorIndex_.end() ? std::nullopt : std::optional(found->second);
}

std::optional<std::uint32_t> Netlist::elementOf(DeviceId device, const Key& part) const
{
    return lookUp(elements_, device.number, part);
}

std::optional<std::uint32_t> Netlist::inputOf(DeviceId device, const Key& part) const
{
    return lookUp(inputs_, device.number, part);
}

std::optional<Landing> landingAt(const Job& job, const Netlist& net, Vertex vertex)
{
    const NetVertex& name = net.vertex(vertex);
    const Kind* kind = kindOf(job, name.device);
    return kind && findTerminal(*kind, name.node) ? std::optional(Landing{name.device, name.node}) : std::nullopt;
}

} // namespace doorloom
