#include "file/journal.h"

#include "base/sha256.h"
#include "catalogue/kindshape.h"
#include "file/changeshape.h"
#include "file/jobfile.h"
#include "file/journalline.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace doorloom {

template <>
inline constexpr auto shapeOf<JournalEdit> = std::tuple(may("what", &JournalEdit::what),
                                                        may("merging", &JournalEdit::merging),
                                                        must("change", &JournalEdit::change));

namespace {

constexpr Text otherFile = {
    .en = "These unsaved edits were made to the job as it was before its file was changed.",
    .es = "Estas ediciones sin guardar se hicieron sobre el trabajo antes de que su "
          "archivo cambiara."};
constexpr Text takeOldFile = {
    .en = "Put the file back as it was then and open it again, or make the edits anew.",
    .es = "Restaure el archivo como estaba y ábralo de nuevo, o repita las ediciones."};
constexpr Text noBeginning = {
    .en = "The beginning of the unsaved edits is damaged, so that none can be made.",
    .es = "El principio de las ediciones sin guardar está dañado y no se puede hacer "
          "ninguna."};
constexpr Text makeAnew = {.en = "Look over the job and make the missing edits anew.",
                           .es = "Revise el trabajo y repita las ediciones que falten."};
constexpr Text lostEdits = {.en = "The unsaved edits are damaged here: {lost} of the last ones are lost.",
                            .es = "Las ediciones sin guardar están dañadas aquí: se pierden {lost} de las "
                                  "últimas."};
constexpr Text newerJournal = {
    .en = "The unsaved edits have version {version}; this program reads up to {newest}.",
    .es = "Las ediciones sin guardar tienen la versión {version}; este programa lee "
          "hasta la {newest}."};
constexpr Text useNewer = {.en = "Open the job with a newer version of this program.",
                           .es = "Abra el trabajo con una versión más nueva de este programa."};

constexpr std::string_view markBegins = R"({"journal":)";

void setLines(Json& json, std::uint32_t line)
{
    json.line = line;
    if (auto* items = std::get_if<Json::Array>(&json.value))
        for (Json& item : *items)
            setLines(item, line);
    if (auto* members = std::get_if<Json::Object>(&json.value))
        for (JsonMember& member : *members)
            setLines(member.value, line);
}

// A mark as it is written: one of the two.
struct Mark {
    int version = 0;
    std::string file, job;
};

} // namespace

template <>
inline constexpr auto shapeOf<Mark> = std::tuple(must("journal", &Mark::version), may("file", &Mark::file),
                                                 may("job", &Mark::job));

namespace {

class JournalReader {
public:
    JournalReader(const std::string& name, const std::optional<FileHash>& file) : name_(name), file_(file) {}

    Result<Journal> read(std::string_view text)
    {
        for (std::size_t at = 0; at < text.size() && !refusal_;) {
            const std::size_t end = std::min(text.find('\n', at), text.size() - 1) + 1;
            ++line_;
            take(lineOf(text.substr(at, end - at)), end);
            at = end;
        }
        return outcome();
    }

private:
    void take(const JournalLine& line, std::size_t end)
    {
        if (line.state == JournalLine::State::Damaged && damagedLines_++ == 0)
            damagedLine_ = line_;
        if (line.state != JournalLine::State::Whole || line.number < next_)
            return; // a line that stands twice is taken once
        const bool isNext = line.number == next_;
        if (!isNext)
            lose(next_);
        damagedLines_ = 0; // where no number is missing, nothing was there
        next_ = line.number + 1;
        if (line.json.starts_with(markBegins))
            takeMark(line.json, end);
        else if (isFound_ && lostFrom_ == 0)
            takeEdit(line.json, end);
    }

    void lose(std::uint64_t from)
    {
        if (lostFrom_ != 0)
            return;
        lostFrom_ = from;
        lostLine_ = damagedLines_ > 0 ? damagedLine_ : line_;
    }

