#include "route/search.h"

#include "route/eight.h"

#include <cstdlib>

namespace doorloom::routing {
namespace {

constexpr int lanes = 8;

int roundedUp(int count)
{
    return (count + lanes - 1) / lanes * lanes;
}

// The least distance from each eight lines of the window to that of the goal.
void restOf(const Lines& lines, int first, int count, int goal, std::vector<Cost>& rest)
{
    rest.clear();
    const int end = lines.count() - 1;
    for (int block = 0; block < count; block += lanes) {
        const int low = std::min(first + block, end), high = std::min(first + block + lanes - 1, end);
        const int nearest = std::clamp(goal, low, high);
        rest.push_back(capped(lines.between(nearest, goal)));
    }
}

} // namespace

int fewestBends(const End& from, const End& to)
{
    const int dx = to.cell.x - from.cell.x, dy = to.cell.y - from.cell.y;
    const int ahead = (from.way == Way::Level ? dx : dy) * from.out, aside = from.way == Way::Level ? dy : dx;
    if (from.way != to.way)
        return ahead >= 0 && aside * to.out <= 0 ? 1 : 3;
    if (from.out == to.out)
        return aside != 0 ? 2 : 4;
    if (ahead < 0)
        return 4;
    return aside != 0 ? 2 : 0;
}

Search::Place Search::placeOf(Way way, Cell cell) const
{
    const int x = cell.x - window_.x0, y = cell.y - window_.y0;
    return way == Way::Level ? Place{x, y} : Place{y, x};
}

void Search::lay(const Grid& grid, Window window)
{
    window_ = window;
    const int width = roundedUp(window.x1 - window.x0 + 1), height = roundedUp(window.y1 - window.y0 + 1);
    const auto size = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    cells_ += size / 4; // filling them is quicker than passing them
    levelCost_.assign(size, never);
    uprightCost_.assign(size, never);
    const Cell corner{window.x0, window.y0};
    const auto layPlane = [&](Way way, std::vector<Cost>& cost, int rows, int columns) {
        const Layer& layer = grid.layer(way);
        const std::size_t start = grid.index(way, corner);
        Plane& plane = this->plane(way);
        plane.cost = cost.data();
        plane.pass = layer.pass.data() + start;
        plane.turn = layer.turn.data() + start;
        plane.step = grid.along(way).step.data() + (way == Way::Level ? window.x0 : window.y0);
        plane.rows = rows;
        plane.steps.resize(static_cast<std::size_t>(rows + 1) * lanes);
        for (int i = 0; i <= rows; ++i)
            Eight::all(plane.step[i]).store(plane.steps.data() + i * lanes);
        plane.columns = columns;
        plane.stride = grid.stride(way);
        plane.touched.assign(static_cast<std::size_t>(columns / lanes), {});
    };
    layPlane(Way::Level, levelCost_, width, height);
    layPlane(Way::Upright, uprightCost_, height, width);
}

void Search::spread(Plane& plane, int limit)
{
    const std::size_t count = plane.touched.size();
    for (std::size_t i = 0; i < count;) {
        if (!plane.touched[i].any())
            ++i;
        else if (i + 3 < count && plane.touched[i + 1].any() && plane.touched[i + 2].any() &&
                 plane.touched[i + 3].any())
            i = spreadColumns<4>(plane, i, limit);
        else if (i + 1 < count && plane.touched[i + 1].any())
            i = spreadColumns<2>(plane, i, limit);
        else
            i = spreadColumns<1>(plane, i, limit);
    }
}

// Eight columns at once, or more: they share cache lines, and one doesn't wait for the other. Both ways from
// the rows that were touched, until nothing is lowered any more or would lead to the goal. That is looked at
// every eight rows: looking at each would take longer than passing it. Out: the eight columns after these
template <std::size_t count> std::size_t Search::spreadColumns(Plane& plane, std::size_t first, int limit)
{
    const Plane& other = &plane == &level_ ? upright_ : level_;
    const std::ptrdiff_t columns = plane.columns, stride = plane.stride;
    Cost* const cost = plane.cost + first * lanes;
    const Cost* const pass = plane.pass + first * lanes;
    const Cost* const steps = plane.steps.data();
    Touched before = plane.touched[first];
    std::array<int, count> most;
    for (std::size_t i = 0; i < count; ++i) {
        before.add(plane.touched[first + i].first, plane.touched[first + i].last);
        most[i] = limit - other.rest[first + i] - plane.bends[first + i];
    }
    std::array<Eight, count> value, old;
    const auto lower = [&](std::ptrdiff_t row, std::ptrdiff_t step) {
        const Eight onward = Eight::at(steps + step * lanes);
        for (std::size_t i = 0; i < count; ++i) {
            Cost* const place = cost + row * columns + i * lanes;
            old[i] = Eight::at(place);
            value[i] = least(old[i], value[i] + (Eight::at(pass + row * stride + i * lanes) + onward));
            value[i].store(place);
        }
    };
    const auto goesOn = [&](int block) {
        bool any = false;
        for (std::size_t i = 0; i < count; ++i) {
            const Cost bound = capped(std::max(0, most[i] - nth(plane.rest, block)));
            any = any || (anyBelow(value[i], old[i]) && anyBelow(value[i], Eight::all(bound)));
        }
        return any;
    };
    const int blocks = plane.rows / lanes;
    Touched after = before;
    value.fill(Eight::all(never));
    int block = before.first / lanes;
    do
        for (std::ptrdiff_t row = block * lanes, end = row + lanes; row < end; ++row)
            lower(row, row);
    while (((block + 1) * lanes - 1 <= before.last || goesOn(block)) && ++block < blocks);
    after.last = std::min(block, blocks - 1) * lanes + lanes - 1;
    value.fill(Eight::all(never));
    block = before.last / lanes;
    do
        for (std::ptrdiff_t row = (block + 1) * lanes - 1, end = row - lanes; row > end; --row)
            lower(row, row + 1);
    while ((block * lanes >= before.first || goesOn(block)) && --block >= 0);
    after.first = std::max(block, 0) * lanes;
    for (std::size_t i = 0; i < count; ++i)
        plane.touched[first + i] = after;
    cells_ += static_cast<std::uint64_t>(after.last - after.first + 1) * count * lanes;
    return first + count;
}

// From the start alone, until a box is in the way.
void Search::spreadAlong(Plane& plane, Place start)
{
    const std::ptrdiff_t columns = plane.columns, stride = plane.stride;
    Cost* const cost = plane.cost + start.column;
    const Cost* const pass = plane.pass + start.column;
    int value = cost[start.row * columns];
    for (int row = start.row + 1; row < plane.rows; ++row) {
        value += pass[row * stride] + plane.step[row];
        if (value >= never)
            break;
        cost[row * columns] = static_cast<Cost>(value);
    }
    value = cost[start.row * columns];
    for (int row = start.row - 1; row >= 0; --row) {
        value += pass[row * stride] + plane.step[row + 1];
        if (value >= never)
            break;
        cost[row * columns] = static_cast<Cost>(value);
    }
}

// Lowers the goal, and the cells on the straight piece that leads there, to a turn from the other plane.
void Search::reach(const Plane& from, Plane& to, Place goal)
{
    const Cost* const source = from.cost + static_cast<std::ptrdiff_t>(goal.column) * from.columns;
    Cost* const cost = to.cost + goal.column;
    const Cost* const turn = to.turn + goal.column;
    const Cost* const pass = to.pass + goal.column;
    const auto turned = [&](int row) {
        return source[row] + turn[static_cast<std::ptrdiff_t>(row) * to.stride] + prices_.bend;
    };
    const auto onward = [&](int row, int by) { // from a cell to the next one towards the goal
        return pass[static_cast<std::ptrdiff_t>(row) * to.stride] + to.step[by > 0 ? row : row + 1];
    };
    int best = cost[static_cast<std::ptrdiff_t>(goal.row) * to.columns], bestRow = -1;
    if (turned(goal.row) < best)
        best = turned(bestRow = goal.row);
    for (int by : {1, -1}) // towards the goal
        for (int row = goal.row - by, way = 0; row >= 0 && row < to.rows; row -= by) {
            way += onward(row + by, by);
            if (way >= best)
                break;
            if (way + turned(row) < best) {
                best = way + turned(row);
                bestRow = row;
            }
        }
    if (bestRow < 0)
        return;
    const int by = bestRow < goal.row ? 1 : -1;
    for (int row = bestRow, value = turned(row);; row += by) {
        Cost& cell = cost[static_cast<std::ptrdiff_t>(row) * to.columns];
        cell = static_cast<Cost>(std::min<int>(cell, value));
        if (row == goal.row)
            break;
        value += onward(row + by, by);
    }
}

// Out: whether any cell of the other plane is lower now
bool Search::turnAll(Plane& from, Plane& to, int limit)
{
    bool any = false;
    for (std::size_t i = 0; i < from.touched.size(); ++i) {
        if (!from.touched[i].any())
            continue;
        const int column = static_cast<int>(i) * lanes;
        for (int row = from.touched[i].first / lanes * lanes; row <= from.touched[i].last; row += lanes) {
            Touched& touched = nth(to.touched, row / lanes);
            const int least =
                nth(from.rest, row / lanes) + to.rest[i] + prices_.bend + nth(to.bends, row / lanes);
            if (!turnBlock(from, to, {row, column}, limit - least))
                continue;
            touched.add(column, column + lanes - 1);
            any = true;
        }
        from.touched[i] = {};
    }
    return any;
}

// Eight rows of eight columns, if one of them is below the bound. Out: whether any cell of the other plane is
// lower now
bool Search::turnBlock(const Plane& from, Plane& to, Place place, int bound) const
{
    if (bound <= 0)
        return false;
    std::array<Eight, lanes> block;
    const std::ptrdiff_t row = place.row, column = place.column;
    for (std::size_t k = 0; k < lanes; ++k)
        block[k] = Eight::at(from.cost + (row + static_cast<std::ptrdiff_t>(k)) * from.columns + column);
    Eight lowest = block[0];
    for (const Eight& cells : block)
        lowest = least(lowest, cells);
    if (!anyBelow(lowest, Eight::all(capped(bound))))
        return false;
    transpose(block);
    const Eight bend = Eight::all(prices_.bend);
    bool isLower = false;
    for (std::size_t k = 0; k < lanes; ++k) {
        const std::ptrdiff_t at = column + static_cast<std::ptrdiff_t>(k);
        Cost* const cells = to.cost + at * to.columns + row;
        const Eight old = Eight::at(cells);
        const Eight value = block[k] + (Eight::at(to.turn + at * to.stride + row) + bend);
        isLower = anyBelow(value, old) || isLower;
        least(value, old).store(cells);
    }
    return isLower;
}

// From one line of the one plane: a row of the other.
void Search::turnFrom(const Plane& from, Plane& to, int column)
{
    Cost* cost = to.cost + static_cast<std::ptrdiff_t>(column) * to.columns;
    const Cost* turn = to.turn + static_cast<std::ptrdiff_t>(column) * to.stride;
    for (std::ptrdiff_t i = 0; i < to.columns; ++i) {
        const int value = from.cost[i * from.columns + column] + turn[i] + prices_.bend;
        cost[i] = static_cast<Cost>(std::min<int>(cost[i], value));
        if (cost[i] < never)
            to.touched[static_cast<std::size_t>(i / lanes)].add(column, column);
    }
}

std::optional<Found> Search::between(const Grid& grid, const End& from, const End& to, Window window,
                                     int limit)
{
    if (grid.isBlocked(from.cell) || grid.isBlocked(to.cell))
        return std::nullopt;
    lay(grid, window);
    Plane& first = plane(from.way);
    const Place start = placeOf(from.way, from.cell);
    const int startCost =
        from.first + first.pass[static_cast<std::ptrdiff_t>(start.row) * first.stride + start.column];
    if (startCost >= never)
        return std::nullopt;
    costAt(first, start) = static_cast<Cost>(startCost);
    spreadAlong(first, start);
    measureRest(grid, to);
    const int least =
        startCost + grid.x().between(from.cell.x, to.cell.x) + grid.y().between(from.cell.y, to.cell.y);
    limit = std::min<int>(limit, never);
    turnUntilBest(from, to, least, limit);
    if (costAt(plane(to.way), placeOf(to.way, to.cell)) >= limit)
        return std::nullopt;
    return traced(from, to, startCost);
}

// What is left at least, from everywhere to the goal.
void Search::measureRest(const Grid& grid, const End& to)
{
    restOf(grid.x(), window_.x0, level_.rows, to.cell.x, level_.rest);
    restOf(grid.y(), window_.y0, upright_.rows, to.cell.y, upright_.rest);
    Plane& last = plane(to.way);
    for (Plane* each : {&level_, &upright_})
        each->bends.assign(static_cast<std::size_t>(each->columns / lanes),
                           static_cast<Cost>(each == &last ? 2 * prices_.bend : prices_.bend));
    nth(last.bends, placeOf(to.way, to.cell).column / lanes) = 0;
}

// One bend after another, from the line of the start, until none more could make it cheaper.
void Search::turnUntilBest(const End& from, const End& to, int least, int limit)
{
    Plane& last = plane(to.way);
    const Place start = placeOf(from.way, from.cell), goal = placeOf(to.way, to.cell);
    Plane* current = &plane(from.way);
    const auto best = [&] { return std::min<int>(limit, costAt(last, goal)); };
    const auto isBestWith = [&](int bends) { return best() <= least + (bends + 2) * prices_.bend; };
    if (current == &last && isBestWith(0))
        return;
    for (int bends = 1; bends <= mostBends_; ++bends) {
        Plane* other = current == &level_ ? &upright_ : &level_;
        if (other == &last) {
            reach(*current, last, goal);
            if (isBestWith(bends) || bends + 1 >= mostBends_)
                return;
        }
        if (bends == 1)
            turnFrom(*current, *other, start.column);
        else if (!turnAll(*current, *other, best()))
            return;
        spread(*other, best());
        current = other;
    }
}

// The cell before this one on the straight piece that leads here, as rows further on; 0 where it begins with
// a turn.
int Search::rowsBack(const Plane& here, Place place) const
{
    const int value = costAt(here, place);
    const int pass = here.pass[static_cast<std::ptrdiff_t>(place.row) * here.stride + place.column];
    const Place above{place.row - 1, place.column}, below{place.row + 1, place.column};
    if (place.row > 0 && costAt(here, above) + here.step[place.row] + pass <= value)
        return -1;
    if (below.row < here.rows && costAt(here, below) + here.step[below.row] + pass <= value)
        return 1;
    return 0;
}

// From the goal back to the start.
Found Search::traced(const End& from, const End& to, int startCost)
{
    const Place start = placeOf(from.way, from.cell);
    Way way = to.way;
    Place place = placeOf(way, to.cell);
    Found found{{}, costAt(plane(way), place) + to.first, startCost >= conflict + from.first};
    int runEnd = place.row;
    const auto close = [&] {
        const int ahead = way == Way::Level ? window_.x0 : window_.y0,
                  aside = way == Way::Level ? window_.y0 : window_.x0;
        found.runs.push_back({way, place.column + aside, place.row + ahead, runEnd + ahead});
    };
    while (!(way == from.way && place == start && costAt(plane(way), place) <= startCost)) {
        const Plane& here = plane(way);
        const std::ptrdiff_t spot = static_cast<std::ptrdiff_t>(place.row) * here.stride + place.column;
        found.hasConflicts = found.hasConflicts || here.pass[spot] >= conflict;
        if (const int back = rowsBack(here, place); back != 0) {
            place.row += back;
            continue;
        }
        found.hasConflicts = found.hasConflicts || here.turn[spot] >= conflict;
        close();
        way = across(way);
        place = {place.column, place.row};
        runEnd = place.row;
    }
    close();
    std::reverse(found.runs.begin(), found.runs.end());
    return found;
}

} // namespace doorloom::routing
