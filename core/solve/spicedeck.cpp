#include "solve/spicedeck.h"

#include "graph/joinedsets.h"
#include "solve/heldvolts.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace doorloom {

namespace {

// Of the steep curve: what it takes at some hundred milliamperes.
constexpr double steepVolts = 0.00085;

std::string plain(std::string_view name) // what a comment may hold
{
    std::string text(name);
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

class Deck {
public:
    Deck(const Network& net, const Solution& solution) : net_(net), solution_(solution), nodes_(net), held_(net.vertices) {}

    std::string elements()
    {
        for (std::size_t i = 0; i < net_.resistors.size(); ++i)
            if (const auto& [a, b, ohms] = net_.resistors[i]; ohms > 0 && nodes_.number(a) != nodes_.number(b))
                text_ += fmt::format("R{} {} {} {:.17g}\n", i, nodes_[a], nodes_[b], ohms);
        for (const auto& [a, b, ohms] : net_.resistors)
            if (ohms == 0 && !held_.between(a, b))
                held_.hold(a, b, 0);
        for (std::uint32_t i = 0; i < net_.sources.size(); ++i)
            addSource(i);
        for (std::size_t i = 0; i < net_.diodes.size(); ++i)
            text_ += fmt::format("D{0} {1} d{0} steep\nVD{0} d{0} {2} DC {3:.17g}\n", i, nodes_[net_.diodes[i].anode],
                                 nodes_[net_.diodes[i].cathode], net_.diodes[i].drop - steepVolts);
        for (std::uint32_t i = 0; i < net_.draws.size(); ++i)
            addDraw(i);
        addGrounds();
        return std::move(text_);
    }

private:
    void addSource(std::uint32_t i)
    {
        const auto& [plus, minus, volts] = net_.sources[i];
        if (held_.between(plus, minus))
            return; // it fights, or lies side by side with others
        held_.hold(plus, minus, volts);
        text_ += fmt::format("V{} {} {} DC {:.17g}\n", i, nodes_[plus], nodes_[minus], volts);
    }

    void addDraw(std::uint32_t i)
    {
        const auto& draw = net_.draws[i];
        const double volts = solution_.between(draw.a, draw.b).value_or(0);
        if (!solution_.byLaw[i])
            text_ += fmt::format("RL{} {} {} {:.17g}\n", i, nodes_[draw.a], nodes_[draw.b], draw.ohms);
        else if (draw.law == LoadLaw::ConstantPower)
            text_ += fmt::format("B{0} {1} {2} I={3:.17g}/V({1},{2})\n", i, nodes_[draw.a], nodes_[draw.b], draw.amount);
        else
            text_ += fmt::format("I{} {} {} DC {:.17g}\n", i, nodes_[draw.a], nodes_[draw.b], volts > 0 ? draw.amount : -draw.amount);
    }

    // A simulator wants each piece tied to its node 0. No current flows through a single tie.
    void addGrounds()
    {
        JoinedSets pieces(net_.vertices);
        const auto join = [&](const auto& each) { pieces.join(each.a, each.b); };
        std::for_each(net_.resistors.begin(), net_.resistors.end(), join);
        std::for_each(net_.draws.begin(), net_.draws.end(), join);
        for (std::uint32_t i = 0; i < net_.sources.size(); ++i)
            if (!std::binary_search(solution_.fighting.begin(), solution_.fighting.end(), i))
                pieces.join(net_.sources[i].plus, net_.sources[i].minus);
        for (const auto& [anode, cathode, drop] : net_.diodes)
            pieces.join(anode, cathode);
        for (Vertex vertex = 0; vertex < net_.vertices; ++vertex)
            if (pieces.find(vertex) == vertex)
                text_ += fmt::format("RG{} {} 0 1\n", vertex, nodes_[vertex]);
    }

    const Network& net_;
    const Solution& solution_;
    DeckNodes nodes_;
    HeldVolts held_;
    std::string text_;
};

} // namespace

DeckNodes::DeckNodes(const Network& network)
{
    JoinedSets joined(network.vertices);
    for (const auto& [a, b, ohms] : network.resistors)
        if (ohms == 0)
            joined.join(a, b);
    number_ = joined.numbers();
}

std::string spiceDeck(const Job& job, const Netlist& net, const Readings& readings, const std::string& title)
{
    const DeckNodes nodes(readings.network());
    std::string text = fmt::format("* {}\n", plain(title));
    std::map<std::uint32_t, std::string> names;
    for (Vertex vertex = 0; vertex < net.circuit().vertices; ++vertex) {
        if (const auto terminal = landingAt(job, net, vertex))
            names[nodes.number(vertex)] += " " + nameOf(job, *terminal);
        else if (const Splice* splice = job.splices.find(net.vertex(vertex).splice))
            names[nodes.number(vertex)] += " " + splice->tag;
    }
    for (const auto& [number, terminals] : names)
        text += fmt::format("* n{}:{}\n", number, plain(terminals));
    text += Deck(readings.network(), readings.solution()).elements();
    return text + ".model steep D(is=1e-15 n=0.001)\n.options reltol=1e-9 abstol=1e-14 vntol=1e-10 itl1=1000\n"
                  ".control\nset numdgt=12\nop\nprint all\n.endc\n.end\n";
}

} // namespace doorloom
