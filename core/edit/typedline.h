#pragma once

#include "edit/change.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

// What a person types at the desk. A line is words with blanks between; capitals don't matter, "…" holds
// words together. Tags stand as in the job; a terminal by its key or as printed, behind its device's tag,
// with a blank or ':' between; '-' is as good as '−'.
//
//   PS1 + EL1 1 [red | 2 | wire]         joins two terminals by the next free core, or by the one named: its
//                                        colour (letters or word), its number, or a wire
//   C1 EL1 1                             lands the cable's next core on a terminal at one of its ends
//   place KIND PLACE [TAG] ["words"]     places a device; a new PLACE is made, with the words
//   pull TYPE PLACE PLACE [TAG] [12 m]   pulls a cable; a length in m or ft
//   cap CORE [PLACE]                     caps what waits of a core (C1.3), or of all unused cores of a cable
//   (C1) insulate CORE [PLACE]                insulates what waits of a core on purpose lift CORE | WIRE |
//   DEVICE TERMINAL   takes off what is landed: both ends, or all that is on a terminal splice END END …
//   [TAG]               joins ends of cores (C1.3) that wait where their cables meet set DEVICE OPTION VALUE
//   sets an option (all its jumpers), or one jumper (K1.JA) set DEVICE SETTING VALUE             sets a
//   setting move DEVICE PLACE                    says where a device is rename TAG TAG renames a device
//   remove TAG                           takes away a device, cable or splice
//
// The words of commands stand in English and Spanish; either does in either language.
namespace doorloom {

// What may be placed and pulled beside what the job has already.
struct Stock {
    std::span<const Kind> kinds;
    std::span<const CableType> cables;
};

struct Typed {
    Message what; // for the menu of undo
    Change change;
    std::vector<std::uint32_t> rows; // that it concerns, new ones too; to be shown
};

// Errors: names the word that was not understood, and lists what would be
Result<Typed> readLine(const Job& job, const Stock& stock, std::string_view line);

struct Completion {
    std::string text; // instead of the word at the cursor
    Message words;    // what it is
};

// What may stand where the cursor is, most useful first: free terminals before used ones …
// In:     cursor: bytes from the start of the line
// Cost:   a walk along devices and cables
std::vector<Completion> completionsFor(const Job& job, const Stock& stock, std::string_view line,
                                       std::size_t cursor, Language language = Language::English);
// Where the word begins that a completion takes the place of; the cursor itself when none is begun.
std::size_t wordStart(std::string_view line, std::size_t cursor);

// The table above, for people.
struct LineForm {
    std::string_view form, example;
    Text words;
};
std::span<const LineForm> lineForms();

// Kinds whose names or words begin with these letters, best first: names and titles in this language, then in
// the other, then their descriptions. Several words: all must be found. No letters: all kinds.
std::vector<const Kind*> matchingKinds(std::span<const Kind> kinds, std::string_view letters,
                                       Language language = Language::English);

} // namespace doorloom
