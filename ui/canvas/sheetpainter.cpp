#include "canvas/sheetpainter.h"

#include <QFontMetricsF>

#include <algorithm>
#include <cmath>

namespace doorloom {
namespace {

constexpr double leastReadable = 5.5; // pixels of the widget: smaller words are left out
constexpr double leastLabel = 7; // tags of devices and boxes are never smaller: they go where they don't fit
constexpr double nearPitch = 11, middlePitch = 4.5; // of terminals, in pixels of the widget
constexpr int spill = 4;     // pixels of the widget that a label may be wider than its box
constexpr int gapHalf = 11;  // of the gap where a conductor passes under another
constexpr int coreUnits = 8; // a conductor with its insulation, a little thicker than true

QPixmap roundMark(int pixels, QRgb fill, QRgb edge, double edgePixels)
{
    QPixmap mark(pixels, pixels);
    mark.fill(Qt::transparent);
    QPainter painter(&mark);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(QColor::fromRgba(edge), edgePixels));
    painter.setBrush(QColor::fromRgba(fill));
    const double inset = edgePixels / 2 + 0.25;
    painter.drawEllipse(QRectF(inset, inset, pixels - 2 * inset, pixels - 2 * inset));
    return mark;
}

} // namespace

void SheetPainter::setUp(const Drawing& drawing, const View& view, const Look& look)
{
    const bool otherSize =
        view.pixelsPerUnit != view_.pixelsPerUnit || view.ratio != view_.ratio || look_ != &look;
    view_ = view;
    look_ = &look;
    if (!otherSize && !screw_.isNull())
        return;
    const double pitch = terminalPitch * view.pixelsPerUnit / view.ratio;
    detail_ = pitch >= nearPitch ? Detail::Near : pitch >= middlePitch ? Detail::Middle : Detail::Far;
    hair_ = std::max(1, static_cast<int>(view.ratio));
    core_ = std::max(hair_, view.length(coreUnits));
    edge_ = detail_ == Detail::Far ? 0 : std::max(hair_, view.length(2.5));
    for (std::size_t style = 0; style < textStyles; ++style) {
        FontAt& at = fonts_[style];
        const auto each = static_cast<TextStyle>(style);
        const bool isLabel = each == TextStyle::Tag || each == TextStyle::Place;
        const double trueHeight = heightOf(each) * view.pixelsPerUnit;
        const double height = isReadable(each) || !isLabel ? trueHeight : leastLabel * view.ratio;
        at.font = drawing.texts().fontOf(each, height);
        at.perUnit = height / heightOf(each);
        const QFontMetricsF metrics(at.font);
        at.ascent = metrics.ascent();
        at.capital = metrics.capHeight();
    }
    screw_ = roundMark(std::max(3 * hair_, view.length(20)) | 1, look.device, look.deviceEdge,
                       std::max(1.0, 2.6 * view.pixelsPerUnit));
    ring_ = roundMark(std::max(7 * hair_, view.length(46)) | 1, look.paper, look.waiting,
                      std::max(1.5, 6 * view.pixelsPerUnit));
    splice_ = roundMark(std::max(5 * hair_, view.length(34)) | 1, look.deviceEdge, look.paper,
                        std::max(1.0, 3 * view.pixelsPerUnit));
}

bool SheetPainter::isReadable(TextStyle style) const
{
    return heightOf(style) * view_.pixelsPerUnit / view_.ratio >= leastReadable;
}

int SheetPainter::widthOf(const TextPool& texts, TextNumber words, TextStyle style) const
{
    return static_cast<int>(std::ceil(texts.width(words) * fonts_[static_cast<std::size_t>(style)].perUnit));
}

void SheetPainter::write(QPainter& painter, const TextPool& texts, TextNumber words, TextStyle style,
                         QPoint at, Across across, QRgb colour) const
{
    if (words == 0)
        return;
    const FontAt& font = fonts_[static_cast<std::size_t>(style)];
    const double width = texts.width(words) * font.perUnit;
    const double left = across == Across::Left     ? at.x()
                        : across == Across::Middle ? at.x() - width / 2
                                                   : at.x() - width;
    painter.setFont(font.font);
    painter.setPen(QColor::fromRgb(colour));
    painter.drawStaticText(QPointF(std::round(left), std::round(at.y() + font.capital / 2 - font.ascent)),
                           texts.text(words));
}

