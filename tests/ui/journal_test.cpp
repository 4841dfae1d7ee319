#include "base/sha256.h"
#include "core/jobs.h"
#include "file/jobfile.h"
#include "file/journal.h"
#include "ui/openjobs.h"

#include <csignal>

#include <sys/resource.h>

namespace doorloom {
namespace {

namespace fs = std::filesystem;
using Names = std::vector<std::string>;

// What a window that died has left: its files are copied while it lives.
class LeftJournal : public OwnFolders {
protected:
    LeftJournal() { EXPECT_TRUE(saveJobFile(oneDoor().job(), path).ok()); }

    // Opens the file, makes the edits, dies.
    void dieAfter(const std::function<void(OpenJob&)>& edits)
    {
        {
            OpenJob open;
            EXPECT_FALSE(open.open(path));
            edits(open);
            ASSERT_TRUE(isWritten(path + ".journal", open));
            fs::copy_file(path + ".journal", file("copy"));
        }
        fs::rename(file("copy"), path + ".journal");
    }

    static bool isWritten(const std::string& journal, OpenJob& open)
    {
        return QTest::qWaitFor(
            [&] {
                return textOf(journal).find(open.history().undoText().toStdString()) != std::string::npos;
            },
            10'000);
    }

    const std::string path = file("door.doorjob");
    const std::string journal = path + ".journal";
};

std::size_t editsLeft(const OpenJob& open)
{
    return open.recoverable() ? open.recoverable()->edits : 0;
}

} // namespace

TEST_F(LeftJournal, BringsBackTheEditsUndoableAndUnsaved)
{
    Job before;
    dieAfter([&](OpenJob& open) {
        add(open, "ONE");
        add(open, "TWO");
        before = open.job();
    });
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    ASSERT_TRUE(open.recoverable());
    EXPECT_EQ(open.recoverable()->edits, 2u);
    EXPECT_EQ(open.recoverable()->damage, std::nullopt);
    EXPECT_EQ(open.job(), oneDoor().job()); // until it is asked for

    int signalled = 0;
    QObject::connect(&open, &OpenJob::jobChanged, &open, [&] { ++signalled; });
    EXPECT_FALSE(open.recover());
    EXPECT_EQ(signalled, 1);
    EXPECT_EQ(open.job(), before);
    EXPECT_TRUE(open.unsaved());
    EXPECT_FALSE(open.recoverable());
    EXPECT_EQ(open.history().undoText(), "do TWO");
    open.history().undo();
    open.history().undo();
    EXPECT_EQ(open.job(), oneDoor().job());
    EXPECT_FALSE(open.unsaved());
}

TEST_F(LeftJournal, GoesOnAfterItWasTakenUp)
{
    dieAfter([](OpenJob& open) { add(open, "ONE"); });
    dieAfter([](OpenJob& open) {
        EXPECT_FALSE(open.recover());
        add(open, "TWO");
    });
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    EXPECT_EQ(editsLeft(open), 2u);
    EXPECT_FALSE(open.recover());
    EXPECT_EQ(placesOf(open.job()), (Names{"ONE", "TWO"}));
    EXPECT_FALSE(open.save());
    EXPECT_EQ(files(), (Names{"door.doorjob", "door.doorjob.lock"}));
    EXPECT_EQ(placesOf(readJobFile(path).value()), (Names{"ONE", "TWO"}));
}

TEST_F(LeftJournal, HoldsWhatWasUndoneAndRedoneToo)
{
    dieAfter([](OpenJob& open) {
        for (const char* tag : {"ONE", "TWO", "THREE"})
            add(open, tag);
        open.history().setIndex(0);
        open.history().redo();
        add(open, "FOUR");
    });
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    EXPECT_FALSE(open.recover());
    EXPECT_EQ(placesOf(open.job()), (Names{"ONE", "FOUR"}));
    for (const char* text : {"do FOUR", "do ONE", "undo: do ONE", "undo: do TWO"}) {
        EXPECT_EQ(open.history().undoText(), text);
        open.history().undo();
    }
    EXPECT_EQ(placesOf(open.job()), (Names{"ONE", "TWO"})) << "undone once";
}

TEST_F(LeftJournal, JoinsAgainWhatWasOneStep)
{
    dieAfter([](OpenJob& open) {
        for (const char* tag : {"A", "B", "C"})
            add(open, tag, "typing");
    });
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    EXPECT_FALSE(open.recover());
    EXPECT_EQ(open.history().count(), 1);
}

TEST_F(LeftJournal, IsForgottenWhenItIsNotWanted)
{
    dieAfter([](OpenJob& open) { add(open, "ONE"); });
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    open.forgetRecoverable();
    EXPECT_FALSE(open.recoverable());
    EXPECT_FALSE(fs::exists(journal));
    EXPECT_FALSE(open.recover());
    EXPECT_EQ(open.job(), oneDoor().job());
}

TEST_F(LeftJournal, StaysUntilSomebodyDecides)
{
    dieAfter([](OpenJob& open) { add(open, "ONE"); });
    const std::string text = textOf(journal);
    {
        OpenJob open;
        EXPECT_FALSE(open.open(path));
    }
    EXPECT_EQ(textOf(journal), text);
    {
        OpenJob open;
        EXPECT_FALSE(open.open(path));
        add(open, "TWO"); // before anybody decided
        EXPECT_FALSE(open.recoverable());
        EXPECT_TRUE(isWritten(unsavedJob("job-1.journal"), open));
    }
    EXPECT_EQ(textOf(journal), text);
}

TEST_F(LeftJournal, OfAnotherStateOfTheFileIsKeptAndReported)
{
    dieAfter([](OpenJob& open) { add(open, "ONE"); });
    const std::string text = textOf(journal);
    writeText(path, textOf(path) + "\n");
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    ASSERT_TRUE(open.recoverable());
    EXPECT_EQ(open.recoverable()->edits, 0u);
    ASSERT_TRUE(open.recoverable()->damage);
    EXPECT_EQ(inWords(*open.recoverable()->damage),
              journal +
                  ": These unsaved edits were made to the job as it was before its file was changed. Put the "
                  "file back as it was then and open it again, or make the edits anew. They are kept in " +
                  journal + ".kept.");
    EXPECT_TRUE(open.recover());
    EXPECT_EQ(open.job(), oneDoor().job());
    open.forgetRecoverable();
    EXPECT_EQ(textOf(journal + ".kept"), text);

    add(open, "TWO");
    EXPECT_TRUE(isWritten(journal, open));
    EXPECT_EQ(textOf(journal + ".kept"), text);
}

TEST_F(LeftJournal, ThatIsDamagedBringsBackWhatIsBeforeAndIsKept)
{
    dieAfter([](OpenJob& open) {
        for (const char* tag : {"ONE", "TWO", "THREE", "FOUR"})
            add(open, tag);
    });
    std::string text = textOf(journal);
    text[text.find("THREE")] ^= 1;
    writeText(journal, text);
    {
        OpenJob open;
        EXPECT_FALSE(open.open(path));
        EXPECT_EQ(editsLeft(open), 2u);
        ASSERT_TRUE(open.recoverable()->damage);
        EXPECT_EQ(
            inWords(*open.recoverable()->damage),
            journal +
                ", line 4: The unsaved edits are damaged here: 2 of the last ones are lost. Look over the "
                "job and make the missing edits anew.");
        EXPECT_FALSE(open.recover());
        EXPECT_EQ(placesOf(open.job()), (Names{"ONE", "TWO"}));
        EXPECT_EQ(textOf(journal + ".kept"), text);
        add(open, "FIVE");
        ASSERT_TRUE(isWritten(journal, open));
        fs::copy_file(journal, file("copy"));
    }
    fs::rename(file("copy"), journal);
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    EXPECT_FALSE(open.recoverable()->damage);
    EXPECT_FALSE(open.recover());
    EXPECT_EQ(placesOf(open.job()), (Names{"ONE", "TWO", "FIVE"}));
}

TEST_F(LeftJournal, WithAnEditThatDoesNotFitBringsBackWhatIsBeforeAndIsKept)
{
    const std::uint32_t next = oneDoor().job().nextNumber;
    const JournalEdit fits{{"one", "uno"}, "", placeNamed(next, "ONE")};
    const JournalEdit doesNot{{"note", "nota"}, "", put(Note{{next + 1}, {next + 2}, {}, "on no sheet"})};
    const std::string text = journalRecord(1, JournalStart(FileHash{sha256(textOf(path))})) +
                             journalRecord(2, fits) + journalRecord(3, doesNot) + journalRecord(4, fits);
    writeText(journal, text);
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    EXPECT_EQ(editsLeft(open), 3u);
    const std::optional<Problem> problem = open.recover();
    ASSERT_TRUE(problem);
    EXPECT_NE(inWords(*problem).find("They are kept in " + journal + ".kept."), std::string::npos)
        << inWords(*problem);
    EXPECT_EQ(placesOf(open.job()), Names{"ONE"});
    EXPECT_TRUE(open.unsaved());
    EXPECT_EQ(textOf(journal + ".kept"), text);
}

TEST_F(LeftJournal, MakesNothingTwiceThatWasSavedBeforeTheEnd)
{
    {
        OpenJob open;
        EXPECT_FALSE(open.open(path));
        add(open, "ONE");
        ASSERT_TRUE(isWritten(journal, open));
        fs::copy_file(journal, file("copy"));
        EXPECT_FALSE(open.save());
    }
    // It died between the rename and the end of the journal: with the mark, which is written before.
    const FileHash saved{sha256(textOf(path))};
    writeText(journal, textOf(file("copy")) + journalRecord(3, JournalStart(saved)));
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    EXPECT_FALSE(open.recoverable());
    EXPECT_EQ(placesOf(open.job()), Names{"ONE"});
    EXPECT_FALSE(fs::exists(journal));
}

TEST_F(LeftJournal, SaysWhatIsAboutToBeSavedBeforeItIs)
{
    std::string saved, atThatMoment;
    {
        OpenJob open;
        EXPECT_FALSE(open.open(path));
        add(open, "ONE");
        ASSERT_TRUE(isWritten(journal, open));
        saved = jobText(open.job());
        std::signal(SIGXFSZ, SIG_IGN);
        rlimit limit = {};
        ::getrlimit(RLIMIT_FSIZE, &limit);
        const rlimit small = {saved.size() / 2, limit.rlim_max}; // room for the journal, not for the job
        ::setrlimit(RLIMIT_FSIZE, &small);
        EXPECT_TRUE(open.save());
        ::setrlimit(RLIMIT_FSIZE, &limit);
        atThatMoment = textOf(journal);
    }
    writeText(path, saved); // as though it had died just after the rename
    writeText(journal, atThatMoment);
    OpenJob open;
    EXPECT_FALSE(open.open(path));
    EXPECT_FALSE(open.recoverable());
}

TEST_F(LeftJournal, OfAJobWithoutAFileStaysUntilSomebodyDecides)
{
    const std::string left = unsavedJob("job-1.journal");
    fs::create_directories(fs::path(left).parent_path());
    writeText(left, journalRecord(1, JournalStart(Job{})) +
                        journalRecord(2, JournalEdit{{"one", "uno"}, "", placeNamed(1, "ONE")}));
    const std::string text = textOf(left);
    OpenJob open;
    open.begin({});
    EXPECT_EQ(editsLeft(open), 1u);
    add(open, "TWO"); // before anybody decided
    EXPECT_TRUE(isWritten(unsavedJob("job-2.journal"), open));
    EXPECT_EQ(textOf(left), text);
}

TEST_F(LeftJournal, OfAJobWithoutAFileIsFoundWhenOneIsBegun)
{
    fs::create_directories(fs::path(unsavedJob("x")).parent_path());
    Job start, before;
    {
        OpenJob open, another;
        open.begin(oneDoor().job());
        add(open, "ONE");
        another.begin({});
        add(another, "OTHER");
        EXPECT_FALSE(another.recoverable()); // the first one lives
        ASSERT_TRUE(isWritten(unsavedJob("job-1.journal"), open));
        ASSERT_TRUE(isWritten(unsavedJob("job-2.journal"), another));
        before = open.job();
        fs::copy(fs::path(unsavedJob("x")).parent_path(), file("copy"));
    }
    EXPECT_EQ(unsavedJobs(), Names{});
    for (const char* name : {"job-1.journal", "job-2.journal"})
        fs::copy_file(file("copy/") + name, unsavedJob(name));

    OpenJob open;
    open.begin({});
    EXPECT_EQ(editsLeft(open), 1u);
    OpenJob second;
    second.begin({});
    EXPECT_EQ(editsLeft(second), 1u); // the other one
    EXPECT_FALSE(open.recover());
    EXPECT_FALSE(second.recover());
    EXPECT_EQ(open.job(), before);
    EXPECT_EQ(placesOf(second.job()), Names{"OTHER"});
    EXPECT_TRUE(open.unsaved());
    EXPECT_EQ(open.path(), "");
    open.history().undo();
    EXPECT_EQ(open.job(), oneDoor().job());
    EXPECT_FALSE(open.saveAs(file("new.doorjob")));
    EXPECT_FALSE(fs::exists(unsavedJob("job-1.journal")));
}

TEST_F(LeftJournal, IsWrittenInTheUsersFolderForAFileThatAnotherWindowHas)
{
    OpenJob first, second;
    EXPECT_FALSE(first.open(path));
    EXPECT_FALSE(second.open(path));
    add(second, "TWO");
    add(first, "ONE");
    EXPECT_TRUE(isWritten(journal, first));
    EXPECT_TRUE(isWritten(unsavedJob("job-1.journal"), second));
}

} // namespace doorloom
