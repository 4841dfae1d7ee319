#pragma once

#include "base/result.h"
#include "edit/freshtags.h"

#include <optional>
#include <set>
#include <string>

namespace doorloom {

// How the rows of a door that is drawn again are tagged.
//  - without a pattern each tag is counted on: ES1, ES2 …
//  - with one, such as "{door}-{tag}", it has the new door's tag and the row's own: 102-ES1. A tag that the
//    old door has by the same pattern gives what stands for {tag} in it.
// An operator, place or sheet that has the old door's tag in its own gets the new one there: D101, "Room
// 101". A tag that is taken is counted on in any case.
class DoorTags {
public:
    DoorTags(FreshTags& fresh, std::string pattern, std::string oldDoor, std::string newDoor);

    void give(Place& row) { row.tag = fresh_.place(ofNewDoor(row.tag)); }
    void give(Operator& row) { row.tag = fresh_.moved(ofNewDoor(row.tag)); }
    void give(Device& row) { row.tag = fresh_.device(wanted(row.tag)); }
    void give(Splice& row) { row.tag = fresh_.splice(wanted(row.tag)); }
    void give(Cable& row) { row.tag = fresh_.cable(wanted(row.tag)); }
    void give(Conductor& row) { row.tag = fresh_.wire(wanted(row.tag)); }
    void give(Sheet& row) { row.title = fresh_.sheet(ofNewDoor(row.title)); }
    void give(Opening& row) { row.tag = newDoor_; }
    template <class Row> void give(Row&) {} // rows without a tag

private:
    std::string wanted(const std::string& tag) const;
    std::string ofNewDoor(const std::string& tag) const;

    FreshTags& fresh_;
    std::string pattern_, oldDoor_, newDoor_;
};

// What else is said of a door that is drawn again, always in the same way, so that it can be compared later.
//  - words and notes: the old door's tag, as a word of its own, becomes the new one's
//  - a pull that only this door's cables are in is the new door's: 102-corridor; one that other doors share is
//    the same again
struct DoorTexts {
    std::string pattern, oldDoor, newDoor;
    std::set<std::string> ownPulls;

    void give(Place& row) const { row.words = words(std::move(row.words)); }
    void give(Device& row) const { row.words = words(std::move(row.words)); }
    void give(Opening& row) const { row.words = words(std::move(row.words)); }
    void give(Cable& row) const;
    template <class Row> void give(Row&) const {} // rows without words

private:
    std::string words(std::string text) const;
};

// Those of these pulls that no other cable of the job is in.
// In:   cables: numbers of the door's own
// Cost: a walk along the job's cables
std::set<std::string> ownPulls(const Job& job, std::set<std::string> pulls, const std::set<std::uint32_t>& cables);

// Errors: a pattern without {door} or {tag}, or with what no tag may have
std::optional<Problem> patternProblem(const std::string& pattern);

// "C7.2" for core 2 of C7 where the old core is called after its cable in the same way; else nothing.
std::optional<std::string> coreTag(const Conductor& row, const std::string& oldCable,
                                   const std::string& newCable);

} // namespace doorloom
