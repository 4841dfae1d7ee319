#include "core/schemas.h"

#include "file/jobfile.h"
#include "file/jobshape.h"
#include "file/tablenames.h"
#include "model/job.h"

#include <nlohmann/json.hpp>

#include <cctype>
#include <limits>
#include <typeinfo>

#include <cxxabi.h>

namespace doorloom {
namespace {

using Schema = nlohmann::ordered_json;

// "Terminal", "Setting" …: the struct's own name.
template <class Struct> std::string nameOfType()
{
    char* const demangled = abi::__cxa_demangle(typeid(Struct).name(), nullptr, nullptr, nullptr);
    std::string name = demangled;
    std::free(demangled);
    return name.substr(name.rfind(':') + 1);
}

class Schemas {
public:
    // Where each struct is said once.
    Schema definitions = Schema::object();

    template <class Value> Schema of() { return of(static_cast<const Value*>(nullptr)); }

    // An object with the members of these structs and no others.
    template <class... Structs> Schema objectOf(Schema others = Schema::object())
    {
        Schema needed = Schema::array();
        for (const auto& [key, schema] : others.items())
            needed.push_back(key);
        Schema members = std::move(others);
        (addMembers<Structs>(members, needed), ...);
        Schema object = {{"type", "object"}};
        if (!needed.empty())
            object["required"] = needed;
        object["properties"] = members;
        object["additionalProperties"] = false;
        return object;
    }

private:
    // ---- Plain values

    Schema of(const std::string*) { return {{"type", "string"}}; }
    Schema of(const bool*) { return {{"type", "boolean"}}; }
    Schema of(const double*) { return {{"type", "number"}}; }
    Schema of(const std::uint32_t*) { return {{"type", "integer"}, {"minimum", 1}, {"exclusiveMaximum", mostNextNumber}}; }
    template <std::signed_integral Whole> Schema of(const Whole*)
    {
        return {{"type", "integer"},
                {"minimum", std::numeric_limits<Whole>::min()},
                {"maximum", std::numeric_limits<Whole>::max()}};
    }
    template <class Thing> Schema of(const Id<Thing>*) { return of<std::uint32_t>(); }
    template <class Unit> Schema of(const Quantity<Unit>*) { return of<double>(); }
    template <class Value> Schema of(const std::optional<Value>*) { return of<Value>(); }
    template <class Value> Schema of(const std::vector<Value>*)
    {
        return {{"type", "array"}, {"items", of<Value>()}, {"maxItems", mostListEntries}};
    }
    template <class Enum>
    requires std::is_enum_v<Enum>
    Schema of(const Enum*)
    {
        return wordOf(wordsOf<Enum>);
    }
    template <class Struct>
    requires(std::tuple_size_v<std::remove_const_t<decltype(shapeOf<Struct>)>> > 0)
    Schema of(const Struct*)
    {
        return referTo(nameOfType<Struct>(), [&] { return objectOf<Struct>(); });
    }

    template <std::size_t count> static Schema wordOf(const std::array<std::string_view, count>& words)
    {
        Schema list = Schema::array();
        for (const std::string_view word : words)
            list.push_back(std::string(word));
        return {{"enum", list}};
    }

    // Made once; it may refer to itself.
    template <class Make> Schema referTo(const std::string& name, Make make)
    {
        if (!definitions.contains(name)) {
            definitions[name] = nullptr;
            Schema made = make();
            definitions[name] = std::move(made);
        }
        return {{"$ref", "#/$defs/" + name}};
    }

    template <class Struct> void addMembers(Schema& members, Schema& needed)
    {
        const auto add = [&](const auto& member) {
            using Value = std::remove_cvref_t<decltype(std::declval<Struct>().*member.at)>;
            members[std::string(member.name)] = of<Value>();
            if (member.needed)
                needed.push_back(std::string(member.name));
        };
        std::apply([&](const auto&... each) { (add(each), ...); }, shapeOf<Struct>);
    }

    // ---- What is no plain object: beside each Form in kindshape.h and jobshape.h

    template <class Value> Schema mapTo(const std::string& keys = {})
    {
        Schema map = {{"type", "object"}};
        if (!keys.empty())
            map["propertyNames"] = {{"pattern", keys}};
        map["additionalProperties"] = of<Value>();
        map["maxProperties"] = mostListEntries;
        return map;
    }
    template <class First, class Second> Schema pairOf()
    {
        return {{"type", "array"}, {"prefixItems", {of<First>(), of<Second>()}}, {"minItems", 2}, {"maxItems", 2}};
    }

