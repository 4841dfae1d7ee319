#include "openjob/heldfile.h"

#include "base/json.h"
#include "base/sha256.h"
#include "base/wholefile.h"

#include <filesystem>
#include <system_error>
#include <utility>

#include <sys/stat.h>
#include <unistd.h>

namespace doorloom {

namespace {

namespace fs = std::filesystem;

std::string behindLinks(const std::string& path)
{
    std::error_code error;
    const fs::path real = fs::weakly_canonical(fs::absolute(path, error), error);
    return error ? path : real.string();
}

QString folderOf(const std::string& path)
{
    return QString::fromStdString(fs::path(path).parent_path().string());
}

// Nothing when it can't be read.
std::optional<FileHash> hashOfFile(const std::string& path)
{
    const Result<std::string> bytes = wholeFile(path, mostJsonBytes);
    return bytes.ok() ? std::optional(FileHash{sha256(bytes.value())}) : std::nullopt;
}

} // namespace

HeldFile::HeldFile(const std::string& path, FileHash known)
    : path_(path), real_(behindLinks(path)), known_(std::move(known)),
      lock_(QString::fromStdString(real_ + ".lock"))
{
    lock_.setStaleLockTime(
        0); // a window may hold its file for days; a dead one's lock is known by its process
    hold();
    connect(&watcher_, &QFileSystemWatcher::fileChanged, this, &HeldFile::look);
    connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, &HeldFile::look);
    watch();
}

bool HeldFile::isSameFile(const std::string& path) const
{
    return behindLinks(path) == real_;
}

std::string HeldFile::journalPath() const
{
    return real_ + ".journal";
}

bool HeldFile::hold()
{
    const bool isOurs = lock_.isLocked() || lock_.tryLock(0);
    isElsewhere_ = !isOurs && lock_.error() == QLockFile::LockFailedError;
    return isOurs;
}

bool HeldFile::mayWrite() const
{
    const std::string folder = fs::path(real_).parent_path().string();
    const bool isProtected = ::access(real_.c_str(), F_OK) == 0 && ::access(real_.c_str(), W_OK) != 0;
    return lock_.isLocked() && !isProtected && ::access(folder.c_str(), W_OK) == 0;
}

void HeldFile::know(FileHash now)
{
    known_ = std::move(now);
    told_.reset();
    seen_.reset();
    watch();
}

void HeldFile::look()
{
    watch();
    const std::optional<Stamp> stampNow = stamp();
    if (!stampNow || stampNow == seen_)
        return;
    seen_ = stampNow;
    std::optional<FileHash> now = hashOfFile(real_);
    if (!now || *now == known_ || now == told_)
        return;
    told_ = std::move(now);
    emit changedOnDisk();
}

std::optional<HeldFile::Stamp> HeldFile::stamp() const
{
    struct stat now = {};
    if (::stat(real_.c_str(), &now) != 0)
        return std::nullopt;
    return Stamp{now.st_ino, now.st_size, now.st_mtim.tv_sec, now.st_mtim.tv_nsec};
}

// The folder too: most programs put a new file in the old one's place, and the old one is all that was
// watched.
void HeldFile::watch()
{
    const QString file = QString::fromStdString(real_);
    if (!watcher_.files().contains(file))
        watcher_.addPath(file);
    if (watcher_.directories().isEmpty())
        watcher_.addPath(folderOf(real_));
}

} // namespace doorloom
