#include "verbs/verb.h"

namespace doorloom {

static constexpr std::span<const Verb* const> verbs;
std::span<const Verb* const> allVerbs()
{
    return verbs;
}

} // namespace doorloom
