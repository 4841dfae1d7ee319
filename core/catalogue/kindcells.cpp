#include "catalogue/kindcells.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <vector>

namespace doorloom {

namespace {

using Sort = FormType::Sort;

std::string trimmed(const std::string& words)
{
    const std::size_t first = words.find_first_not_of(" \t\r\n");
    return first == std::string::npos ? std::string()
                                      : words.substr(first, words.find_last_not_of(" \t\r\n") - first + 1);
}

std::vector<std::string> listedIn(const std::string& cell)
{
    std::vector<std::string> listed;
    for (std::size_t at = 0; at <= cell.size();) {
        const std::size_t comma = std::min(cell.find(',', at), cell.size());
        if (std::string one = trimmed(cell.substr(at, comma - at)); !one.empty())
            listed.push_back(std::move(one));
        at = comma + 1;
    }
    return listed;
}

std::optional<double> numberIn(const std::string& cell)
{
    double number = 0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), number);
    const bool isNumber = error == std::errc() && end == cell.data() + cell.size() && std::isfinite(number);
    return isNumber ? std::optional(number) : std::nullopt;
}

std::string pairAsJson(const std::string& pair)
{
    const std::size_t equals = std::min(pair.find('='), pair.size());
    const std::string value = equals == pair.size() ? std::string() : pair.substr(equals + 1);
    return quoted(trimmed(pair.substr(0, equals))) + ":" + quoted(trimmed(value));
}

template <class AsJson> std::string joined(const std::string& cell, AsJson asJson)
{
    std::string text;
    for (const std::string& each : listedIn(cell))
        text += (text.empty() ? "" : ",") + asJson(each);
    return text;
}

} // namespace

std::string cellOf(const Json& value)
{
    if (const auto* text = std::get_if<std::string>(&value.value))
        return *text;
    if (const auto* number = std::get_if<double>(&value.value))
        return numberText(*number);
    if (const auto* truth = std::get_if<bool>(&value.value))
        return *truth ? "yes" : "no";
    std::string cell;
    if (const auto* items = std::get_if<Json::Array>(&value.value))
        for (const Json& item : *items)
            cell += (cell.empty() ? "" : ", ") + cellOf(item);
    if (const auto* members = std::get_if<Json::Object>(&value.value))
        for (const JsonMember& member : *members)
            cell += (cell.empty() ? "" : ", ") + member.key + "=" + cellOf(member.value);
    return cell;
}

std::string cellAsJson(const FormType& type, const std::string& cell)
{
    switch (type.sort) {
    case Sort::Number:
    case Sort::Whole:
    case Sort::NumberOrText:
        return numberIn(cell) ? numberText(*numberIn(cell)) : quoted(cell);
    case Sort::Truth:
        return cell == "yes" ? "true" : cell == "no" ? "false" : quoted(cell);
    case Sort::Pairs:
        return "{" + joined(cell, pairAsJson) + "}";
    case Sort::List:
        return "[" + joined(cell, [](const std::string& each) { return quoted(each); }) + "]";
    default:
        return quoted(cell);
    }
}

} // namespace doorloom
