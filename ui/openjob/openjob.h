#pragma once

#include "base/result.h"
#include "edit/change.h"
#include "judge/findings.h"
#include "judge/lockstates.h"
#include "judge/terminalreadings.h"
#include "model/job.h"
#include "papers/schedule.h"

#include <QObject>
#include <QUndoStack>

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace doorloom {

// What a change touched, for views that keep something in step with the job.
struct Touched {
    std::vector<std::uint32_t> rows; // numbers, sorted, each once; gone ones too
    bool everything = false;         // another job: rows is empty
    bool wiring = false;             // more than placements, bends, notes and sheets
};

// What the worker found out about the job as it is now.
struct Judged {
    CheckResult check;
    Schedule schedule;
    std::shared_ptr<const TerminalReadings> readings{}; // null: not worked out
    std::shared_ptr<const LocksInSituations> locks{};   // as well
};

// How the worker judges a snapshot; called on its thread, and never twice at once. It may give up, with
// nothing, once the answer is not wanted any more.
using IsWanted = std::function<bool()>;
using Judge = std::function<std::optional<Judged>(const Job&, const IsWanted&)>;
Judge windowJudge(); // every rule within the window's budget, and the terminal schedule; remembers what it
                     // saw

// The job in a window: its history, its file, its journal, and what the checks say of it.
// Lives on the thread of the window. The worker sees snapshots; the journal is written on a thread of its
// own.
class OpenJob : public QObject {
    Q_OBJECT
public:
    explicit OpenJob(QObject* parent = nullptr, Judge judge = windowJudge());
    ~OpenJob() override;

    const Job& job() const;
    std::uint64_t generation() const; // rises with every change, undone and redone ones too

    // Makes the change and keeps how to undo it; a change without steps is none.
    // In:     what it does, in words for the undo menu: "land EL1:+ on PS1:+"
    //         merging: while it is not empty and stays the same, changes one after another become one step
    // Errors: what applyChange refuses; the job is as it was
    std::optional<Problem> make(const Message& what, const Change& change, const std::string& merging = {});

    // Undo, redo, and their words. What it undoes is told by undoText (QUndoStack), in the language at the
    // time when it was done. Nobody else pushes onto it.
    QUndoStack& history();
    const QUndoStack& history() const;
    void setLanguage(Language language); // English until then

    // ---- The file
    void begin(Job job);                                  // a job without a file yet
    std::optional<Problem> open(const std::string& path); // the job open now stays when it is refused
    std::optional<Problem> save();                        // to its own file
    std::optional<Problem> saveAs(const std::string& path);
    const std::string& path() const; // empty: no file yet
    bool unsaved() const;            // something to save
    bool readOnly() const;           // its file can't be written

    // ---- What an earlier run left unsaved for the file just opened (or for a job without a file)
    struct Recovered {
        std::size_t edits = 0;
        std::optional<Problem> damage; // a torn middle of the journal: edits after it are lost
    };
    std::optional<Recovered> recoverable() const;
    std::optional<Problem> recover(); // makes them all; they are then undoable, and unsaved
    void forgetRecoverable();

    // ---- What the worker says of the job as it is now; null while it is being looked at.
    const Judged* judged() const;

signals:
    void jobChanged(const doorloom::Touched& touched);
    void fileChanged();                                   // path, unsaved or readOnly are others
    void judgedChanged();                                 // judged() is another one, or has become null
    void changedOnDisk();                                 // somebody else wrote the file
    void openElsewhere();                                 // another window holds the file
    void journalFailed(const doorloom::Problem& problem); // unsaved edits are not being kept

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

} // namespace doorloom
