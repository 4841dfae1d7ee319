#pragma once

#include "graph/circuit.h"
#include "model/job.h"

#include <string>
#include <unordered_map>
#include <vector>

// A job's circuit, with the names of everything in it.
namespace doorloom {

// What put an edge there, so that a finding can cite its path.
struct Origin {
    ConductorId conductor;        // a conductor …
    DeviceId device;              // … or a part of a device
    Key part;
    std::vector<JumperAt> because; // the jumpers, as they stand, that put it there

    friend auto operator<=>(const Origin&, const Origin&) = default;
};

// A job's operator, or an option not chosen yet, which the search tries in all its values.
struct NetOperator {
    OperatorId id;
    DeviceId device;
    Key option;
    std::vector<Throw> throws;
};

struct NetVertex {
    DeviceId device; // a terminal or inner node of a device …
    Key node;
    SpliceId splice; // … or a splice
};

class Netlist {
public:
    // Cost: linear in the job.
    explicit Netlist(const Job& job);

    const Circuit& circuit() const { return circuit_; }
    const Origin& origin(std::uint32_t number) const { return origins_[number]; }
    const NetVertex& vertex(Vertex vertex) const { return vertices_[vertex]; }
    const NetOperator& moved(MovedIndex moved) const { return operators_[moved]; }

    std::optional<Vertex> vertexOf(DeviceId device, const Key& node) const;
    std::optional<MovedIndex> indexOf(OperatorId moved) const;
    // Where a part of a device stands among the circuit's elements, feeds, inputs; nothing when it is not there
    // with the jumpers as they are.
    std::optional<std::uint32_t> elementOf(DeviceId device, const Key& part) const;
    std::optional<std::uint32_t> inputOf(DeviceId device, const Key& part) const;

private:
    friend class NetlistBuilder;

    Circuit circuit_;
    std::vector<Origin> origins_;
    std::vector<NetVertex> vertices_;
    std::vector<NetOperator> operators_;
    std::unordered_map<std::uint32_t, MovedIndex> operatorIndex_;
    std::unordered_map<std::uint32_t, std::unordered_map<Key, Vertex>> nodes_; // by device number
    std::unordered_map<std::uint32_t, Vertex> splices_;
    std::unordered_map<std::uint32_t, std::unordered_map<Key, std::uint32_t>> elements_, inputs_;
};

// The part of a kind behind an origin; null: another sort of part, or a conductor.
template <class Body> const Body* partBehind(const Job& job, const Origin& origin)
{
    const Kind* kind = kindOf(job, origin.device);
    return kind ? findPartAs<Body>(*kind, origin.part) : nullptr;
}

// The terminal that a vertex is; nothing inside a device or on a splice.
std::optional<Landing> landingAt(const Job& job, const Netlist& net, Vertex vertex);

} // namespace doorloom