void SheetPainter::drawWords(QPainter& painter, const TextPool& texts, TextNumber words, TextStyle style,
                             QPoint at, QRgb colour) const
{
    write(painter, texts, words, style, at, Across::Left, colour);
}

// ---- Lines

void SheetPainter::fillLine(QPainter& painter, const std::vector<Point>& line, int before, int after,
                            QRgb colour) const
{
    const QColor fill = QColor::fromRgb(colour);
    QPoint last = view_.pixel(line.front());
    for (std::size_t i = 1; i < line.size(); ++i) {
        const QPoint next = view_.pixel(line[i]);
        const QRect piece = between(last, next, before, after);
        const bool isOblique = last.x() != next.x() && last.y() != next.y();
        if (isOblique) { // straight across, where there is no way
            painter.setPen(QPen(fill, before + after));
            painter.drawLine(last, next);
        } else if (piece.intersects(pixels_)) {
            painter.fillRect(piece, fill);
        }
        last = next;
    }
}

// Dashes along each piece, starting anew at each bend.
// A corner is filled out; what ends at a gap ends there.
void SheetPainter::fillStrokes(QPainter& painter, int before, int after, QRgb colour) const
{
    const QColor fill = QColor::fromRgb(colour);
    for (const Stroke& stroke : strokes_) {
        QRect piece = between(view_.pixel(stroke.a), view_.pixel(stroke.b), before, after);
        const bool isDown = stroke.a.y < stroke.b.y;
        if (isDown ? stroke.isCutA : stroke.isCutB)
            piece.setTop(piece.top() + before);
        if (isDown ? stroke.isCutB : stroke.isCutA)
            piece.setBottom(piece.bottom() - after);
        if (piece.intersects(pixels_))
            painter.fillRect(piece, fill);
    }
}

// The pieces of a conductor between its corners and gaps; without those where it has no way.
void SheetPainter::strokesOf(const ConductorDrawn& drawn) const
{
    strokes_.clear();
    auto gap = drawn.gaps.begin();
    for (std::size_t i = 0; i + 1 < drawn.line.size(); ++i) {
        if (std::find(drawn.straight.begin(), drawn.straight.end(), i) != drawn.straight.end())
            continue;
        Point from = drawn.line[i];
        const Point to = drawn.line[i + 1];
        const auto first = gap;
        while (gap != drawn.gaps.end() && gap->piece == i)
            ++gap;
        const bool isDown = from.y < to.y;
        bool isCut = false;
        for (auto k = first; k != gap; ++k) {
            const int y = isDown ? k->at : std::prev(gap, 1 + (k - first))->at;
            const int half = isDown ? gapHalf : -gapHalf;
            if ((y - half - from.y) * (isDown ? 1 : -1) > 0)
                strokes_.push_back({from, {from.x, y - half}, isCut, true});
            from.y = y + half;
            isCut = true;
        }
        strokes_.push_back({from, to, isCut, false});
    }
}

void SheetPainter::fillPieces(QPainter& painter, const std::vector<Point>& line, int thickness, int on, int off,
                              QRgb colour) const
{
    for (std::size_t i = 1; i < line.size(); ++i)
        fillPiece(painter, line[i - 1], line[i], thickness, on, off, colour);
}

void SheetPainter::fillDashes(QPainter& painter, int thickness, int on, int off, QRgb colour) const
{
    for (const Stroke& stroke : strokes_)
        fillPiece(painter, stroke.a, stroke.b, thickness, on, off, colour);
}

