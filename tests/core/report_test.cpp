#include "judge/report.h"

#include "base/json.h"
#include "core/jobs.h"
#include "judge/findingtext.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

namespace doorloom {
namespace {

using Strings = std::vector<std::string>;

constexpr Text words = {.en = "It stays dead.", .es = "Queda muerto."};

Job twoDevices()
{
    return JobBuilder().device("PS1", "dc-supply-24").device("PB1", "push-plate").job();
}

Finding findingAt(const Job& job, Severity severity)
{
    const Device& plate = *deviceTagged(job, "PB1");
    Finding finding;
    finding.rule = "never-fed";
    finding.severity = severity;
    finding.at = {Spot{.device = plate.id, .key = {}, .conductor = {}, .cable = {}}};
    finding.throws = {Witness{
        .throws = {{.moved = plate.bindings.front().moved, .device = {}, .option = {}, .thrown = "pressed"}},
        .situation = {}}};
    finding.why = words;
    finding.remedy = words;
    return finding;
}

CheckResult resultWith(std::vector<Finding> findings)
{
    CheckResult result;
    result.findings = std::move(findings);
    result.coverage = {.positions = 1'234'567, .covered = 1'234'567, .steps = 10};
    return result;
}

Job withSetAside(Job job, const Finding& finding)
{
    const SetAsideId id{job.nextNumber};
    const SetAside row{.id = id,
                       .rule = std::string(finding.rule),
                       .at = "PB1",
                       .throws = "PB1=pressed",
                       .reason = "the lamp comes later",
                       .name = "R. Ejemplo",
                       .date = "2026-01-31"};
    EXPECT_TRUE(applyChange(job, Change{{Put<SetAside>{id, row}}}).ok());
    return job;
}

TEST(Outcome, IsFoundFromAFaultUpwards)
{
    const Job job = twoDevices();
    EXPECT_EQ(outcomeOf(job, resultWith({})), Outcome::Fine);
    EXPECT_EQ(outcomeOf(job, resultWith({findingAt(job, Severity::Hint)})), Outcome::Fine);
    EXPECT_EQ(outcomeOf(job, resultWith({findingAt(job, Severity::Doubt)})), Outcome::Fine);
    EXPECT_EQ(outcomeOf(job, resultWith({findingAt(job, Severity::Fault)})), Outcome::Found);
    EXPECT_EQ(outcomeOf(job, resultWith({findingAt(job, Severity::Danger)})), Outcome::Found);
}

TEST(Outcome, IsUnansweredWhereNothingWorseIsProved)
{
    const Job job = twoDevices();
    Finding undecided = findingAt(job, Severity::Danger);
    undecided.undecided = true;
    CheckResult result = resultWith({undecided});
    result.everyQuestionAnswered = false;
    EXPECT_EQ(outcomeOf(job, result), Outcome::Unanswered);
    result.findings.push_back(findingAt(job, Severity::Fault));
    EXPECT_EQ(outcomeOf(job, result), Outcome::Found);
}

TEST(Outcome, LeavesOutFaultsThatAreSetAsideButNoDanger)
{
    const Job plain = twoDevices();
    const Finding fault = findingAt(plain, Severity::Fault);
    const Job job = withSetAside(plain, fault);
    EXPECT_EQ(outcomeOf(job, resultWith({fault})), Outcome::Fine);
    EXPECT_EQ(outcomeOf(job, resultWith({findingAt(job, Severity::Danger)})), Outcome::Found);

    Finding elsewhere = fault;
    elsewhere.throws = {Witness{}};
    EXPECT_EQ(outcomeOf(job, resultWith({elsewhere})), Outcome::Found);
}

Strings keysOf(const Json& json)
{
    Strings keys;
    for (const auto& [key, value] : std::get<Json::Object>(json.value))
        keys.push_back(key);
    return keys;
}

std::string textOf(const Json& json, const char* key)
{
    return std::get<std::string>(json.find(key)->value);
}

TEST(ReportJson, HasTheMembersThatProgramsRelyOn)
{
    const Job job = twoDevices();
    Finding finding = findingAt(job, Severity::Fault);
    finding.lines = {findingAt(job, Severity::Doubt)};
    const Result<Json> read = parseJson(reportJson(job, resultWith({finding}), Language::Spanish), "report");
    ASSERT_TRUE(read.ok()) << inWords(read.problem());
    EXPECT_EQ(keysOf(read.value()), (Strings{"findings", "coverage"}));
    EXPECT_EQ(keysOf(*read.value().find("coverage")),
              (Strings{"positions", "covered", "steps", "everyQuestionAnswered"}));

    const Json& told = std::get<Json::Array>(read.value().find("findings")->value).at(0);
    EXPECT_EQ(keysOf(told), (Strings{"rule", "severity", "at", "throws", "why", "remedy", "path", "lines"}));
    EXPECT_EQ(textOf(told, "rule"), "never-fed");
    EXPECT_EQ(textOf(told, "severity"), "fault");
    EXPECT_EQ(textOf(told, "why"), "Queda muerto.");
    const Json& at = std::get<Json::Array>(told.find("at")->value).at(0);
    EXPECT_EQ(std::get<std::string>(at.value), "PB1");
    const Json& witness = std::get<Json::Array>(told.find("throws")->value).at(0);
    EXPECT_EQ(std::get<std::string>(std::get<Json::Array>(witness.value).at(0).value), "PB1=pressed");
    const Json& line = std::get<Json::Array>(told.find("lines")->value).at(0);
    EXPECT_EQ(textOf(line, "severity"), "doubt");
}

TEST(ReportJson, SaysWhatIsSetAsideAndWhatIsNotDecided)
{
    const Job plain = twoDevices();
    Finding finding = findingAt(plain, Severity::Fault);
    finding.undecided = true;
    const Job job = withSetAside(plain, finding);
    const Result<Json> read = parseJson(reportJson(job, resultWith({finding}), Language::English), "report");
    ASSERT_TRUE(read.ok()) << inWords(read.problem());
    const Json& told = std::get<Json::Array>(read.value().find("findings")->value).at(0);
    EXPECT_EQ(keysOf(told), (Strings{"rule", "severity", "at", "throws", "why", "remedy", "path", "lines",
                                     "undecided", "setAside"}));
    EXPECT_EQ(textOf(*told.find("setAside"), "reason"), "the lamp comes later");
}

TEST(ReportText, TellsEachFindingWithWhereWhenWhyAndWhatToDo)
{
    const Job job = twoDevices();
    const std::string text =
        reportText(job, resultWith({findingAt(job, Severity::Fault)}), "a.doorjob", Language::English);
    const std::string start = "Job: a.doorjob\n"
                              "\n"
                              "FAULT (1)\n"
                              "\n"
                              "  PB1: Never fed: no way back to the source  [never-fed]\n"
                              "    When:        with PB1 pressed\n"
                              "    Why:         It stays dead.\n"
                              "    To do:       It stays dead.\n"
                              "\n"
                              "Looked at: all 1,234,567 positions that matter to the questions asked.\n"
                              "Not examined:\n";
    EXPECT_EQ(text.substr(0, start.size()), start);
}

TEST(ReportText, SaysWhenItIsNotExhaustive)
{
    const Job job = twoDevices();
    CheckResult result = resultWith({});
    result.coverage = {.positions = 2147483648.0, .covered = 1'000'000, .steps = 10};
    result.everyQuestionAnswered = false;
    const std::string text = reportText(job, result, "a.doorjob", Language::English);
    EXPECT_NE(
        text.find(
            "\nLooked at, not exhaustive: 1,000,000 of 2^31 positions.\n"
            "Some questions were too large to answer: for those, nothing here says that all is well.\n"),
        std::string::npos)
        << text;
}

TEST(ReportText, StaysWithinAHundredColumns)
{
    const Job job = twoDevices();
    Finding finding = findingAt(job, Severity::Danger);
    std::string many = "ñ";
    for (int i = 0; i < 200; ++i)
        many += " ññññ";
    finding.why = verbatim(many);
    std::istringstream lines(reportText(job, resultWith({finding}), "a.doorjob", Language::Spanish));
    std::string line;
    std::size_t widest = 0;
    while (std::getline(lines, line)) {
        std::size_t width = 0;
        for (const char c : line)
            width += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
        widest = std::max(widest, width);
    }
    EXPECT_LE(widest, 100u);
    EXPECT_GT(widest, 90u);
}

// ---- The path

Origin conductorAt(const Job& job, std::string_view wire)
{
    return {conductorNamed(job, wire), {}, {}, {}};
}

Origin partOf(const Job& job, const std::string& tag, const Key& part)
{
    return {{}, deviceTagged(job, tag)->id, part, {}};
}

std::string pathText(const Job& job, std::vector<Origin> path)
{
    Finding finding;
    finding.path = std::move(path);
    std::string text;
    for (const Origin& origin : pathForPeople(job, finding))
        text += originText(job, origin) + "; ";
    return text;
}

TEST(PathForPeople, LeavesBarsOutWhereBothSidesNameTheStrip)
{
    JobBuilder builder;
    builder.device("PS1", "dc-supply-24").device("TS1", "terminal-strip-8").device("LM1", "relay-module-negative");
    const Job job = builder.wires("PS1:− → TS1:1; TS1:4 → LM1:COM; LM1:− → PS1:−").job();
    const Origin in = conductorAt(job, "PS1:− → TS1:1"), out = conductorAt(job, "TS1:4 → LM1:COM"),
                 back = conductorAt(job, "LM1:− → PS1:−");
    const Origin bar1 = partOf(job, "TS1", "bar1"), bar2 = partOf(job, "TS1", "bar2");

    EXPECT_EQ(pathText(job, {in, bar1, bar2, out}), "PS1:− to TS1:1; TS1:4 to LM1:COM; ");
    EXPECT_EQ(pathText(job, {in, bar1, bar2}), "PS1:− to TS1:1; TS1:bar1; TS1:bar2; "); // where it stops
    EXPECT_EQ(pathText(job, {bar1, out}), "TS1:bar1; TS1:4 to LM1:COM; ");
    // From one strip of a module to another: not to be seen from outside.
    EXPECT_EQ(pathText(job, {out, partOf(job, "LM1", "common"), back}),
              "TS1:4 to LM1:COM; LM1:common; LM1:− to PS1:−; ");
}

} // namespace
} // namespace doorloom
