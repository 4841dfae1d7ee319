#include "harm.h"
#include "mutations.h"

#include "core/circuits/circuit.h"
#include "core/circuits/simplest.h"
#include "core/mistakes/samples.h"
#include "core/rightjobs/rightjob.h"
#include "tools/samplejobs.h"

#include "check/check.h"
#include "external/csv.h"
#include "judge/findings.h"
#include "verdict/verdict.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <ctime>
#include <deque>
#include <iostream>
#include <map>
#include <stdexcept>

namespace doorloom {

void PrintTo(const KindOfMutation& kind, std::ostream* out) { *out << kind.name; }

namespace {

constexpr std::size_t fewest = 200; // mutants of a kind

struct RightOne {
    std::string name;
    Job job;
    RightTable table;
    RightOne(std::string called, Job drawn) : name(std::move(called)), job(std::move(drawn)), table(job) {}
};

// The whole jobs first, then every kind's simplest wiring, the circuits and the samples.
const std::deque<RightOne>& rightOnes()
{
    static const std::deque<RightOne> all = [] {
        std::deque<RightOne> ones;
        for (const RightJob& right : allRightJobs())
            ones.emplace_back(right.name, jobOf(right));
        for (const SimplestWiring& wiring : allSimplestWirings())
            ones.emplace_back("simplest " + wiring.kind, jobOf(wiring));
        for (const JudgedCircuit& circuit : allCircuits())
            if (!circuit.name.starts_with("trap") || circuit.name == "trap d") // others are half drawn, on purpose
                ones.emplace_back("circuit " + circuit.name, circuit.right);
        const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
        for (const Sample& sample : catalogue.ok() ? sampleJobs(catalogue.value()) : std::vector<Sample>{})
            if (sample.name.find("broken") == std::string::npos && sample.name != "boarding-house-forty") // forty times one room
                ones.emplace_back("sample " + sample.name, sample.job);
        for (auto twins : {openingMistakes, wiringMistakes})
            for (const MistakeSample& sample : twins())
                ones.emplace_back("twin of " + sample.name, sample.right);
        return ones;
    }();
    return all;
}

struct Placed {
    const RightOne* right;
    Mutant mutant;
};

// At every place of the whole jobs; where they are too few, of the other jobs as well.
std::vector<Placed> mutantsOf(const KindOfMutation& kind)
{
    std::vector<Placed> all;
    const std::size_t whole = allRightJobs().size();
    for (std::size_t i = 0; i < rightOnes().size() && (i < whole || all.size() < fewest); ++i)
        for (Mutant& one : kind.everywhere(rightOnes()[i].job))
            all.push_back({&rightOnes()[i], std::move(one)});
    return all;
}

// The worst that each rule says above a hint.
std::map<std::string, Severity> alarms(const Job& job)
{
    std::map<std::string, Severity> rules;
    const Facts facts(job, windowBudget);
    const auto add = [&](const std::vector<Finding>& findings) {
        for (const Finding& finding : findings)
            if (finding.severity != Severity::Hint) {
                Severity& worst = rules.emplace(finding.rule, finding.severity).first->second;
                worst = std::max(worst, finding.severity);
            }
    };
    for (const Check* check : allChecks()) {
        if (check->run)
            add(check->run(facts));
        if (check->runOnJob)
            add(check->runOnJob(job));
    }
    return rules;
}

// Of this kind: the mistakes of which nothing is said, or too much, and why.
std::map<std::string, std::string> silentOnPurpose(const std::string& kind)
{
    static const std::vector<CsvRow> rows = rowsOfFile(SOURCE_FOLDER "/tests/core/mutants/silent.csv");
    std::map<std::string, std::string> all;
    for (const CsvRow& row : rows)
        if (row.at("kind") == kind)
            all[row.at("mistake")] = row.at("reason");
    return all;
}

struct Tally {
    std::size_t mutants = 0, dangers = 0, changes = 0, found = 0, missed = 0, falsely = 0;
    std::size_t dangersAs[3] = {0, 0, 0}; // doubt, fault, danger
};

TEST(RightTables, PassNoLimit)
{
    for (const RightOne& one : rightOnes())
        EXPECT_EQ(one.table.limitsPassed(), "") << one.name;
}

class Mutants : public testing::TestWithParam<KindOfMutation> {};

// Adds what becomes of one. Out: is it silent where it does harm, or spoken of where it does none?
bool judge(const Placed& placed, const Job& wrong, const std::string& name, Tally& tally)
{
    const Judgement judgement = placed.right->table.compared(wrong);
    const std::map<std::string, Severity> said = alarms(wrong);
    ++tally.mutants;
    if (judgement.harm == Harm::None) {
        tally.falsely += said.empty() ? 0 : 1;
        return !said.empty();
    }
    (judgement.harm == Harm::Danger ? tally.dangers : tally.changes) += 1;
    (said.empty() ? tally.missed : tally.found) += 1;
    if (judgement.harm == Harm::Danger) {
        EXPECT_FALSE(said.empty()) << "a danger of which nothing is said: " << name << ": " << judgement.why;
        Severity worst = Severity::Doubt;
        for (const auto& [rule, severity] : said)
            worst = std::max(worst, severity);
        ++tally.dangersAs[worst == Severity::Doubt ? 0 : worst == Severity::Fault ? 1 : 2];
    }
    if (said.empty())
        std::cout << "    silent: " << name << ": " << judgement.why << '\n';
    return said.empty();
}

TEST_P(Mutants, AreFoundWhereTheyDoHarmAndNotWhereTheyDoNone)
{
    std::map<std::string, std::string> expected = silentOnPurpose(GetParam().name);
    Tally tally;
    for (const Placed& placed : mutantsOf(GetParam())) {
        Job wrong;
        try {
            wrong = placed.mutant.made();
        } catch (const std::runtime_error&) {
            continue; // the job refuses it
        }
        const std::string name = placed.right->name + ": " + placed.mutant.name;
        if (judge(placed, wrong, name, tally)) {
            EXPECT_TRUE(expected.contains(name)) << name << ": silent, or a false alarm, and silent.csv has no reason for it";
            std::cout << "        because " << expected[name] << '\n';
            expected.erase(name);
        }
    }
    for (const auto& [name, reason] : expected)
        ADD_FAILURE() << name << " is found now: take it out of silent.csv";
    std::cout << GetParam().name << ": " << tally.mutants << " mutants; " << tally.dangers << " dangers (told as danger " << tally.dangersAs[2] << ", as fault "
              << tally.dangersAs[1] << ", as doubt " << tally.dangersAs[0] << "), " << tally.changes << " other changes; found " << tally.found << ", missed "
              << tally.missed << ", false " << tally.falsely << '\n';
    EXPECT_GE(tally.mutants, fewest);
}

double secondsOfThisThread()
{
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

TEST(RightTables, AreOfJobsThatAreCheckedTogetherInUnderFiveSeconds)
{
    std::size_t findings = 0;
    const std::size_t jobs = rightOnes().size();
    const double before = secondsOfThisThread();
    for (const RightOne& one : rightOnes())
        findings += checkJob(one.job, windowBudget).findings.size();
    const double seconds = secondsOfThisThread() - before;
    std::cout << jobs << " jobs are checked in " << seconds << " s, " << findings << " hints\n";
    EXPECT_LT(seconds, 5);
}

std::string testName(const testing::TestParamInfo<KindOfMutation>& each)
{
    std::string name = each.param.name;
    std::replace(name.begin(), name.end(), ' ', '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Kinds, Mutants, testing::ValuesIn(allMutations()), testName);

} // namespace
} // namespace doorloom
