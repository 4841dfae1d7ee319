#pragma once

#include "papers/tablepaper.h"

#include <optional>

// The cable pull list: what the helper pulls, in the order of pulling, and what has to be on the van for it.
namespace doorloom {

// What is cut longer than it is drawn, to make up the ends. Common practice, no source.
inline constexpr double pullAllowance = 0.10;              // of the way
inline constexpr Metres tailInCabinet{0.9}, tailElsewhere{0.3}; // at an end
inline constexpr Metres cutStep{0.5};                      // cut lengths are rounded up to it

struct PullLine {
    CableId cable;
    std::string pull; // cables that go together share it; empty: alone
    std::string tag, type;
    int cores = 0, spare = 0;        // spare: neither end is landed
    bool shielded = false, carriesMains = false;
    PlaceId from, to;
    std::optional<Metres> length, cut; // nothing: no length is said
    Standing standing = Standing::New;
    std::string notes;
};

struct TypeTotal {
    std::string type;
    int cables = 0, withoutLength = 0;
    Metres length, cut;
};

// Cables that come into a box: each wants a gland or a knock-out.
struct BoxEntries {
    PlaceId box;
    std::vector<std::string> low, mains; // tags
};

struct PullList {
    TitleBlock title;
    std::vector<PullLine> lines;    // by the box they start at, there the longest first; what goes together stays together
    std::vector<TypeTotal> totals;  // of the cables that are new or moved, by name
    std::vector<BoxEntries> boxes;  // by tag
};

// In: digestOf(job) (core/file)
PullList pullListOf(const Job& job, std::string digest);

extern const Text pullTitle;
TablePaper pullTables(const Job& job, const PullList& list, Language language);

// For programs: rows 'cable', 'total' and 'box'; the names of columns and rows are the same in every language; lengths in metres.
std::string pullCsv(const Job& job, const PullList& list);

} // namespace doorloom
