#include "papers/worstreport.h"

#include "base/json.h"
#include "check/figures.h"
#include "papers/columns.h"
#include "papers/voltsreport.h"

#include <fmt/format.h>

#include <cmath>

namespace doorloom {

namespace {

constexpr Text head = {.en = "The worst over every throw of hands, sensors and programmed outputs; coils as the circuit gives, supplies live:",
                       .es = "Lo peor con toda posición de manos, sensores y salidas programadas; bobinas según el circuito, fuentes vivas:"};
constexpr Text levels = {.en = "lowest volts with supplies at their lowest, highest with supplies at their highest, amperes with nominal volts; "
                               "copper at 20 °C",
                         .es = "tensión más baja con las fuentes en su mínimo, más alta en su máximo, corriente con tensión nominal; cobre a 20 °C"};
constexpr Text someWithout = {.en = "{without} of {all} conductors have no length or no gauge and count as no ohms",
                              .es = "{without} de {all} conductores no tienen longitud o calibre y cuentan como cero ohmios"};
constexpr Text allLooked = {.en = "all {positions} positions", .es = "las {positions} posiciones"};
constexpr Text someLooked = {.en = "not exhaustive: {covered} of {positions} positions", .es = "no exhaustivo: {covered} de {positions} posiciones"};
constexpr Text sourcesHead = {.en = "Supplies: amperes at the most", .es = "Fuentes: corriente máxima"};
constexpr Text loadsHead = {.en = "Loads: lowest volts while fed, and highest volts", .es = "Cargas: tensión más baja alimentada, y más alta"};
constexpr Text betweenHead = {.en = "Between: lowest and highest volts", .es = "Entre: tensión más baja y más alta"};
constexpr Text neverFed = {.en = "never fed", .es = "nunca alimentada"}, floating = {.en = "floating", .es = "flotante"};
constexpr Text atRestWord = {.en = "at rest", .es = "en reposo"};
constexpr Text ofMost = {.en = "of {most} A", .es = "de {most} A"};
constexpr Text floatingWords = {.en = "Floating, nothing fixes it: {position}", .es = "Flotante, nada la fija: {position}"};
constexpr Text unreadableWords = {.en = "No figure means anything there (a source is shorted, or sources fight): {position}",
                                  .es = "Ninguna cifra vale allí (una fuente en cortocircuito, o fuentes enfrentadas): {position}"};
constexpr Text measured = {.en = "Computed, not measured: prove dead before work, and measure before you trust.",
                           .es = "Calculado, no medido: compruebe la ausencia de tensión antes de trabajar y mida antes de confiar."};

class Reporting {
public:
    Reporting(const Job& job, const Netlist& net, std::uint64_t budget) : job_(job), net_(net), ask_(net.circuit()), budget_(budget) {}

    WorstReport all() const
    {
        const Figures figures = figuresOf(job_, net_, ask_, budget_, VoltsWanted::All);
        WorstReport report = begun();
        report.coverage = figures.coverage;
        for (std::uint32_t i = 0; i < net_.circuit().feeds.size(); ++i) {
            const Origin& origin = net_.origin(net_.circuit().feeds[i].origin);
            const auto* source = partBehind<SourcePart>(job_, origin);
            if (const auto sides = source ? sidesOf(job_, origin, source->plus, source->minus) : std::nullopt)
                report.sources.push_back({sides->first, sides->second, {}, readingAt(figures.outOfFeed[i]), source->most.value});
        }
        for (std::uint32_t i = 0; i < net_.circuit().elements.size(); ++i) {
            const Origin& origin = net_.origin(net_.circuit().elements[i].origin);
            const auto* load = partBehind<LoadPart>(job_, origin);
            if (const auto sides = load ? sidesOf(job_, origin, load->a, load->b) : std::nullopt)
                report.loads.push_back({sides->first, sides->second, readingAt(figures.lowestVolts[i]), readingAt(figures.highestVolts[i]), {}});
        }
        return report;
    }

    WorstReport between(const Landing& one, const Landing& other) const
    {
        WorstReport report = begun();
        const auto x = net_.vertexOf(one.device, one.terminal), y = net_.vertexOf(other.device, other.terminal);
        const Meter meter(job_, net_);
        const ReadingRange range = x && y ? rangeBetween(meter, ask_, *x, *y, budget_) : ReadingRange{};
        report.asked.push_back({one, other, readingAt(range.lowest), readingAt(range.highest), {}});
        report.coverage = range.coverage;
        if (range.floatingIn)
            report.floatingIn = namedPosition(job_, net_, *range.floatingIn);
        if (range.unreadableIn)
            report.unreadableIn = namedPosition(job_, net_, *range.unreadableIn);
        return report;
    }

private:
    WorstReport begun() const
    {
        WorstReport report;
        const OhmsKnown known = ohmsKnownOf(job_);
        report.conductors = known.conductors;
        report.withoutOhms = known.withoutOhms;
        return report;
    }
    std::optional<ReadingAt> readingAt(const std::optional<Worst>& worst) const
    {
        return worst ? std::optional(ReadingAt{worst->value, namedPosition(job_, net_, worst->at)}) : std::nullopt;
    }

