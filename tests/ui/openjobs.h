#pragma once

#include "openjob/openjob.h"

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>

#include <algorithm>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <linux/capability.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <unistd.h>

// What the tests of the open job share: small edits, and a folder of their own.
namespace doorloom {

inline Message words(const std::string& what)
{
    static constexpr Text doIt = {.en = "do {what}", .es = "hacer {what}"};
    return {doIt, {{"what", what}}};
}

template <class Row> Change put(Row row)
{
    const Id<Row> id = row.id;
    return {{Put<Row>{id, std::move(row)}}};
}

inline Change placeNamed(std::uint32_t number, const std::string& tag)
{
    Place place;
    place.id = {number};
    place.tag = tag;
    return put(place);
}

inline std::vector<std::string> placesOf(const Job& job)
{
    std::vector<std::string> tags;
    for (const Place& place : job.places)
        tags.push_back(place.tag);
    return tags;
}

// Adds a place called so.
inline void add(OpenJob& open, const std::string& tag, const std::string& merging = {})
{
    const std::optional<Problem> problem =
        open.make(words(tag), placeNamed(open.job().nextNumber, tag), merging);
    EXPECT_FALSE(problem) << inWords(*problem);
}

inline std::string textOf(const std::string& path)
{
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

inline void writeText(const std::string& path, const std::string& text)
{
    std::ofstream(path, std::ios::binary) << text;
}

// This program again, for one of its tests alone, disabled or not: the child's part of another test.
inline void startAgain(QProcess& child, const QString& test, const QProcessEnvironment& environment)
{
    child.setProcessEnvironment(environment);
    child.start(QCoreApplication::applicationFilePath(),
                {"--gtest_filter=" + test, "--gtest_also_run_disabled_tests"});
}

// Root writes what is write-protected. Out: whether this process doesn't; if it does, the test has been run
// by one that doesn't, and there is nothing left to do.
inline bool isBoundByProtection(const std::string& path, const QString& test)
{
    constexpr int mayNotGiveUp = 77;
    if (::access(path.c_str(), W_OK) != 0)
        return true;
    QProcess child;
    child.setChildProcessModifier([] {
        if (::prctl(PR_CAPBSET_DROP, CAP_DAC_OVERRIDE, 0, 0, 0) != 0)
            ::_exit(mayNotGiveUp);
    });
    startAgain(child, test, QProcessEnvironment::systemEnvironment());
    EXPECT_TRUE(child.waitForFinished(60'000));
    if (child.exitCode() == mayNotGiveUp)
        [] { GTEST_SKIP() << "this root can't give up its right to write everything"; }();
    else
        EXPECT_EQ(child.exitCode(), 0)
            << child.readAllStandardOutput().constData() << child.readAllStandardError().constData();
    return false;
}

// While it lives, no file can grow beyond a few bytes.
class FullDisk {
public:
    FullDisk()
    {
        std::signal(SIGXFSZ, SIG_IGN);
        ::getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit full = {50, before_.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &full);
    }
    ~FullDisk() { ::setrlimit(RLIMIT_FSIZE, &before_); }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

private:
    rlimit before_ = {};
};

// A folder for jobs, and one for what the program keeps for its user; both are gone at the end.
class OwnFolders : public ::testing::Test {
protected:
    OwnFolders() { qputenv("XDG_DATA_HOME", data_.path().toUtf8()); }
    ~OwnFolders() override { qputenv("XDG_DATA_HOME", before_); }

    std::string file(const std::string& name) const
    {
        return jobs_.filePath(QString::fromStdString(name)).toStdString();
    }
    std::string fileFolder() const { return jobs_.path().toStdString(); }
    // Names there, sorted.
    std::vector<std::string> files() const { return namesIn(jobs_.path()); }
    std::vector<std::string> unsavedJobs() const { return namesIn(data_.filePath("doorloom/unsaved")); }
    std::string unsavedJob(const std::string& name) const
    {
        return data_.filePath(QString::fromStdString("doorloom/unsaved/" + name)).toStdString();
    }

private:
    static std::vector<std::string> namesIn(const QString& folder)
    {
        std::vector<std::string> names;
        std::error_code error;
        for (const auto& entry : std::filesystem::directory_iterator(folder.toStdString(), error))
            names.push_back(entry.path().filename().string());
        std::sort(names.begin(), names.end());
        return names;
    }

    QTemporaryDir jobs_, data_;
    QByteArray before_ = qgetenv("XDG_DATA_HOME");
};

} // namespace doorloom
