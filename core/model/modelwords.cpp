#include "model/modelwords.h"

#include <cassert>

namespace doorloom {
namespace {

constexpr Text failModes[] = {
    {.en = "fail-safe: locked only while powered, unlocks without power",
     .es = "fail-safe: bloqueada solo con corriente, libre sin ella"},
    {.en = "fail-secure: unlocked only while powered, stays locked without power",
     .es = "fail-secure: libre solo con corriente, bloqueada sin ella"},
    {.en = "stays put: keeps its state without power", .es = "se queda: conserva su estado sin corriente"},
};
constexpr Text standings[] = {
    {.en = "new", .es = "nuevo"},
    {.en = "existing", .es = "existente"},
    {.en = "moved", .es = "trasladado"},
    {.en = "by others", .es = "de otros"},
    {.en = "leave alone", .es = "no tocar"},
};
constexpr Text mountings[] = {
    {.en = "on the frame", .es = "en el marco"},    {.en = "on the leaf", .es = "en la hoja"},
    {.en = "on the wall", .es = "en la pared"},     {.en = "at the ceiling", .es = "en el techo"},
    {.en = "in a cabinet", .es = "en un gabinete"}, {.en = "elsewhere", .es = "en otra parte"},
};
constexpr Text egresses[] = {
    {.en = "by hand, whatever the lock does", .es = "a mano, haga lo que haga la cerradura"},
    {.en = "only by electricity", .es = "solo por electricidad"},
    {.en = "delayed inside the lock", .es = "con retardo dentro de la cerradura"},
};
constexpr Text audiences[] = {{.en = "public", .es = "público"}, {.en = "staff", .es = "personal"}};
constexpr Text sides[] = {{.en = "inside", .es = "dentro"},
                          {.en = "outside", .es = "fuera"},
                          {.en = "both sides", .es = "ambos lados"}};
constexpr Text promises[] = {
    {.en = "no promise", .es = "sin promesa"},
    {.en = "locked", .es = "bloqueada"},
    {.en = "free", .es = "libre"},
    {.en = "free but latched", .es = "libre pero con pestillo"},
    {.en = "may start", .es = "puede arrancar"},
    {.en = "must not start", .es = "no debe arrancar"},
};

template <std::size_t count, class Enum> const Text& wordIn(const Text (&words)[count], Enum value)
{
    const auto place = static_cast<std::size_t>(value);
    assert(place < count && "every value of the enum has its words");
    return words[place];
}

} // namespace

const Text& wordsOf(FailMode mode)
{
    return wordIn(failModes, mode);
}
const Text& wordsOf(Standing standing)
{
    return wordIn(standings, standing);
}
const Text& wordsOf(Mounting mounting)
{
    return wordIn(mountings, mounting);
}
const Text& wordsOf(Egress egress)
{
    return wordIn(egresses, egress);
}
const Text& wordsOf(Audience audience)
{
    return wordIn(audiences, audience);
}
const Text& wordsOf(Side side)
{
    return wordIn(sides, side);
}
const Text& wordsOf(Promised promised)
{
    return wordIn(promises, promised);
}

} // namespace doorloom
