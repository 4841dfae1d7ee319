#include "ui/sheetdesk.h"
#include "ui/sheetjobs.h"

#include "catalogue/stockcables.h"
#include "edit/drawing.h"
#include "edit/landcores.h"

#include <gtest/gtest.h>

#include <QApplication>

#include <cmath>

namespace doorloom {
namespace {

const Conductor& only(const Job& job)
{
    EXPECT_EQ(job.conductors.size(), 1u);
    return *job.conductors.begin();
}

TEST(SheetTools, DraggingFromTerminalToTerminalInOnePlaceDrawsAWire)
{
    SheetDesk desk(cabinetAndFrame());

    desk.drag(desk.terminal("PS1:+"), desk.terminal("LM1:+"));

    EXPECT_EQ(allEnds(desk.job()), Strings{"PS1:+ LM1:+"});
    EXPECT_EQ(desk.open.history().undoText(), "land PS1:+ on LM1:+");
    EXPECT_EQ(desk.selection.rows(), std::vector{only(desk.job()).id.number});
    EXPECT_EQ(desk.wordsAt(desk.terminal("PS1:+")).find("Nothing"), std::string::npos);
}

TEST(SheetTools, ClickingOneTerminalAndThenAnotherDrawsAWireToo)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.useTool(SheetView::Tool::Wire);

    desk.click(desk.terminal("PS1:−"));
    desk.click(desk.terminal("LM1:−"));

    EXPECT_EQ(allEnds(desk.job()), Strings{"PS1:− LM1:−"});
    desk.click(desk.terminal("PS1:+"));
    desk.key(Qt::Key_Escape);
    desk.click(desk.terminal("LM1:+"));
    desk.click(desk.paper());
    EXPECT_EQ(desk.job().conductors.size(), 1u) << "Escape and bare paper give a landing up";
    EXPECT_TRUE(desk.refusals.empty());
}

TEST(SheetTools, JoiningTwoPlacesWithoutACableIsRefusedInWords)
{
    SheetDesk desk(cabinetAndFrame());

    desk.drag(desk.terminal("PS1:+"), desk.terminal("ES1:1"));

    EXPECT_TRUE(desk.job().conductors.empty());
    EXPECT_EQ(
        desk.refusals,
        Strings{"ES1:1: No free core runs between CAB1 and STK. Pull a cable between CAB1 and STK first."});
    EXPECT_EQ(desk.open.history().count(), 0);
}

TEST(SheetTools, ATerminalJoinedWithItselfIsLeftAlone)
{
    SheetDesk desk(cabinetAndFrame());

    desk.click(desk.terminal("PS1:+"));
    desk.click(desk.terminal("PS1:+"));

    EXPECT_TRUE(desk.job().conductors.empty());
    EXPECT_EQ(desk.selection.rows(), std::vector{desk.device("PS1").number});
}

TEST(SheetTools, ACablePulledBetweenBoxesIsUsedUpInItsColourOrderByClicks)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.pull(*stockCableNamed("18/2"));

    desk.drag(desk.head("LM1"), desk.head("ES1"));
    ASSERT_EQ(desk.job().cables.size(), 1u);
    const Cable cable = *desk.job().cables.begin();
    EXPECT_EQ(desk.open.history().undoText(),
              QString("pull %1 from CAB1 to STK").arg(QString::fromStdString(cable.tag)));
    desk.click(desk.terminal("LM1:K1.C"));
    desk.click(desk.terminal("ES1:1"));
    desk.click(desk.terminal("LM1:K1.NO"));
    desk.click(desk.terminal("ES1:2"));

    EXPECT_EQ(allEnds(desk.job()), (Strings{"LM1:K1.C ES1:1", "LM1:K1.NO ES1:2"}));
    EXPECT_EQ(desk.job().cableTypes.size(), 1u);
    EXPECT_TRUE(desk.refusals.empty());

    desk.view.pull(*stockCableNamed("18/2"));
    desk.drag(desk.head("PS1"), desk.head("ES1"));
    EXPECT_EQ(desk.job().cables.size(), 2u);
    EXPECT_EQ(desk.job().cableTypes.size(), 1u) << "a type is taken into the job once";
    desk.key(Qt::Key_Escape);
    desk.key(Qt::Key_Escape);
    EXPECT_EQ(desk.view.tool(), SheetView::Tool::Choose);
}

