#include "base/utf8.h"

namespace doorloom {

std::size_t utf8Length(std::string_view text)
{
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
    };
    const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
    const unsigned first = byte(0);
    if (first < 0x80)
        return 1;
    if (first >= 0xC2 && first <= 0xDF)
        return follows(1) ? 2 : 0;
    if (first >= 0xE0 && first <= 0xEF) {
        const bool tooLong = first == 0xE0 && byte(1) < 0xA0, surrogate = first == 0xED && byte(1) > 0x9F;
        return follows(1) && follows(2) && !tooLong && !surrogate ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        const bool tooLong = first == 0xF0 && byte(1) < 0x90, tooLarge = first == 0xF4 && byte(1) > 0x8F;
        return follows(1) && follows(2) && follows(3) && !tooLong && !tooLarge ? 4 : 0;
    }
    return 0;
}

} // namespace doorloom
