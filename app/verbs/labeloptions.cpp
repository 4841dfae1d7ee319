#include "verbs/labeloptions.h"

#include <algorithm>
#include <charconv>
#include <optional>

namespace doorloom {
namespace {

constexpr Text noSheet = {.en = "There is no label sheet '{name}'.", .es = "No existe la hoja de etiquetas '{name}'."};
constexpr Text noOrder = {.en = "There is no order '{name}'.", .es = "No existe el orden '{name}'."};
constexpr Text noTagKind = {.en = "There are no tags called '{name}'.", .es = "No hay etiquetas llamadas '{name}'."};
constexpr Text useOne = {.en = "Use one of: {names}.", .es = "Use uno de: {names}."};
constexpr Text noNumber = {.en = "'{name}' is no number of a label.", .es = "'{name}' no es un número de etiqueta."};
constexpr Text countFrom = {.en = "Count the labels from 1, in the order in which they are filled.",
                            .es = "Cuente las etiquetas desde 1, en el orden en que se llenan."};
constexpr Text noMeasure = {.en = "'{name}' is not what the offset page can measure.", .es = "'{name}' no es lo que mide la hoja de ajuste."};
constexpr Text giveMeasure = {.en = "Give both distances in mm, about {true} each: first from the left edge, then from the upper edge.",
                              .es = "Dé ambas distancias en mm, cerca de {true} cada una: primero desde el borde izquierdo, luego desde el superior."};

Problem problemAt(const char* option, Text what, const std::string& name, Message remedy)
{
    return {{what, {{"name", name}}}, option, std::move(remedy)};
}

template <class Number> bool readNumber(std::string_view text, Number& into)
{
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), into);
    return error == std::errc{} && end == text.data() + text.size();
}

// Nothing where the option was not given.
template <class Value, std::size_t count>
Result<std::optional<Value>> valueNamed(const Request& request, const char* option, Text none, const std::pair<std::string_view, Value> (&values)[count])
{
    const std::string* name = request.find(option);
    if (!name)
        return std::optional<Value>();
    std::string names;
    for (const auto& [each, value] : values) {
        if (each == *name)
            return std::optional(value);
        names += (names.empty() ? "" : ", ") + std::string(each);
    }
    return problemAt(option, none, *name, {useOne, {{"names", names}}});
}

Result<LabelSheet> sheetOf(const Request& request, SheetSize page)
{
    const Result<LabelSheets> all = readLabelSheets(DOORLOOM_RESOURCES "/labels");
    if (!all.ok())
        return all.problem();
    const std::string* asked = request.find("--labels");
    const std::string name = asked ? *asked : page == SheetSize::A4 ? "a4-3x8" : "letter-3x10";
    if (const LabelSheet* sheet = all.value().find(name))
        return *sheet;
    return problemAt("--labels", noSheet, name, {useOne, {{"names", all.value().names()}}});
}

// 'LEFT TOP', a line each.
std::optional<Pitch> measuredShift(const std::string& text)
{
    const std::size_t end = text.find('\n');
    Millimetres left, top;
    if (!readNumber(std::string_view(text).substr(0, end), left.value) || !readNumber(std::string_view(text).substr(end + 1), top.value))
        return std::nullopt;
    return shiftFor(left, top);
}

std::string onOneLine(std::string text)
{
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

} // namespace

const VerbOption* labelOptionIn(const Request& request)
{
    for (const VerbOption& option : labelOptions)
        if (request.find(option.name))
            return &option;
    return nullptr;
}

Result<LabelSetup> labelSetupOf(const Request& request, SheetSize page)
{
    static constexpr std::pair<std::string_view, LabelOrder> orders[] = {{"rows", LabelOrder::ByRows}, {"columns", LabelOrder::ByColumns}};
    static constexpr std::pair<std::string_view, TagKind> kinds[] = {
        {"conductors", TagKind::ConductorEnd}, {"cables", TagKind::Cable}, {"devices", TagKind::Device}};
    const auto sheet = sheetOf(request, page);
    const auto order = valueNamed(request, "--by", noOrder, orders);
    const auto only = valueNamed(request, "--only", noTagKind, kinds);
    if (!sheet.ok())
        return sheet.problem();
    if (!order.ok())
        return order.problem();
    if (!only.ok())
        return only.problem();
    LabelSetup setup;
    setup.sheet = sheet.value();
    setup.order = order.value().value_or(LabelOrder::ByRows);
    setup.only = only.value();
    setup.withQr = request.find("--qr") != nullptr;
    setup.offsetPage = request.find("--offset-page") != nullptr;
    if (const std::string* start = request.find("--start"); start && !readNumber(*start, setup.start))
        return problemAt("--start", noNumber, *start, countFrom);
    if (const std::string* measured = request.find("--measured")) {
        const auto shift = measuredShift(*measured);
        if (!shift)
            return problemAt("--measured", noMeasure, onOneLine(*measured),
                             {giveMeasure, {{"true", std::to_string(static_cast<int>(offsetLines.value))}}});
        setup.shift = *shift;
    }
    return setup;
}

} // namespace doorloom
