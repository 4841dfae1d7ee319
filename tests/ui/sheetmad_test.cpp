#include "ui/sheetdesk.h"
#include "ui/sheetjobs.h"

#include "catalogue/stockcables.h"
#include "edit/drawing.h"
#include "edit/removeany.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

void remove(SheetDesk& desk, const std::string& tag)
{
    EXPECT_FALSE(desk.open.make({}, removeAny(desk.job(), {desk.device(tag).number}).value()));
}

// Nothing is in hand: a move of the pointer changes nothing, and the next click chooses.
void expectAtRest(SheetDesk& desk)
{
    const int edits = desk.open.history().count();
    desk.move({40, 40});
    desk.move({300, 300});
    desk.release({300, 300});
    EXPECT_EQ(desk.open.history().count(), edits);
    desk.click(desk.head("LM1"));
    EXPECT_EQ(desk.selection.rows(), std::vector{desk.device("LM1").number});
    EXPECT_EQ(QWidget::mouseGrabber(), nullptr);
}

TEST(SheetMad, WhatIsDraggedMayBeUndoneOrRemovedMeanwhile)
{
    SheetDesk desk(cabinetAndFrame());
    desk.press(desk.head("ES1"));
    desk.move(desk.head("ES1") + QPoint(50, 50));
    remove(desk, "ES1");
    desk.move({500, 500});
    desk.release({500, 500});
    EXPECT_EQ(desk.open.history().count(), 1);
    expectAtRest(desk);

    desk.open.history().undo();
    desk.press(desk.terminal("PS1:+"));
    desk.move({500, 500});
    remove(desk, "PS1");
    desk.move(desk.terminal("LM1:+"));
    desk.release(desk.terminal("LM1:+"));
    EXPECT_TRUE(desk.job().conductors.empty());
    expectAtRest(desk);
}

TEST(SheetMad, AnEndBentOrPulledMayGoMeanwhile)
{
    SheetDesk desk(cabinetAndFrame());
    desk.drag(desk.terminal("PS1:+"), desk.terminal("LM1:+"));
    const QPoint end = desk.endOf("PS1:+");

    desk.press(end);
    desk.move(end + QPoint(80, 80));
    desk.open.history().undo();
    desk.release(desk.terminal("LM1:−"));
    EXPECT_TRUE(desk.job().conductors.empty());

    desk.view.pull(*stockCableNamed("18/2"));
    desk.drag(desk.head("LM1"), desk.head("ES1"));
    desk.open.history().undo();
    EXPECT_TRUE(desk.job().cables.empty());
    desk.click(desk.terminal("ES1:1"));
    desk.view.useTool(SheetView::Tool::Choose);
    EXPECT_TRUE(desk.refusals.empty());
    expectAtRest(desk);
}

TEST(SheetMad, ASecondButtonGivesUpWhatTheFirstBegan)
{
    SheetDesk desk(cabinetAndFrame());
    for (const Qt::MouseButton button : {Qt::RightButton, Qt::MiddleButton}) {
        desk.press(desk.head("PS1"));
        desk.move(desk.head("PS1") + QPoint(60, 60));
        QTest::mousePress(&desk.view, button, {}, {200, 200});
        QTest::mouseRelease(&desk.view, button, {}, {200, 200});
        desk.release({260, 260});
        EXPECT_EQ(desk.open.history().count(), 0);
        expectAtRest(desk);
    }
}

TEST(SheetMad, DraggingFarOutsideTheWindowIsRefusedOrHeldNeverLost)
{
    SheetDesk desk(cabinetAndFrame());
    desk.drag(desk.head("PS1"), {50'000'000, -50'000'000});
    EXPECT_EQ(desk.job().placements.size(), 0u);
    EXPECT_EQ(desk.refusals.size(), 1u);
    desk.drag(desk.head("PS1"), {-400, 2000});
    EXPECT_EQ(desk.open.history().count(), 1);
    desk.drag(desk.terminal("LM1:+"), {-30000, 30000});
    EXPECT_TRUE(desk.job().conductors.empty());
    expectAtRest(desk);
}

TEST(SheetMad, HidingTheSheetOrAnotherJobEndsADrag)
{
    SheetDesk desk(cabinetAndFrame());
    desk.press(desk.head("PS1"));
    desk.move(desk.head("PS1") + QPoint(60, 60));
    desk.view.hide();
    desk.view.show();
    desk.release({500, 500});
    EXPECT_EQ(desk.open.history().count(), 0);

    desk.press(desk.head("PS1"));
    desk.move(desk.head("PS1") + QPoint(60, 60));
    desk.open.begin(cabinetAndFrame());
    desk.release({500, 500});
    EXPECT_EQ(desk.open.history().count(), 0);
    expectAtRest(desk);
}

} // namespace
} // namespace doorloom
