#pragma once

#include "base/quantity.h"
#include "base/result.h"

#include <optional>
#include <string>
#include <vector>

// Sheets and tapes of labels, as data (resources/labels/*.json), and which label is where.
namespace doorloom {

enum class LabelForm {
    Plain, // written on all of it
    Wrap,  // goes round the conductor: what is beyond the written strip is clear, and covers it
    Flag   // folded over the conductor: both halves are written alike
};

struct Extent {
    Millimetres width, height;
    friend bool operator==(const Extent&, const Extent&) = default;
};
struct LabelSpot {
    Millimetres left, top;
    friend bool operator==(const LabelSpot&, const LabelSpot&) = default;
};
struct Pitch {
    Millimetres across, down;
    friend bool operator==(const Pitch&, const Pitch&) = default;
};
struct LabelCount {
    int across = 0, down = 0;
    friend bool operator==(const LabelCount&, const LabelCount&) = default;
};

// Sizes are of the kind that is sold everywhere: common practice, no source. The offset page shows whether they fit.
struct LabelSheet {
    std::string name; // 'a4-3x8'
    Words words;
    LabelForm form = LabelForm::Plain;
    // Sheets:
    Extent page;      // as it goes through the printer, upright
    LabelSpot first;       // the first label's corner
    Pitch pitch;      // from one label to the next
    LabelCount count;
    Extent label;
    // Continuous tape: its width. A label is as long as it must be.
    std::optional<Millimetres> tape;
    Millimetres margin;                 // inside a label, kept free on all sides
    std::optional<Millimetres> written; // of a wrap label on a sheet: how much of its height, from the top
    std::optional<Millimetres> fold;    // of a flag: the middle of its width, round the conductor

    friend bool operator==(const LabelSheet&, const LabelSheet&) = default;
};

struct LabelSheets {
    std::vector<LabelSheet> sheets; // by name

    const LabelSheet* find(const std::string& name) const; // null when there is none
    std::string names() const;                             // 'a4-3x8, tape-12', for messages
};

// Reads every *.json of a folder, one sheet or tape a file, and checks each.
// Errors: the first file that cannot be read, or whose labels do not lie on their page beside each other
Result<LabelSheets> readLabelSheets(const std::string& folder);

enum class LabelOrder { ByRows, ByColumns };

int labelsOn(const LabelSheet& sheet); // of a tape 1

struct PlacedLabel {
    std::size_t page = 0;
    LabelSpot at; // its corner
};
// Where a label lies.   In: its number, counted on from the first label of the first sheet, which is 0
PlacedLabel placedLabel(const LabelSheet& sheet, LabelOrder order, std::size_t number);

} // namespace doorloom
