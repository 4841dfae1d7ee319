#include "openjob/touched.h"

#include <algorithm>
#include <type_traits>

namespace doorloom {

namespace {

template <class Row>
constexpr bool isDrawing = std::is_same_v<Row, Sheet> || std::is_same_v<Row, Placement> ||
                           std::is_same_v<Row, Bends> || std::is_same_v<Row, Note>;

void sortOnce(std::vector<std::uint32_t>& numbers)
{
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
}

} // namespace

Touched touchedBy(const Change& change)
{
    Touched touched;
    touched.rows.reserve(change.steps.size());
    for (const Step& step : change.steps)
        std::visit(
            [&]<class Row>(const Put<Row>& put) {
                touched.rows.push_back(put.id.number);
                touched.wiring = touched.wiring || !isDrawing<Row>;
            },
            step);
    sortOnce(touched.rows);
    return touched;
}

void add(Touched& all, const Touched& more)
{
    all.everything = all.everything || more.everything;
    all.wiring = all.wiring || more.wiring;
    if (all.everything) {
        all.rows.clear();
        return;
    }
    all.rows.insert(all.rows.end(), more.rows.begin(), more.rows.end());
    sortOnce(all.rows);
}

} // namespace doorloom
