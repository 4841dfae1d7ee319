#include "file/journalwriter.h"

#include <cerrno>
#include <chrono>
#include <condition_variable>
#include <filesystem>
#include <mutex>
#include <system_error>
#include <thread>
#include <utility>

#include <fcntl.h>
#include <unistd.h>

namespace doorloom {

namespace {

constexpr Text notKept = {
    .en = "Unsaved edits can't be kept for the case of a crash: {reason}.",
    .es = "No se pueden conservar las ediciones sin guardar por si hay un fallo: {reason}."};
constexpr Text saveNow = {
    .en = "Save the job now, and make room or mend the folder's permissions.",
    .es = "Guarde el trabajo ahora y libere espacio o corrija los permisos de la carpeta."};
constexpr std::chrono::seconds untilNextTry{5};

// The journal's file, as far as it is good.
// Owns: the descriptor.
class GoodFile {
public:
    explicit GoodFile(std::string path) : path_(std::move(path)) {}
    ~GoodFile() { close(); }
    GoodFile(const GoodFile&) = delete;
    GoodFile& operator=(const GoodFile&) = delete;

    const std::string& path() const { return path_; }

    void keepOnly(std::size_t bytes) { good_ = static_cast<off_t>(bytes), isCut_ = false; }

    // All of it, behind what is good; false: errno says why, and nothing more is good than before.
    bool append(std::string_view bytes)
    {
        if (!open() || !cut())
            return false;
        if (writeAt(good_, bytes) && ::fdatasync(descriptor_) == 0) {
            good_ += static_cast<off_t>(bytes.size());
            return true;
        }
        const int error = errno;
        isCut_ = false;
        cut();
        errno = error;
        return false;
    }

    void remove()
    {
        close();
        ::unlink(path_.c_str());
        keepOnly(0);
    }

private:
    bool open()
    {
        if (descriptor_ >= 0)
            return true;
        descriptor_ = ::open(path_.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC, 0666);
        if (descriptor_ >= 0)
            syncFolder();
        return descriptor_ >= 0;
    }

    bool cut()
    {
        isCut_ = isCut_ || ::ftruncate(descriptor_, good_) == 0;
        return isCut_;
    }

    bool writeAt(off_t at, std::string_view bytes) const
    {
        while (!bytes.empty()) {
            const ssize_t written = ::pwrite(descriptor_, bytes.data(), bytes.size(), at);
            if (written < 0 && errno == EINTR)
                continue;
            if (written < 0)
                return false;
            bytes.remove_prefix(static_cast<std::size_t>(written));
            at += written;
        }
        return true;
    }

    // So that the name is there after a power cut too. Not every file system can.
    void syncFolder() const
    {
        const std::string folder = std::filesystem::path(path_).parent_path().string();
        const int descriptor =
            ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        if (descriptor < 0)
            return;
        ::fsync(descriptor);
        ::close(descriptor);
    }

    void close()
    {
        if (descriptor_ >= 0)
            ::close(std::exchange(descriptor_, -1));
    }

    std::string path_;
    int descriptor_ = -1;
    off_t good_ = 0;
    bool isCut_ = false; // to what is good
};

struct Resume {
    std::size_t goodBytes;
    std::uint64_t number;
};
struct Remove {};
struct Start {
    JournalStart start;
};
using Task = std::variant<Start, Resume, JournalEdit, FileHash, Remove>;

} // namespace

struct JournalWriter::Inside {
    GoodFile file;
    std::function<void(const Problem&)> failed;

    // ---- Of the thread alone
    std::string unwritten;
    std::uint64_t number = 1; // of the next record
    bool isFailing = false;

    // ---- Of both
    std::mutex mutex;
    std::condition_variable given, tried;
    std::vector<Task> tasks;
    bool isBusy = false, isEnding = false;
    std::thread thread; // last: it uses the rest

    Inside(std::string path, std::function<void(const Problem&)> tell)
        : file(std::move(path)), failed(std::move(tell)), thread([this] { run(); })
    {
    }

    void give(Task task)
    {
        {
            const std::lock_guard lock(mutex);
            tasks.push_back(std::move(task));
        }
        given.notify_one();
    }

    void run()
    {
        while (true) {
            bool isLast = false;
            for (Task& task : nextTasks(isLast))
                std::visit([this](auto& each) { take(each); }, task);
            write();
            {
                const std::lock_guard lock(mutex);
                isBusy = false;
            }
            tried.notify_all();
            if (isLast)
                return;
        }
    }

    std::vector<Task> nextTasks(bool& isLast)
    {
        std::unique_lock lock(mutex);
        const auto isAwaited = [this] { return isEnding || !tasks.empty(); };
        if (isFailing)
            given.wait_for(lock, untilNextTry, isAwaited);
        else
            given.wait(lock, isAwaited);
        isBusy = true;
        isLast = isEnding;
        return std::exchange(tasks, {});
    }

    void take(const Start& start)
    {
        file.keepOnly(0);
        unwritten = journalRecord(1, start.start);
        number = 2;
    }
    void take(const Resume& resume)
    {
        file.keepOnly(resume.goodBytes);
        unwritten.clear();
        number = resume.number;
    }
    void take(const JournalEdit& edit) { unwritten += journalRecord(number++, edit); }
    void take(const FileHash& hash) { unwritten += journalRecord(number++, JournalStart(hash)); }
    void take(const Remove&)
    {
        file.remove();
        unwritten.clear();
        isFailing = false;
    }

    void write()
    {
        if (unwritten.empty())
            return;
        if (file.append(unwritten)) {
            unwritten.clear();
            isFailing = false;
            return;
        }
        const int error = errno;
        if (!std::exchange(isFailing, true))
            failed({{notKept, {{"reason", std::generic_category().message(error)}}}, file.path(), saveNow});
    }
};

JournalWriter::JournalWriter(std::string path, std::function<void(const Problem&)> failed)
    : inside_(std::make_unique<Inside>(std::move(path), std::move(failed)))
{
}

JournalWriter::~JournalWriter()
{
    {
        const std::lock_guard lock(inside_->mutex);
        inside_->isEnding = true;
    }
    inside_->given.notify_one();
    inside_->thread.join();
}

void JournalWriter::start(JournalStart start)
{
    inside_->give(Start{std::move(start)});
}

void JournalWriter::resume(std::size_t goodBytes, std::uint64_t number)
{
    inside_->give(Resume{goodBytes, number});
}

void JournalWriter::add(JournalEdit edit)
{
    inside_->give(std::move(edit));
}

void JournalWriter::mark(FileHash file)
{
    inside_->give(std::move(file));
}

void JournalWriter::remove()
{
    inside_->give(Remove{});
}

void JournalWriter::settle()
{
    std::unique_lock lock(inside_->mutex);
    inside_->tried.wait(lock, [this] { return inside_->tasks.empty() && !inside_->isBusy; });
}

const std::string& JournalWriter::path() const
{
    return inside_->file.path();
}

} // namespace doorloom
