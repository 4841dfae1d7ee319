#include "file/journalwriter.h"

#include "core/random.h"

#include <gtest/gtest.h>

#include <atomic>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <mutex>

#include <sys/resource.h>

namespace doorloom {

namespace {

namespace fs = std::filesystem;

const FileHash theFile{"the file"};

JournalEdit edit(int number)
{
    Sheet sheet;
    sheet.id = {static_cast<std::uint32_t>(number)};
    sheet.title = std::string(100, 'x');
    return {{"edit", "edición"}, "", {{Put<Sheet>{sheet.id, sheet}}}};
}

// No file grows beyond this: a write says so, as on a full disk.
class SmallDisk {
public:
    explicit SmallDisk(rlim_t bytes)
    {
        std::signal(SIGXFSZ, SIG_IGN);
        ::getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit small = {bytes, before_.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &small);
    }
    ~SmallDisk() { ::setrlimit(RLIMIT_FSIZE, &before_); }
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;

private:
    rlimit before_ = {};
};

class JournalWriting : public ::testing::Test {
protected:
    JournalWriting()
    {
        std::string pattern = (fs::temp_directory_path() / "journalXXXXXX").string();
        folder_ = ::mkdtemp(pattern.data());
        path = folder_ / "x.journal";
    }
    ~JournalWriting() override { fs::remove_all(folder_); }

    std::unique_ptr<JournalWriter> writer()
    {
        return std::make_unique<JournalWriter>(path, [this](const Problem& problem) {
            const std::lock_guard lock(mutex_);
            failures_.push_back(inWords(problem));
        });
    }
    std::vector<std::string> failures()
    {
        const std::lock_guard lock(mutex_);
        return failures_;
    }
    std::string text() const
    {
        std::ifstream in(path, std::ios::binary);
        return {std::istreambuf_iterator<char>(in), {}};
    }
    std::size_t editsThere() const
    {
        const Result<Journal> journal = readJournal(text(), path, theFile);
        EXPECT_TRUE(journal.ok() && !journal.value().damage);
        return journal.ok() ? journal.value().edits.size() : 0;
    }

    std::string path;

private:
    fs::path folder_;
    std::mutex mutex_;
    std::vector<std::string> failures_;
};

} // namespace

TEST_F(JournalWriting, PutsEveryEditOnTheDiskInItsOrder)
{
    const auto writing = writer();
    writing->start(theFile);
    for (int number = 1; number <= 200; ++number)
        writing->add(edit(number));
    writing->settle();
    const Result<Journal> journal = readJournal(text(), path, theFile);
    ASSERT_TRUE(journal.ok()) << inWords(journal.problem());
    ASSERT_EQ(journal.value().edits.size(), 200u);
    for (int number = 1; number <= 200; ++number)
        EXPECT_EQ(journal.value().edits[static_cast<std::size_t>(number) - 1], edit(number));
}

TEST_F(JournalWriting, WritesWhatWaitsBeforeItGoesAndLeavesTheFile)
{
    auto writing = writer();
    writing->start(theFile);
    for (int number = 1; number <= 50; ++number)
        writing->add(edit(number));
    writing.reset();
    EXPECT_EQ(editsThere(), 50u);
}

TEST_F(JournalWriting, StartsAnewInPlaceOfWhatWasThere)
{
    auto writing = writer();
    writing->start(FileHash{"an older state"});
    writing->add(edit(1));
    writing->settle();
    writing->start(theFile);
    writing->settle();
    EXPECT_EQ(editsThere(), 0u);
    writing->add(edit(1));
    writing->remove();
    writing->settle();
    EXPECT_FALSE(fs::exists(path));
    writing->start(theFile);
    writing->add(edit(2));
    writing->settle();
    EXPECT_EQ(editsThere(), 1u);
}

TEST_F(JournalWriting, GoesOnBehindWhatWasReadAndCutsTheRest)
{
    auto writing = writer();
    writing->start(theFile);
    writing->add(edit(1));
    writing->add(edit(2));
    writing.reset();
    fs::resize_file(path, fs::file_size(path) - 10);
    const Result<Journal> journal = readJournal(text(), path, theFile);
    ASSERT_TRUE(journal.ok());
    ASSERT_EQ(journal.value().edits.size(), 1u);

    writing = writer();
    writing->resume(journal.value().goodBytes, journal.value().nextNumber);
    writing->add(edit(3));
    writing->settle();
    const Result<Journal> after = readJournal(text(), path, theFile);
    ASSERT_TRUE(after.ok() && !after.value().damage);
    EXPECT_EQ(after.value().edits, (std::vector<JournalEdit>{edit(1), edit(3)}));
}

TEST_F(JournalWriting, SaysOnceThatTheDiskIsFullAndLosesNothingWhenThereIsRoomAgain)
{
    const auto writing = writer();
    writing->start(theFile);
    writing->add(edit(1));
    writing->settle();
    const std::size_t before = text().size();
    {
        const SmallDisk disk(before + 100); // room for a part of the next
        for (int number = 2; number <= 5; ++number) {
            writing->add(edit(number));
            writing->settle();
        }
        EXPECT_EQ(text().size(), before); // the part is taken back
        EXPECT_EQ(editsThere(), 1u);
        EXPECT_EQ(failures(),
                  std::vector<std::string>{
                      path + ": Unsaved edits can't be kept for the case of a crash: File too large. "
                             "Save the job now, and make room or mend the folder's permissions."});
    }
    writing->add(edit(6));
    writing->settle();
    EXPECT_EQ(editsThere(), 6u);
    EXPECT_EQ(failures().size(), 1u);
}

TEST_F(JournalWriting, SaysThatTheFolderIsNotThere)
{
    path = (fs::path(path).parent_path() / "none" / "x.journal").string();
    const auto writing = writer();
    writing->start(theFile);
    writing->add(edit(1));
    writing->settle();
    ASSERT_EQ(failures().size(), 1u);
    fs::create_directory(fs::path(path).parent_path());
    writing->add(edit(2));
    writing->settle();
    EXPECT_EQ(editsThere(), 2u);
}

} // namespace doorloom
