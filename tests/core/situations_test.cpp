#include "circuits/seen.h"
#include "core/jobs.h"

#include "verdict/verdict.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

// A supply whose mains comes through a contact, with nothing behind it.
Kind supplyBehindAContact()
{
    Kind kind = catalogueKind("dc-supply-24");
    Role& mains = kind.roles.front();
    mains.throws = findRole(catalogueKind("relay-module-negative"), "K1")->throws;
    mains.unpowered = "rest";
    mains.idle = "in";
    for (Part& part : kind.parts)
        if (auto* source = std::get_if<SourcePart>(&part.body))
            source->live = {{{mains.key, "in"}}};
    return kind;
}

std::vector<std::string> wrongSituations(const Job& job)
{
    std::vector<std::string> all;
    for (const Seen& seen : seenIn(job, windowBudget))
        if (seen.rule == "wrong-in-situation")
            all.push_back(seen.at + " " + inWords(seen.throws));
    return all;
}

TEST(Situations, TryAProgrammedContactInASupplysMains)
{
    JobBuilder job;
    job.device("PS1", "dc-supply-24").device("LM1", "relay-module-negative").device("PB1", "push-plate");
    job.device("PS2", supplyBehindAContact()).device("ES1", "strike-fail-safe");
    job.bind("PS2", "mains", "LM1:K1").idle("LM1:K1", "in").power("PS1", "LM1");
    job.wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1; PS2:+ → ES1:1; ES1:2 → PS2:−");
    job.opening({.locks = {"ES1"},
                 .promises = {{"rest", Promised::Locked}, {"fire alarm", Promised::Locked}}});

    EXPECT_EQ(wrongSituations(job.job()), std::vector<std::string>{"ES1 [fire alarm]"});
}

} // namespace
} // namespace doorloom
