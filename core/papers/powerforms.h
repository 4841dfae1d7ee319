#pragma once

#include "papers/power.h"

#include <string>
#include <vector>

// The power sheet's words, the same for every form of it, and its plain forms.
namespace doorloom {

extern const Text powerTitle, loadsTitle, sourcesTitle;
// What the figures hold for: temperature, supplies, doors, conductors without ohms, inrush.
std::vector<Message> conditionsOf(const PowerSheet& sheet);

// Cells of the two tables; none is empty: where there is nothing to say stands '–'.
enum LoadColumn : std::size_t {
    LoadNameColumn,
    LoadWhatColumn,
    LoadSourceColumn,
    WayColumn,
    WayGaugeColumn,
    LoopColumn,
    HoldingColumn,
    DropColumn,
    InrushColumn,
    LeastColumn,
    VerdictColumn,
    LeastGaugeColumn,
    LoadPositionColumn,
    loadColumns
};
std::vector<std::string> loadHeads(Language language);
std::vector<std::string> cellsOf(const LoadLine& line, Language language);

enum SourceColumn : std::size_t {
    SourceNameColumn,
    SourceWhatColumn,
    SumColumn,
    LimitColumn,
    SpareColumn,
    EightyColumn,
    SourceVerdictColumn,
    SourcePositionColumn,
    sourceColumns
};
std::vector<std::string> sourceHeads(Language language);
// The source's own row, then one for each load that draws: its name in the second column, its amperes in the third.
std::vector<std::vector<std::string>> rowsOf(const SourceLine& line, Language language);

Message verdictInWords(const LoadLine& line);
Message verdictInWords(const SourceLine& line);

// For people: aligned columns, UTF-8, LF.
std::string powerText(const PowerSheet& sheet, Language language);

// For programs and spreadsheets (papers/csv.h). Rows: 'load', one each; 'source', one each, with every load that draws from it
// after it as 'drawn' (its source, terminal and amperes). The names of columns and rows, and 'verdict', are the same in every
// language: ok, too few, too few to pull in, not carried, length missing, least not said, never fed, not fed on ac; of a
// source under 80, over 80, over limit, limit not said, not looked at.
std::string powerCsv(const PowerSheet& sheet, Language language);

} // namespace doorloom
