#pragma once

#include <cstdint>
#include <string>
#include <string_view>

// One line of a journal: its record and what guards it (the format is in journal.h).
namespace doorloom {

struct JournalLine {
    enum class State {
        Whole,
        CutShort, // the last one: it ends before its record does
        Damaged
    };
    State state = State::Damaged;
    std::uint64_t number = 0; // of a whole one
    std::string_view json;    // part of the line
};

// In: the line, with its end where it has one
JournalLine lineOf(std::string_view line);
std::string lineWith(std::uint64_t number, std::string_view json);

} // namespace doorloom
