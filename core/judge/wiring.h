#pragma once

#include "graph/circuit.h"
#include "model/job.h"

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

namespace doorloom {

// What of a kind matters to how a job hangs together. Nodes are numbered: its terminals, then points inside it.
struct KindShape {
    struct Edge {
        std::uint32_t a, b;
        bool passes; // current can pass with no load in the way: a contact, a jumper, a diode, a resistor
        const Condition* when;
    };

    const JobKind* row;
    std::vector<std::string_view> nodes;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> joints;  // links and fuses, whatever the jumpers
    std::vector<Edge> edges;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> sources; // plus and minus
    std::vector<std::uint32_t> earths;
    std::vector<Key> drives;                                      // roles that its loads or its logic move

    // Nothing but joints: a terminal strip, a bar.
    bool isWiring() const { return edges.empty() && sources.empty() && drives.empty(); }
};

// A job's rows by index, in the order of their tables, and what is one net whatever is thrown or jumpered. A netlist
// without names, guards and parts, for what is asked after every edit.
// Owns: nothing of the job, which must outlive it.   Cost: linear
class Wiring {
public:
    static constexpr std::uint32_t none = ~0u;

    explicit Wiring(const Job& job);

    std::vector<const Device*> devices;
    std::vector<const Operator*> operators;
    std::vector<const Splice*> splices;
    std::vector<const Conductor*> conductors;
    std::vector<const Opening*> openings;

    // Vertices: every device's nodes in a row from its base on, then the splices, then the building's earth.
    std::vector<const KindShape*> shapes; // by device; one of a missing kind has no nodes
    std::vector<std::uint32_t> base;      // by device
    Vertex vertices = 0;
    std::vector<std::uint32_t> deviceAt;  // by vertex; none: a splice or the earth
    std::vector<std::pair<std::uint32_t, std::uint32_t>> ends; // vertices of each conductor's ends; none: not landed
    std::vector<std::uint32_t> net;       // by vertex
    std::uint32_t nets = 0;

    Vertex earth() const { return vertices - 1; }
    Vertex vertexOfSplice(std::size_t index) const { return static_cast<Vertex>(vertices - 1 - splices.size() + index); }
    std::uint32_t spliceAt(Vertex vertex) const { return vertex - vertexOfSplice(0); } // it is one
    std::uint32_t indexOf(DeviceId id) const { return indexIn(devices, id.number); }
    std::uint32_t indexOf(OperatorId id) const { return indexIn(operators, id.number); }
    Vertex vertexOf(const Landing& landing) const; // none: no such device or node
    // None: not landed.
    std::uint32_t netOf(const End& end) const;

private:
    // At once where the numbers lie as close as they do in a job that was drawn; else by halving.
    template <class Row> std::uint32_t indexIn(const std::vector<const Row*>& rows, std::uint32_t number) const
    {
        if (!indexOfNumber_.empty()) {
            const std::uint32_t index = number < indexOfNumber_.size() ? indexOfNumber_[number] : none;
            return index < rows.size() && rows[index]->id.number == number ? index : none;
        }
        const auto found = std::lower_bound(rows.begin(), rows.end(), number, [](const Row* row, std::uint32_t wanted) {
            return row->id.number < wanted;
        });
        return found != rows.end() && (*found)->id.number == number ? static_cast<std::uint32_t>(found - rows.begin()) : none;
    }
    Vertex vertexOf(const End& end) const;
    void numberVertices();
    void joinNets();

    void indexNumbers();

    std::vector<KindShape> kinds_;
    std::vector<std::uint32_t> indexOfNumber_; // of devices, operators and splices; a job numbers all its rows apart
};

} // namespace doorloom
