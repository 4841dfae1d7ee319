#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>

// What lies across a coil or a lock: nothing where something should, a diode where there is one inside, a load beside a
// magnet.
namespace doorloom {

namespace {

constexpr Text none = {.en = "{load} is switched and has nothing across it, inside or out, that takes up its coil's current: the contact arcs.",
                       .es = "{load} se conmuta y no tiene nada, dentro ni fuera, que absorba la corriente de su bobina: el contacto hace arco."};
constexpr Text putOne = {.en = "Put a diode across {load}, stripe at plus, or a varistor, close to it.",
                         .es = "Ponga un diodo en {load}, franja al positivo, o un varistor, cerca de ella."};
constexpr Text doubled = {.en = "{load} has its own suppression, and {part} lies across it as well: it lets go late.",
                          .es = "{load} tiene supresión propia, y además {part} está en paralelo: libera tarde."};
constexpr Text beside = {.en = "{part} lies across {load}: what it stores or holds makes the magnet let go late.",
                         .es = "{part} está en paralelo con {load}: lo que almacena hace que el imán libere tarde."};

constexpr Text ownContact = {.en = "Feed {part} through a contact of its own, not across {load}.",
                             .es = "Alimente {part} por un contacto propio, no en paralelo con {load}."};

struct Across {
    Vertex a, b;
    std::uint32_t origin;
};

bool isAcross(const Facts& facts, const Element& load, Vertex a, Vertex b)
{
    const auto net = [&](Vertex vertex) { return facts.ask.netOf(vertex); };
    return (net(a) == net(load.a) && net(b) == net(load.b)) || (net(a) == net(load.b) && net(b) == net(load.a));
}

// Diodes and suppressors of other devices across it.
std::vector<Across> suppressorsAcross(const Facts& facts, const Element& load)
{
    std::vector<Across> all;
    const auto add = [&](Vertex a, Vertex b, std::uint32_t origin) {
        if (isAcross(facts, load, a, b) && facts.deviceOf(origin) != facts.deviceOf(load.origin))
            all.push_back({a, b, origin});
    };
    for (const Diode& diode : facts.circuit().diodes)
        add(diode.cathode, diode.anode, diode.origin);
    for (const Element& element : facts.circuit().elements)
        if (element.kind == ElementKind::Suppressor)
            add(element.a, element.b, element.origin);
    return all;
}

bool isMagnet(const Facts& facts, const Element& load)
{
    const Kind* kind = kindOf(facts.job, facts.deviceOf(load.origin));
    return kind && kind->lock && !kind->lock->latches && kind->lock->failMode == FailMode::Safe;
}

// Does a contact stand between it and what feeds it? Whether the supply has mains is none.
bool isSwitched(const Facts& facts, std::uint32_t number)
{
    const std::vector<MovedIndex> operators = facts.ask.operatorsThatMatter(number);
    return std::any_of(operators.begin(), operators.end(), [&](MovedIndex moved) {
        const Operator* row = facts.job.operators.find(facts.net.moved(moved).id);
        return row && row->nature != OperatorNature::Mains && row->nature != OperatorNature::Battery && row->nature != OperatorNature::Failure;
    });
}

Finding at(const Facts& facts, std::uint32_t number, std::string_view reason, Message why)
{
    Finding finding;
    finding.rule = "suppression";
    finding.reason = reason;
    finding.severity = Severity::Doubt;
    finding.at = {loadSpot(facts, number)};
    finding.why = std::move(why);
    return finding;
}

void findBeside(const Facts& facts, std::uint32_t number, std::vector<Finding>& findings)
{
    const Element& load = facts.circuit().elements[number];
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i) {
        const Element& other = facts.circuit().elements[i];
        if (i == number || !facts.loadOf(i) || facts.deviceOf(other.origin) == facts.deviceOf(load.origin) ||
            !isAcross(facts, load, other.a, other.b) || isMagnet(facts, other))
            continue;
        findings.push_back(at(facts, number, "load beside",
                              {beside, {{"load", tagOfOrigin(facts, load.origin)}, {"part", tagOfOrigin(facts, other.origin)}}}));
        findings.back().remedy = {ownContact, {{"load", tagOfOrigin(facts, load.origin)}, {"part", tagOfOrigin(facts, other.origin)}}};
    }
}

std::vector<Finding> findSuppression(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& element = facts.circuit().elements[number];
        const LoadPart* load = facts.loadOf(number);
        if (!load)
            continue;
        const std::string name = tagOfOrigin(facts, element.origin);
        const std::vector<Across> across = suppressorsAcross(facts, element);
        const bool isCoil = load->use == LoadUse::Lock || load->use == LoadUse::Coil || load->use == LoadUse::Motor;
        if (isCoil && !load->suppressed && load->accepts != Current::Ac && across.empty() && isSwitched(facts, number)) {
            findings.push_back(at(facts, number, "none", {none, {{"load", name}}}));
            findings.back().remedy = {putOne, {{"load", name}}};
        }
        if (!isMagnet(facts, element) || !occurs(facts.returned(number)))
            continue;
        findBeside(facts, number, findings);
        if (load->suppressed && !across.empty()) {
            findings.push_back(at(facts, number, "doubled", {doubled, {{"load", name}, {"part", tagOfOrigin(facts, across.front().origin)}}}));
            Remedies remedies(facts);
            remedies.takeOut(facts.deviceOf(across.front().origin));
            findings.back().remedies = remedies.taken();
        }
    }
    return findings;
}

} // namespace

extern const Check suppression = {
    .code = "suppression",
    .worst = Severity::Doubt,
    .title = {.en = "Suppression missing, doubled, or a load beside a magnet", .es = "Supresión ausente, doble, o una carga junto a un imán"},
    .notCovered = {.en = "how far from its coil a diode stands; ratings of diodes", .es = "a qué distancia de su bobina está un diodo; valores de diodos"},
    .run = findSuppression,
};

} // namespace doorloom
