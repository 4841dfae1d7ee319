#include "edit/nexttag.h"

#include "desk.h"

namespace doorloom {

TEST(CountedOn, RaisesTheNumberUntilItIsFree)
{
    const auto taken = [](const std::string& tag) { return tag == "EL1" || tag == "EL2" || tag == "DOOR"; };
    EXPECT_EQ(countedOn("EL1", taken), "EL3");
    EXPECT_EQ(countedOn("EL4", taken), "EL4");
    EXPECT_EQ(countedOn("DOOR", taken), "DOOR2");
    EXPECT_EQ(countedOn("NEW", taken), "NEW");
    EXPECT_EQ(countedOn("", taken), "");
}

TEST(NextDeviceTag, CountsOnFromTheJobsOwnLetters)
{
    Desk desk;
    EXPECT_EQ(nextDeviceTag(desk.job(), catalogueKind("strike-fail-safe")), "ES1");
    desk.device("EL1", catalogueKind("strike-fail-safe"));
    desk.device("EL3", catalogueKind("strike-fail-secure"));
    EXPECT_EQ(nextDeviceTag(desk.job(), catalogueKind("strike-fail-safe")), "EL2");
    EXPECT_EQ(nextDeviceTag(desk.job(), catalogueKind("relay-module-negative")), "LM1");
    EXPECT_EQ(nextDeviceTag(desk.job(), catalogueKind("delayed-egress-lock")), "DE1");
    EXPECT_EQ(nextDeviceTag(desk.job(), catalogueKind("dc-supply-24-inrush")), "HP1");
    EXPECT_EQ(nextDeviceTag(desk.job(), catalogueKind("dc-supply-24-mains-fail")), "PS1");
}

TEST(NextCableTag, KeepsTheJobsLetters)
{
    SmallSite site;
    EXPECT_EQ(nextCableTag(site.job()), "C2");
    site.cable("W7", site.four, site.cabinet, site.frame);
    EXPECT_EQ(nextCableTag(site.job()), "W1");
    EXPECT_EQ(nextWireTag(site.job()), "B1") << "not a letter that cables have";
}

} // namespace doorloom
