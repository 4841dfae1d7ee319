#include "verbs/verb.h"

namespace doorloom {

// Declared and listed, nothing else. The order is that of the usage.
extern const Verb checkVerb, voltsVerb, ohmsVerb, spiceVerb, printVerb, tidyVerb, kindsVerb, newVerb, importVerb;
static constexpr const Verb* verbs[] = {&checkVerb, &voltsVerb, &ohmsVerb, &spiceVerb, &printVerb,
                                        &tidyVerb,  &kindsVerb, &newVerb,  &importVerb};
std::span<const Verb* const> allVerbs()
{
    return verbs;
}

} // namespace doorloom
