#include "samples.h"

#include "core/circuits/seen.h"
#include "external/csv.h"

#include "check/check.h"
#include "verdict/verdict.h"

#include <gtest/gtest.h>

#include <iomanip>
#include <iostream>
#include <set>
#include <sstream>

// The trade's mistakes: which rule finds each in which broken sample, and that its corrected twin is clean of it; or where else it
// is looked at. And every rule: in how many samples it speaks, and that their twins are clean of it.
namespace doorloom {
namespace {

struct Judged {
    std::vector<Seen> broken, right;
};

const std::map<std::string, Judged>& judgedSamples()
{
    static const std::map<std::string, Judged> all = [] {
        std::map<std::string, Judged> judged;
        for (const MistakeSample& sample : mistakeSamples())
            EXPECT_TRUE(judged.emplace(sample.name, Judged{seenIn(sample.broken, windowBudget), seenIn(sample.right, windowBudget)}).second)
                << "two samples are called '" << sample.name << "'";
        return judged;
    }();
    return all;
}

// What the rule says, as a finding or as another's line, the worst of it.
const Seen* saidBy(const std::string& rule, const std::vector<Seen>& all)
{
    for (const Seen& seen : all) {
        if (seen.rule == rule)
            return &seen;
        if (const Seen* line = saidBy(rule, seen.lines))
            return line;
    }
    return nullptr;
}

std::string written(const std::vector<Seen>& all)
{
    std::string text;
    for (const Seen& seen : all)
        text += "\n    " + written(seen);
    return text.empty() ? " nothing" : text;
}

struct FoundIn {
    std::string rule, sample;
};

// "rule@sample; rule@sample"
std::vector<FoundIn> foundIn(std::string text)
{
    std::vector<FoundIn> all;
    while (!text.empty()) {
        const std::string one = text.substr(0, text.find("; "));
        const auto at = one.find('@');
        all.push_back({one.substr(0, at), at == std::string::npos ? "" : one.substr(at + 1)});
        text.erase(0, one.size() + 2 > text.size() ? text.size() : one.size() + 2);
    }
    return all;
}

const std::vector<CsvRow>& mistakes()
{
    static const std::vector<CsvRow> rows = rowsOfFile(SOURCE_FOLDER "/tests/core/mistakes/list.csv");
    return rows;
}

TEST(Mistakes, AreAllInTheListOnce)
{
    std::vector<std::string> ids, wanted;
    for (const CsvRow& row : mistakes())
        if (row.at("id").starts_with("M")) // others are no part of that list
            ids.push_back(row.at("id"));
    for (int n = 1; n <= 97; ++n)
        wanted.push_back((n < 10 ? "M0" : "M") + std::to_string(n));
    EXPECT_EQ(ids, wanted);
}

TEST(Mistakes, AreFoundInTheirSamplesAndNotInTheCorrectedTwins)
{
    std::size_t byRule = 0, elsewhere = 0;
    for (const CsvRow& row : mistakes()) {
        std::string table;
        for (const auto& [rule, sample] : foundIn(row.at("found"))) {
            ASSERT_TRUE(checkCalled(rule)) << row.at("id") << ": no rule is called '" << rule << "'";
            ASSERT_TRUE(judgedSamples().contains(sample)) << row.at("id") << ": no sample is called '" << sample << "'";
            const Judged& judged = judgedSamples().at(sample);
            const Seen *broken = saidBy(rule, judged.broken), *right = saidBy(rule, judged.right);
            EXPECT_TRUE(broken) << row.at("id") << " in '" << sample << "': " << rule << " says nothing, but:" << written(judged.broken);
            EXPECT_FALSE(right) << row.at("id") << " in the twin of '" << sample << "': " << (right ? written(*right) : "");
            EXPECT_TRUE(!broken || row.at("severity") == "hint" || broken->severity != "hint") << row.at("id");
            table += (table.empty() ? "" : "; ") + rule + " (" + (broken ? broken->severity : "nothing") + ") in '" + sample + "'";
        }
        (table.empty() ? elsewhere : byRule) += 1;
        std::cout << row.at("id") << "  " << row.at("mistake") << ": " << (table.empty() ? "" : table + ". ") << row.at("otherwise") << '\n';
    }
    std::cout << byRule << " mistakes are found by a rule, " << elsewhere << " are looked at elsewhere\n";
}

TEST(Mistakes, ThatNoJobTellsSayWhereTheyAreLookedAt)
{
    for (const CsvRow& row : mistakes()) {
        const std::string& otherwise = row.at("otherwise");
        if (row.at("found").empty() || !otherwise.empty()) {
            EXPECT_TRUE(otherwise.starts_with("function test: ") || otherwise.starts_with("settings sheet: ") || otherwise.starts_with("refused: "))
                << row.at("id") << " '" << otherwise << "'";
        }
    }
}

// M63, M85
TEST(Mistakes, ThatNoJobHoldsAreRefused)
{
    for (const MistakeSample& sample : mistakeSamples()) {
        if (sample.name != "mains in the cable")
            continue;
        std::vector<Conductor> cores;
        for (const Conductor& row : sample.right.conductors)
            if (row.make == ConductorMake::Core)
                cores.push_back(row);
        ASSERT_EQ(cores.size(), 3u);
        Conductor same = cores[1], beyond = cores[1], nowhere = cores[1];
        same.core = cores[0].core;
        beyond.core = 4;
        std::get<Landing>(nowhere.to.on).terminal = "N2";
        for (const Conductor& wrong : {same, beyond, nowhere}) {
            Job job = sample.right;
            EXPECT_FALSE(applyChange(job, {{Put<Conductor>{wrong.id, wrong}}}).ok());
        }
    }
}

TEST(Mistakes, HaveTwinsWithNothingAboveAHint)
{
    for (const auto& [name, judged] : judgedSamples())
        for (const Seen& seen : judged.right)
            EXPECT_EQ(seen.severity, "hint") << "the twin of '" << name << "': " << written(seen);
}

TEST(Mistakes, HaveASampleOfEveryRule)
{
    std::cout << std::left << std::setw(28) << "rule" << "broken samples found, corrected twins clean\n";
    for (const Check* check : allChecks()) {
        const std::string rule(check->code);
        std::size_t found = 0, clean = 0;
        for (const auto& [name, judged] : judgedSamples())
            if (saidBy(rule, judged.broken)) {
                ++found;
                clean += saidBy(rule, judged.right) ? 0 : 1;
            }
        EXPECT_GT(found, 0u) << rule << " has no broken sample";
        EXPECT_GT(clean, 0u) << rule << " has no corrected twin that is clean of it";
        std::cout << std::left << std::setw(28) << rule << std::setw(16) << found << clean << '\n';
    }
}

} // namespace
} // namespace doorloom
