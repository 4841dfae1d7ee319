#include "papers/carries.h"

#include "graph/joinedsets.h"
#include "papers/naturalorder.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <tuple>

namespace doorloom {
namespace {

constexpr Text mains = {.en = "MAINS: licensed person only", .es = "RED: solo persona con licencia"};
constexpr Text drain = {.en = "shield drain", .es = "drenaje de malla"};
constexpr Text earth = {.en = "earth", .es = "tierra"};
constexpr Text data = {.en = "data {line}", .es = "datos {line}"};
constexpr Text dry = {.en = "dry", .es = "seco"};
constexpr Text dryAtMinus = {.en = "dry (−)", .es = "seco (−)"};
constexpr Text direct = {.en = "{volts} V DC {pole}", .es = "{volts} V CC {pole}"};
constexpr Text switchedDirect = {.en = "{volts} V DC {pole} switched", .es = "{volts} V CC {pole} conmutado"};
constexpr Text alternating = {.en = "{volts} V AC", .es = "{volts} V CA"};
constexpr Text switchedAlternating = {.en = "{volts} V AC switched", .es = "{volts} V CA conmutado"};
constexpr Text battery = {.en = "{volts} V battery {pole}", .es = "{volts} V batería {pole}"};
constexpr Text switchedBattery = {.en = "{volts} V battery {pole} switched",
                                  .es = "{volts} V batería {pole} conmutado"};
constexpr Text several = {.en = "{each}", .es = "{each}"};
constexpr Text behindLoad = {.en = "behind a load", .es = "detrás de una carga"};
constexpr Text noSource = {.en = "no source", .es = "sin fuente"};

using Node = std::uint32_t;

enum class EdgeSort { Fixed, Switched, Load };

struct Edge {
    Node a = 0, b = 0;
    EdgeSort sort = EdgeSort::Fixed;
    const Conductor* conductor = nullptr; // none: a part of a device
    bool diode = false;                   // then a is its anode: a takes no plus from b, b no minus from a
};

enum class SourceSort { Direct, Alternating, Battery };

struct Pole {
    DeviceId device;
    double volts = 0;
    SourceSort sort = SourceSort::Direct;
    bool plus = false; // of AC: both legs
};

// What stands at one node, or among many.
struct Traits {
    bool dryInput = false, load = false, earth = false, mains = false;
    std::set<std::string> lines; // of data
    std::vector<Pole> poles;
    std::set<std::uint32_t> inputDevices; // whose dry inputs or data are here
};

// The job's terminals, splices and inner points as numbers.
class Nodes {
public:
    explicit Nodes(const Job& job) : job_(job)
    {
        for (const JobKind& row : job.kinds) {
            auto& keys = keysOf_[row.id.number];
            for (const Terminal* terminal : terminalsOf(row.kind))
                keys.emplace(terminal->key, static_cast<Node>(keys.size()));
            for (const Part& part : row.kind.parts)
                addInner(keys, part);
        }
        for (const Device& device : job.devices) {
            firstOf_[device.id.number] = size_;
            size_ += static_cast<Node>(keysOf_[device.kind.number].size());
        }
        for (const Splice& splice : job.splices)
            firstOf_[splice.id.number] = size_++;
    }

    Node size() const { return size_; }
    Node of(const Device& device, const Key& key) const
    {
        return firstOf_.at(device.id.number) + keysOf_.at(device.kind.number).at(key);
    }
    std::pair<Node, Node> rangeOf(const Device& device) const
    {
        const Node first = firstOf_.at(device.id.number);
        return {first, first + static_cast<Node>(keysOf_.at(device.kind.number).size())};
    }
    std::optional<Node> of(const End& end) const
    {
        if (const SpliceId* splice = spliceOf(end))
            return firstOf_.at(splice->number);
        const Landing* landing = landingOf(end);
        const Device* device = landing ? job_.devices.find(landing->device) : nullptr;
        return device ? std::optional(of(*device, landing->terminal)) : std::nullopt;
    }

private:
    using Keys = std::map<Key, Node>;

    static void addInner(Keys& keys, const Part& part)
    {
        const auto add = [&](const Key& key) {
            if (!key.empty())
                keys.emplace(key, static_cast<Node>(keys.size()));
        };
        std::visit(
            [&](const auto& body) {
                if constexpr (requires {
                                  body.a;
                                  body.b;
                              }) {
                    add(body.a);
                    add(body.b);
                } else if constexpr (requires {
                                         body.plus;
                                         body.minus;
                                     }) {
                    add(body.plus);
                    add(body.minus);
                } else if constexpr (requires {
                                         body.anode;
                                         body.cathode;
                                     }) {
                    add(body.anode);
                    add(body.cathode);
                } else if constexpr (requires {
                                         body.terminal;
                                         body.reference;
                                     }) {
                    add(body.terminal);
                    add(body.reference);
                } else if constexpr (requires { body.terminal; }) {
                    add(body.terminal);
                }
            },
            part.body);
    }

