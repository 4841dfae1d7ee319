#include "openjob/openjob.h"

#include "base/json.h"
#include "base/sha256.h"
#include "base/wholefile.h"
#include "file/jobfile.h"
#include "openjob/edit.h"
#include "openjob/heldfile.h"
#include "openjob/keeper.h"
#include "openjob/touched.h"
#include "openjob/worker.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace doorloom {

namespace {

constexpr Text noFileYet = {.en = "The job has no file yet.", .es = "El trabajo aún no tiene archivo."};
constexpr Text nameOne = {.en = "Save it under a name.", .es = "Guárdelo con un nombre."};

constexpr Text heldElsewhere = {.en = "Another window has this file open.",
                                .es = "Otra ventana tiene abierto este archivo."};
constexpr Text otherName = {.en = "Save under another name, or close it there first.",
                            .es = "Guarde con otro nombre o ciérrelo allí antes."};
constexpr Text changedThere = {.en = "Somebody else has changed this file since it was opened here.",
                               .es = "Alguien ha cambiado este archivo desde que se abrió aquí."};
constexpr Text lookFirst = {.en = "Save under another name, or save again to replace what is there now.",
                            .es = "Guarde con otro nombre o guarde otra vez para sustituir lo que hay."};

Words inEveryLanguage(const Message& message)
{
    return {inWords(message, Language::English), inWords(message, Language::Spanish)};
}

#ifndef NDEBUG
constexpr std::size_t mostRowsVerified = 200; // a walk over the job after each change

bool keepsItsPromises(const Job& job)
{
    std::size_t rows = 0;
    forEachTable(job, [&](const char*, const auto& table) { rows += table.size(); });
    return rows > mostRowsVerified || verifyJob(job).empty();
}
#endif

// Whether every row was already as the change puts it.
bool isNone(const Change& change, const Change& undo)
{
    return std::equal(change.steps.begin(), change.steps.end(), undo.steps.rbegin(), undo.steps.rend());
}

} // namespace

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

    Inside(OpenJob& open, Judge judge)
        : self(open), keeper([this](const Problem& problem) {
              QMetaObject::invokeMethod(&self, [this, problem] { emit self.journalFailed(problem); });
          }),
          worker(std::move(judge), [this](Worker::Verdict verdict) {
              QMetaObject::invokeMethod(&self, [this, verdict = std::move(verdict)] { take(verdict); });
          })
    {
    }

    // ---- Changing

    // Out: how to undo it; nothing: every row was already as the change puts it.
    Result<std::optional<Change>> applied(const Change& change)
    {
        Result<Change> undo = applyChange(job, change);
        if (!undo.ok())
            return undo.problem();
        if (isNone(change, undo.value()))
            return std::optional<Change>();
        assert(keepsItsPromises(job));
        note(touchedBy(change));
        return std::optional(std::move(undo.value()));
    }

    Result<std::optional<Change>> appliedAndKept(const JournalEdit& edit)
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

    // Undo and redo: they put back what was there, so that nothing is refused.
    Change reapplied(const Change& change, const Words& what)
    {
        merging.clear();
        Result<std::optional<Change>> undo = appliedAndKept({what, {}, change});
        assert(undo.ok() && undo.value());
        return *std::move(undo.value());
    }

    void push(const JournalEdit& edit, Change undo)
    {
        history.push(
            new Edit(edit.what, language, std::move(undo), runOf(edit.merging), // the history's
                     [this](const Change& next, const Words& what) { return reapplied(next, what); }));
    }

    int runOf(const std::string& key)
    {
        if (key.empty() || key != merging)
            ++run;
        merging = key;
        return key.empty() ? -1 : run;
    }

    void note(const Touched& touched)
    {
        ++generation;
        if (touched.wiring)
            wiring = generation;
        if (!untold)
            untold.emplace();
        add(*untold, touched);
    }

    // One signal for a change, or for a walk through the history.
    void tell()
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

    void replaceJob(Job other)
    {
        job = std::move(other);
        merging.clear();
        history.clear();
        note({.rows = {}, .everything = true, .wiring = true});
        tell();
    }

    // ---- The file

    void hold(std::unique_ptr<HeldFile> other)
    {
        file = std::move(other);
        if (file)
            connect(file.get(), &HeldFile::changedOnDisk, &self, &OpenJob::changedOnDisk);
    }

    // Errors: another window's file, what saveBytes says
    std::optional<Problem> write(HeldFile& into)
    {
        const std::string text = jobText(job);
        const FileHash hash{sha256(text)};
        if (!into.hold() && into.isElsewhere())
            return Problem{heldElsewhere, into.path(), otherName};
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

    // Errors: an edit that the job doesn't take; those before it are made
    std::optional<Problem> remake(const Journal& journal)
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
        if (journal.damage || problem)
            keeper.takeUp(file ? JournalStart(file->known()) : JournalStart(start), made);
        else
            keeper.takeUp();
        isRemaking = false;
        tell();
        return problem;
    }

    // ---- Judging

    void take(const Worker::Verdict& verdict)
    {
        if (verdict.snapshot != wiring)
            return; // of a job that is gone
        judged = verdict.judged;
        emit self.judgedChanged();
    }
};