    const Job& job_;
    const Netlist& net_;
    const Questions ask_;
    const std::uint64_t budget_;
};

std::string words(const NamedPosition& position, Language language)
{
    std::string text;
    for (const auto& [moved, thrown] : position)
        text += fmt::format("{}{}={}", text.empty() ? "" : ", ", moved, thrown);
    return text.empty() ? std::string(inWords(atRestWord, language)) : text;
}

std::string cell(const std::optional<ReadingAt>& reading, const char* unit, const Text& absent, Language language)
{
    return reading ? fmt::format("{:.3f} {} ({})", std::abs(reading->value) < 0.0005 ? 0 : reading->value, unit, words(reading->position, language)) : std::string(inWords(absent, language));
}

std::string positionJson(const NamedPosition& position)
{
    std::string json;
    for (const auto& [moved, thrown] : position)
        json += fmt::format("{}{}: {}", json.empty() ? "" : ", ", quoted(moved), quoted(thrown));
    return "{" + json + "}";
}

std::string readingJson(const std::optional<ReadingAt>& reading, const char* what)
{
    return reading ? fmt::format("{{\"{}\": {}, \"position\": {}}}", what, numberText(reading->value), positionJson(reading->position)) : "null";
}

std::string rowJson(const Job& job, const WorstRow& row)
{
    std::string json = fmt::format("{{\"from\": {}, \"to\": {}", quoted(nameOf(job, row.from)), quoted(nameOf(job, row.to)));
    if (row.most)
        return json + fmt::format(", \"highest\": {}, \"most\": {}}}", readingJson(row.highest, "amperes"), numberText(*row.most));
    return json + fmt::format(", \"lowest\": {}, \"highest\": {}}}", readingJson(row.lowest, "volts"), readingJson(row.highest, "volts"));
}

std::string rowsJson(const Job& job, const std::vector<WorstRow>& rows)
{
    std::string list;
    for (const WorstRow& row : rows)
        list += (list.empty() ? "\n  " : ",\n  ") + rowJson(job, row);
    return "[" + list + (list.empty() ? "]" : "\n]");
}

std::string coverageWords(const Coverage& coverage, Language language)
{
    const bool isWhole = coverage.covered >= coverage.positions;
    return inWords(Message{isWhole ? allLooked : someLooked,
                           {{"covered", fmt::format("{:.0f}", coverage.covered)}, {"positions", fmt::format("{:.0f}", coverage.positions)}}},
                   language);
}

} // namespace

NamedPosition namedPosition(const Job& job, const Netlist& net, const Position& position)
{
    NamedPosition named;
    for (MovedIndex moved = 0; moved < position.size(); ++moved)
        if (position[moved] != net.circuit().operators[moved].idle)
            if (const NetOperator& row = net.moved(moved); row.id)
                named.emplace_back(nameOf(job, row.id), row.throws[position[moved]].key);
    return named;
}

WorstReport worstReport(const Job& job, const Netlist& net, std::uint64_t budget, const std::optional<std::pair<Landing, Landing>>& between)
{
    const Reporting reporting(job, net, budget);
    return between ? reporting.between(between->first, between->second) : reporting.all();
}

std::string worstText(const Job& job, const WorstReport& report, const std::string& file, Language language)
{
    std::string text = fmt::format("{}\n{} {}\n{}\n", file, inWords(head, language), coverageWords(report.coverage, language),
                                   inWords(levels, language));
    if (report.withoutOhms > 0)
        text += inWords(Message{someWithout,
                                {{"without", std::to_string(report.withoutOhms)}, {"all", std::to_string(report.conductors)}}},
                        language) +
                "\n";
    std::vector<std::vector<std::string>> rows;
    const auto put = [&](const Text& title, const std::vector<WorstRow>& list, const Text& absent) {
        if (list.empty())
            return;
        rows.push_back({""});
        rows.push_back({std::string(inWords(title, language))});
        for (const WorstRow& row : list) {
            std::vector<std::string> cells{"  " + nameOf(job, row.from), nameOf(job, row.to)};
            if (!row.most)
                cells.push_back(cell(row.lowest, "V", absent, language));
            cells.push_back(cell(row.highest, row.most ? "A" : "V", floating, language));
            if (row.most && *row.most > 0)
                cells.push_back(inWords(Message{ofMost, {{"most", fmt::format("{:.2f}", *row.most)}}}, language));
            rows.push_back(std::move(cells));
        }
    };
    put(betweenHead, report.asked, floating);
    put(sourcesHead, report.sources, floating);
    put(loadsHead, report.loads, neverFed);
    text += alignedColumns(rows) + "\n";
    if (report.floatingIn)
        text += inWords(Message{floatingWords, {{"position", words(*report.floatingIn, language)}}}, language) + "\n";
    if (report.unreadableIn)
        text += inWords(Message{unreadableWords, {{"position", words(*report.unreadableIn, language)}}}, language) + "\n";
    return text + std::string(inWords(measured, language)) + "\n";
}

std::string worstJson(const Job& job, const WorstReport& report)
{
    const auto place = [](const std::optional<NamedPosition>& position) { return position ? positionJson(*position) : std::string("null"); };
    return fmt::format("{{\"worst\": true,\n\"sources\": {},\n\"loads\": {},\n\"between\": {},\n\"floatingIn\": {}, \"unreadableIn\": {},\n"
                       "\"conductors\": {}, \"withoutOhms\": {}, \"coverage\": {{\"positions\": {}, \"covered\": {}}}}}\n",
                       rowsJson(job, report.sources), rowsJson(job, report.loads), rowsJson(job, report.asked), place(report.floatingIn),
                       place(report.unreadableIn), report.conductors, report.withoutOhms, numberText(report.coverage.positions),
                       numberText(report.coverage.covered));
}

} // namespace doorloom
