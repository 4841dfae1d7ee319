#include "canvas/look.h"

namespace doorloom {
namespace {

constexpr Look light = {.paper = 0xFFF6F5F1,
                        .frame = 0xFFECEAE2,
                        .frameEdge = 0xFFB7B1A1,
                        .frameInk = 0xFF6B6455,
                        .device = 0xFFFFFFFF,
                        .head = 0xFFE6EBEE,
                        .deviceEdge = 0xFF3F484F,
                        .cellLine = 0xFFD3D9DD,
                        .ink = 0xFF171C20,
                        .softInk = 0xFF56626B,
                        .conductorEdge = 0xFF4A4F53,
                        .jacket = 0xFF8D9499,
                        .jacketInk = 0xFF2D353B,
                        .chosen = 0xFF1767B4,
                        .chosenWash = 0xFFBFDBF5,
                        .lit = 0xFFFFB01F,
                        .litDash = 0xFF7A2E00,
                        .waiting = 0xFFB3261E,
                        .focus = 0xFF0B57D0,
                        .note = 0xFFFFF8DC,
                        .noteEdge = 0xFFD9C98A};

constexpr Look dark = {.paper = 0xFF1B1E21,
                       .frame = 0xFF24282C,
                       .frameEdge = 0xFF5A6269,
                       .frameInk = 0xFFABB3B8,
                       .device = 0xFF2C3136,
                       .head = 0xFF39414A,
                       .deviceEdge = 0xFFAAB4BB,
                       .cellLine = 0xFF434A51,
                       .ink = 0xFFF0F2F3,
                       .softInk = 0xFFB4BEC5,
                       .conductorEdge = 0xFF9CA4A9,
                       .jacket = 0xFF858D93,
                       .jacketInk = 0xFFD9DEE1,
                       .chosen = 0xFF7DBBFA,
                       .chosenWash = 0xFF2F5D8C,
                       .lit = 0xFFFFB01F,
                       .litDash = 0xFF5B2100,
                       .waiting = 0xFFFF8A80,
                       .focus = 0xFF8AB4F8,
                       .note = 0xFF3A3728,
                       .noteEdge = 0xFF7A7148};

struct Dye {
    std::string_view letters;
    QRgb colour;
};

// How the insulations look on a screen: common practice, no source.
constexpr Dye dyes[] = {{"BK", 0xFF202020}, {"BN", 0xFF7D4A1E}, {"RD", 0xFFD0222B}, {"OG", 0xFFF07F13},
                        {"YE", 0xFFF4D211}, {"GN", 0xFF1E9041}, {"BU", 0xFF2463C4}, {"VT", 0xFF7C3FA3},
                        {"GY", 0xFF8E9499}, {"WH", 0xFFFFFFFF}, {"PK", 0xFFF4A3C0}, {"GD", 0xFFC9A227},
                        {"TQ", 0xFF25B5AC}, {"SR", 0xFFC6CBCF}};
constexpr QRgb undyed = 0xFFB4A98F; // bare, or not said

std::optional<QRgb> takeDye(std::string_view& letters)
{
    for (const Dye& dye : dyes)
        if (letters.starts_with(dye.letters)) {
            letters.remove_prefix(dye.letters.size());
            return dye.colour;
        }
    return std::nullopt;
}

} // namespace

const Look& lookOf(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightness() < 128 ? dark : light;
}

Insulation insulationOf(std::string_view letters)
{
    const std::optional<QRgb> base = takeDye(letters);
    if (!base)
        return {undyed, std::nullopt};
    if (letters.starts_with('+') || letters.starts_with('/'))
        letters.remove_prefix(1);
    return {*base, takeDye(letters)};
}

} // namespace doorloom
