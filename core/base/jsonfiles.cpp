#include "base/jsonfiles.h"

#include "base/wholefile.h"

#include <algorithm>
#include <system_error>

namespace doorloom {

namespace fs = std::filesystem;

Result<std::vector<fs::path>> jsonFilesIn(const std::string& folder, Text notRead, Text remedy)
{
    std::error_code error;
    std::vector<fs::path> files;
    for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error))
        if (entry->path().extension() == ".json")
            files.push_back(entry->path());
    if (error)
        return Problem{{notRead, {{"reason", error.message()}}}, folder, remedy};
    std::sort(files.begin(), files.end(), [](const fs::path& a, const fs::path& b) { return a.stem() < b.stem(); });
    return files;
}

Result<Json> jsonIn(const fs::path& file)
{
    const Result<std::string> text = wholeFile(file.string(), mostJsonBytes);
    if (!text.ok())
        return text.problem();
    return parseJson(text.value(), file.string());
}

} // namespace doorloom