void SheetPainter::fillPiece(QPainter& painter, Point from, Point to, int thickness, int on, int off,
                             QRgb colour) const
{
    const QColor fill = QColor::fromRgb(colour);
    const int before = thickness / 2, step = on + off;
    const QPoint a = view_.pixel(from), b = view_.pixel(to);
    if (a.x() != b.x() && a.y() != b.y())
        return;
    const QRect piece = between(a, b, before, thickness - before) & pixels_.adjusted(-step, -step, step, step);
    if (piece.isEmpty())
        return;
    const bool level = a.y() == b.y();
    const int start = level ? std::min(a.x(), b.x()) : std::min(a.y(), b.y());
    const int end = level ? std::max(a.x(), b.x()) : std::max(a.y(), b.y());
    const int seen = level ? piece.left() : piece.top(), last = level ? piece.right() : piece.bottom();
    for (int at = start + off / 2 + std::max(0, (seen - start) / step * step); at < std::min(end, last + 1);
         at += step) {
        const int length = std::min(on, end - at);
        painter.fillRect(level ? QRect(at, a.y() - before, length, thickness)
                               : QRect(a.x() - before, at, thickness, length),
                         fill);
    }
}

void SheetPainter::drawLine(QPainter& painter, const std::vector<Point>& line, QRgb colour, int units) const
{
    const int thickness = std::max(hair_, view_.length(units));
    if (line.size() > 1)
        fillLine(painter, line, thickness / 2, thickness - thickness / 2, colour);
}

void SheetPainter::drawDashes(QPainter& painter, const std::vector<Point>& line, QRgb colour, int units) const
{
    const int thickness = std::max(hair_, view_.length(units));
    fillPieces(painter, line, thickness, 3 * thickness, 2 * thickness, colour);
}

void SheetPainter::drawOutline(QPainter& painter, const Area& area, QRgb colour, int pixels,
                               bool dashed) const
{
    const QRect rect = view_.rect(area);
    const QColor fill = QColor::fromRgb(colour);
    if (!dashed) {
        painter.fillRect(QRect(rect.left(), rect.top(), rect.width(), pixels), fill);
        painter.fillRect(QRect(rect.left(), rect.bottom() - pixels + 1, rect.width(), pixels), fill);
        painter.fillRect(QRect(rect.left(), rect.top(), pixels, rect.height()), fill);
        painter.fillRect(QRect(rect.right() - pixels + 1, rect.top(), pixels, rect.height()), fill);
        return;
    }
    const int on = 5 * hair_, step = 8 * hair_;
    for (int x = rect.left(); x < rect.right(); x += step)
        for (const int y : {rect.top(), rect.bottom() - pixels + 1})
            painter.fillRect(QRect(x, y, std::min(on, rect.right() - x + 1), pixels), fill);
    for (int y = rect.top(); y < rect.bottom(); y += step)
        for (const int x : {rect.left(), rect.right() - pixels + 1})
            painter.fillRect(QRect(x, y, pixels, std::min(on, rect.bottom() - y + 1)), fill);
}

// ---- All

void SheetPainter::paint(QPainter& painter, const Drawing& drawing, const Emphasis& emphasis,
                         const QRect& pixels)
{
    pixels_ = pixels;
    const QRect widgets(QPoint(static_cast<int>(std::floor(pixels.left() / view_.ratio)),
                               static_cast<int>(std::floor(pixels.top() / view_.ratio))),
                        QPoint(static_cast<int>(std::ceil(pixels.right() / view_.ratio)),
                               static_cast<int>(std::ceil(pixels.bottom() / view_.ratio))));
    drawing.lookUp(view_.area(widgets.adjusted(-spill, -spill, spill, spill)), visible_);
    painter.fillRect(pixels, QColor::fromRgb(look_->paper));
    paintFrames(painter, drawing);
    if (detail_ == Detail::Far)
        paintFar(painter, drawing, emphasis);
    else
        paintConductors(painter, drawing, emphasis);
    for (const std::uint32_t i : visible_.devices)
        paintDevice(painter, drawing, drawing.devices()[i], emphasis.devices[i], emphasis.litDevices[i]);
    for (const std::uint32_t i : visible_.splices)
        paintSplice(painter, drawing, drawing.splices()[i], emphasis.splices[i]);
    for (const std::uint32_t i : visible_.notes)
        paintNote(painter, drawing, drawing.notes()[i], emphasis.notes[i]);
    if (!isReadable(TextStyle::Place))
        paintFrameLabels(painter, drawing);
}

