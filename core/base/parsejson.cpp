#include "base/json.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cassert>
#include <iterator>
#include <optional>

namespace doorloom {

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
            std::get<Json::Object>(open_.back().value).push_back({std::move(keys_.back()), std::move(value)});
        return true;
    }

    bool oneMore()
    {
        return ++values_ <= mostJsonValues ||
               refuse({tooManyValues, {{"most", std::to_string(mostJsonValues)}}}, noSuchFile);
    }

    bool noKeyTwice(const Json::Object& members)
    {
        std::vector<const JsonMember*> sorted;
        sorted.reserve(members.size());
        for (const auto& member : members)
            sorted.push_back(&member);
        std::sort(sorted.begin(), sorted.end(), [](const auto* a, const auto* b) { return a->key < b->key; });
        const auto twice = std::adjacent_find(sorted.begin(), sorted.end(),
                                              [](const auto* a, const auto* b) { return a->key == b->key; });
        if (twice == sorted.end())
            return true;
        const std::uint32_t line = std::max((*twice)->value.line, (*(twice + 1))->value.line);
        problem =
            Problem{{keyTwice, {{"key", (*twice)->key}}}, fmt::format("{}, line {}", name_, line), keepOne};
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

} // namespace doorloom
