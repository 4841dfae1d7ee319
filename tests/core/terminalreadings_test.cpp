#include "judge/terminalreadings.h"

#include "core/jobs.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

std::string said(const Job& job, const std::string& terminal)
{
    return inWords(TerminalReadings(job).at(landingNamed(job, terminal)), Language::English);
}

JobBuilder switchedStrike()
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("KS1", "key-switch").device("ES1", "strike-fail-secure");
    return job.wires("PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−");
}

// 24.0 to 27.6 V.
TEST(TerminalReadings, SayWhatIsReadAtRestAndOverAllPositions)
{
    const Job job = switchedStrike().job();
    EXPECT_EQ(said(job, "KS1:C"), "24.00 V against PS1:− at rest; 24.00 to 27.60 V in all 1 positions");
    EXPECT_EQ(said(job, "ES1:1"), "0.00 V against PS1:− at rest; 0.00 to 27.60 V in all 2 positions");
    EXPECT_EQ(said(job, "KS1:NC"), "24.00 V against PS1:− at rest; 24.00 to 27.60 V in all 2 positions, floating in some");
}

// More devices than are judged in one: each door's own positions count, not those of the others.
TEST(TerminalReadings, LookAtTheTerminalsOwnPartOfALargeJob)
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("TP", "terminal-strip-4x").device("TN", "terminal-strip-4x");
    job.wires("PS1:+ → TP:1; PS1:− → TN:1");
    for (int i = 1; i <= 40; ++i) {
        const std::string n = std::to_string(i);
        job.device("KS" + n, "key-switch").device("ES" + n, "strike-fail-secure");
        job.wires("TP:1 → KS" + n + ":C; KS" + n + ":NO → ES" + n + ":1; ES" + n + ":2 → TN:1");
    }
    EXPECT_EQ(said(job.job(), "ES7:1"), "0.00 V against PS1:− at rest; 0.00 to 27.60 V in all 2 positions");
}

TEST(TerminalReadings, SayNothingOfATerminalThatIsNotThere)
{
    const Job job = switchedStrike().job();
    EXPECT_EQ(TerminalReadings(job).at({job.devices.begin()->id, "no such"}), Message{});
}

} // namespace
} // namespace doorloom
