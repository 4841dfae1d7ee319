#include "ui/sheetdesk.h"
#include "ui/sheetjobs.h"

#include "catalogue/stockcables.h"
#include "core/random.h"
#include "edit/drawing.h"
#include "edit/removeany.h"

#include <gtest/gtest.h>

#include <QApplication>

#include <cstdlib>

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

// Random events of every sort; EVENTS says how many.
TEST(SheetMad, AMonkeyAtTheSheetBreaksNothing)
{
    const char* asked = std::getenv("EVENTS");
    const int events = asked ? std::atoi(asked) : 1500;
    forEachSeed(3, [events](Random& random) {
        SheetDesk desk(cabinetAndFrame());
        const auto anywhere = [&] {
            if (random.below(3) == 0)
                return QPoint(random.between(-50, 1250), random.between(-50, 950));
            std::vector<QPoint> points;
            for (const Device& device : desk.job().devices) {
                points.push_back(desk.view.rectOf(device.id.number).topLeft() + QPoint(3, 3));
                for (const Terminal* terminal : terminalsOf(*kindOf(desk.job(), device)))
                    points.push_back(desk.view.rectOf(device.id.number, terminal->key).center());
            }
            for (const Conductor& conductor : desk.job().conductors)
                points.push_back(desk.view.rectOf(conductor.id.number).topLeft() +
                                 QPoint(random.between(0, 40), random.between(0, 40)));
            return points.empty() ? QPoint(5, 5) : random.oneOf(points);
        };
        const std::vector<Qt::MouseButton> buttons{Qt::LeftButton, Qt::LeftButton, Qt::LeftButton,
                                                   Qt::MiddleButton, Qt::RightButton};
        const std::vector<Qt::KeyboardModifiers> keys{Qt::NoModifier, Qt::NoModifier, Qt::NoModifier,
                                                      Qt::ControlModifier, Qt::ShiftModifier};
        const std::vector<Qt::Key> strokes{Qt::Key_Tab,   Qt::Key_Backtab, Qt::Key_Up,     Qt::Key_Down,
                                           Qt::Key_Left,  Qt::Key_Right,   Qt::Key_Return, Qt::Key_Escape,
                                           Qt::Key_Space, Qt::Key_A};
        const char* kinds[] = {"push-plate", "diode", "earth-bar"};
        const Job start = desk.job();
        for (int i = 0; i < events; ++i) {
            switch (random.below(16)) {
            case 0:
            case 1:
            case 2:
                QTest::mousePress(&desk.view, random.oneOf(buttons), random.oneOf(keys), anywhere());
                break;
            case 3:
            case 4:
            case 5:
                QTest::mouseRelease(&desk.view, random.oneOf(buttons), random.oneOf(keys), anywhere());
                break;
            case 6:
            case 7:
            case 8:
                desk.move(anywhere());
                break;
            case 9:
                desk.drag(anywhere(), anywhere());
                break;
            case 10:
                desk.key(random.oneOf(strokes), random.oneOf(keys));
                break;
            case 11:
                desk.wheel(anywhere(), random.between(-240, 240), random.oneOf(keys));
                break;
            case 12:
                desk.view.useTool(static_cast<SheetView::Tool>(random.below(6)));
                break;
            case 13:
                if (random.below(4) == 0)
                    desk.view.place(catalogueKind(kinds[random.below(3)]), {});
                else if (random.below(2) == 0)
                    desk.view.pull(*stockCableNamed("18/2"));
                else
                    desk.view.turn();
                break;
            case 14:
                if (random.below(2) == 0)
                    desk.open.history().undo();
                else
                    desk.open.history().redo();
                break;
            default:
                if (const Result<Change> gone = removeAny(desk.job(), desk.selection.rows());
                    gone.ok() && random.below(3) == 0)
                    static_cast<void>(desk.open.make({}, gone.value()));
                else if (random.below(3) == 0)
                    desk.view.fit();
                break;
            }
            if (i % 50 == 0) {
                QApplication::processEvents();
                ASSERT_TRUE(verifyJob(desk.job()).empty()) << "after event " << i;
            }
        }
        for (const Qt::MouseButton button :
             {Qt::LeftButton, Qt::MiddleButton, Qt::RightButton}) // or QTest holds them down
            QTest::mouseRelease(&desk.view, button, {}, {5, 5});
        desk.view.useTool(SheetView::Tool::Choose);
        while (desk.open.history().canUndo())
            desk.open.history().undo();
        EXPECT_EQ(desk.job(), start);
        EXPECT_EQ(QWidget::mouseGrabber(), nullptr);
    });
}

} // namespace
} // namespace doorloom
