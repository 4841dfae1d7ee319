#include "check/check.h"
#include "check/tell.h"

#include <cmath>

// Volts that come to a dry input through a load or a resistor.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{input} sees {volts} V that come through a load; it puts out its own volts and wants a bare contact.",
                      .es = "{input} recibe {volts} V a través de una carga; pone su propia tensión y quiere un contacto seco."};
constexpr Text remove = {.en = "Take what comes from the supply off {input}; land a contact of its own there.",
                         .es = "Quite de {input} lo que viene de la fuente; conecte allí un contacto propio."};

std::vector<Finding> findVoltsThroughLoad(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().inputs.size(); ++i) {
        const auto& worst = facts.figures().inputVolts[i];
        if (!worst)
            continue;
        const Vertex terminal = facts.circuit().inputs[i].terminal;
        Finding finding;
        finding.rule = "volts-through-load";
        finding.severity = Severity::Danger;
        finding.at = {spotOf(facts, terminal)};
        finding.throws = {witnessAt(facts, worst->at)};
        finding.why = {why, {{"input", nameOf(facts, terminal)}, {"volts", figureText(std::abs(worst->value))}}};
        finding.remedy = {remove, {{"input", nameOf(facts, terminal)}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check voltsThroughLoad = {
    .code = "volts-through-load",
    .worst = Severity::Danger,
    .title = {.en = "Foreign volts at a dry input through a load", .es = "Tensión ajena en una entrada seca a través de una carga"},
    .notCovered = {.en = "inputs whose own volts are not known", .es = "entradas cuya tensión propia no se conoce"},
    .run = findVoltsThroughLoad,
    .readsFigures = true};

} // namespace doorloom