TEST(SheetTools, ACablePulledIsUsedUpByDraggingFromTerminalToTerminalToo)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.pull(*stockCableNamed("18/2"));
    desk.drag(desk.head("LM1"), desk.head("ES1"));
    const auto generation = desk.open.generation();

    desk.drag(desk.terminal("LM1:K1.C"), desk.terminal("ES1:1"));
    EXPECT_EQ(desk.open.generation(), generation + 1) << "one change a drag";
    desk.drag(desk.terminal("ES1:2"), desk.terminal("LM1:K1.NO"));
    EXPECT_EQ(allEnds(desk.job()), (Strings{"LM1:K1.C ES1:1", "LM1:K1.NO ES1:2"}));
    EXPECT_TRUE(desk.refusals.empty());

    desk.drag(desk.head("PS1"), desk.head("ES1"));
    EXPECT_EQ(desk.job().cables.size(), 2u) << "the cable is used up: the next one can be pulled";
    desk.drag(desk.terminal("LM1:K1.NC"), desk.terminal("LM1:K1.C"));
    EXPECT_EQ(desk.refusals.size(), 1u) << "no core of the cable runs within one place";
}

TEST(SheetTools, ACableIsNotPulledToADeviceWithoutAPlaceOrWithinOne)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.pull(*stockCableNamed("18/2"));

    desk.drag(desk.head("LM1"), desk.head("SPARE"));
    desk.drag(desk.head("LM1"), desk.head("PS1"));
    desk.drag(desk.head("SPARE"), desk.head("PS1"));

    EXPECT_TRUE(desk.job().cables.empty());
    EXPECT_EQ(
        desk.refusals,
        (Strings{
            "SPARE: SPARE has no place yet, so that no cable can end there. Say in its details where it is.",
            "CAB1: Both ends would be at CAB1. Join terminals of one place by dragging from one to the "
            "other: that draws a wire.",
            "SPARE: SPARE has no place yet, so that no cable can end there. Say in its details where it "
            "is."}));
}

TEST(SheetTools, WaitingCoresAreDraggedOutOfTheRingAtTheCablesEnd)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.pull(*stockCableNamed("18/2"));
    desk.drag(desk.head("LM1"), desk.head("ES1"));
    desk.view.useTool(SheetView::Tool::Choose);

    const QPoint ring = desk.ring(desk.job().cables.begin()->id, WhichEnd::To);
    EXPECT_NE(desk.wordsAt(ring).find("Ends that wait: 4"), std::string::npos) << desk.wordsAt(ring);
    desk.drag(ring, desk.terminal("ES1:2"));

    EXPECT_EQ(allEnds(desk.job()), (Strings{"– ES1:2", "– –"}));
}

TEST(SheetTools, AnEndIsMovedByDraggingItAndTakenOffOntoBarePaper)
{
    SheetDesk desk(cabinetAndFrame());
    desk.drag(desk.terminal("PS1:+"), desk.terminal("LM1:+"));

    desk.drag(desk.endOf("PS1:+"), desk.terminal("PS1:B+"));
    EXPECT_EQ(allEnds(desk.job()), Strings{"PS1:B+ LM1:+"});
    desk.drag(desk.endOf("PS1:B+"), desk.paper());
    EXPECT_EQ(allEnds(desk.job()), Strings{"– LM1:+"});
    EXPECT_EQ(desk.open.history().count(), 3);
    EXPECT_TRUE(desk.refusals.empty());
}

TEST(SheetTools, DraggingAPieceOfALinePinsItAndItRunsFreelyAgain)
{
    SheetDesk desk(cabinetAndFrame());
    desk.drag(desk.terminal("PS1:+"), desk.terminal("LM1:−"));
    const ConductorId wire = only(desk.job()).id;
    const QPoint upright = QPoint(desk.view.rectOf(wire.number).right() - 12,
                                  (desk.terminal("PS1:+").y() + desk.terminal("LM1:−").y()) / 2);
    const QPoint onLine = desk.nearest(upright, "");
    ASSERT_FALSE(onLine.isNull());

    desk.drag(onLine, onLine + QPoint(60, 0));
    const Bends* bends = bendsOf(desk.job(), wire);
    ASSERT_TRUE(bends);
    EXPECT_EQ(bends->pinned.size(), 1u);
    EXPECT_GT(desk.view.rectOf(wire.number).right(), upright.x() + 40);
    desk.view.letRun();
    EXPECT_FALSE(bendsOf(desk.job(), wire));
    EXPECT_LT(desk.view.rectOf(wire.number).right(), upright.x() + 40);
}

