#include "check/check.h"
#include "check/tell.h"

#include <algorithm>
#include <map>
#include <set>

// A conductor that leads nowhere: alone on a splice, on one side of a contact or transfer whose other side is empty, or capped
// at one end while the other is on a source's pole.
namespace doorloom {

namespace {

constexpr Text aloneWhy = {.en = "Splice {splice} holds one conductor alone: it leads nowhere.", .es = "El empalme {splice} tiene un solo hilo: no lleva a nada."};
constexpr Text aloneRemedy = {.en = "Bring the other conductors to {splice}, or take it out and cap the end.",
                              .es = "Lleve los demás hilos a {splice}, o quítelo y tape el extremo."};
constexpr Text liveWhy = {.en = "A conductor on {terminal} is live and ends capped: {terminal} meets {pole}.",
                          .es = "Un hilo en {terminal} tiene tensión y acaba tapado: {terminal} llega a {pole}."};
constexpr Text liveRemedy = {.en = "Lift the spare from {terminal} and cap it at both ends.", .es = "Suelte la reserva de {terminal} y tápela en ambos extremos."};

constexpr Text oneSideWhy = {.en = "{terminal} is landed, and nothing is on the other side of what is between: it leads nowhere.",
                             .es = "{terminal} está conectado, y al otro lado no hay nada: no lleva a ninguna parte."};
constexpr Text oneSideRemedy = {.en = "Land the other side as well: {others}. Or lift the conductor from {terminal} and cap it.",
                                .es = "Conecte también el otro lado: {others}. O suelte el hilo de {terminal} y tápelo."};

bool isCapped(const End& end) { return end.state == EndState::Spare || end.state == EndState::Insulated; }

// The landed end of a conductor whose other end is capped; a drain is insulated on purpose.
const Landing* landedEndOfSpare(const Facts& facts, const Conductor& conductor)
{
    const Core* core = coreOf(facts.job, conductor);
    if (core && core->drain)
        return nullptr;
    if (isCapped(conductor.from))
        return landingOf(conductor.to);
    return isCapped(conductor.to) ? landingOf(conductor.from) : nullptr;
}

const Pole* poleMetBy(const Facts& facts, Vertex vertex, const std::vector<Pole>& poles)
{
    const std::vector<Vertex> met = reachOf(facts, vertex);
    const auto found = std::find_if(poles.begin(), poles.end(), [&](const Pole& pole) { return std::binary_search(met.begin(), met.end(), pole.vertex); });
    return found == poles.end() ? nullptr : &*found;
}

Finding findingFor(std::string_view reason, Spot at, Message why, Message remedy)
{
    Finding finding;
    finding.rule = "lone-end";
    finding.reason = reason;
    finding.severity = Severity::Doubt;
    finding.at = {std::move(at)};
    finding.why = std::move(why);
    finding.remedy = std::move(remedy);
    return finding;
}

// What hangs together inside one device through its own contacts, links and fuses, whatever their throws.
struct Inside {
    std::vector<Vertex> terminals;
    bool hasContact = false, isEnd = false; // an end: a load, a source, an input, data, earth … something to lead to
};

// Vertices that are something to lead to.
std::vector<char> endsOf(const Facts& facts)
{
    std::vector<char> ends(facts.circuit().vertices);
    const Circuit& circuit = facts.circuit();
    for (const Element& element : circuit.elements)
        ends[element.a] = ends[element.b] = 1;
    for (const Diode& diode : circuit.diodes)
        ends[diode.anode] = ends[diode.cathode] = 1;
    for (const Feed& feed : circuit.feeds)
        ends[feed.plus] = ends[feed.minus] = 1;
    const auto mark = [&](const Device& device, const Key& node) {
        if (const auto vertex = facts.net.vertexOf(device.id, node))
            ends[*vertex] = 1;
    };
    for (const Device& device : facts.job.devices)
        if (const Kind* kind = kindOf(facts.job, device))
            for (const Part& part : kind->parts) {
                if (const auto* signal = std::get_if<SignalPart>(&part.body))
                    mark(device, signal->terminal);
                else if (const auto* earth = std::get_if<EarthPart>(&part.body))
                    mark(device, earth->terminal);
                else if (const auto* mains = std::get_if<MainsPart>(&part.body))
                    mark(device, mains->terminal);
                else if (const auto* battery = std::get_if<BatteryPart>(&part.body))
                    (mark(device, battery->plus), mark(device, battery->minus));
                else if (const auto* port = std::get_if<BatteryPortPart>(&part.body))
                    (mark(device, port->plus), mark(device, port->minus));
            }
    return ends;
}

bool isInside(const Facts& facts, const Joint& joint)
{
    return !facts.net.origin(joint.origin).conductor && facts.net.vertex(joint.a).device == facts.net.vertex(joint.b).device;
}

std::vector<Inside> insidesOf(const Facts& facts)
{
    const std::vector<char> ends = endsOf(facts);
    std::vector<char> been(facts.circuit().vertices);
    std::vector<Inside> all;
    for (Vertex first = 0; first < facts.circuit().vertices; ++first) {
        if (been[first])
            continue;
        been[first] = 1;
        Inside inside{{first}};
        for (std::size_t i = 0; i < inside.terminals.size(); ++i) {
            inside.isEnd = inside.isEnd || ends[inside.terminals[i]];
            for (std::uint32_t number : facts.jointsAt(inside.terminals[i])) {
                const Joint& joint = facts.circuit().joints[number];
                if (!isInside(facts, joint))
                    continue;
                inside.hasContact = inside.hasContact || !joint.guard.always();
                for (Vertex next : {joint.a, joint.b})
                    if (!been[next]) {
                        been[next] = 1;
                        inside.terminals.push_back(next);
                    }
            }
        }
        if (inside.terminals.size() > 1 && !inside.isEnd)
            all.push_back(std::move(inside));
    }
    return all;
}

// By terminal: how many conductors; where nothing is switched, no more of them than the two that say all. A strand from a spare
// terminal to its neighbour takes nothing along.
std::map<Vertex, std::size_t> landingsIn(const Facts& facts, const Inside& inside)
{
    std::map<Vertex, std::size_t> counts;
    bool leaves = false;
    for (Vertex vertex : inside.terminals) {
        if (!inside.hasContact && counts.size() > 1)
            break;
        for (const Conductor* conductor : facts.landingAt(vertex) ? facts.conductorsAt(vertex) : std::vector<const Conductor*>{}) {
            const Landing *from = landingOf(conductor->from), *to = landingOf(conductor->to);
            leaves = leaves || !from || !to || from->device != to->device;
            ++counts[vertex];
        }
    }
    const bool isStrand = !leaves && counts.size() == 1 && counts.begin()->second == 1;
    return isStrand ? std::map<Vertex, std::size_t>{} : counts;
}

// What the device itself joins whatever its contacts do, as one; then: is there a contact with something landed on both sides?
bool hasContactInUse(const Facts& facts, const Inside& inside, const std::map<Vertex, std::size_t>& landed)
{
    std::map<Vertex, Vertex> piece;
    for (Vertex vertex : inside.terminals)
        piece[vertex] = vertex;
    const auto forEachJoint = [&](auto visit) {
        for (Vertex vertex : inside.terminals)
            for (std::uint32_t number : facts.jointsAt(vertex))
                if (const Joint& joint = facts.circuit().joints[number]; isInside(facts, joint))
                    visit(joint);
    };
    forEachJoint([&](const Joint& joint) {
        if (!joint.guard.always() || piece[joint.a] == piece[joint.b])
            return;
        const Vertex from = piece[joint.a], to = piece[joint.b];
        for (auto& [vertex, of] : piece)
            of = of == from ? to : of;
    });
    std::set<Vertex> met;
    for (const auto& [vertex, count] : landed)
        met.insert(piece[vertex]);
    bool inUse = false;
    forEachJoint([&](const Joint& joint) {
        inUse = inUse || (!joint.guard.always() && piece[joint.a] != piece[joint.b] && met.contains(piece[joint.a]) && met.contains(piece[joint.b]));
    });
    return inUse;
}

bool isPole(const Facts& facts, Vertex at)
{
    const std::vector<Feed>& feeds = facts.circuit().feeds;
    return std::any_of(feeds.begin(), feeds.end(), [&](const Feed& feed) {
        return facts.ask.netOf(feed.plus) == facts.ask.netOf(at) || facts.ask.netOf(feed.minus) == facts.ask.netOf(at);
    });
}

// One pole of a coil's contacts left over on a load that is fed another way, while another pole of it works: nobody misses it.
bool isLeftOver(const Facts& facts, const Inside& inside, Vertex at)
{
    std::set<MovedIndex> moves;
    for (Vertex vertex : inside.terminals)
        for (std::uint32_t number : facts.jointsAt(vertex))
            for (const Term& term : facts.circuit().joints[number].guard.anyOf)
                for (const Atom& atom : term)
                    moves.insert(atom.moved);
    const auto isPlain = [&](MovedIndex moved) {
        return std::any_of(facts.circuit().drives.begin(), facts.circuit().drives.end(),
                           [&](const Drive& drive) { return drive.moved == moved && drive.manner == Drive::Manner::Plain; });
    };
    const auto isUsedElsewhere = [&](const Joint& joint) {
        const bool isIts = std::any_of(joint.guard.anyOf.begin(), joint.guard.anyOf.end(), [&](const Term& term) {
            return std::any_of(term.begin(), term.end(), [&](const Atom& atom) { return moves.contains(atom.moved); });
        });
        return isIts && facts.isLanded(joint.a) && facts.isLanded(joint.b);
    };
    const auto isItsLoad = [&](const Element& element) {
        return element.kind == ElementKind::Load && (facts.ask.netOf(element.a) == facts.ask.netOf(at) || facts.ask.netOf(element.b) == facts.ask.netOf(at));
    };
    const Circuit& circuit = facts.circuit();
    return !isPole(facts, at) && std::all_of(moves.begin(), moves.end(), isPlain) && std::any_of(circuit.joints.begin(), circuit.joints.end(), isUsedElsewhere) &&
           std::any_of(circuit.elements.begin(), circuit.elements.end(), isItsLoad);
}

void addOneSided(const Facts& facts, std::vector<Finding>& findings)
{
    for (const Inside& inside : insidesOf(facts)) {
        const std::map<Vertex, std::size_t> landed = landingsIn(facts, inside);
        if (landed.empty() || (inside.hasContact ? hasContactInUse(facts, inside, landed)
                                                 : landed.size() != 1 || landed.begin()->second != 1 || isPole(facts, landed.begin()->first)))
            continue; // on a pole other doors may be, which are judged elsewhere
        std::vector<Message> others;
        for (Vertex vertex : inside.terminals)
            if (!landed.contains(vertex) && facts.landingAt(vertex))
                others.push_back(verbatim(nameOf(facts, vertex)));
        const Vertex at = landed.begin()->first;
        if (isLeftOver(facts, inside, at))
            continue;
        findings.push_back(findingFor("one side only", spotOf(facts, at), {oneSideWhy, {{"terminal", nameOf(facts, at)}}},
                                      {oneSideRemedy, {{"terminal", nameOf(facts, at)}, {"others", others}}}));
    }
}

std::vector<Finding> findLoneEnds(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Splice& splice : facts.job.splices)
        if (conductorsOn(facts.job, splice.id).size() == 1)
            findings.push_back(findingFor("alone on a splice", {{}, splice.tag, {}, {}}, {aloneWhy, {{"splice", splice.tag}}},
                                          {aloneRemedy, {{"splice", splice.tag}}}));
    addOneSided(facts, findings);
    for (const Conductor& conductor : facts.job.conductors) {
        const Landing* landing = landedEndOfSpare(facts, conductor);
        const auto vertex = landing ? facts.net.vertexOf(landing->device, landing->terminal) : std::nullopt;
        if (!vertex)
            continue;
        const std::vector<Pole> poles = polesNear(facts, *vertex);
        if (const Pole* pole = poleMetBy(facts, *vertex, poles))
            findings.push_back(findingFor("live spare", terminalSpot(*landing),
                                          {liveWhy, {{"terminal", nameOf(facts, *vertex)}, {"pole", nameOf(facts, pole->vertex)}}},
                                          {liveRemedy, {{"terminal", nameOf(facts, *vertex)}}}));
    }
    return findings;
}

} // namespace

extern const Check loneEnd = {
    .code = "lone-end",
    .worst = Severity::Doubt,
    .title = {.en = "Conductor that leads nowhere", .es = "Hilo que no lleva a nada"},
    .notCovered = {.en = "volts that a dry input puts on a spare", .es = "tensión que una entrada seca pone en una reserva"},
    .run = findLoneEnds,
};

} // namespace doorloom
