#include "check/figures.h"
#include "core/jobs.h"
#include "core/smallkinds.h"
#include "judge/findings.h"
#include "judge/findingtext.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

// Jobs that nobody would wire: a finding or an exact answer, never a number that is none.
namespace doorloom {
namespace {

Kind supplyOf(double volts, double most = 2)
{
    Kind kind = kindOfParts("supply-of", {"+", "-"});
    SourcePart source;
    source.plus = "+";
    source.minus = "-";
    source.lowest = source.nominal = source.highest = {volts};
    source.most = {most};
    kind.parts = {{"output", {}, source}};
    return kind;
}

Kind loadOf(double volts, double amperes, LoadLaw law = LoadLaw::Resistive)
{
    Kind kind = kindOfParts("load-of", {"a", "b"});
    LoadPart load;
    load.a = "a";
    load.b = "b";
    load.law = law;
    load.rated = {{{volts}, {amperes}}};
    load.leastVolts = Volts{0.85 * volts};
    load.mostVolts = Volts{1.2 * volts};
    load.releaseVolts = Volts{0.1 * volts};
    kind.parts = {{"load", {}, load}};
    return kind;
}

void setWires(JobBuilder& job, const std::string& gauge, double metres)
{
    Change change;
    for (Conductor row : job.job().conductors) {
        row.gauge = gauge;
        row.length = {metres};
        change.steps.emplace_back(Put<Conductor>{row.id, row});
    }
    job.apply(change);
}

void expectNumbers(const Worsts& worsts)
{
    for (const auto& worst : worsts)
        EXPECT_TRUE(!worst || std::isfinite(worst->value));
}

// Codes of the findings, none of which speaks of what is no number.
std::vector<std::string> judged(const JobBuilder& job)
{
    const Netlist net(job.job());
    const Questions ask(net.circuit());
    const Figures figures = figuresOf(job.job(), net, ask, windowBudget, VoltsWanted::All);
    for (const Worsts* worsts : {&figures.lowestVolts, &figures.highestVolts, &figures.lowestPullingIn, &figures.outOfFeed, &figures.throughJoint,
                                 &figures.unfedVolts, &figures.outPullingIn, &figures.outPastLoads})
        expectNumbers(*worsts);
    std::vector<std::string> rules;
    for (const Finding& finding : findingsOf(job.job(), windowBudget)) {
        rules.push_back(ruleOf(finding));
        EXPECT_EQ(inWords(finding.why).find("nan"), std::string::npos) << inWords(finding.why);
    }
    return rules;
}

bool has(const std::vector<std::string>& rules, const std::string& rule) { return std::find(rules.begin(), rules.end(), rule) != rules.end(); }

JobBuilder lampOn(const Kind& supply, const Kind& load)
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", supply).device("X1", load).wires("PS1:+ → X1:a; X1:b → PS1:-");
    return job;
}

TEST(BadCircuits, AbsurdVoltsAreOverVoltage)
{
    EXPECT_TRUE(has(judged(lampOn(supplyOf(1e308), loadOf(24, 0.5))), "over-voltage"));
    EXPECT_TRUE(has(judged(lampOn(supplyOf(1e6), loadOf(24, 0.5, LoadLaw::ConstantPower))), "over-voltage"));
}

TEST(BadCircuits, AConductorOfAnAbsurdGaugeIsJudgedInNumbers)
{
    for (const char* gauge : {"1e-300 mm2", "1e300 mm2", "40 AWG", "nan mm2", "inf mm2", "-1 AWG", "0 mm2"})
        for (const double metres : {0.0, 1e-300, 30.0, 1e300}) {
            JobBuilder job = lampOn(supplyOf(24), loadOf(24, 0.5));
            setWires(job, gauge, metres);
            judged(job);
        }
}

TEST(BadCircuits, ALengthThatIsNoneIsRefusedAndNotRead)
{
    JobBuilder job = lampOn(supplyOf(24), loadOf(24, 0.5));
    for (const double metres : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), -1.0})
        EXPECT_THROW(setWires(job, "18 AWG", metres), std::runtime_error);
    EXPECT_TRUE(judged(job).empty());
}

TEST(BadCircuits, AShortedSourceIsFoundHoweverLongItsWire)
{
    for (const double metres : {0.0, 100.0}) {
        JobBuilder job = lampOn(supplyOf(24), loadOf(24, 0.5));
        job.wire("PS1:+", "PS1:-");
        setWires(job, "18 AWG", metres);
        EXPECT_TRUE(has(judged(job), "shorted"));
    }
}

TEST(BadCircuits, ARingOfDiodesShortsItsSource)
{
    JobBuilder job = lampOn(supplyOf(24), loadOf(24, 0.5));
    job.device("D1", "diode").device("D2", "diode").device("D3", "diode");
    job.wires("PS1:+ → D1:A; D1:K → D2:A; D2:K → PS1:-; PS1:- → D3:A; D3:K → PS1:+");
    EXPECT_TRUE(has(judged(job), "shorted"));
}

TEST(BadCircuits, SourcesInParallelAndAgainstEachOtherAreFound)
{
    JobBuilder job = lampOn(supplyOf(24), loadOf(24, 0.5));
    Kind other = supplyOf(12);
    other.name = "other-supply";
    job.device("PS2", other).wires("PS1:+ → PS2:+; PS1:- → PS2:-");
    EXPECT_TRUE(has(judged(job), "two-feeds"));
}

TEST(BadCircuits, LoadsOfNoRatingOrAbsurdOnesAreJudgedInNumbers)
{
    for (const double volts : {0.0, 24.0, 1e308})
        for (const double amperes : {0.0, 1e-300, 1e308})
            for (const LoadLaw law : {LoadLaw::Resistive, LoadLaw::ConstantCurrent, LoadLaw::ConstantPower}) {
                JobBuilder job = lampOn(supplyOf(24), loadOf(volts, amperes, law));
                setWires(job, "18 AWG", 10);
                judged(job);
            }
}

} // namespace
} // namespace doorloom
