#include "ui/testwindow.h"

#include "edit/openings.h"
#include "openjob/shown.h"
#include "window/actions.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QListView>
#include <QTableView>
#include <QTimer>

#include <map>
#include <set>

namespace doorloom {
namespace {

TEST(Actions, HaveWordsAKeyOfTheirOwnAndAPlaceInAMenu)
{
    TestWindow desk;
    std::set<std::string> keys;
    std::map<QString, std::string> shortcuts;
    for (const Action& action : allActions()) {
        EXPECT_TRUE(keys.insert(action.key).second) << action.key;
        EXPECT_GT(std::string(action.words).size(), 1u) << action.key;
        EXPECT_TRUE(std::string(action.tip).ends_with(".")) << action.key << ": " << action.tip;
        auto& made = desk.the<QAction>(action.key);
        EXPECT_FALSE(made.associatedObjects().isEmpty()) << action.key << " is in no menu";
        for (const QKeySequence& sequence : made.shortcuts()) {
            EXPECT_FALSE(sequence.isEmpty()) << action.key;
            const auto [at, isNew] = shortcuts.emplace(sequence.toString(), action.key);
            EXPECT_TRUE(isNew) << action.key << " and " << at->second << " share "
                               << qPrintable(sequence.toString());
        }
    }
    EXPECT_GT(keys.size(), 25u);
}

// Who works without seeing the screen hears names.
TEST(Window, NamesEveryControlForScreenReaders)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    for (const Device& device : desk.job().devices) {
        desk.window().selection().choose({device.id.number});
        QCoreApplication::processEvents();
        for (QWidget* widget : desk.window().findChildren<QWidget*>()) {
            const bool isControl = qobject_cast<QLineEdit*>(widget) || qobject_cast<QComboBox*>(widget) ||
                                   qobject_cast<QAbstractItemView*>(widget);
            const bool isInside = qobject_cast<QComboBox*>(widget->parentWidget()) ||
                                  qobject_cast<QHeaderView*>(widget) || !widget->isVisible() ||
                                  widget->objectName().startsWith("qt_");
            if (isControl && !isInside) {
                EXPECT_FALSE(widget->accessibleName().isEmpty())
                    << widget->metaObject()->className() << " " << qPrintable(widget->objectName());
            }
        }
    }
}

QString wordsAt(const QListView& list, int row)
{
    return list.model()->index(row, 0).data().toString();
}

TEST(Window, ShowsWhatTheChecksSayAndLightsTheWay)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff-broken.doorjob");
    ASSERT_TRUE(desk.isJudged());
    auto& list = desk.the<QListView>("findingsList");
    ASSERT_EQ(list.model()->rowCount(), 3);
    EXPECT_TRUE(wordsAt(list, 0).startsWith("DANGER")) << qPrintable(wordsAt(list, 0));
    EXPECT_TRUE(desk.window().selection().lit().empty());
    QTest::keyClick(&desk.window(), Qt::Key_F8);
    EXPECT_EQ(list.currentIndex().row(), 0);
    EXPECT_FALSE(desk.window().selection().lit().empty());
    EXPECT_FALSE(desk.window().selection().rows().empty());
    desk.action("previousFinding").trigger();
    EXPECT_EQ(list.currentIndex().row(), 2);
}

TEST(Window, SaysWhatAMeterReadsAtTheTerminalUnderThePointer)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    const auto saidAt = [&](const char* tag, const char* key) {
        const Device* device = deviceTagged(desk.job(), tag);
        const QPoint at = desk.window().sheet().rectOf(device->id.number, key).center();
        const auto said = [&] { return desk.the<QLabel>("hovered").text(); };
        QTest::mouseMove(&desk.window().sheet(), at);
        static_cast<void>(QTest::qWaitFor([&] { return said().startsWith(QString("%1:%2").arg(tag, key)); }));
        return said().toStdString();
    };
    ASSERT_TRUE(desk.isJudged());
    EXPECT_NE(saidAt("PS1", "+").find(" · 24.00 V against PS1:− at rest"), std::string::npos) << saidAt("PS1", "+");
    EXPECT_NE(saidAt("PS1", "B+").find(" · floating at rest"), std::string::npos) << saidAt("PS1", "B+");
    // The strike hangs behind K1, open at rest: its fed side floats with the other, at minus.
    EXPECT_NE(saidAt("ES1", "1").find("0.00 V against PS1:− at rest; 0.00 to 27."), std::string::npos) << saidAt("ES1", "1");
}

TEST(Window, MendsAFindingByItsButtonAndUndoesThat)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff-broken.doorjob");
    ASSERT_TRUE(desk.isJudged());
    auto& list = desk.the<QListView>("findingsList");
    const Job before = desk.job();
    const QString wrong = wordsAt(list, 1);
    list.setCurrentIndex(list.model()->index(1, 0));
    QCoreApplication::processEvents();
    auto* mend = desk.window().findChild<QAbstractButton*>("doIt");
    ASSERT_NE(mend, nullptr);
    QTest::mouseClick(mend, Qt::LeftButton);
    ASSERT_TRUE(desk.isJudged());
    ASSERT_EQ(list.model()->rowCount(), 2);
    EXPECT_NE(wordsAt(list, 0), wrong);
    EXPECT_NE(wordsAt(list, 1), wrong);
    while (desk.window().open().history().canUndo())
        desk.action("undo").trigger();
    EXPECT_EQ(desk.job(), before);
}

