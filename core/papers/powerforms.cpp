#include "papers/powerforms.h"

#include "base/json.h"
#include "papers/columns.h"
#include "papers/csv.h"

#include <fmt/format.h>

namespace doorloom {
namespace {

using Rows = std::vector<std::vector<std::string>>;

const std::vector<std::string> columns = {"row",          "load",         "what",         "source",       "way_metres",
                                          "gauges",       "loop_ohms",    "nominal_volts", "holding_amperes", "holding_volts",
                                          "drop_percent", "inrush_amperes", "inrush_volts", "least_volts",  "pull_in_volts",
                                          "verdict",      "least_gauge",  "drawn_amperes", "limit_amperes", "spare_amperes",
                                          "position",     "from_sheet",   "job",          "revision",     "digest"};
constexpr const char* loadVerdicts[] = {"ok",           "too few",        "too few to pull in", "not carried", "length missing",
                                        "least not said", "never fed", "not fed on ac"};
constexpr const char* sourceVerdicts[] = {"under 80", "over 80", "over limit", "limit not said", "not looked at"};

std::string numberOf(double value, int decimals) { return numberText(std::stod(fmt::format("{:.{}f}", value, decimals))); }

template <class Quantity> std::string numberOr(const std::optional<Quantity>& value, int decimals = 3)
{
    return value ? numberOf(value->value, decimals) : std::string();
}

std::string positionText(const std::vector<Message>& position, Language language)
{
    std::string text;
    for (const Message& each : position)
        text += (text.empty() ? "" : "; ") + inWords(each, language);
    return text;
}

// A row by the names of its cells; the others are empty.
std::string lineOf(const PowerSheet& sheet, std::vector<std::pair<std::string_view, std::string>> cells)
{
    cells.insert(cells.end(), {{"job", sheet.title.number}, {"revision", sheet.title.revision}, {"digest", sheet.title.digest}});
    std::vector<std::string> row;
    for (const std::string& column : columns) {
        row.emplace_back();
        for (const auto& [name, value] : cells)
            if (name == column)
                row.back() = value;
    }
    return csvRow(row);
}

std::string lineOf(const PowerSheet& sheet, const LoadLine& line, Language language)
{
    const auto drop = line.dropPercent();
    return lineOf(sheet, {{"row", "load"},
                          {"load", line.load},
                          {"what", line.what.empty() ? inWords(line.title, language) : line.what},
                          {"source", line.source},
                          {"way_metres", numberOr(line.way)},
                          {"gauges", fmt::format("{}", fmt::join(line.gauges, "; "))},
                          {"loop_ohms", numberOr(line.loop, 4)},
                          {"nominal_volts", numberOr(line.nominal)},
                          {"holding_amperes", numberOr(line.amperes, 4)},
                          {"holding_volts", numberOr(line.holding)},
                          {"drop_percent", drop ? numberOf(*drop, 2) : ""},
                          {"inrush_amperes", numberOr(line.inrush)},
                          {"inrush_volts", numberOr(line.atInrush)},
                          {"least_volts", numberOr(line.least)},
                          {"pull_in_volts", numberOr(line.pullIn)},
                          {"verdict", loadVerdicts[static_cast<std::size_t>(line.verdict)]},
                          {"least_gauge", line.leastGauge.value_or(line.noGaugeWouldDo ? "none" : "")},
                          {"position", positionText(line.position, language)},
                          {"from_sheet", line.fromSheet ? "yes" : "no"}});
}

std::string linesOf(const PowerSheet& sheet, const SourceLine& line, Language language)
{
    const bool isLookedAt = line.verdict != SourceVerdict::NotLookedAt, hasSpare = isLookedAt && line.limit;
    std::string csv = lineOf(sheet, {{"row", "source"},
                                     {"what", line.what.empty() ? inWords(line.title, language) : line.what},
                                     {"source", line.source},
                                     {"verdict", sourceVerdicts[static_cast<std::size_t>(line.verdict)]},
                                     {"drawn_amperes", isLookedAt ? numberOf(line.sum.value, 4) : ""},
                                     {"limit_amperes", numberOr(line.limit)},
                                     {"spare_amperes", hasSpare ? numberOf(line.limit->value - line.sum.value, 4) : ""},
                                     {"position", positionText(line.position, language)},
                                     {"from_sheet", line.fromSheet ? "yes" : "no"}});
    for (const auto& [load, drawn] : line.loads)
        csv += lineOf(sheet, {{"row", "drawn"}, {"load", load}, {"source", line.source}, {"drawn_amperes", numberOf(drawn.value, 4)}});
    if (line.others.value != 0)
        csv += lineOf(sheet, {{"row", "drawn"}, {"source", line.source}, {"drawn_amperes", numberOf(line.others.value, 4)}});
    return csv;
}

} // namespace

std::string powerText(const PowerSheet& sheet, Language language)
{
    Rows rows = {{std::string(inWords(powerTitle, language)) + ": " + inWords(jobInWords(sheet.title), language)}};
    const auto say = [&](const Message& line) { rows.push_back({inWords(line, language)}); };
    for (const Message& line : titleLines(sheet.title))
        say(line);
    say(revisionLine(sheet.title));
    for (const Message& line : conditionsOf(sheet))
        say(line);
    for (const Language each : {Language::English, Language::Spanish}) {
        rows.push_back({""});
        for (const Message& caution : cautions())
            rows.push_back({"! " + inWords(caution, each)});
    }
    std::string text = alignedColumns(rows) + "\n" + std::string(inWords(loadsTitle, language)) + "\n";
    rows = {loadHeads(language)};
    for (const LoadLine& line : sheet.loads)
        rows.push_back(cellsOf(line, language));
    text += alignedColumns(rows) + "\n" + std::string(inWords(sourcesTitle, language)) + "\n";
    rows = {sourceHeads(language)};
    for (const SourceLine& line : sheet.sources)
        for (auto& row : rowsOf(line, language))
            rows.push_back(std::move(row));
    return text + alignedColumns(rows) + "\n" + std::string(inWords(shortCaution, language)) + "\n";
}

std::string powerCsv(const PowerSheet& sheet, Language language)
{
    std::string csv = csvRow(columns);
    for (const LoadLine& line : sheet.loads)
        csv += lineOf(sheet, line, language);
    for (const SourceLine& line : sheet.sources)
        csv += linesOf(sheet, line, language);
    return csv;
}

} // namespace doorloom
