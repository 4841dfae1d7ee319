#pragma once

#include "base/result.h"
#include "edit/rownames.h"

#include <optional>
#include <string>

namespace doorloom {

// What is wrong with a new tag of a row other than a device: none, blanks or ':' in it, or another row of its
// table has it.
template <class Row>
std::optional<Problem> newTagProblem(const Table<Row>& rows, Id<Row> own, const std::string& tag)
{
    const Gaps gaps = {{"noun", nounOf<Row>()}, {"tag", tag}};
    if (tag.empty() || tag.find_first_of(" \t\r\n:\"") != std::string::npos)
        return problemAt(tag,
                         {.en = "A {noun} can't have the tag '{tag}'.",
                          .es = "Elemento ({noun}) con la etiqueta '{tag}': no se admite."},
                         {.en = "Give it one such as 'CAB1', without blanks, quotes or ':'.",
                          .es = "Déle una como 'CAB1', sin espacios, comillas ni ':'."},
                         gaps);
    for (const Row& row : rows)
        if (row.tag == tag && row.id != own)
            return problemAt(tag,
                             {.en = "The tag '{tag}' is another {noun}'s already.",
                              .es = "La etiqueta '{tag}' ya la tiene otro elemento ({noun})."},
                             {.en = "Choose one that is free.", .es = "Elija una que esté libre."}, gaps);
    return std::nullopt;
}

} // namespace doorloom
