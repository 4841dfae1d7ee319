#include "external/powered.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

// A relay output set wet on a module that switches the minus. Common practice, no source: C is always at
// plus; at rest the supply stands between C and NC, with the relay in between C and NO.
Job moduleWithLamps(const std::string& plusEnd)
{
    JobBuilder job;
    job.device("PS1", "dc-supply-24").device("LM1", "relay-module-negative").option("LM1", "K1", "wet");
    job.device("PB1", "push-plate").device("NO", "lamp").device("NC", "lamp").power("PS1", "LM1");
    job.wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1");
    for (const std::string lamp : {"NO", "NC"})
        job.wire(lamp + ":+", plusEnd == "C" ? "LM1:K1.C" : "LM1:K1." + lamp)
            .wire(lamp + ":−", plusEnd == "C" ? "LM1:K1." + lamp : "LM1:K1.C");
    return job.job();
}

TEST(WetOutput, HasItsSupplyBetweenCommonAndNcAtRest)
{
    const Job job = moduleWithLamps("C");
    EXPECT_TRUE(isFed(job, "NC", "lamp", "LM1:K1=rest"));
    EXPECT_FALSE(isFed(job, "NO", "lamp", "LM1:K1=rest"));
}

TEST(WetOutput, HasItsSupplyBetweenCommonAndNoWhenPulledIn)
{
    const Job job = moduleWithLamps("C");
    EXPECT_TRUE(isFed(job, "NO", "lamp", "LM1:K1=in"));
    EXPECT_FALSE(isFed(job, "NC", "lamp", "LM1:K1=in"));
}

TEST(WetOutput, HasNothingWhenTheModuleIsDead)
{
    const Job job = moduleWithLamps("C");
    for (const char* lamp : {"NO", "NC"})
        EXPECT_FALSE(isFed(job, lamp, "lamp", "PS1:mains=lost PS1:battery=flat LM1:K1=rest"));
}

TEST(WetOutput, HasItsPlusAtTheCommon)
{
    const Job reversed = moduleWithLamps("contact");
    EXPECT_FALSE(isFed(reversed, "NC", "lamp", "LM1:K1=rest"));
    EXPECT_FALSE(isFed(reversed, "NO", "lamp", "LM1:K1=in"));

    const Job job = moduleWithLamps("C");
    const Netlist net(job);
    const auto vertex = [&](const char* name) {
        const Landing landing = landingNamed(job, name);
        return net.vertexOf(landing.device, landing.terminal).value();
    };
    const Questions questions(net.circuit());
    EXPECT_EQ(questions.joined(vertex("LM1:K1.C"), vertex("PS1:+")).answer, Answer::Always);
    EXPECT_EQ(questions.joined(vertex("LM1:K1.C"), vertex("PS1:−")).answer, Answer::Never);
    EXPECT_EQ(questions.joined(vertex("LM1:K1.NO"), vertex("PS1:−")).answer, Answer::Some);
    EXPECT_EQ(questions.joined(vertex("LM1:K1.NO"), vertex("LM1:K1.NC")).answer, Answer::Never);
}

} // namespace
} // namespace doorloom
