#include "file/jobfile.h"

#include "base/wholefile.h"
#include "edit/change.h"
#include "file/jobshape.h"
#include "file/upgrades.h"

#include <algorithm>
#include <deque>
#include <utility>
#include <vector>

namespace doorloom {

namespace {

constexpr Text noJobFile = {.en = "This is no job file: the key 'doorloom' is missing.",
                            .es = "Esto no es un archivo de trabajo: falta la clave 'doorloom'."};
constexpr Text openJobFile = {.en = "Open a file that this program has saved (*.doorjob).",
                              .es = "Abra un archivo guardado por este programa (*.doorjob)."};
constexpr Text newerFile = {
    .en = "The file has version {version}; this program reads versions up to {newest}.",
    .es = "El archivo tiene la versión {version}; este programa lee hasta la {newest}."};
constexpr Text useNewer = {.en = "Open it with a newer version of this program.",
                           .es = "Ábralo con una versión más nueva de este programa."};
constexpr Text numberTwice = {.en = "The id {number} is used twice.",
                              .es = "El id {number} se usa dos veces."};
constexpr Text giveOther = {.en = "Give this row an id of its own, and raise nextNumber above it.",
                            .es = "Dé a esta fila un id propio y suba nextNumber por encima."};

// A row that was read, with where it stands.
struct ReadRow {
    std::uint32_t number;
    const Json* at;
    Step step;
};

class JobReader {
public:
    JobReader(const Json& file, const std::string& name) : file_(file), reader_(file, name) {}

    Result<Job> job()
    {
        Job job;
        if (!readRows(job) || !noNumberTwice() || !putInto(job))
            return *reader_.problem;
        return job;
    }

private:
    bool readRows(Job& job)
    {
        const Json* counter = reader_.needed(file_, "nextNumber");
        double next = 0;
        if (!counter || !reader_.wholeAt(*counter, 1, mostNextNumber, next))
            return false;
        reader_.idsBelow = static_cast<std::uint32_t>(next);
        std::vector<std::string_view> known = {"doorloom", "nextNumber"};
        bool good = true;
        forEachTable(job, [&]<class Row>(const char* name, const Table<Row>&) {
            known.push_back(name);
            const Json* rows = file_.find(name);
            good = good && (!rows || readTable<Row>(*rows));
        });
        return good && reader_.knownKeys(file_, known);
    }

    template <class Row> bool readTable(const Json& list)
    {
        const Json::Array* items = reader_.arrayAt(list);
        if (!items)
            return false;
        for (const Json& item : *items) {
            Row row;
            if (!reader_.read(item, row))
                return false;
            const Id<Row> id = row.id;
            rows_.push_back({id.number, &item, Put<Row>{id, std::move(row)}});
        }
        return true;
    }

    // Puts them in order too: tables grow at their end.
    bool noNumberTwice()
    {
        for (ReadRow& row : rows_)
            inOrder_.push_back(&row);
        std::stable_sort(inOrder_.begin(), inOrder_.end(),
                         [](const ReadRow* a, const ReadRow* b) { return a->number < b->number; });
        const auto twice =
            std::adjacent_find(inOrder_.begin(), inOrder_.end(),
                               [](const ReadRow* a, const ReadRow* b) { return a->number == b->number; });
        return twice == inOrder_.end() ||
               reader_.refuse(*twice[1]->at, {numberTwice, {{"number", std::to_string((*twice)->number)}}},
                              giveOther);
    }

    bool putInto(Job& job)
    {
        Change change;
        change.steps.reserve(inOrder_.size());
        for (ReadRow* row : inOrder_)
            change.steps.push_back(std::move(row->step));
        job.nextNumber = reader_.idsBelow;
        std::uint32_t refused = 0;
        const Result<Change> undo = applyChange(job, change, refused);
        if (undo.ok())
            return true;
        Problem problem = undo.problem();
        problem.where = reader_.where(rowNumbered(refused));
        return reader_.refuse(std::move(problem));
    }

    const Json& rowNumbered(std::uint32_t number) const
    {
        const auto row =
            std::lower_bound(inOrder_.begin(), inOrder_.end(), number,
                             [](const ReadRow* each, std::uint32_t n) { return each->number < n; });
        return row != inOrder_.end() && (*row)->number == number ? *(*row)->at : file_;
    }

    const Json& file_;
    JsonReader reader_;
    std::deque<ReadRow> rows_; // a row is large: it stays where it was read
    std::vector<ReadRow*> inOrder_;
};

// Brings the tree to the newest version.
std::optional<Problem> upgrade(Json& file, const std::string& name)
{
    JsonReader reader(file, name);
    if (!reader.objectAt(file))
        return reader.problem;
    const Json* written = file.find("doorloom");
    double version = 0;
    if (!written)
        reader.refuse(file, noJobFile, openJobFile);
    else if (const auto* number = std::get_if<double>(&written->value); number && *number > jobFileVersion)
        reader.refuse(
            *written,
            {newerFile, {{"version", numberText(*number)}, {"newest", std::to_string(jobFileVersion)}}},
            useNewer);
    else if (reader.wholeAt(*written, 1, jobFileVersion, version))
        upgradeFrom(static_cast<int>(version), file);
    return reader.problem;
}

} // namespace

Result<Job> readJob(std::string_view text, const std::string& name)
{
    Result<Json> file = parseJson(text, name);
    if (!file.ok())
        return file.problem();
    if (std::optional<Problem> problem = upgrade(file.value(), name))
        return *std::move(problem);
    return JobReader(file.value(), name).job();
}

Result<Job> readJobFile(const std::string& path)
{
    const Result<std::string> text = wholeFile(path, mostJsonBytes);
    return text.ok() ? readJob(text.value(), path) : text.problem();
}

} // namespace doorloom