    const Job& job_;
    std::unordered_map<std::uint32_t, Keys> keysOf_;  // by kind
    std::unordered_map<std::uint32_t, Node> firstOf_; // by device and splice
    Node size_ = 0;
};

enum class Presence { Absent, Perhaps, Present };

Presence presenceOf(const Device& device, const Condition& when)
{
    Presence presence = Presence::Present;
    for (const JumperAt& at : when) {
        const auto stands = chosen(device, at.option, at.jumper);
        if (stands && stands != at.value)
            return Presence::Absent;
        if (!stands)
            presence = Presence::Perhaps;
    }
    return presence;
}

struct Graph {
    Nodes nodes;
    std::vector<Edge> edges;
    std::vector<Traits> traits; // by node

    explicit Graph(const Job& job) : nodes(job), traits(nodes.size()) {}
};

class PartReader {
public:
    PartReader(Graph& graph, const Device& device, Presence presence)
        : graph_(graph), device_(device), presence_(presence)
    {
    }

    void operator()(const LinkPart& link) { joint(link.a, link.b); }
    void operator()(const FusePart& fuse) { joint(fuse.a, fuse.b); }
    void operator()(const ContactPart& contact) { edge(contact.a, contact.b, EdgeSort::Switched); }
    void operator()(const DiodePart& diode)
    {
        edge(diode.anode, diode.cathode, EdgeSort::Switched);
        graph_.edges.back().diode = true;
    }
    void operator()(const ResistorPart& resistor) { edge(resistor.a, resistor.b, EdgeSort::Switched); }
    void operator()(const SuppressorPart& suppressor) { edge(suppressor.a, suppressor.b, EdgeSort::Load); }
    void operator()(const LoadPart& load)
    {
        edge(load.a, load.b, EdgeSort::Load);
        at(load.a).load = at(load.b).load = true;
    }
    void operator()(const DryInputPart& input)
    {
        at(input.terminal).dryInput = true;
        at(input.terminal).inputDevices.insert(device_.id.number);
        if (input.isolated)
            at(input.reference).dryInput = true;
        at(input.reference).inputDevices.insert(device_.id.number);
    }
    void operator()(const SignalPart& signal)
    {
        at(signal.terminal).lines.insert(signal.line);
        at(signal.terminal).inputDevices.insert(device_.id.number);
    }
    void operator()(const EarthPart& part) { at(part.terminal).earth = true; }
    void operator()(const MainsPart& part) { at(part.terminal).mains = true; }
    void operator()(const SourcePart& source)
    {
        poles(source.plus, source.minus, source.nominal,
              source.ac ? SourceSort::Alternating : SourceSort::Direct);
    }
    void operator()(const BatteryPart& part)
    {
        poles(part.plus, part.minus, part.nominal, SourceSort::Battery);
    }
    void operator()(const BatteryPortPart& port)
    {
        poles(port.plus, port.minus, port.nominal, SourceSort::Battery);
    }
    void operator()(const MovePart&) {}

private:
    Traits& at(const Key& key)
    {
        static Traits nowhere;
        return key.empty() ? nowhere : graph_.traits[graph_.nodes.of(device_, key)];
    }
    void edge(const Key& a, const Key& b, EdgeSort sort)
    {
        graph_.edges.push_back(
            {graph_.nodes.of(device_, a), graph_.nodes.of(device_, b), sort, nullptr, false});
    }
    void joint(const Key& a, const Key& b)
    {
        edge(a, b, presence_ == Presence::Present ? EdgeSort::Fixed : EdgeSort::Switched);
    }
    void poles(const Key& plus, const Key& minus, Volts nominal, SourceSort sort)
    {
        const bool ac = sort == SourceSort::Alternating;
        at(plus).poles.push_back({device_.id, nominal.value, sort, true});
        at(minus).poles.push_back({device_.id, nominal.value, sort, ac});
    }

