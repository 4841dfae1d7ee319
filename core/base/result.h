#pragma once

#include "base/text.h"

#include <cassert>
#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace doorloom {

// What went wrong, where, and what to do about it.
struct Problem {
    Message what;      // "Terminal 'NO2' does not exist on PS1."
    std::string where; // "cabinet.doorjob, line 214, conductors[7].to", or a tag on the sheet
    Message remedy;    // "Use one of: C1, NO1, NC1, +, −."

    friend bool operator==(const Problem&, const Problem&) = default;
};

// "where: what remedy" in one line.
std::string inWords(const Problem& problem, Language language = Language::English);

// A value, or the problem that kept it from being made.
template <class T>
class [[nodiscard]] Result {
public:
    Result(T value) : content_(std::in_place_index<0>, std::move(value)) {}
    Result(Problem problem) : content_(std::in_place_index<1>, std::move(problem)) {}

    bool ok() const { return content_.index() == 0; }
    const T& value() const
    {
        assert(ok());
        return std::get<0>(content_);
    }
    T& value()
    {
        assert(ok());
        return std::get<0>(content_);
    }
    const Problem& problem() const
    {
        assert(!ok());
        return std::get<1>(content_);
    }

private:
    std::variant<T, Problem> content_;
};

// A result that carries nothing but whether it worked.
struct Done {};

} // namespace doorloom
