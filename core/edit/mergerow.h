#pragma once

#include "edit/doorcopy.h"
#include "edit/references.h"
#include "edit/typicals.h"

#include <map>
#include <set>
#include <string>
#include <variant>
#include <vector>

namespace doorloom {

// One stamp's view of its typical: who is whom, and how to name what is not in the job yet.
struct StampView {
    const Job& job;
    Renumbering again;                // from the typical's rows to the stamp's
    std::set<std::uint32_t> typicals; // all rows that are or were the typical's
    std::map<std::uint32_t, std::string> newNames;
    DoorTexts texts;

    std::string nameOf(std::uint32_t row) const;
    // Whether the row (in the stamp's numbers) would refer to what belongs to the typical itself.
    template <class Row> bool leadsIntoTypical(const Row& row) const
    {
        for (std::uint32_t number : referencesOf(row))
            if (typicals.count(number) > 0)
                return true;
        return false;
    }
    // The typical's row as the stamp would have it, but for its tag.
    template <class Row> Row asStamped(Row row) const
    {
        if constexpr (std::is_same_v<Row, Conductor>)
            return conductorAgain(std::move(row), again);
        texts.give(row);
        renumber(row, again);
        return row;
    }
};

// Three ways to one row: what the typical's row was (base) and is now (fresh), both in the typical's numbers,
// and the stamp's own. What the typical changed is taken over where the stamp is as it was stamped; where it
// has something of its own, that stays, and a line says so. Tags, titles and the order of sheets are each
// door's own. Out: the stamp's row as it should be; lines are added in the order of the row's members
Place mergedRow(const StampView& view, const Place& base, const Place& fresh, const Place& own,
                DoorLines& lines);
Operator mergedRow(const StampView& view, const Operator& base, const Operator& fresh, const Operator& own,
                   DoorLines& lines);
Device mergedRow(const StampView& view, const Device& base, const Device& fresh, const Device& own,
                 DoorLines& lines);
Cable mergedRow(const StampView& view, const Cable& base, const Cable& fresh, const Cable& own,
                DoorLines& lines);
Splice mergedRow(const StampView& view, const Splice& base, const Splice& fresh, const Splice& own,
                 DoorLines& lines);
Conductor mergedRow(const StampView& view, const Conductor& base, const Conductor& fresh,
                    const Conductor& own, DoorLines& lines);
Opening mergedRow(const StampView& view, const Opening& base, const Opening& fresh, const Opening& own,
                  DoorLines& lines);
Sheet mergedRow(const StampView& view, const Sheet& base, const Sheet& fresh, const Sheet& own,
                DoorLines& lines);
Placement mergedRow(const StampView& view, const Placement& base, const Placement& fresh,
                    const Placement& own, DoorLines& lines);
Bends mergedRow(const StampView& view, const Bends& base, const Bends& fresh, const Bends& own,
                DoorLines& lines);

} // namespace doorloom
