#include "external/powered.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

// Which contact of a relay feeds a lock. Common practice, no source: the table that installers work from,
// here with what happens when the relay, or the lock's supply, is lost.
enum class Strike { FailSecure, FailSafe };
enum class Relay { OffAtRest, HeldIn };
enum class Stands { Locked, Unlocked };

struct Row {
    Strike strike;
    Stands wantedAtRest;
    Relay relay;
    const char* contact;
    Stands relayLost, supplyLost;
};

using enum Strike;
using enum Relay;
using enum Stands;

constexpr Row table[] = {{FailSecure, Locked, OffAtRest, "NO", Locked, Locked},
                         {FailSecure, Locked, HeldIn, "NC", Unlocked, Locked},
                         {FailSecure, Unlocked, OffAtRest, "NC", Unlocked, Locked},
                         {FailSecure, Unlocked, HeldIn, "NO", Locked, Locked},
                         {FailSafe, Locked, OffAtRest, "NC", Locked, Unlocked},
                         {FailSafe, Locked, HeldIn, "NO", Unlocked, Unlocked},
                         {FailSafe, Unlocked, OffAtRest, "NO", Unlocked, Unlocked},
                         {FailSafe, Unlocked, HeldIn, "NC", Locked, Unlocked}};

Job jobOf(const Row& row, const std::string& contact)
{
    JobBuilder job;
    job.device("PS1", "dc-supply-24").device("LM1", "relay-module-negative").option("LM1", "K1", "dry");
    job.device("ES1", row.strike == FailSecure ? "strike-fail-secure" : "strike-fail-safe")
        .power("PS1", "LM1");
    job.wires("PS1:+ → LM1:K1.C; ES1:2 → PS1:−").wire("LM1:K1." + contact, "ES1:1");
    if (row.relay == HeldIn)
        job.idle("LM1:K1", "in");
    return job.job();
}

Stands standsWith(const Job& job, const std::string& throws)
{
    const bool fed = isFed(job, "ES1", "coil", throws);
    const bool isFailSecure = kindOf(job, *deviceTagged(job, "ES1"))->lock->failMode == FailMode::Secure;
    return fed == isFailSecure ? Unlocked : Locked;
}

class WhichContact : public testing::TestWithParam<Row> {};

TEST_P(WhichContact, GivesWhatIsWantedAtRest)
{
    const std::string other = GetParam().contact == std::string("NO") ? "NC" : "NO";
    EXPECT_EQ(standsWith(jobOf(GetParam(), GetParam().contact), ""), GetParam().wantedAtRest);
    EXPECT_NE(standsWith(jobOf(GetParam(), other), ""), GetParam().wantedAtRest);
}

TEST_P(WhichContact, SaysWhatALostRelayDoes)
{
    EXPECT_EQ(standsWith(jobOf(GetParam(), GetParam().contact), "LM1:K1=rest"), GetParam().relayLost);
}

TEST_P(WhichContact, SaysWhatALostSupplyDoes)
{
    EXPECT_EQ(
        standsWith(jobOf(GetParam(), GetParam().contact), "PS1:mains=lost PS1:battery=flat LM1:K1=rest"),
        GetParam().supplyLost);
    EXPECT_EQ(standsWith(jobOf(GetParam(), GetParam().contact), "PS1:mains=lost"), GetParam().wantedAtRest)
        << "the battery carries on";
}

INSTANTIATE_TEST_SUITE_P(Rows, WhichContact, testing::ValuesIn(table), [](const auto& test) {
    const Row& row = test.param;
    return std::string(row.strike == FailSecure ? "FailSecure" : "FailSafe") +
           (row.wantedAtRest == Locked ? "Locked" : "Unlocked") +
           (row.relay == HeldIn ? "HeldIn" : "OffAtRest");
});

} // namespace
} // namespace doorloom
