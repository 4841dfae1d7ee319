#include "edit/change.h"

#include "smallkinds.h"

#include <gtest/gtest.h>

namespace doorloom {

namespace {

template <class Row> Step there(Row row)
{
    const Id<Row> id = row.id;
    return Put<Row>{id, std::move(row)};
}

template <class Row> Step gone(Id<Row> id)
{
    return Put<Row>{id, std::nullopt};
}

constexpr KindId strikeKind{1};
constexpr DeviceId strike{2};
constexpr CableTypeId pairType{3};
constexpr CableId cable{4};
constexpr ConductorId firstCore{5}, secondCore{6};
constexpr PlaceId cabinet{7};

Device strikeTagged(DeviceId id, std::string tag)
{
    Device row;
    row.id = id;
    row.tag = std::move(tag);
    row.kind = strikeKind;
    row.place = cabinet;
    return row;
}

Conductor coreNumbered(ConductorId id, int number)
{
    Conductor row;
    row.id = id;
    row.make = ConductorMake::Core;
    row.cable = cable;
    row.core = number;
    return row;
}

End landedOn(DeviceId device, const Key& terminal)
{
    return {EndState::Landed, Landing{device, terminal}};
}

// A strike EL1 in the place CAB1, and a cable C1 of two cores, the first of them landed on its terminal a.
Job strikeWithCable()
{
    CableType type{pairType, "18/2", {}, {}};
    type.cores.resize(2);
    type.cores[1].number = 2;
    Conductor first = coreNumbered(firstCore, 1);
    first.to = landedOn(strike, "a");
    Cable pulled;
    pulled.id = cable;
    pulled.tag = "C1";
    pulled.type = pairType;
    Place box;
    box.id = cabinet;
    box.tag = "CAB1";
    Job job;
    const auto made = applyChange(
        job, {{there(JobKind{strikeKind, smallStrike()}), there(box), there(strikeTagged(strike, "EL1")),
               there(type), there(pulled), there(first), there(coreNumbered(secondCore, 2))}});
    EXPECT_TRUE(made.ok()) << inWords(made.problem());
    EXPECT_TRUE(verifyJob(job).empty());
    return job;
}

// What the refusal says; the job must be as it was, look-ups and counter too.
std::string refusalOf(Job& job, const Change& change)
{
    const Job before = job;
    const auto made = applyChange(job, change);
    EXPECT_FALSE(made.ok());
    EXPECT_EQ(job, before);
    EXPECT_EQ(job.nextNumber, before.nextNumber);
    EXPECT_EQ(job.referrers, before.referrers);
    EXPECT_EQ(job.deviceTags, before.deviceTags);
    return made.ok() ? "" : inWords(made.problem());
}

} // namespace

TEST(ApplyChange, GivesBackTheChangeThatUndoesIt)
{
    Job job = strikeWithCable();
    const Job before = job;
    const auto undo = applyChange(job, {{there(strikeTagged(strike, "EL9"))}});
    ASSERT_TRUE(undo.ok());
    EXPECT_EQ(job.devices.find(strike)->tag, "EL9");
    EXPECT_EQ(deviceTagged(job, "EL1"), nullptr);
    EXPECT_EQ(deviceTagged(job, "EL9"), job.devices.find(strike));
    ASSERT_TRUE(applyChange(job, undo.value()).ok());
    EXPECT_EQ(job, before);
    EXPECT_EQ(job.deviceTags, before.deviceTags);
}

TEST(ApplyChange, RaisesTheCounterPastEveryNumberThatItPuts)
{
    Job job = strikeWithCable();
    EXPECT_EQ(job.nextNumber, 8u);
    const auto undo = applyChange(job, {{there(Sheet{{40}, "Door 1", 1})}});
    ASSERT_TRUE(undo.ok());
    EXPECT_EQ(job.nextNumber, 41u);
    ASSERT_TRUE(applyChange(job, undo.value()).ok());
    EXPECT_EQ(job.nextNumber, 41u);
}

TEST(ApplyChange, MakesNoneOfAChangeWhoseLastStepIsRefused)
{
    Job job = strikeWithCable();
    const std::string refusal = refusalOf(
        job, {{there(strikeTagged({20}, "EL2")), gone(firstCore), there(strikeTagged({21}, "EL2"))}});
    EXPECT_EQ(refusal, "EL2: The tag 'EL2' is on two devices. Give one of them another tag.");
}

TEST(ApplyChange, RefusesToRemoveWhatIsStillInUse)
{
    Job job = strikeWithCable();
    EXPECT_EQ(refusalOf(job, {{gone(cabinet)}}),
              "CAB1: The place 'CAB1' is still in use by the device 'EL1'. "
              "Free the device 'EL1' from it first, or take both away together.");
    EXPECT_EQ(refusalOf(job, {{gone(strike)}}).substr(0, 45),
              "EL1: The device 'EL1' is still in use by the ");
}

TEST(ApplyChange, RefusesAKindThatLosesALandedTerminal)
{
    Job job = strikeWithCable();
    EXPECT_EQ(refusalOf(job, {{there(JobKind{strikeKind, kindOfParts("strike", {"b", "c"})})}}),
              "EL1: EL1 has no terminal 'a'. Use one of: b, c.");
}

TEST(ApplyChange, RefusesACableTypeThatLosesAUsedCore)
{
    Job job = strikeWithCable();
    CableType shorter = *job.cableTypes.find(pairType);
    shorter.cores.pop_back();
    EXPECT_NE(refusalOf(job, {{there(shorter)}}).find("Cable C1 (18/2) has no core '2'"), std::string::npos);
}

TEST(ApplyChange, RefusesANumberThatAnotherTableUses)
{
    Job job = strikeWithCable();
    EXPECT_EQ(refusalOf(job, {{there(Sheet{{strike.number}, "Door 1", 1})}}),
              "Two rows of the job have the number '2'. Give one of them an unused number: 8 or higher.");
}

} // namespace doorloom
