#include "ui/sheetdesk.h"
#include "ui/sheetjobs.h"

#include "catalogue/stockcables.h"
#include "core/random.h"
#include "edit/details.h"
#include "edit/operations.h"
#include "edit/undowords.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QScreen>
#include <QWindow>

#include <cstdlib>

namespace doorloom {
namespace {

// What stands on the screen: painted piece by piece, scrolled, as events came.
QImage onScreen(SheetDesk& desk)
{
    QApplication::processEvents();
    return desk.view.screen()->grabWindow(desk.view.winId()).toImage().convertToFormat(QImage::Format_RGB32);
}

// The same painted from nothing.
QImage anew(SheetDesk& desk)
{
    return desk.view.grab().toImage().convertToFormat(QImage::Format_RGB32);
}

std::string difference(const QImage& a, const QImage& b)
{
    if (a == b)
        return {};
    if (a.size() != b.size())
        return "sizes differ";
    int left = a.width(), top = a.height(), right = -1, bottom = -1;
    for (int y = 0; y < a.height(); ++y)
        for (int x = 0; x < a.width(); ++x)
            if (a.pixel(x, y) != b.pixel(x, y)) {
                left = std::min(left, x);
                top = std::min(top, y);
                right = std::max(right, x);
                bottom = std::max(bottom, y);
            }
    return std::to_string(left) + "," + std::to_string(top) + "–" + std::to_string(right) + "," +
           std::to_string(bottom);
}

TEST(SheetPaint, PiecesPaintedAgainMakeTheSamePictureAsPaintingAll)
{
    if (QGuiApplication::platformName() != "offscreen")
        GTEST_SKIP() << "reads the screen, where other windows may lie over it";
    forEachSeed(4, [](Random& random) {
        SheetDesk desk(cabinetAndFrame());
        ASSERT_EQ(difference(onScreen(desk), anew(desk)), "");
        const auto anywhere = [&] {
            const Device& device = *deviceTagged(desk.job(), random.below(2) ? "LM1" : "PS1");
            const auto terminals = terminalsOf(*kindOf(desk.job(), device));
            return random.below(3) == 0
                       ? QPoint(random.between(0, 1199), random.between(0, 899))
                       : desk.view.rectOf(device.id.number, terminals[random.below(terminals.size())]->key)
                             .center();
        };
        for (int i = 0; i < 60; ++i) {
            const std::size_t what = random.below(9);
            if (what == 0)
                desk.wheel(anywhere(), random.between(-2, 2) * 60, {});
            else if (what == 1)
                desk.wheel(anywhere(), random.below(2) ? 120 : -120, Qt::ControlModifier);
            else if (what == 2)
                desk.drag(desk.head("PS1"),
                          desk.head("PS1") + QPoint(random.between(-90, 90), random.between(-60, 60)));
            else if (what == 3)
                desk.open.history().undo();
            else if (what == 4)
                desk.press(anywhere());
            else if (what == 5)
                desk.key(random.below(2) ? Qt::Key_Tab : Qt::Key_Escape);
            else if (what == 6)
                desk.move(anywhere());
            else if (what == 7)
                desk.release(anywhere());
            else
                desk.drag(anywhere(), anywhere());
            ASSERT_EQ(difference(onScreen(desk), anew(desk)), "")
                << "after step " << i << " of sort " << what;
        }
        QTest::mouseRelease(&desk.view, Qt::LeftButton, {}, {5, 5});
    });
}

// Without colour: what differs in grey too.
QImage grey(SheetDesk& desk)
{
    return anew(desk).convertToFormat(QImage::Format_Grayscale8);
}

TEST(SheetPaint, WhatIsThereAlreadyOrByOthersLooksDifferentWithoutColour)
{
    std::vector<QImage> pictures;
    for (const Standing standing :
         {Standing::New, Standing::Existing, Standing::ByOthers, Standing::LeaveAlone, Standing::Moved}) {
        Job job = cabinetAndFrame();
        Device device = *deviceTagged(job, "PS1");
        device.standing = standing;
        ASSERT_TRUE(applyChange(job, Change{{Put<Device>{device.id, device}}}).ok());
        SheetDesk desk(job);
        pictures.push_back(grey(desk));
    }
    for (std::size_t i = 0; i < pictures.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            EXPECT_NE(pictures[i], pictures[k]) << i << " " << k;
}

TEST(SheetPaint, AFindingsPathIsLitAndWhatIsChosenIsSeenWithoutColour)
{
    SheetDesk desk(cabinetAndFrame());
    desk.drag(desk.terminal("PS1:+"), desk.terminal("LM1:+"));
    desk.selection.choose({});
    const QImage plain = grey(desk);
    const std::uint32_t wire = desk.job().conductors.begin()->id.number;

    desk.selection.choose({wire});
    const QImage chosen = grey(desk);
    desk.selection.choose({});
    Origin lit;
    lit.conductor = {wire};
    desk.selection.light({lit});
    const QImage path = grey(desk);
    desk.selection.light({});

    EXPECT_NE(chosen, plain);
    EXPECT_NE(path, plain);
    EXPECT_NE(path, chosen);
    EXPECT_EQ(grey(desk), plain);
}

TEST(SheetPaint, FollowsThePaletteBetweenLightAndDark)
{
    SheetDesk desk(cabinetAndFrame());
    const QColor light = anew(desk).pixelColor(desk.paper());
    QPalette dark;
    dark.setColor(QPalette::Window, QColor(30, 30, 30));

    desk.view.setPalette(dark);

    EXPECT_GT(light.lightness(), 200);
    EXPECT_LT(anew(desk).pixelColor(desk.paper()).lightness(), 60);
}

TEST(SheetPaint, PaintsAtEveryScaleAndAnEmptyJobToo)
{
    SheetDesk desk(cabinetAndFrame());
    for (const double scale : {0.0001, 0.02, 0.1, 0.3, 1.0, 3.0, 1000.0}) {
        desk.view.scaleTo(scale);
        EXPECT_FALSE(anew(desk).isNull());
    }
    SheetDesk empty;
    EXPECT_FALSE(anew(empty).isNull());
    empty.view.resize(1, 1);
    empty.view.fit();
    EXPECT_FALSE(anew(empty).isNull());
}

TEST(SheetPaint, NamesDevicesAndBoxesFromFarAway)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.scaleTo(0.3 / desk.view.devicePixelRatioF()); // words in their true size can't be read any more
    const QImage before = anew(desk);
    const auto made = [&](const Result<Change>& change) {
        EXPECT_TRUE(change.ok());
        EXPECT_FALSE(desk.open.make(undoWords(desk.job(), doing::rename), change.value()).has_value());
    };
    made(renameDevice(desk.job(), desk.device("LM1"), "QZ9"));
    const QImage renamed = anew(desk);
    EXPECT_NE(difference(before, renamed), "");
    made(renamePlace(desk.job(), desk.job().places.begin()->id, "XYZ"));
    EXPECT_NE(difference(renamed, anew(desk)), "");
    EXPECT_EQ(difference(onScreen(desk), anew(desk)), "");
}

TEST(SheetPaint, StaysFittedInAnotherSizeUntilTheUserLooksElsewhere)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.fit();
    const double fitted = desk.view.scale();
    desk.view.resize(600, 450);
    EXPECT_LT(desk.view.scale(), fitted);
    EXPECT_TRUE(desk.view.rect().contains(desk.view.rectOf(desk.device("PS1").number)));
    desk.view.scaleBy(2);
    const double chosen = desk.view.scale();
    desk.view.resize(1200, 900);
    EXPECT_EQ(desk.view.scale(), chosen);
}

} // namespace
} // namespace doorloom
