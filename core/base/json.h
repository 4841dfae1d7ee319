#pragma once

#include "base/result.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace doorloom {

struct JsonMember;

// A JSON value that knows its line. Objects keep their order.
struct Json {
    struct Null {};
    using Array = std::vector<Json>;
    using Object = std::vector<JsonMember>; // no pair: clang can't have one of an unfinished type

    std::variant<Null, bool, double, std::string, Array, Object> value;
    std::uint32_t line = 0; // of its first character

    const Json* find(std::string_view key) const; // null when it is no object or has no such key
};

struct JsonMember {
    std::string key;
    Json value;
};

inline constexpr std::size_t mostJsonBytes = 64u * 1024 * 1024;
inline constexpr int mostJsonDepth = 64;
inline constexpr std::size_t mostJsonValues = 4'000'000; // bounds the memory that "[0,0,0 …" can ask for

// Reads a whole text.   In: the file's name, for messages
// Errors: bad syntax, bad UTF-8, a key twice in one object, deeper than mostJsonDepth, more than
// mostJsonBytes or
//         mostJsonValues, each with its line
// Cost:   linear; nothing is kept of the text
Result<Json> parseJson(std::string_view text, const std::string& name);

// "devices[7].from": the way from a value down to one inside it. Empty when they are the same.
std::string pathTo(const Json& inner, const Json& outer);
// The way back: as far along the path as there are values.
const Json& valueAt(const Json& outer, std::string_view path);

// A string with its quotes and escapes; what is not UTF-8 becomes U+FFFD, so that it can be read again.
std::string quoted(std::string_view text);
void appendQuoted(std::string& out, std::string_view text);
// A finite number in the fewest digits that read back the same; zero has no sign.
std::string numberText(double number);
void appendNumber(std::string& out, double number);

} // namespace doorloom
