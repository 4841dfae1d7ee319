#include "papers/papers.h"
#include "papers/partslist.h"

#include "core/golden.h"
#include "core/papercsv.h"
#include "core/papersite.h"

#include <gtest/gtest.h>

#include <map>
#include <numeric>

namespace doorloom {
namespace {

const PaperSetup english{Language::English, "0123456789ab"};

TEST(PartsList, ReadsLikeThis)
{
    expectGolden("parts.txt", textOf(*paperNamed("parts"), papersite::oneOfEverything(), english));
    expectGolden("parts-es.txt", textOf(*paperNamed("parts"), papersite::oneOfEverything(), {Language::Spanish, "0123456789ab"}));
}

TEST(PartsList, CountsEveryDeviceAndCableOnceUnderWhoBringsIt)
{
    const Job job = papersite::oneOfEverything();
    std::map<std::string, int> devices;
    int cables = 0;
    for (const auto& record : papercsv::readRecords(paperNamed("parts")->csv(job, english))) {
        if (!record.at("kind").empty())
            devices[record.at("owner")] += std::stoi(record.at("count"));
        if (record.at("what").starts_with("cable"))
            cables += std::stoi(record.at("count"));
    }
    // PB1 is there, LM2 is to be left alone, CR1 is by others.
    EXPECT_EQ(devices, (std::map<std::string, int>{{"new", static_cast<int>(job.devices.size()) - 3}, {"existing", 2}, {"by others", 1}}));
    EXPECT_EQ(cables, static_cast<int>(job.cables.size()));
}

TEST(PartsList, PutsTheSameKindOnOneLineWithAllItsTags)
{
    papersite::Site site;
    for (const char* tag : {"PB10", "PB2"})
        site.device(tag, papersite::plate(), {});
    site.device("PB3", papersite::plate(), {}, "", Standing::Moved);
    const PartsList list = partsOf(site.job, "");
    ASSERT_EQ(list.lines.size(), 2u);
    EXPECT_EQ(list.lines[0].count, 2);
    EXPECT_EQ(list.lines[0].tags, (std::vector<std::string>{"PB2", "PB10"}));
    EXPECT_EQ(list.lines[1].owner, PartOwner::Existing);
    EXPECT_NE(textOf(*paperNamed("parts"), site.job, english).find("moved"), std::string::npos);
}

} // namespace
} // namespace doorloom
