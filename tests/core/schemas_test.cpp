#include "core/schemas.h"

#include "catalogue/kindjson.h"
#include "core/fulljob.h"
#include "core/fullkind.h"
#include "core/golden.h"
#include "core/heldagainstschema.h"
#include "core/program.h"
#include "file/jobfile.h"

#include <nlohmann/json.hpp>

#include <algorithm>

// resources/schemas: what editors and other programs hold jobs and kinds against.
namespace doorloom {
namespace {

using test::Schema;
using test::SchemaCase;
using Tree = nlohmann::ordered_json;

std::vector<SchemaCase> filesIn(const std::string& folder, Schema schema)
{
    std::vector<SchemaCase> cases;
    for (const auto& entry : std::filesystem::directory_iterator(SOURCE_FOLDER + folder))
        cases.push_back({schema, test::contentOf(entry.path())});
    return cases;
}

// Small files that have everything between them: one entry of one list each.
std::vector<Tree> cutUp(const Tree& whole, std::initializer_list<const char*> everywhere)
{
    std::vector<Tree> files;
    for (const auto& [name, list] : whole.items()) {
        Tree file;
        for (const char* key : everywhere)
            file[key] = whole[key];
        if (!list.is_array()) {
            file[name] = list;
            files.push_back(file);
            continue;
        }
        for (const Tree& entry : list) {
            file[name] = Tree::array({entry});
            files.push_back(file);
        }
    }
    return files;
}

// The tree with one spot altered, for every spot.
template <class Take> void forEachAltered(Tree& whole, Tree& spot, const Take& take)
{
    static const Tree others[] = {nullptr, true, 7,    0.5,           -1,  1e10, "zzz", "a.b", Tree::array(), Tree::object(),
                                  Tree::array({1}), Tree::array({1, "x"})};
    const Tree before = spot;
    for (const Tree& other : others) {
        spot = other;
        take(whole);
    }
    spot = before;
    if (!spot.is_structured())
        return;
    if (spot.is_object()) {
        for (const auto& [key, value] : before.items()) {
            spot.erase(key);
            take(whole);
            spot = before;
        }
        spot["unheardOf"] = 1;
        take(whole);
    } else {
        spot.push_back(7);
        take(whole);
    }
    spot = before;
    for (Tree& inner : spot)
        forEachAltered(whole, inner, take);
}

std::vector<SchemaCase> alteredFiles(Schema schema, std::vector<Tree> files)
{
    std::vector<SchemaCase> cases;
    for (Tree& file : files)
        forEachAltered(file, file, [&](const Tree& altered) { cases.push_back({schema, altered.dump()}); });
    return cases;
}

std::size_t countOf(const std::vector<SchemaCase>& cases, test::ShapeVerdict verdict)
{
    return static_cast<std::size_t>(std::count_if(
        cases.begin(), cases.end(), [&](const SchemaCase& each) { return shapeVerdict(each) == verdict; }));
}

void expectAgreementOn(const std::vector<SchemaCase>& cases, std::size_t leastFitting, std::size_t leastRefused)
{
    EXPECT_GE(countOf(cases, test::ShapeVerdict::Fits), leastFitting);
    EXPECT_GE(countOf(cases, test::ShapeVerdict::Refused), leastRefused);
    if (const std::string missing = test::missingForSchemas(); !missing.empty())
        GTEST_SKIP() << missing;
    test::expectSchemasAgree(cases);
}

} // namespace

TEST(Schemas, AreThoseOfTheShapesThatTheReadersReadBy)
{
    expectFile(SOURCE_FOLDER "/resources/schemas/job.json", jobFileSchema());
    expectFile(SOURCE_FOLDER "/resources/schemas/kind.json", kindSchema());
}

TEST(Schemas, AcceptEverySampleAndEveryKindOfTheCatalogue)
{
    std::vector<SchemaCase> cases = filesIn("/samples", Schema::Job);
    for (SchemaCase& kind : filesIn("/resources/catalogue", Schema::Kind))
        cases.push_back(std::move(kind));
    cases.push_back({Schema::Job, jobText(fullJob())});
    cases.push_back({Schema::Job, jobText(Job{})});
    cases.push_back({Schema::Kind, kindText(fullKind())});
    EXPECT_EQ(countOf(cases, test::ShapeVerdict::Fits), cases.size());
    expectAgreementOn(cases, 90, 0);
}

TEST(Schemas, RefuseTheBrokenFilesThatTheReadersRefuseByShape)
{
    std::vector<SchemaCase> cases = filesIn("/tests/fuzz/corpus/jobfile_fuzz", Schema::Job);
    for (SchemaCase& kind : filesIn("/tests/fuzz/corpus/kind_fuzz", Schema::Kind))
        cases.push_back(std::move(kind));
    expectAgreementOn(cases, 3, 1);
}

TEST(Schemas, AgreeWithTheReaderOfKindsOnEverySpotAltered)
{
    expectAgreementOn(
        alteredFiles(Schema::Kind, cutUp(Tree::parse(kindText(fullKind())), {"name", "title", "family"})), 500, 3'000);
}

TEST(Schemas, AgreeWithTheReaderOfJobsOnEverySpotAltered)
{
    Tree job = Tree::parse(jobText(fullJob()));
    for (Tree& row : job["kinds"]) // altered above
        row["kind"] = {{"name", "k"}, {"title", Tree::object()}, {"family", "part"}};
    expectAgreementOn(alteredFiles(Schema::Job, cutUp(job, {"doorloom", "nextNumber"})), 500, 3'000);
}

} // namespace doorloom
