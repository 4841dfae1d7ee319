#pragma once

#include "base/result.h"
#include "base/text.h"

#include <QString>

// What core says, as the window shows it. The window speaks English; the papers speak their job's languages.
namespace doorloom {

inline constexpr Language windowLanguage = Language::English;

inline QString shown(const std::string& words)
{
    return QString::fromStdString(words);
}
inline QString shown(const Message& message)
{
    return shown(inWords(message, windowLanguage));
}
inline QString shown(const Words& words)
{
    return shown(inWords(words, windowLanguage));
}
inline QString shown(const Text& text)
{
    const std::string_view words = inWords(text, windowLanguage);
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}
inline QString shown(const Problem& problem)
{
    return shown(inWords(problem, windowLanguage));
}

} // namespace doorloom
