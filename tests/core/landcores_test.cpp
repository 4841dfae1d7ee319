#include "edit/landcores.h"

#include "desk.h"

namespace doorloom {

namespace {

std::string landed(Desk& desk, CableId cable, std::string_view at)
{
    return desk.drawn(desk.make(landNext(desk.job(), cable, desk.at(at))).conductor);
}

ConductorId core(const Desk& desk, CableId cable, std::size_t at)
{
    return coresInOrder(desk.job(), *desk.job().cables.find(cable)).at(at)->id;
}

} // namespace

TEST(LandNext, LandsTheEndThatIsAtTheTerminalsPlace)
{
    SmallSite site;
    EXPECT_EQ(landed(site, site.cable1, "ES1:1"), "C1.1: waiting – ES1:1");
    EXPECT_EQ(landed(site, site.cable1, "ES1:2"), "C1.2: waiting – ES1:2");
    EXPECT_EQ(landed(site, site.cable1, "PS1:+"), "C1.1: PS1:+ – ES1:1");
}

TEST(LandNext, PassesOverWhatDoesNotWait)
{
    SmallSite site;
    site.make(capEnd(site.job(), {core(site, site.cable1, 0), WhichEnd::To}));
    EXPECT_EQ(landed(site, site.cable1, "ES1:1"), "C1.2: waiting – ES1:1");
    for (int rest = 0; rest < 2; ++rest)
        landed(site, site.cable1, "ES1:2");
    EXPECT_EQ(refusal(landNext(site.job(), site.cable1, site.at("ES1:2"))),
              "C1: No core of C1 waits at FRAME. Take one off first, or pull another cable.");
}

TEST(LandNext, RefusesATerminalElsewhere)
{
    SmallSite site;
    const PlaceId head = site.place("HEAD");
    site.device("PB1", catalogueKind("push-plate"), head);
    site.device("PB2", catalogueKind("push-plate"));
    EXPECT_EQ(
        refusal(landNext(site.job(), site.cable1, site.at("PB1:C"))),
        "C1: C1 runs from CAB1 to FRAME; 'PB1:C' is at HEAD. Choose a cable that ends at HEAD, or pull one "
        "there.");
    EXPECT_EQ(refusal(landNext(site.job(), site.cable1, site.at("PB2:C"))),
              "C1: C1 runs from CAB1 to FRAME, and 'PB2:C' has no place yet. Say first where its device is.");
}

TEST(LandNext, LandsBothEndsOfACableWithinOnePlace)
{
    SmallSite site;
    const CableId loop = site.cable("C2", site.four, site.cabinet, site.cabinet);
    EXPECT_EQ(landed(site, loop, "PS1:+"), "C2.1: PS1:+ – waiting");
    EXPECT_EQ(landed(site, loop, "LM1:+"), "C2.1: PS1:+ – LM1:+");
    EXPECT_EQ(landed(site, loop, "PS1:−"), "C2.2: PS1:− – waiting");
}

TEST(CapEnd, LeavesLandedEndsAlone)
{
    SmallSite site;
    const ConductorId first = core(site, site.cable1, 0);
    landed(site, site.cable1, "ES1:1");
    EXPECT_EQ(refusal(capEnd(site.job(), {first, WhichEnd::To})),
              "C1.1 (… – ES1:1): That end of 'C1.1 (… – ES1:1)' is landed. Take it off first.");
    site.make(insulateEnd(site.job(), {first, WhichEnd::From}));
    EXPECT_EQ(site.drawn(first), "C1.1: insulated – ES1:1");
    site.make(freeEnd(site.job(), {first, WhichEnd::To}));
    EXPECT_EQ(site.drawn(first), "C1.1: insulated – waiting");
}

TEST(CapUnused, CapsWhatIsLandedNowhere)
{
    SmallSite site;
    landed(site, site.cable1, "ES1:1");
    site.make(capUnused(site.job(), site.cable1));
    EXPECT_EQ(site.drawn(core(site, site.cable1, 0)), "C1.1: waiting – ES1:1");
    EXPECT_EQ(site.drawn(core(site, site.cable1, 3)), "C1.4: spare – spare");
}

TEST(JoinAtSplice, JoinsEndsAtOnePlace)
{
    SmallSite site;
    const CableId second = site.cable("C2", site.four, site.frame, site.place("HEAD"));
    const ConductorId one = core(site, site.cable1, 0), other = core(site, second, 0);
    const Spliced spliced = site.make(
        joinAtSplice(site.job(), site.numbers(), {{one, WhichEnd::To}, {other, WhichEnd::From}}, "S1"));
    EXPECT_EQ(site.drawn(one), "C1.1: waiting – S1");
    EXPECT_EQ(site.drawn(other), "C2.1: S1 – waiting");
    EXPECT_EQ(site.job().splices.find(spliced.splice)->place, site.frame);
    EXPECT_EQ(site.job().splices.find(spliced.splice)->capacity, 2);
}

TEST(JoinAtSplice, RefusesEndsApart)
{
    SmallSite site;
    const ConductorId one = core(site, site.cable1, 0), other = core(site, site.cable1, 1);
    EXPECT_EQ(
        refusal(
            joinAtSplice(site.job(), site.numbers(), {{one, WhichEnd::To}, {other, WhichEnd::From}}, "S1")),
        "C1.2 (… – …): 'C1.2 (… – …)' ends at CAB1; the splice would be at FRAME. Splice ends that are at "
        "one place.");
    EXPECT_EQ(refusal(joinAtSplice(site.job(), site.numbers(), {{one, WhichEnd::To}}, "S1")),
              "A splice of '1' ends joins nothing. Choose two ends or more.");
    EXPECT_EQ(
        refusal(joinAtSplice(site.job(), site.numbers(), {{one, WhichEnd::To}, {one, WhichEnd::To}}, "S1")),
        "C1.1 (… – …): One end of 'C1.1 (… – …)' is named twice for a splice. Name it once.");
}

} // namespace doorloom
