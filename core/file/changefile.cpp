#include "file/changefile.h"

#include "file/changeshape.h"
#include "file/jobfile.h"
#include "file/jobshape.h"
#include "file/tablenames.h"

#include <utility>

namespace doorloom {

namespace {

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
        if (!readUnderTable(
                reader, step, []<class>() { return std::true_type(); },
                [&]<class Row>(const Json& row) { return readPut<Row>(reader, row, into); }))
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
