#include "ui/testwindow.h"

#include "edit/details.h"
#include "edit/operations.h"
#include "edit/undowords.h"

#include <QComboBox>
#include <QLabel>
#include <QListWidget>
#include <QScrollArea>
#include <QScrollBar>
#include <QTableView>
#include <QWheelEvent>

namespace doorloom {
namespace {

// The details of one device, as they are once the window has come to rest.
class PanelsTest : public testing::Test {
protected:
    PanelsTest() { desk.window().openSample("restroom-staff.doorjob"); }

    void choose(const char* tag)
    {
        desk.window().selection().choose({deviceTagged(desk.job(), tag)->id.number});
        QCoreApplication::processEvents();
    }
    QWidget* form()
    {
        QCoreApplication::processEvents();
        return desk.the<QScrollArea>("detailsScroll").widget();
    }
    void make(const Result<Change>& change)
    {
        ASSERT_TRUE(change.ok());
        EXPECT_FALSE(
            desk.window().open().make(undoWords(desk.job(), doing::alter), change.value()).has_value());
    }

    TestWindow desk;
};

TEST_F(PanelsTest, DetailsStayAsTheyAreWhenALandingElsewhereSaysNothingNewOfTheDevice)
{
    choose("LM1");
    const QPointer<QWidget> before = form();
    desk.type("ps1 + tsp 7 wire");
    choose("LM1"); // typing has chosen the wire
    const QPointer<QWidget> again = form();
    const Conductor& wire = *desk.job().conductors.begin();
    make(takeOff(desk.job(), wire.id));
    EXPECT_EQ(form(), again.data());
    make(renameDevice(desk.job(), deviceTagged(desk.job(), "PS1")->id, "PS9"));
    EXPECT_NE(form(), again.data());
}

TEST_F(PanelsTest, DetailsOfAConductorFollowTheNameOfWhatItIsLandedOn)
{
    const Conductor* landed = nullptr;
    const DeviceId supply = deviceTagged(desk.job(), "PS1")->id;
    for (const Conductor& each : desk.job().conductors)
        if (const Landing* at = landingOf(each.from); at && at->device == supply)
            landed = &each;
    ASSERT_NE(landed, nullptr);
    desk.window().selection().choose({landed->id.number});
    const QPointer<QWidget> before = form();
    make(renameDevice(desk.job(), supply, "PS9"));
    EXPECT_NE(form(), before.data());
}

TEST_F(PanelsTest, DetailsStayWhereTheyWereScrolledWhenTheFormIsMadeAnew)
{
    choose("LM1");
    auto& scroll = desk.the<QScrollArea>("detailsScroll");
    form();
    scroll.verticalScrollBar()->setValue(120);
    ASSERT_EQ(scroll.verticalScrollBar()->value(), 120);
    const QPointer<QWidget> before = form();
    make(setWords(desk.job(), deviceTagged(desk.job(), "LM1")->id, "another"));
    EXPECT_NE(form(), before.data());
    EXPECT_EQ(scroll.verticalScrollBar()->value(), 120);
    choose("PS1");
    form();
    EXPECT_EQ(scroll.verticalScrollBar()->value(), 0);
}

TEST_F(PanelsTest, ARefusalGoesWithTheNextEdit)
{
    choose("LM1");
    auto& tag = desk.the<QLineEdit>("tag");
    tag.setFocus();
    tag.setText("PS1");
    QTest::keyClick(&tag, Qt::Key_Return);
    ASSERT_NE(form()->findChild<QLabel*>("refusal"), nullptr);
    make(takeOff(desk.job(), desk.job().conductors.begin()->id));
    EXPECT_EQ(form()->findChild<QLabel*>("refusal"), nullptr);
}

TEST_F(PanelsTest, AChoiceMakesItsListWhenSomebodyTurnsToIt)
{
    choose("LM1");
    auto& place = desk.the<QComboBox>("Place");
    const QString now = place.currentText();
    EXPECT_EQ(place.count(), 1);
    place.setFocus();
    EXPECT_EQ(place.count(), static_cast<int>(desk.job().places.size()) + 1);
    EXPECT_EQ(place.currentText(), now);
}

TEST_F(PanelsTest, ScrollingPastAChoiceChangesNothing)
{
    choose("LM1");
    auto& standing = desk.the<QComboBox>("standing");
    const Job before = desk.job();
    const QPointF middle = standing.rect().center();
    QWheelEvent turn(middle, standing.mapToGlobal(middle), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                     Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(&standing, &turn);
    EXPECT_EQ(desk.job(), before);
    EXPECT_GT(standing.count(), 1);
    EXPECT_EQ(standing.currentIndex(), 0);
}

TEST_F(PanelsTest, TheJobsDetailsListItsOpenings)
{
    desk.window().selection().choose({});
    QCoreApplication::processEvents();
    auto& openings = desk.the<QListWidget>("openings");
    ASSERT_EQ(openings.count(), static_cast<int>(desk.job().openings.size()));
    QTest::mouseClick(openings.viewport(), Qt::LeftButton, Qt::NoModifier,
                      openings.visualItemRect(openings.item(0)).center());
    EXPECT_EQ(desk.window().selection().rows(),
              std::vector<std::uint32_t>{desk.job().openings.begin()->id.number});
}

TEST_F(PanelsTest, AHeadingOfTheScheduleRunsAcrossItsColumns)
{
    ASSERT_TRUE(desk.isJudged());
    auto& table = desk.the<QTableView>("scheduleTable");
    table.setColumnWidth(0, 30); // far less than the words take
    const QImage picture = table.viewport()->grab().toImage();
    const int top = table.rowViewportPosition(0), bottom = top + table.rowHeight(0);
    const QRgb paper = picture.pixel(picture.width() - 3, (top + bottom) / 2);
    int inked = 0;
    for (int x = 40; x < 160; ++x)
        for (int y = top; y < bottom; ++y)
            inked += picture.pixel(x, y) != paper;
    EXPECT_GT(inked, 100);
}

} // namespace
} // namespace doorloom
