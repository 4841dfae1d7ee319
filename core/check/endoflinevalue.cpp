#include "check/check.h"
#include "check/loops.h"
#include "check/tell.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

// A supervised input whose resistors never show it one of the states that it knows.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{input} measures {readings}. It knows {states}; all else is trouble to it.",
                      .es = "{input} mide {readings}. Conoce {states}; todo lo demás es avería para ella."};
constexpr Text fit = {.en = "Fit end-of-line resistors at the contact with which {input} measures {states}.",
                      .es = "Monte en el contacto resistencias de fin de línea con las que {input} mida {states}."};
constexpr Text reading = {.en = "{ohms} with {throws}", .es = "{ohms} con {throws}"};
constexpr Text oneThrow = {.en = "{moved} {thrown}", .es = "{moved} {thrown}"};
constexpr Text open = {.en = "an open loop", .es = "un lazo abierto"};
constexpr Text state = {.en = "{state} from {least} to {most}", .es = "{state} de {least} a {most}"};

constexpr std::size_t mostReadings = 4; // that are told

std::string ohmsText(double ohms) { return ohms < 1000 ? fmt::format("{:.3g} Ω", ohms) : fmt::format("{:.3g} kΩ", ohms / 1000); }
Message ohmsWords(double ohms) { return std::isinf(ohms) ? Message{open} : verbatim(ohmsText(ohms)); }

bool isKnown(const DryInputPart& input, double ohms)
{
    return std::any_of(input.bands.begin(), input.bands.end(),
                       [&](const InputBand& band) { return ohms >= band.least.value && ohms <= band.most.value; });
}

// What it measures, each once, with the first throws that make it so.
std::vector<Message> readingsOf(const Facts& facts, const Loop& loop)
{
    std::vector<Message> told;
    std::set<double> seen;
    facts.ask.wherever(loop.operators(), [&](const Position& position) {
        const double ohms = loop.ohmsIn(position);
        if (told.size() == mostReadings || !seen.insert(ohms).second)
            return false;
        std::vector<Message> throws;
        for (MovedIndex each : loop.operators()) {
            const NetOperator& moved = facts.net.moved(each);
            throws.push_back({oneThrow,
                              {{"moved", moved.id ? nameOf(facts.job, moved.id) : tagOf(facts.job, moved.device) + ":" + moved.option},
                               {"thrown", moved.throws[position[each]].words}}});
        }
        told.push_back(throws.empty() ? ohmsWords(ohms) : Message{reading, {{"ohms", std::vector<Message>{ohmsWords(ohms)}}, {"throws", throws}}});
        return false;
    });
    return told;
}

std::vector<Message> statesOf(const DryInputPart& input)
{
    std::vector<Message> states;
    for (const InputBand& band : input.bands)
        states.push_back({state, {{"state", band.words}, {"least", ohmsText(band.least.value)}, {"most", ohmsText(band.most.value)}}});
    return states;
}

std::vector<Finding> findWrongValues(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number) {
        if (!hasWrongLoop(facts, number))
            continue;
        const DryInputPart& input = *supervisedInput(facts, number);
        const Loop loop(facts, number);
        const Verdict off = facts.ask.wherever(loop.operators(), [&](const Position& position) { return !isKnown(input, loop.ohmsIn(position)); });
        const Vertex terminal = facts.circuit().inputs[number].terminal;
        Finding finding;
        finding.rule = "end-of-line-value";
        finding.at = {spotOf(facts, terminal)};
        if (occurs(off)) // else it stays in one state, whatever is thrown
            happensIn(finding, facts, off);
        finding.why = {why, {{"input", nameOf(facts, terminal)}, {"readings", readingsOf(facts, loop)}, {"states", statesOf(input)}}};
        finding.remedy = {fit, {{"input", nameOf(facts, terminal)}, {"states", statesOf(input)}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check endOfLineValue = {
    .code = "end-of-line-value",
    .worst = Severity::Fault,
    .title = {.en = "End-of-line value that the input does not know", .es = "Valor de fin de línea que la entrada no conoce"},
    .notCovered = {.en = "ohms of the conductors; current that leaks from one loop into another",
                   .es = "resistencia de los hilos; corriente que pasa de un lazo a otro"},
    .run = findWrongValues,
};

} // namespace doorloom
