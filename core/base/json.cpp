#include "base/json.h"

#include "base/utf8.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <iterator>

#include <fmt/format.h>

namespace doorloom {

const Json* Json::find(std::string_view key) const
{
    const auto* members = std::get_if<Object>(&value);
    if (!members)
        return nullptr;
    const auto found =
        std::find_if(members->begin(), members->end(), [&](const auto& member) { return member.key == key; });
    return found == members->end() ? nullptr : &found->value;
}

namespace {

bool findPath(const Json& wanted, const Json& in, std::string& path)
{
    if (&wanted == &in)
        return true;
    const std::size_t length = path.size();
    const auto isUnder = [&](const std::string& step, const Json& child) {
        path += step;
        const bool found = findPath(wanted, child, path);
        if (!found)
            path.resize(length);
        return found;
    };
    if (const auto* items = std::get_if<Json::Array>(&in.value))
        for (std::size_t i = 0; i < items->size(); ++i)
            if (isUnder("[" + std::to_string(i) + "]", (*items)[i]))
                return true;
    if (const auto* members = std::get_if<Json::Object>(&in.value))
        for (const auto& [key, child] : *members)
            if (isUnder((path.empty() ? "" : ".") + key, child))
                return true;
    return false;
}

// "[3]" or "key" from the front of a path.
std::string_view takeStep(std::string_view& path)
{
    if (path.starts_with('.'))
        path.remove_prefix(1);
    const std::size_t end = path.starts_with('[') ? path.find(']') + 1 : path.find_first_of(".[");
    const std::string_view step = path.substr(0, end);
    path.remove_prefix(step.size());
    return step;
}

const Json* child(const Json& of, std::string_view step)
{
    const auto* items = std::get_if<Json::Array>(&of.value);
    if (!items || !step.starts_with('['))
        return of.find(step);
    std::size_t index = items->size();
    std::from_chars(step.data() + 1, step.data() + step.size(), index);
    return index < items->size() ? &(*items)[index] : nullptr;
}

} // namespace

std::string pathTo(const Json& inner, const Json& outer)
{
    std::string path;
    findPath(inner, outer, path);
    return path;
}

const Json& valueAt(const Json& outer, std::string_view path)
{
    const Json* reached = &outer;
    while (!path.empty()) {
        const Json* next = child(*reached, takeStep(path));
        if (!next)
            break;
        reached = next;
    }
    return *reached;
}

// ---- Writing

namespace {

bool isPlain(char c)
{
    return c >= ' ' && c <= '~' && c != '"' && c != '\\';
}

void appendControl(std::string& out, char c)
{
    if (c == '\n')
        out += "\\n";
    else if (c == '\t')
        out += "\\t";
    else
        fmt::format_to(std::back_inserter(out), "\\u{:04x}", static_cast<unsigned char>(c));
}

} // namespace

void appendQuoted(std::string& out, std::string_view text)
{
    out += '"';
    while (!text.empty()) {
        const auto special = std::find_if_not(text.begin(), text.end(), isPlain);
        const auto plain = static_cast<std::size_t>(special - text.begin());
        out += text.substr(0, plain);
        text.remove_prefix(plain);
        if (text.empty())
            break;
        const std::size_t length = utf8Length(text);
        if (text[0] == '"' || text[0] == '\\')
            (out += '\\') += text[0];
        else if (text[0] >= 0 && text[0] < ' ')
            appendControl(out, text[0]);
        else if (length == 0)
            out += "\xEF\xBF\xBD"; // U+FFFD
        else
            out += text.substr(0, length);
        text.remove_prefix(std::max<std::size_t>(length, 1));
    }
    out += '"';
}

std::string quoted(std::string_view text)
{
    std::string out;
    appendQuoted(out, text);
    return out;
}

void appendNumber(std::string& out, double number)
{
    assert(std::isfinite(number));
    std::array<char, 32> digits{};
    constexpr double mostWhole =
        1e15; // below it every whole number is exact, and reads better without an exponent
    const bool whole = std::abs(number) < mostWhole && number == std::trunc(number);
    const auto [end, error] =
        whole ? std::to_chars(digits.data(), digits.data() + digits.size(), static_cast<std::int64_t>(number))
              : std::to_chars(digits.data(), digits.data() + digits.size(), number);
    assert(error == std::errc());
    out.append(digits.data(), end);
}

std::string numberText(double number)
{
    std::string out;
    appendNumber(out, number);
    return out;
}

} // namespace doorloom
