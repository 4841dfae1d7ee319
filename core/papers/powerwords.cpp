#include "papers/powerforms.h"

#include <fmt/format.h>

#include <cmath>

namespace doorloom {

constinit const Text powerTitle = {.en = "Power and voltage drop", .es = "Potencia y caída de tensión"};
constinit const Text loadsTitle = {.en = "Loads: volts at the end of their conductors", .es = "Cargas: tensión al final de sus conductores"};
constinit const Text sourcesTitle = {.en = "Sources: what is drawn from them", .es = "Fuentes: lo que se les pide"};

namespace {

constexpr const char* nothing = "–";
constexpr double feetInAMetre = 1 / 0.3048;

constexpr Text loadHeadWords[loadColumns] = {
    {.en = "Load", .es = "Carga"},
    {.en = "What", .es = "Qué es"},
    {.en = "From", .es = "Desde"},
    {.en = "Way, out and back", .es = "Ida y vuelta"},
    {.en = "Gauge", .es = "Calibre"},
    {.en = "Loop", .es = "Lazo"},
    {.en = "Holding", .es = "Mantenida"},
    {.en = "Drop", .es = "Caída"},
    {.en = "At inrush", .es = "Al arrancar"},
    {.en = "Needs at least", .es = "Necesita"},
    {.en = "Verdict", .es = "Veredicto"},
    {.en = "Least gauge", .es = "Calibre mínimo"},
    {.en = "Worst position", .es = "Peor posición"},
};
constexpr Text sourceHeadWords[sourceColumns] = {
    {.en = "Source", .es = "Fuente"},
    {.en = "What, and what it feeds", .es = "Qué es y qué alimenta"},
    {.en = "Draws", .es = "Pide"},
    {.en = "Limit", .es = "Límite"},
    {.en = "Spare", .es = "Sobra"},
    {.en = "80 % of it", .es = "El 80 %"},
    {.en = "Verdict", .es = "Veredicto"},
    {.en = "Worst position", .es = "Peor posición"},
};

constexpr Text atRest = {.en = "at rest", .es = "en reposo"};
constexpr Text listed = {.en = "{throws}", .es = "{throws}"};
constexpr Text listedInPart = {.en = "{throws} and {count} more (the CSV form names them)", .es = "{throws} y {count} más (la forma CSV los nombra)"};
constexpr std::size_t mostThrows = 12; // that a cell names
constexpr Text voltsAt = {.en = "{volts} V at {amperes} A{dagger}", .es = "{volts} V con {amperes} A{dagger}"};
constexpr Text leastVolts = {.en = "{volts} V{dagger}", .es = "{volts} V{dagger}"};
constexpr Text withPullIn = {.en = "{volts} V, to pull in {pullIn} V{dagger}", .es = "{volts} V, para activarse {pullIn} V{dagger}"};
constexpr Text noGauge = {.en = "none: shorter way", .es = "ninguno: acorte"};
constexpr Text others = {.en = "inputs and parts inside devices", .es = "entradas y partes dentro de aparatos"};

constexpr Text loadVerdicts[] = {
    {.en = "ok", .es = "bien"},
    {.en = "too few volts", .es = "tensión insuficiente"},
    {.en = "too few volts to pull in", .es = "tensión insuficiente para activarse"},
    {.en = "too few volts: the line can't carry the inrush", .es = "tensión insuficiente: la línea no lleva el arranque"},
    {.en = "not known: length missing", .es = "no se sabe: falta la longitud"},
    {.en = "not known: its least volts are not said", .es = "no se sabe: no consta su tensión mínima"},
    {.en = "not known: not fed in any position looked at", .es = "no se sabe: sin tensión en toda posición vista"},
    {.en = "not known: not fed, or behind a rectifier on AC", .es = "no se sabe: sin tensión, o tras un rectificador en CA"},
};
constexpr Text sourceVerdicts[] = {
    {.en = "under 80 %", .es = "bajo el 80 %"},
    {.en = "OVER 80 %", .es = "SOBRE EL 80 %"},
    {.en = "OVER ITS LIMIT", .es = "SOBRE SU LÍMITE"},
    {.en = "not known: its limit is not said", .es = "no se sabe: no consta su límite"},
    {.en = "not known: not looked at", .es = "no se sabe: no se miró"},
};

constexpr Text ofConductors = {.en = "Conductors at 20 °C. Volts with every supply at its lowest; amperes drawn from supplies at their nominal volts.",
                               .es = "Conductores a 20 °C. Tensiones con cada fuente en su valor más bajo; corrientes pedidas a las fuentes en su valor nominal."};
constexpr Text everyPosition = {.en = "All doors of the job are worked out together, in every position that matters to a load; the worst is named on the row.",
                                .es = "Todas las puertas del trabajo se calculan juntas, en toda posición que importa a una carga; la peor se nombra en la fila."};
constexpr Text somePositions = {
    .en = "All doors of the job are worked out together. NOT every position was looked at: rest, the one that draws most, and what moves each load on top of that; the worst is named on the row.",
    .es = "Todas las puertas del trabajo se calculan juntas. NO se miró toda posición: el reposo, la que más pide y, además, lo que mueve cada carga; la peor se nombra en la fila."};
constexpr Text inrushAlone = {.en = "At inrush: what one operator starts pulls in together while the others hold. Least gauge: the thinnest that its terminals take and that by its volts alone all of its way would do with, everything else as drawn; fuses may want thicker.",
                              .es = "Al arrancar: lo que un mando pone en marcha arranca a la vez mientras lo demás se mantiene. Calibre mínimo: el más fino que admiten sus bornes y que, solo por la tensión, basta en todo su camino, lo demás como está dibujado; los fusibles pueden pedir más grueso."};
constexpr Text allWithOhms = {.en = "All {all} conductors have a length and a gauge.", .es = "Los {all} conductores tienen longitud y calibre."};
constexpr Text someWithout = {.en = "{without} of {all} conductors have no length or no gauge: they COUNT AS NONE, and real volts may be fewer.",
                              .es = "{without} de {all} conductores no tienen longitud o calibre: CUENTAN COMO CERO, y la tensión real puede ser menor."};
constexpr Text computed = {.en = "Computed, not measured. Connectors, hinges and transfers without ohms in the job are not in it.",
                           .es = "Calculado, no medido. No incluye conectores, bisagras ni pasos de cable sin ohmios en el trabajo."};

std::string figure(double value, int decimals)
{
    const bool isNothing = std::abs(value) < 0.5 * std::pow(10, -decimals); // no '-0.00'
    return fmt::format("{:.{}f}", isNothing ? 0 : value, decimals);
}

std::string amperes(double value) { return figure(value, std::abs(value) < 0.9995 ? 3 : 2); }

std::string words(const Message& message, Language language) { return inWords(message, language); }

std::string dagger(bool fromSheet) { return fromSheet ? "" : " †"; }

std::string voltsAtWords(const std::optional<Volts>& volts, const std::optional<Amperes>& drawn, bool fromSheet, Language language)
{
    if (!volts || !drawn)
        return nothing;
    return words({voltsAt, {{"volts", figure(volts->value, 2)}, {"amperes", amperes(drawn->value)}, {"dagger", dagger(fromSheet)}}}, language);
}

std::string leastWords(const LoadLine& line, Language language)
{
    if (!line.least)
        return nothing;
    const bool tellsPullIn = line.pullIn && *line.pullIn != *line.least;
    return words({tellsPullIn ? withPullIn : leastVolts,
                  {{"volts", fmt::format("{:g}", line.least->value)},
                   {"pullIn", fmt::format("{:g}", line.pullIn.value_or(Volts{0}).value)},
                   {"dagger", dagger(line.fromSheet)}}},
                 language);
}

std::string whatWords(const std::string& what, const Message& title, Language language) { return what.empty() ? words(title, language) : what; }

std::string positionWords(const std::vector<Message>& position, Language language)
{
    if (position.empty())
        return std::string(inWords(atRest, language));
    if (position.size() <= mostThrows)
        return words({listed, {{"throws", position}}}, language);
    return words({listedInPart,
                  {{"throws", std::vector(position.begin(), position.begin() + mostThrows)}, {"count", std::to_string(position.size() - mostThrows)}}},
                 language);
}

std::vector<std::string> inLanguage(std::span<const Text> texts, Language language)
{
    std::vector<std::string> all;
    for (const Text& text : texts)
        all.emplace_back(inWords(text, language));
    return all;
}

} // namespace

std::vector<Message> conditionsOf(const PowerSheet& sheet)
{
    const std::vector<std::pair<std::string, Argument>> counts = {{"without", std::to_string(sheet.withoutOhms)}, {"all", std::to_string(sheet.conductors)}};
    return {ofConductors, sheet.allPositions ? everyPosition : somePositions, inrushAlone,
            Message(sheet.withoutOhms ? someWithout : allWithOhms, counts), computed};
}

Message verdictInWords(const LoadLine& line) { return loadVerdicts[static_cast<std::size_t>(line.verdict)]; }

Message verdictInWords(const SourceLine& line) { return sourceVerdicts[static_cast<std::size_t>(line.verdict)]; }

std::vector<std::string> loadHeads(Language language) { return inLanguage(loadHeadWords, language); }
std::vector<std::string> sourceHeads(Language language) { return inLanguage(sourceHeadWords, language); }

std::vector<std::string> cellsOf(const LoadLine& line, Language language)
{
    std::vector<std::string> cells(loadColumns, nothing);
    cells[LoadNameColumn] = line.load;
    cells[LoadWhatColumn] = whatWords(line.what, line.title, language);
    cells[VerdictColumn] = words(verdictInWords(line), language);
    cells[LeastColumn] = leastWords(line, language);
    if (!line.holding)
        return cells;
    if (!line.source.empty())
        cells[LoadSourceColumn] = line.source;
    const std::string atLeast = line.wayIsWhole ? "" : "≥ ";
    if (line.way && line.way->value > 0)
        cells[WayColumn] = atLeast + fmt::format("{:.1f} m / {:.0f} ft", line.way->value, line.way->value * feetInAMetre);
    if (!line.gauges.empty())
        cells[WayGaugeColumn] = fmt::format("{}", fmt::join(line.gauges, ", "));
    if (line.loop && (line.wayIsWhole || line.loop->value > 0))
        cells[LoopColumn] = atLeast + figure(line.loop->value, 3) + " Ω";
    cells[HoldingColumn] = voltsAtWords(line.holding, line.amperes, line.fromSheet, language);
    if (const auto drop = line.dropPercent())
        cells[DropColumn] = atLeast + figure(*drop, 1) + " %";
    cells[InrushColumn] = voltsAtWords(line.atInrush, line.inrush, line.fromSheet, language);
    if (line.leastGauge || line.noGaugeWouldDo)
        cells[LeastGaugeColumn] = line.leastGauge ? *line.leastGauge : words(noGauge, language);
    cells[LoadPositionColumn] = positionWords(line.position, language);
    return cells;
}

std::vector<std::vector<std::string>> rowsOf(const SourceLine& line, Language language)
{
    std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(sourceColumns, nothing));
    std::vector<std::string>& own = rows.front();
    own[SourceNameColumn] = line.source;
    own[SourceWhatColumn] = whatWords(line.what, line.title, language);
    own[SourceVerdictColumn] = words(verdictInWords(line), language);
    if (line.limit) {
        own[LimitColumn] = fmt::format("{:g} A{}", line.limit->value, dagger(line.fromSheet));
        own[EightyColumn] = amperes(mostOfLimit * line.limit->value) + " A";
    }
    if (line.verdict == SourceVerdict::NotLookedAt)
        return rows;
    own[SumColumn] = amperes(line.sum.value) + " A";
    if (line.limit)
        own[SpareColumn] = amperes(line.limit->value - line.sum.value) + " A";
    own[SourcePositionColumn] = positionWords(line.position, language);
    const auto add = [&](std::string name, Amperes drawn) {
        rows.emplace_back(sourceColumns, "");
        rows.back()[SourceWhatColumn] = std::move(name);
        rows.back()[SumColumn] = amperes(drawn.value) + " A";
    };
    for (const auto& [load, drawn] : line.loads)
        add(load, drawn);
    if (line.others.value != 0)
        add(words(others, language), line.others);
    return rows;
}

} // namespace doorloom
