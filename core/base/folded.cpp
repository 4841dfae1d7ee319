#include "base/folded.h"

#include <array>

namespace doorloom {

namespace {

// U+00C0 … U+00FF without their marks; '*': stays as it is.
constexpr std::string_view plain = "aaaaaaaceeeeiiiidnooooo*ouuuuy**aaaaaaaceeeeiiiidnooooo*ouuuuy*y";
static_assert(plain.size() == 64);

struct Sign {
    std::string_view bytes;
    char plain;
};
constexpr auto signs = std::to_array<Sign>({{"\u2010", '-'},
                                            {"\u2011", '-'},
                                            {"\u2012", '-'},
                                            {"\u2013", '-'},
                                            {"\u2014", '-'},
                                            {"\u2212", '-'},
                                            {"\u2032", '\''},
                                            {"\u2019", '\''}});

// How many bytes at the front were taken; 0: none that is known.
std::size_t takeSign(std::string_view text, std::string& into)
{
    for (const Sign& sign : signs)
        if (text.starts_with(sign.bytes)) {
            into += sign.plain;
            return sign.bytes.size();
        }
    return 0;
}

std::size_t takeLetter(std::string_view text, std::string& into)
{
    if (text.size() < 2 || static_cast<unsigned char>(text[0]) != 0xc3)
        return 0;
    const std::size_t at = static_cast<unsigned char>(text[1]) - 0x80u;
    if (at >= plain.size() || plain[at] == '*')
        return 0;
    into += plain[at];
    return 2;
}

} // namespace

std::string folded(std::string_view text)
{
    std::string into;
    into.reserve(text.size());
    while (!text.empty()) {
        std::size_t taken = static_cast<unsigned char>(text[0]) < 0x80 ? 0 : takeLetter(text, into);
        if (taken == 0 && static_cast<unsigned char>(text[0]) >= 0x80)
            taken = takeSign(text, into);
        if (taken == 0) {
            const char letter = text[0];
            into += letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
            taken = 1;
        }
        text.remove_prefix(taken);
    }
    return into;
}

} // namespace doorloom
