#include "core/jobs.h"
#include "file/jobfile.h"
#include "ui/openjobs.h"

#include <QCoreApplication>
#include <QSignalSpy>

#include <sys/stat.h>

namespace doorloom {
namespace {

namespace fs = std::filesystem;
using Names = std::vector<std::string>;

class OpenJobFile : public OwnFolders {
protected:
    OpenJobFile() { EXPECT_TRUE(saveJobFile(oneDoor().job(), path).ok()); }

    const std::string path = file("door.doorjob");
};

std::string outcomeOf(const std::optional<Problem>& problem)
{
    return problem ? inWords(*problem) : "done";
}

bool isHeard(QSignalSpy& spy)
{
    return QTest::qWaitFor([&] { return spy.count() > 0; }, 10'000);
}

} // namespace

TEST_F(OpenJobFile, IsOpenedAlteredAndSaved)
{
    OpenJob open;
    QSignalSpy changed(&open, &OpenJob::fileChanged);
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    EXPECT_EQ(open.path(), path);
    EXPECT_EQ(open.job(), oneDoor().job());
    EXPECT_FALSE(open.unsaved());
    EXPECT_FALSE(open.readOnly());

    add(open, "ONE");
    EXPECT_TRUE(open.unsaved());
    changed.clear();
    EXPECT_EQ(outcomeOf(open.save()), "done");
    EXPECT_FALSE(open.unsaved());
    EXPECT_GT(changed.count(), 0);
    EXPECT_EQ(textOf(path), jobText(open.job()));

    open.history().undo(); // saved is not the end of undoing
    EXPECT_TRUE(open.unsaved());
    EXPECT_EQ(open.job(), oneDoor().job());
}

TEST_F(OpenJobFile, EndsARunOfEditsWhenItIsSaved)
{
    OpenJob open;
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    add(open, "ONE", "typing");
    EXPECT_EQ(outcomeOf(open.save()), "done");
    add(open, "TWO", "typing");
    EXPECT_EQ(open.history().count(), 2);
    open.history().undo();
    EXPECT_FALSE(open.unsaved());
}

TEST_F(OpenJobFile, LeavesNothingBesideTheFileAfterANormalClose)
{
    {
        OpenJob open;
        EXPECT_EQ(outcomeOf(open.open(path)), "done");
        add(open, "ONE");
        EXPECT_EQ(outcomeOf(open.save()), "done");
        add(open, "TWO"); // not wanted
    }
    EXPECT_EQ(files(), Names{"door.doorjob"});
    {
        OpenJob open;
        open.begin({});
        add(open, "ONE");
    }
    EXPECT_EQ(unsavedJobs(), Names{});
}

TEST_F(OpenJobFile, ThatIsRefusedLeavesTheJobThatIsOpen)
{
    OpenJob open;
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    add(open, "ONE");
    writeText(file("bad.doorjob"), "{\"doorloom\":99}");
    EXPECT_NE(outcomeOf(open.open(file("bad.doorjob"))), "done");
    EXPECT_NE(outcomeOf(open.open(file("none.doorjob"))), "done");
    EXPECT_EQ(open.path(), path);
    EXPECT_TRUE(open.unsaved());
    EXPECT_EQ(open.history().count(), 1);
}

TEST_F(OpenJobFile, GetsItsFirstNameFromSaveAs)
{
    OpenJob open;
    open.begin({});
    EXPECT_EQ(outcomeOf(open.save()), "The job has no file yet. Save it under a name.");
    add(open, "ONE");
    EXPECT_EQ(outcomeOf(open.saveAs(file("new.doorjob"))), "done");
    EXPECT_EQ(open.path(), file("new.doorjob"));
    EXPECT_FALSE(open.unsaved());
    EXPECT_EQ(unsavedJobs(), Names{});
    add(open, "TWO");
    EXPECT_EQ(outcomeOf(open.save()), "done");
    EXPECT_EQ(placesOf(readJobFile(file("new.doorjob")).value()), (Names{"ONE", "TWO"}));

    EXPECT_NE(outcomeOf(open.saveAs(file("none/other.doorjob"))), "done");
    EXPECT_EQ(open.path(), file("new.doorjob"));
}

TEST_F(OpenJobFile, IsReadOnlyInASecondWindow)
{
    auto first = std::make_unique<OpenJob>();
    EXPECT_EQ(outcomeOf(first->open(path)), "done");
    fs::create_symlink(path, file("link.doorjob"));

    OpenJob second;
    QSignalSpy elsewhere(&second, &OpenJob::openElsewhere);
    EXPECT_EQ(outcomeOf(second.open(file("link.doorjob"))), "done");
    EXPECT_EQ(elsewhere.count(), 1);
    EXPECT_TRUE(second.readOnly());
    EXPECT_FALSE(first->readOnly());

    add(*first, "ONE");
    add(second, "TWO"); // kept too, but not beside the file
    EXPECT_EQ(outcomeOf(second.save()), file("link.doorjob") +
                                            ": Another window has this file open. Save under "
                                            "another name, or close it there first.");
    OpenJob third;
    EXPECT_NE(outcomeOf(third.saveAs(path)), "done");

    EXPECT_EQ(outcomeOf(first->save()), "done");
    EXPECT_EQ(outcomeOf(second.saveAs(file("other.doorjob"))), "done");
    EXPECT_FALSE(second.readOnly());
    first.reset();
    EXPECT_EQ(outcomeOf(third.open(path)), "done");
    EXPECT_FALSE(third.readOnly());
    EXPECT_EQ(placesOf(third.job()), Names{"ONE"});
}

TEST_F(OpenJobFile, MayBeOpenedAgainInItsOwnWindow)
{
    OpenJob open;
    QSignalSpy elsewhere(&open, &OpenJob::openElsewhere);
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    add(open, "ONE");
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    EXPECT_EQ(elsewhere.count(), 0);
    EXPECT_FALSE(open.readOnly());
    EXPECT_FALSE(open.recoverable()); // the edit was given up
    EXPECT_EQ(open.job(), oneDoor().job());
}

TEST_F(OpenJobFile, IsReportedWhenSomebodyElseWritesIt)
{
    OpenJob open;
    QSignalSpy changed(&open, &OpenJob::changedOnDisk);
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    const std::string before = textOf(path);
    Job other = open.job();
    ASSERT_TRUE(applyChange(other, placeNamed(other.nextNumber, "THEIRS")).ok());

    ASSERT_TRUE(saveJobFile(other, path).ok()); // in the old one's place
    ASSERT_TRUE(isHeard(changed));
    writeText(path, before); // as this window knows it
    QCoreApplication::processEvents();
    writeText(path, before + "\n"); // in the same file
    EXPECT_TRUE(QTest::qWaitFor([&] { return changed.count() == 2; }, 10'000));
    EXPECT_EQ(open.job(), oneDoor().job());
}

TEST_F(OpenJobFile, IsNotReportedWhenTheWindowItselfSaves)
{
    OpenJob open;
    QSignalSpy changed(&open, &OpenJob::changedOnDisk);
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    for (const char* tag : {"ONE", "TWO", "THREE"}) {
        add(open, tag);
        EXPECT_EQ(outcomeOf(open.save()), "done");
        QTest::qWait(20); // for the watcher to speak, were it to
    }
    EXPECT_EQ(changed.count(), 0);
}

TEST_F(OpenJobFile, IsNotOverwrittenUnawares)
{
    OpenJob open;
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    add(open, "MINE");
    Job other = oneDoor().job();
    ASSERT_TRUE(applyChange(other, placeNamed(other.nextNumber, "THEIRS")).ok());
    ASSERT_TRUE(saveJobFile(other, path).ok()); // and no event has been heard

    QSignalSpy changed(&open, &OpenJob::changedOnDisk);
    EXPECT_EQ(outcomeOf(open.save()),
              path + ": Somebody else has changed this file since it was opened here. Save "
                     "under another name, or save again to replace what is there now.");
    EXPECT_EQ(changed.count(), 0); // not before save has ended: a window may open another file then
    EXPECT_TRUE(isHeard(changed));
    EXPECT_EQ(placesOf(readJobFile(path).value()), Names{"THEIRS"});
    EXPECT_TRUE(open.unsaved());
    EXPECT_EQ(outcomeOf(open.save()), "done");
    EXPECT_EQ(placesOf(readJobFile(path).value()), Names{"MINE"});
}

TEST_F(OpenJobFile, IsWholeAndTheJobUnsavedWhenTheDiskIsFull)
{
    OpenJob open;
    QSignalSpy failed(&open, &OpenJob::journalFailed);
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    const std::string before = textOf(path);
    std::optional<FullDisk> full(std::in_place);
    add(open, "ONE");
    add(open, "TWO");
    const std::string outcome = outcomeOf(open.save());
    EXPECT_TRUE(isHeard(failed));
    full.reset();
    EXPECT_EQ(outcome,
              path + ": The file cannot be saved: File too large. Make room or save elsewhere; what was "
                     "there before is unchanged.");
    EXPECT_TRUE(open.unsaved());
    EXPECT_EQ(textOf(path), before);
    QCoreApplication::processEvents();
    EXPECT_EQ(failed.count(), 1); // not for each edit

    EXPECT_EQ(outcomeOf(open.save()), "done");
    EXPECT_EQ(placesOf(readJobFile(path).value()), (Names{"ONE", "TWO"}));
}

TEST_F(OpenJobFile, ThatIsWriteProtectedIsReadOnly)
{
    ::chmod(path.c_str(), 0444);
    if (!isBoundByProtection(path, "OpenJobFile.ThatIsWriteProtectedIsReadOnly"))
        return;
    OpenJob open;
    EXPECT_EQ(outcomeOf(open.open(path)), "done");
    EXPECT_TRUE(open.readOnly());
    add(open, "ONE");
    EXPECT_EQ(outcomeOf(open.save()),
              path +
                  ": The file cannot be saved: Permission denied. Save where you may write; what was there "
                  "before is unchanged.");
    EXPECT_TRUE(open.unsaved());
    EXPECT_FALSE(fs::exists(path + ".journal"));
    EXPECT_EQ(unsavedJobs(), (Names{"job-1.journal", "job-1.journal.lock"})); // the edit is kept there
}

} // namespace doorloom
