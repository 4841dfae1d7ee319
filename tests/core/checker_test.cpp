#include "judge/checker.h"

#include "core/jobs.h"
#include "core/random.h"
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
        job.device("PS" + n, "dc-supply-24").device("LM" + n, "relay-module-negative");
        job.device("PB" + n, "push-plate").device("ES" + n, n == "2" ? "strike-fail-safe" : "strike-fail-secure");
        job.device("R" + n, "relay").device("D" + n, "diode");
        job.option("LM" + n, "K1", n == "3" ? "dry" : "wet").power("PS" + n, "LM" + n);
        job.wires("PB" + n + ":C → LM" + n + ":COM; PB" + n + ":NO → LM" + n + ":IN1; ES" + n + ":1 → LM" + n +
                  ":K1.C; ES" + n + ":2 → LM" + n + ":K1.NO");
        job.opening({.tag = "DOOR" + n,
                     .locks = {"ES" + n},
                     .requests = {{"plate", "PB" + n + "=pressed LM" + n + ":K1=in"}},
                     .promises = {{"rest", Promised::Locked}, {"request plate", Promised::Free}}});
    }
    job.device("OL2", "lamp").wires("PS2:+ → OL2:+; OL2:− → PS2:−");
    return job.job();
}

template <class Row> Id<Row> someRow(const Table<Row>& rows, Random& random)
{
    auto row = rows.begin();
    for (std::size_t steps = random.below(rows.size()); steps > 0; --steps)
        ++row;
    return row->id;
}

class RandomWiring {
public:
    RandomWiring(Job job, Random& random) : job_(std::move(job)), random_(random) {}

    const Job& job() const { return job_; }

    // One edit, or the last one undone. Out: its name.
    std::string edit()
    {
        using Make = std::pair<const char*, Result<Change> (RandomWiring::*)()>;
        static const std::vector<Make> all = {{"land", &RandomWiring::land},         {"unland", &RandomWiring::unland},
                                              {"move an end", &RandomWiring::move},  {"set a jumper", &RandomWiring::jumper},
                                              {"exchange", &RandomWiring::exchange}, {"rename", &RandomWiring::rename},
                                              {"set idle", &RandomWiring::idle},     {"tag a wire", &RandomWiring::tag},
                                              {"place", &RandomWiring::place},       {"remove", &RandomWiring::remove},
                                              {"move a device", &RandomWiring::draw}};
        if (!undo_.empty() && random_.oneIn(4)) {
            const Change change = undo_.back();
            undo_.pop_back();
            EXPECT_TRUE(applyChange(job_, change).ok());
            return "undo";
        }
        const Make& make = all[random_.oneIn(3) ? random_.below(all.size()) : random_.below(4)];
        Result<Change> change = (this->*make.second)();
        if (Result<Change> back = change.ok() ? applyChange(job_, change.value()) : change.problem(); back.ok())
            undo_.push_back(std::move(back.value()));
        return make.first;
    }

private:
    Landing someLanding()
    {
        const DeviceId device = someRow(job_.devices, random_);
        const auto terminals = terminalsOf(*kindOf(job_, device));
        return {device, terminals[random_.below(terminals.size())]->key};
    }
    End someEnd()
    {
        if (random_.oneIn(6))
            return {random_.oneIn(2) ? EndState::Waiting : EndState::Spare, {}};
        return {EndState::Landed, someLanding()};
    }
    WhichEnd someSide() { return random_.oneIn(2) ? WhichEnd::From : WhichEnd::To; }

    Result<Change> land()
    {
        Numbers numbers(job_);
        return addWire(job_, numbers, someEnd(), someEnd()).second;
    }
    Result<Change> unland() { return takeOff(job_, someRow(job_.conductors, random_)); }
    Result<Change> move() { return setEnd(job_, someRow(job_.conductors, random_), someSide(), someEnd()); }
    Result<Change> jumper()
    {
        const Device* device = deviceTagged(job_, "LM" + std::to_string(random_.between(1, 3)));
        if (!device)
            return land();
        const std::vector<Key> values{"wet", "dry", ""}, options{"K1", "K3"}, jumpers{"JA", "JB"};
        return setJumper(job_, device->id, random_.oneOf(options), random_.oneOf(jumpers), random_.oneOf(values));
    }
    Result<Change> exchange()
    {
        const Landing one = someLanding();
        const auto terminals = terminalsOf(*kindOf(job_, one.device));
        return exchangeTerminals(job_, one.device, one.terminal, terminals[random_.below(terminals.size())]->key);
    }
    Result<Change> rename()
    {
        return renameDevice(job_, someRow(job_.devices, random_), "N" + std::to_string(random_.below(99)));
    }
    Result<Change> idle()
    {
        const Operator& moved = *job_.operators.find(someRow(job_.operators, random_));
        return setIdle(job_, moved.id, random_.oneOf(moved.throws).key);
    }
    Result<Change> tag()
    {
        Conductor row = *job_.conductors.find(someRow(job_.conductors, random_));
        row.tag = "W" + std::to_string(random_.below(8));
        return Change{{Put<Conductor>{row.id, row}}};
    }
    Result<Change> place()
    {
        static const std::vector<std::string> kinds{"lamp", "relay", "key-switch", "dc-supply-12", "resistor", "diode"};
        Numbers numbers(job_);
        return placeDevice(job_, numbers, catalogueKind(random_.oneOf(kinds)), "X" + std::to_string(numbers.next)).second;
    }
    Result<Change> remove() { return removeDevice(job_, someRow(job_.devices, random_)); }
    Result<Change> draw()
    {
        Numbers numbers(job_);
        Change change;
        SheetId sheet = job_.sheets.empty() ? SheetId{numbers.take()} : job_.sheets.begin()->id;
        if (job_.sheets.empty())
            change.steps.emplace_back(Put<Sheet>{sheet, Sheet{sheet, "1", 1}});
        const PlacementId at{numbers.take()};
        change.steps.emplace_back(Put<Placement>{at, Placement{at, sheet, someRow(job_.devices, random_), {1, 2}, 0}});
        return change;
    }

    Job job_;
    Random& random_;
    std::vector<Change> undo_;
};

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
