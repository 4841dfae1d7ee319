#include "edit/typedline.h"

#include "base/folded.h"
#include "edit/linewords.h"

#include <algorithm>

namespace doorloom {

namespace {

bool isInWord(char letter)
{
    return letter != ' ' && letter != ',' && letter != '.' && letter != '(' && letter != ')' && letter != ';';
}

// How well a word is found in a text: 0, a word of it; 1, its beginning; 2, the beginning of a word; 3, after a dash in one.
std::optional<std::size_t> foundIn(const std::string& text, const std::string& word)
{
    std::optional<std::size_t> best;
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
        const bool begins = at == 0 || !isInWord(text[at - 1]);
        const bool afterDash = at > 0 && text[at - 1] == '-';
        const std::size_t end = at + word.size();
        const bool ends = end == text.size() || !isInWord(text[end]);
        if (begins || afterDash)
            best = std::min(best.value_or(4), begins && ends ? std::size_t{0} : at == 0 ? std::size_t{1} : begins ? std::size_t{2} : std::size_t{3});
    }
    return best;
}

// The less the better; nothing when a word is nowhere.
std::optional<std::size_t> rankOf(const Kind& kind, const std::vector<std::string>& words, Language language)
{
    const Language other = language == Language::English ? Language::Spanish : Language::English;
    const std::string texts[] = {folded(inWords(kind.title, language)), folded(kind.name),
                                 folded(inWords(kind.title, other)),    folded(kind.family),
                                 folded(inWords(kind.words, language)), folded(inWords(kind.words, other))};
    std::size_t rank = 0;
    for (const std::string& word : words) {
        std::optional<std::size_t> best;
        for (std::size_t text = 0; text < std::size(texts); ++text)
            if (const auto found = foundIn(texts[text], word))
                best = std::min(best.value_or(1000), 4 * text + *found);
        if (!best)
            return std::nullopt;
        rank += *best;
    }
    return rank;
}

} // namespace

std::vector<const Kind*> matchingKinds(std::span<const Kind> kinds, std::string_view letters,
                                       Language language)
{
    std::vector<std::string> words;
    for (const LineWord& word : wordsOfLine(letters))
        if (!word.text.empty())
            words.push_back(folded(word.text));
    std::vector<std::pair<std::size_t, const Kind*>> found;
    for (const Kind& kind : kinds)
        if (const auto rank = rankOf(kind, words, language))
            found.push_back({*rank, &kind});
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& one, const auto& other) { return one.first < other.first; });
    std::vector<const Kind*> sorted;
    for (const auto& [rank, kind] : found)
        sorted.push_back(kind);
    return sorted;
}

} // namespace doorloom
