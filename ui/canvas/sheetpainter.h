#pragma once

#include "canvas/drawing.h"
#include "canvas/look.h"
#include "canvas/view.h"

#include <QPainter>
#include <QPixmap>

#include <array>
#include <cstdint>
#include <vector>

namespace doorloom {

// The rectangle of a level or upright piece of a line, so many pixels thick before and after its middle.
inline QRect between(QPoint a, QPoint b, int before, int after)
{
    const int left = std::min(a.x(), b.x()), right = std::max(a.x(), b.x());
    const int top = std::min(a.y(), b.y()), bottom = std::max(a.y(), b.y());
    return {left - before, top - before, right - left + before + after, bottom - top + before + after};
}

inline void putMark(QPainter& painter, const QPixmap& mark, QPoint middle)
{
    painter.drawPixmap(middle - QPoint(mark.width() / 2, mark.height() / 2), mark);
}

// What is chosen and lit, by places in Drawing's lists: looked up once, when it changes.
struct Emphasis {
    std::vector<bool> devices, conductors, cables, splices, notes; // chosen
    std::vector<bool> litDevices, litConductors;                   // on a finding's path
};

// How much is shown: less of it the smaller the sheet is on the screen.
enum class Detail { Far, Middle, Near };

// Paints a drawing onto a device whose pixels are the view's. It looks nothing up by name, lays no text out
// and allocates nothing for a conductor: level and upright lines are filled rectangles, words are static
// text, round marks are small pictures made once for a scale.
class SheetPainter {
public:
    // For the next paints: fonts and marks in their sizes.
    void setUp(const Drawing& drawing, const View& view, const Look& look);

    void paint(QPainter& painter, const Drawing& drawing, const Emphasis& emphasis, const QRect& pixels);

    // ---- For what tools and the focus draw on top
    void drawLine(QPainter& painter, const std::vector<Point>& line, QRgb colour, int units) const;
    void drawDashes(QPainter& painter, const std::vector<Point>& line, QRgb colour, int units) const;
    void drawOutline(QPainter& painter, const Area& area, QRgb colour, int pixels, bool dashed) const;
    void drawWords(QPainter& painter, const TextPool& texts, TextNumber words, TextStyle style, QPoint at,
                   QRgb colour) const;
    Detail detail() const { return detail_; }
    int hair() const { return hair_; } // the thinnest line that is seen, in device pixels

private:
    struct FontAt {
        QFont font;
        double ascent = 0, capital = 0,
               perUnit = 0; // in device pixels; of width, for each tenth of a millimetre
    };
    enum class Across { Left, Middle, Right };

    void paintFrames(QPainter& painter, const Drawing& drawing) const;
    void paintFrameLabels(QPainter& painter, const Drawing& drawing) const;
    void paintNearDevice(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn) const;
    void paintFarDevice(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn) const;
    void paintConductors(QPainter& painter, const Drawing& drawing, const Emphasis& emphasis) const;
    void paintFar(QPainter& painter, const Drawing& drawing, const Emphasis& emphasis) const;
    void paintConductor(QPainter& painter, const ConductorDrawn& drawn, bool chosen, bool lit) const;
    void paintEnds(QPainter& painter, const Drawing& drawing, const ConductorDrawn& drawn) const;
    void paintCable(QPainter& painter, const Drawing& drawing, const CableDrawn& drawn, bool chosen) const;
    void paintCableWords(QPainter& painter, const Drawing& drawing, const CableDrawn& drawn) const;
    void paintDevice(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn, bool chosen,
                     bool lit) const;
    void paintHead(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn) const;
    void paintCells(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn) const;
    void paintSymbol(QPainter& painter, const DeviceDrawn& drawn) const;
    void paintSplice(QPainter& painter, const Drawing& drawing, const SpliceDrawn& drawn, bool chosen) const;
    void paintNote(QPainter& painter, const Drawing& drawing, const NoteDrawn& drawn, bool chosen) const;

    // A level or upright piece; cut: where it ends at a gap and not at a corner.
    struct Stroke {
        Point a, b;
        bool isCutA = false, isCutB = false;
    };
    void strokesOf(const ConductorDrawn& drawn) const;
    void fillLine(QPainter& painter, const std::vector<Point>& line, int halfBefore, int halfAfter,
                  QRgb colour) const;
    void fillStrokes(QPainter& painter, int halfBefore, int halfAfter, QRgb colour) const;
    void fillPieces(QPainter& painter, const std::vector<Point>& line, int thickness, int on, int off,
                    QRgb colour) const;
    void fillPiece(QPainter& painter, Point from, Point to, int thickness, int on, int off, QRgb colour) const;
    void fillDashes(QPainter& painter, int thickness, int on, int off, QRgb colour) const; // of strokes
    void paintStraight(QPainter& painter, const ConductorDrawn& drawn) const;
    void drawReference(QPainter& painter, const Drawing& drawing, const Port& port, TextNumber words) const;
    void write(QPainter& painter, const TextPool& texts, TextNumber words, TextStyle style, QPoint at,
               Across across, QRgb colour) const;
    bool isReadable(TextStyle style) const;                                      // in its true size
    int widthOf(const TextPool& texts, TextNumber words, TextStyle style) const; // in device pixels
    bool hasRoom(const QRect& rect, const TextPool& texts, TextNumber tag) const;
    QRgb farColour(const ConductorDrawn& drawn) const;

    View view_;
    const Look* look_ = nullptr;
    Detail detail_ = Detail::Near;
    int hair_ = 1, core_ = 3, edge_ = 1;
    std::array<FontAt, textStyles> fonts_;
    QPixmap screw_, ring_, splice_;
    QRect pixels_; // being painted
    mutable std::vector<Stroke> strokes_; // of the conductor being painted: used again
    Visible visible_;
};

} // namespace doorloom
