#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

// Dry inputs that nothing ever closes, or that are always closed.
namespace doorloom {

namespace {

constexpr Text neverWhy = {.en = "Nothing ever closes {input} to {reference}: it is never operated.",
                           .es = "Nada cierra nunca {input} con {reference}: nunca se acciona."};
constexpr Text alwaysWhy = {.en = "{input} is joined to {reference} in every position: it is operated all the time.",
                            .es = "{input} está unido a {reference} en toda posición: está accionada siempre."};

std::vector<Finding> findInputs(const Facts& facts, Answer wanted, std::string_view rule, const Text& why)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number) {
        const DryInput& input = facts.circuit().inputs[number];
        const bool landed = facts.isLanded(input.terminal);
        if (!landed && !(input.mustBeClosed && wanted == Answer::Never))
            continue;
        const Verdict& verdict = facts.operated(number);
        if (verdict.answer == Answer::Unknown && wanted == Answer::Never)
            findings.push_back(notProved(rule, spotOf(facts, input.terminal)));
        if (verdict.answer != wanted)
            continue;
        Finding finding;
        finding.rule = rule;
        finding.at = {spotOf(facts, input.terminal)};
        finding.why = {why, {{"input", nameOf(facts, input.terminal)}, {"reference", nameOf(facts, input.reference)}}};
        if (wanted == Answer::Always) {
            finding.path = wayBetween(facts, {}, input.terminal, input.reference, false);
            Remedies remedies(facts);
            remedies.breakWay(finding.path);
            finding.remedies = remedies.taken();
        }
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check neverOperated = {
    .code = "never-operated",
    .worst = Severity::Fault,
    .title = {.en = "Input never operated", .es = "Entrada que nunca se acciona"},
    .notCovered = {.en = "whether the right contact closes it", .es = "si la cierra el contacto correcto"},
    .run = [](const Facts& facts) { return findInputs(facts, Answer::Never, "never-operated", neverWhy); },
};

extern const Check alwaysOperated = {
    .code = "always-operated",
    .worst = Severity::Fault,
    .title = {.en = "Input always operated", .es = "Entrada siempre accionada"},
    .notCovered = {.en = "inputs that a link from the factory closes on purpose",
                   .es = "entradas que cierra a propósito un puente de fábrica"},
    .run = [](const Facts& facts) { return findInputs(facts, Answer::Always, "always-operated", alwaysWhy); },
};

} // namespace doorloom
