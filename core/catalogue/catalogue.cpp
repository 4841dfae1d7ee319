#include "catalogue/catalogue.h"

#include "base/jsonfiles.h"
#include "catalogue/kindjson.h"

#include <algorithm>

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

} // namespace

const Kind* Catalogue::find(const std::string& name) const
{
    const auto found =
        std::find_if(kinds.begin(), kinds.end(), [&](const Kind& kind) { return kind.name == name; });
    return found == kinds.end() ? nullptr : &*found;
}

Result<Kind> readKindFile(const std::string& path)
{
    const Result<Json> json = jsonIn(path);
    return json.ok() ? readCheckedKind(json.value(), path, "") : json.problem();
}

Result<Kind> readNamedKindFile(const std::string& path)
{
    Result<Kind> kind = readKindFile(path);
    if (kind.ok() && kind.value().name != fs::path(path).stem().string())
        return Problem{
            {otherName, {{"name", kind.value().name}}}, path, {renameFile, {{"name", kind.value().name}}}};
    return kind;
}

Result<Catalogue> readCatalogue(const std::string& folder)
{
    const Result<std::vector<fs::path>> files = jsonFilesIn(folder, noFolder, nameFolder);
    if (!files.ok())
        return files.problem();
    Catalogue catalogue;
    for (const fs::path& file : files.value()) {
        Result<Kind> kind = readNamedKindFile(file.string());
        if (!kind.ok())
            return kind.problem();
        catalogue.kinds.push_back(std::move(kind.value()));
    }
    return catalogue;
}

} // namespace doorloom
