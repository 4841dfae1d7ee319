#pragma once

#include "openjob/heldfile.h"
#include "openjob/keeper.h"
#include "openjob/openjob.h"
#include "openjob/worker.h"

#include <memory>
#include <optional>
#include <string>

namespace doorloom {

// What an open job consists of, and what it does behind its signals.
struct OpenJob::Inside {
    OpenJob& self;
    Language language = Language::English;
    Job job;
    std::uint64_t generation = 0;
    std::uint64_t wiring = 0; // the generation of the last change that a check would notice
    std::shared_ptr<const Judged> judged;

    QUndoStack history;
    std::string merging; // of the last change; an undo, a redo or saving ends its run
    int run = 0;
    std::optional<Touched> untold; // what the next jobChanged says
    bool isRemaking = false;       // what an earlier run left: one signal for all of it

    std::unique_ptr<HeldFile> file; // null: none yet
    Keeper keeper;
    Worker worker; // last: its thread ends before the rest goes

    Inside(OpenJob& open, Judge judge);

    // ---- Changing
    // Out: how to undo it; nothing: every row was already as the change puts it
    Result<std::optional<Change>> applied(const Change& change);
    Result<std::optional<Change>> appliedAndKept(const JournalEdit& edit);
    Change reapplied(const Change& change, const Words& what); // undo and redo
    void push(const JournalEdit& edit, Change undo);
    void replaceJob(Job other);
    void tell(); // one signal for a change, or for a walk through the history

    // ---- The file
    void hold(std::unique_ptr<HeldFile> other);
    // Errors: another window's file, what saveBytes says
    std::optional<Problem> write(HeldFile& into);

    // ---- What an earlier run left
    // Errors: an edit that the job doesn't take; those before it are made
    std::optional<Problem> remake(const Journal& journal);

private:
    int runOf(const std::string& key);
    void note(const Touched& touched);
    void take(const Worker::Verdict& verdict);
};

} // namespace doorloom
