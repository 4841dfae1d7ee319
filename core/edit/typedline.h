#pragma once

#include "edit/change.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

// What a person types at the desk. A line is words with blanks between; capitals, accents and kinds of dashes
// don't matter, "…" holds words together. Tags stand as in the job; a terminal by its key or as printed (or a
// lead by its colour), behind its device's tag, with a blank or ':' between. A new tag is taken in capitals.
//
// clang-format off
//   PS1 + ES1 1 [red | 2 | C1.2 | wire]   joins two terminals or splices by the next free core, or by the one
//                                         named: colour (letters or word), number, core, or a wire
//   C1 ES1 1                              lands the cable's next core on a terminal at one of its ends
//   place KIND PLACE [TAG] ["words"]      places a device; a new PLACE is made when its words are given
//   pull TYPE FROM TO [TAG] [12 m]        pulls a cable between places (or devices: where they are)
//   cap CORE [PLACE]                      caps what waits of a core (C1.3), or of a cable's unused cores (C1)
//   insulate CORE [PLACE]                 insulates what waits of a core on purpose
//   lift CORE | TAG TERMINAL              takes off a core at both ends, or all that is on a terminal
//   splice CORE CORE … [PLACE] [TAG]      joins the ends of cores that wait at one place
//   set TAG OPTION VALUE                  an option with all its jumpers, or one of them (K1.JA); '?': not chosen
//   set TAG SETTING VALUE                 a setting
//   move TAG PLACE ["words"]              says where a device or splice is
//   rename TAG TAG                        a device, splice, cable, place or wire
//   remove TAG …                          takes them away
// clang-format on
//
// The words of commands stand in English and Spanish; either does in either language. lineForms() is this
// table.
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
    Text form;
    std::string_view example;
    Text words;
};
std::span<const LineForm> lineForms();

// Kinds whose names or words begin with these letters, best first: names and titles in this language, then in
// the other, then their descriptions. Several words: all must be found. No letters: all kinds.
std::vector<const Kind*> matchingKinds(std::span<const Kind> kinds, std::string_view letters,
                                       Language language = Language::English);

} // namespace doorloom