TEST(SheetTools, PlacesADeviceWhereItIsClickedOnceOrWhileCtrlIsHeld)
{
    SheetDesk desk;
    desk.view.place(catalogueKind("dc-supply-24"), {});

    desk.click({400, 300}, Qt::ControlModifier);
    EXPECT_EQ(desk.view.tool(), SheetView::Tool::Place);
    desk.click({700, 500});
    EXPECT_EQ(desk.view.tool(), SheetView::Tool::Choose);
    desk.click({200, 600});

    ASSERT_EQ(desk.job().devices.size(), 2u);
    EXPECT_EQ(desk.job().sheets.size(), 1u) << "a job without a sheet gets one with its first device";
    EXPECT_EQ(desk.wordsAt({404, 304}).substr(0, 4), "PS1:");
    EXPECT_EQ(desk.wordsAt({704, 504}).substr(0, 4), "PS2:");
    EXPECT_EQ(desk.view.tool(), SheetView::Tool::Choose);
    desk.open.history().undo();
    desk.open.history().undo();
    EXPECT_TRUE(desk.job().devices.empty());
    EXPECT_TRUE(desk.job().sheets.empty());
}

TEST(SheetTools, PlacesByTheKeyboardWhereNothingStands)
{
    SheetDesk desk(cabinetAndFrame());

    for (int i = 0; i < 4; ++i)
        desk.view.placeAtFreeSpot(catalogueKind("push-plate"), desk.job().places.begin()->id);

    std::vector<QRect> rects;
    for (const Device& device : desk.job().devices)
        rects.push_back(desk.view.rectOf(device.id.number));
    ASSERT_EQ(rects.size(), 8u);
    for (std::size_t i = 0; i < rects.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            EXPECT_FALSE(rects[i].intersects(rects[j])) << i << " " << j;
}

TEST(SheetTools, SplicesAndNotesGoWhereTheyAreClicked)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.useTool(SheetView::Tool::Splice);
    desk.click(desk.paper() - QPoint(40, 40));
    ASSERT_EQ(desk.job().splices.size(), 1u);
    desk.view.useTool(SheetView::Tool::Note);
    desk.click(desk.paper() - QPoint(300, 60));
    QWidget* editor = QApplication::focusWidget();
    ASSERT_TRUE(editor && editor != &desk.view);
    QTest::keyClicks(editor, "keep clear of the ");
    QTest::keyClick(editor, Qt::Key_Enter, Qt::ShiftModifier);
    QTest::keyClicks(editor, "sprinkler");
    QTest::keyClick(editor, Qt::Key_Enter);

    ASSERT_EQ(desk.job().notes.size(), 1u);
    EXPECT_EQ(desk.job().notes.begin()->words, "keep clear of the \nsprinkler");
    EXPECT_EQ(desk.open.history().count(), 2);
    EXPECT_EQ(QApplication::focusWidget(), &desk.view);
}

TEST(SheetTools, ChoosesByClicksWithControlAndByARubberBand)
{
    SheetDesk desk(cabinetAndFrame());
    const std::uint32_t supply = desk.device("PS1").number, module = desk.device("LM1").number;

    desk.click(desk.head("PS1"));
    EXPECT_EQ(desk.selection.rows(), std::vector{supply});
    desk.click(desk.head("LM1"), Qt::ControlModifier);
    EXPECT_EQ(desk.selection.rows(), (std::vector{supply, module}));
    desk.click(desk.head("PS1"), Qt::ShiftModifier);
    EXPECT_EQ(desk.selection.rows(), std::vector{module});
    desk.click(desk.paper());
    EXPECT_TRUE(desk.selection.rows().empty());

    const QRect both = desk.view.rectOf(supply).united(desk.view.rectOf(module)).adjusted(-6, -6, 6, 6);
    desk.drag(both.topLeft(), both.bottomRight());
    EXPECT_EQ(desk.selection.rows(), (std::vector{supply, module}));
    desk.key(Qt::Key_Escape);
    EXPECT_TRUE(desk.selection.rows().empty());
}

