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

// ---- What only all doors together ask of what they share.

// Magnets of 0.25 A, each behind its own release, between two strips.
JobBuilder magnets(int count, const std::string& supply)
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", supply).device("TP", "terminal-strip-4x").device("TN", "terminal-strip-4x");
    for (int i = 1; i <= count; ++i) {
        const std::string n = std::to_string(i);
        job.device("EB" + n, "exit-button").device("ML" + n, "mag-lock");
        job.wires("TP:1 → EB" + n + ":C; EB" + n + ":NC → ML" + n + ":+; ML" + n + ":− → TN:1");
    }
    return job;
}

std::multiset<std::string> ofRule(const std::multiset<std::string>& found, const std::string& rule)
{
    std::multiset<std::string> some;
    for (const std::string& each : found)
        if (each.starts_with(rule))
            some.insert(each);
    return some;
}

TEST(Division, AddsUpWhatAllDoorsTakeOfOneSupply)
{
    JobBuilder job = magnets(12, "dc-supply-24-4a");
    job.wires("PS1:+ → TP:1; PS1:− → TN:1");
    EXPECT_EQ(foundBy(job.job(), 0), std::multiset<std::string>{}); // 3.0 A of 4
    for (const int count : {13, 17}) {                              // 3.25 A are more than 80 %; 4.25 A are too many
        JobBuilder more = magnets(count, "dc-supply-24-4a");
        more.wires("PS1:+ → TP:1; PS1:− → TN:1");
        const CheckResult result = Checker(windowBudget, 0).check(more.job());
        ASSERT_EQ(result.findings.size(), 1u);
        EXPECT_EQ(result.findings.front().rule, "overloaded-supply");
        EXPECT_EQ(result.findings.front().severity, count == 13 ? Severity::Doubt : Severity::Fault);
        EXPECT_EQ(atText(more.job(), result.findings.front()), "PS1");
    }
}

TEST(Division, AddsUpWhatAllDoorsSendThroughOneContact)
{
    JobBuilder job = magnets(3, "dc-supply-24-4a");
    job.device("FR1", "fire-relay").wires("PS1:+ → FR1:C; FR1:NC → TP:1; PS1:− → TN:1");
    EXPECT_EQ(foundBy(job.job(), 0), (std::multiset<std::string>{"overloaded-contact at FR1:NC []"})); // 0.75 A of 0.5 for coils
}

// 18 AWG has 20.95 ohms a kilometre: 30 m out and 30 m back are 1.26 ohms. At the end of the battery, 21 V, two magnets of
// 96 ohms get 21 · 48 / 49.26 = 20.46 V of the 20.4 V that they need, ten of them 21 · 9.6 / 10.86 = 18.6 V.
TEST(Division, AddsUpTheDropThatAllDoorsCauseEachOther)
{
    const auto withTrunk = [](int count) {
        JobBuilder job = magnets(count, "dc-supply-24-4a");
        Change change;
        for (const std::string wire : {"PS1:+ → TP:1", "PS1:− → TN:1"}) {
            job.wires(wire);
            Conductor row = *job.job().conductors.find(conductorNamed(job.job(), wire));
            row.gauge = "18 AWG";
            row.length = {30};
            change.steps.emplace_back(Put<Conductor>{row.id, row});
        }
        return job.apply(change).job();
    };
    EXPECT_EQ(ofRule(foundBy(withTrunk(2), 0), "under-voltage"), std::multiset<std::string>{});
    const std::multiset<std::string> ten = ofRule(foundBy(withTrunk(10), 0), "under-voltage");
    EXPECT_EQ(ten.size(), 10u);
    EXPECT_EQ(ten, ofRule(foundBy(withTrunk(10), 1000), "under-voltage")); // as the whole says
}

// A supply of 4 A that is no Class 2 one: 22 AWG bears 3 A in a bundle.
TEST(Division, SaysASupplyThatIsTooStrongForItsConductorsOnceWithALineForEachDoor)
{
    JobBuilder job = magnets(3, "dc-supply-24-4a");
    job.wires("PS1:+ → TP:1; PS1:− → TN:1");
    Change change;
    for (const Conductor& row : job.job().conductors)
        change.steps.emplace_back(Put<Conductor>{row.id, [&] {
                                      Conductor thin = row;
                                      thin.gauge = "22 AWG";
                                      return thin;
                                  }()});
    const Job thin = job.apply(change).job();
    const auto told = [&](std::size_t largestWhole) {
        std::vector<Finding> found = Checker(windowBudget, largestWhole).check(thin).findings;
        std::erase_if(found, [](const Finding& each) { return each.rule != "thin-conductor"; });
        std::multiset<std::string> lines;
        for (const Finding& finding : found) {
            lines.insert(atText(thin, finding));
            for (const Finding& line : finding.lines)
                lines.insert("line: " + atText(thin, line));
        }
        return lines;
    };
    EXPECT_EQ(told(1000), told(0));
    EXPECT_EQ(told(0).count("PS1"), 1u);
    EXPECT_EQ(told(0).count("line: ML3"), 1u);
}

} // namespace
} // namespace doorloom
