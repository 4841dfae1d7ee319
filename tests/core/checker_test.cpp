#include "judge/checker.h"

#include "core/jobs.h"
#include "core/random.h"
#include "core/randomwiring.h"
#include "judge/findingtext.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <numeric>

namespace doorloom {
namespace {

// Three doors in one job, each with its own supply, and a lamp on the second one's.
Job threeDoors()
{
    JobBuilder job(Clamps::Roomy);
    for (const std::string n : {"1", "2", "3"}) {
        addPlateDoor(job, n, n == "2" ? "strike-fail-safe" : "strike-fail-secure", n == "3" ? "dry" : "wet");
        job.device("PS" + n, "dc-supply-24").power("PS" + n, "LM" + n);
        job.device("R" + n, "relay").device("D" + n, "diode");
    }
    job.device("OL2", "lamp").wires("PS2:+ → OL2:+; OL2:− → PS2:−");
    return job.job();
}

// ---- Everything that a finding says, so that two can be compared and a difference read.

std::string told(const Job& job, const Finding& finding)
{
    std::string text = fmt::format("{} {} {} {} {}{}{}\n  {}\n  {}\n  ", finding.rule, finding.reason,
                                   severityKey(finding.severity), atText(job, finding), fmt::join([&] {
                                       std::vector<std::string> cubes;
                                       for (const auto& cube : throwTexts(job, finding))
                                           cubes.push_back(fmt::format("[{}]", fmt::join(cube, ",")));
                                       return cubes;
                                   }(), " "),
                                   finding.moreThrows ? " more" : "", finding.undecided ? " undecided" : "",
                                   inWords(finding.why), inWords(finding.remedy));
    for (const Origin& origin : finding.path)
        text += originText(job, origin) + "; ";
    for (const Remedy& remedy : finding.remedies) {
        text += "\n  by: " + inWords(remedy.words);
        Job mended = job;
        text += applyChange(mended, remedy.change).ok() ? " (can be made" : " (refused";
        for (const Step& step : remedy.change.steps)
            std::visit([&](const auto& put) { text += fmt::format(" {}{}", put.id.number, put.after ? "" : "-"); }, step);
        text += ")";
    }
    for (const Finding& line : finding.lines)
        text += "\n  line: " + told(job, line);
    return text;
}

std::string told(const Job& job, const CheckResult& result)
{
    std::string text = fmt::format("{} of {} positions in {} steps, {}\n", result.coverage.covered,
                                   result.coverage.positions, result.coverage.steps, result.everyQuestionAnswered);
    for (const Finding& finding : result.findings)
        text += told(job, finding) + "\n";
    return text;
}

TEST(Checker, SaysAfterEveryEditWhatACheckFromNothingSays)
{
    std::map<std::string, int> edits;
    std::size_t findings = 0;
    forEachSeed(200, [&](Random& random) {
        RandomWiring wiring(threeDoors(), random);
        Checker checker;
        std::vector<std::string> history;
        for (int edit = 0; edit < 12; ++edit) {
            history.push_back(wiring.edit());
            ++edits[history.back()];
            const CheckResult result = checker.check(wiring.job());
            findings += result.findings.size();
            ASSERT_EQ(told(wiring.job(), result), told(wiring.job(), checkJob(wiring.job(), windowBudget)))
                << fmt::format("{}", fmt::join(history, ", "));
        }
    });
    for (const auto& [name, count] : edits)
        fmt::print("{} {}  ", name, count);
    fmt::print("\n{} findings compared\n", findings);
    EXPECT_GT(findings, 2000u);
}

TEST(Checker, JudgesOnlyWhatAnEditTouches)
{
    JobBuilder job(threeDoors(), Clamps::Roomy);
    Checker checker;
    checker.check(job.job());
    EXPECT_GT(checker.partsJudged(), 3u);
    job.option("LM1", "K3", "wet");
    checker.check(job.job());
    EXPECT_EQ(checker.partsJudged(), 1u);
    checker.check(job.job());
    EXPECT_EQ(checker.partsJudged(), 0u);
}

TEST(Checker, DoesNothingWhenADeviceIsMovedOnTheSheet)
{
    JobBuilder job(threeDoors(), Clamps::Roomy);
    Checker checker;
    const SheetId sheet{job.job().nextNumber};
    job.apply({{Put<Sheet>{sheet, Sheet{sheet, "1", 1}}}});
    const PlacementId at{job.job().nextNumber};
    const DeviceId device = job.job().devices.begin()->id;
    job.apply({{Put<Placement>{at, Placement{at, sheet, device, {0, 0}, 0}}}});
    checker.check(job.job());
    job.apply({{Put<Placement>{at, Placement{at, sheet, device, {100, 50}, 1}}}});
    checker.check(job.job());
    EXPECT_EQ(checker.partsJudged(), 0u);
}

TEST(Checker, KeepsWhatItJudgedBeforeItGaveUp)
{
    JobBuilder job(threeDoors(), Clamps::Roomy);
    Checker whole, checker;
    const CheckResult expected = whole.check(job.job());
    int asked = 0;
    EXPECT_FALSE(checker.checkWhile(job.job(), [&] { return ++asked <= 2; })); // two parts, then enough
    const CheckResult result = checker.check(job.job());
    EXPECT_EQ(checker.partsJudged(), whole.partsJudged() - 2);
    ASSERT_EQ(result.findings.size(), expected.findings.size());
    for (std::size_t i = 0; i < expected.findings.size(); ++i)
        EXPECT_EQ(atText(job.job(), result.findings[i]), atText(job.job(), expected.findings[i]));

    checker.checkWhile(job.job(), [] { return false; }); // what was known stays so
    checker.check(job.job());
    EXPECT_EQ(checker.partsJudged(), 0u);
}

TEST(Checker, FindsOneTagOnConductorsThatDoNotHangTogether)
{
    JobBuilder job(threeDoors(), Clamps::Roomy);
    Job tagged = job.job();
    for (const char* wire : {"PS1:+ → LM1:+", "PS3:+ → LM3:+"}) {
        Conductor row = *tagged.conductors.find(conductorNamed(tagged, wire));
        row.tag = "W1";
        ASSERT_TRUE(applyChange(tagged, {{Put<Conductor>{row.id, row}}}).ok());
    }
    const auto findings = findingsOf(tagged, windowBudget);
    EXPECT_EQ(std::count_if(findings.begin(), findings.end(),
                            [](const Finding& finding) { return finding.rule == "duplicate-tag"; }),
              1);
}

} // namespace
} // namespace doorloom
