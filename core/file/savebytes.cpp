#include "file/jobfile.h"

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace doorloom {

namespace {

constexpr Text notSaved = {.en = "The file cannot be saved: {reason}.",
                           .es = "No se puede guardar el archivo: {reason}."};
constexpr Text makeRoom = {.en = "Make room or save elsewhere; what was there before is unchanged.",
                           .es = "Libere espacio o guarde en otro lugar; lo que había antes sigue igual."};
constexpr Text makeFolder = {.en = "Make the folder {folder} first, or save elsewhere.",
                             .es = "Cree antes la carpeta {folder} o guarde en otro lugar."};
constexpr Text getLeave = {.en = "Save where you may write; what was there before is unchanged.",
                           .es = "Guarde donde pueda escribir; lo que había antes sigue igual."};
constexpr Text saveElsewhere = {.en = "Save elsewhere; what was there before is unchanged.",
                                .es = "Guarde en otro lugar; lo que había antes sigue igual."};

namespace fs = std::filesystem;

std::string folderOf(const std::string& path)
{
    const std::string folder = fs::path(path).parent_path().string();
    return folder.empty() ? "." : folder;
}

Message remedyFor(int error, const std::string& path)
{
    switch (error) {
    case ENOSPC:
    case EDQUOT:
    case EFBIG:
        return makeRoom;
    case ENOENT:
    case ENOTDIR:
        return {makeFolder, {{"folder", folderOf(path)}}};
    case EACCES:
    case EPERM:
    case EROFS:
        return getLeave;
    default:
        return saveElsewhere;
    }
}

// A file beside another one, gone at the end unless it has taken its place.
// Owns: the descriptor, and the file until then.
class FileBeside {
public:
    explicit FileBeside(std::string target) : target_(std::move(target)) {}
    ~FileBeside()
    {
        if (descriptor_ >= 0)
            ::close(descriptor_);
        if (!path_.empty())
            ::unlink(path_.c_str());
    }
    FileBeside(const FileBeside&) = delete;
    FileBeside& operator=(const FileBeside&) = delete;

    // Each of these is false when it fails; errno says why.
    bool open()
    {
        struct stat before = {};
        const bool replaces = ::stat(target_.c_str(), &before) == 0;
        if (replaces && ::access(target_.c_str(), W_OK) != 0)
            return false;
        for (int attempt = 0; descriptor_ < 0; ++attempt) {
            std::string path = fmt::format("{}.{}-{}.part", target_, ::getpid(), attempt);
            descriptor_ = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
            if (descriptor_ >= 0)
                path_ = std::move(path);
            else if (errno != EEXIST || attempt == mostAttempts)
                return false;
        }
        return !replaces || ::fchmod(descriptor_, before.st_mode & 07777u) == 0;
    }

    bool write(std::string_view bytes)
    {
        while (!bytes.empty()) {
            const ssize_t written = ::write(descriptor_, bytes.data(), bytes.size());
            if (written < 0 && errno == EINTR)
                continue;
            if (written < 0)
                return false;
            bytes.remove_prefix(static_cast<std::size_t>(written));
        }
        return true;
    }

    bool close()
    {
        if (::fsync(descriptor_) != 0)
            return false;
        return ::close(std::exchange(descriptor_, -1)) == 0;
    }

    bool takePlace()
    {
        if (::rename(path_.c_str(), target_.c_str()) != 0)
            return false;
        path_.clear();
        syncFolder();
        return true;
    }

private:
    static constexpr int mostAttempts = 100;

    // Not every file system can; the new file is whole in any case.
    void syncFolder() const
    {
        const int folder = ::open(folderOf(target_).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        if (folder < 0)
            return;
        ::fsync(folder);
        ::close(folder);
    }

    std::string target_, path_;
    int descriptor_ = -1;
};

// The file that a symbolic link leads to, so that the link stays one.
std::string behindLinks(const std::string& path)
{
    std::error_code error;
    const fs::path real = fs::canonical(path, error);
    return error ? path : real.string();
}

} // namespace

Result<Done> saveBytes(std::string_view bytes, const std::string& path)
{
    FileBeside file(behindLinks(path));
    if (file.open() && file.write(bytes) && file.close() && file.takePlace())
        return Done{};
    const int error = errno;
    return Problem{
        {notSaved, {{"reason", std::generic_category().message(error)}}}, path, remedyFor(error, path)};
}

} // namespace doorloom
