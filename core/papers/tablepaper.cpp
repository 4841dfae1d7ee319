#include "papers/tablepaper.h"

#include "papers/columns.h"
#include "papers/csv.h"

#include <fmt/format.h>

namespace doorloom {
namespace {

constexpr Text notSaid = {.en = "not said yet", .es = "sin indicar"};
constexpr double feetInAMetre = 1 / 0.3048;

std::vector<std::vector<std::string>> openingOf(const TablePaper& paper, Language language)
{
    std::vector<std::vector<std::string>> rows = {
        {std::string(inWords(paper.name, language)) + ": " + inWords(jobInWords(paper.title), language)}};
    const auto say = [&](const Message& line) { rows.push_back({inWords(line, language)}); };
    for (const Message& line : titleLines(paper.title))
        say(line);
    say(revisionLine(paper.title));
    for (const Message& line : paper.opening)
        say(line);
    for (const Language each : {Language::English, Language::Spanish}) {
        rows.push_back({""});
        for (const Message& caution : cautions())
            rows.push_back({"! " + inWords(caution, each)});
    }
    return rows;
}

} // namespace

std::string tableText(const TablePaper& paper, Language language)
{
    std::string text = alignedColumns(openingOf(paper, language));
    for (const PaperTable& table : paper.tables) {
        text += "\n" + table.title + "\n";
        std::vector<std::vector<std::string>> rows = {table.heads};
        rows.insert(rows.end(), table.rows.begin(), table.rows.end());
        text += table.rows.empty() ? table.none + "\n" : alignedColumns(rows);
    }
    return text + "\n" + std::string(inWords(shortCaution, language)) + "\n";
}

std::string tableCsv(const TablePaper& paper, std::vector<std::string> columns)
{
    columns.insert(columns.begin(), "table");
    columns.insert(columns.end(), {"job", "revision", "digest"});
    std::string csv = csvRow(columns);
    for (const PaperTable& table : paper.tables)
        for (std::vector<std::string> cells : table.rows) {
            cells.insert(cells.begin(), table.title);
            cells.insert(cells.end(), {paper.title.number, paper.title.revision, paper.title.digest});
            csv += csvRow(cells);
        }
    return csv;
}

std::vector<std::string> headsIn(const std::vector<Text>& heads, Language language)
{
    std::vector<std::string> words;
    for (const Text& head : heads)
        words.emplace_back(inWords(head, language));
    return words;
}

std::string lengthInWords(Metres length)
{
    return fmt::format("{:.1f} m / {:.0f} ft", length.value, length.value * feetInAMetre);
}

std::string placeInWords(const Job& job, PlaceId id, Language language)
{
    const Place* place = job.places.find(id);
    if (!place || (place->tag.empty() && place->words.empty()))
        return std::string(inWords(notSaid, language));
    if (place->tag.empty() || place->words.empty())
        return place->tag + place->words;
    return place->tag + " · " + place->words;
}

} // namespace doorloom
