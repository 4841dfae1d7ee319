#include "panels/lockspanel.h"
#include "ui/testwindow.h"

#include <QComboBox>
#include <QDockWidget>
#include <QListView>
#include <QTableWidget>

namespace doorloom {
namespace {

QTableWidget& shownLocks(TestWindow& desk)
{
    EXPECT_TRUE(desk.isJudged());
    auto& dock = desk.the<QDockWidget>("locks");
    dock.show();
    dock.raise();
    EXPECT_TRUE(QTest::qWaitFor([&] { return desk.the<QTableWidget>("locksTable").isVisible(); }));
    return desk.the<QTableWidget>("locksTable");
}

// Of the situation called so: its row, or -1.
int rowOf(const QTableWidget& table, const QString& situation)
{
    for (int row = 0; row < table.rowCount(); ++row)
        if (table.item(row, 0)->text() == situation)
            return row;
    return -1;
}

TEST(LocksPanel, SaysWhatEachLockDoesBesideWhatIsPromised)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    QTableWidget& table = shownLocks(desk);
    EXPECT_TRUE(desk.the<QComboBox>("locksOpening").currentText().startsWith("207"));
    const int row = rowOf(table, "all power lost");
    ASSERT_GE(row, 0);
    EXPECT_EQ(table.item(row, 1)->text(), "ES1");
    EXPECT_EQ(table.item(row, 2)->text(), "locked");
    EXPECT_EQ(table.item(row, 3)->text(), "locked");
    EXPECT_EQ(table.item(row, 4)->text(), "kept");
}

TEST(LocksPanel, MarksABrokenPromiseAndShowsItsLock)
{
    TestWindow desk;
    desk.window().openSample("archive-room-broken.doorjob");
    QTableWidget& table = shownLocks(desk);
    int broken = -1;
    for (int row = 0; row < table.rowCount(); ++row)
        if (table.item(row, 4)->text() == "✗ NOT KEPT")
            broken = row;
    ASSERT_GE(broken, 0);
    EXPECT_TRUE(table.item(broken, 4)->font().bold());
    QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, table.visualItemRect(table.item(broken, 1)).center());
    const Device* lock = deviceTagged(desk.job(), "ML1");
    EXPECT_EQ(desk.window().selection().rows(), std::vector<std::uint32_t>{lock->id.number});
}

TEST(LocksPanel, FollowsTheJob)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    QTableWidget& table = shownLocks(desk);
    ASSERT_EQ(table.item(rowOf(table, "request staff key"), 4)->text(), "kept");
    const Device* strike = deviceTagged(desk.job(), "ES1");
    const auto conductors = conductorsOn(desk.job(), strike->id);
    EXPECT_EQ(desk.window().open().make(Message(verbatim("take off")), takeOff(desk.job(), conductors.front()->id).value()), std::nullopt);
    EXPECT_TRUE(QTest::qWaitFor([&] {
        const int row = rowOf(table, "request staff key");
        return row >= 0 && table.item(row, 4)->text() == "✗ NOT KEPT";
    }));
}

} // namespace
} // namespace doorloom
