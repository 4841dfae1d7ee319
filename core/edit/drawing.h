#pragma once

#include "edit/operations.h"

#include <cstdint>
#include <string>
#include <utility>
#include <variant>
#include <vector>

// Where things are drawn and what is written beside them: none of it is wiring. Rows are the job's numbers,
// of devices, splices, notes …; those that such an operation has no use for are passed over.
namespace doorloom {

using Placeable = std::variant<DeviceId, SpliceId>;

// ---- Look-ups; null when there is none. A thing is drawn once.

const Placement* placementOf(const Job& job, Placeable what);
const Placement* placementOf(const Job& job, std::uint32_t row); // of a device or splice
const Bends* bendsOf(const Job& job, ConductorId conductor);
std::vector<const Sheet*> sheetsInOrder(const Job& job);

// ---- Devices and splices

// On this sheet at this point; what is drawn elsewhere goes there.
// Errors: a sheet, device or splice that is not in the job
Result<Change> putOnSheet(const Job& job, Numbers& numbers, SheetId sheet, Placeable what, Point at,
                          int quarterTurns = 0);
// Devices and splices go off their sheets, and stay in the job. Conductors on them lose their bends.
Change takeOffSheet(const Job& job, const std::vector<std::uint32_t>& rows);

// Devices, splices and notes by an offset; a conductor with both ends on them takes its bends along.
// Errors: a point that would lie further out than a sheet can show
Result<Change> moveRows(const Job& job, const std::vector<std::uint32_t>& rows, Point by);

// A row as it is drawn: only the view knows how large that is.
struct Outline {
    std::uint32_t row = 0;
    Point least, most;
};
enum class Edge { Left, Right, Top, Bottom };
// Moves each so that this edge of its outline is where the outermost one's is.
Result<Change> alignRows(const Job& job, const std::vector<Outline>& outlines, Edge edge);

// Clockwise, each about its own point.
Change turnRows(const Job& job, const std::vector<std::uint32_t>& rows, int quarterTurns = 1);

// ---- Bends of conductors

// The points that a conductor's line must pass, first end first; none: it runs as it likes.
Result<Change> pinBends(const Job& job, Numbers& numbers, ConductorId conductor, std::vector<Point> pinned);
Change clearBends(const Job& job, const std::vector<std::uint32_t>& conductors);

// ---- Notes

// Errors: no words
Result<std::pair<NoteId, Change>> addNote(const Job& job, Numbers& numbers, SheetId sheet, Point at,
                                          std::string words);
// A note left without words goes.
Result<Change> rewordNote(const Job& job, NoteId note, std::string words);
Result<Change> removeNote(const Job& job, NoteId note);

// ---- Sheets

// Errors: no title, or one that another sheet has
Result<std::pair<SheetId, Change>> addSheet(const Job& job, Numbers& numbers, std::string title);
Result<Change> renameSheet(const Job& job, SheetId sheet, std::string title);
// To this position among the sheets, 0 for the first; past the end: the last.
Result<Change> moveSheet(const Job& job, SheetId sheet, std::size_t position);
// With its notes. Devices and splices on it stay in the job, drawn nowhere.
Result<Change> removeSheet(const Job& job, SheetId sheet);
// With the devices and splices on it too.   Errors: one of them is to be left alone
Result<Change> removeSheetAndDevices(const Job& job, SheetId sheet);

// ---- Title block

// In:     its id is not read: a job has one title block
// Errors: papers in no language
Result<Change> setInfo(const Job& job, Numbers& numbers, JobInfo wanted);

} // namespace doorloom
