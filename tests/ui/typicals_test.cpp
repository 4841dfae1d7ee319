#include "dialogturns.h"
#include "testwindow.h"

#include "canvas/drawing.h"
#include "edit/details.h"
#include "edit/typicals.h"
#include "file/jobfile.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QTableWidget>
#include <QTreeWidget>

#include <algorithm>

namespace doorloom {
namespace {

QPushButton& okOf(QDialog& dialog)
{
    return *dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
}

void press(TestWindow& desk, Qt::Key key)
{
    QApplication::setActiveWindow(&desk.window()); // a dialog may have been before it
    QTest::keyClick(&desk.window(), key, Qt::ControlModifier | Qt::ShiftModifier);
}

void markAsTypical(TestWindow& desk)
{
    const DialogTurns answers({[](QDialog& dialog) {
        auto& also = childOf<QListWidget>(dialog, "typicalAlso");
        also.setFocus();
        for (int row = 0; row < also.count(); ++row) {
            also.setCurrentRow(row);
            if (also.item(row)->checkState() == Qt::Unchecked)
                QTest::keyClick(&also, Qt::Key_Space);
        }
        auto& name = childOf<QLineEdit>(dialog, "typicalName");
        name.setFocus();
        name.selectAll();
        QTest::keyClicks(&name, "restroom");
        QTest::keyClick(&name, Qt::Key_Return);
    }});
    press(desk, Qt::Key_T);
}

void stampThree(TestWindow& desk, QStringList& shownDoors)
{
    const DialogTurns answers({[&shownDoors](QDialog& dialog) {
        auto& count = childOf<QSpinBox>(dialog, "stampCount");
        count.setFocus();
        count.selectAll();
        QTest::keyClicks(&count, "3");
        auto& first = childOf<QLineEdit>(dialog, "stampFirst");
        first.setFocus();
        QTest::keyClicks(&first, "114");
        EXPECT_FALSE(okOf(dialog).isEnabled()) << "that door is there already";
        first.selectAll();
        QTest::keyClicks(&first, "201");
        auto& tags = childOf<QComboBox>(dialog, "stampTags");
        tags.setCurrentText("{door}");
        EXPECT_FALSE(okOf(dialog).isEnabled()) << "all of a door's tags would be the same";
        tags.setCurrentIndex(0);
        QTest::keyClick(&tags, Qt::Key_Down);
        const auto& doors = childOf<QTableWidget>(dialog, "stampDoors");
        for (int row = 0; row < doors.rowCount(); ++row)
            shownDoors << doors.item(row, 0)->text() + ": " + doors.item(row, 1)->text().section(',', 0, 0);
        QTest::mouseClick(&okOf(dialog), Qt::LeftButton);
    }});
    press(desk, Qt::Key_D);
}

// The cables of the sheet that have a core landed on it.
std::size_t landedHere(const Job& job, const Drawing& drawing)
{
    return static_cast<std::size_t>(std::ranges::count_if(drawing.cables().all(), [&](const CableDrawn& cable) {
        return std::ranges::any_of(coresOf(job, cable.id), [&](const Conductor* core) {
            const Landing *from = landingOf(core->from), *to = landingOf(core->to);
            return (from && drawing.devices().find(from->device.number)) || (to && drawing.devices().find(to->device.number));
        });
    }));
}

} // namespace

TEST(Typicals, DrawEachDoorsCablesOnItsOwnSheetThoughAllStartInOneCabinet)
{
    Result<Job> read = readJobFile(SOURCE_FOLDER "/samples/restroom-public.doorjob");
    ASSERT_TRUE(read.ok());
    Job job = read.value();
    Numbers numbers(job);
    const auto marked = markTypical(job, numbers, job.openings.begin()->id);
    ASSERT_TRUE(applyChange(job, marked.value().second).ok());
    Numbers more(job);
    ASSERT_TRUE(applyChange(job, stampTypical(job, more, marked.value().first, 3).value().change).ok());
    Drawing drawing(QFont(), Language::English);
    for (const Sheet& sheet : job.sheets) {
        drawing.show(job, sheet.id);
        EXPECT_EQ(drawing.cables().count(), 7u) << sheet.title;
        EXPECT_EQ(landedHere(job, drawing), 7u) << sheet.title;
    }
}

TEST(Typicals, AreMarkedStampedAndChangedOnce)
{
    TestWindow desk;
    desk.window().openSample("restroom-public.doorjob");
    EXPECT_FALSE(desk.action("stampDoors").isEnabled()) << "there is no typical yet";
    markAsTypical(desk);
    ASSERT_EQ(desk.job().typicals.size(), 1u);
    EXPECT_EQ(desk.job().typicals.begin()->name, "restroom");
    EXPECT_EQ(desk.window().open().history().undoText(), "mark 114 as a typical");

    QStringList shownDoors;
    stampThree(desk, shownDoors);
    ASSERT_EQ(shownDoors.size(), 3);
    EXPECT_TRUE(shownDoors[2].startsWith("203: 203-")) << qPrintable(shownDoors[2]);
    ASSERT_EQ(desk.job().openings.size(), 4u);
    EXPECT_TRUE(deviceTagged(desk.job(), "203-PS1")) << "the supply was ticked";
    EXPECT_EQ(desk.window().selection().rows().empty(), false);

    const DeviceId strike = deviceTagged(desk.job(), "ES1")->id;
    desk.window().make({}, setWords(desk.job(), strike, "silent strike"));
    desk.window().make({}, setWords(desk.job(), deviceTagged(desk.job(), "203-ES1")->id, "left hand"));
    QStringList lines;
    const DialogTurns answers({[&lines](QDialog& dialog) {
        auto& doors = childOf<QTreeWidget>(dialog, "doorChanges");
        for (int door = 0; door < doors.topLevelItemCount(); ++door)
            lines << doors.topLevelItem(door)->text(0) + ": " + doors.topLevelItem(door)->text(1);
        QTreeWidgetItem* conflict = doors.topLevelItem(2)->child(0);
        doors.scrollToItem(conflict);
        EXPECT_GT(doors.visualItemRect(conflict).height(), doors.visualItemRect(doors.topLevelItem(2)).height())
            << "nothing of a long line is left out";
        doors.setCurrentItem(doors.topLevelItem(1));
        QTest::keyClick(&doors, Qt::Key_Space); // not the second door
        EXPECT_EQ(doors.topLevelItem(1)->checkState(0), Qt::Unchecked);
        QTest::mouseClick(&okOf(dialog), Qt::LeftButton);
    }});
    press(desk, Qt::Key_E);
    EXPECT_EQ(lines, (QStringList{"201: changes: 1", "202: changes: 1", "203: conflicts: 1"}));
    EXPECT_EQ(deviceTagged(desk.job(), "201-ES1")->words, "silent strike");
    EXPECT_EQ(deviceTagged(desk.job(), "202-ES1")->words, "locked only while powered");
    EXPECT_EQ(deviceTagged(desk.job(), "203-ES1")->words, "left hand");
    EXPECT_EQ(desk.window().open().history().undoText(), "change 2 doors as their typical");
    desk.action("undo").trigger();
    EXPECT_EQ(deviceTagged(desk.job(), "201-ES1")->words, "locked only while powered") << "one step";
}

TEST(Typicals, AreLetGoAndTheirDoorsStay)
{
    TestWindow desk;
    desk.window().openSample("boarding-house-forty.doorjob");
    const DialogTurns answers({[](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Return); }});
    desk.action("unmarkTypical").trigger();
    EXPECT_TRUE(desk.job().typicals.empty());
    EXPECT_TRUE(desk.job().stamps.empty());
    EXPECT_EQ(desk.job().openings.size(), 40u);
    EXPECT_FALSE(desk.action("changeDoors").isEnabled());
}

TEST(Typicals, AreLeftAloneByEscape)
{
    TestWindow desk;
    desk.window().openSample("boarding-house-forty.doorjob");
    const Job before = desk.job();
    for (const Qt::Key key : {Qt::Key_T, Qt::Key_D, Qt::Key_E}) {
        bool wasThere = false;
        const DialogTurns answers({[&wasThere](QDialog& dialog) {
            wasThere = true;
            for (QWidget* each : dialog.findChildren<QWidget*>())
                if (each->focusPolicy() != Qt::NoFocus && !each->objectName().startsWith("qt_") &&
                    (qobject_cast<QTreeWidget*>(each) || qobject_cast<QTableWidget*>(each) ||
                     qobject_cast<QListWidget*>(each))) {
                    EXPECT_FALSE(each->accessibleName().isEmpty()) << each->metaObject()->className();
                }
            QTest::keyClick(&dialog, Qt::Key_Escape);
        }});
        press(desk, key);
        EXPECT_TRUE(wasThere);
    }
    EXPECT_EQ(desk.job(), before);
}

} // namespace doorloom
