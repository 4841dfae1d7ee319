#include "file/jobfile.h"
#include "verbs/verb.h"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace doorloom {
namespace {

constexpr std::string_view empty = "empty";

constexpr Text alreadyThere = {.en = "The file is there already.", .es = "El archivo ya existe."};
constexpr Text nameAnother = {.en = "Name another file, or move this one away first.",
                              .es = "Indique otro archivo, o mueva este primero."};
constexpr Text noSample = {.en = "There is no sample '{sample}'.", .es = "No existe la muestra '{sample}'."};
constexpr Text samplesThere = {.en = "Use one of: {samples}.", .es = "Use una de: {samples}."};

// The names of the sample jobs, 'empty' first, then by name.
std::vector<std::string> sampleNames()
{
    std::vector<std::string> names;
    std::error_code error;
    for (const auto& entry : std::filesystem::directory_iterator(DOORLOOM_SAMPLES, error))
        if (entry.path().extension() == ".doorjob")
            names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    names.insert(names.begin(), std::string(empty));
    return names;
}

Result<Job> jobFrom(const std::string& sample)
{
    if (sample == empty)
        return Job{};
    const std::vector<std::string> names = sampleNames();
    if (std::find(names.begin(), names.end(), sample) != names.end())
        return readJobFile(std::string(DOORLOOM_SAMPLES) + "/" + sample + ".doorjob");
    std::string list;
    for (const std::string& name : names)
        list += (list.empty() ? "" : ", ") + name;
    return Problem{.what = {noSample, {{"sample", sample}}},
                   .where = "--from",
                   .remedy = {samplesThere, {{"samples", list}}}};
}

Reply runNew(const Request& request)
{
    const std::string& out = request.words.front();
    std::error_code error;
    if (std::filesystem::exists(std::filesystem::symlink_status(out, error)))
        return refusal({.what = alreadyThere, .where = out, .remedy = nameAnother}, request.language);
    const Result<Job> job = jobFrom(*request.find("--from"));
    if (!job.ok())
        return refusal(job.problem(), request.language);
    const Result<Done> saved = saveJobFile(job.value(), out);
    if (!saved.ok())
        return refusal(saved.problem(), request.language);
    return wrote(out, request.language);
}

constexpr VerbOption options[] = {{.name = "--from", .value = "SAMPLE|empty", .required = true}};

} // namespace

extern const Verb newVerb;
const Verb newVerb = {
    .name = "new",
    .words = "OUT",
    .fewestWords = 1,
    .mostWords = 1,
    .options = options,
    .purpose =
        {.en = "Writes a new job file, empty or from a sample. Never writes over a file.",
         .es = "Escribe un archivo de trabajo nuevo, vacío o de una muestra. Nunca sobrescribe un archivo."},
    .run = runNew,
};

} // namespace doorloom
