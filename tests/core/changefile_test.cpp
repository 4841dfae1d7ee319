#include "file/changefile.h"

#include "catalogue/kindjson.h"
#include "core/fulljob.h"
#include "core/randomedits.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace doorloom {

namespace {

std::string refusal(std::string_view text)
{
    const Result<Change> change = readChange(text, "x.journal");
    return change.ok() ? "was read" : inWords(change.problem());
}

void expectReadsBack(const Change& change)
{
    const std::string text = changeText(change);
    EXPECT_EQ(text.find('\n'), std::string::npos);
    const Result<Change> back = readChange(text, "x.journal");
    ASSERT_TRUE(back.ok()) << inWords(back.problem()) << '\n' << text;
    EXPECT_TRUE(back.value() == change) << text;
}

// What applyChange takes, and catalogues never offer.
bool putsABadKind(const Change& change)
{
    return std::any_of(change.steps.begin(), change.steps.end(), [](const Step& step) {
        const auto* put = std::get_if<Put<JobKind>>(&step);
        return put && put->after && !checkKind(put->after->kind).empty();
    });
}

} // namespace

TEST(ChangeFile, ReadsBackEveryMemberOfEveryRow)
{
    expectReadsBack(difference({}, fullJob()));
    expectReadsBack(difference(fullJob(), {}));
    expectReadsBack({});
}

TEST(ChangeFile, ReadsBackRandomChangesAndTheirInverses)
{
    int changes = 0;
    forEachSeed(20, [&](Random& random) {
        Job job = fullJob();
        for (int count = 0; count < 100; ++count) {
            const auto change = RandomEdits(job, random).any().change;
            if (!change || putsABadKind(*change))
                continue;
            const Result<Change> undo = applyChange(job, *change);
            if (!undo.ok())
                continue;
            expectReadsBack(*change);
            expectReadsBack(undo.value());
            ++changes;
        }
    });
    EXPECT_TRUE(changes > 1000 || std::getenv("SEED")) << changes;
}

TEST(ChangeFile, IsOneLineThatNamesTablesAndRows)
{
    Place place;
    place.id = {4};
    place.tag = "CAB1";
    place.words = "above\nceiling";
    EXPECT_EQ(changeText({{Put<Place>{{4}, place}, Put<Conductor>{{20}, {}}}}),
              R"([{"places":{"id":4,"tag":"CAB1","words":"above\nceiling"}},{"conductors":20}])");
}

TEST(ChangeFile, RefusesWhatItDoesNotKnowWithLineAndField)
{
    EXPECT_EQ(
        refusal("[\n{\"doors\":{}}]"),
        "x.journal, line 2, [0].doors: A job has no table 'doors'. Use one of: info, kinds, cableTypes, "
        "places, operators, devices, cables, splices, conductors, openings, sheets, placements, bends, "
        "notes, setAside, typicals, stamps.");
    EXPECT_EQ(
        refusal(R"([{"sheets":1},{"sheets":{"id":1,"name":"x"}}])"),
        "x.journal, line 1, [1].sheets.name: The key 'name' is not known here. Take it out or correct it; "
        "known here: id, title, order.");
    EXPECT_EQ(
        refusal(R"([{"sheets":1,"places":2}])"),
        "x.journal, line 1, [0]: Here should stand one table with its row, but there are 2. Write it as in "
        R"({"places": {"id": 4, "tag": "CAB1"}}.)");
    EXPECT_EQ(
        refusal(R"([{"sheets":0}])"),
        "x.journal, line 1, [0].sheets: The id 0 is out of range. Write a whole number of 1 or more, less "
        "than nextNumber, which is 16000000.");
    EXPECT_EQ(refusal("{}"),
              "x.journal, line 1: Here stands an object, but it should be a list. Write a list.");
}

} // namespace doorloom
