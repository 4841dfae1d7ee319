#include "check/figures.h"
#include "core/jobs.h"
#include "solve/lookedat.h"
#include "solve/worst.h"

#include <gtest/gtest.h>

// Which positions the worst of a reading is sought in: those where what seems apart is not.
namespace doorloom {
namespace {

struct Asked {
    explicit Asked(const JobBuilder& drawn) : job(drawn.job()), net(job), ask(net.circuit()), meter(job, net) {}

    Vertex at(std::string_view terminal) const
    {
        const Landing landing = landingNamed(job, terminal);
        return net.vertexOf(landing.device, landing.terminal).value();
    }
    ReadingRange range(std::string_view x, std::string_view y) const { return rangeBetween(meter, ask, at(x), at(y), commandBudget); }
    std::optional<Worst> lowestAcross(const std::string& tag, const Key& load) const
    {
        const std::uint32_t element = net.elementOf(deviceTagged(job, tag)->id, load).value();
        return figuresOf(job, net, ask, commandBudget, VoltsWanted::All).lowestVolts[element];
    }

    Job job;
    Netlist net;
    Questions ask;
    Meter meter;
};

TEST(Worst, IsSoughtWhileASensorSeesSomebodyToo)
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("MS1", "exit-sensor").device("OL1", "lamp").power("PS1", "MS1");
    job.option("MS1", "relay", "on-motion");
    job.wires("PS1:+ → MS1:C; MS1:NO → OL1:+; OL1:− → PS1:−");
    const ReadingRange range = Asked(job).range("OL1:+", "OL1:−");
    ASSERT_TRUE(range.lowest && range.highest);
    EXPECT_NEAR(range.lowest->value, 0, 1e-9);
    EXPECT_NEAR(range.highest->value, 27.6, 1e-9);
    EXPECT_EQ(range.coverage.positions, 2);
}

// A lamp between two supplies that nothing ties, so that one group is at both of a reading's reasons to change.
JobBuilder lampBetweenSupplies()
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("PS2", "dc-supply-12").device("KS1", "key-switch").device("OL1", "lamp").device("OL2", "lamp");
    job.wires("PS1:− → KS1:C; KS1:NO → OL1:+; OL1:− → PS2:−; PS1:+ → OL2:+; OL2:− → PS2:−");
    return job;
}

TEST(Worst, GoesThroughAGroupBetweenTwoSuppliesOnce)
{
    const Asked asked(lampBetweenSupplies());
    const LookedAt look(asked.meter, asked.ask, LookedAt::For::AnyReading, commandBudget);
    EXPECT_EQ(look.groupsAt(asked.at("OL1:+")).size(), 1u);
    const ReadingRange range = asked.range("OL1:+", "OL1:−"); // two lamps in series, the other way round, while the key is on
    EXPECT_EQ(range.coverage.positions, 2);
    EXPECT_EQ(range.coverage.covered, 2);
    ASSERT_TRUE(range.lowest && range.highest);
    EXPECT_NEAR(range.lowest->value, -13.8, 1e-6);
    EXPECT_NEAR(range.highest->value, 0, 1e-6);
}

TEST(Worst, IsSoughtWithASupplyThatIsDeadAtRestFedFromAnother)
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("PS2", "dc-supply-24").device("KS1", "key-switch").device("KS2", "key-switch").device("OL1", "lamp");
    job.wires("PS1:− → PS2:−; PS1:+ → KS1:C; KS1:NO → PS2:+; PS2:+ → KS2:C; KS2:NO → OL1:+; OL1:− → PS2:−");
    job.idle("PS2:mains", "lost").idle("PS2:battery", "flat");
    const auto lowest = Asked(job).lowestAcross("OL1", "lamp");
    ASSERT_TRUE(lowest); // both keys on
    EXPECT_NEAR(lowest->value, 24, 1e-9);
}

TEST(Worst, IsSoughtWithACoilThatLiesStraightAcrossTwoSupplies)
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("PS2", "dc-supply-12").device("KS1", "key-switch").device("KS2", "key-switch");
    job.device("R1", "relay").device("OL1", "lamp");
    job.wires("PS1:+ → R1:A1; R1:A2 → PS2:−; PS1:− → KS1:C; KS1:NO → PS2:−");
    job.wires("PS1:+ → R1:C1; R1:NO1 → KS2:C; KS2:NO → OL1:+; OL1:− → PS1:−");
    const auto lowest = Asked(job).lowestAcross("OL1", "lamp");
    ASSERT_TRUE(lowest); // the one key ties the supplies, so that the relay is in; the other is on
    EXPECT_NEAR(lowest->value, 24, 1e-9);
}

} // namespace
} // namespace doorloom