TEST(SheetTools, WhatIsChosenIsMovedTogetherNudgedAlignedAndTurned)
{
    SheetDesk desk(cabinetAndFrame());
    const DeviceId module = desk.device("LM1"), strike = desk.device("ES1");
    desk.selection.choose({module.number, strike.number});

    desk.drag(desk.head("LM1"), desk.head("LM1") + QPoint(40, 30));
    ASSERT_TRUE(placementOf(desk.job(), module) && placementOf(desk.job(), strike));
    const Point before = placementOf(desk.job(), module)->at,
                strikeBefore = placementOf(desk.job(), strike)->at;
    desk.key(Qt::Key_Right);
    desk.key(Qt::Key_Down);
    EXPECT_EQ(placementOf(desk.job(), module)->at, (Point{before.x + 25, before.y + 25}));
    EXPECT_EQ(placementOf(desk.job(), strike)->at, (Point{strikeBefore.x + 25, strikeBefore.y + 25}));
    desk.view.align(SheetView::Along::Top);
    EXPECT_EQ(placementOf(desk.job(), module)->at.y, placementOf(desk.job(), strike)->at.y);
    const QRect upright = desk.view.rectOf(module.number);
    desk.view.turn();
    EXPECT_EQ(placementOf(desk.job(), module)->quarterTurns, 1);
    EXPECT_NE(desk.view.rectOf(module.number).size(), upright.size());
    EXPECT_EQ(desk.open.history().count(), 5);
}

TEST(SheetTools, MovingOneDeviceKeepsTheOthersWhereTheyWereDrawnWithoutAPlacement)
{
    SheetDesk desk(cabinetAndFrame());
    const Job start = desk.job();
    const QRect strike = desk.view.rectOf(desk.device("ES1").number);

    desk.drag(desk.head("PS1"), desk.head("PS1") + QPoint(40, 30));

    EXPECT_EQ(desk.job().placements.size(), 4u);
    EXPECT_EQ(desk.view.rectOf(desk.device("ES1").number), strike);
    SheetDesk again(desk.job());
    EXPECT_EQ(placementOf(again.job(), again.device("ES1"))->at,
              placementOf(desk.job(), desk.device("ES1"))->at);
    desk.open.history().undo();
    EXPECT_EQ(desk.job(), start);
}

TEST(SheetTools, PansByTheMiddleButtonTheWheelAndTheSpaceBar)
{
    SheetDesk desk(cabinetAndFrame());
    const QPoint start = desk.head("PS1");

    QTest::mousePress(&desk.view, Qt::MiddleButton, {}, {500, 400});
    QTest::mouseMove(&desk.view, {520, 430});
    QTest::mouseRelease(&desk.view, Qt::MiddleButton, {}, {520, 430});
    EXPECT_EQ(desk.head("PS1"), start + QPoint(20, 30));
    QTest::keyPress(&desk.view, Qt::Key_Space);
    desk.drag({500, 400}, {480, 370});
    QTest::keyRelease(&desk.view, Qt::Key_Space);
    EXPECT_EQ(desk.head("PS1"), start);
    desk.wheel({500, 400}, -120, {});
    EXPECT_LT(desk.head("PS1").y(), start.y());
    EXPECT_EQ(desk.open.history().count(), 0);
}

TEST(SheetTools, TheWheelWithControlZoomsAboutThePointer)
{
    SheetDesk desk(cabinetAndFrame());
    const QPoint at = desk.view.rectOf(desk.device("LM1").number).center();
    const std::string words = desk.wordsAt(at);
    const double before = desk.view.scale();

    desk.wheel(at, 240, Qt::ControlModifier);
    EXPECT_NEAR(desk.view.scale(), before * 1.25 * 1.25, 1e-9);
    EXPECT_EQ(desk.wordsAt(at), words);
    for (int i = 0; i < 100; ++i)
        desk.wheel(at, 1200, Qt::ControlModifier);
    const double most = desk.view.scale();
    for (int i = 0; i < 100; ++i)
        desk.wheel(at, -1200, Qt::ControlModifier);
    EXPECT_GT(desk.view.scale(), 0);
    EXPECT_LT(desk.view.scale(), most);
    desk.view.scaleTo(-1);
    desk.view.scaleTo(std::nan(""));
    desk.view.fit();
    EXPECT_NEAR(desk.view.scale(), before, 0.01);
}

} // namespace
} // namespace doorloom
