#include "ui/openjobs.h"
#include "ui/sheetjobs.h"
#include "ui/testwindow.h"

#include "file/jobfile.h"
#include "file/journal.h"

#include <QClipboard>
#include <QListView>
#include <QPushButton>
#include <QTableView>

#include <sys/stat.h>

// What the user reads when the world is not as it should be. Nothing is lost meanwhile.
namespace doorloom {
namespace {

class BadInput : public OwnFolders {
protected:
    BadInput() { EXPECT_TRUE(saveJobFile(oneDoor().job(), path).ok()); }

    const std::string path = file("door.doorjob");
    const QString name = QString::fromStdString(path);
};

void alter(TestWindow& desk)
{
    add(desk.window().open(), "MINE");
}

// As another program does: a new file in the old one's place.
void writeAnother(const std::string& path)
{
    Job other = oneDoor().job();
    ASSERT_TRUE(applyChange(other, placeNamed(other.nextNumber, "THEIRS")).ok());
    ASSERT_TRUE(saveJobFile(other, path).ok());
}

TEST_F(BadInput, ASecondWindowSaysThatTheFileIsOpenInAnother)
{
    TestWindow first, second;
    ASSERT_TRUE(first.window().openFile(name));
    EXPECT_EQ(first.notice(), "");
    ASSERT_TRUE(second.window().openFile(name));
    EXPECT_EQ(second.notice(), path + ": Another window has this job open. Save under another name, or "
                                      "close the other window first.");
    EXPECT_EQ(second.window().windowTitle().toStdString(), "door.doorjob[*] (read only) – Doorloom");
    alter(second);
    EXPECT_FALSE(second.window().save());
    EXPECT_EQ(second.notice(), path + ": Another window has this file open. Save under another name, or "
                                      "close it there first.");
    EXPECT_TRUE(second.window().isWindowModified());
    EXPECT_EQ(readJobFile(path).value(), oneDoor().job());
}

TEST_F(BadInput, AFileChangedOnTheDiskIsAskedAboutAndKeptOrRead)
{
    TestWindow desk;
    ASSERT_TRUE(desk.window().openFile(name));
    alter(desk);
    const Job mine = desk.job();
    Reply keep("Keep what is here");
    writeAnother(path);
    ASSERT_TRUE(keep.isGiven());
    EXPECT_EQ(keep.asked(), "'" + path +
                                "' was written by another program after it was opened here. "
                                "Saving here would replace what the other wrote. Save under another name to "
                                "keep both.");
    EXPECT_EQ(desk.job(), mine);
    EXPECT_EQ(placesOf(readJobFile(path).value()), std::vector<std::string>{"THEIRS"});

    desk.window().open().history().undo();
    Reply read("Open what is on the disk");
    writeText(path, textOf(path) + "\n");
    ASSERT_TRUE(read.isGiven());
    EXPECT_EQ(placesOf(desk.job()), std::vector<std::string>{"THEIRS"});
}

TEST_F(BadInput, AWriteProtectedFileIsReadOnlyInItsTitleAndWhenSaved)
{
    ::chmod(path.c_str(), 0444);
    if (!isBoundByProtection(path, "BadInput.AWriteProtectedFileIsReadOnlyInItsTitleAndWhenSaved"))
        return;
    TestWindow desk;
    ASSERT_TRUE(desk.window().openFile(name));
    EXPECT_EQ(desk.window().windowTitle().toStdString(), "door.doorjob[*] (read only) – Doorloom");
    alter(desk);
    EXPECT_FALSE(desk.window().save());
    EXPECT_EQ(desk.notice(), path + ": The file cannot be saved: Permission denied. Save where you may "
                                    "write; what was there before is unchanged.");
    EXPECT_TRUE(desk.window().isWindowModified());
}

TEST_F(BadInput, AFullDiskIsNamedAndTheFileStaysWhole)
{
    TestWindow desk;
    ASSERT_TRUE(desk.window().openFile(name));
    const std::string before = textOf(path);
    std::optional<FullDisk> full(std::in_place);
    alter(desk);
    EXPECT_FALSE(desk.window().save());
    full.reset();
    EXPECT_EQ(desk.notice(), path + ": The file cannot be saved: File too large. Make room or save "
                                    "elsewhere; what was there before is unchanged.");
    EXPECT_EQ(textOf(path), before);
    EXPECT_TRUE(desk.window().isWindowModified());
    EXPECT_TRUE(desk.window().save());
    EXPECT_EQ(placesOf(readJobFile(path).value()), std::vector<std::string>{"MINE"});
}

// Only pages need it; the window speaks in the desktop's font.
TEST_F(BadInput, AMissingFontIsNamedWhenAPaperNeedsIt)
{
    const std::string resources = fileFolder() + "/resources";
    TestWindow desk(resources);
    ASSERT_TRUE(desk.window().openFile(name));
    QTimer answer;
    answer.callOnTimeout([&] {
        QWidget* dialog = QApplication::activeModalWidget();
        if (auto* line = dialog ? dialog->findChild<QLineEdit*>("fileNameEdit") : nullptr) {
            line->setText(name + ".pdf");
            QTest::keyClick(line, Qt::Key_Return);
        } else if (dialog) {
            for (QPushButton* button : dialog->findChildren<QPushButton*>())
                if (button->text().startsWith("&Write"))
                    return button->click();
        }
    });
    answer.start(0);
    desk.action("printPaper").trigger();
    const std::string font = resources + "/font/DejaVuSans.ttf";
    EXPECT_EQ(desk.notice(), font + ": The font '" + font +
                                 "' can't be read. Put the program's folder "
                                 "resources/font back as it came.");
    EXPECT_FALSE(QFile::exists(name + ".pdf"));
}

TEST_F(BadInput, EditsOfAJobWithoutAFileAreOfferedAtTheNextStart)
{
    const std::string left = unsavedJob("job-1.journal");
    std::filesystem::create_directories(std::filesystem::path(left).parent_path());
    writeText(left, journalRecord(1, JournalStart(oneDoor().job())) +
                        journalRecord(2, JournalEdit{{"one", "uno"}, "", placeNamed(900, "ONE")}));
    TestWindow desk;
    Reply answer("Make them again");
    EXPECT_TRUE(desk.window().recoverUnnamed());
    ASSERT_TRUE(answer.isGiven());
    EXPECT_TRUE(answer.asked().starts_with("The program ended before 1 edit(s) of this job were saved."))
        << answer.asked();
    EXPECT_EQ(placesOf(desk.job()), std::vector<std::string>{"ONE"});
    EXPECT_TRUE(desk.window().isWindowModified());
    desk.action("undo").trigger();
    EXPECT_EQ(desk.job(), oneDoor().job());
}

TEST_F(BadInput, CopyingFromAScheduleInWhichNoLineIsChosenCopiesNothing)
{
    TestWindow desk;
    ASSERT_TRUE(desk.window().openFile(name));
    auto& table = desk.the<QTableView>("scheduleTable");
    table.setFocus();
    alter(desk);
    ASSERT_TRUE(desk.isJudged());
    ASSERT_TRUE(table.hasFocus());
    ASSERT_FALSE(table.currentIndex().isValid());
    QApplication::clipboard()->clear();
    QTest::keyClick(&table, Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(QApplication::clipboard()->text().toStdString(), "");
}

// Strikes that nobody has wired: each is never fed.
Job strikes(int howMany)
{
    Job job;
    for (int count = 1; count <= howMany; ++count)
        addDevice(job, "ES" + std::to_string(count), "strike-fail-secure", {});
    return job;
}

TEST_F(BadInput, TenThousandFindingsAreListedCountedAndGoneThrough)
{
    constexpr int howMany = 10'000;
    ASSERT_TRUE(saveJobFile(strikes(howMany), path).ok());
    TestWindow desk;
    ASSERT_TRUE(desk.window().openFile(name));
    ASSERT_TRUE(QTest::qWaitFor([&] { return desk.window().open().judged() != nullptr; }, 120'000));
    auto& list = desk.the<QListView>("findingsList");
    EXPECT_EQ(list.model()->rowCount(), howMany);
    EXPECT_EQ(desk.the<QLabel>("findingsSummary").text().toStdString(),
              "Dangers 0 · faults 10000 · doubts 0 · hints 0");
    for (const auto& [action, row] :
         {std::pair("nextFinding", 0), std::pair("previousFinding", howMany - 1)}) {
        desk.action(action).trigger();
        EXPECT_EQ(list.currentIndex().row(), row);
        EXPECT_TRUE(list.viewport()->rect().intersects(list.visualRect(list.currentIndex())));
        EXPECT_EQ(desk.window().selection().rows().size(), 1u);
    }
}

} // namespace
} // namespace doorloom
