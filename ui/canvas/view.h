#pragma once

#include "sheet/area.h"

#include <QPointF>
#include <QRect>

#include <cmath>

namespace doorloom {

// From the sheet to the device's own pixels and back. The offset is in whole pixels, so that the picture can
// be scrolled by copying it.
struct View {
    double scale = 1;           // 1: true size
    double pixelsPerUnit = 0.4; // of the device, at this scale
    double ratio = 1;           // device pixels in one of the widget's
    QPoint offset;              // of the widget's upper left corner on the sheet, in device pixels

    int x(int units) const { return static_cast<int>(std::lround(units * pixelsPerUnit)) - offset.x(); }
    int y(int units) const { return static_cast<int>(std::lround(units * pixelsPerUnit)) - offset.y(); }
    QPoint pixel(Point point) const { return {x(point.x), y(point.y)}; }
    QRect rect(const Area& area) const
    {
        return {QPoint(x(area.left), y(area.top)), QPoint(x(area.right) - 1, y(area.bottom) - 1)};
    }
    int length(double units) const { return static_cast<int>(std::lround(units * pixelsPerUnit)); }

    Point point(QPointF at) const // of the widget
    {
        return {static_cast<int>(std::lround((at.x() * ratio + offset.x()) / pixelsPerUnit)),
                static_cast<int>(std::lround((at.y() * ratio + offset.y()) / pixelsPerUnit))};
    }
    Area area(const QRect& widgets) const // a pixel more on every side
    {
        return together(
            areaOf(point(widgets.topLeft() - QPoint(1, 1)), point(widgets.topLeft() - QPoint(1, 1))),
            areaOf(point(widgets.bottomRight() + QPoint(2, 2)), point(widgets.bottomRight() + QPoint(2, 2))));
    }
    QRect widgetRect(const Area& area) const // a few pixels more on every side
    {
        const QRect pixels = rect(area);
        return QRect(QPoint(static_cast<int>(std::floor(pixels.left() / ratio)),
                            static_cast<int>(std::floor(pixels.top() / ratio))),
                     QPoint(static_cast<int>(std::ceil(pixels.right() / ratio)),
                            static_cast<int>(std::ceil(pixels.bottom() / ratio))))
            .adjusted(-4, -4, 4, 4);
    }
};

} // namespace doorloom
