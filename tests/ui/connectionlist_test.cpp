#include "ui/dialogturns.h"
#include "ui/testwindow.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QPushButton>
#include <QTableView>

namespace doorloom {
namespace {

QString written(const TestWindow& desk, const QByteArray& content)
{
    QFile file(desk.folder() + "/list.csv");
    EXPECT_TRUE(file.open(QFile::WriteOnly));
    file.write(content);
    return file.fileName();
}

std::string cell(const QTableView& rows, int row, int column)
{
    return rows.model()->index(row, column).data().toString().toStdString();
}

TEST(ConnectionListDialog, ShowsWhatBecomesOfEachRowAndTakesThemAsOneStep)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    const Job before = desk.job();
    const QString path = written(desk, "From;To\nPS1:+;PS1:−\nXX9:1;PS1:+\n"); // a short, on paper
    DialogTurns turns(
        {DialogTurns::nameFile(path), [](QDialog& dialog) {
             const auto& rows = childOf<QTableView>(dialog, "listRows");
             ASSERT_EQ(rows.model()->rowCount(), 2);
             EXPECT_TRUE(cell(rows, 0, 8).starts_with("taken: ")) << cell(rows, 0, 8);
             EXPECT_EQ(cell(rows, 1, 0), "3");
             EXPECT_EQ(cell(rows, 1, 8),
                       "left: The job has no device 'XX9'. Place it first, or write its tag as in the job.");
             QTest::mouseClick(&childOf<QCheckBox>(dialog, "listOnlyLeft"), Qt::LeftButton, {}, QPoint(6, 6));
             EXPECT_EQ(rows.model()->rowCount(), 1);
             auto& take = childOf<QPushButton>(dialog, "listTake");
             EXPECT_EQ(take.text(), "&Take 1 row(s)");
             QTest::mouseClick(&take, Qt::LeftButton);
         }});
    desk.action("importList").trigger();
    EXPECT_TRUE(turns.allTaken());
    EXPECT_EQ(desk.job().conductors.size(), before.conductors.size() + 1);
    desk.action("undo").trigger();
    EXPECT_EQ(desk.job(), before);
}

TEST(ConnectionListDialog, ReadsTheListAnewWhenAColumnIsChosen)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    const Job before = desk.job();
    const QString path = written(desk, "note,PS1:+,PS1:−\n");
    DialogTurns turns({DialogTurns::nameFile(path), [](QDialog& dialog) {
                           const auto& rows = childOf<QTableView>(dialog, "listRows");
                           const auto& take = childOf<QPushButton>(dialog, "listTake");
                           EXPECT_FALSE(take.isEnabled()) << "'note' is no device";
                           auto& from = childOf<QComboBox>(dialog, "listColumn0");
                           from.setFocus();
                           QTest::keyClick(&from, Qt::Key_Down); // from the first column to the second
                           EXPECT_TRUE(cell(rows, 0, 8).starts_with("left: ")) << cell(rows, 0, 8);
                           QTest::keyClick(&childOf<QComboBox>(dialog, "listColumn1"),
                                           Qt::Key_Home); // no terminals of their own
                           EXPECT_TRUE(cell(rows, 0, 8).starts_with("taken: ")) << cell(rows, 0, 8);
                           EXPECT_TRUE(take.isEnabled());
                           QTest::keyClick(&dialog, Qt::Key_Escape);
                       }});
    desk.action("importList").trigger();
    EXPECT_TRUE(turns.allTaken());
    EXPECT_EQ(desk.job(), before) << "given up";
}

TEST(ConnectionListDialog, NamesEveryControlForScreenReaders)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    DialogTurns turns({DialogTurns::nameFile(written(desk, "a,b\n")), [](QDialog& dialog) {
                           for (const QComboBox* each : dialog.findChildren<QComboBox*>())
                               EXPECT_FALSE(each->accessibleName().isEmpty());
                           QTest::keyClick(&dialog, Qt::Key_Escape);
                       }});
    desk.action("importList").trigger();
    EXPECT_TRUE(turns.allTaken());
}

TEST(ConnectionListDialog, TellsWhyAFileCanNotBeRead)
{
    TestWindow desk;
    const QString path = written(desk, "a,\"b\n");
    DialogTurns turns({DialogTurns::nameFile(path)});
    desk.action("importList").trigger();
    EXPECT_TRUE(turns.allTaken());
    EXPECT_NE(desk.notice().find("line 1: A quote that begins here has no end."), std::string::npos)
        << desk.notice();
}

} // namespace
} // namespace doorloom
