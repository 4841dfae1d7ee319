#include "file/jobfile.h"

#include "base/sha256.h"
#include "file/jobshape.h"

namespace doorloom {

namespace {

template <class Row> void writeTable(JsonWriter& writer, const char* name, const Table<Row>& rows)
{
    if (rows.empty())
        return;
    writer.text += ",\n";
    writer.key(name);
    writer.text += "[\n";
    const char* between = "";
    for (const Row& row : rows) {
        writer.text += between;
        writer.value(row);
        between = ",\n";
    }
    writer.text += "\n]";
}

} // namespace

std::string jobText(const Job& job)
{
    JsonWriter writer;
    writer.text = "{\n";
    writer.member("doorloom", job.typicals.empty() ? 1 : jobFileVersion);
    writer.text += ",\n";
    writer.member("nextNumber", job.nextNumber);
    forEachTable(job, [&](const char* name, const auto& rows) { writeTable(writer, name, rows); });
    writer.text += "\n}\n";
    return std::move(writer.text);
}

Result<Done> saveJobFile(const Job& job, const std::string& path)
{
    return saveBytes(jobText(job), path);
}

std::string digestOf(const Job& job)
{
    return sha256(jobText(job)).substr(0, 12);
}

} // namespace doorloom
