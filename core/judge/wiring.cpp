#include "judge/wiring.h"

#include "graph/joinedsets.h"

namespace doorloom {

namespace {

class ShapeOfKind {
public:
    explicit ShapeOfKind(const JobKind& row) : shape_{&row, {}, {}, {}, {}, {}, {}}
    {
        for (const Terminal* terminal : terminalsOf(row.kind))
            shape_.nodes.push_back(terminal->key);
        for (const Part& part : row.kind.parts)
            std::visit([&](const auto& body) { add(part, body); }, part.body);
    }

    KindShape taken() { return std::move(shape_); }

private:
    std::uint32_t node(const Key& key)
    {
        const auto found = std::find(shape_.nodes.begin(), shape_.nodes.end(), key);
        if (found == shape_.nodes.end())
            shape_.nodes.push_back(key);
        return static_cast<std::uint32_t>(found - shape_.nodes.begin());
    }
    void joint(const Part& part, const Key& a, const Key& b)
    {
        if (part.when.empty())
            shape_.joints.emplace_back(node(a), node(b));
        else
            passing(part, a, b);
    }
    void passing(const Part& part, const Key& a, const Key& b) { shape_.edges.push_back({node(a), node(b), true, &part.when}); }
    void loading(const Part& part, const Key& a, const Key& b) { shape_.edges.push_back({node(a), node(b), false, &part.when}); }

    void add(const Part& part, const LinkPart& body) { joint(part, body.a, body.b); }
    void add(const Part& part, const FusePart& body) { joint(part, body.a, body.b); }
    void add(const Part& part, const ContactPart& body) { passing(part, body.a, body.b); }
    void add(const Part& part, const DiodePart& body) { passing(part, body.anode, body.cathode); }
    void add(const Part& part, const ResistorPart& body) { passing(part, body.a, body.b); }
    void add(const Part& part, const LoadPart& body) { loading(part, body.a, body.b); }
    void add(const Part& part, const SuppressorPart& body) { loading(part, body.a, body.b); }
    void add(const Part& part, const DryInputPart& body) { loading(part, body.terminal, body.reference); }
    void add(const Part& part, const BatteryPortPart& body) { loading(part, body.plus, body.minus); }
    void add(const Part& part, const BatteryPart& body) { loading(part, body.plus, body.minus); }
    void add(const Part& part, const SignalPart& body) { loading(part, body.terminal, body.reference); }
    void add(const Part&, const SourcePart& body) { shape_.sources.emplace_back(node(body.plus), node(body.minus)); }
    void add(const Part&, const EarthPart& body) { shape_.earths.push_back(node(body.terminal)); }
    void add(const Part&, const MainsPart&) {}
    void add(const Part&, const MovePart& body) { shape_.drives.push_back(body.role); }

    KindShape shape_;
};

template <class Row> std::vector<const Row*> rowsOf(const Table<Row>& table)
{
    std::vector<const Row*> rows;
    rows.reserve(table.size());
    for (const Row& row : table)
        rows.push_back(&row);
    return rows;
}

const KindShape unknownKind{nullptr, {}, {}, {}, {}, {}, {}};

} // namespace

Wiring::Wiring(const Job& job)
    : devices(rowsOf(job.devices)), operators(rowsOf(job.operators)), splices(rowsOf(job.splices)),
      conductors(rowsOf(job.conductors)), openings(rowsOf(job.openings))
{
    kinds_.reserve(job.kinds.size());
    for (const JobKind& row : job.kinds)
        kinds_.push_back(ShapeOfKind(row).taken());
    indexNumbers();
    numberVertices();
    joinNets();
}

void Wiring::indexNumbers()
{
    std::uint32_t most = 0;
    for (const Device* row : devices)
        most = std::max(most, row->id.number);
    for (const Operator* row : operators)
        most = std::max(most, row->id.number);
    for (const Splice* row : splices)
        most = std::max(most, row->id.number);
    if (most > 64 * (devices.size() + operators.size() + splices.size() + 1'000))
        return;
    indexOfNumber_.assign(most + 1, none);
    const auto put = [&](const auto& rows) {
        for (std::uint32_t i = 0; i < rows.size(); ++i)
            indexOfNumber_[rows[i]->id.number] = i;
    };
    put(devices);
    put(operators);
    put(splices);
}

void Wiring::numberVertices()
{
    for (std::uint32_t index = 0; index < devices.size(); ++index) {
        const auto kind = std::find_if(kinds_.begin(), kinds_.end(), [&](const KindShape& each) {
            return each.row->id == devices[index]->kind;
        });
        shapes.push_back(kind == kinds_.end() ? &unknownKind : &*kind);
        base.push_back(vertices);
        vertices += static_cast<Vertex>(shapes.back()->nodes.size());
        deviceAt.resize(vertices, index);
    }
    vertices += static_cast<Vertex>(splices.size()) + 1;
    deviceAt.resize(vertices, none);
    ends.reserve(conductors.size());
    for (const Conductor* conductor : conductors)
        ends.emplace_back(vertexOf(conductor->from), vertexOf(conductor->to));
}

Vertex Wiring::vertexOf(const Landing& landing) const
{
    const std::uint32_t device = indexOf(landing.device);
    if (device == none)
        return none;
    const auto& nodes = shapes[device]->nodes;
    const auto node = std::find(nodes.begin(), nodes.end(), landing.terminal);
    return node == nodes.end() ? none : base[device] + static_cast<Vertex>(node - nodes.begin());
}

Vertex Wiring::vertexOf(const End& end) const
{
    if (const Landing* landing = landingOf(end))
        return vertexOf(*landing);
    if (const SpliceId* splice = spliceOf(end))
        if (const std::uint32_t index = indexIn(splices, splice->number); index != none)
            return vertexOfSplice(index);
    return none;
}

std::uint32_t Wiring::netOf(const End& end) const
{
    const Vertex vertex = vertexOf(end);
    return vertex == none ? none : net[vertex];
}

void Wiring::joinNets()
{
    JoinedSets sets(vertices);
    for (std::size_t device = 0; device < devices.size(); ++device) {
        for (const auto& [a, b] : shapes[device]->joints)
            sets.join(base[device] + a, base[device] + b);
        for (std::uint32_t terminal : shapes[device]->earths)
            sets.join(base[device] + terminal, earth());
    }
    for (const auto& [from, to] : ends)
        if (from != none && to != none)
            sets.join(from, to);
    net = sets.numbers();
    nets = *std::max_element(net.begin(), net.end()) + 1; // the earth is one, at least
}

} // namespace doorloom
