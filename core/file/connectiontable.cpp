#include "file/connectiontable.h"

#include "base/folded.h"
#include "base/utf8.h"
#include "edit/rownames.h"

#include <fmt/format.h>

#include <algorithm>

namespace doorloom {

namespace {

// ---- Cells

constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";

// Bytes up to the first that is no UTF-8; all of them where everything is.
std::size_t goodUtf8(std::string_view text)
{
    std::size_t at = 0;
    while (at < text.size() && text[at] != '\0') {
        const std::size_t length = utf8Length(text.substr(at));
        if (length == 0)
            break;
        at += length;
    }
    return at;
}

std::size_t lineAt(std::string_view text, std::size_t at)
{
    std::size_t line = 1;
    for (std::size_t i = 0; i < at; ++i)
        line += text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n'));
    return line;
}

std::string trimmed(const std::string& cell)
{
    constexpr std::string_view blanks = " \t\r\n";
    const std::size_t first = cell.find_first_not_of(blanks);
    return first == std::string::npos ? std::string()
                                      : cell.substr(first, cell.find_last_not_of(blanks) - first + 1);
}

// As papers/csv.h says how to.
std::string unguarded(const std::string& cell)
{
    const std::size_t sign = cell.find_first_not_of('\'');
    const bool guarded = sign != std::string::npos && sign > 0 && sign + 1 < cell.size() &&
                         std::string_view("=+-@\t\r\n").find(cell[sign]) != std::string_view::npos;
    return guarded ? cell.substr(1) : cell;
}

char separatorOf(std::string_view text)
{
    std::array<std::size_t, 3> count{};
    constexpr std::string_view separators = ",;\t";
    bool quoted = false;
    for (const char each : text) {
        if (each == '"')
            quoted = !quoted;
        else if (!quoted && (each == '\n' || each == '\r'))
            break;
        else if (const std::size_t which = separators.find(each); !quoted && which != std::string_view::npos)
            ++count[which];
    }
    return separators[static_cast<std::size_t>(std::max_element(count.begin(), count.end()) - count.begin())];
}

class TableReader {
public:
    TableReader(std::string_view text, const std::string& name) : text_(text), name_(name) {}

    Result<std::vector<CellRow>> read()
    {
        if (text_.starts_with(byteOrderMark))
            text_.remove_prefix(byteOrderMark.size());
        if (const std::size_t good = goodUtf8(text_); good != text_.size())
            return problemAt(
                where(lineAt(text_, good)), {.en = "This is no UTF-8 text.", .es = "Esto no es texto UTF-8."},
                {.en = "Save the sheet as 'CSV UTF-8'.", .es = "Guarde la hoja como 'CSV UTF-8'."}, {});
        takeSeparator();
        while (at_ < text_.size())
            if (auto problem = readRow())
                return *std::move(problem);
        if (rows_.empty())
            return problemAt(name_, {.en = "The list has no rows.", .es = "La lista no tiene filas."},
                             {.en = "Export the sheet that has the connections.",
                              .es = "Exporte la hoja con las conexiones."},
                             {});
        return std::move(rows_);
    }

private:
    std::string where(std::size_t line) const { return fmt::format("{}, line {}", name_, line); }

    void takeSeparator()
    {
        const bool told =
            text_.size() > 5 && text_.starts_with("sep=") && (text_[5] == '\n' || text_[5] == '\r');
        separator_ = told ? text_[4] : separatorOf(text_);
        if (told) {
            at_ = 5;
            endLine();
        }
    }

    // Past the end of a line, of whatever system.
    void endLine()
    {
        if (at_ < text_.size())
            at_ += text_.substr(at_).starts_with("\r\n") ? 2 : 1;
        ++line_;
    }

    bool isLineEnd() const { return text_[at_] == '\n' || text_[at_] == '\r'; }

    std::optional<Problem> readRow()
    {
        CellRow row{line_, {}};
        for (bool more = true; more;) {
            std::string cell;
            if (auto problem = readCell(cell))
                return problem;
            row.cells.push_back(unguarded(trimmed(cell)));
            more = at_ < text_.size() && text_[at_] == separator_;
            if (more)
                ++at_;
        }
        if (at_ < text_.size())
            endLine();
        if (std::any_of(row.cells.begin(), row.cells.end(),
                        [](const std::string& cell) { return !cell.empty(); }))
            rows_.push_back(std::move(row));
        return tooMuch();
    }

    std::optional<Problem> readCell(std::string& cell)
    {
        while (at_ < text_.size() && text_[at_] == ' ' && separator_ != ' ')
            ++at_;
        if (at_ < text_.size() && text_[at_] == '"')
            if (auto problem = readQuoted(cell))
                return problem;
        while (at_ < text_.size() && text_[at_] != separator_ && !isLineEnd())
            cell += text_[at_++];
        return std::nullopt;
    }

    std::optional<Problem> readQuoted(std::string& cell)
    {
        const std::size_t began = line_;
        ++at_;
        while (at_ < text_.size()) {
            if (text_[at_] == '"' && text_.substr(at_).starts_with("\"\"")) {
                cell += '"';
                at_ += 2;
            } else if (text_[at_] == '"') {
                ++at_;
                return std::nullopt;
            } else if (isLineEnd()) {
                cell += '\n';
                endLine();
            } else {
                cell += text_[at_++];
            }
        }
        return problemAt(where(began),
                         {.en = "A quote that begins here has no end.",
                          .es = "Una comilla que empieza aquí no se cierra."},
                         {.en = "Close it, or double a quote that belongs to the words.",
                          .es = "Ciérrela, o duplique la comilla que sea parte del texto."},
                         {});
    }

