#include "papers/voltsreport.h"

#include "base/json.h"
#include "papers/columns.h"
#include "papers/worstreport.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr Text positionHead = {.en = "Position:", .es = "Posición:"};
constexpr Text atRest = {.en = "at rest", .es = "en reposo"};
constexpr Text othersAtRest = {.en = "all others at rest", .es = "los demás en reposo"};
constexpr Text suppliesAt[] = {{.en = "supplies at their lowest volts", .es = "fuentes en su tensión más baja"},
                               {.en = "supplies at their nominal volts", .es = "fuentes en su tensión nominal"},
                               {.en = "supplies at their highest volts", .es = "fuentes en su tensión más alta"},
                               {.en = "supplies on battery, at its end", .es = "fuentes con batería, al final de esta"}};
constexpr Text copperAt = {.en = "copper at {celsius} °C", .es = "cobre a {celsius} °C"};
constexpr Text allWithOhms = {.en = "all conductors with their ohms", .es = "todos los conductores con sus ohmios"};
constexpr Text someWithout = {.en = "{without} of {all} conductors have no length or no gauge and count as no ohms",
                              .es = "{without} de {all} conductores no tienen longitud o calibre y cuentan como cero ohmios"};
constexpr Text sourcesHead = {.en = "Supplies", .es = "Fuentes"};
constexpr Text loadsHead = {.en = "Loads", .es = "Cargas"};
constexpr Text betweenHead = {.en = "Between", .es = "Entre"};
constexpr Text floatingWord = {.en = "floating", .es = "flotante"};
constexpr Text ofMost = {.en = "of {most}", .es = "de {most}"};
constexpr Text fightingWords = {.en = "{at}: its poles are joined, or another supply holds them; left out of these figures.",
                                .es = "{at}: sus polos están unidos, u otra fuente los sujeta; queda fuera de estas cifras."};
constexpr Text notCarriedWords = {.en = "{at}: no solution, the line can't carry what it asks for; taken as a plain resistance.",
                                  .es = "{at}: sin solución, la línea no puede llevar lo que pide; tomada como resistencia simple."};
constexpr Text notSettledWords = {.en = "The diodes did not settle: these figures mean nothing.",
                                  .es = "Los diodos no se estabilizaron: estas cifras no significan nada."};
constexpr Text measured = {.en = "Computed, not measured: prove dead before work, and measure before you trust.",
                           .es = "Calculado, no medido: compruebe la ausencia de tensión antes de trabajar y mida antes de confiar."};

std::string figure(double value, const char* unit, int decimals)
{
    const bool isNothing = std::abs(value) < 0.5 * std::pow(10, -decimals); // no '-0.000'
    return fmt::format("{:.{}f} {}", isNothing ? 0 : value, decimals, unit);
}

std::string voltsWords(const std::optional<Volts>& volts, Language language)
{
    return volts ? figure(volts->value, "V", 3) : std::string(inWords(floatingWord, language));
}

std::vector<std::string> cellsOf(const Job& job, const ReadingRow& row, bool withAmperes, Language language)
{
    std::vector<std::string> cells{"  " + nameOf(job, row.from), nameOf(job, row.to), voltsWords(row.volts, language)};
    if (withAmperes)
        cells.push_back(figure(row.amperes.value, "A", 4));
    if (row.most)
        cells.push_back(inWords(Message{ofMost, {{"most", figure(row.most->value, "A", 2)}}}, language));
    return cells;
}

std::string positionWords(const VoltsReport& report, Language language)
{
    if (report.position.empty())
        return std::string(inWords(atRest, language));
    std::string words;
    for (const auto& [moved, thrown] : report.position)
        words += fmt::format("{}={}, ", moved, thrown);
    return words + std::string(inWords(othersAtRest, language));
}

std::string conditionsWords(const VoltsReport& report, Language language)
{
    const Message ohms = report.withoutOhms == 0 ? Message{allWithOhms}
                                                 : Message{someWithout,
                                                           {{"without", std::to_string(report.withoutOhms)},
                                                            {"all", std::to_string(report.conductors)}}};
    return fmt::format("{}, {}; {}", inWords(suppliesAt[static_cast<int>(report.supplies)], language),
                       inWords(Message{copperAt, {{"celsius", fmt::format("{:g}", report.conditions.celsius)}}}, language),
                       inWords(ohms, language));
}

std::string voltsNumber(const std::optional<Volts>& volts) { return volts ? numberText(volts->value) : "null"; }

std::string rowsJson(const Job& job, const std::vector<ReadingRow>& rows, bool withAmperes)
{
    std::string list;
    for (const ReadingRow& row : rows) {
        list += fmt::format("{}{{\"from\": {}, \"to\": {}, \"volts\": {}", list.empty() ? "\n  " : ",\n  ",
                            quoted(nameOf(job, row.from)), quoted(nameOf(job, row.to)), voltsNumber(row.volts));
        if (withAmperes)
            list += fmt::format(", \"amperes\": {}", numberText(row.amperes.value));
        if (row.most)
            list += fmt::format(", \"most\": {}", numberText(row.most->value));
        list += "}";
    }
    return "[" + list + (list.empty() ? "]" : "\n]");
}

} // namespace

std::optional<std::pair<Landing, Landing>> sidesOf(const Job& job, const Origin& origin, const Key& a, const Key& b)
{
    const Kind* kind = kindOf(job, origin.device);
    if (!kind || !findTerminal(*kind, a) || !findTerminal(*kind, b))
        return std::nullopt;
    return std::pair(Landing{origin.device, a}, Landing{origin.device, b});
}

bool hasOhms(const Job& job, const Conductor& conductor)
{
    return lengthOf(job, conductor).value > 0 && squareMillimetresOf(gaugeOf(job, conductor));
}

