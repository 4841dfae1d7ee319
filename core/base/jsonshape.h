#pragma once

#include "base/id.h"
#include "base/json.h"
#include "base/quantity.h"
#include "base/result.h"

#include <algorithm>
#include <array>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>
#include <vector>

// One description of a struct serves reading and writing:
//
//     template <> inline constexpr auto shapeOf<Jumper> = std::tuple(must("key", &Jumper::key),
//                                                                    may("words", &Jumper::words));
//     template <> inline constexpr auto wordsOf<Duty> = std::to_array<std::string_view>({"continuous",
//     "intermittent"});
//
// A `may` member is left out while it stands at its default. A type that is no plain object has a Form of its
// own.
namespace doorloom {

// Of a list or object inside a row: what takes a walk for each entry still ends.
inline constexpr std::size_t mostListEntries = 5'000;

template <class Struct, class Value> struct Member {
    std::string_view name;
    Value Struct::*at;
    bool needed;
};

template <class Struct, class Value>
constexpr Member<Struct, Value> must(std::string_view name, Value Struct::*at)
{
    return {name, at, true};
}

template <class Struct, class Value>
constexpr Member<Struct, Value> may(std::string_view name, Value Struct::*at)
{
    return {name, at, false};
}

template <class Struct> inline constexpr auto shapeOf = std::tuple<>();

// The words of an enum, in the order of its members, which count up from 0.
template <class Enum> inline constexpr auto wordsOf = std::array<std::string_view, 0>();

// Has: static void write(JsonWriter&, const Value&); static bool read(JsonReader&, const Json&, Value&)
template <class Value> struct Form;

// Compact JSON, appended to a text. Commas look after themselves.
class JsonWriter {
public:
    std::string text;

    template <class Value> void value(const Value& value)
    {
        comma();
        Form<Value>::write(*this, value);
    }

    template <class Value> void member(std::string_view name, const Value& value)
    {
        key(name);
        Form<Value>::write(*this, value);
    }

    // The members that a shape lists.
    template <class Struct> void members(const Struct& from)
    {
        static const Struct blank{};
        std::apply([&](const auto&... each) { (memberUnlessBlank(each, from, blank), ...); },
                   shapeOf<Struct>);
    }

    void open(char bracket)
    {
        comma();
        text += bracket;
    }
    void close(char bracket) { text += bracket; }
    void key(std::string_view name)
    {
        comma();
        appendQuoted(text, name);
        text += ':';
    }

private:
    void comma()
    {
        if (!text.empty() && std::string_view("{[:,\n").find(text.back()) == std::string_view::npos)
            text += ',';
    }

    template <class Struct, class Value>
    void memberUnlessBlank(const Member<Struct, Value>& which, const Struct& from, const Struct& blank)
    {
        if (which.needed || !(from.*which.at == blank.*which.at))
            member(which.name, from.*which.at);
    }
};

// Reads values out of a tree and keeps the first problem, with file, line and path. Every function that reads
// returns false once there is a problem.
class JsonReader {
public:
    // In: prefix: the path of the root itself, when it is part of a larger file
    JsonReader(const Json& root, std::string file, std::string prefix = {})
        : root_(root), file_(std::move(file)), prefix_(std::move(prefix))
    {
    }

    template <class Value> bool read(const Json& json, Value& into)
    {
        return Form<Value>::read(*this, json, into);
    }

    // An object whose keys are members of any of these structs, or among those that the caller reads itself.
    template <class... Structs>
    bool object(const Json& json, std::span<const std::string_view> readElsewhere, Structs&... into)
    {
        const Json::Object* members = objectAt(json);
        if (!members)
            return false;
        for (const auto& [key, value] : *members) {
            const Found found = firstOf({memberInto(key, value, into)...});
            if (found == Found::Broken)
                return false;
            if (found == Found::No && std::ranges::find(readElsewhere, key) == readElsewhere.end())
                return refuseKey(value, key, known<Structs...>(readElsewhere));
        }
        return (nothingMissing(json, into) && ...);
    }

    const Json::Object* objectAt(const Json& json); // null, with a problem, when it is none
    const Json::Array* arrayAt(const Json& json);
    const Json::Array* listAt(const Json& json); // of mostListEntries at the most, as an object is
    const std::string* textAt(const Json& json);
    bool numberAt(const Json& json, double& into);
    bool wholeAt(const Json& json, double least, double most, double& into);
    std::optional<std::size_t> wordAt(const Json& json, std::span<const std::string_view> words);
    const Json* needed(const Json& object, std::string_view key);
    bool knownKeys(const Json& object, std::span<const std::string_view> known);

    bool refuse(Problem found);
    bool refuse(const Json& at, Message what, Message remedy);
    bool refuseType(const Json& at, const Words& wanted); // "a text"
    std::string where(const Json& at) const;              // "cabinet.doorjob, line 214, conductors[7].to"
    std::string pathOf(const Json& at) const;             // "conductors[7].to"
    const std::string& file() const { return file_; }

    std::optional<Problem> problem;

    std::uint32_t idsBelow = 1; // ids are less than the job's counter

private:
    enum class Found { No, Read, Broken };

