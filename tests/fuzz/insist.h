#pragma once

#include "base/result.h"

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

namespace doorloom {

// Ends the program, in every build, so that the fuzzer keeps the input.
inline void insist(bool holds, const char* what)
{
    if (holds)
        return;
    std::fprintf(stderr, "It does not hold that %s.\n", what);
    std::abort();
}

// A refusal says what, where and what to do, in every language.
inline void insistOnWords(const Problem& problem)
{
    insist(!problem.where.empty(), "a refusal says where");
    for (Language language : {Language::English, Language::Spanish}) {
        insist(!inWords(problem.what, language).empty(), "a refusal says what");
        insist(!inWords(problem.remedy, language).empty(), "a refusal says what to do");
    }
}

inline std::string_view textOf(const std::uint8_t* data, std::size_t size)
{
    return {reinterpret_cast<const char*>(data), size};
}

} // namespace doorloom