OhmsKnown ohmsKnownOf(const Job& job)
{
    OhmsKnown known;
    for (const Conductor& conductor : job.conductors)
        if (conductor.from.state == EndState::Landed && conductor.to.state == EndState::Landed) {
            ++known.conductors;
            known.withoutOhms += !hasOhms(job, conductor);
        }
    return known;
}

VoltsReport voltsReport(const Job& job, const Netlist& net, const Position& position, const Conditions& conditions,
                        SupplyLevel supplies, const std::optional<std::pair<Landing, Landing>>& between)
{
    const Meter meter(job, net, conditions);
    const Readings readings(meter, position, {.supplies = supplies});
    VoltsReport report;
    report.conditions = conditions;
    report.supplies = supplies;
    report.settled = readings.settled();
    report.position = namedPosition(job, net, position);
    const std::vector<std::uint32_t> fighting = readings.fightingFeeds(), notCarried = readings.notCarried();
    const auto isAmong = [](const std::vector<std::uint32_t>& list, std::uint32_t index) {
        return std::find(list.begin(), list.end(), index) != list.end();
    };
    for (std::uint32_t i = 0; i < net.circuit().feeds.size(); ++i) {
        const Feed& feed = net.circuit().feeds[i];
        const Origin& origin = net.origin(feed.origin);
        const auto* source = partBehind<SourcePart>(job, origin);
        const auto sides = source ? sidesOf(job, origin, source->plus, source->minus) : std::nullopt;
        if (!sides || feed.ac != conditions.ac)
            continue;
        report.sources.push_back({sides->first, sides->second, readings.between(feed.plus, feed.minus), readings.outOf(i), source->most});
        if (isAmong(fighting, i))
            report.fighting.push_back(sides->first);
    }
    for (std::uint32_t i = 0; i < net.circuit().elements.size(); ++i) {
        const Origin& origin = net.origin(net.circuit().elements[i].origin);
        const auto* load = partBehind<LoadPart>(job, origin);
        const auto sides = load ? sidesOf(job, origin, load->a, load->b) : std::nullopt;
        if (!sides)
            continue;
        report.loads.push_back({sides->first, sides->second, readings.acrossElement(i), readings.throughElement(i), {}});
        if (isAmong(notCarried, i))
            report.notCarried.push_back(sides->first);
    }
    const OhmsKnown known = ohmsKnownOf(job);
    report.conductors = known.conductors;
    report.withoutOhms = known.withoutOhms;
    if (between) {
        const auto one = net.vertexOf(between->first.device, between->first.terminal);
        const auto other = net.vertexOf(between->second.device, between->second.terminal);
        report.asked.push_back({between->first, between->second, one && other ? readings.between(*one, *other) : std::nullopt, {}, {}});
    }
    return report;
}

std::string namesJson(const Job& job, const std::vector<Landing>& landings)
{
    std::string list;
    for (const Landing& landing : landings)
        list += (list.empty() ? "" : ", ") + quoted(nameOf(job, landing));
    return "[" + list + "]";
}

std::string throwsJson(const std::vector<std::pair<std::string, std::string>>& throws)
{
    std::string json;
    for (const auto& [moved, thrown] : throws)
        json += fmt::format("{}{}: {}", json.empty() ? "" : ", ", quoted(moved), quoted(thrown));
    return "{" + json + "}";
}

std::string voltsText(const Job& job, const VoltsReport& report, const std::string& file, Language language)
{
    std::string text = fmt::format("{}\n{} {}\n{}\n", file, inWords(positionHead, language), positionWords(report, language),
                                   conditionsWords(report, language));
    std::vector<std::vector<std::string>> rows;
    const auto put = [&](const Text& head, const std::vector<ReadingRow>& readings, bool withAmperes) {
        if (readings.empty())
            return;
        rows.push_back({""});
        rows.push_back({std::string(inWords(head, language))});
        for (const ReadingRow& row : readings)
            rows.push_back(cellsOf(job, row, withAmperes, language));
    };
    put(betweenHead, report.asked, false);
    if (report.asked.empty()) {
        put(sourcesHead, report.sources, true);
        put(loadsHead, report.loads, true);
    }
    text += alignedColumns(rows) + "\n";
    for (const Landing& landing : report.fighting)
        text += inWords(Message{fightingWords, {{"at", nameOf(job, landing)}}}, language) + "\n";
    for (const Landing& landing : report.notCarried)
        text += inWords(Message{notCarriedWords, {{"at", nameOf(job, landing)}}}, language) + "\n";
    if (!report.settled)
        text += std::string(inWords(notSettledWords, language)) + "\n";
    return text + std::string(inWords(measured, language)) + "\n";
}

std::string voltsJson(const Job& job, const VoltsReport& report)
{
    static constexpr const char* levels[] = {"lowest", "nominal", "highest", "battery"};
    std::string json = fmt::format("{{\"position\": {},\n\"supplies\": \"{}\", \"celsius\": {}, \"ac\": {},\n", throwsJson(report.position),
                                   levels[static_cast<int>(report.supplies)], numberText(report.conditions.celsius),
                                   report.conditions.ac);
    json += fmt::format("\"sources\": {},\n\"loads\": {},\n\"between\": {},\n", rowsJson(job, report.sources, true),
                        rowsJson(job, report.loads, true), rowsJson(job, report.asked, false));
    json += fmt::format("\"conductors\": {}, \"withoutOhms\": {}, \"fighting\": {}, \"notCarried\": {}, \"settled\": {}}}\n",
                        report.conductors, report.withoutOhms, namesJson(job, report.fighting), namesJson(job, report.notCarried),
                        report.settled);
    return json;
}

} // namespace doorloom
