#include "edit/undowords.h"

#include "edit/references.h"
#include "edit/rownames.h"

namespace doorloom {

namespace {

constexpr std::size_t mostNames = 3;
constexpr std::size_t mostBytes = 48; // of one name: a note's is all that it says

// Cut between two letters, not within one.
std::string shortened(std::string name)
{
    if (name.size() <= mostBytes)
        return name;
    std::size_t end = mostBytes;
    while (end > 0 && (static_cast<unsigned char>(name[end]) & 0xc0u) == 0x80u)
        --end;
    return name.substr(0, end) + "…";
}

} // namespace

std::string namesOfRows(const Job& job, const std::vector<std::uint32_t>& rows)
{
    std::string names;
    std::size_t count = 0;
    for (std::uint32_t number : rows)
        visitRow(job, number, [&](const auto& row) {
            if (++count <= mostNames)
                names += (names.empty() ? "" : ", ") + shortened(nameOfRow(job, row));
        });
    if (count > mostNames)
        names += " +" + std::to_string(count - mostNames);
    return names;
}

Message undoWords(const Job& job, Text what, const std::vector<std::uint32_t>& rows)
{
    const std::string names = namesOfRows(job, rows);
    return {what, {{"names", names.empty() ? "…" : names}}};
}

} // namespace doorloom
