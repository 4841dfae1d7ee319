#include "file/ownshelf.h"

#include "base/jsonfiles.h"
#include "catalogue/catalogue.h"
#include "catalogue/kindjson.h"
#include "edit/rownames.h"
#include "file/jobfile.h"

#include <filesystem>
#include <system_error>

namespace doorloom {

namespace {

namespace fs = std::filesystem;

constexpr Text notRead = {.en = "The folder of your own kinds can't be read: {reason}.",
                          .es = "No se puede leer la carpeta de sus tipos: {reason}."};
constexpr Text allowReading = {.en = "Give yourself the right to read it.",
                               .es = "Dése permiso para leerla."};

} // namespace

OwnShelf readOwnShelf(const std::string& folder)
{
    OwnShelf shelf;
    std::error_code error;
    if (!fs::exists(folder, error) && !error)
        return shelf;
    const Result<std::vector<fs::path>> files = jsonFilesIn(folder, notRead, allowReading);
    if (!files.ok())
        return {{}, {files.problem()}};
    for (const fs::path& file : files.value()) {
        Result<Kind> kind = readNamedKindFile(file.string());
        if (kind.ok())
            shelf.kinds.push_back(std::move(kind.value()));
        else
            shelf.unread.push_back(kind.problem());
    }
    return shelf;
}

Result<Done> writeKindFile(const Kind& kind, const std::string& path)
{
    if (const std::vector<Problem> found = checkKind(kind); !found.empty())
        return found.front();
    return saveBytes(kindText(kind) + "\n", path);
}

Result<Done> keepOnOwnShelf(const std::string& folder, const Kind& kind)
{
    if (const std::vector<Problem> found = checkKind(kind); !found.empty())
        return found.front();
    std::error_code error;
    fs::create_directories(folder, error);
    if (error)
        return problemAt(folder,
                         {.en = "The folder of your own kinds can't be made: {reason}.",
                          .es = "No se puede crear la carpeta de sus tipos: {reason}."},
                         {.en = "Free the name, or give yourself the right to write there.",
                          .es = "Libere el nombre, o dése permiso para escribir ahí."},
                         {{"reason", error.message()}});
    const std::string path = (fs::path(folder) / (kind.name + ".json")).string();
    if (fs::exists(path, error) && !readNamedKindFile(path).ok())
        return problemAt(path,
                         {.en = "The file that is there can't be read as a kind.",
                          .es = "El archivo que está ahí no se lee como tipo."},
                         {.en = "Move it away first, or give this kind another name.",
                          .es = "Muévalo antes, o dé a este tipo otro nombre."},
                         {});
    return writeKindFile(kind, path);
}

} // namespace doorloom
