#pragma once

#include "model/rows.h"

#include <algorithm>
#include <vector>

namespace doorloom {

// A rectangle of the sheet, edges included, in tenths of a millimetre. Empty until it holds something.
struct Area {
    int left = 0, top = 0, right = -1, bottom = -1;

    bool isEmpty() const { return right < left || bottom < top; }
    int width() const { return right - left; }
    int height() const { return bottom - top; }
    Point middle() const { return {left + width() / 2, top + height() / 2}; }
    bool holds(Point point) const
    {
        return point.x >= left && point.x <= right && point.y >= top && point.y <= bottom;
    }
    bool holds(const Area& other) const
    {
        return !other.isEmpty() && other.left >= left && other.right <= right && other.top >= top &&
               other.bottom <= bottom;
    }
    bool meets(const Area& other) const
    {
        return !isEmpty() && !other.isEmpty() && left <= other.right && other.left <= right &&
               top <= other.bottom && other.top <= bottom;
    }
    Area grownBy(int more) const
    {
        return isEmpty() ? *this : Area{left - more, top - more, right + more, bottom + more};
    }
    Area movedBy(Point by) const { return {left + by.x, top + by.y, right + by.x, bottom + by.y}; }

    friend bool operator==(const Area&, const Area&) = default;
};

inline Area together(const Area& a, const Area& b)
{
    if (a.isEmpty() || b.isEmpty())
        return a.isEmpty() ? b : a;
    return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right),
            std::max(a.bottom, b.bottom)};
}

inline Area areaOf(Point a, Point b)
{
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

inline Area areaOfLine(const std::vector<Point>& line)
{
    Area area;
    for (const Point point : line)
        area = together(area, areaOf(point, point));
    return area;
}

inline Point operator+(Point a, Point b)
{
    return {a.x + b.x, a.y + b.y};
}

inline Point operator-(Point a, Point b)
{
    return {a.x - b.x, a.y - b.y};
}

// Devices stand on a grid of 2.5 mm; terminals are two steps apart.
constexpr int gridStep = 25;

inline int onGrid(int value)
{
    return (value >= 0 ? value + gridStep / 2 : value - gridStep / 2) / gridStep * gridStep;
}

inline Point onGrid(Point point)
{
    return {onGrid(point.x), onGrid(point.y)};
}

// The least area with its edges on the grid that holds this one.
inline Area outToGrid(const Area& area)
{
    const auto down = [](int value) { return (value >= 0 ? value : value - gridStep + 1) / gridStep * gridStep; };
    return area.isEmpty() ? area : Area{down(area.left), down(area.top), -down(-area.right), -down(-area.bottom)};
}

} // namespace doorloom
