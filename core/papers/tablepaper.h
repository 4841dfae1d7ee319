#pragma once

#include "base/quantity.h"
#include "model/job.h"
#include "papers/titleblock.h"

#include <set>
#include <string>
#include <vector>

namespace doorloom {

// One table under its heading, in words. No cell is empty: where there is nothing to say stands '–'.
struct PaperTable {
    std::string title, none; // none: what is said where there is no row
    std::vector<std::string> heads;
    std::vector<std::vector<std::string>> rows;
    std::set<std::size_t> bold; // columns
};

// A paper that is nothing but tables, in one language: what its text and its pages are made of.
struct TablePaper {
    Text name;
    TitleBlock title;
    std::vector<Message> opening; // what holds for all of it
    std::vector<PaperTable> tables;
};

// For people: aligned columns, UTF-8, LF; the cautions in both languages.
std::string tableText(const TablePaper& paper, Language language);

// For programs: the rows of all tables, which have these columns; each begins with its table's title and ends with the job's
// number, revision and digest.
std::string tableCsv(const TablePaper& paper, std::vector<std::string> columns);

// ---- Cells that several papers have.

inline constexpr const char* tickBox = "☐";
inline constexpr const char* nothingToSay = "–";
inline constexpr const char* toFillIn = "________";
std::vector<std::string> headsIn(const std::vector<Text>& heads, Language language);
// '12.5 m / 41 ft'
std::string lengthInWords(Metres length);
// 'CAB1 · cabinet above ceiling', or that it is not said
std::string placeInWords(const Job& job, PlaceId id, Language language);

} // namespace doorloom
