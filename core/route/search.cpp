#include "route/search.h"

#include "route/transpose.h"

#include <cstdlib>

namespace doorloom::routing {
namespace {

constexpr int lanes = 8;
constexpr int mostBends = 8;

int roundedUp(int count)
{
    return (count + lanes - 1) / lanes * lanes;
}

// Lowers a row to what it costs to come from the row beside it.
void lowerRow(Cost* __restrict into, const Cost* __restrict from, const Cost* __restrict pass, Cost step, int count)
{
    for (int i = 0; i < count; ++i) {
        const Cost cost = static_cast<Cost>(from[i] + static_cast<Cost>(pass[i] + step));
        into[i] = std::min(into[i], cost);
    }
}

} // namespace

Search::Place Search::placeOf(Way way, Cell cell) const
{
    const int x = cell.x - window_.x0, y = cell.y - window_.y0;
    return way == Way::Level ? Place{x, y} : Place{y, x};
}

Cell Search::cellAt(Way way, Place place) const
{
    return way == Way::Level ? Cell{place.row + window_.x0, place.column + window_.y0}
                             : Cell{place.column + window_.x0, place.row + window_.y0};
}

void Search::lay(const Grid& grid, Window window)
{
    window_ = window;
    const int width = roundedUp(window.x1 - window.x0 + 1), height = roundedUp(window.y1 - window.y0 + 1);
    const auto size = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    levelCost_.assign(size, never);
    uprightCost_.assign(size, never);
    const Cell corner{window.x0, window.y0};
    const auto planeOf = [&](Way way, std::vector<Cost>& cost, int rows, int columns) {
        const Layer& layer = grid.layer(way);
        const std::size_t start = grid.index(way, corner);
        const int first = way == Way::Level ? window.x0 : window.y0;
        return Plane{cost.data(),          layer.pass.data() + start,           layer.turn.data() + start,
                     grid.along(way).step.data() + first, rows, columns, grid.stride(way)};
    };
    level_ = planeOf(Way::Level, levelCost_, width, height);
    upright_ = planeOf(Way::Upright, uprightCost_, height, width);
}

void Search::spread(Plane& plane)
{
    const std::ptrdiff_t columns = plane.columns, stride = plane.stride;
    for (int row = 1; row < plane.rows; ++row)
        lowerRow(plane.cost + row * columns, plane.cost + (row - 1) * columns, plane.pass + row * stride,
                 plane.step[row], plane.columns);
    for (int row = plane.rows - 2; row >= 0; --row)
        lowerRow(plane.cost + row * columns, plane.cost + (row + 1) * columns, plane.pass + row * stride,
                 plane.step[row + 1], plane.columns);
    cells_ += static_cast<std::uint64_t>(plane.rows) * static_cast<std::uint64_t>(plane.columns);
}

void Search::spreadAlong(Plane& plane, int column)
{
    const std::ptrdiff_t columns = plane.columns, stride = plane.stride;
    Cost* cost = plane.cost + column;
    const Cost* pass = plane.pass + column;
    for (int row = 1; row < plane.rows; ++row) {
        const int value = cost[(row - 1) * columns] + pass[row * stride] + plane.step[row];
        cost[row * columns] = static_cast<Cost>(std::min<int>(cost[row * columns], value));
    }
    for (int row = plane.rows - 2; row >= 0; --row) {
        const int value = cost[(row + 1) * columns] + pass[row * stride] + plane.step[row + 1];
        cost[row * columns] = static_cast<Cost>(std::min<int>(cost[row * columns], value));
    }
}

void Search::turnAll(const Plane& from, Plane& to)
{
    for (std::ptrdiff_t row = 0; row < to.rows; row += lanes)
        for (std::ptrdiff_t column = 0; column < to.columns; column += lanes)
            lowerTransposed(to.cost + row * to.columns + column, to.columns,
                            from.cost + column * from.columns + row, from.columns,
                            to.turn + row * to.stride + column, to.stride, prices_.bend);
}

// From one line of the one plane: a row of the other.
void Search::turnFrom(const Plane& from, Plane& to, int column)
{
    Cost* cost = to.cost + static_cast<std::ptrdiff_t>(column) * to.columns;
    const Cost* turn = to.turn + static_cast<std::ptrdiff_t>(column) * to.stride;
    for (std::ptrdiff_t i = 0; i < to.columns; ++i) {
        const int value = from.cost[i * from.columns + column] + turn[i] + prices_.bend;
        cost[i] = static_cast<Cost>(std::min<int>(cost[i], value));
    }
}

// Onto one line of the other plane, from a row of the one.
void Search::turnOnto(const Plane& from, Plane& to, int column)
{
    const Cost* source = from.cost + static_cast<std::ptrdiff_t>(column) * from.columns;
    for (std::ptrdiff_t i = 0; i < to.rows; ++i) {
        const int value = source[i] + to.turn[i * to.stride + column] + prices_.bend;
        Cost& cell = to.cost[i * to.columns + column];
        cell = static_cast<Cost>(std::min<int>(cell, value));
    }
}

std::optional<Found> Search::between(const Grid& grid, const End& from, const End& to, Window window)
{
    if (grid.isBlocked(from.cell) || grid.isBlocked(to.cell))
        return std::nullopt;
    lay(grid, window);
    const Place start = placeOf(from.way, from.cell), goal = placeOf(to.way, to.cell);
    const auto at = [](Plane& on, Place place) -> Cost& {
        return on.cost[static_cast<std::ptrdiff_t>(place.row) * on.columns + place.column];
    };
    Plane* current = &plane(from.way);
    const int startCost = from.first + current->pass[static_cast<std::ptrdiff_t>(start.row) * current->stride + start.column];
    if (startCost >= never)
        return std::nullopt;
    at(*current, start) = static_cast<Cost>(startCost);
    spreadAlong(*current, start.column);

    const auto apart = [](const Lines& lines, int a, int b) {
        return std::abs(lines.distance[static_cast<std::size_t>(a)] - lines.distance[static_cast<std::size_t>(b)]);
    };
    const int least = startCost + apart(grid.x(), from.cell.x, to.cell.x) + apart(grid.y(), from.cell.y, to.cell.y);
    Plane& last = plane(to.way);
    const auto isBest = [&](int bends) { return at(last, goal) <= least + (bends + 2) * prices_.bend; };
    if (current == &last && isBest(0))
        return traced(from, to, startCost);
    for (int bends = 1; bends <= mostBends; ++bends) {
        Plane* other = current == &level_ ? &upright_ : &level_;
        if (other == &last) {
            turnOnto(*current, last, goal.column);
            spreadAlong(last, goal.column);
            if (isBest(bends) || bends + 1 >= mostBends)
                break;
        }
        if (bends == 1)
            turnFrom(*current, *other, start.column);
        else
            turnAll(*current, *other);
        spread(*other);
        current = other;
    }
    if (at(last, goal) >= never)
        return std::nullopt;
    return traced(from, to, startCost);
}

Found Search::traced(const End& from, const End& to, int startCost)
{
    const Place start = placeOf(from.way, from.cell);
    Way way = to.way;
    Place place = placeOf(way, to.cell);
    Found found;
    int value = plane(way).cost[static_cast<std::ptrdiff_t>(place.row) * plane(way).columns + place.column];
    found.cost = value + to.first;
    int runStart = place.row;
    const auto close = [&] {
        const int offset = way == Way::Level ? window_.x0 : window_.y0;
        const int line = place.column + (way == Way::Level ? window_.y0 : window_.x0);
        found.runs.push_back({way, line, place.row + offset, runStart + offset});
    };
    while (!(way == from.way && place.row == start.row && place.column == start.column && value <= startCost)) {
        const Plane& here = plane(way);
        const Plane& other = plane(across(way));
        const auto cell = [&](const Plane& on, int row, int column) {
            return static_cast<int>(on.cost[static_cast<std::ptrdiff_t>(row) * on.columns + column]);
        };
        const std::ptrdiff_t spot = static_cast<std::ptrdiff_t>(place.row) * here.stride + place.column;
        const int pass = here.pass[spot];
        found.hasConflicts = found.hasConflicts || pass >= conflict;
        if (place.row > 0 && cell(here, place.row - 1, place.column) + here.step[place.row] + pass <= value) {
            --place.row;
            value = cell(here, place.row, place.column);
        } else if (place.row + 1 < here.rows &&
                   cell(here, place.row + 1, place.column) + here.step[place.row + 1] + pass <= value) {
            ++place.row;
            value = cell(here, place.row, place.column);
        } else {
            found.hasConflicts = found.hasConflicts || here.turn[spot] >= conflict;
            close();
            value = cell(other, place.column, place.row);
            way = across(way);
            place = {place.column, place.row};
            runStart = place.row;
        }
    }
    found.hasConflicts = found.hasConflicts || startCost >= conflict + from.first;
    close();
    std::reverse(found.runs.begin(), found.runs.end());
    return found;
}

} // namespace doorloom::routing
