#pragma once

#include "base/jsonshape.h"
#include "model/job.h"

#include <string>

// Rows outside the job's own lists stand under their table's name: {"places": {"id": 4, "tag": "CAB1"}}.
namespace doorloom {

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

bool refuseTableCount(JsonReader& reader, const Json& json, std::size_t found);
bool refuseTable(JsonReader& reader, const Json& json, const std::string& table, const std::string& tables);

// An object with one table and its row: bool read.operator()<Row>(row's JSON) for a table that
// isWanted<Row>().
template <class IsWanted, class Read>
bool readUnderTable(JsonReader& reader, const Json& json, IsWanted isWanted, Read read)
{
    const Json::Object* members = reader.objectAt(json);
    if (!members)
        return false;
    if (members->size() != 1)
        return refuseTableCount(reader, json, members->size());
    const std::string& table = members->front().key;
    const Json& row = members->front().value;
    bool isKnown = false, isRead = false;
    std::string tables;
    forEachTableName([&]<class Row>(const char* name) {
        if constexpr (decltype(isWanted.template operator()<Row>())::value) {
            tables += (tables.empty() ? "" : ", ") + std::string(name);
            if (table == name) {
                isKnown = true;
                isRead = read.template operator()<Row>(row);
            }
        }
    });
    return isKnown ? isRead : refuseTable(reader, row, table, tables);
}

} // namespace doorloom