    static Found firstOf(std::initializer_list<Found> found)
    {
        const auto hit =
            std::find_if(found.begin(), found.end(), [](Found each) { return each != Found::No; });
        return hit == found.end() ? Found::No : *hit;
    }

    template <class Struct> Found memberInto(std::string_view key, const Json& value, Struct& into)
    {
        Found found = Found::No;
        const auto tryOne = [&](const auto& which) {
            if (which.name != key)
                return false;
            found = read(value, into.*which.at) ? Found::Read : Found::Broken;
            return true;
        };
        std::apply([&](const auto&... each) { static_cast<void>((tryOne(each) || ...)); }, shapeOf<Struct>);
        return found;
    }

    template <class Struct> bool nothingMissing(const Json& json, const Struct&)
    {
        return std::apply(
            [&](const auto&... each) { return ((!each.needed || needed(json, each.name)) && ...); },
            shapeOf<Struct>);
    }

    template <class... Structs>
    static std::vector<std::string_view> known(std::span<const std::string_view> readElsewhere)
    {
        std::vector<std::string_view> names(readElsewhere.begin(), readElsewhere.end());
        const auto add = [&](const auto&... each) { (names.push_back(each.name), ...); };
        (std::apply(add, shapeOf<Structs>), ...);
        return names;
    }

    bool refuseKey(const Json& at, std::string_view key, std::span<const std::string_view> known);

    const Json& root_;
    std::string file_, prefix_;
};

// ---- Forms of plain values

template <> struct Form<std::string> {
    static void write(JsonWriter& writer, const std::string& value) { appendQuoted(writer.text, value); }
    static bool read(JsonReader& reader, const Json& json, std::string& into);
};

template <> struct Form<bool> {
    static void write(JsonWriter& writer, bool value) { writer.text += value ? "true" : "false"; }
    static bool read(JsonReader& reader, const Json& json, bool& into);
};

template <> struct Form<double> {
    static void write(JsonWriter& writer, double value) { appendNumber(writer.text, value); }
    static bool read(JsonReader& reader, const Json& json, double& into)
    {
        return reader.numberAt(json, into);
    }
};

template <std::signed_integral Whole> struct Form<Whole> {
    static void write(JsonWriter& writer, Whole value) { appendNumber(writer.text, value); }
    static bool read(JsonReader& reader, const Json& json, Whole& into)
    {
        double number = 0;
        if (!reader.wholeAt(json, std::numeric_limits<Whole>::min(), std::numeric_limits<Whole>::max(),
                            number))
            return false;
        into = static_cast<Whole>(number);
        return true;
    }
};

// The number of a row, in whatever table.
template <> struct Form<std::uint32_t> {
    static void write(JsonWriter& writer, std::uint32_t value) { appendNumber(writer.text, value); }
    static bool read(JsonReader& reader, const Json& json, std::uint32_t& into);
};

template <class Thing> struct Form<Id<Thing>> {
    static void write(JsonWriter& writer, Id<Thing> id) { appendNumber(writer.text, id.number); }
    static bool read(JsonReader& reader, const Json& json, Id<Thing>& into)
    {
        return reader.read(json, into.number);
    }
};

template <class Unit> struct Form<Quantity<Unit>> {
    static void write(JsonWriter& writer, Quantity<Unit> value) { Form<double>::write(writer, value.value); }
    static bool read(JsonReader& reader, const Json& json, Quantity<Unit>& into)
    {
        return reader.numberAt(json, into.value);
    }
};

template <class Enum>
requires std::is_enum_v<Enum>
struct Form<Enum> {
    static void write(JsonWriter& writer, Enum value)
    {
        appendQuoted(writer.text, wordsOf<Enum>[static_cast<std::size_t>(value)]);
    }
    static bool read(JsonReader& reader, const Json& json, Enum& into)
    {
        const std::optional<std::size_t> word = reader.wordAt(json, wordsOf<Enum>);
        if (word)
            into = static_cast<Enum>(*word);
        return word.has_value();
    }
};

template <class Value> struct Form<std::optional<Value>> {
    static void write(JsonWriter& writer, const std::optional<Value>& value)
    {
        Form<Value>::write(writer, *value);
    }
    static bool read(JsonReader& reader, const Json& json, std::optional<Value>& into)
    {
        return reader.read(json, into.emplace());
    }
};

template <class Value> struct Form<std::vector<Value>> {
    static void write(JsonWriter& writer, const std::vector<Value>& values)
    {
        writer.open('[');
        for (const Value& value : values)
            writer.value(value);
        writer.close(']');
    }
    static bool read(JsonReader& reader, const Json& json, std::vector<Value>& into)
    {
        const Json::Array* items = reader.listAt(json);
        if (!items)
            return false;
        into.reserve(items->size());
        for (const Json& item : *items)
            if (!reader.read(item, into.emplace_back()))
                return false;
        return true;
    }
};

template <class Struct>
requires(std::tuple_size_v<std::remove_const_t<decltype(shapeOf<Struct>)>> > 0) struct Form<Struct> {
    static void write(JsonWriter& writer, const Struct& value)
    {
        writer.open('{');
        writer.members(value);
        writer.close('}');
    }
    static bool read(JsonReader& reader, const Json& json, Struct& into)
    {
        return reader.object(json, {}, into);
    }
};

} // namespace doorloom