    Graph& graph_;
    const Device& device_;
    Presence presence_;
};

bool isMainsCore(const Job& job, const Conductor& conductor)
{
    const Cable* cable = conductor.make == ConductorMake::Core ? job.cables.find(conductor.cable) : nullptr;
    const CableType* type = cable ? job.cableTypes.find(cable->type) : nullptr;
    return type && type->carriesMains;
}

Graph graphOf(const Job& job)
{
    Graph graph(job);
    for (const Device& device : job.devices)
        if (const Kind* kind = kindOf(job, device))
            for (const Part& part : kind->parts)
                if (const Presence presence = presenceOf(device, part.when); presence != Presence::Absent)
                    std::visit(PartReader(graph, device, presence), part.body);
    for (const Conductor& conductor : job.conductors) {
        const auto from = graph.nodes.of(conductor.from), to = graph.nodes.of(conductor.to);
        for (const auto& end : {from, to})
            if (end && isMainsCore(job, conductor))
                graph.traits[*end].mains = true;
        if (from && to)
            graph.edges.push_back({*from, *to, EdgeSort::Fixed, &conductor, false});
    }
    return graph;
}

void add(Traits& all, const Traits& more)
{
    all.dryInput |= more.dryInput;
    all.load |= more.load;
    all.earth |= more.earth;
    all.mains |= more.mains;
    all.lines.insert(more.lines.begin(), more.lines.end());
    all.poles.insert(all.poles.end(), more.poles.begin(), more.poles.end());
    all.inputDevices.insert(more.inputDevices.begin(), more.inputDevices.end());
}

// Nodes that are always joined, and the areas that hang together beyond them. An area ends at a group that
// holds a pole: a rail. Otherwise one shared minus would make the whole job one area.
class Areas {
public:
    Areas(const Graph& graph, bool throughLoads)
        : groups_(graph.traits.size()), areas_(graph.traits.size()), groupTraits_(graph.traits.size()),
          areaTraits_(graph.traits.size())
    {
        for (const Edge& edge : graph.edges)
            if (edge.sort == EdgeSort::Fixed)
                groups_.join(edge.a, edge.b);
        for (Node node = 0; node < graph.traits.size(); ++node)
            add(groupTraits_[groups_.find(node)], graph.traits[node]);
        for (const Edge& edge : graph.edges)
            if (passes(edge, throughLoads) && !isRail(edge.a) && !isRail(edge.b))
                areas_.join(groups_.find(edge.a), groups_.find(edge.b));
        for (Node node = 0; node < graph.traits.size(); ++node)
            if (groups_.find(node) == node && !isRail(node))
                add(areaTraits_[areas_.find(node)], groupTraits_[node]);
        for (const Edge& edge : graph.edges)
            if (passes(edge, throughLoads) && isRail(edge.a) != isRail(edge.b))
                touch(isRail(edge.a) ? edge.b : edge.a, isRail(edge.a) ? edge.a : edge.b,
                      edge.diode && !throughLoads ? isRail(edge.a) ? Comes::PlusAlone : Comes::MinusAlone
                                                  : Comes::Both);
    }

    bool isRail(Node node) { return !group(node).poles.empty(); }
    const Traits& group(Node node) { return groupTraits_[groups_.find(node)]; }
    const Traits& area(Node node)
    {
        return areaTraits_[areas_.find(groups_.find(node))];
    } // of no rail; its poles are those reached

private:
    static bool passes(const Edge& edge, bool throughLoads)
    {
        return edge.sort == EdgeSort::Switched || (throughLoads && edge.sort == EdgeSort::Load);
    }
    enum class Comes { Both, PlusAlone, MinusAlone };

    void touch(Node inside, Node rail, Comes comes)
    {
        const Node area = areas_.find(groups_.find(inside)), reached = groups_.find(rail);
        if (!touched_.emplace(area, reached, comes).second)
            return;
        for (const Pole& pole : groupTraits_[reached].poles)
            if (comes == Comes::Both || pole.plus == (comes == Comes::PlusAlone) ||
                pole.sort == SourceSort::Alternating)
                areaTraits_[area].poles.push_back(pole);
    }

