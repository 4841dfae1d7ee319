#include "catalogue/kindproblems.h"

#include "base/json.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr Text emptyKey = {.en = "The key is empty.", .es = "La clave está vacía."};
constexpr Text giveKey = {.en = "Give it a short name of its own.", .es = "Póngale un nombre corto propio."};
constexpr Text badKey = {.en = "'{key}' cannot be a key.", .es = "'{key}' no puede ser una clave."};
constexpr Text howKeys = {.en = "Keys have no blanks and no ':', and do not begin with '.'; those of options "
                                "and jumpers have no '.' at all.",
                          .es = "Las claves no llevan espacios ni ':', ni empiezan con '.'; las de opciones "
                                "y puentes no llevan ningún '.'."};
constexpr Text twice = {.en = "'{name}' is used twice.", .es = "'{name}' se usa dos veces."};
constexpr Text useOnce = {.en = "Give each its own.", .es = "Dé a cada uno el suyo."};
constexpr Text notThere = {.en = "'{key}' is not there.", .es = "'{key}' no existe."};
constexpr Text oneOf = {.en = "Use one of: {known}.", .es = "Use uno de: {known}."};
constexpr Text noneThere = {.en = "There are none to choose from: add it, or take this out.",
                            .es = "No hay ninguno para elegir: añádalo o quite esto."};
constexpr Text tooFew = {.en = "This list has fewer than {least} entries.",
                         .es = "Esta lista tiene menos de {least} entradas."};
constexpr Text listMore = {.en = "List {least} or more.", .es = "Ponga {least} o más."};
constexpr Text noWords = {.en = "The words in English are missing.", .es = "Faltan las palabras en inglés."};
constexpr Text writeWords = {.en = "Write what people call it, in English and Spanish.",
                             .es = "Escriba cómo se llama, en inglés y español."};
constexpr Text sameNode = {.en = "Both ends are on '{key}'.", .es = "Los dos extremos están en '{key}'."};
constexpr Text useTwoNodes = {.en = "Put them on two different nodes.",
                              .es = "Póngalos en dos nodos distintos."};
constexpr Text tooSmall = {.en = "{number} is too small.", .es = "{number} es demasiado pequeño."};
constexpr Text moreThanZero = {.en = "Write more than 0.", .es = "Escriba más de 0."};
constexpr Text zeroOrMore = {.en = "Write 0 or more.", .es = "Escriba 0 o más."};
constexpr Text wrongOrder = {.en = "'{less}' is {lessNumber}, more than '{more}', which is {moreNumber}.",
                             .es = "'{less}' es {lessNumber}, más que '{more}', que es {moreNumber}."};
constexpr Text correctOne = {.en = "Correct one of the two.", .es = "Corrija uno de los dos."};

std::string numberOrWord(double number)
{
    return std::isfinite(number) ? numberText(number) : fmt::format("{}", number);
}

} // namespace

std::string inList(const std::string& list, std::size_t index)
{
    return fmt::format("{}[{}]", list, index);
}

KindProblems::KindProblems(const Kind& checked)
    : kind(checked), terminalKeys([&] {
          Keys keys;
          for (const Terminal* terminal : terminalsOf(checked))
              keys.push_back(terminal->key);
          return keys;
      }())
{
}

void KindProblems::say(const std::string& where, Message what, Message remedy)
{
    found.push_back({std::move(what), where, std::move(remedy)});
}

void KindProblems::key(const std::string& where, const Key& key, Dots dots)
{
    const auto isBad = [&](char c) {
        return (c >= 0 && c <= ' ') || c == 127 || c == ':' || (c == '.' && dots == Dots::Refused);
    };
    if (key.empty())
        say(where, emptyKey, giveKey);
    else if (key[0] == '.' || std::any_of(key.begin(), key.end(), isBad))
        say(where, {badKey, {{"key", key}}}, howKeys);
}

void KindProblems::unique(const std::string& where, const std::string& name, std::set<std::string>& seen)
{
    if (!seen.insert(name).second)
        say(where, {twice, {{"name", name}}}, useOnce);
}

void KindProblems::atLeast(const std::string& where, std::size_t count, std::size_t least)
{
    if (count < least)
        say(where, {tooFew, {{"least", std::to_string(least)}}},
            {listMore, {{"least", std::to_string(least)}}});
}

void KindProblems::notKnown(const std::string& where, const Key& key, const Keys& all)
{
    say(where, {notThere, {{"key", key}}},
        all.empty() ? Message(noneThere)
                    : Message(oneOf, {{"known", fmt::format("{}", fmt::join(all, ", "))}}));
}

void KindProblems::node(const std::string& where, const Key& key)
{
    if (key.size() < 2 || key[0] != '.')
        known(where, key, terminalKeys);
}

void KindProblems::twoNodes(const std::string& where, const char* nameA, const Key& a, const char* nameB,
                            const Key& b)
{
    node(where + "." + nameA, a);
    node(where + "." + nameB, b);
    if (a == b)
        say(where + "." + nameB, {sameNode, {{"key", a}}}, useTwoNodes);
}

void KindProblems::throws(const std::string& where, const std::vector<Throw>& throws, std::size_t least)
{
    atLeast(where, throws.size(), least);
    std::set<std::string> seen;
    for (std::size_t i = 0; i < throws.size(); ++i) {
        key(inList(where, i) + ".key", throws[i].key);
        unique(inList(where, i) + ".key", throws[i].key, seen);
        inEnglish(inList(where, i) + ".words", throws[i].words);
    }
}

void KindProblems::inEnglish(const std::string& where, const Words& words)
{
    if (words.en.empty())
        say(where, noWords, writeWords);
}

void KindProblems::condition(const std::string& where, const Condition& condition)
{
    std::set<std::string> seen;
    for (const auto& [option, jumper, value] : condition) {
        const std::string name = option + "." + jumper, at = where + "." + name;
        unique(at, name, seen);
        const Option* its = known(at, option, kind.options) ? findOption(kind, option) : nullptr;
        if (its && known(at, jumper, its->jumpers))
            known(at, value, its->values);
    }
}

void KindProblems::roleThrow(const std::string& where, const Key& role, const Key& thrown)
{
    if (known(where, role, kind.roles))
        known(where, thrown, findRole(kind, role)->throws);
}

void KindProblems::positive(const std::string& where, double number)
{
    if (!(number > 0))
        say(where, {tooSmall, {{"number", numberOrWord(number)}}}, moreThanZero);
}

void KindProblems::notNegative(const std::string& where, double number)
{
    if (!(number >= 0))
        say(where, {tooSmall, {{"number", numberOrWord(number)}}}, zeroOrMore);
}

void KindProblems::inOrder(const std::string& where, const char* nameLess, double less, const char* nameMore,
                           double more)
{
    if (less <= more)
        return;
    say(where + "." + nameLess,
        {wrongOrder,
         {{"less", nameLess},
          {"lessNumber", numberOrWord(less)},
          {"more", nameMore},
          {"moreNumber", numberOrWord(more)}}},
        correctOne);
}

} // namespace doorloom
