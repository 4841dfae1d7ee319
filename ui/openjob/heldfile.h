#pragma once

#include "file/journal.h"

#include <QFileSystemWatcher>
#include <QLockFile>
#include <QObject>

#include <cstdint>
#include <optional>
#include <string>

namespace doorloom {

// The file of an open job: locked against other windows, and watched for other writers.
// Owns: the lock, a file beside it, "NAME.doorjob.lock".
class HeldFile : public QObject {
    Q_OBJECT
public:
    // In: known: what it holds, as far as the window knows
    HeldFile(const std::string& path, FileHash known);

    const std::string& path() const { return path_; } // as it was opened
    bool isSameFile(const std::string& path) const;
    std::string journalPath() const;

    bool hold();                                      // tries again to get the lock
    bool isElsewhere() const { return isElsewhere_; } // another window has it
    bool mayWrite() const; // ours, and neither it nor its folder is write-protected

    const FileHash& known() const { return known_; }
    void know(FileHash now); // read or written by this window
    // Another content than is known: somebody else wrote the file. Told by the signal, once for each content.
    void look();
    bool isToldOf() const { return told_.has_value(); } // and nobody has read or written it since

signals:
    void changedOnDisk();

private:
    struct Stamp {
        std::uint64_t inode = 0;
        std::int64_t bytes = 0, seconds = 0, nanoseconds = 0;
        friend bool operator==(const Stamp&, const Stamp&) = default;
    };
    std::optional<Stamp> stamp() const;
    void watch();

    std::string path_, real_; // real_: behind symbolic links
    FileHash known_;
    std::optional<FileHash> told_;
    std::optional<Stamp> seen_; // of the file when it was last read: what has the same is the same
    QLockFile lock_;
    bool isElsewhere_ = false;
    QFileSystemWatcher watcher_;
};

} // namespace doorloom