    JoinedSets groups_, areas_;
    std::vector<Traits> groupTraits_, areaTraits_;
    std::set<std::tuple<Node, Node, Comes>> touched_;
};

// ---- Words.

using SourceName = std::pair<double, SourceSort>;

Text wordsFor(SourceSort sort, bool switched)
{
    if (sort == SourceSort::Alternating)
        return switched ? switchedAlternating : alternating;
    if (sort == SourceSort::Battery)
        return switched ? switchedBattery : battery;
    return switched ? switchedDirect : direct;
}

Message polesInWords(const std::vector<Pole>& poles, bool switched)
{
    std::map<SourceName, std::pair<bool, bool>> found; // plus, minus
    for (const Pole& pole : poles) {
        auto& [plus, minus] = found[{pole.volts, pole.sort}];
        (pole.plus ? plus : minus) = true;
    }
    std::vector<Message> each;
    for (const auto& [name, signs] : found)
        each.push_back({wordsFor(name.second, switched),
                        {{"volts", fmt::format("{:g}", name.first)},
                         {"pole", std::string(signs.first && signs.second ? "+/−"
                                              : signs.first               ? "+"
                                                                          : "−")}}});
    return each.size() == 1 ? each.front() : Message(several, {{"each", each}});
}

bool onlyMinus(const std::vector<Pole>& poles)
{
    return std::none_of(poles.begin(), poles.end(), [](const Pole& pole) { return pole.plus; });
}

Message linesInWords(const std::set<std::string>& lines)
{
    return {data, {{"line", fmt::format("{}", fmt::join(lines, ", "))}}};
}

Message inArea(const Traits& area)
{
    if (!area.lines.empty())
        return linesInWords(area.lines);
    if (area.dryInput && onlyMinus(area.poles))
        return dry;
    if (!area.poles.empty())
        return polesInWords(area.poles, true);
    return area.load ? behindLoad : noSource;
}

// What a conductor is, whatever it is landed on.
std::optional<Message> carriedByMake(const Job& job, const Conductor& conductor)
{
    if (isMainsCore(job, conductor))
        return mains;
    const Core* core = coreOf(job, conductor);
    return core && core->drain ? std::optional<Message>(drain) : std::nullopt;
}

Message carriedAt(Node node, Areas& areas, bool feedsDryInputsAlone)
{
    const Traits& group = areas.group(node);
    if (group.mains)
        return mains;
    if (!group.poles.empty())
        return feedsDryInputsAlone && onlyMinus(group.poles) ? Message(dryAtMinus)
                                                             : polesInWords(group.poles, false);
    if (group.earth)
        return earth;
    return inArea(areas.area(node));
}

// ---- A conductor at minus that leads to dry inputs and nowhere else: the common of a button.

struct Found {
    std::uint32_t poles = 0, others = 0, inputs = 0;

    friend Found operator+(Found a, Found b)
    {
        return {a.poles + b.poles, a.others + b.others, a.inputs + b.inputs};
    }
    friend Found operator-(Found a, Found b)
    {
        return {a.poles - b.poles, a.others - b.others, a.inputs - b.inputs};
    }
    bool dryInputsAlone() const { return inputs > 0 && poles == 0 && others == 0; }
};

Found foundAt(const Traits& traits)
{
    return {.poles = static_cast<std::uint32_t>(traits.poles.size()),
            .others = traits.load || !traits.lines.empty() || traits.earth ? 1u : 0u,
            .inputs = traits.dryInput ? 1u : 0u};
}

// Finds the conductors that hang everything behind them on the rest alone (bridges), by a walk in depth that
// keeps its own stack: a chain of a hundred thousand conductors is no reason to run out of the program's.
class DryBranches {
public:
    explicit DryBranches(const Graph& graph)
        : graph_(graph), order_(graph.traits.size()), low_(graph.traits.size()), below_(graph.traits.size())
    {
        listNeighbours();
        for (Node root = 0; root < graph.traits.size(); ++root)
            if (!order_[root])
                walk(root);
    }

    bool has(ConductorId conductor) const { return found_.contains(conductor.number); }

private:
    struct Step {
        Node node;
        std::uint32_t edge; // by which it was entered
        std::uint32_t next; // neighbour to look at
    };
    static constexpr std::uint32_t none = ~0u;

    void listNeighbours()
    {
        starts_.assign(graph_.traits.size() + 1, 0);
        for (const Edge& edge : graph_.edges)
            if (edge.sort != EdgeSort::Load) {
                ++starts_[edge.a + 1];
                ++starts_[edge.b + 1];
            }
        std::partial_sum(starts_.begin(), starts_.end(), starts_.begin());
        neighbours_.resize(starts_.back());
        std::vector<std::uint32_t> at(starts_.begin(), starts_.end() - 1);
        for (std::uint32_t number = 0; number < graph_.edges.size(); ++number) {
            const Edge& edge = graph_.edges[number];
            if (edge.sort == EdgeSort::Load)
                continue;
            neighbours_[at[edge.a]++] = {edge.b, number};
            neighbours_[at[edge.b]++] = {edge.a, number};
        }
    }

    void enter(Node node, std::uint32_t edge)
    {
        order_[node] = low_[node] = ++clock_;
        below_[node] = foundAt(graph_.traits[node]);
        steps_.push_back({node, edge, starts_[node]});
    }

