#include "openjob/keeper.h"

#include "base/wholefile.h"

#include <QDir>
#include <QStandardPaths>

#include <filesystem>
#include <system_error>
#include <utility>

namespace doorloom {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t mostJournalBytes = std::size_t(1024) * 1024 * 1024;
constexpr Text keptThere = {.en = "{remedy} They are kept in {file}.",
                            .es = "{remedy} Se conservan en {file}."};

QDir unsavedFolder()
{
    return QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) + "/doorloom/unsaved";
}

std::unique_ptr<QLockFile> lockOf(const std::string& journal)
{
    auto lock = std::make_unique<QLockFile>(QString::fromStdString(journal + ".lock"));
    lock->setStaleLockTime(0);
    return lock;
}

// Out: its new name; the old one where it can't be moved.
std::string setAside(const std::string& path)
{
    std::error_code error;
    std::string name = path + ".kept";
    for (int count = 2; fs::exists(name, error); ++count)
        name = path + ".kept-" + std::to_string(count);
    fs::rename(path, name, error);
    return error ? path : name;
}

} // namespace

Problem keptIn(const std::string& path, Problem problem)
{
    problem.remedy = {keptThere, {{"remedy", std::vector<Message>{problem.remedy}}, {"file", path}}};
    return problem;
}

// Out: whether anything was left there.
bool Keeper::lookAt(const std::string& path, const std::optional<FileHash>& file)
{
    const Result<std::string> text = wholeFile(path, mostJournalBytes);
    if (!text.ok())
        return false;
    Result<Journal> journal = readJournal(text.value(), path, file);
    if (!journal.ok()) {
        left_ = Left{{}, keptIn(setAside(path), journal.problem()), path, nullptr};
        return true;
    }
    if (journal.value().edits.empty() && !journal.value().damage) {
        std::error_code error;
        fs::remove(path, error);
        return false;
    }
    left_ = Left{std::move(journal.value()), std::nullopt, path, nullptr};
    return true;
}

void Keeper::lookBeside(const HeldFile& file)
{
    left_.reset();
    if (file.mayWrite())
        lookAt(file.journalPath(), file.known());
}

void Keeper::lookInFolder()
{
    left_.reset();
    const QDir folder = unsavedFolder();
    for (const QString& name : folder.entryList({"*.journal"}, QDir::Files, QDir::Name)) {
        const std::string path = folder.filePath(name).toStdString();
        auto lock = lockOf(path);
        if (lock->tryLock(0) && lookAt(path, std::nullopt)) {
            left_->lock = std::move(lock);
            return;
        }
    }
}

void Keeper::forgetLeft()
{
    std::error_code error;
    if (left_ && !left_->problem)
        fs::remove(left_->path, error);
    left_.reset();
}

void Keeper::takeUp()
{
    lock_ = std::move(left_->lock);
    startIn(left_->path);
    writer_->resume(left_->journal.goodBytes, left_->journal.nextNumber);
    left_.reset();
}

std::string Keeper::takeUp(JournalStart start, const std::vector<JournalEdit>& made)
{
    lock_ = std::move(left_->lock);
    std::string kept = setAside(left_->path);
    startIn(left_->path);
    writer_->start(std::move(start));
    for (const JournalEdit& edit : made)
        writer_->add(edit);
    left_.reset();
    return kept;
}

void Keeper::startIn(std::string path)
{
    writer_ = std::make_unique<JournalWriter>(std::move(path), failed_);
}

void Keeper::begin(const HeldFile* file, Job before)
{
    left_.reset(); // nobody has asked for it yet: it stays where it is
    std::error_code error;
    if (file && file->mayWrite() && !fs::exists(file->journalPath(), error)) {
        startIn(file->journalPath());
        writer_->start(file->known());
    } else {
        startInFolder();
        writer_->start(std::move(before));
    }
}

void Keeper::keep(JournalEdit edit)
{
    writer_->add(std::move(edit));
}

// Under the first name that nobody uses.
void Keeper::startInFolder()
{
    const QDir folder = unsavedFolder();
    folder.mkpath(".");
    for (int count = 1; !writer_; ++count) {
        const std::string path = folder.filePath(QString("job-%1.journal").arg(count)).toStdString();
        lock_ = lockOf(path);
        const bool isElsewhere = !lock_->tryLock(0) && lock_->error() == QLockFile::LockFailedError;
        std::error_code error;
        if (!isElsewhere && !fs::exists(path, error))
            startIn(path);
    }
}

void Keeper::aboutToSave(const FileHash& file)
{
    if (!writer_)
        return;
    writer_->mark(file);
    writer_->settle();
}

void Keeper::drop()
{
    if (writer_)
        writer_->remove();
    writer_.reset();
    lock_.reset();
    left_.reset();
}

} // namespace doorloom
