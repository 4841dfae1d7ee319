#pragma once

#include "edit/doorcopy.h"
#include "edit/draft.h"
#include "edit/mergerow.h"
#include "edit/rownames.h"
#include "edit/typicalrows.h"

#include <string>
#include <utility>

// One stamp brought up to its typical: what comes, what is altered, what goes.
namespace doorloom {

// What its parts have in common.
struct StampMerge {
    const Job& job;
    const Stamp& stamp;
    const RowsByNumber &base, &fresh; // the typical then and now, in its own numbers
    StampView view;
    Draft draft;
    DoorLines lines;

    // In: base, fresh: must outlive this
    StampMerge(const Job& from, const Stamp& one, const RowsByNumber& then, const RowsByNumber& now);

    bool isPaired(std::uint32_t ofTypical) const { return view.again.count(ofTypical) > 0; }
    void say(DoorLineSort sort, Text text, Words noun, std::string row, std::string why = {})
    {
        lines.push_back(
            {sort, {text, {{"row", std::move(row)}, {"noun", std::move(noun)}, {"why", std::move(why)}}}});
    }
};

// Rows that people see: others come and go with them.
template <class Row> bool isSeen(const Row&)
{
    return std::is_same_v<Row, Device> || std::is_same_v<Row, Cable> || std::is_same_v<Row, Splice> ||
           std::is_same_v<Row, Place> || std::is_same_v<Row, Opening>;
}
inline bool isSeen(const Conductor& row)
{
    return row.make != ConductorMake::Core;
}

// A file may have another sort of row under this number.
template <class Row> const Row& rowOr(const DoorRow& row, const Row& other)
{
    const Row* held = std::get_if<Row>(&row);
    return held ? *held : other;
}

// Draws what the typical has got since, under the door's tags, and alters what the typical has altered.
void bringRows(StampMerge& merge, DrawingAgain& drawing, const std::string& oldDoor, const std::string& newDoor);
// Takes away what the typical has no more, unless the door has something of its own on it.
void takeGoneAway(StampMerge& merge);

} // namespace doorloom
