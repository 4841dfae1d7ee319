#include "solve/namedposition.h"

#include "base/folded.h"
#include "edit/linenames.h"

#include <set>

namespace doorloom {

namespace {

constexpr Text noDevice = {.en = "There is no device '{tag}'.", .es = "No hay ningún aparato '{tag}'."};
constexpr Text useOneOf = {.en = "Use one of: {names}.", .es = "Use uno de: {names}."};
constexpr Text noTerminal = {.en = "{tag} has no terminal '{name}'.", .es = "{tag} no tiene ningún borne '{name}'."};
constexpr Text severalTerminals = {.en = "{tag} has several terminals that '{name}' could mean.",
                                   .es = "{tag} tiene varios bornes a los que '{name}' podría referirse."};
constexpr Text notATerminal = {.en = "'{text}' is no terminal.", .es = "'{text}' no es un borne."};
constexpr Text asTerminal = {.en = "Write device and terminal, as in 'PS1:+'.", .es = "Escriba aparato y borne, como en 'PS1:+'."};
constexpr Text notAThrow = {.en = "'{text}' is no operator in one of its throws.", .es = "'{text}' no es un órgano en una de sus posiciones."};
constexpr Text asThrow = {.en = "Write it as in 'KS1=on', several with commas between.",
                          .es = "Escríbalo como en 'KS1=on', varios separados por comas."};
constexpr Text noOperator = {.en = "There is no operator '{name}'.", .es = "No hay ningún órgano '{name}'."};
constexpr Text noThrow = {.en = "{name} has no throw '{thrown}'.", .es = "{name} no tiene la posición '{thrown}'."};
constexpr Text twice = {.en = "{name} is given twice.", .es = "{name} se da dos veces."};
constexpr Text giveOnce = {.en = "Give it once.", .es = "Délo una sola vez."};
constexpr Text neverSettles = {.en = "In this position the coils never settle.", .es = "En esta posición las bobinas nunca se estabilizan."};
constexpr Text seeBuzzes = {.en = "Run the check: it names the coil that buzzes.", .es = "Ejecute la revisión: nombra la bobina que vibra."};

Problem problem(std::string_view where, Message what, Message remedy) { return {std::move(what), std::string(where), std::move(remedy)}; }

std::string_view trimmed(std::string_view text)
{
    while (text.starts_with(' '))
        text.remove_prefix(1);
    while (text.ends_with(' '))
        text.remove_suffix(1);
    return text;
}

template <class Rows, class Name> std::string listed(const Rows& rows, Name nameOfOne)
{
    std::string names;
    for (const auto& row : rows)
        names += (names.empty() ? "" : ", ") + nameOfOne(row);
    return names;
}

const Operator* operatorNamed(const Job& job, std::string_view name)
{
    const std::string wanted = folded(name);
    for (const Operator& moved : job.operators)
        if (folded(nameOf(job, moved)) == wanted)
            return &moved;
    return nullptr;
}

std::optional<std::size_t> throwNamed(const Operator& moved, std::string_view name)
{
    const std::string wanted = folded(name);
    for (std::size_t i = 0; i < moved.throws.size(); ++i)
        for (const std::string* word : {&moved.throws[i].key, &moved.throws[i].words.en, &moved.throws[i].words.es})
            if (folded(*word) == wanted)
                return i;
    return std::nullopt;
}

struct Given {
    const Operator* moved;
    std::size_t thrown;
};

Result<Given> givenThrow(const Job& job, std::string_view text)
{
    const auto equals = text.find('=');
    if (equals == std::string_view::npos)
        return problem("--position", {notAThrow, {{"text", std::string(text)}}}, asThrow);
    const std::string_view name = trimmed(text.substr(0, equals)), thrown = trimmed(text.substr(equals + 1));
    const Operator* moved = operatorNamed(job, name);
    if (!moved)
        return problem("--position", {noOperator, {{"name", std::string(name)}}}, {useOneOf, {{"names", listed(job.operators, [&](const Operator& each) { return nameOf(job, each); })}}});
    const auto index = throwNamed(*moved, thrown);
    if (!index)
        return problem("--position", {noThrow, {{"name", nameOf(job, *moved)}, {"thrown", std::string(thrown)}}},
                       {useOneOf, {{"names", listed(moved->throws, [](const Throw& each) { return each.key; })}}});
    return Given{moved, *index};
}

} // namespace

Result<Landing> landingNamed(const Job& job, std::string_view text)
{
    const auto colon = text.find(':');
    if (colon == std::string_view::npos)
        return problem(text, {notATerminal, {{"text", std::string(text)}}}, asTerminal);
    const std::string_view tag = text.substr(0, colon), name = text.substr(colon + 1);
    const auto devices = tagged(job.devices, tag);
    if (devices.size() != 1)
        return problem(text, {noDevice, {{"tag", std::string(tag)}}},
                       {useOneOf, {{"names", listed(job.devices, [](const Device& each) { return each.tag; })}}});
    const Device& device = *devices.front();
    const Kind& kind = *kindOf(job, device);
    const auto terminals = terminalsNamed(kind, name);
    if (terminals.size() != 1)
        return problem(text, {terminals.empty() ? noTerminal : severalTerminals, {{"tag", device.tag}, {"name", std::string(name)}}},
                       {useOneOf, {{"names", listed(terminals.empty() ? terminalsOf(kind) : terminals, [](const Terminal* each) { return each->printed; })}}});
    return Landing{device.id, terminals.front()->key};
}

Result<std::vector<std::pair<MovedIndex, ThrowIndex>>> givenThrows(const Job& job, const Netlist& net, std::string_view text)
{
    std::vector<std::pair<MovedIndex, ThrowIndex>> all;
    std::set<MovedIndex> given;
    while (!trimmed(text).empty()) {
        const auto comma = std::min(text.find(','), text.size());
        const Result<Given> one = givenThrow(job, trimmed(text.substr(0, comma)));
        if (!one.ok())
            return one.problem();
        const MovedIndex index = *net.indexOf(one.value().moved->id);
        if (!given.insert(index).second)
            return problem("--position", {twice, {{"name", nameOf(job, *one.value().moved)}}}, giveOnce);
        all.emplace_back(index, static_cast<ThrowIndex>(one.value().thrown));
        text = comma == text.size() ? std::string_view() : text.substr(comma + 1);
    }
    return all;
}

Result<Position> positionNamed(const Job& job, const Netlist& net, const Questions& ask, std::string_view text)
{
    const auto given = givenThrows(job, net, text);
    if (!given.ok())
        return given.problem();
    Position position = atRest(net.circuit());
    for (const auto& [moved, thrown] : given.value())
        position[moved] = thrown;
    std::optional<Position> settled = ask.settled(position);
    if (!settled)
        return problem("--position", neverSettles, seeBuzzes);
    for (const auto& [moved, thrown] : given.value()) // a coil that was said to be in is in
        (*settled)[moved] = thrown;
    return *settled;
}

} // namespace doorloom
