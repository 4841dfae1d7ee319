#include "edit/change.h"

#include "smallkinds.h"

#include "edit/operations.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

namespace doorloom {

namespace {

void make(Job& job, const Change& change)
{
    const auto made = applyChange(job, change);
    ASSERT_TRUE(made.ok()) << inWords(made.problem());
}

DeviceId place(Job& job, const Kind& kind, const std::string& tag)
{
    Numbers numbers(job);
    const auto [id, change] = placeDevice(job, numbers, kind, tag);
    make(job, change);
    return id;
}

// 2,500 devices in a ring, four wires from each to the next.
Job largeJob()
{
    Job job;
    make(job, {{Put<JobKind>{{1}, JobKind{{1}, smallStrike()}}}});
    Change change;
    for (std::uint32_t count = 0; count < 2500; ++count) {
        Device device;
        device.id = {2 + count};
        device.tag = "EL" + std::to_string(count);
        device.kind = {1};
        change.steps.emplace_back(Put<Device>{device.id, device});
    }
    for (std::uint32_t count = 0; count < 10000; ++count) {
        Conductor wire;
        wire.id = {5000 + count};
        wire.tag = "W" + std::to_string(count);
        wire.from = {EndState::Landed, Landing{{2 + count % 2500}, "a"}};
        wire.to = {EndState::Landed, Landing{{2 + (count + 1) % 2500}, "b"}};
        change.steps.emplace_back(Put<Conductor>{wire.id, wire});
    }
    make(job, change);
    return job;
}

template <class Work> double medianMicroseconds(Work work)
{
    std::vector<double> times;
    for (int run = 0; run < 9; ++run) {
        const auto start = std::chrono::steady_clock::now();
        work();
        times.push_back(
            std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start).count());
    }
    std::nth_element(times.begin(), times.begin() + 4, times.end());
    return times[4];
}

} // namespace

TEST(Difference, IsTheNetMoveWithoutItsDetours)
{
    Job older;
    const DeviceId strike = place(older, smallStrike(), "EL1");
    Job newer = older;
    const DeviceId other = place(newer, smallStrike(), "EL2");
    make(newer, renameDevice(newer, strike, "EL9").value());
    make(newer, removeDevice(newer, other).value());
    const Change net = difference(older, newer);
    ASSERT_EQ(net.steps.size(), 1u);
    EXPECT_EQ(std::get<Put<Device>>(net.steps[0]).after->tag, "EL9");
    make(newer, renameDevice(newer, strike, "EL1").value());
    EXPECT_TRUE(difference(older, newer).steps.empty());
}

TEST(Difference, MakesTheOlderJobOutOfTheNewerToo)
{
    Job older;
    place(older, smallSupply(), "PS1");
    Job newer = older;
    place(newer, smallModule(), "LM1");
    make(newer, removeDevice(newer, deviceTagged(newer, "PS1")->id).value());
    Job back = newer;
    make(back, difference(newer, older));
    EXPECT_EQ(back, older);
    EXPECT_EQ(back.referrers, older.referrers);
    EXPECT_TRUE(verifyJob(back).empty());
}

TEST(Job, IsCopiedInMicrosecondsAndChangedApart)
{
    Job job = largeJob();
    const Job before = job;
    const double copying = medianMicroseconds([&] { const Job copy = job; });
    Job copy = job;
    int moves = 0;
    const double landing = medianMicroseconds([&] {
        const ConductorId wire{5000u + static_cast<std::uint32_t>(++moves) * 64};
        make(copy, setEnd(copy, wire, WhichEnd::To, {}).value());
    });
    std::printf("copy of 2,500 devices and 10,000 conductors: %.1f us; one end set in a copy: %.1f us; all "
                "rows: %.0f us\n",
                copying, landing, medianMicroseconds([&] { verifyJob(job); }));
    EXPECT_EQ(job, before);
    EXPECT_EQ(difference(job, copy).steps.size(), static_cast<std::size_t>(moves));
}

} // namespace doorloom
