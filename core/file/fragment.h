#pragma once

#include "edit/operations.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

// Part of a job as text, for the clipboard: a first line that says what it is, then a job file of what hangs
// together by itself.
//
//   doorloom part
//   {
//   "doorloom":1, …
namespace doorloom {

// Devices, splices, cables, wires and notes by their numbers, and what belongs to them:
//  - kinds, the operators that they own, and those of nobody that they are bound to (the leaf, the fire
//  alarm)
//  - conductors with both ends on what is copied; of one that was chosen itself, other ends wait
//  - cables that were chosen, or that are landed on what is copied and nowhere else
//  - places, cable types, and how all of it is drawn
// Empty when none of the rows is one of these.
std::string copiedText(const Job& job, const std::vector<std::uint32_t>& rows);

struct PasteOptions {
    SheetId sheet{}; // nothing: what is pasted is drawn nowhere
    Point by{};      // from where it was drawn
};

struct Pasted {
    Change change;
    std::vector<std::uint32_t> rows; // the new devices, splices, cables and notes, to be chosen
};

// Everything under new numbers, tags counted on until they are free. Kinds and cable types that the job has
// are used; places, the fire alarm and the mains are matched by their tags.
// Errors: a text that copiedText did not make, or a damaged one; says where
Result<Pasted> pasted(const Job& job, Numbers& numbers, std::string_view text,
                      const PasteOptions& options = {});

// Whether it is worth offering to paste: looks at the first line alone.
bool isCopiedText(std::string_view text);

} // namespace doorloom