void SheetPainter::paintFrames(QPainter& painter, const Drawing& drawing) const
{
    for (const std::uint32_t i : visible_.frames) {
        const FrameDrawn& frame = drawing.frames()[i];
        painter.fillRect(view_.rect(frame.area) & pixels_, QColor::fromRgb(look_->frame));
        drawOutline(painter, frame.area, look_->frameEdge, hair_, false);
        if (!isReadable(TextStyle::Place))
            continue;
        const Point corner{frame.area.left + 40, frame.area.top + 48};
        write(painter, drawing.texts(), frame.tag, TextStyle::Place, view_.pixel(corner), Across::Left,
              look_->frameInk);
        const Point beside{corner.x + static_cast<int>(drawing.texts().width(frame.tag)) + 24, corner.y};
        if (isReadable(TextStyle::PlaceWords))
            write(painter, drawing.texts(), frame.words, TextStyle::PlaceWords, view_.pixel(beside),
                  Across::Left, look_->frameInk);
    }
}

// From far away the tags of boxes are what tells doors apart: in a size that can be read, over what is in the
// box.
void SheetPainter::paintFrameLabels(QPainter& painter, const Drawing& drawing) const
{
    const int height = static_cast<int>(std::lround((leastLabel + 2) * view_.ratio)), margin = hair_;
    for (const std::uint32_t i : visible_.frames) {
        const FrameDrawn& frame = drawing.frames()[i];
        const QRect box = view_.rect(frame.area);
        const QRect plate(box.left(), box.top(),
                          widthOf(drawing.texts(), frame.tag, TextStyle::Place) + 2 * margin, height);
        if (frame.tag == 0 || plate.width() > box.width() + spill * view_.ratio ||
            plate.height() > box.height())
            continue;
        painter.fillRect(plate, QColor::fromRgb(look_->frame));
        write(painter, drawing.texts(), frame.tag, TextStyle::Place,
              {plate.left() + margin, plate.center().y()}, Across::Left, look_->ink);
    }
}

void SheetPainter::paintConductors(QPainter& painter, const Drawing& drawing, const Emphasis& emphasis) const
{
    for (const std::uint32_t i : visible_.cables)
        paintCable(painter, drawing, drawing.cables()[i], emphasis.cables[i]);
    for (const std::uint32_t i : visible_.conductors)
        paintConductor(painter, drawing.conductors()[i], emphasis.conductors[i], emphasis.litConductors[i]);
    for (const std::uint32_t i : visible_.conductors)
        paintEnds(painter, drawing, drawing.conductors()[i]);
    for (const std::uint32_t i : visible_.cables)
        paintCableWords(painter, drawing, drawing.cables()[i]);
}

// What would not show on the paper is grey: there is no room for an edge.
QRgb SheetPainter::farColour(const ConductorDrawn& drawn) const
{
    constexpr int leastContrast = 40;
    const bool shows = std::abs(qGray(drawn.insulation.base) - qGray(look_->paper)) >= leastContrast;
    return shows ? drawn.insulation.base : look_->jacket;
}

// Lines of one colour together: what is a pixel thin has no upper and lower.
void SheetPainter::paintFar(QPainter& painter, const Drawing& drawing, const Emphasis& emphasis) const
{
    for (const std::uint32_t i : visible_.conductors) {
        const ConductorDrawn& drawn = drawing.conductors()[i];
        if (emphasis.conductors[i] || emphasis.litConductors[i])
            fillLine(painter, drawn.line, 2 * hair_, 2 * hair_ + 1,
                     emphasis.litConductors[i] ? look_->lit : look_->chosen);
        const QRgb colour = farColour(drawn);
        QPoint last = view_.pixel(drawn.line.front());
        for (std::size_t k = 1; k < drawn.line.size(); ++k) {
            const QPoint next = view_.pixel(drawn.line[k]);
            const bool isOblique = next.x() != last.x() && next.y() != last.y();
            if (isOblique) {
                painter.setPen(QPen(QColor::fromRgb(colour), hair_, Qt::DashLine));
                painter.drawLine(last, next);
            } else if (next != last)
                painter.fillRect(between(last, next, 0, hair_), QColor::fromRgb(colour));
            last = next;
        }
    }
    for (const std::uint32_t i : visible_.cables)
        for (const Ring& ring : drawing.cables()[i].rings)
            if (ring.waiting > 0)
                putMark(painter, ring_, view_.pixel(ring.at));
}

} // namespace doorloom
