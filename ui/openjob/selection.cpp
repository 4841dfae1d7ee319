#include "openjob/selection.h"

#include <algorithm>

namespace doorloom {

bool Selection::holds(std::uint32_t number) const
{
    return std::binary_search(rows_.begin(), rows_.end(), number);
}

void Selection::choose(std::vector<std::uint32_t> rows)
{
    std::sort(rows.begin(), rows.end());
    rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
    if (rows == rows_)
        return;
    rows_ = std::move(rows);
    emit changed();
}

void Selection::toggle(std::uint32_t number)
{
    std::vector<std::uint32_t> rows = rows_;
    const auto place = std::lower_bound(rows.begin(), rows.end(), number);
    if (place != rows.end() && *place == number)
        rows.erase(place);
    else
        rows.insert(place, number);
    choose(std::move(rows));
}

void Selection::light(std::vector<Origin> path)
{
    if (path == lit_)
        return;
    lit_ = std::move(path);
    emit litChanged();
}

} // namespace doorloom
