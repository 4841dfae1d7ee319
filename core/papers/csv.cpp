#include "papers/csv.h"

#include <algorithm>

namespace doorloom {
namespace {

bool startsFormula(std::string_view cell)
{
    const std::string_view rest = cell.substr(std::min(cell.find_first_not_of('\''), cell.size()));
    return rest.size() > 1 && std::string_view("=+-@\t\r\n").find(rest.front()) != std::string_view::npos;
}

std::string quotedWhereNeeded(const std::string& cell)
{
    if (cell.find_first_of(",\"\r\n") == std::string::npos)
        return cell;
    std::string quoted = "\"";
    for (char letter : cell)
        quoted += letter == '"' ? std::string("\"\"") : std::string(1, letter);
    return quoted + '"';
}

} // namespace

std::string guardedCell(std::string_view cell)
{
    return (startsFormula(cell) ? "'" : "") + std::string(cell);
}

std::string csvRow(const std::vector<std::string>& cells)
{
    std::string row;
    for (const std::string& cell : cells)
        row += (&cell == &cells.front() ? "" : ",") + quotedWhereNeeded(guardedCell(cell));
    return row + "\r\n";
}

} // namespace doorloom
