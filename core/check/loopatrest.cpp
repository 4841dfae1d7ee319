#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>

// An input that must stay closed is open while nobody is there, or stays closed while what watches for people is dead.
namespace doorloom {

namespace {

constexpr Text openWhy = {.en = "{input} must be closed while all is well, and is open at rest: what closes it does so when it should open.",
                          .es = "{input} debe estar cerrada cuando todo va bien y en reposo está abierta: lo que la cierra lo hace cuando debería abrir."};
constexpr Text deadWhy = {.en = "{input} stays closed while {sensor} is without power: nobody is seen, and the door is driven all the same.",
                          .es = "{input} sigue cerrada con {sensor} sin corriente: no se ve a nadie, y la puerta se mueve igual."};
constexpr Text leftOutWhy = {.en = "{sensor} sees somebody, and {input} stays closed: its contact is not in the loop.",
                             .es = "{sensor} ve a alguien y {input} sigue cerrada: su contacto no está en el lazo."};
constexpr Text leftOutRemedy = {.en = "Put a contact of {sensor} that opens when it sees somebody into the loop of {input}, in line with the others.",
                                .es = "Ponga en el lazo de {input}, en serie con los demás, un contacto de {sensor} que abra cuando vea a alguien."};
constexpr Text openRemedy = {.en = "Land {input} on the contact that is closed at rest.", .es = "Conecte {input} al contacto cerrado en reposo."};
constexpr Text deadRemedy = {.en = "Take a contact of {sensor} that is held closed by power and opens without it, and have {sensor}'s relay held in.",
                             .es = "Use un contacto de {sensor} que la corriente mantenga cerrado y que abra sin ella, con el relé de {sensor} activado en "
                                   "reposo."};

Finding findingFor(const Facts& facts, std::uint32_t input, std::string_view reason, Severity severity)
{
    const Vertex terminal = facts.circuit().inputs[input].terminal;
    Finding finding;
    finding.rule = "loop-at-rest";
    finding.reason = reason;
    finding.severity = severity;
    finding.at = {spotOf(facts, terminal)};
    Remedies remedies(facts);
    remedies.turnContacts(facts.ask.operatorsThatMatterToInput(input));
    finding.remedies = remedies.taken();
    return finding;
}

// A door operator's loop watches for people; others drop a supply.
bool watchesForPeople(const Facts& facts, std::uint32_t input)
{
    const Kind* kind = kindOf(facts.job, facts.deviceOf(facts.circuit().inputs[input].origin));
    return kind && kind->family == "operator";
}

Finding openAtRest(const Facts& facts, std::uint32_t input)
{
    Finding finding = findingFor(facts, input, "open at rest", watchesForPeople(facts, input) ? Severity::Danger : Severity::Fault);
    const std::string name = nameOf(facts, facts.circuit().inputs[input].terminal);
    finding.throws = {Witness{{}, {Situation{}}}};
    finding.why = {openWhy, {{"input", name}}};
    finding.remedy = {openRemedy, {{"input", name}}};
    return finding;
}

Finding closedWhileDead(const Facts& facts, std::uint32_t input, MovedIndex moved)
{
    Finding finding = findingFor(facts, input, "closed while dead", Severity::Danger);
    const Operator* row = facts.job.operators.find(facts.net.moved(moved).id);
    finding.throws = {Witness{{}, {Situation{SituationKind::LostAlone, {}, row->id}}}};
    const std::string sensor = tagOf(facts.job, row->owner);
    finding.why = {deadWhy, {{"input", nameOf(facts, facts.circuit().inputs[input].terminal)}, {"sensor", sensor}}};
    finding.remedy = {deadRemedy, {{"sensor", sensor}}};
    return finding;
}

// A contact of it landed where the loop is, in whatever way.
bool isBeside(const Facts& facts, DeviceId sensor, std::uint32_t input)
{
    const std::vector<Joint>& joints = facts.circuit().joints;
    return std::any_of(joints.begin(), joints.end(), [&](const Joint& joint) {
        const Origin& origin = facts.net.origin(joint.origin);
        return origin.device == sensor && partBehind<ContactPart>(facts.job, origin) &&
               facts.ask.sameIsland(joint.a, facts.circuit().inputs[input].terminal) && (facts.isLanded(joint.a) || facts.isLanded(joint.b));
    });
}

// Sensors beside the loop that see somebody, and it stays closed.
void addLeftOut(const Facts& facts, std::uint32_t input, std::vector<Finding>& findings)
{
    for (const Operator& row : facts.job.operators) {
        const auto moved = facts.net.indexOf(row.id);
        if (row.nature != OperatorNature::Sensor || !moved || !isBeside(facts, row.owner, input))
            continue;
        Position position = atRest(facts.circuit());
        position[*moved] = position[*moved] == 0 ? 1 : 0;
        const auto settled = facts.ask.settled(position);
        if (!settled || !facts.ask.operatedIn(*settled, input))
            continue;
        Finding finding = findingFor(facts, input, "sensor left out", Severity::Danger);
        finding.throws = {witnessAt(facts, position, {*moved})};
        const std::string sensor = tagOf(facts.job, row.owner), name = nameOf(facts, facts.circuit().inputs[input].terminal);
        finding.why = {leftOutWhy, {{"sensor", sensor}, {"input", name}}};
        finding.remedy = {leftOutRemedy, {{"sensor", sensor}, {"input", name}}};
        finding.remedies.clear();
        findings.push_back(std::move(finding));
    }
}

// Sensors in the loop, each by what its own power moves.
std::vector<MovedIndex> poweredSensors(const Facts& facts, std::uint32_t input)
{
    const std::vector<MovedIndex> mattering = facts.ask.operatorsThatMatterToInput(input);
    std::vector<MovedIndex> sensors;
    for (const Drive& drive : facts.circuit().drives)
        if (drive.manner == Drive::Manner::Follows && drive.load && facts.job.operators.find(facts.net.moved(drive.moved).id) &&
            std::find(mattering.begin(), mattering.end(), drive.moved) != mattering.end())
            sensors.push_back(drive.moved);
    return sensors;
}

bool closedWith(const Facts& facts, Position position, std::uint32_t input, MovedIndex dead)
{
    position[dead] = facts.circuit().operators[dead].unpowered;
    const auto settled = facts.ask.settled(position, {dead});
    return settled && facts.ask.operatedIn(*settled, input);
}

std::vector<Finding> findWrongLoops(const Facts& facts)
{
    std::vector<Finding> findings;
    const Position idle = atRest(facts.circuit());
    for (std::uint32_t input = 0; input < facts.circuit().inputs.size(); ++input) {
        if (!facts.circuit().inputs[input].mustBeClosed || !occurs(facts.operated(input)) || !facts.rest())
            continue; // never closed is told by that rule
        if (!facts.ask.operatedIn(*facts.rest(), input)) {
            findings.push_back(openAtRest(facts, input));
            continue;
        }
        for (MovedIndex moved : watchesForPeople(facts, input) ? poweredSensors(facts, input) : std::vector<MovedIndex>{})
            if (closedWith(facts, idle, input, moved))
                findings.push_back(closedWhileDead(facts, input, moved));
        if (watchesForPeople(facts, input) && facts.operated(input).answer != Answer::Always)
            addLeftOut(facts, input, findings);
    }
    return findings;
}

} // namespace

extern const Check loopAtRest = {
    .code = "loop-at-rest",
    .worst = Severity::Danger,
    .title = {.en = "Safety loop the wrong way round", .es = "Lazo de seguridad al revés"},
    .notCovered = {.en = "inputs that a setting makes close instead of open", .es = "entradas que un ajuste hace cerrar en vez de abrir"},
    .run = findWrongLoops,
};

} // namespace doorloom
