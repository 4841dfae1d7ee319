#include "base/wholefile.h"
#include "file/connectionlist.h"
#include "file/jobfile.h"
#include "verbs/verb.h"

#include <fmt/format.h>

#include <charconv>
#include <filesystem>
#include <system_error>

namespace doorloom {
namespace {

constexpr Text alreadyThere = {.en = "The file is there already.", .es = "El archivo ya existe."};
constexpr Text nameAnother = {.en = "Name another file, or move this one away first.",
                              .es = "Indique otro archivo, o mueva este primero."};
constexpr Text noColumns = {.en = "'{columns}' does not say which column is which.",
                            .es = "'{columns}' no dice qué es cada columna."};
constexpr Text writeColumns = {
    .en = "Write the numbers of the columns with from device, from terminal, to device, to terminal, cable, "
          "core and colour, "
          "'-' where there is none: 1,2,3,4,-,-,5. In front 'head:' when the first row names the columns.",
    .es = "Escriba los números de las columnas con desde dispositivo, desde borne, hasta dispositivo, hasta "
          "borne, cable, hilo y color, "
          "'-' donde falte: 1,2,3,4,-,-,5. Delante 'head:' si la primera fila nombra las columnas."};
constexpr Text nothingTaken = {.en = "No row can be taken.", .es = "No se puede tomar ninguna fila."};
constexpr Text seeAbove = {.en = "Nothing is written. The reasons stand above.",
                           .es = "No se escribe nada. Los motivos están arriba."};
constexpr Text left = {.en = "line {line}: {what} {remedy}", .es = "línea {line}: {what} {remedy}"};

// "1,2,3,4,-,-,5", "head:3,4,7,8"
std::optional<ListLayout> layoutOf(std::string_view words)
{
    ListLayout layout;
    layout.hasHead = words.starts_with("head:");
    if (layout.hasHead)
        words.remove_prefix(5);
    for (std::size_t column = 0; column < listColumnCount; ++column) {
        const std::string_view one = words.substr(0, words.find(','));
        std::size_t number = 0;
        const auto [end, error] = std::from_chars(one.data(), one.data() + one.size(), number);
        if (one != "-" && (error != std::errc() || end != one.data() + one.size() || number < 1 ||
                           number > mostTableColumns))
            return std::nullopt;
        if (one != "-")
            layout.columns[column] = number - 1;
        if (one.size() == words.size())
            return column > 0 ? std::optional(layout) : std::nullopt;
        words.remove_prefix(one.size() + 1);
    }
    return std::nullopt; // more than there are
}

std::string inWords(const ConnectionList& list, Language language)
{
    std::string lines;
    for (const ListedRow& row : list.rows)
        if (row.fate == RowFate::Left)
            lines += inWords(Message{left,
                                     {{"line", std::to_string(row.line)},
                                      {"what", std::vector{row.words}},
                                      {"remedy", std::vector{row.remedy}}}},
                             language) +
                     "\n";
    return lines + inWords(summaryOf(list), language) + "\n";
}

Reply runImport(const Request& request)
{
    const std::string &file = request.words[0], &listFile = request.words[1], &out = *request.find("--to");
    const auto refused = [&](const Problem& problem) { return refusal(problem, request.language); };
    std::error_code error;
    if (std::filesystem::exists(std::filesystem::symlink_status(out, error)))
        return refused({.what = alreadyThere, .where = out, .remedy = nameAnother});
    Result<Job> job = readJobFile(file);
    if (!job.ok())
        return refused(job.problem());
    const Result<std::string> text = wholeFile(listFile, mostTableBytes);
    if (!text.ok())
        return refused(text.problem());
    const Result<std::vector<CellRow>> table = readTable(text.value(), listFile);
    if (!table.ok())
        return refused(table.problem());
    const std::string* columns = request.find("--columns");
    const std::optional<ListLayout> layout = columns ? layoutOf(*columns) : guessedLayout(table.value());
    if (!layout)
        return refused(
            {.what = {noColumns, {{"columns", *columns}}}, .where = "--columns", .remedy = writeColumns});
    const ConnectionList list = connectionList(job.value(), table.value(), *layout);
    const std::string words = inWords(list, request.language);
    if (countOf(list, RowFate::Taken) + countOf(list, RowFate::Again) == 0) {
        Reply reply = refused({.what = nothingTaken, .where = listFile, .remedy = seeAbove});
        reply.out = words;
        return reply;
    }
    if (const Result<Change> back = applyChange(job.value(), list.change); !back.ok())
        return refused(back.problem());
    if (const Result<Done> saved = saveJobFile(job.value(), out); !saved.ok())
        return refused(saved.problem());
    Reply reply = wrote(out, request.language);
    reply.out = words + reply.out;
    return reply;
}

constexpr VerbOption options[] = {{.name = "--to", .value = "OUT", .required = true},
                                  {.name = "--columns", .value = "1,2,3,4,5,6,7", .required = false}};

} // namespace

extern const Verb importVerb;
const Verb importVerb = {
    .name = "import",
    .words = "FILE LIST.csv",
    .fewestWords = 2,
    .mostWords = 2,
    .options = options,
    .purpose = {.en = "Lands the connections of a spreadsheet's list in a job, and says of each row that it "
                      "leaves why.",
                .es = "Conecta en un trabajo lo que dice la lista de una hoja de cálculo, y dice de cada "
                      "fila que deja por qué."},
    .run = runImport,
};

} // namespace doorloom
