#include "judge/checker.h"
#include "judge/findingtext.h"

#include "core/jobs.h"
#include "core/random.h"
#include "core/randomwiring.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace doorloom {
namespace {

// Doors on one supply, with a second supply of another voltage tied to it, a key switch that two doors share and a relay
// in the feed of a third.
Job doorsOnOneSupply()
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("PS2", "dc-supply-12").device("TP", "terminal-strip-8").device("TN", "terminal-strip-8");
    job.wires("PS1:+ → TP:1; PS1:− → TN:1; PS2:− → TN:8");
    for (const std::string n : {"1", "2", "3"}) {
        const std::string plus = "TP:" + std::to_string(std::stoi(n) + 1), minus = "TN:" + std::to_string(std::stoi(n) + 1);
        addPlateDoor(job, n, n == "2" ? "strike-fail-safe" : "strike-fail-secure", n == "3" ? "dry" : "wet");
        job.device("OL" + n, "lamp").wire(plus, "OL" + n + ":+").wire("OL" + n + ":−", minus);
        job.wire(plus, "LM" + n + ":+").wire(minus, "LM" + n + ":−");
    }
    job.device("OL4", "lamp-12").wires("PS2:+ → OL4:+; OL4:− → PS2:−");
    return job.job();
}

// What is found, heads and lines alike: which of them speaks may differ.
void collect(const Job& job, const std::vector<Finding>& findings, std::multiset<std::string>& all)
{
    for (const Finding& finding : findings) {
        std::string throws;
        for (const auto& cube : throwTexts(job, finding))
            throws += fmt::format("[{}]", fmt::join(cube, ","));
        all.insert(fmt::format("{} at {} {}", finding.rule, atText(job, finding), throws));
        collect(job, finding.lines, all);
    }
}

std::multiset<std::string> foundBy(const Job& job, std::size_t largestWhole)
{
    std::multiset<std::string> all;
    collect(job, Checker(windowBudget, largestWhole).check(job).findings, all);
    return all;
}

// What else happens while a source is shorted is told by the short: it may be judged with what it shorts, or apart from it.
bool hasAShort(const std::multiset<std::string>& found)
{
    return std::any_of(found.begin(), found.end(), [](const std::string& each) { return each.starts_with("shorted"); });
}

TEST(Division, FindsWhatTheWholeFinds)
{
    std::size_t compared = 0, withShort = 0;
    forEachSeed(200, [&](Random& random) {
        RandomWiring wiring(doorsOnOneSupply(), random);
        for (int edit = 0; edit < 6 && !::testing::Test::HasFailure(); ++edit) {
            const std::string what = wiring.edit();
            std::multiset<std::string> whole = foundBy(wiring.job(), 1000), divided = foundBy(wiring.job(), 0);
            const auto isNoShort = [](const std::string& each) { return !each.starts_with("shorted"); };
            if (hasAShort(whole)) {
                ++withShort;
                std::erase_if(whole, isNoShort);
                std::erase_if(divided, isNoShort);
            }
            // Looked at from several parts it may be told several times among the lines, never less often.
            const std::set<std::string> one(whole.begin(), whole.end()), other(divided.begin(), divided.end());
            ++compared;
            EXPECT_EQ(fmt::format("{}", fmt::join(one, "\n")), fmt::format("{}", fmt::join(other, "\n"))) << "after: " << what;
        }
    });
    fmt::print("{} jobs compared, {} of them with a short\n", compared, withShort);
    EXPECT_GT(compared, 2 * withShort);
}

// Eight doors on one supply, by two strips of their own each.
JobBuilder eightDoors()
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("TP", "terminal-strip-8").device("TN", "terminal-strip-8");
    job.device("TN9", "terminal-strip-8").wires("PS1:+ → TP:1; PS1:− → TN9:1; TN9:2 → TN:1");
    for (const std::string n : {"1", "2", "3", "4", "5", "6", "7", "8"}) {
        addPlateDoor(job, n, "strike-fail-secure", "wet");
        job.wire("TP:" + n, "LM" + n + ":+").wire("TN:" + n, "LM" + n + ":−");
    }
    return job;
}

TEST(Division, SaysARailsMissingReturnOnceWithALineForEachDoor)
{
    JobBuilder job = eightDoors();
    job.takeOff("TN9:2 → TN:1");
    const CheckResult result = Checker(windowBudget, 0).check(job.job());
    ASSERT_EQ(result.findings.size(), 1u);
    std::set<std::string> modules;
    for (const Finding& line : result.findings.front().lines)
        modules.insert(atText(job.job(), line));
    modules.insert(atText(job.job(), result.findings.front()));
    for (const std::string n : {"1", "2", "3", "4", "5", "6", "7", "8"})
        EXPECT_TRUE(modules.contains("LM" + n)) << fmt::format("{}", fmt::join(modules, ", "));
}

TEST(Division, SaysAShortThatTwoDoorsMakeOnceAtTheSourceWithBothWays)
{
    JobBuilder job = eightDoors();
    for (const std::string n : {"1", "6"}) // across the door's own feed
        job.device("KS" + n, "key-switch").wire("LM" + n + ":+", "KS" + n + ":C").wire("LM" + n + ":−", "KS" + n + ":NO");
    const CheckResult result = Checker(windowBudget, 0).check(job.job());
    std::vector<const Finding*> shorts;
    for (const Finding& finding : result.findings)
        if (finding.rule == "shorted")
            shorts.push_back(&finding);
    ASSERT_EQ(shorts.size(), 1u);
    EXPECT_EQ(atText(job.job(), *shorts.front()), "PS1");
    std::set<std::string> throws;
    for (const auto& cube : throwTexts(job.job(), *shorts.front()))
        throws.insert(fmt::format("{}", fmt::join(cube, " ")));
    EXPECT_EQ(throws, (std::set<std::string>{"KS1=on", "KS6=on"}));
}

TEST(Division, JudgesOnlyTheDoorThatAnEditTouches)
{
    JobBuilder job = eightDoors();
    Checker checker(windowBudget, 0);
    checker.check(job.job());
    EXPECT_EQ(checker.partsJudged(), 9u); // the doors and the rails' own wiring
    job.option("LM4", "K3", "wet");
    checker.check(job.job());
    EXPECT_EQ(checker.partsJudged(), 1u);
    job.device("OL4", "lamp").wire("LM4:K3.C", "OL4:+").wire("LM4:K3.NO", "OL4:−");
    checker.check(job.job());
    EXPECT_EQ(checker.partsJudged(), 1u);
}

} // namespace
} // namespace doorloom
