#include "catalogue/kindform.h"

#include "catalogue/kindshape.h"

#include <type_traits>

namespace doorloom {

namespace {

using Sort = FormType::Sort;

template <class Value> struct Tag {
};

FormType ofSort(Sort sort)
{
    FormType type;
    type.sort = sort;
    return type;
}

template <std::size_t count> FormType wordOf(const std::array<std::string_view, count>& words)
{
    FormType type = ofSort(Sort::Word);
    type.words.assign(words.begin(), words.end());
    return type;
}

FormType typeOf(Tag<std::string>)
{
    return ofSort(Sort::Text);
}
FormType typeOf(Tag<bool>)
{
    return ofSort(Sort::Truth);
}
FormType typeOf(Tag<double>)
{
    return ofSort(Sort::Number);
}
FormType typeOf(Tag<int>)
{
    return ofSort(Sort::Whole);
}
FormType typeOf(Tag<SettingValue>)
{
    return ofSort(Sort::NumberOrText);
}
FormType typeOf(Tag<Condition>)
{
    return ofSort(Sort::Pairs);
}
FormType typeOf(Tag<std::vector<std::pair<Key, Key>>>)
{
    return ofSort(Sort::Pairs);
}
FormType typeOf(Tag<Part>);
template <class Unit> FormType typeOf(Tag<Quantity<Unit>>)
{
    return ofSort(Sort::Number);
}
template <class Value> FormType typeOf(Tag<std::optional<Value>>)
{
    return typeOf(Tag<Value>());
}
template <class Value> FormType typeOf(Tag<std::vector<Value>>);
template <class Enum>
requires std::is_enum_v<Enum> FormType typeOf(Tag<Enum>)
{
    return wordOf(wordsOf<Enum>);
}

template <class Struct> std::vector<FormMember> membersOf();

template <class Struct>
requires(std::tuple_size_v<std::remove_const_t<decltype(shapeOf<Struct>)>> > 0) FormType typeOf(Tag<Struct>)
{
    FormType type = ofSort(Sort::Object);
    type.members = membersOf<Struct>();
    return type;
}

template <class Value> FormType typeOf(Tag<std::vector<Value>>)
{
    FormType type = ofSort(Sort::List);
    type.item = std::make_shared<const FormType>(typeOf(Tag<Value>()));
    return type;
}

template <class Struct> std::vector<FormMember> membersOf()
{
    std::vector<FormMember> members;
    const auto add = [&](const auto& member) {
        using Value = std::remove_cvref_t<decltype(std::declval<Struct>().*member.at)>;
        members.push_back({std::string(member.name), typeOf(Tag<Value>()), member.needed});
    };
    std::apply([&](const auto&... each) { (add(each), ...); }, shapeOf<Struct>);
    return members;
}

// The part's type and its body first: what it is comes before when it is there.
template <class Body> std::vector<FormMember> alternative()
{
    std::vector<FormMember> members{{"type", wordOf(partTypes), true}};
    for (FormMember& each : membersOf<Part>())
        if (each.name == "key")
            members.push_back(std::move(each));
    for (FormMember& each : membersOf<Body>())
        members.push_back(std::move(each));
    for (FormMember& each : membersOf<Part>())
        if (each.name != "key")
            members.push_back(std::move(each));
    return members;
}

template <std::size_t... index>
std::vector<std::vector<FormMember>> alternatives(std::index_sequence<index...>)
{
    return {alternative<std::variant_alternative_t<index, PartBody>>()...};
}

FormType typeOf(Tag<Part>)
{
    FormType type = wordOf(partTypes);
    type.sort = Sort::Part;
    type.alternatives = alternatives(std::make_index_sequence<std::variant_size_v<PartBody>>());
    return type;
}

} // namespace

const FormType& kindForm()
{
    static const FormType form = typeOf(Tag<Kind>());
    return form;
}

} // namespace doorloom