OpenJob::OpenJob(QObject* parent, Judge judge)
    : QObject(parent), inside_(std::make_unique<Inside>(*this, std::move(judge)))
{
    connect(&inside_->history, &QUndoStack::indexChanged, this, [this] { inside_->tell(); });
    connect(&inside_->history, &QUndoStack::cleanChanged, this, &OpenJob::fileChanged);
}

OpenJob::~OpenJob()
{
    inside_->history.disconnect(this);
    inside_->keeper.drop();
}

const Job& OpenJob::job() const
{
    return inside_->job;
}

std::uint64_t OpenJob::generation() const
{
    return inside_->generation;
}

std::optional<Problem> OpenJob::make(const Message& what, const Change& change, const std::string& merging)
{
    const JournalEdit edit{inEveryLanguage(what), merging, change};
    Result<std::optional<Change>> undo = inside_->appliedAndKept(edit);
    if (!undo.ok())
        return undo.problem();
    if (undo.value())
        inside_->push(edit, *std::move(undo.value()));
    return std::nullopt;
}

QUndoStack& OpenJob::history()
{
    return inside_->history;
}

const QUndoStack& OpenJob::history() const
{
    return inside_->history;
}

void OpenJob::setLanguage(Language language)
{
    inside_->language = language;
}

const Judged* OpenJob::judged() const
{
    return inside_->judged.get();
}

// ---- The file

void OpenJob::begin(Job job)
{
    inside_->keeper.drop();
    inside_->hold(nullptr);
    inside_->keeper.lookInFolder();
    inside_->replaceJob(std::move(job));
    emit fileChanged();
}

std::optional<Problem> OpenJob::open(const std::string& path)
{
    const Result<std::string> text = wholeFile(path, mostJsonBytes);
    if (!text.ok())
        return text.problem();
    Result<Job> job = readJob(text.value(), path);
    if (!job.ok())
        return job.problem();
    inside_->keeper.drop();
    inside_->hold(nullptr); // the same file may be opened again: its lock is ours
    inside_->hold(std::make_unique<HeldFile>(path, FileHash{sha256(text.value())}));
    inside_->keeper.lookBeside(*inside_->file);
    inside_->replaceJob(std::move(job.value()));
    emit fileChanged();
    if (inside_->file->isElsewhere())
        emit openElsewhere();
    return std::nullopt;
}

std::optional<Problem> OpenJob::save()
{
    HeldFile* file = inside_->file.get();
    if (!file)
        return Problem{noFileYet, {}, nameOne};
    const bool wasTold = file->isToldOf();
    file->look();
    if (file->isToldOf() && !wasTold)
        return Problem{changedThere, file->path(), lookFirst};
    std::optional<Problem> problem = inside_->write(*file);
    if (!problem)
        emit fileChanged();
    return problem;
}

std::optional<Problem> OpenJob::saveAs(const std::string& path)
{
    if (inside_->file && inside_->file->isSameFile(path))
        return save();
    auto other = std::make_unique<HeldFile>(path, FileHash{});
    if (std::optional<Problem> problem = inside_->write(*other))
        return problem;
    inside_->hold(std::move(other));
    emit fileChanged();
    return std::nullopt;
}

const std::string& OpenJob::path() const
{
    static const std::string none;
    return inside_->file ? inside_->file->path() : none;
}

bool OpenJob::unsaved() const
{
    return !inside_->history.isClean();
}

bool OpenJob::readOnly() const
{
    return inside_->file && !inside_->file->mayWrite();
}

// ---- What an earlier run left

std::optional<OpenJob::Recovered> OpenJob::recoverable() const
{
    const Keeper::Left* left = inside_->keeper.left();
    if (!left)
        return std::nullopt;
    return Recovered{left->journal.edits.size(), left->problem ? left->problem : left->journal.damage};
}

std::optional<Problem> OpenJob::recover()
{
    const Keeper::Left* left = inside_->keeper.left();
    if (!left)
        return std::nullopt;
    if (left->problem)
        return left->problem;
    const Journal journal = left->journal;
    if (journal.job)
        inside_->replaceJob(*journal.job);
    return inside_->remake(journal);
}

void OpenJob::forgetRecoverable()
{
    inside_->keeper.forgetLeft();
}

} // namespace doorloom
