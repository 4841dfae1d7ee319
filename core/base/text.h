#pragma once

#include <compare>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace doorloom {

enum class Language { English, Spanish };

// Words that stand in the program, every language side by side. Gaps are named: "{tag} is empty."
struct Text {
    std::string_view en;
    std::string_view es;

    friend bool operator==(const Text&, const Text&) = default;
};

// Words that come from data (a kind, a job), every language side by side.
struct Words {
    std::string en;
    std::string es;

    friend auto operator<=>(const Words&, const Words&) = default;
};

struct Message;
// What fills a gap: the same in every language · words of each language · messages, joined with commas.
using Argument = std::variant<std::string, Words, std::vector<Message>>;

// A sentence before it is put into words: nothing compares by the words, and one sheet can hold two languages.
struct Message {
    Text text{};
    std::vector<std::pair<std::string, Argument>> arguments;

    Message() = default;
    Message(Text words) : text(words) {}
    Message(Text words, std::vector<std::pair<std::string, Argument>> with);

    friend bool operator==(const Message&, const Message&);
};

// The words of a message in one language.
// Errors: a gap without an argument is a mistake in this program: an assertion names the text.
std::string inWords(const Message& message, Language language = Language::English);
std::string_view inWords(const Text& text, Language language);
const std::string& inWords(const Words& words, Language language);

// A message that is data alone: the same words in every language.
Message verbatim(std::string words);
Message verbatim(Words words);

} // namespace doorloom
