#include "edit/linewords.h"

#include "base/folded.h"
#include "edit/rownames.h"

#include <algorithm>

namespace doorloom {

namespace {

constexpr std::size_t mostListed = 12;

bool isBlank(char letter)
{
    return letter == ' ' || letter == '\t' || letter == '\n' || letter == '\r';
}

bool isAlike(std::string_view offer, std::string_view word)
{
    return !word.empty() && folded(offer).starts_with(folded(word).substr(0, 1));
}

// Those that begin like the word first, then as they come.
std::string listed(std::vector<Completion> offers, std::string_view word)
{
    std::stable_partition(offers.begin(), offers.end(),
                          [&](const Completion& offer) { return isAlike(offer.text, word); });
    std::string joined;
    for (std::size_t at = 0; at < offers.size() && at < mostListed; ++at)
        joined += (joined.empty() ? "" : ", ") + offers[at].text;
    return offers.size() > mostListed ? joined + " …" : joined;
}

Problem with(Text what, std::vector<Completion> offers, std::string_view word, const Words& wanted)
{
    const bool isEmpty = offers.empty();
    const Gaps gaps = {
        {"word", std::string(word)}, {"wanted", wanted}, {"list", listed(std::move(offers), word)}};
    return problemAt({}, what,
                     isEmpty
                         ? Text{.en = "There is none to name here.", .es = "Aquí no hay ninguno que nombrar."}
                         : Text{.en = "Use one of: {list}.", .es = "Use uno de: {list}."},
                     gaps);
}

} // namespace

std::vector<LineWord> wordsOfLine(std::string_view line)
{
    std::vector<LineWord> words;
    std::size_t at = 0;
    while (at < line.size()) {
        if (isBlank(line[at])) {
            ++at;
            continue;
        }
        LineWord word{.text = {}, .begin = at, .isQuoted = line[at] == '"'};
        if (word.isQuoted)
            ++at;
        while (at < line.size() && (word.isQuoted ? line[at] != '"' : !isBlank(line[at])))
            word.text += line[at++];
        if (word.isQuoted)
            ++at;
        words.push_back(std::move(word));
    }
    return words;
}

bool Offers::wants(const std::string& text) const
{
    return begun_.empty() || folded(text).starts_with(begun_);
}

void Offers::add(const std::string& text, Message words)
{
    const auto isSame = [&](const Completion& each) { return each.text == text; };
    if (!isFull() && wants(text) && std::none_of(list_.begin(), list_.end(), isSame))
        list_.push_back({text, std::move(words)});
}

LineWords::LineWords(std::vector<LineWord> words, std::string_view begun)
    : words_(std::move(words)), begun_(folded(begun))
{
}

const LineWord* LineWords::peek(std::size_t ahead) const
{
    return at_ + ahead < words_.size() ? &words_[at_ + ahead] : nullptr;
}

const LineWord* LineWords::take(const Words& wanted, const Offering& offering)
{
    if (const LineWord* word = maybe(offering))
        return word;
    if (problem_)
        return nullptr;
    Offers offers;
    offering(offers);
    return refuse(with({.en = "The line ends where {wanted} should follow.",
                        .es = "La línea termina donde debería seguir {wanted}."},
                       offers.list(), {}, wanted));
}

const LineWord* LineWords::maybe(const Offering& offering)
{
    if (problem_)
        return nullptr;
    if (at_ < words_.size())
        return &words_[at_++];
    Offers offers(begun_);
    offering(offers);
    offered_.insert(offered_.end(), offers.list().begin(), offers.list().end());
    return nullptr;
}

bool LineWords::ended()
{
    if (problem_)
        return false;
    if (at_ >= words_.size())
        return true;
    refuse(problemAt(
        {},
        {.en = "'{word}' stands behind the end of what was understood.",
         .es = "'{word}' queda detrás de lo que se entendió."},
        {.en = "Take it away, or begin another line with it.", .es = "Quítelo, o empiece otra línea con él."},
        {{"word", words_[at_].text}}));
    return false;
}

std::nullptr_t LineWords::refuse(const LineWord& word, const Words& wanted, const Offering& offering)
{
    Offers offers;
    offering(offers);
    return refuse(with({.en = "'{word}' is not {wanted}.", .es = "'{word}' no es {wanted}."}, offers.list(),
                       word.text, wanted));
}

std::nullptr_t LineWords::refuse(Problem problem)
{
    if (!problem_)
        problem_ = std::move(problem);
    return nullptr;
}

} // namespace doorloom
