#include "catalogue/catalogue.h"

#include "base/json.h"
#include "base/wholefile.h"
#include "catalogue/kindjson.h"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace doorloom {

namespace {

constexpr Text noFolder = {.en = "The catalogue's folder cannot be read: {reason}.",
                           .es = "No se puede leer la carpeta del catálogo: {reason}."};
constexpr Text nameFolder = {.en = "Name the folder that holds the kinds (*.json).",
                             .es = "Indique la carpeta que contiene los tipos (*.json)."};
constexpr Text otherName = {.en = "The kind '{name}' does not bear its file's name.",
                            .es = "El tipo '{name}' no lleva el nombre de su archivo."};
constexpr Text renameFile = {.en = "Call the file {name}.json, or the kind as the file.",
                             .es = "Llame al archivo {name}.json, o al tipo como el archivo."};

namespace fs = std::filesystem;

Result<std::vector<fs::path>> kindFiles(const std::string& folder)
{
    std::error_code error;
    std::vector<fs::path> files;
    for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error))
        if (entry->path().extension() == ".json")
            files.push_back(entry->path());
    if (error)
        return Problem{{noFolder, {{"reason", error.message()}}}, folder, nameFolder};
    std::sort(files.begin(), files.end(), [](const fs::path& a, const fs::path& b) { return a.stem() < b.stem(); });
    return files;
}

Result<Kind> readKindFile(const fs::path& file)
{
    const Result<std::string> text = wholeFile(file.string(), mostJsonBytes);
    if (!text.ok())
        return text.problem();
    const Result<Json> json = parseJson(text.value(), file.string());
    if (!json.ok())
        return json.problem();
    Result<Kind> kind = readCheckedKind(json.value(), file.string(), "");
    if (kind.ok() && kind.value().name != file.stem().string())
        return Problem{{otherName, {{"name", kind.value().name}}},
                       file.string(),
                       {renameFile, {{"name", kind.value().name}}}};
    return kind;
}

} // namespace

const Kind* Catalogue::find(const std::string& name) const
{
    const auto found =
        std::find_if(kinds.begin(), kinds.end(), [&](const Kind& kind) { return kind.name == name; });
    return found == kinds.end() ? nullptr : &*found;
}

Result<Catalogue> readCatalogue(const std::string& folder)
{
    const Result<std::vector<fs::path>> files = kindFiles(folder);
    if (!files.ok())
        return files.problem();
    Catalogue catalogue;
    for (const fs::path& file : files.value()) {
        Result<Kind> kind = readKindFile(file);
        if (!kind.ok())
            return kind.problem();
        catalogue.kinds.push_back(std::move(kind.value()));
    }
    return catalogue;
}

} // namespace doorloom
