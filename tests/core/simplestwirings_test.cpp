#include "circuits/seen.h"
#include "circuits/simplest.h"

#include "catalogue/catalogue.h"
#include "verdict/verdict.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>
#include <set>

namespace doorloom {

void PrintTo(const SimplestWiring& wiring, std::ostream* out)
{
    *out << wiring.kind;
}

namespace {

std::vector<SimplestWiring> wirings()
{
    return allSimplestWirings();
}

std::vector<SimplestWiring> wiringsWithASlip()
{
    std::vector<SimplestWiring> all = wirings();
    std::erase_if(all, [](const SimplestWiring& wiring) { return !wiring.slip; });
    return all;
}

TEST(SimplestWirings, AreThereForEveryKindOfTheCatalogueAndUseIt)
{
    const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    ASSERT_TRUE(catalogue.ok());
    std::multiset<std::string> wired;
    for (const SimplestWiring& wiring : wirings()) {
        wired.insert(wiring.kind);
        bool isUsed = false;
        for (const JobKind& kind : jobOf(wiring).kinds)
            isUsed = isUsed || kind.kind.name == wiring.kind;
        EXPECT_TRUE(isUsed) << wiring.kind;
    }
    for (const Kind& kind : catalogue.value().kinds)
        EXPECT_EQ(wired.count(kind.name), 1u) << kind.name << ": wire it in tests/core/circuits/simplest*.cpp";
    EXPECT_EQ(wired.size(), catalogue.value().kinds.size());
}

class SimplestWiringOf : public testing::TestWithParam<SimplestWiring> {};

TEST_P(SimplestWiringOf, GivesNothingToSay)
{
    for (const Seen& seen : seenIn(jobOf(GetParam()), windowBudget))
        EXPECT_EQ(seen.severity, "hint") << written(seen);
}

bool says(const std::vector<Seen>& all, const Slip& slip)
{
    return std::any_of(all.begin(), all.end(), [&](const Seen& seen) {
        return (seen.rule == slip.rule && seen.at.starts_with(slip.at) && seen.severity != "hint") || says(seen.lines, slip);
    });
}

class SlipIn : public SimplestWiringOf {};

TEST_P(SlipIn, IsSeen)
{
    JobBuilder wrong(jobOf(GetParam()), Clamps::Roomy);
    GetParam().slip->edit(wrong);
    const std::vector<Seen> all = seenIn(wrong.job(), windowBudget);
    std::string text;
    for (const Seen& seen : all)
        text += "\n    " + written(seen);
    EXPECT_TRUE(says(all, *GetParam().slip)) << GetParam().slip->rule << " " << GetParam().slip->at << "; but:" << text;
}

std::string testName(const testing::TestParamInfo<SimplestWiring>& each)
{
    std::string name = each.param.kind;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Kinds, SimplestWiringOf, testing::ValuesIn(wirings()), testName);
INSTANTIATE_TEST_SUITE_P(Kinds, SlipIn, testing::ValuesIn(wiringsWithASlip()), testName);

} // namespace
} // namespace doorloom
