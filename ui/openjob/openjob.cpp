#include "openjob/openjob.h"

#include "file/jobfile.h"
#include "openjob/edit.h"
#include "openjob/touched.h"
#include "openjob/worker.h"

#include <QFileInfo>

#include <algorithm>
#include <cassert>
#include <utility>

namespace doorloom {

namespace {

constexpr Text noFileYet = {.en = "The job has no file yet.", .es = "El trabajo aún no tiene archivo."};
constexpr Text nameOne = {.en = "Save it under a name.", .es = "Guárdelo con un nombre."};

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

    std::string path;
    Worker worker; // last: its thread ends before the rest goes

    Inside(OpenJob& open, Judge judge)
        : self(open), worker(std::move(judge), [this](Worker::Verdict verdict) {
              QMetaObject::invokeMethod(&self, [this, verdict = std::move(verdict)] { take(verdict); });
          })
    {
    }

    // ---- Changing

    Result<Change> applied(const Change& change)
    {
        Result<Change> undo = applyChange(job, change);
        if (undo.ok() && !isNone(change, undo.value())) {
            assert(keepsItsPromises(job));
            note(touchedBy(change));
        }
        return undo;
    }

    // Undo and redo: they put back what was there, so that nothing is refused.
    Change reapplied(const Change& change)
    {
        merging.clear();
        Result<Change> undo = applied(change);
        assert(undo.ok());
        return std::move(undo.value());
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
        if (!untold)
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
    Result<Change> undo = inside_->applied(change);
    if (!undo.ok())
        return undo.problem();
    if (isNone(change, undo.value()))
        return std::nullopt;
    const QString words = QString::fromStdString(inWords(what, inside_->language));
    inside_->history.push(new Edit(words, std::move(undo.value()), inside_->runOf(merging), // the history's
                                   [this](const Change& next) { return inside_->reapplied(next); }));
    return std::nullopt;
}

QUndoStack& OpenJob::history()
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
    inside_->path.clear();
    inside_->replaceJob(std::move(job));
    inside_->tell();
    emit fileChanged();
}

std::optional<Problem> OpenJob::open(const std::string& path)
{
    Result<Job> job = readJobFile(path);
    if (!job.ok())
        return job.problem();
    inside_->path = path;
    inside_->replaceJob(std::move(job.value()));
    inside_->tell();
    emit fileChanged();
    return std::nullopt;
}

std::optional<Problem> OpenJob::save()
{
    if (inside_->path.empty())
        return Problem{noFileYet, {}, nameOne};
    return saveAs(inside_->path);
}

std::optional<Problem> OpenJob::saveAs(const std::string& path)
{
    if (const Result<Done> done = saveJobFile(inside_->job, path); !done.ok())
        return done.problem();
    inside_->path = path;
    inside_->merging.clear();
    inside_->history.setClean();
    emit fileChanged();
    return std::nullopt;
}

const std::string& OpenJob::path() const
{
    return inside_->path;
}

bool OpenJob::unsaved() const
{
    return !inside_->history.isClean();
}

bool OpenJob::readOnly() const
{
    return !inside_->path.empty() && !QFileInfo(QString::fromStdString(inside_->path)).isWritable();
}

std::optional<OpenJob::Recovered> OpenJob::recoverable() const
{
    return std::nullopt;
}

std::optional<Problem> OpenJob::recover()
{
    return std::nullopt;
}

void OpenJob::forgetRecoverable() {}

} // namespace doorloom
