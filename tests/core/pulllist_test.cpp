#include "papers/papers.h"
#include "papers/pulllist.h"

#include "core/golden.h"
#include "core/papercsv.h"
#include "core/papersite.h"

#include <gtest/gtest.h>

#include <map>

namespace doorloom {
namespace {

using papersite::Site;

const PaperSetup english{Language::English, "0123456789ab"};

// Cables from a cabinet and a box to a wall.
class Pulling {
public:
    Site site;
    PlaceId cabinet = site.place("CAB2", "cabinet", true), box = site.place("BOX1", "box above door", true), wall = site.place("WALL", "", false);
    CableTypeId pair = site.cableType("18/2", {"RD", "WH"});

    CableId cable(const std::string& tag, PlaceId from, double metres, const std::string& pull = {}, Standing standing = Standing::New)
    {
        const CableId id = site.cable(tag, pair, from, wall);
        Cable row = *site.job.cables.find(id);
        row.length = Metres{metres};
        row.pull = pull;
        row.standing = standing;
        return site.put(row);
    }
    std::vector<std::string> tags() const
    {
        std::vector<std::string> tags;
        const PullList list = pullListOf(site.job, "");
        for (const PullLine& line : list.lines)
            tags.push_back(line.tag);
        return tags;
    }
};

TEST(PullList, ReadsLikeThis)
{
    expectGolden("pull.txt", textOf(*paperNamed("pull"), papersite::oneOfEverything(), english));
    expectGolden("pull-es.txt", textOf(*paperNamed("pull"), papersite::oneOfEverything(), {Language::Spanish, "0123456789ab"}));
}

TEST(PullList, GoesBoxByBoxTheLongestFirstAndKeepsAPullTogether)
{
    Pulling pulling;
    pulling.cable("W1", pulling.cabinet, 5);
    pulling.cable("W2", pulling.cabinet, 20, "A");
    pulling.cable("W3", pulling.cabinet, 12);
    pulling.cable("W4", pulling.cabinet, 3, "A");
    pulling.cable("W5", pulling.box, 2);
    pulling.cable("W6", pulling.cabinet, 12);
    EXPECT_EQ(pulling.tags(), (std::vector<std::string>{"W5", "W2", "W4", "W3", "W6", "W1"}));
}

// Source of tails and allowance: common practice, no source. 10 m and a tenth, 0.9 m in the cabinet, 0.3 m at the wall: 12.2 m.
TEST(PullList, CutsLongerThanDrawnAndUpToAHalfMetre)
{
    Pulling pulling;
    pulling.cable("W1", pulling.cabinet, 10);
    pulling.cable("W2", pulling.cabinet, 0);
    const PullList list = pullListOf(pulling.site.job, "");
    EXPECT_EQ(list.lines[0].cut, Metres{12.5});
    EXPECT_FALSE(list.lines[1].cut.has_value());
    EXPECT_NE(textOf(*paperNamed("pull"), pulling.site.job, english).find("measure before cutting"), std::string::npos);
}

TEST(PullList, TotalsWhatIsPulledByTypeAndLeavesOutWhatIsThere)
{
    Pulling pulling;
    pulling.cable("W1", pulling.cabinet, 10);
    pulling.cable("W2", pulling.cabinet, 10);
    pulling.cable("W3", pulling.cabinet, 0);
    pulling.cable("W4", pulling.cabinet, 50, "", Standing::Existing);
    const PullList list = pullListOf(pulling.site.job, "");
    ASSERT_EQ(list.totals.size(), 1u);
    EXPECT_EQ(list.totals[0].cables, 3);
    EXPECT_EQ(list.totals[0].withoutLength, 1);
    EXPECT_EQ(list.totals[0].length, Metres{20});
    EXPECT_EQ(list.totals[0].cut, Metres{25});
}

TEST(PullList, CountsTheEntriesOfEveryBoxMainsApart)
{
    const Job job = papersite::oneOfEverything();
    const PullList list = pullListOf(job, "");
    ASSERT_EQ(list.boxes.size(), 1u);
    EXPECT_EQ(list.boxes[0].low, (std::vector<std::string>{"W1", "W2", "W3"}));
    EXPECT_EQ(list.boxes[0].mains, (std::vector<std::string>{"W10"}));
}

TEST(PullList, CountsSpareCores)
{
    std::map<std::string, std::string> spare;
    for (const auto& record : papercsv::readRecords(paperNamed("pull")->csv(papersite::oneOfEverything(), english)))
        if (record.at("row") == "cable")
            spare[record.at("cable")] = record.at("spare") + " of " + record.at("cores");
    EXPECT_EQ(spare, (std::map<std::string, std::string>{{"W1", "0 of 2"}, {"W2", "2 of 5"}, {"W3", "0 of 2"}, {"W10", "3 of 3"}}));
}

TEST(PullList, OfAnEmptyJobSaysThatThereIsNoCable)
{
    EXPECT_NE(textOf(*paperNamed("pull"), Job{}, english).find("There is no cable."), std::string::npos);
}

} // namespace
} // namespace doorloom
