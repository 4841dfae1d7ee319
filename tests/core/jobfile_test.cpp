#include "file/jobfile.h"

#include "base/json.h"
#include "base/sha256.h"
#include "catalogue/kindjson.h"
#include "core/fulljob.h"
#include "core/heldagainstschema.h"
#include "core/randomedits.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

namespace doorloom {

namespace {

std::string refusal(std::string_view text)
{
    test::holdAgainstSchema(test::Schema::Job, std::string(text));
    const Result<Job> job = readJob(text, "x.doorjob");
    return job.ok() ? "was read" : inWords(job.problem());
}

// The text of a full job with one spot changed.
std::string changed(const std::string& from, const std::string& to)
{
    std::string text = jobText(fullJob());
    const std::size_t at = text.find(from);
    if (at == std::string::npos)
        throw std::runtime_error("the full job has no " + from);
    return text.replace(at, from.size(), to);
}

std::string refusalOf(const std::string& from, const std::string& to)
{
    return refusal(changed(from, to));
}

// The same with the hash made right again.
std::string changedKind(const std::string& from, const std::string& to)
{
    std::string text = changed(from, to);
    const std::size_t hash = text.find("\"hash\":\"") + 8, kind = text.find("\"kind\":{") + 7;
    const std::string content = text.substr(kind, text.find("}\n]", kind) - kind);
    const Result<Json> json = parseJson(content, "kind");
    const Result<Kind> read = readKind(json.value(), "kind", "");
    return text.replace(hash, 64, contentHash(read.value()));
}

} // namespace

TEST(JobFile, ReadsBackEveryMemberOfEveryRow)
{
    const Job job = fullJob();
    const std::string text = jobText(job);

    const Result<Job> back = readJob(text, "x.doorjob");

    ASSERT_TRUE(back.ok()) << inWords(back.problem());
    EXPECT_EQ(back.value(), job);
    EXPECT_EQ(back.value().nextNumber, 100u);
    EXPECT_EQ(jobText(back.value()), text);
    forEachTable(job, [](const char* name, const auto& rows) { EXPECT_FALSE(rows.empty()) << name; });
}

namespace {

bool putsABadKind(const Change& change)
{
    return std::any_of(change.steps.begin(), change.steps.end(), [](const Step& step) {
        const auto* put = std::get_if<Put<JobKind>>(&step);
        return put && put->after && !checkKind(put->after->kind).empty();
    });
}

void expectReadsBack(const Job& job)
{
    const std::string text = jobText(job);
    const Result<Job> back = readJob(text, "x.doorjob");
    ASSERT_TRUE(back.ok()) << inWords(back.problem());
    EXPECT_TRUE(back.value() == job);
    EXPECT_TRUE(back.value().referrers == job.referrers);
    EXPECT_TRUE(back.value().deviceTags == job.deviceTags);
    EXPECT_EQ(back.value().nextNumber, job.nextNumber);
    EXPECT_TRUE(jobText(back.value()) == text);
}

} // namespace

TEST(JobFile, ReadsBackWhateverRandomChangesMake)
{
    std::size_t rows = 0;
    forEachSeed(10, [&](Random& random) {
        Job job = fullJob();
        for (int edits = 0; edits < 400 && !::testing::Test::HasFailure(); ++edits) {
            const RandomEdits::Edit edit = RandomEdits(job, random).any();
            SCOPED_TRACE(edit.name);
            if (!edit.change || putsABadKind(*edit.change) || !applyChange(job, *edit.change).ok())
                continue;
            if (edits % 4 == 0)
                expectReadsBack(job);
        }
        rows += job.devices.size() + job.conductors.size();
    });
    EXPECT_GT(rows, 100u); // not all was taken away again
}

TEST(JobFile, OfAnEmptyJobSaysOnlyVersionAndCounter)
{
    EXPECT_EQ(jobText(Job{}), "{\n\"doorloom\":1,\n\"nextNumber\":1\n}\n");
    const Result<Job> back = readJob(jobText(Job{}), "x.doorjob");
    ASSERT_TRUE(back.ok()) << inWords(back.problem());
    EXPECT_EQ(back.value(), Job{});
}

TEST(JobFile, HasOneRowALine)
{
    const Job job = fullJob();
    std::size_t rows = 0, tables = 0;
    forEachTable(job, [&](const char*, const auto& table) {
        rows += table.size();
        ++tables;
    });
    const std::string text = jobText(job);
    // Two braces, version and counter; each table opens and closes on lines of its own.
    EXPECT_EQ(static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')), 4 + 2 * tables + rows);
}

TEST(JobFile, MayBeLaidOutOtherwiseByHand)
{
    // Rows in another order, keys in another order, blanks.
    const std::string text =
        changed(R"({"id":4,"tag":"CAB1","words":"above ceiling",)",
                "{ \"tag\" : \"CAB1\",\r\n\t\"words\": \"above ceiling\", \"id\" : 4e0 ,");
    const Result<Job> job = readJob(text, "x.doorjob");
    ASSERT_TRUE(job.ok()) << inWords(job.problem());
    EXPECT_EQ(job.value(), fullJob());
}

TEST(JobFile, DigestFollowsTheText)
{
    Job job = fullJob();
    const std::string before = digestOf(job);
    EXPECT_EQ(before, sha256(jobText(job)).substr(0, 12));
    ++job.nextNumber;
    EXPECT_NE(digestOf(job), before);
}

TEST(JobFile, IsRefusedWhenItIsNoJobFile)
{
    EXPECT_EQ(refusal("{\"name\":\"relay\"}"),
              "x.doorjob, line 1: This is no job file: the key 'doorloom' is missing. "
              "Open a file that this program has saved (*.doorjob).");
    EXPECT_EQ(refusal("[]"),
              "x.doorjob, line 1: Here stands a list, but it should be an object. Write an object.");
}

TEST(JobFile, IsRefusedWhenItIsNewer)
{
    EXPECT_EQ(
        refusalOf("\"doorloom\":2", "\"doorloom\":3"),
        "x.doorjob, line 2, doorloom: The file has version 3; this program reads versions up to 2. Open it "
        "with a newer version of this program.");
    // Said before anything else that a newer version may bring.
    EXPECT_EQ(
        refusal("{\"doorloom\":7,\"gates\":[]}"),
        "x.doorjob, line 1, doorloom: The file has version 7; this program reads versions up to 2. Open it "
        "with a newer version of this program.");
}

TEST(JobFile, IsRefusedWhenItsVersionIsNone)
{
    EXPECT_EQ(refusalOf("\"doorloom\":2", "\"doorloom\":0"),
              "x.doorjob, line 2, doorloom: The number 0 is out of range. Write a whole number from 1 to 2.");
    EXPECT_EQ(refusalOf("\"doorloom\":2", "\"doorloom\":\"1\""),
              "x.doorjob, line 2, doorloom: Here stands a text, but it should be a number. Write a number.");
}

TEST(JobFile, IsRefusedWhenItIsCutShort)
{
    const std::string text = jobText(fullJob());
    const std::string half = text.substr(0, text.find("\"tag\":\"ES2\""));
    EXPECT_EQ(refusal(half),
              "x.doorjob, line 24, column 9: The text ends before it is complete. The file was cut "
              "short: take a complete copy of it.");
}

TEST(JobFile, IsNeverReadWhenAnyEndOfItIsMissing)
{
    const std::string text = jobText(fullJob());
    for (std::size_t length = 0; length + 2 < text.size(); length += 7)
        EXPECT_FALSE(readJob(std::string_view(text).substr(0, length), "x.doorjob").ok()) << length;
}

TEST(JobFile, IsRefusedWithKeysThatItDoesNotKnow)
{
    EXPECT_EQ(
        refusalOf("\"isBox\"", "\"isbox\""),
        "x.doorjob, line 14, places[0].isbox: The key 'isbox' is not known here. Take it out or correct it; "
        "known here: id, tag, words, mounting, isBox, breaker.");
    EXPECT_EQ(
        refusalOf("\"situation\":\"request\"", "\"situation\":\"request\",\"when\":3"),
        "x.doorjob, line 38, openings[0].promises[0].when: The key 'when' is not known here. Take it out or "
        "correct it; known here: situation, act, lost, device, promised.");
    EXPECT_EQ(refusalOf("\"places\"", "\"rooms\""),
              "x.doorjob, line 13, rooms: The key 'rooms' is not known here. Take it out or correct it; "
              "known here: "
              "doorloom, nextNumber, info, kinds, cableTypes, places, operators, devices, cables, splices, "
              "conductors, openings, sheets, placements, bends, notes, setAside, typicals, stamps.");
    EXPECT_EQ(
        refusalOf("\"hash\":", "\"sum\":1,\"hash\":"),
        "x.doorjob, line 8, kinds[0].sum: The key 'sum' is not known here. Take it out or correct it; known "
        "here: hash, kind, id.");
}

TEST(JobFile, IsRefusedWithValuesOfAnotherType)
{
    EXPECT_EQ(
        refusalOf("\"tag\":\"CAB1\"", "\"tag\":7"),
        "x.doorjob, line 14, places[0].tag: Here stands a number, but it should be a text. Write a text.");
    EXPECT_EQ(refusalOf("\"places\":[", "\"places\":{["),
              "x.doorjob, line 13, column 11: This is not JSON: '\"places\":{[' cannot stand here. Put this "
              "line right, "
              "or take "
              "an undamaged copy of the file.");
    EXPECT_EQ(refusalOf("\"bindings\":{\"bolt\":20}", "\"bindings\":[20]"),
              "x.doorjob, line 23, devices[0].bindings: Here stands a list, but it should be an object. "
              "Write an object.");
    EXPECT_EQ(refusalOf("\"hold\":2.5", "\"hold\":true"),
              "x.doorjob, line 23, devices[0].settings.hold: Here stands true or false, but it should be a "
              "number or "
              "a text. Write a number or a text.");
    EXPECT_EQ(refusalOf("\"from\":\"spare\"", "\"from\":30"),
              "x.doorjob, line 34, conductors[1].from: Here stands a number, but it should be a list or a "
              "word. Write "
              "a list or a word.");
    EXPECT_EQ(refusalOf("\"quarterTurns\":3", "\"quarterTurns\":0.5"),
              "x.doorjob, line 44, placements[0].quarterTurns: The number 0.5 is out of range. Write a whole "
              "number "
              "from -2147483648 to 2147483647.");
}

TEST(JobFile, IsRefusedWithWordsThatAreNotInTheList)
{
    EXPECT_EQ(
        refusalOf("\"mounting\":\"frame\"", "\"mounting\":\"jamb\""),
        "x.doorjob, line 15, places[1].mounting: The word 'jamb' is not known here. Use one of: frame, leaf, "
        "wall, ceiling, cabinet, elsewhere.");
    EXPECT_EQ(refusalOf("\"from\":\"spare\"", "\"from\":\"cut\""),
              "x.doorjob, line 34, conductors[1].from: 'cut' is no end of a conductor. Write [DEVICE, "
              "\"TERMINAL\"], [SPLICE], \"spare\" or \"insulated\".");
    EXPECT_EQ(
        refusalOf("\"V.J1\":\"12\",", "\"V\":\"12\","),
        "x.doorjob, line 23, devices[0].choices.V: 'V' names no jumper. Write OPTION.JUMPER, such as K1.JA.");
}

TEST(JobFile, IsRefusedWithListsOfAnotherLength)
{
    EXPECT_EQ(refusalOf("\"to\":[31,\"+\"]", "\"to\":[31,\"+\",1]"),
              "x.doorjob, line 35, conductors[2].to: Here stand 3 values, but there should be 2. Write it as "
              "in [12, "
              "\"K1.C\"].");
    EXPECT_EQ(refusalOf("[3,-4]", "[3]"),
              "x.doorjob, line 48, bends[0].pinned[1]: Here stand 1 values, but there should be 2. "
              "Write it as in [150, -40].");
    EXPECT_EQ(refusalOf("\"what\":{\"splice\":41}", "\"what\":{}"),
              "x.doorjob, line 45, placements[1].what: Here should stand a device or a splice, and one "
              "alone. Write it "
              "as in {\"device\": 12}.");
}

TEST(JobFile, IsRefusedWithListsThatNoJobHas)
{
    std::string rows = "30";
    for (std::size_t i = 0; i < 5'000; ++i)
        rows += ",30";
    EXPECT_EQ(refusalOf("\"rows\":[30,50]", "\"rows\":[" + rows + "]"),
              "x.doorjob, line 57, typicals[0].rows: Here stand 5001 entries. Write 5000 or fewer.");
}

TEST(JobFile, IsRefusedWhenSomethingIsMissing)
{
    EXPECT_EQ(refusalOf("\"nextNumber\":100,\n", ""),
              "x.doorjob, line 1: The key 'nextNumber' is missing. Add it to this object.");
    EXPECT_EQ(refusalOf("\"id\":4,", ""),
              "x.doorjob, line 14, places[0]: The key 'id' is missing. Add it to this object.");
    EXPECT_EQ(refusalOf("\"hash\":", "\"kind\":{},\"hash\":"),
              "x.doorjob, line 8: 'kind' stands twice in one object. Keep one of the two.");
}

TEST(JobFile, IsRefusedWithIdsOutOfRange)
{
    const std::string range = "Write a whole number of 1 or more, less than nextNumber, which is 100.";
    EXPECT_EQ(refusalOf("{\"id\":4,", "{\"id\":0,"),
              "x.doorjob, line 14, places[0].id: The id 0 is out of range. " + range);
    EXPECT_EQ(refusalOf("{\"id\":4,", "{\"id\":100,"),
              "x.doorjob, line 14, places[0].id: The id 100 is out of range. " + range);
    EXPECT_EQ(refusalOf("{\"id\":4,", "{\"id\":4.5,"),
              "x.doorjob, line 14, places[0].id: The id 4.5 is out of range. " + range);
    EXPECT_EQ(refusalOf("\"to\":[31,", "\"to\":[-1,"),
              "x.doorjob, line 35, conductors[2].to[0]: The id -1 is out of range. " + range);
    EXPECT_EQ(refusalOf("\"nextNumber\":100", "\"nextNumber\":16000001"),
              "x.doorjob, line 3, nextNumber: The number 16000001 is out of range. Write a whole number from "
              "1 to 16000000.");
}

TEST(JobFile, IsRefusedWhenAnIdIsUsedTwice)
{
    const std::string remedy = " Give this row an id of its own, and raise nextNumber above it.";
    EXPECT_EQ(refusalOf("{\"id\":5,", "{\"id\":4,"),
              "x.doorjob, line 15, places[1]: The id 4 is used twice." + remedy);
    EXPECT_EQ(refusalOf("{\"id\":74,", "{\"id\":41,"),
              "x.doorjob, line 51, notes[0]: The id 41 is used twice." + remedy);
}

TEST(JobFile, IsRefusedWhenAReferenceLeadsNowhere)
{
    EXPECT_EQ(refusalOf("\"tag\":\"ES2\",\"kind\":2", "\"tag\":\"ES2\",\"kind\":9"),
              "x.doorjob, line 24, devices[1]: The device 'ES2' refers to a kind that is not in the job. Put "
              "the kind "
              "into the job too, or choose another.");
    EXPECT_EQ(refusalOf("\"cable\":40", "\"cable\":41"),
              "x.doorjob, line 33, conductors[0]: The conductor 'W\"50 (ES1:b.2 – SP1)' refers to a cable "
              "that is not in the job. "
              "Put the cable into the job too, or choose another.");
}

TEST(JobFile, IsRefusedWhenItBreaksAPromiseOfTheModel)
{
    EXPECT_EQ(
        refusalOf("\"tag\":\"ES2\"", "\"tag\":\"ES1\""),
        "x.doorjob, line 23, devices[0]: The tag 'ES1' is on two devices. Give one of them another tag.");
    EXPECT_EQ(refusalOf("[30,\"b.2\"]", "[30,\"c\"]"),
              "x.doorjob, line 33, conductors[0]: ES1 has no terminal 'c'. Use one of: a, b.2, +.");
    EXPECT_EQ(refusalOf("\"V.J2\":\"24\",", ""), "x.doorjob, line 24, devices[1]: Jumper 'J2' of ES2 is not "
                                                 "recorded once. Record it once; with no value "
                                                 "while it is not chosen.");
    EXPECT_EQ(refusalOf("\"info\":[\n", "\"info\":[\n{\"id\":6},\n"),
              "x.doorjob, line 6, info[1]: The job would have a second title block beside 'Title'. Alter the "
              "one that "
              "is there.");
}

TEST(JobFile, IsRefusedWhenAKindDoesNotMatchItsHash)
{
    const std::string hash = jobText(fullJob()).substr(jobText(fullJob()).find("\"hash\":\"") + 8, 64);
    const std::string zeros(64, '0');
    EXPECT_EQ(refusalOf(hash, zeros), "x.doorjob, line 8, kinds[0].hash: The kind 'strike' has the hash " +
                                          zeros + ", but its content gives " + hash +
                                          ". It was changed in the file: take an undamaged copy, or write " +
                                          hash + " as its hash if you meant to change it.");
}

TEST(JobFile, IsRefusedWhenAKindContradictsItself)
{
    EXPECT_EQ(refusal(changedKind("\"load\":\"coil\"", "\"load\":\"spool\"")),
              "x.doorjob, line 8, kinds[0].kind.lock.load: 'spool' is no part that can stand here. Name a "
              "part of type load.");
    EXPECT_EQ(
        refusal(changedKind("\"unpowered\":\"in\"", "\"unpowered\":\"inn\"")),
        "x.doorjob, line 8, kinds[0].kind.roles[0].unpowered: 'inn' is not there. Use one of: in, out.");
}

} // namespace doorloom
