#include "base/jsonshape.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace doorloom {

namespace {

constexpr Text otherType = {.en = "Here stands {found}, but it should be {wanted}.",
                            .es = "Aquí está {found}, pero debería ser {wanted}."};
constexpr Text writeWanted = {.en = "Write {wanted}.", .es = "Escriba {wanted}."};
constexpr Text outOfRange = {.en = "The number {number} is out of range.",
                             .es = "El número {number} está fuera de los límites."};
constexpr Text writeWhole = {.en = "Write a whole number from {least} to {most}.",
                             .es = "Escriba un número entero de {least} a {most}."};
constexpr Text noSuchWord = {.en = "The word '{word}' is not known here.",
                             .es = "La palabra '{word}' no se conoce aquí."};
constexpr Text useOneOf = {.en = "Use one of: {words}.", .es = "Use una de: {words}."};
constexpr Text unknownKey = {.en = "The key '{key}' is not known here.",
                             .es = "La clave '{key}' no se conoce aquí."};
constexpr Text takeKeyOut = {.en = "Take it out or correct it; known here: {words}.",
                             .es = "Quítela o corríjala; aquí se conocen: {words}."};
constexpr Text keyMissing = {.en = "The key '{key}' is missing.", .es = "Falta la clave '{key}'."};
constexpr Text addKey = {.en = "Add it to this object.", .es = "Añádala a este objeto."};

constexpr Text tooLong = {.en = "Here stand {found} entries.", .es = "Aquí hay {found} entradas."};
constexpr Text makeShorter = {.en = "Write {most} or fewer.", .es = "Escriba {most} o menos."};
constexpr Text noSuchId = {.en = "The id {number} is out of range.",
                           .es = "El id {number} está fuera de los límites."};
constexpr Text idsAreBelow = {
    .en = "Write a whole number of 1 or more, less than nextNumber, which is {next}.",
    .es = "Escriba un número entero de 1 o más, menor que nextNumber, que es {next}."};

const Words aText{"a text", "un texto"}, aNumber{"a number", "un número"}, aList{"a list", "una lista"},
    anObject{"an object", "un objeto"}, trueOrFalse{"true or false", "true o false"}, nothing{"null", "null"};

const Words& typeOf(const Json& json)
{
    static const std::array<const Words*, 6> names = {&nothing, &trueOrFalse, &aNumber,
                                                      &aText,   &aList,       &anObject};
    return *names[json.value.index()];
}

std::string listed(std::span<const std::string_view> words)
{
    return fmt::format("{}", fmt::join(words, ", "));
}

template <class Value> const Value* valueOrRefuse(JsonReader& reader, const Json& json, const Words& wanted)
{
    const auto* value = std::get_if<Value>(&json.value);
    if (!value)
        reader.refuseType(json, wanted);
    return value;
}

bool isShortEnough(JsonReader& reader, const Json& json, std::size_t entries)
{
    return entries <= mostListEntries ||
           reader.refuse(json, {tooLong, {{"found", std::to_string(entries)}}},
                         {makeShorter, {{"most", std::to_string(mostListEntries)}}});
}

} // namespace

const Json::Object* JsonReader::objectAt(const Json& json)
{
    const auto* members = valueOrRefuse<Json::Object>(*this, json, anObject);
    return members && isShortEnough(*this, json, members->size()) ? members : nullptr;
}

const Json::Array* JsonReader::listAt(const Json& json)
{
    const Json::Array* items = arrayAt(json);
    return items && isShortEnough(*this, json, items->size()) ? items : nullptr;
}

const Json::Array* JsonReader::arrayAt(const Json& json)
{
    return valueOrRefuse<Json::Array>(*this, json, aList);
}
const std::string* JsonReader::textAt(const Json& json)
{
    return valueOrRefuse<std::string>(*this, json, aText);
}

bool JsonReader::numberAt(const Json& json, double& into)
{
    const auto* number = valueOrRefuse<double>(*this, json, aNumber);
    if (number)
        into = *number;
    return number != nullptr;
}

bool JsonReader::wholeAt(const Json& json, double least, double most, double& into)
{
    if (!numberAt(json, into))
        return false;
    if (into >= least && into <= most && into == std::trunc(into))
        return true;
    return refuse(json, {outOfRange, {{"number", numberText(into)}}},
                  {writeWhole, {{"least", numberText(least)}, {"most", numberText(most)}}});
}

std::optional<std::size_t> JsonReader::wordAt(const Json& json, std::span<const std::string_view> words)
{
    const std::string* word = textAt(json);
    if (!word)
        return std::nullopt;
    const auto found = std::ranges::find(words, *word);
    if (found != words.end())
        return static_cast<std::size_t>(found - words.begin());
    refuse(json, {noSuchWord, {{"word", *word}}}, {useOneOf, {{"words", listed(words)}}});
    return std::nullopt;
}

const Json* JsonReader::needed(const Json& object, std::string_view key)
{
    const Json* value = object.find(key);
    if (!value)
        refuse(object, {keyMissing, {{"key", std::string(key)}}}, addKey);
    return value;
}

bool JsonReader::knownKeys(const Json& object, std::span<const std::string_view> known)
{
    const Json::Object* members = objectAt(object);
    if (!members)
        return false;
    const auto unknown = std::ranges::find_if(
        *members, [&](const auto& member) { return std::ranges::find(known, member.key) == known.end(); });
    return unknown == members->end() || refuseKey(unknown->value, unknown->key, known);
}

bool JsonReader::refuseKey(const Json& at, std::string_view key, std::span<const std::string_view> known)
{
    return refuse(at, {unknownKey, {{"key", std::string(key)}}}, {takeKeyOut, {{"words", listed(known)}}});
}

bool JsonReader::refuse(Problem found)
{
    if (!problem)
        problem = std::move(found);
    return false;
}

bool JsonReader::refuse(const Json& at, Message what, Message remedy)
{
    return refuse({std::move(what), where(at), std::move(remedy)});
}

bool JsonReader::refuseType(const Json& at, const Words& wanted)
{
    return refuse(at, {otherType, {{"found", typeOf(at)}, {"wanted", wanted}}},
                  {writeWanted, {{"wanted", wanted}}});
}

std::string JsonReader::pathOf(const Json& at) const
{
    const std::string inner = pathTo(at, root_);
    const std::string_view joint = prefix_.empty() || inner.empty() || inner.starts_with('[') ? "" : ".";
    return fmt::format("{}{}{}", prefix_, joint, inner);
}

std::string JsonReader::where(const Json& at) const
{
    const std::string path = pathOf(at);
    return fmt::format("{}, line {}{}{}", file_, at.line, path.empty() ? "" : ", ", path);
}

bool Form<std::string>::read(JsonReader& reader, const Json& json, std::string& into)
{
    const std::string* text = reader.textAt(json);
    if (text)
        into = *text;
    return text != nullptr;
}

bool Form<bool>::read(JsonReader& reader, const Json& json, bool& into)
{
    const bool* truth = valueOrRefuse<bool>(reader, json, trueOrFalse);
    if (truth)
        into = *truth;
    return truth != nullptr;
}

bool Form<std::uint32_t>::read(JsonReader& reader, const Json& json, std::uint32_t& into)
{
    double number = 0;
    if (!reader.numberAt(json, number))
        return false;
    if (number < 1 || number >= reader.idsBelow || number != std::trunc(number))
        return reader.refuse(json, {noSuchId, {{"number", numberText(number)}}},
                             {idsAreBelow, {{"next", std::to_string(reader.idsBelow)}}});
    into = static_cast<std::uint32_t>(number);
    return true;
}

} // namespace doorloom
