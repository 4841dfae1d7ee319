#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

// A load that bears its current for a while only, fed while nobody asks for anything.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{load} bears its current for a while only, and is fed at rest: it burns out.",
                      .es = "{load} solo soporta su corriente un rato, y recibe tensión en reposo: se quema."};
constexpr Text remedy = {.en = "Feed {load} through a contact that is open at rest and closes for a moment, or fit one that may stay on.",
                         .es = "Alimente {load} por un contacto abierto en reposo que cierre un momento, o monte una que pueda quedar con tensión."};

std::vector<Finding> findHeldOn(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const LoadPart* load = facts.loadOf(number);
        if (!load || load->duty != Duty::Intermittent || !facts.rest() || !facts.ask.returnedIn(*facts.rest(), number))
            continue;
        Finding finding;
        finding.rule = "held-on";
        finding.severity = Severity::Danger;
        finding.at = {loadSpot(facts, number)};
        finding.throws = {Witness{{}, {Situation{}}}};
        const std::string name = tagOfOrigin(facts, facts.circuit().elements[number].origin);
        finding.why = {why, {{"load", name}}};
        finding.remedy = {remedy, {{"load", name}}};
        Remedies remedies(facts);
        remedies.turnContacts(facts.ask.operatorsThatMatter(number));
        finding.remedies = remedies.taken();
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check heldOn = {
    .code = "held-on",
    .worst = Severity::Danger,
    .title = {.en = "Intermittent load held on", .es = "Carga intermitente con tensión permanente"},
    .notCovered = {.en = "for how long a request or a schedule holds it on", .es = "cuánto tiempo la mantiene una petición o un horario"},
    .run = findHeldOn,
};

} // namespace doorloom