    std::optional<Problem> tooMuch() const
    {
        const bool tooWide = !rows_.empty() && rows_.back().cells.size() > mostTableColumns;
        if (!tooWide && rows_.size() <= mostTableRows)
            return std::nullopt;
        return problemAt(
            where(rows_.back().line),
            {.en = "The list has more than {rows} rows or {columns} columns.",
             .es = "La lista tiene más de {rows} filas o {columns} columnas."},
            {.en = "Export only the connections, in several lists if need be.",
             .es = "Exporte solo las conexiones, en varias listas si hace falta."},
            {{"rows", std::to_string(mostTableRows)}, {"columns", std::to_string(mostTableColumns)}});
    }

    std::string_view text_;
    const std::string& name_;
    std::size_t at_ = 0, line_ = 1;
    char separator_ = ',';
    std::vector<CellRow> rows_;
};

// ---- Names of columns

// Small letters and figures with single blanks between: "Far_device" is "far device".
std::string plain(const std::string& name)
{
    std::string words;
    for (const char each : folded(name)) {
        const bool counts = (each >= 'a' && each <= 'z') || (each >= '0' && each <= '9');
        if (counts)
            words += each;
        else if (!words.empty() && words.back() != ' ')
            words += ' ';
    }
    if (!words.empty() && words.back() == ' ')
        words.pop_back();
    return words;
}

// A name that stands for both ends names the first end the first time.
const std::vector<std::string_view>& namesOf(ListColumn column)
{
    static const std::array<std::vector<std::string_view>, listColumnCount> names = {{
        {"from device", "from", "device", "from tag", "device 1", "device a", "desde dispositivo",
         "de dispositivo", "dispositivo origen", "desde", "de", "origen", "dispositivo", "equipo",
         "dispositivo 1", "dispositivo a"},
        {"from terminal", "terminal", "terminal 1", "terminal a", "desde borne", "de borne", "borne origen",
         "borne", "terminal origen", "borne 1", "borne a"},
        {"to device", "to", "far device", "device", "to tag", "device 2", "device b", "hasta dispositivo",
         "a dispositivo", "dispositivo destino", "hasta", "a", "destino", "dispositivo", "equipo",
         "dispositivo 2", "dispositivo b"},
        {"to terminal", "far terminal", "terminal", "terminal 2", "terminal b", "hasta borne", "a borne",
         "borne destino", "borne", "terminal destino", "borne 2", "borne b"},
        {"cable", "cable tag", "cable no", "cable number", "etiqueta del cable", "numero de cable"},
        {"core", "core no", "core number", "hilo", "numero de hilo", "num de hilo", "hilo no", "vena"},
        {"colour", "color", "core colour", "core color", "wire colour", "wire color", "color del hilo"},
    }};
    return names[static_cast<std::size_t>(column)];
}

bool isNamed(const std::string& cell, ListColumn column)
{
    const std::vector<std::string_view>& names = namesOf(column);
    return std::find(names.begin(), names.end(), cell) != names.end();
}

ListLayout namedLayout(const CellRow& head)
{
    ListLayout layout;
    for (std::size_t cell = 0; cell < head.cells.size(); ++cell) {
        const std::string name = plain(head.cells[cell]);
        for (std::size_t column = 0; column < listColumnCount; ++column)
            if (!layout.columns[column] && isNamed(name, static_cast<ListColumn>(column))) {
                layout.columns[column] = cell;
                break;
            }
    }
    const auto known = std::count_if(layout.columns.begin(), layout.columns.end(),
                                     [](const auto& column) { return column.has_value(); });
    layout.hasHead = known >= 2;
    return layout;
}

ListLayout unnamedLayout(std::size_t width)
{
    ListLayout layout;
    if (width <= 2)
        layout.columns = {0, {}, 1, {}, {}, {}, {}};
    else
        for (std::size_t column = 0; column < std::min(width, listColumnCount); ++column)
            layout.columns[column] = column;
    return layout;
}

} // namespace

Result<std::vector<CellRow>> readTable(std::string_view text, const std::string& name)
{
    return TableReader(text, name).read();
}

Words wordsOf(ListColumn column)
{
    switch (column) {
    case ListColumn::FromDevice:
        return {"from device", "desde dispositivo"};
    case ListColumn::FromTerminal:
        return {"from terminal", "desde borne"};
    case ListColumn::ToDevice:
        return {"to device", "hasta dispositivo"};
    case ListColumn::ToTerminal:
        return {"to terminal", "hasta borne"};
    case ListColumn::Cable:
        return {"cable", "cable"};
    case ListColumn::Core:
        return {"core", "hilo"};
    case ListColumn::Colour:
        break;
    }
    return {"colour", "color"};
}

ListLayout guessedLayout(const std::vector<CellRow>& table)
{
    if (table.empty())
        return {};
    const ListLayout named = namedLayout(table.front());
    return named.hasHead ? named : unnamedLayout(widthOf(table));
}

std::size_t widthOf(const std::vector<CellRow>& table)
{
    std::size_t width = 0;
    for (const CellRow& row : table)
        width = std::max(width, row.cells.size());
    return width;
}

std::string cellOf(const ListLayout& layout, const CellRow& row, ListColumn column)
{
    const std::optional<std::size_t> at = layout.columns[static_cast<std::size_t>(column)];
    return at && *at < row.cells.size() ? row.cells[*at] : std::string();
}

} // namespace doorloom
