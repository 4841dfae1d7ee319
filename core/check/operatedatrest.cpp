#include "check/activation.h"
#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>
#include <optional>

// An input that is operated while nobody asks for anything, and let go by the very hand or relay that should operate it. And what
// sounds then.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{input} is operated at rest, and {operator} lets it go: the contact is on its other side.",
                      .es = "{input} está accionada en reposo, y {operator} la suelta: el contacto está en su otro lado."};
constexpr Text remedy = {.en = "Land {input} on the contact that is open at rest.", .es = "Conecte {input} al contacto abierto en reposo."};
constexpr Text soundsWhy = {.en = "{sounder} sounds while nobody asks for anything.", .es = "{sounder} suena sin que nadie pida nada."};
constexpr Text soundsRemedy = {.en = "Feed {sounder} through a contact that is open at rest.", .es = "Alimente {sounder} por un contacto abierto en reposo."};

bool tellsHowItStands(OperatorNature nature)
{
    return nature == OperatorNature::Door || nature == OperatorNature::Bolt || nature == OperatorNature::Fire;
}

// What tells how something stands may hold an input; what asks may not.
bool asks(OperatorNature nature)
{
    using enum OperatorNature;
    return nature == Hand || nature == KeySwitch || nature == Selector || nature == Relay || nature == Sensor;
}

enum class Others { MayLetGo, MayNot };

// The operator that asks and lets it go from rest; nothing: none does, or one that tells how something stands does and may not.
template <class IsOperated>
std::optional<MovedIndex> letGoBy(const Facts& facts, const std::vector<MovedIndex>& mattering, Others others, IsOperated isOperated)
{
    std::optional<MovedIndex> found;
    for (MovedIndex moved : mattering) {
        const Operator* row = facts.job.operators.find(facts.net.moved(moved).id);
        for (ThrowIndex thrown = 0; row && thrown < facts.circuit().operators[moved].throws; ++thrown) {
            Position position = atRest(facts.circuit());
            if (position[moved] == thrown)
                continue;
            position[moved] = thrown;
            const auto settled = facts.ask.settled(position);
            if (!settled || (*settled)[moved] != thrown || isOperated(*settled))
                continue;
            if (asks(row->nature))
                found = found.value_or(moved);
            else if (tellsHowItStands(row->nature) && others == Others::MayNot)
                return std::nullopt;
        }
    }
    return found;
}

Finding findingFor(const Facts& facts, Vertex terminal, const std::vector<MovedIndex>& mattering, MovedIndex by)
{
    Finding finding;
    finding.rule = "operated-at-rest";
    finding.reason = "input";
    finding.severity = Severity::Fault;
    finding.at = {spotOf(facts, terminal)};
    finding.throws = {Witness{{}, {Situation{}}}};
    finding.why = {why, {{"input", nameOf(facts, terminal)}, {"operator", nameOf(facts.job, facts.net.moved(by).id)}}};
    finding.remedy = {remedy, {{"input", nameOf(facts, terminal)}}};
    Remedies remedies(facts);
    remedies.turnContacts(mattering);
    finding.remedies = remedies.taken();
    return finding;
}

Finding soundsAtRest(const Facts& facts, std::uint32_t element, const std::vector<MovedIndex>& mattering)
{
    Finding finding;
    finding.rule = "operated-at-rest";
    finding.reason = "sounder";
    finding.severity = Severity::Doubt;
    finding.at = {loadSpot(facts, element)};
    finding.throws = {Witness{{}, {Situation{}}}};
    const std::string name = tagOfOrigin(facts, facts.circuit().elements[element].origin);
    finding.why = {soundsWhy, {{"sounder", name}}};
    finding.remedy = {soundsRemedy, {{"sounder", name}}};
    Remedies remedies(facts);
    remedies.turnContacts(mattering);
    finding.remedies = remedies.taken();
    return finding;
}

// Not those that must be closed, whose states are told apart, or that show something (and share their contact).
bool wantsAContactToClose(const Facts& facts, const DryInput& input)
{
    const auto* part = partBehind<DryInputPart>(facts.job, facts.net.origin(input.origin));
    return part && part->bands.empty() && !input.mustBeClosed && !input.mayShare && facts.isLanded(input.terminal);
}

template <class IsSo> bool isSoAtRest(const Facts& facts, IsSo isSo)
{
    return facts.rest() && isSo(*facts.rest());
}

bool isDoorOperator(const Facts& facts, const DryInput& input)
{
    const Kind* kind = kindOf(facts.job, facts.deviceOf(input.origin));
    return kind && kind->family == "operator";
}

std::vector<Finding> findOperated(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number) {
        const DryInput& input = facts.circuit().inputs[number];
        if (!wantsAContactToClose(facts, input) || facts.operated(number).answer != Answer::Some || !isSoAtRest(facts, [&](const Position& rest) {
                return facts.ask.operatedIn(rest, number);
            }))
            continue;
        const std::vector<MovedIndex> mattering = facts.ask.operatorsThatMatterToInput(number);
        const bool starts = activationOf(facts, facts.deviceOf(input.origin)) == number && isDoorOperator(facts, input);
        if (const auto by = letGoBy(facts, mattering, starts ? Others::MayLetGo : Others::MayNot,
                                    [&](const Position& position) { return facts.ask.operatedIn(position, number); }))
            findings.push_back(findingFor(facts, input.terminal, mattering, *by));
    }
    for (std::uint32_t element = 0; element < facts.circuit().elements.size(); ++element) {
        const LoadPart* load = facts.loadOf(element);
        if (!load || (load->use != LoadUse::Input && load->use != LoadUse::Sounder) ||
            !isSoAtRest(facts, [&](const Position& rest) { return facts.ask.returnedIn(rest, element); }))
            continue;
        const std::vector<MovedIndex> mattering = facts.ask.operatorsThatMatter(element);
        if (const auto by = letGoBy(facts, mattering, Others::MayNot, [&](const Position& position) { return facts.ask.returnedIn(position, element); }))
            findings.push_back(load->use == LoadUse::Sounder ? soundsAtRest(facts, element, mattering)
                                                             : findingFor(facts, facts.circuit().elements[element].a, mattering, *by));
    }
    return findings;
}

} // namespace

extern const Check operatedAtRest = {
    .code = "operated-at-rest",
    .worst = Severity::Fault,
    .title = {.en = "Operated while nobody asks", .es = "Accionada sin que nadie pida"},
    .notCovered = {.en = "inputs that doors, bolts or the fire alarm close; lamps; inputs that a setting makes open instead of close",
                   .es = "entradas que cierran puertas, pasadores o la alarma; lámparas; entradas que un ajuste hace abrir en vez de cerrar"},
    .run = findOperated,
};

} // namespace doorloom
