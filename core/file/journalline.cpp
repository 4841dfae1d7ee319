#include "file/journalline.h"

#include "base/sha256.h"

#include <fmt/format.h>

#include <charconv>
#include <optional>

namespace doorloom {

namespace {

constexpr std::size_t checksumDigits = 16;
constexpr std::size_t mostHeadBytes = 20 + 1 + 20 + 1 + checksumDigits + 1;

std::string checksumOf(std::uint64_t number, std::string_view json)
{
    return sha256(fmt::format("{} {} {}", number, json.size(), json)).substr(0, checksumDigits);
}

// A whole number and the blank after it, taken from the front.
std::optional<std::uint64_t> takeNumber(std::string_view& text)
{
    std::uint64_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || end == text.data() + text.size() || *end != ' ')
        return std::nullopt;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()) + 1);
    return number;
}

} // namespace

JournalLine lineOf(std::string_view line)
{
    constexpr JournalLine damaged;
    JournalLine cutShort;
    if (line.ends_with('\n'))
        line.remove_suffix(1);
    else
        cutShort.state = JournalLine::State::CutShort;
    const std::size_t bytes = line.size();
    const auto number = takeNumber(line);
    const auto length = number ? takeNumber(line) : std::nullopt;
    if (!length || line.size() <= checksumDigits || line[checksumDigits] != ' ')
        return bytes < mostHeadBytes ? cutShort : damaged;
    const std::string_view checksum = line.substr(0, checksumDigits), json = line.substr(checksumDigits + 1);
    if (json.size() < *length)
        return cutShort;
    if (json.size() > *length || checksum != checksumOf(*number, json))
        return damaged;
    return {JournalLine::State::Whole, *number, json};
}

std::string lineWith(std::uint64_t number, std::string_view json)
{
    return fmt::format("{} {} {} {}\n", number, json.size(), checksumOf(number, json), json);
}

} // namespace doorloom
