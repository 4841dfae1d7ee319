#include "file/tablenames.h"

namespace doorloom {

namespace {

constexpr Text noTable = {.en = "A job has no table '{table}'.",
                          .es = "Un trabajo no tiene la tabla '{table}'."};
constexpr Text tablesThere = {.en = "Use one of: {tables}.", .es = "Use una de: {tables}."};
constexpr Text oneTable = {.en = "Here should stand one table with its row, but there are {found}.",
                           .es = "Aquí debería haber una tabla con su fila, pero hay {found}."};
constexpr Text writeRow = {.en = "Write it as in {example}.", .es = "Escríbalo como en {example}."};

} // namespace

bool refuseTableCount(JsonReader& reader, const Json& json, std::size_t found)
{
    return reader.refuse(json, {oneTable, {{"found", std::to_string(found)}}},
                         {writeRow, {{"example", R"({"places": {"id": 4, "tag": "CAB1"}})"}}});
}

bool refuseTable(JsonReader& reader, const Json& json, const std::string& table, const std::string& tables)
{
    return reader.refuse(json, {noTable, {{"table", table}}}, {tablesThere, {{"tables", tables}}});
}

} // namespace doorloom
