#include "papers/papers.h"
#include "papers/tags.h"

#include "core/golden.h"
#include "core/papercsv.h"
#include "core/papersite.h"

#include <gtest/gtest.h>

#include <map>

namespace doorloom {
namespace {

const PaperSetup english{Language::English, "0123456789ab"};

TEST(Tags, ReadLikeThis)
{
    expectGolden("tags.txt", textOf(*paperNamed("tags"), papersite::oneOfEverything(), english));
}

TEST(Tags, AreOneForEachConductorEndAndCableEndAndDevice)
{
    const Job job = papersite::oneOfEverything();
    std::map<std::string, std::size_t> counts;
    for (const auto& record : papercsv::readRecords(paperNamed("tags")->csv(job, english)))
        ++counts[record.at("tag")];
    EXPECT_EQ(counts["conductor"], 2 * job.conductors.size());
    EXPECT_EQ(counts["cable"], 2 * job.cables.size());
    EXPECT_EQ(counts["device"], job.devices.size());
}

TEST(Tags, SayThisEndLargeAndTheFarEndSmall)
{
    std::map<std::string, std::string> ends;
    for (const auto& record :
         papercsv::readRecords(paperNamed("tags")->csv(papersite::oneOfEverything(), english)))
        if (record.at("conductor") == "W1.1")
            ends[record.at("box") + " " + record.at("large")] = record.at("small");
    EXPECT_EQ(ends,
              (std::map<std::string, std::string>{{"CAB1 LM1:C", "to ES1:1"}, {"FRAME ES1:1", "to LM1:C"}}));
}

TEST(Tags, AreMadeForACableAtAPlaceWhereNothingIsLanded)
{
    papersite::Site site;
    const PlaceId one = site.place("P1", "", true), two = site.place("P2", "", true);
    site.cable("W1", site.cableType("18/2", {"RD", "WH"}), one, two);
    std::vector<std::string> boxes;
    const TagSheet sheet = tagsOf(site.job, "");
    for (const Tag& tag : sheet.tags)
        boxes.push_back(tag.box + " " + inWords(tag.large));
    EXPECT_EQ(boxes, (std::vector<std::string>{"P1 W1", "P2 W1"}));
}

} // namespace
} // namespace doorloom
