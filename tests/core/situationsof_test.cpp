#include "edit/openings.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

TEST(SituationsOf, AreTheDoorsDayThenWhatMayBeLost)
{
    Opening opening;
    opening.requests = {{"plate", Side::Both, {}}};
    opening.releases = {{"button", Side::Inside, {}}};
    using enum SituationKind;
    EXPECT_EQ(situationsOf(opening), (std::vector<Situation>{{Rest, {}, {}},
                                                             {Request, "plate", {}},
                                                             {Release, "button", {}},
                                                             {MainsLost, {}, {}},
                                                             {AllPowerLost, {}, {}}}));
    opening.occupied = {{OperatorId{7}, "in"}};
    opening.fire = {9};
    opening.promises = {{{LostAlone, {}, {5}}, {1}, Promised::Locked}, {{Rest, {}, {}}, {1}, Promised::Free}};
    EXPECT_EQ(situationsOf(opening), (std::vector<Situation>{{Rest, {}, {}},
                                                             {Request, "plate", {}},
                                                             {Release, "button", {}},
                                                             {Occupied, {}, {}},
                                                             {RequestWhileOccupied, "plate", {}},
                                                             {MainsLost, {}, {}},
                                                             {AllPowerLost, {}, {}},
                                                             {FireAlarm, {}, {}},
                                                             {FireReset, {}, {}},
                                                             {LostAlone, {}, {5}}}));
    EXPECT_EQ(promisedIn(opening, {Rest, {}, {}}, {1}), Promised::Free);
    EXPECT_EQ(promisedIn(opening, {Rest, {}, {}}, {2}), Promised::Nothing);
}

} // namespace
} // namespace doorloom
