#include "base/text.h"

#include <fmt/args.h>
#include <fmt/format.h>

#include <cassert>

namespace doorloom {

Message::Message(Text words, std::vector<std::pair<std::string, Argument>> with)
    : text(words), arguments(std::move(with))
{
}

bool operator==(const Message& a, const Message& b)
{
    return a.text == b.text && a.arguments == b.arguments;
}

std::string_view inWords(const Text& text, Language language)
{
    return language == Language::Spanish ? text.es : text.en;
}

const std::string& inWords(const Words& words, Language language)
{
    return language == Language::Spanish && !words.es.empty() ? words.es : words.en;
}

namespace {

std::string argumentInWords(const Argument& argument, Language language)
{
    if (const auto* plain = std::get_if<std::string>(&argument))
        return *plain;
    if (const auto* words = std::get_if<Words>(&argument))
        return inWords(*words, language);
    std::string joined;
    for (const Message& part : std::get<std::vector<Message>>(argument))
        joined += (joined.empty() ? "" : ", ") + inWords(part, language);
    return joined;
}

} // namespace

std::string inWords(const Message& message, Language language)
{
    fmt::dynamic_format_arg_store<fmt::format_context> store;
    for (const auto& [name, argument] : message.arguments)
        store.push_back(fmt::arg(name.c_str(), argumentInWords(argument, language)));
    try {
        return fmt::vformat(inWords(message.text, language), store);
    } catch (const fmt::format_error&) {
        assert(!"a message has a gap that no argument fills");
        return std::string(inWords(message.text, language));
    }
}

Message verbatim(std::string words)
{
    return {Text{.en = "{words}", .es = "{words}"}, {{"words", std::move(words)}}};
}

Message verbatim(Words words)
{
    return {Text{.en = "{words}", .es = "{words}"}, {{"words", std::move(words)}}};
}

} // namespace doorloom
