#include "verbs/verb.h"

namespace doorloom {

// Declared and listed, nothing else. The order is that of the usage.
extern const Verb kindsVerb;
static constexpr const Verb* verbs[] = {&kindsVerb};
std::span<const Verb* const> allVerbs()
{
    return verbs;
}

} // namespace doorloom
