#pragma once

#include "base/result.h"

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace doorloom {

// A JSON value that knows its line. Objects keep their order.
struct Json {
    struct Null {};
    using Array = std::vector<Json>;
    using Object = std::vector<std::pair<std::string, Json>>;

    std::variant<Null, bool, double, std::string, Array, Object> value;
    std::uint32_t line = 0; // of its first character

    const Json* find(std::string_view key) const; // null when it is no object or has no such key
};

inline constexpr std::size_t mostJsonBytes = 64u * 1024 * 1024;
inline constexpr int mostJsonDepth = 64;

// Reads a whole text.   In: the file's name, for messages
// Errors: bad syntax, bad UTF-8, a key twice in one object, deeper than mostJsonDepth, larger than mostJsonBytes
// Cost:   linear; nothing is kept of the text
Result<Json> parseJson(std::string_view text, const std::string& name);

// A string with its quotes and escapes; a number in the fewest digits that read back the same.
std::string quoted(std::string_view text);
std::string numberText(double number);

} // namespace doorloom
