#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>
#include <map>

// Data lines: a terminal of one line joined to one of another, or to its own kind with no minus in common; half a pair landed.
namespace doorloom {

namespace {

constexpr Text crossedWhy = {.en = "{one} ({oneLine}) is joined to {other} ({otherLine}): nothing is read.",
                             .es = "{one} ({oneLine}) está unido a {other} ({otherLine}): no se lee nada."};
constexpr Text crossedRemedy = {.en = "Land {one} and {other} each on the line of its own name.",
                                .es = "Conecte {one} y {other} cada uno en la línea de su nombre."};
constexpr Text minusWhy = {.en = "{one} and {other} are joined, and their minuses {oneMinus} and {otherMinus} are not: what is sent has no return.",
                           .es = "{one} y {other} están unidos, y sus negativos {oneMinus} y {otherMinus} no: lo que se envía no tiene retorno."};
constexpr Text minusRemedy = {.en = "Join {oneMinus} and {otherMinus}.", .es = "Una {oneMinus} y {otherMinus}."};

constexpr Text openWhy = {.en = "{joined} reaches {to}, and {open} reaches nothing: half a pair, nothing is read.",
                          .es = "{joined} llega a {to}, y {open} no llega a nada: medio par, no se lee nada."};
constexpr Text openRemedy = {.en = "Land {open} on the line of its name beside {to}.", .es = "Conecte {open} a la línea de su nombre junto a {to}."};

struct Signal {
    const Device* device;
    const SignalPart* part;
    Vertex terminal, reference;
};

std::map<Vertex, std::vector<Signal>> signalsByNet(const Facts& facts)
{
    std::map<Vertex, std::vector<Signal>> all;
    for (const Device& device : facts.job.devices)
        if (const Kind* kind = kindOf(facts.job, device))
            for (const Part& part : kind->parts)
                if (const auto* signal = std::get_if<SignalPart>(&part.body); signal && holds(device, part.when)) {
                    const auto terminal = facts.net.vertexOf(device.id, signal->terminal), reference = facts.net.vertexOf(device.id, signal->reference);
                    if (terminal && reference && facts.isLanded(*terminal))
                        all[facts.ask.netOf(*terminal)].push_back({&device, signal, *terminal, *reference});
                }
    return all;
}

// The terminal of this device that carries the other line.
const SignalPart* lineOf(const Facts& facts, const Device& device, const std::string& line)
{
    for (const Part& part : kindOf(facts.job, device)->parts)
        if (const auto* signal = std::get_if<SignalPart>(&part.body); signal && signal->line == line)
            return signal;
    return nullptr;
}

Finding findingFor(const Facts& facts, const Signal& one, const Signal& other, std::string_view reason)
{
    Finding finding;
    finding.rule = "data-crossed";
    finding.reason = reason;
    finding.severity = Severity::Fault;
    finding.at = {spotOf(facts, one.terminal), spotOf(facts, other.terminal)};
    return finding;
}

Finding crossed(const Facts& facts, const Signal& one, const Signal& other)
{
    Finding finding = findingFor(facts, one, other, "other line");
    finding.why = {crossedWhy,
                   {{"one", nameOf(facts, one.terminal)},
                    {"oneLine", one.part->line},
                    {"other", nameOf(facts, other.terminal)},
                    {"otherLine", other.part->line}}};
    finding.remedy = {crossedRemedy, {{"one", nameOf(facts, one.terminal)}, {"other", nameOf(facts, other.terminal)}}};
    Remedies remedies(facts);
    for (const auto& [at, line] : {std::pair(one, other.part->line), std::pair(other, one.part->line)})
        if (const SignalPart* right = lineOf(facts, *at.device, line))
            remedies.exchange(at.device->id, at.part->terminal, right->terminal);
    finding.remedies = remedies.taken();
    return finding;
}

Finding withoutMinus(const Facts& facts, const Signal& one, const Signal& other)
{
    Finding finding = findingFor(facts, one, other, "no common minus");
    finding.why = {minusWhy,
                   {{"one", nameOf(facts, one.terminal)},
                    {"other", nameOf(facts, other.terminal)},
                    {"oneMinus", nameOf(facts, one.reference)},
                    {"otherMinus", nameOf(facts, other.reference)}}};
    finding.remedy = {minusRemedy, {{"oneMinus", nameOf(facts, one.reference)}, {"otherMinus", nameOf(facts, other.reference)}}};
    Remedies remedies(facts);
    remedies.land(one.reference, other.reference);
    finding.remedies = remedies.taken();
    return finding;
}

std::vector<const SignalPart*> linesOf(const Facts& facts, const Device& device)
{
    std::vector<const SignalPart*> lines;
    for (const Part& part : kindOf(facts.job, device)->parts)
        if (const auto* signal = std::get_if<SignalPart>(&part.body); signal && holds(device, part.when))
            lines.push_back(signal);
    return lines;
}

// A line of either device whose namesake on the other is not joined with it, though another of their lines is.
void addOpenLines(const Facts& facts, const Signal& one, const Signal& other, const std::map<Vertex, std::vector<Signal>>& byNet,
                  std::vector<Finding>& findings)
{
    const auto isCrossed = [&](Vertex vertex, const std::string& line) {
        const auto found = byNet.find(facts.ask.netOf(vertex));
        return found != byNet.end() && std::any_of(found->second.begin(), found->second.end(), [&](const Signal& each) { return each.part->line != line; });
    };
    for (const SignalPart* line : linesOf(facts, *one.device)) {
        const SignalPart* namesake = lineOf(facts, *other.device, line->line);
        const auto here = facts.net.vertexOf(one.device->id, line->terminal);
        const auto there = namesake ? facts.net.vertexOf(other.device->id, namesake->terminal) : std::nullopt;
        if (!here || !there || facts.ask.netOf(*here) == facts.ask.netOf(*there) || isCrossed(*here, line->line) || isCrossed(*there, line->line))
            continue; // what is crossed speaks by itself
        const Vertex open = facts.isLanded(*here) ? *there : *here;
        Finding finding = findingFor(facts, one, other, "line open");
        finding.at = {spotOf(facts, open)};
        finding.why = {openWhy, {{"joined", nameOf(facts, one.terminal)}, {"to", nameOf(facts, other.terminal)}, {"open", nameOf(facts, open)}}};
        finding.remedy = {openRemedy, {{"open", nameOf(facts, open)}, {"to", nameOf(facts, other.terminal)}}};
        Remedies remedies(facts);
        remedies.land(*here, *there);
        finding.remedies = remedies.taken();
        if (std::none_of(findings.begin(), findings.end(), [&](const Finding& each) { return each.at == finding.at; }))
            findings.push_back(std::move(finding));
    }
}

std::vector<Finding> findCrossed(const Facts& facts)
{
    std::vector<Finding> findings;
    const std::map<Vertex, std::vector<Signal>> byNet = signalsByNet(facts);
    for (const auto& [net, signals] : byNet)
        for (std::size_t i = 1; i < signals.size(); ++i)
            if (signals.front().part->line == signals[i].part->line)
                addOpenLines(facts, signals.front(), signals[i], byNet, findings);
    for (const auto& [net, signals] : byNet)
        for (std::size_t i = 1; i < signals.size(); ++i) {
            const Signal &one = signals.front(), &other = signals[i];
            if (one.part->line != other.part->line)
                findings.push_back(crossed(facts, one, other));
            else if (facts.ask.netOf(one.reference) != facts.ask.netOf(other.reference))
                findings.push_back(withoutMinus(facts, one, other));
        }
    return findings;
}

} // namespace

extern const Check dataCrossed = {
    .code = "data-crossed",
    .worst = Severity::Fault,
    .title = {.en = "Data lines crossed, half landed, or without a common minus", .es = "Líneas de datos cruzadas, a medias o sin negativo común"},
    .notCovered = {.en = "how long a data line is; resistors at the ends of a bus; addresses",
                   .es = "la longitud de una línea de datos; resistencias en los extremos de un bus; direcciones"},
    .run = findCrossed,
};

} // namespace doorloom
