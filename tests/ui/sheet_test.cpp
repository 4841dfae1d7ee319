#include "ui/sheetdesk.h"

#include "edit/drawing.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

Job restroom()
{
    return oneDoor().job();
}

TEST(Sheet, SaysInWordsWhatIsUnderThePointer)
{
    const SheetDesk desk(restroom());

    EXPECT_EQ(desk.wordsAt(desk.head("PS1")), "PS1: DC supply 24 V, 2 A, with battery");
    EXPECT_EQ(desk.wordsAt(desk.paper()), "");
    EXPECT_NE(desk.wordsAt(desk.terminal("PS1:+")).find("Landed: "), std::string::npos);
    EXPECT_NE(desk.wordsAt(desk.terminal("PS1:B+")).find("Nothing is landed here."), std::string::npos);
}

TEST(Sheet, MovesADeviceByAWholeNumberOfStepsWhenItsHeadIsDragged)
{
    SheetDesk desk(restroom());
    desk.view.scaleTo(0.5);
    const QPoint from = desk.head("PS1");

    desk.drag(from, from + QPoint(83, 41));

    const Placement* placed = placementOf(desk.job(), desk.device("PS1"));
    ASSERT_TRUE(placed);
    EXPECT_EQ(placed->at.x % 25, 0);
    EXPECT_EQ(placed->at.y % 25, 0);
    EXPECT_EQ(desk.open.history().count(), 1);
    EXPECT_EQ(desk.wordsAt(from + QPoint(83, 41)).substr(0, 4), "PS1:");
    EXPECT_TRUE(desk.refusals.empty());

    desk.open.history().undo();
    EXPECT_FALSE(placementOf(desk.job(), desk.device("PS1")));
    EXPECT_EQ(desk.wordsAt(from).substr(0, 4), "PS1:");
}

} // namespace
} // namespace doorloom
