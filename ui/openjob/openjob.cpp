#include "openjob/openjob.h"

#include "base/json.h"
#include "base/sha256.h"
#include "base/wholefile.h"
#include "file/jobfile.h"
#include "openjob/inside.h"

#include <utility>

namespace doorloom {

namespace {

constexpr Text noFileYet = {.en = "The job has no file yet.", .es = "El trabajo aún no tiene archivo."};
constexpr Text nameOne = {.en = "Save it under a name.", .es = "Guárdelo con un nombre."};

constexpr Text changedThere = {.en = "Somebody else has changed this file since it was opened here.",
                               .es = "Alguien ha cambiado este archivo desde que se abrió aquí."};
constexpr Text lookFirst = {.en = "Save under another name, or save again to replace what is there now.",
                            .es = "Guarde con otro nombre o guarde otra vez para sustituir lo que hay."};

Words inEveryLanguage(const Message& message)
{
    return {inWords(message, Language::English), inWords(message, Language::Spanish)};
}

} // namespace

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
