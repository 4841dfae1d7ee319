#include "model/colours.h"

#include "base/folded.h"

#include <algorithm>
#include <optional>

namespace doorloom {
namespace {

constexpr ColourCode codes[] = {
    {.letters = "BK", .words = {.en = "black", .es = "negro"}},
    {.letters = "BN", .words = {.en = "brown", .es = "marrón"}},
    {.letters = "RD", .words = {.en = "red", .es = "rojo"}},
    {.letters = "OG", .words = {.en = "orange", .es = "naranja"}},
    {.letters = "YE", .words = {.en = "yellow", .es = "amarillo"}},
    {.letters = "GN", .words = {.en = "green", .es = "verde"}},
    {.letters = "BU", .words = {.en = "blue", .es = "azul"}},
    {.letters = "VT", .words = {.en = "violet", .es = "violeta"}},
    {.letters = "GY", .words = {.en = "grey", .es = "gris"}},
    {.letters = "WH", .words = {.en = "white", .es = "blanco"}},
    {.letters = "PK", .words = {.en = "pink", .es = "rosa"}},
    {.letters = "GD", .words = {.en = "gold", .es = "dorado"}},
    {.letters = "TQ", .words = {.en = "turquoise", .es = "turquesa"}},
    {.letters = "SR", .words = {.en = "silver", .es = "plateado"}},
    {.letters = "GNYE", .words = {.en = "green-and-yellow", .es = "verde y amarillo"}},
};

constexpr Text striped = {.en = "{base}, stripe {stripe}", .es = "{base}, raya {stripe}"};
constexpr Text twoColours = {.en = "{base} and {stripe}", .es = "{base} y {stripe}"};

const ColourCode* codeAt(std::string_view letters)
{
    const ColourCode* longest = nullptr;
    for (const ColourCode& code : codes)
        if (letters.starts_with(code.letters) && (!longest || code.letters.size() > longest->letters.size()))
            longest = &code;
    return longest;
}

Message both(Text words, const Message& base, const Message& stripe)
{
    return {words, {{"base", std::vector{base}}, {"stripe", std::vector{stripe}}}};
}

std::string upper(std::string_view letters)
{
    std::string big(letters);
    for (char& letter : big)
        if (letter >= 'a' && letter <= 'z')
            letter = static_cast<char>(letter - 'a' + 'A');
    return big;
}

} // namespace

std::span<const ColourCode> colourCodes()
{
    return codes;
}

Message colourInWords(std::string_view colour)
{
    const std::string letters = upper(colour);
    std::string_view rest = letters;
    std::optional<Message> words;
    Text joint = twoColours;
    while (!rest.empty()) {
        const ColourCode* code = codeAt(rest);
        if (!code)
            return {};
        words = words ? both(joint, *words, code->words) : Message(code->words);
        rest.remove_prefix(code->letters.size());
        joint = rest.starts_with('+') || rest.starts_with('/') ? striped : twoColours;
        if (joint == striped)
            rest.remove_prefix(1);
        if (joint == striped && rest.empty())
            return {};
    }
    return words.value_or(Message{});
}

std::string colourLetters(std::string_view word)
{
    for (const ColourCode& code : codes)
        if (folded(word) == folded(code.words.en) || folded(word) == folded(code.words.es))
            return std::string(code.letters);
    const std::string letters = upper(word);
    return colourInWords(letters) == Message{} ? std::string() : letters;
}

} // namespace doorloom
