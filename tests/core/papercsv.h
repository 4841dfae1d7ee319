#pragma once

#include <map>
#include <stdexcept>
#include <string>
#include <vector>

// A reader of comma-separated values that shares nothing with the writer: by RFC 4180, then the formula guard
// taken off as papers/csv.h describes it.
namespace doorloom::papercsv {

using Record = std::map<std::string, std::string>;

inline std::vector<std::vector<std::string>> readCells(const std::string& text)
{
    std::vector<std::vector<std::string>> rows(1);
    std::string cell;
    bool quoted = false, wasQuoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (quoted) {
            if (c != '"')
                cell += c;
            else if (i + 1 < text.size() && text[i + 1] == '"')
                cell += text[++i];
            else
                quoted = false;
        } else if (c == '"') {
            if (!cell.empty() || wasQuoted)
                throw std::runtime_error("a quote inside a bare cell");
            quoted = wasQuoted = true;
        } else if (c == ',') {
            rows.back().push_back(std::move(cell));
            cell.clear();
            wasQuoted = false;
        } else if (c == '\r') {
            if (i + 1 >= text.size() || text[++i] != '\n')
                throw std::runtime_error("a bare CR");
            rows.back().push_back(std::move(cell));
            rows.emplace_back();
            cell.clear();
            wasQuoted = false;
        } else if (c == '\n' || wasQuoted) {
            throw std::runtime_error("a bare LF, or letters behind a quoted cell");
        } else {
            cell += c;
        }
    }
    if (quoted || !cell.empty() || !rows.back().empty())
        throw std::runtime_error("the last row has no end");
    rows.pop_back();
    return rows;
}

inline std::string unguarded(const std::string& cell)
{
    std::size_t apostrophes = 0;
    while (apostrophes < cell.size() && cell[apostrophes] == '\'')
        ++apostrophes;
    const bool guarded = apostrophes > 0 && cell.size() - apostrophes > 1 &&
                         std::string("=+-@\t\r\n").find(cell[apostrophes]) != std::string::npos;
    return guarded ? cell.substr(1) : cell;
}

// One record a row, by the names in the first row.
inline std::vector<Record> readRecords(const std::string& text)
{
    const auto rows = readCells(text);
    std::vector<Record> records;
    for (std::size_t row = 1; row < rows.size(); ++row) {
        if (rows[row].size() != rows[0].size())
            throw std::runtime_error("a row of another length");
        Record record;
        for (std::size_t column = 0; column < rows[0].size(); ++column)
            record[rows[0][column]] = unguarded(rows[row][column]);
        records.push_back(std::move(record));
    }
    return records;
}

} // namespace doorloom::papercsv
