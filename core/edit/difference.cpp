#include "edit/change.h"

#include <utility>

namespace doorloom {

Change difference(const Job& older, const Job& newer)
{
    Change change;
    forEachTable(newer, [&]<class Row>(const char*, const Table<Row>& rows) {
        Table<Row>::forEachDifference(tableOf<Row>(older), rows, [&](const Row* before, const Row* after) {
            if (after)
                change.steps.emplace_back(Put<Row>{after->id, *after});
            else
                change.steps.emplace_back(Put<Row>{before->id, std::nullopt});
        });
    });
    return change;
}

} // namespace doorloom
