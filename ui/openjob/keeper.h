#pragma once

#include "file/journalwriter.h"
#include "openjob/heldfile.h"

#include <QLockFile>

#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace doorloom {

// Keeps unsaved edits in a journal until they are saved, and finds what an earlier run has left.
//
// The journal is beside the job's file, "NAME.doorjob.journal". Where that can't be (a job without a file, a
// file that another window has or that is write-protected, a journal there that nobody has asked for yet) it
// is in the user's folder for unsaved jobs, begins with the job, and is found when a job without a file is
// begun.
class Keeper {
public:
    using Failed = std::function<void(const Problem&)>; // called on any thread

    explicit Keeper(Failed failed) : failed_(std::move(failed)) {}

    // ---- What an earlier run has left
    struct Left {
        Journal journal;
        std::optional<Problem> problem; // it can't be used; it is kept under another name
        std::string path;
        std::unique_ptr<QLockFile> lock; // of one in the user's folder
    };
    void lookBeside(const HeldFile& file);
    void lookInFolder();
    const Left* left() const { return left_ ? &*left_ : nullptr; }
    void forgetLeft();
    // Goes on with it, as the journal of this run: all of its edits have been made.
    void takeUp();
    // The same, when only these could be made; what was left is kept under another name.
    // Out: that name
    std::string takeUp(JournalStart start, const std::vector<JournalEdit>& made);

    // ---- What this run does
    bool isKeeping() const { return writer_ != nullptr; }
    void begin(const HeldFile* file, Job before); // null: none; before: the job as it is in the file
    void keep(JournalEdit edit);
    void aboutToSave(const FileHash& file);
    void drop(); // saved, or not wanted: nothing of this run is left

private:
    bool lookAt(const std::string& path, const std::optional<FileHash>& file);
    void startIn(std::string path);
    void startInFolder();

    Failed failed_;
    std::optional<Left> left_;
    std::unique_ptr<QLockFile> lock_; // of this run's journal in the user's folder
    std::unique_ptr<JournalWriter> writer_;
};

// The problem with edits, and where they are kept.
Problem keptIn(const std::string& path, Problem problem);

} // namespace doorloom
