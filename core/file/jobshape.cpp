#include "file/jobshape.h"

#include "catalogue/kindjson.h"
#include "file/tablenames.h"

#include <cassert>

namespace doorloom {

namespace {

constexpr Text wrongHash = {.en = "The kind '{name}' has the hash {written}, but its content gives {found}.",
                            .es = "El tipo '{name}' lleva la suma {written}, pero su contenido da {found}."};
constexpr Text whichIsRight = {.en = "It was changed in the file: take an undamaged copy, or write {found} "
                                     "as its hash if you meant to change it.",
                               .es = "Se cambió en el archivo: use una copia sin daños, o escriba {found} "
                                     "como suma si el cambio es intencionado."};
constexpr Text otherCount = {.en = "Here stand {found} values, but there should be {wanted}.",
                             .es = "Aquí hay {found} valores, pero deberían ser {wanted}."};
constexpr Text writeExample = {.en = "Write it as in {example}.", .es = "Escríbalo como en {example}."};
constexpr Text noEnd = {.en = "'{word}' is no end of a conductor.",
                        .es = "'{word}' no es un extremo de un conductor."};
constexpr Text writeEnd = {.en = "Write [DEVICE, \"TERMINAL\"], [SPLICE], \"spare\" or \"insulated\".",
                           .es = "Escriba [DISPOSITIVO, \"BORNE\"], [EMPALME], \"spare\" o \"insulated\"."};
constexpr Text deviceOrSplice = {.en = "Here should stand a device or a splice, and one alone.",
                                 .es = "Aquí debería haber un dispositivo o un empalme, y solo uno."};

// [first, second]
template <class First, class Second>
void writePair(JsonWriter& writer, const First& first, const Second& second)
{
    writer.open('[');
    writer.value(first);
    writer.value(second);
    writer.close(']');
}

bool refuseCount(JsonReader& reader, const Json& json, std::size_t found, const char* wanted,
                 const char* example)
{
    return reader.refuse(json, {otherCount, {{"found", std::to_string(found)}, {"wanted", wanted}}},
                         {writeExample, {{"example", example}}});
}

template <class First, class Second>
bool readPair(JsonReader& reader, const Json& json, First& first, Second& second, const char* example)
{
    const Json::Array* items = reader.arrayAt(json);
    if (!items)
        return false;
    if (items->size() != 2)
        return refuseCount(reader, json, items->size(), "2", example);
    return reader.read((*items)[0], first) && reader.read((*items)[1], second);
}

} // namespace

void Form<JobKind>::write(JsonWriter& writer, const JobKind& row)
{
    writer.open('{');
    writer.members(row);
    writer.member("hash", contentHash(row.kind));
    writer.member("kind", row.kind);
    writer.close('}');
}

bool Form<JobKind>::read(JsonReader& reader, const Json& json, JobKind& into)
{
    static constexpr auto others = std::to_array<std::string_view>({"hash", "kind"});
    if (!reader.object(json, others, into))
        return false;
    const Json* hash = reader.needed(json, "hash");
    const Json* content = hash ? reader.needed(json, "kind") : nullptr;
    std::string written;
    if (!content || !reader.read(*hash, written))
        return false;
    Result<Kind> kind = readCheckedKind(*content, reader.file(), "");
    if (!kind.ok()) // the path is looked for only now: it takes a walk
        return reader.refuse(readCheckedKind(*content, reader.file(), reader.pathOf(*content)).problem());
    into.kind = std::move(kind.value());
    const std::string found = contentHash(into.kind);
    return found == written ||
           reader.refuse(*hash,
                         {wrongHash, {{"name", into.kind.name}, {"written", written}, {"found", found}}},
                         {whichIsRight, {{"found", found}}});
}

void Form<std::vector<Choice>>::write(JsonWriter& writer, const std::vector<Choice>& choices)
{
    writer.open('{');
    for (const Choice& choice : choices)
        writer.member(choice.option + "." + choice.jumper, choice.value);
    writer.close('}');
}

bool Form<std::vector<Choice>>::read(JsonReader& reader, const Json& json, std::vector<Choice>& into)
{
    const Json::Object* members = reader.objectAt(json);
    if (!members)
        return false;
    for (const auto& [name, value] : *members) {
        Choice& choice = into.emplace_back();
        if (!readJumperName(reader, value, name, choice.option, choice.jumper) ||
            !reader.read(value, choice.value))
            return false;
    }
    return true;
}

void Form<std::vector<SettingChoice>>::write(JsonWriter& writer, const std::vector<SettingChoice>& choices)
{
    writer.open('{');
    for (const SettingChoice& choice : choices)
        writer.member(choice.setting, choice.value);
    writer.close('}');
}

bool Form<std::vector<SettingChoice>>::read(JsonReader& reader, const Json& json,
                                            std::vector<SettingChoice>& into)
{
    const Json::Object* members = reader.objectAt(json);
    if (!members)
        return false;
    for (const auto& [setting, value] : *members)
        if (!reader.read(value, into.emplace_back(SettingChoice{setting, {}}).value))
            return false;
    return true;
}

void Form<std::vector<Binding>>::write(JsonWriter& writer, const std::vector<Binding>& bindings)
{
    writer.open('{');
    for (const Binding& binding : bindings)
        writer.member(binding.role, binding.moved);
    writer.close('}');
}

bool Form<std::vector<Binding>>::read(JsonReader& reader, const Json& json, std::vector<Binding>& into)
{
    const Json::Object* members = reader.objectAt(json);
    if (!members)
        return false;
    for (const auto& [role, moved] : *members)
        if (!reader.read(moved, into.emplace_back(Binding{role, {}}).moved))
            return false;
    return true;
}

void Form<End>::write(JsonWriter& writer, const End& end)
{
    if (const Landing* landing = std::get_if<Landing>(&end.on)) {
        writePair(writer, landing->device, landing->terminal);
    } else if (const SpliceId* splice = std::get_if<SpliceId>(&end.on)) {
        writer.open('[');
        writer.value(*splice);
        writer.close(']');
    } else {
        assert(end.state == EndState::Spare || end.state == EndState::Insulated);
        writer.text += end.state == EndState::Spare ? "\"spare\"" : "\"insulated\"";
    }
}

namespace {

bool readLanded(JsonReader& reader, const Json& json, const Json::Array& items, End& into)
{
    into.state = EndState::Landed;
    if (items.size() == 1)
        return reader.read(items[0], into.on.emplace<SpliceId>());
    Landing& landing = into.on.emplace<Landing>();
    return readPair(reader, json, landing.device, landing.terminal, "[12, \"K1.C\"]");
}

} // namespace

bool Form<End>::read(JsonReader& reader, const Json& json, End& into)
{
    if (const auto* items = std::get_if<Json::Array>(&json.value))
        return readLanded(reader, json, *items, into);
    const auto* word = std::get_if<std::string>(&json.value);
    if (!word)
        return reader.refuseType(json, {"a list or a word", "una lista o una palabra"});
    if (*word == "spare")
        into.state = EndState::Spare;
    else if (*word == "insulated")
        into.state = EndState::Insulated;
    else
        return reader.refuse(json, {noEnd, {{"word", *word}}}, writeEnd);
    return true;
}

void Form<Thrown>::write(JsonWriter& writer, const Thrown& thrown)
{
    writePair(writer, thrown.moved, thrown.thrown);
}

bool Form<Thrown>::read(JsonReader& reader, const Json& json, Thrown& into)
{
    return readPair(reader, json, into.moved, into.thrown, "[14, \"in\"]");
}

void Form<Promise>::write(JsonWriter& writer, const Promise& promise)
{
    writer.open('{');
    writer.members(promise.situation);
    writer.members(promise);
    writer.close('}');
}

bool Form<Promise>::read(JsonReader& reader, const Json& json, Promise& into)
{
    return reader.object(json, {}, into.situation, into);
}

void Form<Point>::write(JsonWriter& writer, const Point& point)
{
    writePair(writer, point.x, point.y);
}

bool Form<Point>::read(JsonReader& reader, const Json& json, Point& into)
{
    return readPair(reader, json, into.x, into.y, "[150, -40]");
}

void Form<Placed>::write(JsonWriter& writer, const Placed& what)
{
    writer.open('{');
    if (const DeviceId* device = std::get_if<DeviceId>(&what))
        writer.member("device", *device);
    else
        writer.member("splice", std::get<SpliceId>(what));
    writer.close('}');
}

bool Form<Placed>::read(JsonReader& reader, const Json& json, Placed& into)
{
    const Json::Object* members = reader.objectAt(json);
    if (!members)
        return false;
    if (members->size() == 1 && members->front().key == "device")
        return reader.read(members->front().value, into.emplace<DeviceId>());
    if (members->size() == 1 && members->front().key == "splice")
        return reader.read(members->front().value, into.emplace<SpliceId>());
    return reader.refuse(json, deviceOrSplice, {writeExample, {{"example", "{\"device\": 12}"}}});
}

namespace {

template <class Row, class Held> struct IsAmong : std::false_type {
};
template <class Row, class... Rows>
struct IsAmong<Row, std::variant<Rows...>> : std::disjunction<std::is_same<Row, Rows>...> {
};

} // namespace

void Form<DoorRow>::write(JsonWriter& writer, const DoorRow& drawn)
{
    writer.open('{');
    std::visit([&]<class Row>(const Row& row) { writer.member(tableName<Row>(), row); }, drawn);
    writer.close('}');
}

bool Form<DoorRow>::read(JsonReader& reader, const Json& json, DoorRow& into)
{
    return readUnderTable(
        reader, json, []<class Row>() { return IsAmong<Row, DoorRow>(); },
        [&]<class Row>(const Json& row) {
            if constexpr (IsAmong<Row, DoorRow>::value)
                return reader.read(row, into.emplace<Row>());
            else
                return false;
        });
}

void Form<RowPair>::write(JsonWriter& writer, const RowPair& rows)
{
    writePair(writer, rows.first, rows.second);
}

bool Form<RowPair>::read(JsonReader& reader, const Json& json, RowPair& into)
{
    return readPair(reader, json, into.first, into.second, "[12, 57]");
}

} // namespace doorloom
