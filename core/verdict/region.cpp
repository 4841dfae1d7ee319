#include "verdict/region.h"

#include "graph/blocks.h"

#include <algorithm>
#include <unordered_map>

namespace doorloom {

void addOperators(std::vector<MovedIndex>& to, const Guard& guard)
{
    for (const Term& term : guard.anyOf)
        for (const Atom& atom : term)
            to.push_back(atom.moved);
}

void sortOperators(std::vector<MovedIndex>& operators)
{
    std::sort(operators.begin(), operators.end());
    operators.erase(std::unique(operators.begin(), operators.end()), operators.end());
}

namespace {

bool isOneNet(const Joint& joint) { return joint.guard.always() && !joint.byJumper; }

} // namespace

Nets::Nets(const Circuit& circuit) : circuit_(circuit)
{
    std::vector<std::pair<Vertex, Vertex>> always;
    for (const Joint& joint : circuit.joints)
        if (isOneNet(joint))
            always.emplace_back(joint.a, joint.b);
    net_ = piecesOf(circuit.vertices, always);
    const Vertex nets = net_.empty() ? 0 : *std::max_element(net_.begin(), net_.end()) + 1;
    edgesAt_.resize(nets);

    std::vector<std::pair<Vertex, Vertex>> all;
    const auto add = [&](Vertex a, Vertex b, Edge::Sort sort, std::uint32_t number) {
        all.emplace_back(net_[a], net_[b]);
        if (net_[a] == net_[b])
            return;
        edgesAt_[net_[a]].push_back({net_[b], sort, true, number});
        edgesAt_[net_[b]].push_back({net_[a], sort, false, number});
    };
    for (std::uint32_t i = 0; i < circuit.joints.size(); ++i)
        if (!isOneNet(circuit.joints[i]) && !circuit.joints[i].guard.anyOf.empty())
            add(circuit.joints[i].a, circuit.joints[i].b, Edge::Sort::Joint, i);
    reach_ = piecesOf(nets, all); // as yet joints alone
    for (std::uint32_t i = 0; i < circuit.diodes.size(); ++i)
        add(circuit.diodes[i].anode, circuit.diodes[i].cathode, Edge::Sort::Diode, i);
    for (std::uint32_t i = 0; i < circuit.elements.size(); ++i)
        if (circuit.elements[i].kind == ElementKind::Resistor)
            add(circuit.elements[i].a, circuit.elements[i].b, Edge::Sort::Resistor, i);
        else
            all.emplace_back(net_[circuit.elements[i].a], net_[circuit.elements[i].b]);
    for (std::uint32_t i = 0; i < circuit.feeds.size(); ++i)
        add(circuit.feeds[i].minus, circuit.feeds[i].plus, Edge::Sort::Source, i);
    island_ = piecesOf(nets, all);
    feeds_.resize(island_.empty() ? 0 : *std::max_element(island_.begin(), island_.end()) + 1);
    for (std::uint32_t i = 0; i < circuit.feeds.size(); ++i)
        feeds_[islandOf(circuit.feeds[i].plus)].push_back(i);
}

bool Nets::taken(const Edge& edge, const Wanted& wanted) const
{
    switch (edge.sort) {
    case Edge::Sort::Joint:
        return !wanted.without ||
               std::find(wanted.without->begin(), wanted.without->end(), edge.number) == wanted.without->end();
    case Edge::Sort::Diode:
        return wanted.diodes;
    case Edge::Sort::Resistor:
        return circuit_.elements[edge.number].ohms <= wanted.resistorsUpToOhms;
    case Edge::Sort::Source:
        return wanted.sources && edge.number != wanted.notFeed;
    }
    return false;
}

Region Nets::regionOf(const std::vector<Vertex>& virtualEnds, const std::vector<Vertex>& starts,
                      const std::vector<Vertex>& stops, const Wanted& wanted) const
{
    std::unordered_map<Vertex, Vertex> local;
    std::vector<Vertex> queue;
    const auto localOf = [&](Vertex net) {
        const auto [found, isNew] = local.try_emplace(net, static_cast<Vertex>(local.size()));
        if (isNew)
            queue.push_back(net);
        return found->second;
    };
    Region region;
    for (Vertex end : virtualEnds)
        region.ends.push_back(localOf(net_[end]));
    queue.clear();
    std::unordered_map<Vertex, bool> expanded;
    for (Vertex stop : stops)
        expanded[net_[stop]] = true;
    for (Vertex start : starts)
        if (!expanded[net_[start]])
            queue.push_back(net_[start]);

    struct Found {
        Vertex a, b;
        Edge edge;
    };
    std::vector<Found> found;
    for (std::size_t next = 0; next < queue.size(); ++next) {
        const Vertex net = queue[next];
        if (expanded[net])
            continue;
        expanded[net] = true;
        for (const Edge& edge : edgesAt_[net]) {
            if (!taken(edge, wanted) || (wanted.avoiding && net_[*wanted.avoiding] == edge.other))
                continue;
            const auto other = expanded.find(edge.other);
            const bool isStop = std::find_if(stops.begin(), stops.end(), [&](Vertex stop) {
                                    return net_[stop] == edge.other;
                                }) != stops.end();
            if (!isStop && other != expanded.end() && other->second)
                continue; // seen from its other end
            const Vertex here = localOf(net), there = localOf(edge.other);
            if (!isStop)
                queue.push_back(edge.other);
            found.push_back({edge.forward ? here : there, edge.forward ? there : here, edge});
        }
    }

    std::vector<std::pair<Vertex, Vertex>> edges;
    for (std::size_t i = 0; i + 1 < region.ends.size(); i += 2)
        edges.emplace_back(region.ends[i], region.ends[i + 1]);
    const std::size_t virtuals = edges.size();
    for (const Found& each : found)
        edges.emplace_back(each.a, each.b);
    region.vertices = static_cast<Vertex>(local.size());
    const std::vector<std::uint32_t> block = blocksOf(region.vertices, edges);
    for (std::size_t i = 1; i < virtuals; ++i)
        region.possible = region.possible && block[i] == block[0];
    bool any = virtuals > 1;
    for (std::size_t i = 0; i < found.size(); ++i) {
        if (block[virtuals + i] != block[0])
            continue;
        any = true;
        const Edge& edge = found[i].edge;
        if (edge.sort == Edge::Sort::Joint) {
            region.joints.push_back({found[i].a, found[i].b, edge.number});
            addOperators(region.operators, circuit_.joints[edge.number].guard);
        } else {
            const auto sort = edge.sort == Edge::Sort::Diode      ? RegionEdge::Sort::Diode
                              : edge.sort == Edge::Sort::Resistor ? RegionEdge::Sort::Resistor
                                                                  : RegionEdge::Sort::Source;
            region.edges.push_back({found[i].a, found[i].b, sort, edge.number});
        }
    }
    region.possible = region.possible && any;
    sortOperators(region.operators);
    return region;
}

namespace {

// Gives the vertices that a part uses the lowest numbers, its ends first.
void numberAnew(Region& part)
{
    std::unordered_map<Vertex, Vertex> local;
    const auto renumber = [&](Vertex& vertex) {
        vertex = local.try_emplace(vertex, static_cast<Vertex>(local.size())).first->second;
    };
    for (Vertex& end : part.ends)
        renumber(end);
    for (RegionJoint& joint : part.joints) {
        renumber(joint.a);
        renumber(joint.b);
    }
    for (RegionEdge& edge : part.edges) {
        renumber(edge.a);
        renumber(edge.b);
    }
    part.vertices = static_cast<Vertex>(local.size());
}

} // namespace

std::vector<Region> Nets::parallelParts(const Region& region, const Circuit& circuit)
{
    const Vertex x = region.ends[0], y = region.ends[1];
    std::vector<std::pair<Vertex, Vertex>> inner;
    for (const RegionJoint& joint : region.joints)
        if (joint.a != x && joint.a != y && joint.b != x && joint.b != y)
            inner.emplace_back(joint.a, joint.b);
    for (const RegionEdge& edge : region.edges)
        if (edge.a != x && edge.a != y && edge.b != x && edge.b != y)
            inner.emplace_back(edge.a, edge.b);
    const std::vector<std::uint32_t> piece = piecesOf(region.vertices, inner);

    std::unordered_map<std::uint64_t, std::size_t> partOf;
    std::vector<Region> parts;
    std::uint64_t loner = std::uint64_t(1) << 32;
    const auto partFor = [&](Vertex a, Vertex b) -> Region& {
        const bool aInner = a != x && a != y, bInner = b != x && b != y;
        const std::uint64_t key = aInner ? piece[a] : bInner ? piece[b] : loner++;
        const auto [found, isNew] = partOf.try_emplace(key, parts.size());
        if (isNew) {
            parts.push_back(Region{});
            parts.back().vertices = region.vertices;
            parts.back().ends = region.ends;
        }
        return parts[found->second];
    };
    for (const RegionJoint& joint : region.joints)
        partFor(joint.a, joint.b).joints.push_back(joint);
    for (const RegionEdge& edge : region.edges)
        partFor(edge.a, edge.b).edges.push_back(edge);
    for (Region& part : parts) {
        for (const RegionJoint& joint : part.joints)
            addOperators(part.operators, circuit.joints[joint.joint].guard);
        sortOperators(part.operators);
        numberAnew(part);
    }
    return parts;
}

} // namespace doorloom
