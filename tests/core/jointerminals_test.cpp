#include "edit/jointerminals.h"

#include "edit/details.h"

#include "desk.h"

namespace doorloom {

namespace {

std::string joined(Desk& desk, std::string_view a, std::string_view b, const ConductorWish& wish = {})
{
    const Landed landed = desk.make(joinTerminals(desk.job(), desk.numbers(), desk.at(a), desk.at(b), wish));
    return desk.drawn(landed.conductor);
}

std::string refused(Desk& desk, std::string_view a, std::string_view b, const ConductorWish& wish = {})
{
    return refusal(joinTerminals(desk.job(), desk.numbers(), desk.at(a), desk.at(b), wish));
}

ConductorWish colour(const std::string& letters)
{
    ConductorWish wish;
    wish.colour = letters;
    return wish;
}

ConductorWish coreNumber(int number)
{
    ConductorWish wish;
    wish.core = number;
    return wish;
}

ConductorWish aWire(const std::string& letters = {})
{
    ConductorWish wish;
    wish.wire = true;
    wish.colour = letters;
    return wish;
}

} // namespace

TEST(JoinTerminals, UsesUpTheCoresInTheirOrder)
{
    SmallSite site;
    EXPECT_EQ(joined(site, "LM1:K1.C", "ES1:1"), "C1.1: LM1:K1.C – ES1:1");
    EXPECT_EQ(joined(site, "ES1:2", "LM1:K1.NO"), "C1.2: LM1:K1.NO – ES1:2") << "whichever way it is said";
}

TEST(JoinTerminals, DrawsAWireWithinAPlace)
{
    SmallSite site;
    EXPECT_EQ(joined(site, "PS1:+", "LM1:+"), "W1: PS1:+ – LM1:+");
    EXPECT_EQ(joined(site, "PS1:−", "LM1:−", colour("BK")), "W2: PS1:− – LM1:−");
    EXPECT_EQ(site.job().conductors.find(conductorNamed(site.job(), "PS1:− → LM1:−"))->colour, "BK");
}

TEST(JoinTerminals, TakesTheCoreThatIsWishedFor)
{
    SmallSite site;
    EXPECT_EQ(joined(site, "PS1:+", "ES1:1", colour("GN")), "C1.3: PS1:+ – ES1:1");
    EXPECT_EQ(joined(site, "PS1:−", "ES1:2", coreNumber(2)), "C1.2: PS1:− – ES1:2");
    EXPECT_EQ(joined(site, "PS1:+", "DPS1:A", aWire()), "W1: PS1:+ – DPS1:A");
    EXPECT_EQ(refused(site, "LM1:COM", "DPS1:B", colour("GN")),
              "DPS1:B: No free core 'GN' runs between CAB1 and FRAME. Use one of: C1.1 RD, C1.4 WH; or pull "
              "another cable.");
}

TEST(JoinTerminals, FinishesACoreThatWaitsOnTheOtherSideFirst)
{
    SmallSite site;
    const ConductorId third = coresInOrder(site.job(), *site.job().cables.find(site.cable1))[2]->id;
    site.make(setEnd(site.job(), third, WhichEnd::From, endNamed(site.job(), "PS1:+")));
    EXPECT_EQ(joined(site, "PS1:+", "ES1:1"), "C1.3: PS1:+ – ES1:1");
    EXPECT_EQ(joined(site, "PS1:+", "DPS1:A"), "C1.1: PS1:+ – DPS1:A");
}

TEST(JoinTerminals, FinishesAHangingWireInThePlace)
{
    SmallSite site;
    auto [id, change] = addWire(site.job(), site.numbers(), {}, endNamed(site.job(), "PS1:+"), "W9");
    site.make(change);
    EXPECT_EQ(joined(site, "PS1:+", "LM1:+"), "W9: LM1:+ – PS1:+");
}

TEST(JoinTerminals, KeepsTheCablesOfDevicesApart)
{
    SmallSite site;
    const CableId second = site.cable("C2", site.four, site.frame, site.cabinet);
    ASSERT_TRUE(second);
    EXPECT_EQ(joined(site, "PS1:+", "ES1:1"), "C1.1: PS1:+ – ES1:1");
    EXPECT_EQ(joined(site, "PS1:+", "DPS1:A"), "C2.1: DPS1:A – PS1:+") << "C1 serves the strike";
    EXPECT_EQ(joined(site, "LM1:COM", "DPS1:B"), "C2.2: DPS1:B – LM1:COM");
    EXPECT_EQ(joined(site, "LM1:K1.C", "ES1:2"), "C1.2: LM1:K1.C – ES1:2");
}

TEST(JoinTerminals, LeavesSpareCoresUnlessTheyAreNamed)
{
    SmallSite site;
    site.make(capUnused(site.job(), site.cable1));
    EXPECT_EQ(refused(site, "PS1:+", "ES1:1"),
              "ES1:1: Between CAB1 and FRAME only spare cores are left. Name one of them (C1.1 RD, C1.2 BK, "
              "C1.3 GN, C1.4 WH), or pull another cable.");
    EXPECT_EQ(joined(site, "PS1:+", "ES1:1", coreNumber(2)), "C1.2: PS1:+ – ES1:1");
}

TEST(JoinTerminals, TouchesNoCoreThatIsToBeLeftAlone)
{
    SmallSite site;
    const ConductorId first = coresInOrder(site.job(), *site.job().cables.find(site.cable1))[0]->id;
    site.make(setStanding(site.job(), {first.number}, Standing::LeaveAlone));
    EXPECT_EQ(joined(site, "PS1:+", "ES1:1"), "C1.2: PS1:+ – ES1:1");
    EXPECT_EQ(site.drawn(site.make(landNext(site.job(), site.cable1, site.at("ES1:2"))).conductor),
              "C1.3: waiting – ES1:2");
    EXPECT_EQ(
        refused(site, "PS1:−", "ES1:2", coreNumber(1)),
        "ES1:2: No free core '1' runs between CAB1 and FRAME. Use one of: C1.4 WH; or pull another cable.");
}

TEST(JoinTerminals, SaysWhatToPullWhereNoCoreIsFree)
{
    SmallSite site;
    site.make(removeCable(site.job(), site.cable1));
    EXPECT_EQ(refused(site, "PS1:+", "ES1:1"),
              "ES1:1: No free core runs between CAB1 and FRAME. Pull a cable between CAB1 and FRAME first.");
}

TEST(JoinTerminals, WantsPlaces)
{
    SmallSite site;
    site.device("ES2", catalogueKind("strike-fail-secure"));
    site.device("ES3", catalogueKind("strike-fail-secure"));
    EXPECT_EQ(
        refused(site, "PS1:+", "ES2:1"),
        "ES2:1: 'ES2:1' has no place yet, so no cable can be found for it. Say first where its device is, "
        "or join it with a wire.");
    EXPECT_EQ(joined(site, "ES2:1", "ES3:1"), "W1: ES2:1 – ES3:1") << "where no place is known, wires do";
}

TEST(JoinTerminals, RefusesTheSameTwice)
{
    SmallSite site;
    EXPECT_EQ(refused(site, "PS1:+", "PS1:+"),
              "PS1:+: 'PS1:+' can't be joined to itself. Choose another terminal.");
    joined(site, "PS1:+", "ES1:1");
    EXPECT_EQ(
        refused(site, "ES1:1", "PS1:+"),
        "C1.1 (PS1:+ – ES1:1): 'ES1:1' and 'PS1:+' are joined already. To double it, say with which core "
        "or wire.");
    EXPECT_EQ(joined(site, "PS1:+", "ES1:1", coreNumber(2)), "C1.2: PS1:+ – ES1:1");
    EXPECT_EQ(refusal(joinTerminals(site.job(), site.numbers(), Landing{site.supply, "X"}, site.at("ES1:1"))),
              "PS1: PS1 has no terminal 'X'. Use one of: +, −, B+, B−.");
    EXPECT_EQ(
        refused(site, "PS1:+", "LM1:+", coreNumber(1)),
        "LM1:+: 'PS1:+' and 'LM1:+' are both at CAB1, and no such core ends there twice. Join them with a "
        "wire.");
}

TEST(JoinTerminals, GoesToASplice)
{
    SmallSite site;
    Splice splice{.id = {site.numbers().take()}, .tag = "S1", .place = site.frame, .connector = {}};
    site.make(Change{{Put<Splice>{splice.id, splice}}});
    const Landed landed =
        site.make(joinTerminals(site.job(), site.numbers(), site.at("PS1:−"), LandingPoint{splice.id}));
    EXPECT_EQ(site.drawn(landed.conductor), "C1.1: PS1:− – S1");
    const Landed inFrame =
        site.make(joinTerminals(site.job(), site.numbers(), LandingPoint{splice.id}, site.at("ES1:2")));
    EXPECT_EQ(site.drawn(inFrame.conductor), "W1: S1 – ES1:2");
}

} // namespace doorloom
