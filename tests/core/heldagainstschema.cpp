#include "core/heldagainstschema.h"

#include "catalogue/kindjson.h"
#include "core/program.h"
#include "file/jobfile.h"
#include "file/jobshape.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>

namespace doorloom::test {
namespace {

bool isHash(const std::string& text)
{
    return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

// A job's copy of a kind, without asking whether the hash is right or the kind contradicts itself.
bool fits(JsonReader& reader, const Json& row, JobKind& into)
{
    static constexpr auto others = std::to_array<std::string_view>({"hash", "kind"});
    const Json *hash = row.find("hash"), *kind = row.find("kind");
    std::string written;
    return reader.object(row, others, into) && hash && kind && reader.read(*hash, written) && isHash(written) &&
           readKind(*kind, "", "").ok();
}

template <class Row> bool fits(JsonReader& reader, const Json& row, Row& into)
{
    return reader.read(row, into);
}

template <class Row> bool tableFits(JsonReader& reader, const Json& file, const char* name)
{
    const Json* rows = file.find(name);
    const Json::Array* items = rows ? reader.arrayAt(*rows) : nullptr;
    return !rows || (items && std::all_of(items->begin(), items->end(), [&](const Json& item) {
                         Row row;
                         return fits(reader, item, row);
                     }));
}

bool jobFits(const Json& file)
{
    JsonReader reader(file, "");
    reader.idsBelow = mostNextNumber; // that ids are below nextNumber is no matter of shape
    const Json *version = file.find("doorloom"), *next = file.find("nextNumber");
    double number = 0;
    if (!version || !next || !reader.wholeAt(*version, 1, jobFileVersion, number) ||
        !reader.wholeAt(*next, 1, mostNextNumber, number))
        return false;
    std::vector<std::string_view> known = {"doorloom", "nextNumber"};
    bool good = true;
    const Job tables;
    forEachTable(tables, [&]<class Row>(const char* name, const Table<Row>&) {
        known.push_back(name);
        good = good && tableFits<Row>(reader, file, name);
    });
    return good && reader.knownKeys(file, known);
}

std::vector<std::string> judged(const std::vector<SchemaCase>& cases)
{
    const TemporaryFolder folder;
    std::ofstream lines(folder.file("cases"));
    for (const SchemaCase& each : cases)
        lines << R"({"schema":")" << (each.schema == Schema::Job ? "job" : "kind") << R"(","document":)"
              << nlohmann::json::parse(each.text).dump() << "}\n";
    lines.close();
    const Ended run = runProgram({.arguments = {"python3", SOURCE_FOLDER "/tests/tools/againstschema.py",
                                                SOURCE_FOLDER "/resources/schemas", folder.file("cases")},
                                  .program = "/usr/bin/env",
                                  .environment = {{"PATH", std::getenv("PATH")}}});
    EXPECT_EQ(run.exit, 0) << run.err;
    std::vector<std::string> answers;
    std::istringstream in(run.out);
    for (std::string line; std::getline(in, line);)
        answers.push_back(line);
    return answers;
}

// What the tests of this run gave to the readers.
std::vector<SchemaCase>& held()
{
    static std::vector<SchemaCase> cases;
    return cases;
}

class HeldAgainstSchema : public ::testing::Environment {
    void TearDown() override
    {
        if (!held().empty() && missingForSchemas().empty())
            expectSchemasAgree(held());
    }
};
[[maybe_unused]] const auto* const environment = ::testing::AddGlobalTestEnvironment(new HeldAgainstSchema); // gtest owns it

} // namespace

ShapeVerdict shapeVerdict(const SchemaCase& each)
{
    const Result<Json> json = parseJson(each.text, "");
    if (!json.ok())
        return ShapeVerdict::NoJson;
    const bool fits =
        each.schema == Schema::Job ? jobFits(json.value()) : readKind(json.value(), "", "").ok();
    return fits ? ShapeVerdict::Fits : ShapeVerdict::Refused;
}

std::string missingForSchemas()
{
    const bool there = std::system("python3 -c 'import jsonschema' >/dev/null 2>&1") == 0;
    return there ? "" : "python3-jsonschema is not installed";
}

void expectSchemasAgree(const std::vector<SchemaCase>& cases)
{
    std::vector<SchemaCase> json;
    std::copy_if(cases.begin(), cases.end(), std::back_inserter(json),
                 [](const SchemaCase& each) { return shapeVerdict(each) != ShapeVerdict::NoJson; });
    const std::vector<std::string> answers = judged(json);
    ASSERT_EQ(answers.size(), json.size());
    for (std::size_t i = 0; i < json.size(); ++i)
        EXPECT_EQ(answers[i] == "accepted", shapeVerdict(json[i]) == ShapeVerdict::Fits)
            << answers[i] << "\n" << json[i].text.substr(0, 2000);
}

void holdAgainstSchema(Schema schema, std::string text)
{
    held().push_back({schema, std::move(text)});
}

} // namespace doorloom::test
