#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace doorloom {

using CsvRow = std::map<std::string, std::string>; // by the names in the head

inline std::vector<std::string> cells(const std::string& line)
{
    std::vector<std::string> found(1);
    bool quoted = false;
    for (char letter : line)
        if (letter == '"')
            quoted = !quoted;
        else if (letter == ',' && !quoted)
            found.emplace_back();
        else if (letter != '\r')
            found.back() += letter;
    return found;
}

// Comments begin with '#', cells with commas stand in quotes.
inline std::vector<CsvRow> rowsOfFile(const std::string& name)
{
    std::ifstream file(name);
    if (!file)
        throw std::runtime_error("There is no " + name);
    std::vector<std::string> head;
    std::vector<CsvRow> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line[0] == '#')
            continue;
        const std::vector<std::string> row = cells(line);
        if (head.empty()) {
            head = row;
            continue;
        }
        if (row.size() != head.size())
            throw std::runtime_error(name + ": not as many cells as in the head: " + line);
        CsvRow& named = rows.emplace_back();
        for (std::size_t i = 0; i < head.size(); ++i)
            named[head[i]] = row[i];
    }
    return rows;
}

// A table of published figures in tests/external.
inline std::vector<CsvRow> publishedRows(const std::string& name) { return rowsOfFile(SOURCE_FOLDER "/tests/external/" + name); }

} // namespace doorloom
