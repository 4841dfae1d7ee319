#include "base/wholefile.h"

#include <cerrno>
#include <cstdio>
#include <memory>
#include <system_error>

namespace doorloom {

namespace {

constexpr Text unreadable = {.en = "The file cannot be read: {reason}.",
                             .es = "No se puede leer el archivo: {reason}."};
constexpr Text lookForIt = {.en = "Look whether it is there and may be read.",
                            .es = "Compruebe que existe y que se puede leer."};
constexpr Text tooLarge = {.en = "The file has more than {most} MB.",
                           .es = "El archivo tiene más de {most} MB."};
constexpr Text takeOther = {.en = "No file of this program is so large: take another one.",
                            .es = "Ningún archivo de este programa es tan grande: use otro."};

Problem unreadableFor(int error, const std::string& path)
{
    return {{unreadable, {{"reason", std::generic_category().message(error)}}}, path, lookForIt};
}

} // namespace

Result<std::string> wholeFile(const std::string& path, std::size_t mostBytes)
{
    struct Close {
        void operator()(std::FILE* file) const { std::fclose(file); }
    };
    const std::unique_ptr<std::FILE, Close> file(std::fopen(path.c_str(), "rb"));
    if (!file)
        return unreadableFor(errno, path);
    std::string bytes;
    constexpr std::size_t piece = std::size_t(256) * 1024;
    for (std::size_t got = piece; got == piece;) { // read bit by bit: a pipe or device does not tell its size
        const std::size_t had = bytes.size();
        bytes.resize(had + piece);
        got = std::fread(bytes.data() + had, 1, piece, file.get());
        bytes.resize(had + got);
        if (std::ferror(file.get()))
            return unreadableFor(errno, path);
        if (bytes.size() > mostBytes)
            return Problem{{tooLarge, {{"most", std::to_string(mostBytes / 1024 / 1024)}}}, path, takeOther};
    }
    return bytes;
}

} // namespace doorloom
