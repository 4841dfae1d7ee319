#include "core/fulljob.h"
#include "file/jobfile.h"

#include <gtest/gtest.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace doorloom {

namespace {

namespace fs = std::filesystem;

// A folder of the test's own, gone at its end.
struct Folder {
    fs::path path;

    Folder()
    {
        std::string pattern = (fs::temp_directory_path() / "saveXXXXXX").string();
        path = ::mkdtemp(pattern.data());
    }
    ~Folder()
    {
        fs::permissions(path, fs::perms::owner_all);
        fs::remove_all(path);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::string file(const std::string& name) const { return (path / name).string(); }
    std::size_t count() const
    {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(path), fs::directory_iterator()));
    }
};

std::string contentOf(const std::string& path)
{
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::string outcomeOf(const Result<Done>& saved)
{
    return saved.ok() ? "was saved" : inWords(saved.problem());
}

// What a function says in a child process that has got ready for it.
std::string inChild(const std::function<void()>& getReady, const std::function<std::string()>& says)
{
    int channel[2] = {};
    if (::pipe(channel) != 0)
        return "no pipe";
    const pid_t child = ::fork();
    if (child == 0) {
        getReady();
        const std::string words = says();
        const bool told =
            ::write(channel[1], words.data(), words.size()) == static_cast<ssize_t>(words.size());
        ::_exit(told ? 0 : 1);
    }
    ::close(channel[1]);
    std::string words(4096, '\0');
    words.resize(
        static_cast<std::size_t>(std::max<ssize_t>(0, ::read(channel[0], words.data(), words.size()))));
    ::close(channel[0]);
    ::waitpid(child, nullptr, 0);
    return words;
}

// No file grows beyond 1,000 bytes, and a write says so instead of ending the process: as on a full disk.
void fillDisk()
{
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit = {1000, 1000};
    ::setrlimit(RLIMIT_FSIZE, &limit);
}

// Root may do everything; nobody else may.
void becomeNobody()
{
    if (::geteuid() == 0 && ::setuid(65534) != 0)
        ::_exit(1);
}

} // namespace

TEST(SaveBytes, MakesAFileAndReplacesIt)
{
    const Folder folder;
    const std::string file = folder.file("out.csv");

    EXPECT_EQ(outcomeOf(saveBytes("one", file)), "was saved");
    EXPECT_EQ(contentOf(file), "one");
    EXPECT_EQ(outcomeOf(saveBytes("", file)), "was saved");
    EXPECT_EQ(contentOf(file), "");
    EXPECT_EQ(folder.count(), 1u);
}

TEST(SaveBytes, KeepsThePermissionsOfTheFileThatItReplaces)
{
    const Folder folder;
    const std::string file = folder.file("out.csv");
    ASSERT_TRUE(saveBytes("one", file).ok());
    fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write | fs::perms::group_read);

    ASSERT_TRUE(saveBytes("two", file).ok());

    EXPECT_EQ(fs::status(file).permissions(),
              fs::perms::owner_read | fs::perms::owner_write | fs::perms::group_read);
}

TEST(SaveBytes, WritesThroughASymbolicLink)
{
    const Folder folder;
    ASSERT_TRUE(saveBytes("one", folder.file("real")).ok());
    fs::create_symlink(folder.file("real"), folder.file("link"));

    ASSERT_TRUE(saveBytes("two", folder.file("link")).ok());

    EXPECT_TRUE(fs::is_symlink(folder.file("link")));
    EXPECT_EQ(contentOf(folder.file("real")), "two");
}

TEST(SaveBytes, IsNotDisturbedByALeftOverPart)
{
    const Folder folder;
    const std::string file = folder.file("out.csv"),
                      left = file + "." + std::to_string(::getpid()) + "-0.part";
    std::ofstream(left) << "somebody else's";

    EXPECT_EQ(outcomeOf(saveBytes("mine", file)), "was saved");

    EXPECT_EQ(contentOf(file), "mine");
    EXPECT_EQ(contentOf(left), "somebody else's");
}

TEST(SaveBytes, RefusesAFolderThatIsNotThere)
{
    const Folder folder;
    const std::string file = folder.file("none/out.csv");
    EXPECT_EQ(outcomeOf(saveBytes("one", file)),
              file + ": The file cannot be saved: No such file or directory. Make the folder " +
                  folder.file("none") + " first, or save elsewhere.");
    EXPECT_EQ(folder.count(), 0u);
}

TEST(SaveBytes, RefusesToReplaceAFolder)
{
    const Folder folder;
    fs::create_directory(folder.file("out"));
    EXPECT_EQ(outcomeOf(saveBytes("one", folder.file("out"))),
              folder.file("out") + ": The file cannot be saved: Is a directory. Save elsewhere; what was "
                                   "there before is unchanged.");
    EXPECT_EQ(folder.count(), 1u);
}

