#include "papers/columns.h"

#include <algorithm>

namespace doorloom {
namespace {

std::string onOneLine(std::string text)
{
    for (char& letter : text)
        if (static_cast<unsigned char>(letter) < 0x20)
            letter = ' ';
    return text;
}

} // namespace

std::size_t lettersIn(std::string_view text)
{
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char byte) { return (byte & 0xC0) != 0x80; }));
}

std::string alignedColumns(const std::vector<std::vector<std::string>>& rows)
{
    std::vector<std::size_t> widths;
    for (const auto& row : rows) {
        widths.resize(std::max(widths.size(), row.size()));
        for (std::size_t column = 0; column < row.size() && row.size() > 1; ++column)
            widths[column] = std::max(widths[column], lettersIn(row[column]));
    }
    std::string text;
    for (const auto& row : rows) {
        std::string line;
        for (std::size_t column = 0; column < row.size(); ++column) {
            line += onOneLine(row[column]);
            if (column + 1 < row.size())
                line.append(widths[column] - lettersIn(row[column]) + 2, ' ');
        }
        line.erase(line.find_last_not_of(' ') + 1);
        text += line + "\n";
    }
    return text;
}

} // namespace doorloom
