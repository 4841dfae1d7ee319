#include "judge/checker.h"

#include "core/jobs.h"
#include "core/random.h"
#include "core/randomwiring.h"
#include "judge/findingtext.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
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

// Every wire of some length, or a core of a cable; two cable types, two places.
Job withNumbers(const Job& job)
{
    std::uint32_t next = job.nextNumber;
    Change change;
    std::vector<CableTypeId> types;
    for (const std::string name : {"one", "other"}) {
        CableType type;
        type.id = {next++};
        type.name = name;
        for (int core = 1; core <= 2; ++core)
            type.cores.push_back({core, "", "22 AWG", 0, false});
        types.push_back(type.id);
        change.steps.emplace_back(Put<CableType>{type.id, type});
        Place place;
        place.id = {next++};
        place.tag = name;
        change.steps.emplace_back(Put<Place>{place.id, place});
    }
    Cable cable;
    int i = 0;
    for (Conductor row : job.conductors) {
        const Metres length{5.0 + (i * 37) % 60};
        if (i % 4 < 2) {
            row.gauge = i % 4 == 0 ? "18 AWG" : "22 AWG";
            row.length = length;
        } else { // the core of a cable
            if (i % 4 == 2) {
                cable.id = {next++};
                cable.tag = fmt::format("C{}", i);
                cable.type = types[static_cast<std::size_t>(i) / 4 % 2];
                cable.length = length;
                change.steps.emplace_back(Put<Cable>{cable.id, cable});
            }
            row.make = ConductorMake::Core;
            row.cable = cable.id;
            row.core = i % 4 - 1;
        }
        change.steps.emplace_back(Put<Conductor>{row.id, row});
        ++i;
    }
    return JobBuilder(job, Clamps::Roomy).apply(change).job();
}

int countIn(const std::vector<Finding>& findings, const std::string& rule)
{
    int count = 0;
    for (const Finding& finding : findings)
        count += (finding.rule == rule) + countIn(finding.lines, rule);
    return count;
}

// EDITS=10000: so many. Each job whole, and as doors on a common supply that are judged apart.
TEST(Checker, SaysOfEditedNumbersWhatACheckFromNothingSays)
{
    constexpr std::uint64_t editsOfAJob = 12;
    const char* wanted = std::getenv("EDITS");
    const std::uint64_t edits = wanted ? std::strtoull(wanted, nullptr, 10) : 120;
    std::map<std::string, int> done, found;
    forEachSeed(edits / editsOfAJob, [&](Random& random) {
        const bool isWhole = random.oneIn(2);
        const std::size_t largestWhole = isWhole ? Checker::mostWhole : 0;
        RandomWiring wiring(withNumbers(isWhole ? threeDoors() : doorsOnOneSupply()), random, RandomWiring::Edited::NumbersToo);
        Checker checker(windowBudget, largestWhole);
        std::vector<std::string> history;
        for (std::uint64_t edit = 0; edit < editsOfAJob; ++edit) {
            history.push_back(wiring.edit());
            ++done[history.back()];
            const CheckResult result = checker.check(wiring.job());
            for (const char* rule : {"under-voltage", "over-voltage", "overloaded-supply", "overloaded-contact", "half-fed", "thin-conductor", "class2-limit", "nearly-shorted"})
                found[rule] += countIn(result.findings, rule);
            ASSERT_EQ(told(wiring.job(), result), told(wiring.job(), Checker(windowBudget, largestWhole).check(wiring.job())))
                << fmt::format("{}", fmt::join(history, ", "));
        }
    });
    for (const auto& [name, count] : done)
        fmt::print("{} {}  ", name, count);
    fmt::print("\nfound: ");
    for (const auto& [rule, count] : found)
        fmt::print("{} {}  ", rule, count);
    fmt::print("\n");
    EXPECT_GT(found["under-voltage"], 0);
    EXPECT_GT(found["overloaded-contact"] + found["overloaded-supply"], 0);
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