TEST(Window, TypesALandingAndSaysWhatItDidNotUnderstand)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    const std::size_t before = desk.job().conductors.size();
    desk.type("ps1 + tsp 7 wire");
    EXPECT_EQ(desk.job().conductors.size(), before + 1);
    EXPECT_TRUE(desk.the<QLineEdit>("typedLine").text().isEmpty());
    EXPECT_TRUE(desk.window().open().history().undoText().contains("PS1"))
        << qPrintable(desk.window().open().history().undoText());
    desk.type("ps1 + nobody 7");
    EXPECT_EQ(desk.the<QLineEdit>("typedLine").text(), "ps1 + nobody 7");
    EXPECT_TRUE(desk.the<QLabel>("typedAnswer").text().contains("nobody"));
    desk.action("undo").trigger();
    EXPECT_EQ(desk.job().conductors.size(), before);
}

TEST(Window, ScheduleAndSheetShowTheSameConductor)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    ASSERT_TRUE(desk.isJudged());
    auto& table = desk.the<QTableView>("scheduleTable");
    ConductorId last;
    for (const Conductor& each : desk.job().conductors)
        last = each.id;
    desk.window().selection().choose({last.number});
    ASSERT_TRUE(table.currentIndex().isValid());
    const int row = table.currentIndex().row();
    QTest::keyClick(&table, Qt::Key_Up);
    EXPECT_EQ(table.currentIndex().row(), row - 1);
}

TEST(Window, MakesAnOpeningWithWhatItPromises)
{
    TestWindow desk;
    desk.type("place strike-fail-secure frame \"strike side\"");
    desk.type("place push-plate ins \"inside wall\"");
    ASSERT_EQ(desk.job().devices.size(), 2u) << qPrintable(desk.the<QLabel>("typedAnswer").text());
    desk.action("addOpening").trigger();
    ASSERT_EQ(desk.job().openings.size(), 1u);
    const auto choose = [&](const char* field, const QString& words) {
        QCoreApplication::processEvents(); // the form is made anew after each change
        auto& box = desk.the<QComboBox>(field);
        QApplication::setActiveWindow(&desk.window()); // not the list of completions
        box.setFocus();                                // it is then that it makes its list
        const int place = box.findText(words, Qt::MatchStartsWith);
        ASSERT_GE(place, 0) << field << ": " << qPrintable(words);
        box.setCurrentIndex(place);
        emit box.activated(place);
    };
    choose("audience", "staff");
    choose("add Locks", "ES1");
    choose("add Requests", "PB1");
    const Opening& opening = *desk.job().openings.begin();
    EXPECT_EQ(opening.audience, Audience::Staff);
    ASSERT_EQ(opening.locks.size(), 1u);
    ASSERT_EQ(opening.requests.size(), 1u);
    EXPECT_EQ(promisedIn(opening, {SituationKind::Rest, {}, {}}, opening.locks.front()), Promised::Locked);
    choose("ES1 rest", "free");
    EXPECT_EQ(promisedIn(*desk.job().openings.begin(), {SituationKind::Rest, {}, {}}, opening.locks.front()),
              Promised::Free);
    EXPECT_TRUE(verifyJob(desk.job()).empty());
}

TEST(Window, RefusesAWrongValueUnderItsFieldAndShowsTheOldOneAgain)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    const Device& module = *deviceTagged(desk.job(), "LM1");
    desk.window().selection().choose({module.id.number});
    QCoreApplication::processEvents();
    auto& hold = desk.the<QLineEdit>("setting hold");
    const QString before = hold.text();
    hold.setFocus();
    hold.selectAll();
    QTest::keyClicks(&hold, "9999");
    QTest::keyClick(&hold, Qt::Key_Return);
    EXPECT_EQ(hold.text(), before);
    EXPECT_TRUE(desk.the<QLabel>("refusal").text().contains("9999"))
        << qPrintable(desk.the<QLabel>("refusal").text());
}

TEST(Window, AddsASheetUnderATitleThatIsFree)
{
    TestWindow desk;
    desk.action("addSheet").trigger();
    EXPECT_EQ(desk.window().open().history().undoText(), "add the sheet 2");
    desk.action("undo").trigger();
    desk.action("addSheet").trigger();
    desk.action("addSheet").trigger();
    EXPECT_EQ(desk.job().sheets.size(), 3u);
    EXPECT_TRUE(desk.the<QLabel>("noticeWords").text().isEmpty());
}

TEST(Window, RefusesAPlaceWhoseTagIsTaken)
{
    TestWindow desk;
    auto& place = desk.the<QComboBox>("shelfPlace");
    for (const char* words : {"cab1 above the ceiling", "CAB1 somewhere else"}) {
        place.setFocus();
        place.lineEdit()->selectAll();
        QTest::keyClicks(place.lineEdit(), words);
        QTest::keyClick(place.lineEdit(), Qt::Key_Return);
    }
    EXPECT_EQ(desk.job().places.size(), 1u);
    EXPECT_TRUE(desk.the<QLabel>("noticeWords").text().contains("CAB1"));
}

TEST(Window, FindsByTagAndShowsIt)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    QTimer::singleShot(0, [] {
        QWidget* dialog = QApplication::activeModalWidget();
        ASSERT_NE(dialog, nullptr);
        auto* letters = dialog->findChild<QLineEdit*>("findLetters");
        QTest::keyClicks(letters, "es1");
        QTest::keyClick(letters, Qt::Key_Return);
    });
    desk.action("find").trigger();
    EXPECT_EQ(desk.window().selection().rows(), std::vector{deviceTagged(desk.job(), "ES1")->id.number});
}

TEST(Window, KeepsTheJobWhenAFileIsRefused)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    const Job before = desk.job();
    EXPECT_FALSE(desk.window().openFile(desk.folder() + "/nowhere.doorjob"));
    EXPECT_EQ(desk.job(), before);
    EXPECT_TRUE(desk.the<QLabel>("noticeWords").text().contains("nowhere.doorjob"));
}

} // namespace
} // namespace doorloom
