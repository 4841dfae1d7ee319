#include "solve/independent.h"

#include "graph/joinedsets.h"

#include <algorithm>
#include <optional>

namespace doorloom {

namespace {

class Parting {
public:
    Parting(const Meter& meter, Rails rails)
        : meter_(meter), circuit_(meter.net.circuit()), nets_(circuit_.vertices), held_(circuit_.vertices), isPole_(circuit_.vertices),
          sets_(circuit_.vertices + circuit_.operators.size() + 1)
    {
        for (std::uint32_t i = 0; i < circuit_.joints.size(); ++i)
            if (const Joint& joint = circuit_.joints[i]; isPlain(i, rails))
                nets_.join(joint.a, joint.b);
        const Position rest = atRest(circuit_);
        for (const Feed& feed : circuit_.feeds)
            if (feed.ac == meter.conditions.ac && holds(feed.live, rest)) // else it holds nothing
                holding_.push_back(&feed);
        for (const Feed* feed : holding_) {
            isPole_[nets_.find(feed->plus)] = isPole_[nets_.find(feed->minus)] = 1;
            held_.join(nets_.find(feed->plus), nets_.find(feed->minus));
        }
        for (Vertex vertex = 0; vertex < circuit_.vertices; ++vertex)
            if (!isPoleAt(vertex))
                sets_.join(vertex, nets_.find(vertex));
        joinParts(rails);
        joinDrives();
        joinBetweenSources();
    }

    Independent parted()
    {
        const std::vector<std::uint32_t> numbers = sets_.numbers();
        Independent result;
        for (Vertex vertex = 0; vertex < circuit_.vertices; ++vertex)
            result.ofVertex.push_back(isPoleAt(vertex) ? Independent::pole : numbers[vertex]);
        for (MovedIndex moved = 0; moved < circuit_.operators.size(); ++moved)
            result.ofOperator.push_back(numbers[nodeOf(moved)]);
        result.parts = 1 + *std::max_element(numbers.begin(), numbers.end());
        result.between = numbers.back();
        result.heldApart = heldApart();
        return result;
    }

private:
    bool isPlain(std::uint32_t joint, Rails rails) const
    {
        return circuit_.joints[joint].guard.always() && (rails == Rails::AsJoints || meter_.ohmsOfJoint[joint] <= 0);
    }
    bool isPoleAt(Vertex vertex) { return isPole_[nets_.find(vertex)] != 0; }
    std::uint32_t nodeOf(MovedIndex moved) const { return circuit_.vertices + moved; }
    std::uint32_t betweenSources() const { return static_cast<std::uint32_t>(circuit_.vertices + circuit_.operators.size()); }

    // What stands between two vertices, and the operators that it hangs on, are of one part.
    void tie(Vertex a, Vertex b, const Guard* guard)
    {
        std::optional<std::uint32_t> node;
        const auto add = [&](std::uint32_t other) {
            if (node)
                sets_.join(*node, other);
            node = other;
        };
        for (Vertex end : {a, b})
            if (!isPoleAt(end))
                add(nets_.find(end));
        if (guard)
            for (const Term& term : guard->anyOf)
                for (const Atom& atom : term)
                    add(nodeOf(atom.moved));
        if (node)
            for (Vertex end : {a, b})
                if (isPoleAt(end))
                    touched_.emplace_back(*node, held_.find(nets_.find(end)));
    }

    void joinParts(Rails rails)
    {
        for (std::uint32_t i = 0; i < circuit_.joints.size(); ++i)
            if (const Joint& joint = circuit_.joints[i]; !isPlain(i, rails))
                tie(joint.a, joint.b, &joint.guard);
        for (const Diode& diode : circuit_.diodes)
            tie(diode.anode, diode.cathode, nullptr);
        for (const Element& element : circuit_.elements)
            tie(element.a, element.b, nullptr);
    }

    // Whatever has to do with whether a coil is in.
    void joinDrives()
    {
        std::vector<char> turnsOn(circuit_.operators.size());
        for (const Feed& feed : circuit_.feeds)
            for (const Term& term : feed.live.anyOf)
                for (const Atom& atom : term)
                    turnsOn[atom.moved] = 1;
        for (const Drive& drive : circuit_.drives) {
            if (drive.manner == Drive::Manner::Programmed)
                continue; // it goes as it likes
            const auto add = [&](Vertex a, Vertex b) {
                for (Vertex end : {a, b})
                    if (!isPoleAt(end))
                        sets_.join(nodeOf(drive.moved), nets_.find(end));
                    else // a coil straight across two sources
                        touched_.emplace_back(nodeOf(drive.moved), held_.find(nets_.find(end)));
            };
            if (drive.load)
                add(circuit_.elements[*drive.load].a, circuit_.elements[*drive.load].b);
            if (drive.closedInput)
                add(circuit_.inputs[*drive.closedInput].terminal, circuit_.inputs[*drive.closedInput].reference);
            for (const Term& term : drive.powered.anyOf)
                for (const Atom& atom : term)
                    if (!turnsOn[atom.moved])
                        sets_.join(nodeOf(drive.moved), nodeOf(atom.moved));
        }
    }

    bool heldApart()
    {
        return std::any_of(holding_.begin(), holding_.end(), [&](const Feed* feed) {
            return held_.find(nets_.find(feed->plus)) != held_.find(nets_.find(holding_.front()->plus));
        });
    }

    // Two of those could change together what each alone can't.
    void joinBetweenSources()
    {
        for (auto& [node, held] : touched_)
            node = sets_.find(node);
        std::sort(touched_.begin(), touched_.end());
        for (std::size_t i = 1; i < touched_.size(); ++i)
            if (touched_[i].first == touched_[i - 1].first && touched_[i].second != touched_[i - 1].second)
                sets_.join(touched_[i].first, betweenSources());
    }

    const Meter& meter_;
    const Circuit& circuit_;
    std::vector<const Feed*> holding_;
    JoinedSets nets_, held_; // held: of nets, those whose volts sources hold against each other
    std::vector<char> isPole_; // by net
    JoinedSets sets_;          // of vertices, operators, and what lies between sources that are not tied
    std::vector<std::pair<std::uint32_t, std::uint32_t>> touched_; // a member of a set, and the sources that it touches
};

} // namespace

Independent independentParts(const Meter& meter, Rails rails) { return Parting(meter, rails).parted(); }

} // namespace doorloom
