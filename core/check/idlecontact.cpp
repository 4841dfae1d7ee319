#include "check/check.h"
#include "check/loops.h"
#include "check/tell.h"

#include <algorithm>
#include <set>

// A contact of a hand, a door, a sensor or logic that is landed on both sides and makes no difference to any load or input.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{contact} is landed on both sides, and whatever it does changes no load and no input.",
                      .es = "{contact} está conectado por ambos lados, y haga lo que haga no cambia ninguna carga ni entrada."};
constexpr Text remedy = {.en = "Follow both conductors of {contact}: one of them is on a terminal beside its own.",
                         .es = "Siga los dos hilos de {contact}: uno está en un borne junto al suyo."};

// A coil's relay has poles that are left over; what people, sensors and logic move is there to tell something.
bool hasLeftOverPoles(const Facts& facts, MovedIndex moved)
{
    return std::any_of(facts.circuit().drives.begin(), facts.circuit().drives.end(),
                       [&](const Drive& drive) { return drive.moved == moved && drive.manner == Drive::Manner::Plain; });
}

bool tellsSomething(OperatorNature nature)
{
    using enum OperatorNature;
    return nature == Hand || nature == KeySwitch || nature == Selector || nature == Door || nature == Bolt || nature == Sensor || nature == Relay;
}

// Operators that matter to some load or input, found one load or input after another until it is the one asked for.
class Mattering {
public:
    explicit Mattering(const Facts& facts) : facts_(facts) {}

    bool contains(MovedIndex moved)
    {
        while (!found_.contains(moved) && (element_ < facts_.circuit().elements.size() || input_ < facts_.circuit().inputs.size()))
            addNext();
        return found_.contains(moved);
    }

private:
    void addNext()
    {
        if (input_ < facts_.circuit().inputs.size()) {
            add(facts_.ask.operatorsThatMatterToInput(input_));
            if (supervisedInput(facts_, input_))
                add(Loop(facts_, input_).operators());
            ++input_;
        } else if (const Element& at = facts_.circuit().elements[element_++]; at.kind == ElementKind::Load || at.kind == ElementKind::Resistor)
            add(facts_.ask.operatorsThatMatter(element_ - 1));
    }
    void add(const std::vector<MovedIndex>& operators) { found_.insert(operators.begin(), operators.end()); }

    const Facts& facts_;
    std::set<MovedIndex> found_;
    std::uint32_t element_ = 0, input_ = 0;
};

// What hangs on it through joints and resistors, short of every pole.
std::set<Vertex> hangsOn(const Facts& facts, const Joint& joint)
{
    const Circuit& circuit = facts.circuit();
    std::set<Vertex> poles;
    for (const Feed& feed : circuit.feeds)
        poles.insert({facts.ask.netOf(feed.plus), facts.ask.netOf(feed.minus)});
    std::set<Vertex> met{joint.a, joint.b};
    std::vector<Vertex> next{joint.a, joint.b};
    const auto meet = [&](Vertex vertex) {
        if (met.insert(vertex).second)
            next.push_back(vertex);
    };
    while (!next.empty()) {
        const Vertex at = next.back();
        next.pop_back();
        if (poles.contains(facts.ask.netOf(at)))
            continue;
        for (std::uint32_t number : facts.jointsAt(at)) {
            meet(circuit.joints[number].a);
            meet(circuit.joints[number].b);
        }
        for (const Element& element : circuit.elements)
            if (element.kind == ElementKind::Resistor && (element.a == at || element.b == at)) {
                meet(element.a);
                meet(element.b);
            }
    }
    return met;
}

// It hangs on an input that is never operated, or a load that is never fed: that is told, and this follows from it.
bool isToldAlready(const Facts& facts, const Joint& joint)
{
    const Circuit& circuit = facts.circuit();
    const std::set<Vertex> met = hangsOn(facts, joint);
    for (std::uint32_t i = 0; i < circuit.inputs.size(); ++i)
        if (met.contains(circuit.inputs[i].terminal) && facts.operated(i).answer == Answer::Never)
            return true;
    for (std::uint32_t i = 0; i < circuit.elements.size(); ++i)
        if (circuit.elements[i].kind == ElementKind::Load && (met.contains(circuit.elements[i].a) || met.contains(circuit.elements[i].b)) &&
            facts.returned(i).answer == Answer::Never)
            return true;
    return false;
}

// The one operator that moves this joint's contact.
std::optional<MovedIndex> movedBy(const Facts& facts, const Joint& joint)
{
    if (joint.guard.anyOf.size() != 1 || joint.guard.anyOf[0].size() != 1 || !partBehind<ContactPart>(facts.job, facts.net.origin(joint.origin)))
        return std::nullopt;
    const MovedIndex moved = joint.guard.anyOf[0][0].moved;
    const Operator* row = facts.job.operators.find(facts.net.moved(moved).id);
    return row && tellsSomething(row->nature) && !hasLeftOverPoles(facts, moved) ? std::optional(moved) : std::nullopt;
}

std::vector<Finding> findIdle(const Facts& facts)
{
    std::vector<Finding> findings;
    Mattering mattering(facts);
    for (const Joint& joint : facts.circuit().joints) {
        const auto moved = movedBy(facts, joint);
        if (!moved || !facts.isLanded(joint.a) || !facts.isLanded(joint.b) || facts.ask.netOf(joint.a) == facts.ask.netOf(joint.b))
            continue; // what is bridged is told by that rule
        if (mattering.contains(*moved) || isToldAlready(facts, joint))
            continue;
        Finding finding;
        finding.rule = "idle-contact";
        finding.severity = Severity::Doubt;
        finding.at = {spotOf(facts, joint.b)};
        const std::string name = nameOf(facts, joint.a) + " – " + nameOf(facts, joint.b);
        finding.why = {why, {{"contact", name}}};
        finding.remedy = {remedy, {{"contact", name}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check idleContact = {
    .code = "idle-contact",
    .worst = Severity::Doubt,
    .title = {.en = "Contact that changes nothing", .es = "Contacto que no cambia nada"},
    .notCovered = {.en = "contacts of coils; which load or input a contact is meant for", .es = "contactos de bobinas; para qué carga o entrada es un contacto"},
    .run = findIdle,
};

} // namespace doorloom
