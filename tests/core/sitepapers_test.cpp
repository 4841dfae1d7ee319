#include "file/jobfile.h"
#include "judge/findings.h"
#include "judge/setaside.h"
#include "papers/dangers.h"
#include "papers/papers.h"
#include "papers/voltsreport.h"
#include "verdict/positions.h"

#include "core/golden.h"
#include "core/jobs.h"
#include "core/papercsv.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>

// The papers that are ticked on site: ring-out, meter, function test, locks, findings.
namespace doorloom {
namespace {

const PaperSetup english{Language::English, "0123456789ab"};

Job sample(const std::string& name)
{
    const Result<Job> job = readJobFile(SOURCE_FOLDER "/samples/" + name + ".doorjob");
    EXPECT_TRUE(job.ok()) << name;
    return job.value();
}

std::vector<std::string> sampleNames()
{
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(SOURCE_FOLDER "/samples"))
        if (entry.path().extension() == ".doorjob")
            names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

using Rows = std::vector<std::vector<std::string>>;

Rows rowsOf(const char* paper, const Job& job, const PaperSetup& setup = english)
{
    Rows rows;
    for (const PaperTable& table : paperNamed(paper)->tables(job, setup).tables)
        rows.insert(rows.end(), table.rows.begin(), table.rows.end());
    return rows;
}

const std::vector<std::string>& rowWith(const Rows& rows, std::size_t column, const std::string& words, std::size_t more = 0, const std::string& also = {})
{
    for (const auto& row : rows)
        if (row[column] == words && (also.empty() || row[more] == also))
            return row;
    throw std::runtime_error("no row '" + words + "' " + also);
}

TEST(SitePapers, ReadLikeThis)
{
    for (const char* paper : {"ring-out", "meter", "locks", "function-test"})
        expectGolden(std::string(paper) + ".txt", textOf(*paperNamed(paper), sample("restroom-staff"), english));
    expectGolden("findings.txt", textOf(*paperNamed("findings"), sample("restroom-staff-broken"), english));
    expectGolden("function-test-es.txt", textOf(*paperNamed("function-test"), sample("archive-room"), {Language::Spanish, "0123456789ab"}));
}

TEST(SitePapers, GiveProgramsAsManyCellsAsColumns)
{
    for (const std::string& name : sampleNames())
        for (const Paper* paper : allPapers())
            if (paper->tables) {
                const auto cells = papercsv::readCells(paper->csv(sample(name), english));
                for (const auto& row : cells)
                    EXPECT_EQ(row.size(), cells.front().size()) << paper->name << " " << name;
            }
}

// "207 ES1 fire alarm"
std::set<std::string> brokenByRule(const Job& job)
{
    std::set<std::string> all;
    const auto add = [&](const Finding& finding) {
        if (finding.rule == "wrong-in-situation")
            all.insert(tagOf(job, finding.at.front().device));
    };
    for (const Finding& finding : findingsOf(job)) {
        add(finding);
        for (const Finding& line : finding.lines)
            add(line);
    }
    return all;
}

TEST(LockSheet, SaysNoWhereTheRuleFindsAPromiseBrokenAndNowhereElse)
{
    std::size_t broken = 0;
    for (const std::string& name : sampleNames()) {
        std::set<std::string> no;
        for (const auto& row : rowsOf("locks", sample(name)))
            if (row[4] == "NO")
                no.insert(row[1]);
        EXPECT_EQ(no, brokenByRule(sample(name))) << name;
        broken += no.size();
    }
    EXPECT_GT(broken, 0u);
}

TEST(LockSheet, SaysWhatAFailSecureStrikeDoesWithoutPower)
{
    const Rows rows = rowsOf("locks", sample("restroom-staff"));
    EXPECT_EQ(rowWith(rows, 0, "all power lost"), (std::vector<std::string>{"all power lost", "ES1", "locked", "locked", "yes"}));
    EXPECT_EQ(rowWith(rows, 0, "request staff key")[2], "free");
    // What its module does on battery is nobody's promise.
    EXPECT_EQ(rowWith(rows, 0, "mains lost")[2], "locked or free: by a programmed output or a jumper");
}

TEST(FunctionTest, HasAStepForEachPromise)
{
    for (const std::string& name : sampleNames()) {
        const Job job = sample(name);
        const std::size_t steps = rowsOf("function-test", job).size();
        std::set<std::pair<OpeningId, Situation>> promised;
        for (const Opening& opening : job.openings)
            for (const Promise& promise : opening.promises)
                promised.emplace(opening.id, promise.situation);
        EXPECT_GE(steps, promised.size()) << name;
    }
}

TEST(FunctionTest, ProvesEachReleaseWithTheControllerUnplugged)
{
    const Rows rows = rowsOf("function-test", sample("archive-room"));
    EXPECT_TRUE(std::any_of(rows.begin(), rows.end(), [](const auto& row) {
        return row[1].starts_with("With the controller's plugs pulled: ") && row[2].find("ML1 free") != std::string::npos;
    }));
}

TEST(FunctionTest, SaysWhereTheDrawingDoesOtherwise)
{
    const std::string text = textOf(*paperNamed("function-test"), sample("archive-room-broken"), english);
    EXPECT_NE(text.find("ML1 free (as drawn it would be locked: see the findings)"), std::string::npos) << text;
}

TEST(MeterSheet, ReadsAtRestWhatVoltsReads)
{
    std::size_t compared = 0;
    for (const std::string& name : sampleNames()) {
        const Job job = sample(name);
        const Netlist net(job);
        const Rows rows = rowsOf("meter", job);
        for (const bool ac : {false, true}) {
            const VoltsReport report = voltsReport(job, net, atRest(net.circuit()), {.ac = ac}, SupplyLevel::Nominal, {});
            for (const auto* list : {&report.sources, &report.loads})
                for (const ReadingRow& each : *list)
                    for (const auto& row : rows)
                        if (row[1] == nameOf(job, each.from) && row[2] == nameOf(job, each.to) && row[3] == (ac ? "AC" : "DC") && each.volts) {
                            EXPECT_NEAR(std::stod(row[4]), each.volts->value, 0.051) << name << " " << row[1];
                            ++compared;
                        }
        }
    }
    EXPECT_GT(compared, 40u);
}

// 5 V behind 4.7 kilohms on an open input; closed by the door switch at rest.
TEST(MeterSheet, ReadsTheWettingOfDryInputs)
{
    const Rows rows = rowsOf("meter", sample("restroom-staff"));
    EXPECT_EQ(rowWith(rows, 1, "LM1:IN1")[4], "5.0 V");
    EXPECT_EQ(rowWith(rows, 1, "LM1:IN4")[4], "0.0 V");
    EXPECT_EQ(rowWith(rows, 1, "ES1:1")[5], "24.0 to 27.5 V");
}

// 24 V at 0.12 A.
TEST(RingOut, ReadsTheStrikeFromTheFarEndsOfItsConductors)
{
    const auto row = rowWith(rowsOf("ring-out", sample("restroom-staff")), 0, "ES1:1 – ES1:2");
    EXPECT_EQ(row[1], "LM1:K1.NO, TSN:5");
    EXPECT_EQ(row[5], "200 Ω");
}

TEST(RingOut, AsksForEachThrowOfAHandAndForNoneThatNeedsPower)
{
    const Rows rows = rowsOf("ring-out", sample("restroom-staff"));
    EXPECT_EQ(rowWith(rows, 0, "PI1:C – PI1:NO", 4, "PI1: at rest")[5], "open: over limit");
    EXPECT_EQ(rowWith(rows, 0, "PI1:C – PI1:NO", 4, "PI1: pressed")[5], "0.95 Ω"); // two cores of 15 m, 18 AWG, and a jumper
    EXPECT_EQ(std::count_if(rows.begin(), rows.end(), [](const auto& row) { return row[0] == "WO1:C – WO1:NO"; }), 1) << "nobody waves a dead actuator";
    EXPECT_TRUE(std::none_of(rows.begin(), rows.end(), [](const auto& row) { return row[5].starts_with("no useful ohms"); }));
}

TEST(FindingsSheet, BeginsWithTheDangers)
{
    const Rows rows = rowsOf("findings", sample("restroom-staff-broken"));
    EXPECT_EQ(rows.front()[0], "!! danger");
    EXPECT_EQ(rows.back()[0], "Accepted by");
}

// Four of them: three by name.
TEST(Dangers, StandAtTheHeadOfEveryPaper)
{
    const Job job = sample("restroom-public-broken");
    CheckResult check = checkJob(job);
    const PaperSetup setup{Language::English, "", dangersOf(job, check)};
    ASSERT_EQ(setup.dangers.size(), 2u);
    EXPECT_EQ(inWords(setup.dangers[0]), "!! DANGER not mended, do not give power: PS1: Shorted source");
    for (const Paper* paper : allPapers())
        EXPECT_TRUE(textOf(*paper, job, setup).starts_with(inWords(setup.dangers[0]) + "\n" + inWords(setup.dangers[1]) + "\n")) << paper->name;
    check.findings.insert(check.findings.begin(), 2, check.findings.front());
    const auto lines = dangersOf(job, check);
    ASSERT_EQ(lines.size(), 4u);
    EXPECT_EQ(inWords(lines[3]), "!! 1 more dangers: see the sheet of findings");
    EXPECT_TRUE(dangersOf(sample("restroom-public"), checkJob(sample("restroom-public"))).empty());
}

TEST(FindingsSheet, NamesWhoSetAFindingAside)
{
    Job job = sample("restroom-staff-broken");
    for (const Finding& finding : findingsOf(job)) {
        Numbers numbers(job);
        if (const auto aside = setAside(job, numbers, finding, "spare strike on order", "A. Tester", "2026-02-03"); aside.ok()) {
            ASSERT_TRUE(applyChange(job, aside.value().second).ok());
            const TablePaper paper = paperNamed("findings")->tables(job, english);
            ASSERT_EQ(paper.tables.size(), 3u);
            ASSERT_EQ(paper.tables[1].rows.size(), 1u);
            EXPECT_NE(paper.tables[1].rows[0][2].find("SET ASIDE: spare strike on order (A. Tester, 2026-02-03)"), std::string::npos);
            return;
        }
    }
    FAIL() << "no finding may be set aside";
}

TEST(FindingsSheet, OfACleanJobIsNoApproval)
{
    const TablePaper paper = paperNamed("findings")->tables(sample("restroom-staff"), english);
    EXPECT_TRUE(paper.tables[0].rows.empty());
    EXPECT_EQ(paper.tables[0].none, "Nothing was found by the rules that there are. No finding is not approval.");
}

} // namespace
} // namespace doorloom
