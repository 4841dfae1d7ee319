#pragma once

#include "edit/change.h"
#include "file/connectiontable.h"

#include <string>
#include <vector>

// Connections from a spreadsheet into a job: one conductor a row, by the tags of devices and the printed
// names of terminals that are in the job already.
namespace doorloom {

enum class RowFate {
    Taken, // lands a conductor
    Again, // what an earlier row or the job has already: a list of both ends tells every conductor twice
    Left   // can't be taken
};

struct ListedRow {
    std::size_t line = 0; // in the file
    RowFate fate = RowFate::Left;
    Message words;  // the conductor that is landed, where it stood already, or why the row is left
    Message remedy; // what to do about a row that is left
};

struct ConnectionList {
    Change change;                                      // all rows that are taken; nothing where none is
    std::vector<ListedRow> rows;                        // every row but the head, in order
    std::vector<std::string> newCables, missingDevices; // tags, each once
};

inline constexpr int mostListedCores = 200; // of one cable

// A row with a cable lands the core with its number, else of its colour, else the next that is free; a cable
// that the job does not have is made, from where the row's first device is to where the second is, with the
// cores that the list tells of and no gauge, for the list has none. A row without a cable is a wire. 'LM1:NO'
// may stand in a device's cell; a splice has no terminal. Left are rows with a device, terminal or colour
// that is not there, a core landed elsewhere or of another colour, a cable that runs between other places,
// both ends on one terminal, and what the device joins inside. Cost: a look at the cable's or device's
// conductors a row
ConnectionList connectionList(const Job& job, const std::vector<CellRow>& table, const ListLayout& layout);

std::size_t countOf(const ConnectionList& list, RowFate fate);
// "Rows taken: 24. Told again: 2. Left: 1. New cables: C1, C2. Devices not in the job: –."
Message summaryOf(const ConnectionList& list);

} // namespace doorloom