    void walk(Node root)
    {
        std::vector<std::pair<const Conductor*, Found>> bridges; // and what hangs behind each
        enter(root, none);
        while (!steps_.empty()) {
            Step& step = steps_.back();
            if (step.next < starts_[step.node + 1]) {
                const auto [other, edge] = neighbours_[step.next++];
                if (edge == step.edge)
                    continue;
                if (order_[other])
                    low_[step.node] = std::min(low_[step.node], order_[other]);
                else
                    enter(other, edge);
                continue;
            }
            const Step done = step;
            steps_.pop_back();
            if (steps_.empty())
                break;
            const Node parent = steps_.back().node;
            low_[parent] = std::min(low_[parent], low_[done.node]);
            below_[parent] = below_[parent] + below_[done.node];
            if (const Conductor* conductor = graph_.edges[done.edge].conductor;
                conductor && low_[done.node] > order_[parent])
                bridges.emplace_back(conductor, below_[done.node]);
        }
        for (const auto& [conductor, below] : bridges)
            if (below.dryInputsAlone() || (below_[root] - below).dryInputsAlone())
                found_.emplace(conductor->id.number, true);
    }

    const Graph& graph_;
    std::vector<std::uint32_t> starts_;
    std::vector<std::pair<Node, std::uint32_t>> neighbours_; // node and edge
    std::vector<std::uint32_t> order_, low_;
    std::vector<Found> below_;
    std::vector<Step> steps_;
    std::uint32_t clock_ = 0;
    std::unordered_map<std::uint32_t, bool> found_;
};

// ---- Who must be off.

bool hasMainsLead(const Job& job, DeviceId device)
{
    const Kind* kind = kindOf(job, device);
    return kind && std::any_of(kind->roles.begin(), kind->roles.end(),
                               [](const Role& role) { return role.nature == OperatorNature::Mains; });
}

struct Fed {
    std::set<std::uint32_t> by, inputsOf, minusOf;
};

Fed fedBy(const Job& job, const Graph& graph, Areas& areas, const Device& device)
{
    Fed fed;
    if (hasMainsLead(job, device.id))
        fed.by.insert(device.id.number);
    const auto [first, end] = graph.nodes.rangeOf(device);
    for (Node node = first; node < end; ++node) {
        const Traits& reached = areas.isRail(node) ? areas.group(node) : areas.area(node);
        for (const Pole& pole : reached.poles)
            (pole.plus || pole.device == device.id ? fed.by : fed.minusOf).insert(pole.device.number);
        if (!areas.isRail(node))
            fed.inputsOf.insert(reached.inputDevices.begin(), reached.inputDevices.end());
    }
    return fed;
}

std::vector<DeviceId> byTag(const Job& job, const std::set<std::uint32_t>& numbers)
{
    std::vector<DeviceId> devices;
    for (std::uint32_t number : numbers)
        devices.push_back({number});
    std::sort(devices.begin(), devices.end(),
              [&](DeviceId a, DeviceId b) { return naturallyLess(tagOf(job, a), tagOf(job, b)); });
    return devices;
}

} // namespace

Carries::Carries(const Job& job)
{
    const Graph graph = graphOf(job);
    const DryBranches branches(graph);
    Areas areas(graph, false);
    for (const Conductor& conductor : job.conductors) {
        const auto from = graph.nodes.of(conductor.from);
        if (const auto made = carriedByMake(job, conductor))
            carried_.emplace(conductor.id.number, *made);
        else if (const auto node = from ? from : graph.nodes.of(conductor.to))
            carried_.emplace(conductor.id.number, carriedAt(*node, areas, branches.has(conductor.id)));
    }

    Areas fed(graph, true);
    std::unordered_map<std::uint32_t, Fed> feeds;
    for (const Device& device : job.devices)
        feeds.emplace(device.id.number, fedBy(job, graph, fed, device));
    for (const Device& device : job.devices) {
        std::set<std::uint32_t> all = feeds[device.id.number].by;
        for (std::uint32_t input : feeds[device.id.number].inputsOf)
            all.insert(feeds[input].by.begin(), feeds[input].by.end());
        if (all.empty()) // a strip of minuses is dead only when its supply is off
            all = feeds[device.id.number].minusOf;
        supplies_.emplace(device.id.number, byTag(job, all));
    }
}

Message Carries::of(ConductorId conductor) const
{
    const auto found = carried_.find(conductor.number);
    return found == carried_.end() ? Message() : found->second;
}

std::vector<DeviceId> Carries::supplies(DeviceId device) const
{
    const auto found = supplies_.find(device.number);
    return found == supplies_.end() ? std::vector<DeviceId>() : found->second;
}

} // namespace doorloom
