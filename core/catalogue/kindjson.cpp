#include "catalogue/kindjson.h"

#include "base/sha256.h"
#include "catalogue/kindshape.h"

#include <fmt/format.h>

namespace doorloom {

namespace {

constexpr Text noJumper = {.en = "'{name}' names no jumper.", .es = "'{name}' no nombra ningún puente."};
constexpr Text writeJumper = {.en = "Write OPTION.JUMPER, such as K1.JA.",
                              .es = "Escriba OPCIÓN.PUENTE, como K1.JA."};
constexpr auto typeKey = std::to_array<std::string_view>({"type"});

template <std::size_t... index>
void setAlternative(PartBody& body, std::size_t which, std::index_sequence<index...>)
{
    static_cast<void>(((index == which && (body.emplace<index>(), true)) || ...));
}

} // namespace

bool readJumperName(JsonReader& reader, const Json& json, const std::string& name, Key& option, Key& jumper)
{
    const std::size_t dot = name.find('.');
    if (dot == std::string::npos || dot == 0 || dot + 1 == name.size())
        return reader.refuse(json, {noJumper, {{"name", name}}}, writeJumper);
    option = name.substr(0, dot);
    jumper = name.substr(dot + 1);
    return true;
}

void Form<Condition>::write(JsonWriter& writer, const Condition& condition)
{
    writer.open('{');
    for (const JumperAt& at : condition)
        writer.member(at.option + "." + at.jumper, at.value);
    writer.close('}');
}

bool Form<Condition>::read(JsonReader& reader, const Json& json, Condition& into)
{
    const Json::Object* members = reader.objectAt(json);
    if (!members)
        return false;
    for (const auto& [name, value] : *members) {
        JumperAt& at = into.emplace_back();
        if (!readJumperName(reader, value, name, at.option, at.jumper) || !reader.read(value, at.value))
            return false;
    }
    return true;
}

void Form<std::vector<std::pair<Key, Key>>>::write(JsonWriter& writer,
                                                   const std::vector<std::pair<Key, Key>>& pairs)
{
    writer.open('{');
    for (const auto& [role, thrown] : pairs)
        writer.member(role, thrown);
    writer.close('}');
}

bool Form<std::vector<std::pair<Key, Key>>>::read(JsonReader& reader, const Json& json,
                                                  std::vector<std::pair<Key, Key>>& into)
{
    const Json::Object* members = reader.objectAt(json);
    if (!members)
        return false;
    for (const auto& [role, thrown] : *members)
        if (!reader.read(thrown, into.emplace_back(role, Key()).second))
            return false;
    return true;
}

void Form<SettingValue>::write(JsonWriter& writer, const SettingValue& value)
{
    std::visit([&]<class Value>(const Value& each) { Form<Value>::write(writer, each); }, value);
}

bool Form<SettingValue>::read(JsonReader& reader, const Json& json, SettingValue& into)
{
    if (const auto* number = std::get_if<double>(&json.value))
        into = *number;
    else if (const auto* word = std::get_if<std::string>(&json.value))
        into = *word;
    else
        return reader.refuseType(json, {"a number or a text", "un número o un texto"});
    return true;
}

void Form<Part>::write(JsonWriter& writer, const Part& part)
{
    writer.open('{');
    writer.member("type", std::string(partTypes[part.body.index()]));
    writer.members(part);
    std::visit([&](const auto& body) { writer.members(body); }, part.body);
    writer.close('}');
}

bool Form<Part>::read(JsonReader& reader, const Json& json, Part& into)
{
    const Json* type = reader.objectAt(json) ? reader.needed(json, "type") : nullptr;
    const auto which = type ? reader.wordAt(*type, partTypes) : std::nullopt;
    if (!which)
        return false;
    setAlternative(into.body, *which, std::make_index_sequence<std::variant_size_v<PartBody>>());
    return std::visit([&](auto& body) { return reader.object(json, typeKey, into, body); }, into.body);
}

std::string kindText(const Kind& kind)
{
    JsonWriter writer;
    writer.value(kind);
    return std::move(writer.text);
}

Result<Kind> readKind(const Json& json, const std::string& file, const std::string& path)
{
    JsonReader reader(json, file, path);
    Kind kind;
    if (!reader.read(json, kind))
        return *reader.problem;
    return kind;
}

Result<Kind> readCheckedKind(const Json& json, const std::string& file, const std::string& path)
{
    Result<Kind> kind = readKind(json, file, path);
    if (!kind.ok())
        return kind;
    const std::vector<Problem> found = checkKind(kind.value());
    if (found.empty())
        return kind;
    Problem first = found.front();
    const std::string_view joint = path.empty() || first.where.empty() ? "" : ".";
    first.where =
        fmt::format("{}, line {}, {}{}{}", file, valueAt(json, first.where).line, path, joint, first.where);
    return first;
}

std::string contentHash(const Kind& kind)
{
    return sha256(kindText(kind));
}

} // namespace doorloom
