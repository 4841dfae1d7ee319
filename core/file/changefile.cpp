#include "file/changefile.h"

#include "file/changeshape.h"
#include "file/jobfile.h"
#include "file/jobshape.h"

#include <utility>

namespace doorloom {

namespace {

constexpr Text noTable = {.en = "A job has no table '{table}'.",
                          .es = "Un trabajo no tiene la tabla '{table}'."};
constexpr Text tablesThere = {.en = "Use one of: {tables}.", .es = "Use una de: {tables}."};
constexpr Text oneTable = {.en = "Here should stand one table with its row, but there are {found}.",
                           .es = "Aquí debería haber una tabla con su fila, pero hay {found}."};
constexpr Text writeStep = {.en = "Write it as in {example}.", .es = "Escríbalo como en {example}."};

// Visits each table's name: visit.operator()<Row>(name).
template <class Visit> void forEachTableName(Visit visit)
{
    static const Job tables;
    forEachTable(tables, [&]<class Row>(const char* name, const Table<Row>&) {
        visit.template operator()<Row>(name);
    });
}

template <class Row> const char* tableName()
{
    const char* wanted = nullptr;
    forEachTableName([&]<class Each>(const char* name) {
        if constexpr (std::is_same_v<Each, Row>)
            wanted = name;
    });
    return wanted;
}

std::string tableNames()
{
    std::string names;
    forEachTableName(
        [&]<class>(const char* name) { names += (names.empty() ? "" : ", ") + std::string(name); });
    return names;
}

template <class Row> bool readPut(JsonReader& reader, const Json& json, Change& into)
{
    Put<Row> put;
    if (std::holds_alternative<double>(json.value)) {
        if (!reader.read(json, put.id))
            return false;
    } else {
        if (!reader.read(json, put.after.emplace()))
            return false;
        put.id = put.after->id;
    }
    into.steps.emplace_back(std::move(put));
    return true;
}

bool readStep(JsonReader& reader, const Json& json, Change& into)
{
    const Json::Object* members = reader.objectAt(json);
    if (!members)
        return false;
    if (members->size() != 1)
        return reader.refuse(json, {oneTable, {{"found", std::to_string(members->size())}}},
                             {writeStep, {{"example", R"({"places": {"id": 4, "tag": "CAB1"}})"}}});
    const std::string& table = members->front().key;
    const Json& row = members->front().value;
    bool isKnown = false, isRead = false;
    forEachTableName([&]<class Row>(const char* name) {
        if (table == name) {
            isKnown = true;
            isRead = readPut<Row>(reader, row, into);
        }
    });
    return isKnown
               ? isRead
               : reader.refuse(row, {noTable, {{"table", table}}}, {tablesThere, {{"tables", tableNames()}}});
}

} // namespace

void Form<Change>::write(JsonWriter& writer, const Change& change)
{
    writer.open('[');
    for (const Step& step : change.steps) {
        writer.open('{');
        std::visit(
            [&]<class Row>(const Put<Row>& put) {
                if (put.after)
                    writer.member(tableName<Row>(), *put.after);
                else
                    writer.member(tableName<Row>(), put.id);
            },
            step);
        writer.close('}');
    }
    writer.close(']');
}

bool Form<Change>::read(JsonReader& reader, const Json& json, Change& into)
{
    const Json::Array* steps = reader.arrayAt(json);
    if (!steps)
        return false;
    into.steps.reserve(steps->size());
    for (const Json& step : *steps)
        if (!readStep(reader, step, into))
            return false;
    return true;
}

std::string changeText(const Change& change)
{
    JsonWriter writer;
    writer.value(change);
    return std::move(writer.text);
}

Result<Change> readChange(std::string_view text, const std::string& name)
{
    const Result<Json> json = parseJson(text, name);
    if (!json.ok())
        return json.problem();
    JsonReader reader(json.value(), name);
    reader.idsBelow = mostNextNumber;
    Change change;
    if (!reader.read(json.value(), change))
        return *reader.problem;
    return change;
}

} // namespace doorloom
