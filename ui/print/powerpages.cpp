#include "print/powerpages.h"

#include "papers/powerforms.h"
#include "print/papersheet.h"
#include "print/printwords.h"
#include "print/tablepages.h"

#include <set>

namespace doorloom {
namespace {

constexpr double drawnHeight = 4.5 * 72 / 25.4; // 4.5 mm

constexpr Text noLoads = {.en = "No load stands on terminals.", .es = "Ninguna carga está en bornes."};
constexpr Text noSources = {.en = "There is no source.", .es = "No hay ninguna fuente."};

// What a load is stands under its figures, where there is room for it.
template <class Cells> Cells withoutWhat(Cells cells)
{
    cells.erase(cells.begin() + LoadWhatColumn);
    return cells;
}

PrintedTable tableOfLoads(const PowerSheet& sheet, Language language)
{
    PrintedTable table{printWords(loadsTitle, language), printWords(noLoads, language), withoutWhat(printedHeads(loadHeads(language))), {}};
    for (const LoadLine& line : sheet.loads) {
        std::set<std::size_t> bold = {LoadNameColumn};
        if (line.verdict != PowerVerdict::Enough)
            bold.insert(VerdictColumn);
        const std::vector<std::string> cells = cellsOf(line, language);
        table.rows.push_back({withoutWhat(printedRow(cells, bold)), 0, printWords(cells[LoadWhatColumn])});
    }
    return table;
}

PrintedTable tableOfSources(const PowerSheet& sheet, Language language)
{
    PrintedTable table{printWords(sourcesTitle, language), printWords(noSources, language), printedHeads(sourceHeads(language)), {}};
    for (const SourceLine& line : sheet.sources) {
        std::set<std::size_t> bold = {SourceNameColumn, SumColumn};
        if (line.verdict != SourceVerdict::Under80)
            bold.insert(SourceVerdictColumn);
        for (const auto& cells : rowsOf(line, language)) {
            const bool isDrawn = cells[SourceNameColumn].empty();
            table.rows.push_back({printedRow(cells, isDrawn ? std::set<std::size_t>() : bold), isDrawn ? drawnHeight : tableRowHeight, {}});
        }
    }
    return table;
}

} // namespace

Result<std::vector<PrintedPage>> powerPages(const PowerSheet& sheet, const PaperFont& font, const PageSetup& setup)
{
    const PageSize room = roomOn(setup.size);
    const PaperPieces make(font, setup.language, room.width);
    PageStack stack(room.height, dangersPiece(make, sheet.title));
    putOpening(stack, make, sheet.title, powerTitle, setup.size, conditionsOf(sheet));
    for (const PrintedTable& table : {tableOfLoads(sheet, setup.language), tableOfSources(sheet, setup.language)}) {
        const Result<FittedColumns> columns = columnsOf(table, font, room.width, powerTitle);
        if (!font.lettersMissing().isEmpty())
            return lettersMissing(font, powerTitle);
        if (!columns.ok())
            return columns.problem();
        putTable(stack, make, table, columns.value());
    }
    return finishedSheets(stack.taken(), make, sheet.title, powerTitle, setup.size);
}

} // namespace doorloom
