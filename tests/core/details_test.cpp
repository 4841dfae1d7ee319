#include "edit/details.h"

#include "catalogue/stockcables.h"
#include "edit/landcores.h"

#include "desk.h"

#include <limits>

namespace doorloom {

namespace {

Operator door(OperatorId id)
{
    Operator row;
    row.id = id;
    row.tag = "D1";
    row.nature = OperatorNature::Door;
    row.throws = findRole(catalogueKind("door-switch"), "door")->throws;
    row.unpowered = row.idle = row.throws.front().key;
    return row;
}

} // namespace

TEST(Places, AreAddedRenamedAndGivenToDevices)
{
    SmallSite site;
    Place head;
    head.tag = "HEAD";
    head.mounting = Mounting::Frame;
    const PlaceId id = site.make(addPlace(site.job(), site.numbers(), head)).first;
    EXPECT_EQ(site.job().places.find(id)->mounting, Mounting::Frame);
    site.make(renamePlace(site.job(), id, "HEADER"));
    EXPECT_EQ(site.job().places.find(id)->tag, "HEADER");
    site.make(setPlace(site.job(), {site.contact.number, site.strike.number, site.cable1.number}, id));
    EXPECT_EQ(site.job().devices.find(site.contact)->place, id);
    site.make(setPlace(site.job(), {site.contact.number}, {}));
    EXPECT_EQ(site.job().devices.find(site.contact)->place, PlaceId{});
    EXPECT_EQ(refusal(renamePlace(site.job(), id, "CAB1")),
              "CAB1: The tag 'CAB1' is another place's already. Choose one that is free.");
    EXPECT_EQ(refusal(renamePlace(site.job(), id, "above ceiling")),
              "above ceiling: A place can't have the tag 'above ceiling'. Give it one such as 'CAB1', "
              "without blanks, "
              "quotes or ':'.");
    EXPECT_FALSE(setPlace(site.job(), {site.contact.number}, {999}).ok());
}

TEST(SetStanding, TakesACablesCoresAlong)
{
    SmallSite site;
    site.make(setStanding(site.job(), {site.cable1.number, site.strike.number}, Standing::Existing));
    EXPECT_EQ(site.job().devices.find(site.strike)->standing, Standing::Existing);
    for (const Conductor* core : coresOf(site.job(), site.cable1))
        EXPECT_EQ(core->standing, Standing::Existing);
    site.make(setWords(site.job(), site.strike, "as found"));
    EXPECT_EQ(site.job().devices.find(site.strike)->words, "as found");
}

TEST(ReleaseRole, GivesTheRoleAnOperatorOfItsOwnAgain)
{
    SmallSite site;
    const OperatorId shared{site.numbers().take()};
    site.make(Change{{Put<Operator>{shared, door(shared)}}});
    const OperatorId own = boundTo(*site.job().devices.find(site.contact), "door");
    site.make(bindRole(site.job(), site.contact, "door", shared));
    EXPECT_FALSE(site.job().operators.find(own));
    site.make(releaseRole(site.job(), site.numbers(), site.contact, "door"));
    const OperatorId again = boundTo(*site.job().devices.find(site.contact), "door");
    EXPECT_NE(again, shared);
    EXPECT_EQ(site.job().operators.find(again)->owner, site.contact);
    EXPECT_EQ(site.job().operators.find(again)->ownerRole, "door");
    EXPECT_TRUE(site.job().operators.find(shared)) << "others may be bound to it";
    EXPECT_EQ(releaseRole(site.job(), site.numbers(), site.contact, "door").value(), Change{});
    EXPECT_EQ(refusal(releaseRole(site.job(), site.numbers(), site.contact, "bolt")),
              "DPS1: DPS1 has no role 'bolt'. Use the roles of its kind: door.");
}

TEST(RenameCable, TakesTheTagsOfItsCoresAlong)
{
    SmallSite site;
    const ConductorId second = coresInOrder(site.job(), *site.job().cables.find(site.cable1))[1]->id;
    site.make(renameConductor(site.job(), second, "SPARE"));
    site.make(renameCable(site.job(), site.cable1, "W4"));
    const std::vector<const Conductor*> cores =
        coresInOrder(site.job(), *site.job().cables.find(site.cable1));
    EXPECT_EQ(cores[0]->tag, "W4.1");
    EXPECT_EQ(cores[1]->tag, "SPARE");
    EXPECT_FALSE(renameCable(site.job(), site.cable1, "").ok());
}

TEST(SetCable, LengthPullNotesAndEnds)
{
    SmallSite site;
    site.make(setCableLength(site.job(), site.cable1, {12.5}));
    site.make(setCablePull(site.job(), site.cable1, "strike"));
    site.make(setCableNotes(site.job(), site.cable1, "through the header"));
    site.make(setCableEnds(site.job(), site.cable1, site.frame, {}));
    const Cable& cable = *site.job().cables.find(site.cable1);
    EXPECT_EQ(cable.length, Metres{12.5});
    EXPECT_EQ(cable.pull, "strike");
    EXPECT_EQ(cable.notes, "through the header");
    EXPECT_EQ(cable.from, site.frame);
    EXPECT_EQ(cable.to, PlaceId{});
    EXPECT_EQ(refusal(setCableLength(site.job(), site.cable1, {-1})),
              "C1: 'C1' can't be '-1' metres long. Give the length in metres, 0 while it is not known.");
    EXPECT_FALSE(setCableLength(site.job(), site.cable1, {std::numeric_limits<double>::quiet_NaN()}).ok());
    EXPECT_FALSE(setCableEnds(site.job(), site.cable1, {999}, {}).ok());
    EXPECT_FALSE(setCableLength(site.job(), {999}, {1}).ok());
}

TEST(SetCableType, KeepsWhatIsLandedAndAddsWhatIsNew)
{
    SmallSite site;
    site.make(landNext(site.job(), site.cable1, site.at("ES1:1")));
    site.make(setCableType(site.job(), site.numbers(), site.cable1, *stockCableNamed("18/5")));
    std::vector<const Conductor*> cores = coresInOrder(site.job(), *site.job().cables.find(site.cable1));
    ASSERT_EQ(cores.size(), 5u);
    EXPECT_EQ(site.drawn(cores[0]->id), "C1.1: waiting – ES1:1");
    EXPECT_EQ(site.drawn(cores[4]->id), "C1.5: waiting – waiting");
    site.make(setCableType(site.job(), site.numbers(), site.cable1, *stockCableNamed("18/2")));
    EXPECT_EQ(coresOf(site.job(), site.cable1).size(), 2u);
    site.make(setCableType(site.job(), site.numbers(), site.cable1, *stockCableNamed("18/4")));
    EXPECT_EQ(site.job().cables.find(site.cable1)->type, site.four) << "the job's own of this name";
    for (int core = 0; core < 3; ++core)
        site.make(landNext(site.job(), site.cable1, site.at("ES1:2")));
    EXPECT_EQ(refusal(setCableType(site.job(), site.numbers(), site.cable1, *stockCableNamed("18/2"))),
              "C1: 18/2 has no core '3', and C1.3 (… – ES1:2) is landed. Take it off first, or choose a type "
              "with as "
              "many cores.");
}

TEST(SetWire, IsForWiresAlone)
{
    SmallSite site;
    const auto [id, change] = addWire(site.job(), site.numbers(), endNamed(site.job(), "PS1:+"), {}, "W1");
    site.make(change);
    site.make(setWire(site.job(), id, "RD", "18 AWG", {0.4}));
    EXPECT_EQ(site.job().conductors.find(id)->colour, "RD");
    EXPECT_EQ(refusal(setWire(site.job(), coresOf(site.job(), site.cable1).front()->id, "RD", "", {})),
              "C1.1 (… – …): 'C1.1 (… – …)' is a core: its colour, gauge and length are its cable's. Choose "
              "another "
              "type or length for the cable.");
    EXPECT_FALSE(setWire(site.job(), id, "RD", "18 AWG", {-0.4}).ok());
}

TEST(SetSpliceConnector, WantsTwoEndsOrMore)
{
    SmallSite site;
    Splice splice{.id = {site.numbers().take()}, .tag = "S1", .place = {}, .connector = {}};
    site.make(Change{{Put<Splice>{splice.id, splice}}});
    site.make(setSpliceConnector(site.job(), splice.id, "gel, 22-16 AWG", 3));
    EXPECT_EQ(site.job().splices.find(splice.id)->connector, "gel, 22-16 AWG");
    site.make(renameSplice(site.job(), splice.id, "S7"));
    EXPECT_EQ(site.job().splices.find(splice.id)->tag, "S7");
    EXPECT_EQ(refusal(setSpliceConnector(site.job(), splice.id, "", 1)),
              "S7: A connector for '1' ends joins nothing. Give how many ends it takes, 2 or more.");
}

} // namespace doorloom
