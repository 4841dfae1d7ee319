#include "solve/inputways.h"

#include <algorithm>

namespace doorloom {

namespace {

class InputWays {
public:
    InputWays(const Meter& meter, const Questions& ask)
        : ask_(ask), circuit_(meter.net.circuit()), jointsAt_(circuit_.vertices), isLoads_(circuit_.vertices), isPole_(circuit_.vertices)
    {
        for (std::uint32_t i = 0; i < circuit_.joints.size(); ++i)
            for (Vertex end : {circuit_.joints[i].a, circuit_.joints[i].b})
                jointsAt_[end].push_back(i);
        for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i)
            if (const Element& element = circuit_.elements[i]; meter.loads[i] || element.kind == ElementKind::Resistor)
                isLoads_[element.a] = isLoads_[element.b] = 1;
        for (const Feed& feed : circuit_.feeds)
            isPole_[ask.netOf(feed.plus)] = isPole_[ask.netOf(feed.minus)] = 1;
    }

    std::vector<MovedIndex> from(const DryInput& input) const
    {
        std::vector<Vertex> met{input.terminal};
        std::vector<char> been(circuit_.vertices);
        std::vector<MovedIndex> operators;
        been[input.terminal] = 1;
        bool leads = false;
        for (std::size_t i = 0; i < met.size(); ++i) {
            leads = leads || isLoads_[met[i]];
            for (std::uint32_t number : jointsAt_[met[i]]) {
                const Joint& joint = circuit_.joints[number];
                const Vertex to = joint.a == met[i] ? joint.b : joint.a;
                if (been[to] || ask_.netOf(to) == ask_.netOf(input.reference) || isPole_[ask_.netOf(to)])
                    continue;
                been[to] = 1;
                met.push_back(to);
                addThrown(joint, operators);
            }
        }
        return leads ? operators : std::vector<MovedIndex>{};
    }

private:
    static void addThrown(const Joint& joint, std::vector<MovedIndex>& operators)
    {
        for (const Term& term : joint.guard.anyOf)
            for (const Atom& atom : term)
                if (std::find(operators.begin(), operators.end(), atom.moved) == operators.end())
                    operators.push_back(atom.moved);
    }

    const Questions& ask_;
    const Circuit& circuit_;
    std::vector<std::vector<std::uint32_t>> jointsAt_;
    std::vector<char> isLoads_, isPole_;
};

} // namespace

std::vector<std::vector<MovedIndex>> operatorsTowardsLoads(const Meter& meter, const Questions& ask)
{
    std::vector<std::vector<MovedIndex>> all(meter.net.circuit().inputs.size());
    if (all.empty())
        return all;
    const InputWays ways(meter, ask);
    for (std::size_t i = 0; i < all.size(); ++i)
        all[i] = ways.from(meter.net.circuit().inputs[i]);
    return all;
}

} // namespace doorloom