TEST(SaveBytes, RefusesAFolderThatMayOnlyBeRead)
{
    const Folder folder;
    const std::string file = folder.file("out.csv");
    ASSERT_TRUE(saveBytes("one", file).ok());
    constexpr fs::perms readOnly =
        fs::perms::owner_read | fs::perms::owner_exec | fs::perms::others_read | fs::perms::others_exec;
    fs::permissions(file, fs::perms::all); // so that the folder alone is in the way
    fs::permissions(folder.path, readOnly);

    EXPECT_EQ(inChild(becomeNobody, [&] { return outcomeOf(saveBytes("two", file)); }),
              file + ": The file cannot be saved: Permission denied. Save where you may write; "
                     "what was there before is unchanged.");
    EXPECT_EQ(contentOf(file), "one");
    EXPECT_EQ(folder.count(), 1u);
}

TEST(SaveBytes, RefusesToReplaceAFileThatMayOnlyBeRead)
{
    const Folder folder;
    const std::string file = folder.file("out.csv");
    ASSERT_TRUE(saveBytes("one", file).ok());
    fs::permissions(folder.path, fs::perms::all);
    fs::permissions(file, fs::perms::owner_read | fs::perms::others_read);

    EXPECT_EQ(inChild(becomeNobody, [&] { return outcomeOf(saveBytes("two", file)); }),
              file + ": The file cannot be saved: Permission denied. Save where you may write; what was "
                     "there before is "
                     "unchanged.");
    EXPECT_EQ(contentOf(file), "one");
    EXPECT_EQ(folder.count(), 1u);
}

TEST(SaveBytes, LeavesTheOldFileAloneWhenTheDiskIsFull)
{
    const Folder folder;
    const std::string file = folder.file("out.csv");
    ASSERT_TRUE(saveBytes("as it was", file).ok());

    const std::string words =
        inChild(fillDisk, [&] { return outcomeOf(saveBytes(std::string(5000, 'x'), file)); });

    EXPECT_EQ(words, file + ": The file cannot be saved: File too large. Make room or save elsewhere; what "
                            "was there before is "
                            "unchanged.");
    EXPECT_EQ(contentOf(file), "as it was");
    EXPECT_EQ(folder.count(), 1u);
}

TEST(SaveJobFile, LeavesTheOldFileAloneWhenTheDiskIsFull)
{
    const Folder folder;
    const std::string file = folder.file("a.doorjob");
    ASSERT_TRUE(saveJobFile(Job{}, file).ok());

    const std::string words = inChild(fillDisk, [&] { return outcomeOf(saveJobFile(fullJob(), file)); });

    EXPECT_EQ(words, file + ": The file cannot be saved: File too large. Make room or save elsewhere; what "
                            "was there before is "
                            "unchanged.");
    EXPECT_EQ(contentOf(file), jobText(Job{}));
    EXPECT_EQ(folder.count(), 1u);
}

TEST(SaveJobFile, MakesAFileThatReadsBack)
{
    const Folder folder;
    const std::string file = folder.file("a.doorjob");
    ASSERT_TRUE(saveJobFile(fullJob(), file).ok());

    const Result<Job> back = readJobFile(file);

    ASSERT_TRUE(back.ok()) << inWords(back.problem());
    EXPECT_EQ(back.value(), fullJob());
}

TEST(ReadJobFile, RefusesWhatIsNotThereOrNoFile)
{
    const Folder folder;
    const auto refusal = [](const std::string& path) { return inWords(readJobFile(path).problem()); };
    EXPECT_EQ(refusal(folder.file("none.doorjob")),
              folder.file("none.doorjob") + ": The file cannot be read: No such file or directory. Look "
                                            "whether it is there and may be read.");
    EXPECT_EQ(refusal(folder.path.string()),
              folder.path.string() +
                  ": The file cannot be read: Is a directory. Look whether it is there and may be read.");
}

TEST(ReadJobFile, RefusesAFileThatMayNotBeRead)
{
    const Folder folder;
    const std::string file = folder.file("a.doorjob");
    ASSERT_TRUE(saveJobFile(Job{}, file).ok());
    fs::permissions(folder.path, fs::perms::all);
    fs::permissions(file, fs::perms::none);
    EXPECT_EQ(inChild(becomeNobody, [&] { return inWords(readJobFile(file).problem()); }),
              file +
                  ": The file cannot be read: Permission denied. Look whether it is there and may be read.");
}

TEST(ReadJobFile, RefusesAHugeFileWithoutKeepingIt)
{
    const Folder folder;
    const std::string file = folder.file("a.doorjob");
    std::ofstream(file) << "{";
    fs::resize_file(file, std::uintmax_t(5) << 30); // sparse

    const std::string words = inWords(readJobFile(file).problem());

    EXPECT_EQ(words,
              file +
                  ": The file has more than 64 MB. No file of this program is so large: take another one.");
    EXPECT_EQ(fs::file_size(file), std::uintmax_t(5) << 30);
}

TEST(ReadJobFile, RefusesADeviceWithoutEnd)
{
    EXPECT_EQ(
        inWords(readJobFile("/dev/zero").problem()),
        "/dev/zero: The file has more than 64 MB. No file of this program is so large: take another one.");
}

} // namespace doorloom