    template <class Record> std::optional<Problem> readInto(std::string_view json, Record& record) const
    {
        Result<Json> tree = parseJson(json, name_);
        if (!tree.ok())
            return tree.problem();
        setLines(tree.value(), line_);
        JsonReader reader(tree.value(), name_);
        reader.idsBelow = mostNextNumber;
        reader.read(tree.value(), record);
        return reader.problem;
    }

    void takeMark(std::string_view json, std::size_t end)
    {
        Mark mark;
        const std::optional<Problem> problem = readInto(json, mark);
        if (mark.version > journalVersion)
            refuse({newerJournal,
                    {{"version", std::to_string(mark.version)}, {"newest", std::to_string(journalVersion)}}},
                   useNewer);
        else if (problem)
            unreadable(*problem);
        else if (file_ ? mark.file == file_->sha256 : !mark.job.empty())
            startFrom(mark, end);
    }

    void startFrom(const Mark& mark, std::size_t end)
    {
        journal_ = {};
        if (!file_) {
            Result<Job> job = readJob(mark.job, name_);
            if (!job.ok())
                return unreadable(job.problem());
            journal_.job = std::move(job.value());
        }
        isFound_ = true;
        lostFrom_ = 0;
        reached(end);
    }

    void takeEdit(std::string_view json, std::size_t end)
    {
        JournalEdit edit;
        if (const std::optional<Problem> problem = readInto(json, edit))
            return unreadable(*problem);
        journal_.edits.push_back(std::move(edit));
        reached(end);
    }

    void reached(std::size_t end)
    {
        journal_.goodBytes = end;
        journal_.nextNumber = next_;
    }

    // A record that is whole but says what this program doesn't know.
    void unreadable(const Problem& problem)
    {
        lose(next_ - 1);
        unread_ = problem;
    }

    void refuse(Message what, Message remedy)
    {
        refusal_ = Problem{std::move(what), fmt::format("{}, line {}", name_, line_), std::move(remedy)};
    }

    Result<Journal> outcome()
    {
        if (damagedLines_ > 0)
            lose(next_);
        next_ += damagedLines_;
        if (!refusal_ && !isFound_ && next_ > 1)
            refuseAll();
        if (refusal_)
            return *refusal_;
        if (lostFrom_ != 0)
            journal_.damage = Problem{{lostEdits, {{"lost", std::to_string(next_ - lostFrom_)}}},
                                      fmt::format("{}, line {}", name_, lostLine_),
                                      makeAnew};
        return std::move(journal_);
    }

    void refuseAll()
    {
        if (unread_)
            refusal_ = unread_;
        else if (lostFrom_ == 1)
            refusal_ = Problem{noBeginning, fmt::format("{}, line {}", name_, lostLine_), makeAnew};
        else
            refusal_ = Problem{otherFile, name_, takeOldFile};
    }

    const std::string& name_;
    const std::optional<FileHash>& file_;
    Journal journal_;
    std::optional<Problem> refusal_, unread_;
    std::uint64_t next_ = 1, lostFrom_ = 0; // numbers; 0: nothing is lost
    std::uint32_t line_ = 0, lostLine_ = 0;
    std::uint32_t damagedLine_ = 0, damagedLines_ = 0; // since the last whole one
    bool isFound_ = false;
};

} // namespace

std::string journalRecord(std::uint64_t number, const JournalStart& start)
{
    JsonWriter writer;
    const auto* file = std::get_if<FileHash>(&start);
    writer.value(Mark{journalVersion, file ? file->sha256 : "", file ? "" : jobText(std::get<Job>(start))});
    return lineWith(number, writer.text);
}

std::string journalRecord(std::uint64_t number, const JournalEdit& edit)
{
    JsonWriter writer;
    writer.value(edit);
    return lineWith(number, writer.text);
}

Result<Journal> readJournal(std::string_view text, const std::string& name,
                            const std::optional<FileHash>& file)
{
    return JournalReader(name, file).read(text);
}

} // namespace doorloom
