#pragma once

#include "file/journal.h"

#include <functional>
#include <memory>
#include <string>

namespace doorloom {

// Writes a journal on a thread of its own, and syncs it after each batch; nothing here waits for the disk but
// settle(). What can't be written is kept and tried again, at the next record or after some seconds.
// Owns: the thread and the descriptor. Going away tries once more what waits, and leaves the file.
class JournalWriter {
public:
    // In: failed: called on the writer's thread, once until writing works again
    JournalWriter(std::string path, std::function<void(const Problem&)> failed);
    ~JournalWriter();

    void start(JournalStart start);                           // a new file in place of any other
    void resume(std::size_t goodBytes, std::uint64_t number); // after what was read; the rest is cut off
    void add(JournalEdit edit);
    void mark(FileHash file); // about to be saved so
    void remove();            // and the file with it

    void settle(); // until everything so far is on the disk, or could not be written

    const std::string& path() const;

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

} // namespace doorloom