    static constexpr auto jumperName = "^[^.]+\\.[\\s\\S]"; // OPTION.JUMPER

    Schema of(const Condition*) { return mapTo<Key>(jumperName); }
    Schema of(const std::vector<std::pair<Key, Key>>*) { return mapTo<Key>(); }
    Schema of(const SettingValue*) { return {{"type", {"number", "string"}}}; }
    Schema of(const std::vector<Choice>*) { return mapTo<Key>(jumperName); }
    Schema of(const std::vector<SettingChoice>*) { return mapTo<SettingValue>(); }
    Schema of(const std::vector<Binding>*) { return mapTo<OperatorId>(); }
    Schema of(const Thrown*) { return pairOf<OperatorId, Key>(); }
    Schema of(const Point*) { return pairOf<std::int32_t, std::int32_t>(); }
    Schema of(const RowPair*) { return pairOf<std::uint32_t, std::uint32_t>(); }
    Schema of(const End*)
    {
        const Schema splice = {{"type", "array"}, {"prefixItems", {of<SpliceId>()}}, {"minItems", 1}, {"maxItems", 1}};
        return {{"anyOf", {{{"enum", {"spare", "insulated"}}}, splice, pairOf<DeviceId, Key>()}}};
    }
    Schema of(const Placed*)
    {
        const Schema device = objectOf<>({{"device", of<DeviceId>()}}), splice = objectOf<>({{"splice", of<SpliceId>()}});
        return {{"anyOf", {device, splice}}};
    }
    Schema of(const DoorRow*)
    {
        return referTo("DoorRow", [&] { return Schema{{"anyOf", underTables(static_cast<const DoorRow*>(nullptr))}}; });
    }
    template <class... Rows> Schema underTables(const std::variant<Rows...>*)
    {
        Schema tables = Schema::array();
        (tables.push_back(objectOf<>({{tableName<Rows>(), of<Rows>()}})), ...);
        return tables;
    }
    Schema of(const Promise*)
    {
        return referTo("Promise", [&] { return objectOf<Situation, Promise>(); });
    }
    Schema of(const JobKind*)
    {
        return referTo("JobKind", [&] {
            return objectOf<JobKind>({{"hash", {{"type", "string"}, {"pattern", "^[0-9a-f]{64}$"}}}, {"kind", of<Kind>()}});
        });
    }
    Schema of(const Part*)
    {
        return referTo("Part", [&] {
            Schema branches = Schema::array();
            addBranches(branches, std::make_index_sequence<std::variant_size_v<PartBody>>());
            return Schema{{"type", "object"},
                          {"required", {"type"}},
                          {"properties", {{"type", wordOf(partTypes)}}},
                          {"allOf", branches}};
        });
    }
    template <std::size_t... index> void addBranches(Schema& branches, std::index_sequence<index...>)
    {
        (addBranch<std::variant_alternative_t<index, PartBody>>(branches, std::string(partTypes[index])), ...);
    }
    template <class Body> void addBranch(Schema& branches, const std::string& type)
    {
        const Schema body = referTo(nameOfType<Body>(), [&] { return objectOf<Part, Body>({{"type", {{"const", type}}}}); });
        branches.push_back({{"if", {{"properties", {{"type", {{"const", type}}}}}, {"required", {"type"}}}}, {"then", body}});
    }
};

std::string textOf(const std::string& title, const Schema& content, const Schemas& schemas)
{
    Schema whole = {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", title}};
    whole.update(content);
    whole["$defs"] = schemas.definitions;
    return whole.dump(1) + "\n";
}

} // namespace

std::string kindSchema()
{
    Schemas schemas;
    const Schema kind = schemas.of<Kind>();
    return textOf("A kind of device (core/catalogue/kindjson.h)", kind, schemas);
}

std::string jobFileSchema()
{
    Schemas schemas;
    Schema job = schemas.objectOf<>(
        {{"doorloom", {{"type", "integer"}, {"minimum", 1}, {"maximum", jobFileVersion}}},
         {"nextNumber", {{"type", "integer"}, {"minimum", 1}, {"maximum", mostNextNumber}}}});
    const Job tables;
    forEachTable(tables, [&]<class Row>(const char* name, const Table<Row>&) {
        job["properties"][name] = {{"type", "array"}, {"items", schemas.of<Row>()}};
    });
    return textOf("A job (*.doorjob, core/file/jobfile.h)", job, schemas);
}

} // namespace doorloom
