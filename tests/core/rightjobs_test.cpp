#include "circuits/harmless.h"
#include "circuits/seen.h"
#include "rightjobs/rightjob.h"

#include "verdict/verdict.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <ostream>

namespace doorloom {

void PrintTo(const RightJob& right, std::ostream* out)
{
    *out << right.name;
}

namespace {

class RightJobs : public testing::TestWithParam<RightJob> {};

TEST_P(RightJobs, GiveNothingToSay)
{
    for (const Seen& seen : seenIn(jobOf(GetParam()), windowBudget))
        EXPECT_EQ(seen.severity, "hint") << written(seen);
}

TEST_P(RightJobs, GiveNothingToSayAfterHarmlessEdits)
{
    const Job right = jobOf(GetParam());
    for (const Harmless& edit : harmlessEdits(right, right, 6))
        for (const Seen& seen : seenIn(edit.job, windowBudget))
            EXPECT_EQ(seen.severity, "hint") << edit.name << ": " << written(seen);
}

std::string testName(const testing::TestParamInfo<RightJob>& each)
{
    std::string name = each.param.name;
    std::replace_if(
        name.begin(), name.end(), [](unsigned char letter) { return !std::isalnum(letter); }, '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Built, RightJobs, testing::ValuesIn(allRightJobs()), testName);

} // namespace
} // namespace doorloom
