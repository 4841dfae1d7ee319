#include "openjob/inside.h"

#include "base/sha256.h"
#include "file/jobfile.h"
#include "openjob/edit.h"
#include "openjob/touched.h"

#include <cassert>
#include <utility>

namespace doorloom {

namespace {

constexpr Text heldElsewhere = {.en = "Another window has this file open.",
                                .es = "Otra ventana tiene abierto este archivo."};
constexpr Text otherName = {.en = "Save under another name, or close it there first.",
                            .es = "Guarde con otro nombre o ciérrelo allí antes."};

#ifndef NDEBUG
constexpr std::size_t mostRowsVerified = 200; // a walk over the job after each change

bool keepsItsPromises(const Job& job)
{
    std::size_t rows = 0;
    forEachTable(job, [&](const char*, const auto& table) { rows += table.size(); });
    return rows > mostRowsVerified || verifyJob(job).empty();
}
#endif

} // namespace

OpenJob::Inside::Inside(OpenJob& open, Judge judge)
    : self(open), keeper([this](const Problem& problem) {
          QMetaObject::invokeMethod(&self, [this, problem] { emit self.journalFailed(problem); });
      }),
      worker(std::move(judge), [this](Worker::Verdict verdict) {
          QMetaObject::invokeMethod(&self, [this, verdict = std::move(verdict)] { take(verdict); });
      })
{
}

// ---- Changing

Result<std::optional<Change>> OpenJob::Inside::applied(const Change& change)
{
    if (isSo(job, change))
        return std::optional<Change>();
    Result<Change> undo = applyChange(job, change);
    if (!undo.ok())
        return undo.problem();
    assert(keepsItsPromises(job));
    note(touchedBy(change));
    return std::optional(std::move(undo.value()));
}

Result<std::optional<Change>> OpenJob::Inside::appliedAndKept(const JournalEdit& edit)
{
    std::optional<Job> before;
    if (!keeper.isKeeping())
        before = job;
    Result<std::optional<Change>> undo = applied(edit.change);
    if (!undo.ok() || !undo.value())
        return undo;
    if (before)
        keeper.begin(file.get(), *std::move(before));
    keeper.keep(edit);
    return undo;
}

// They put back what was there, so that nothing is refused.
Change OpenJob::Inside::reapplied(const Change& change, const Words& what)
{
    merging.clear();
    Result<std::optional<Change>> undo = appliedAndKept({what, {}, change});
    assert(undo.ok() && undo.value());
    return *std::move(undo.value());
}

void OpenJob::Inside::push(const JournalEdit& edit, Change undo)
{
    history.push(new Edit(edit.what, language, std::move(undo), runOf(edit.merging), job, // the history's
                          [this](const Change& next, const Words& what) { return reapplied(next, what); }));
}

int OpenJob::Inside::runOf(const std::string& key)
{
    if (key.empty() || key != merging)
        ++run;
    merging = key;
    return key.empty() ? -1 : run;
}

void OpenJob::Inside::note(const Touched& touched)
{
    ++generation;
    if (touched.wiring)
        wiring = generation;
    if (!untold)
        untold.emplace();
    add(*untold, touched);
}

void OpenJob::Inside::tell()
{
    if (!untold || isRemaking)
        return;
    const Touched touched = *std::exchange(untold, std::nullopt);
    const bool wasJudged = judged != nullptr;
    if (touched.wiring) {
        judged.reset();
        worker.look(wiring, job);
    }
    emit self.jobChanged(touched);
    if (wasJudged && touched.wiring)
        emit self.judgedChanged();
}

void OpenJob::Inside::replaceJob(Job other)
{
    job = std::move(other);
    merging.clear();
    history.clear();
    note({.rows = {}, .everything = true, .wiring = true});
    tell();
}

// ---- The file

void OpenJob::Inside::hold(std::unique_ptr<HeldFile> other)
{
    file = std::move(other);
    if (!file)
        return;
    // Later, not now: a window asks then, and may open another file.
    connect(
        file.get(), &HeldFile::changedOnDisk, &self,
        [this] {
            if (file && file->isToldOf())
                emit self.changedOnDisk();
        },
        Qt::QueuedConnection);
}

std::optional<Problem> OpenJob::Inside::write(HeldFile& into)
{
    if (!into.hold() && into.isElsewhere())
        return Problem{heldElsewhere, into.path(), otherName};
    const std::string text = jobText(job);
    const FileHash hash{sha256(text)};
    keeper.aboutToSave(hash);
    if (const Result<Done> done = saveBytes(text, into.path()); !done.ok())
        return done.problem();
    keeper.drop();
    into.know(hash);
    merging.clear();
    history.setClean();
    return std::nullopt;
}

// ---- What an earlier run left

std::optional<Problem> OpenJob::Inside::remake(const Journal& journal)
{
    isRemaking = true;
    const Job start = job;
    std::vector<JournalEdit> made;
    std::optional<Problem> problem;
    for (const JournalEdit& edit : journal.edits) {
        Result<std::optional<Change>> undo = applied(edit.change);
        if (!undo.ok()) {
            problem = undo.problem();
            break;
        }
        if (undo.value())
            push(edit, *std::move(undo.value()));
        made.push_back(edit);
    }
    if (journal.damage || problem) {
        const std::string kept =
            keeper.takeUp(file ? JournalStart(file->known()) : JournalStart(start), made);
        if (problem)
            problem = keptIn(kept, *problem);
    } else {
        keeper.takeUp();
    }
    isRemaking = false;
    tell();
    return problem;
}

// ---- Judging

void OpenJob::Inside::take(const Worker::Verdict& verdict)
{
    if (verdict.snapshot != wiring)
        return; // of a job that is gone
    judged = verdict.judged;
    emit self.judgedChanged();
}

} // namespace doorloom
