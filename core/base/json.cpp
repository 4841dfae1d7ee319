#include "base/json.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <iterator>
#include <optional>

namespace doorloom {

const Json* Json::find(std::string_view key) const
{
    const auto* members = std::get_if<Object>(&value);
    if (!members)
        return nullptr;
    const auto found = std::find_if(members->begin(), members->end(),
                                    [&](const auto& member) { return member.first == key; });
    return found == members->end() ? nullptr : &found->second;
}

namespace {

constexpr Text cutShort = {.en = "The text ends before it is complete.",
                           .es = "El texto termina antes de estar completo."};
constexpr Text takeWhole = {.en = "The file was cut short: take a complete copy of it.",
                            .es = "El archivo quedó cortado: use una copia completa."};
constexpr Text notJson = {.en = "This is not JSON: '{token}' cannot stand here.",
                          .es = "Esto no es JSON: '{token}' no puede estar aquí."};
constexpr Text putRight = {.en = "Put this line right, or take an undamaged copy of the file.",
                           .es = "Corrija esta línea o use una copia sin daños del archivo."};
constexpr Text notUtf8 = {.en = "This text is not UTF-8.", .es = "Este texto no es UTF-8."};
constexpr Text saveAsUtf8 = {.en = "Save the file as UTF-8, or take an undamaged copy of it.",
                             .es = "Guarde el archivo como UTF-8 o use una copia sin daños."};
constexpr Text zeroByte = {.en = "A byte of value 0 stands here: this is no text.",
                           .es = "Aquí hay un byte de valor 0: esto no es texto."};
constexpr Text takeUndamaged = {.en = "Take an undamaged copy of the file.",
                                .es = "Use una copia sin daños del archivo."};
constexpr Text numberTooLarge = {.en = "The number {token} is too large.",
                                 .es = "El número {token} es demasiado grande."};
constexpr Text correctNumber = {.en = "Correct the number.", .es = "Corrija el número."};
constexpr Text keyTwice = {.en = "'{key}' stands twice in one object.",
                           .es = "'{key}' está dos veces en un objeto."};
constexpr Text keepOne = {.en = "Keep one of the two.", .es = "Deje uno de los dos."};
constexpr Text tooDeep = {.en = "Lists and objects are nested more than {most} deep.",
                          .es = "Listas y objetos anidados a más de {most} niveles."};
constexpr Text noSuchFile = {.en = "No file of this program is so: take an undamaged copy.",
                             .es = "Ningún archivo de este programa es así: use una copia sin daños."};
constexpr Text tooManyBytes = {.en = "The file has more than {most} MB.",
                               .es = "El archivo tiene más de {most} MB."};
constexpr Text tooManyValues = {.en = "The file has more than {most} values.",
                                .es = "El archivo tiene más de {most} valores."};

bool isBlank(char c)
{
    return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

// Tells how far the parser has read, at the cost of one store a character.
class Watched {
public:
    using value_type = char;
    using reference = const char&;
    using pointer = const char*;
    using difference_type = std::ptrdiff_t;
    using iterator_category = std::input_iterator_tag;

    Watched(const char* at, const char** reached) : at_(at), reached_(reached) {}
    const char& operator*() const { return *at_; }
    Watched& operator++()
    {
        *reached_ = ++at_;
        return *this;
    }
    Watched operator++(int)
    {
        Watched old = *this;
        ++*this;
        return old;
    }
    friend bool operator==(const Watched& a, const Watched& b) { return a.at_ == b.at_; }

private:
    const char* at_;
    const char** reached_;
};

// Knows the line of what was read last. A number is noticed one character after its end, which may be the
// line's end: so the last character that is not blank decides.
class Lines {
public:
    explicit Lines(std::string_view text) : reached(text.data()), start_(text.data()), counted_(text.data())
    {
    }

    std::uint32_t now()
    {
        const char* last = reached;
        while (last > counted_ && isBlank(last[-1]))
            --last;
        line_ += static_cast<std::uint32_t>(std::count(counted_, last, '\n'));
        counted_ = last;
        return line_;
    }

    std::string where(const std::string& name)
    {
        const std::uint32_t line = now();
        const char* lineStart = counted_;
        while (lineStart > start_ && lineStart[-1] != '\n')
            --lineStart;
        return fmt::format("{}, line {}, column {}", name, line,
                           std::max<std::ptrdiff_t>(1, counted_ - lineStart));
    }

    const char* reached;

private:
    const char* start_;
    const char* counted_;
    std::uint32_t line_ = 1;
};

// The end of what the parser choked on, in plain ASCII.
std::string shown(const std::string& token)
{
    constexpr std::size_t most = 24;
    std::string end = token.size() > most ? "…" + token.substr(token.size() - most) : token;
    if (token.size() <= most)
        std::replace_if(
            end.begin(), end.end(), [](char c) { return c < ' ' || c > '~'; }, '?');
    else
        std::replace_if(
            end.begin() + 3, end.end(), [](char c) { return c < ' ' || c > '~'; }, '?');
    return end;
}

// Builds the tree from the parser's events. Nothing recurses.
class TreeBuilder {
public:
    TreeBuilder(std::string_view text, const std::string& name, Lines& lines)
        : lines_(lines), name_(name), size_(text.size())
    {
    }

    bool null() { return scalar(Json::Null{}); }
    bool boolean(bool truth) { return scalar(truth); }
    bool number_integer(std::int64_t number) { return scalar(static_cast<double>(number)); }
    bool number_unsigned(std::uint64_t number) { return scalar(static_cast<double>(number)); }
    bool number_float(double number, const std::string&) { return scalar(number); }
    bool string(std::string& text) { return scalar(std::move(text)); }
    bool binary(std::vector<std::uint8_t>&) { return false; } // JSON has none

    bool key(std::string& key)
    {
        keys_.back() = std::move(key);
        return true;
    }

    bool start_object(std::size_t) { return open(Json::Object{}); }
    bool start_array(std::size_t) { return open(Json::Array{}); }
    bool end_object() { return noKeyTwice(std::get<Json::Object>(open_.back().value)) && close(); }
    bool end_array() { return close(); }

    bool parse_error(std::size_t position, const std::string& token, const nlohmann::json::exception& error)
    {
        if (error.id == 406)
            return refuse({numberTooLarge, {{"token", shown(token)}}}, correctNumber);
        if (position > size_)
            return refuse(cutShort, takeWhole);
        if (std::string_view(error.what()).find("UTF-8") != std::string_view::npos)
            return refuse(notUtf8, saveAsUtf8);
        return refuse({notJson, {{"token", shown(token)}}}, putRight);
    }

    Json root;
    std::optional<Problem> problem;

private:
    bool refuse(Message what, Message remedy)
    {
        problem = Problem{std::move(what), lines_.where(name_), std::move(remedy)};
        return false;
    }

    template <class Value> bool scalar(Value value)
    {
        return oneMore() && put({std::move(value), lines_.now()});
    }

    template <class Container> bool open(Container container)
    {
        if (open_.size() == mostJsonDepth)
            return refuse({tooDeep, {{"most", std::to_string(mostJsonDepth)}}}, noSuchFile);
        if (!oneMore())
            return false;
        open_.push_back({std::move(container), lines_.now()});
        keys_.emplace_back();
        return true;
    }

    bool close()
    {
        Json done = std::move(open_.back());
        open_.pop_back();
        keys_.pop_back();
        return put(std::move(done));
    }

    bool put(Json value)
    {
        if (open_.empty())
            root = std::move(value);
        else if (auto* items = std::get_if<Json::Array>(&open_.back().value))
            items->push_back(std::move(value));
        else
            std::get<Json::Object>(open_.back().value)
                .emplace_back(std::move(keys_.back()), std::move(value));
        return true;
    }

    bool oneMore()
    {
        return ++values_ <= mostJsonValues ||
               refuse({tooManyValues, {{"most", std::to_string(mostJsonValues)}}}, noSuchFile);
    }

    bool noKeyTwice(const Json::Object& members)
    {
        std::vector<const std::pair<std::string, Json>*> sorted;
        sorted.reserve(members.size());
        for (const auto& member : members)
            sorted.push_back(&member);
        std::sort(sorted.begin(), sorted.end(),
                  [](const auto* a, const auto* b) { return a->first < b->first; });
        const auto twice = std::adjacent_find(
            sorted.begin(), sorted.end(), [](const auto* a, const auto* b) { return a->first == b->first; });
        if (twice == sorted.end())
            return true;
        const std::uint32_t line = std::max((*twice)->second.line, (*(twice + 1))->second.line);
        problem =
            Problem{{keyTwice, {{"key", (*twice)->first}}}, fmt::format("{}, line {}", name_, line), keepOne};
        return false;
    }

    Lines& lines_;
    const std::string& name_;
    std::size_t size_;
    std::size_t values_ = 0;
    std::vector<Json> open_;        // the containers not closed yet, outermost first
    std::vector<std::string> keys_; // of each, the key read last
};

} // namespace

Result<Json> parseJson(std::string_view text, const std::string& name)
{
    if (text.size() > mostJsonBytes)
        return Problem{
            {tooManyBytes, {{"most", std::to_string(mostJsonBytes / 1024 / 1024)}}}, name, noSuchFile};
    Lines lines(text);
    // The parser takes a zero byte for the end, and would leave what follows unread.
    if (const std::size_t zero = text.find('\0'); zero != std::string_view::npos) {
        lines.reached = text.data() + zero + 1;
        return Problem{zeroByte, lines.where(name), takeUndamaged};
    }
    TreeBuilder builder(text, name, lines);
    const Watched first(text.data(), &lines.reached), last(text.data() + text.size(), &lines.reached);
    if (!nlohmann::json::sax_parse(first, last, &builder)) {
        assert(builder.problem);
        return *builder.problem;
    }
    return std::move(builder.root);
}

// ---- Paths

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

// How many bytes the UTF-8 character at the front has; 0 when it is none.
std::size_t utf8Length(std::string_view text)
{
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
    };
    const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
    const unsigned first = byte(0);
    if (first < 0x80)
        return 1;
    if (first >= 0xC2 && first <= 0xDF)
        return follows(1) ? 2 : 0;
    if (first >= 0xE0 && first <= 0xEF) {
        const bool tooLong = first == 0xE0 && byte(1) < 0xA0, surrogate = first == 0xED && byte(1) > 0x9F;
        return follows(1) && follows(2) && !tooLong && !surrogate ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        const bool tooLong = first == 0xF0 && byte(1) < 0x90, tooLarge = first == 0xF4 && byte(1) > 0x8F;
        return follows(1) && follows(2) && follows(3) && !tooLong && !tooLarge ? 4 : 0;
    }
    return 0;
}

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
