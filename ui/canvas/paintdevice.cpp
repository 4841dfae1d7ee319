#include "canvas/sheetpainter.h"

#include <QPolygonF>

#include <algorithm>

// Devices, splices and notes.
namespace doorloom {
namespace {

constexpr int headInset = 20;

// Slanted lines: what was there before.
void hatch(QPainter& painter, const QRect& rect, int step, int thickness, QRgb colour)
{
    painter.save();
    painter.setClipRect(rect);
    painter.setPen(QPen(QColor::fromRgb(colour), thickness));
    for (int x = rect.left() - rect.height(); x < rect.right(); x += step)
        painter.drawLine(x, rect.bottom(), x + rect.height(), rect.top());
    painter.restore();
}

bool isHatched(Standing standing)
{
    return standing == Standing::Existing || standing == Standing::LeaveAlone;
}

bool isDashed(Standing standing)
{
    return standing == Standing::ByOthers || standing == Standing::Moved;
}

} // namespace

void SheetPainter::paintDevice(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn,
                               bool chosen, bool lit) const
{
    const QRect rect = view_.rect(drawn.area);
    if (!rect.adjusted(-8 * hair_, -8 * hair_, 8 * hair_, 8 * hair_).intersects(pixels_))
        return;
    if (lit)
        painter.fillRect(rect.adjusted(-5 * hair_, -5 * hair_, 5 * hair_, 5 * hair_),
                         QColor::fromRgb(look_->lit));
    if (chosen)
        painter.fillRect(rect.adjusted(-3 * hair_, -3 * hair_, 3 * hair_, 3 * hair_),
                         QColor::fromRgb(look_->chosen));
    painter.fillRect(rect, QColor::fromRgb(look_->device));
    if (detail_ == Detail::Far)
        paintFarDevice(painter, drawing, drawn);
    else
        paintNearDevice(painter, drawing, drawn);
    if (lit)
        drawOutline(painter, drawn.area.grownBy(static_cast<int>(4 * hair_ / view_.pixelsPerUnit)),
                    look_->litDash, 2 * hair_, true);
}

void SheetPainter::paintNearDevice(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn) const
{
    paintHead(painter, drawing, drawn);
    paintCells(painter, drawing, drawn);
    if (drawn.symbol != Symbol::None && detail_ == Detail::Near)
        paintSymbol(painter, drawn);
    drawOutline(painter, drawn.area, look_->deviceEdge, std::max(hair_, view_.length(3)),
                isDashed(drawn.standing));
}

// For a tag that is larger than true.
bool SheetPainter::hasRoom(const QRect& rect, const TextPool& texts, TextNumber tag) const
{
    const double high = fonts_[static_cast<std::size_t>(TextStyle::Tag)].capital;
    return widthOf(texts, tag, TextStyle::Tag) + 2 * hair_ <= rect.width() &&
           high + 4 * hair_ <= rect.height();
}

void SheetPainter::paintFarDevice(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn) const
{
    const QRect rect = view_.rect(drawn.area);
    painter.fillRect(view_.rect(drawn.shape.head.movedBy(drawn.at())), QColor::fromRgb(look_->head));
    drawOutline(painter, drawn.area, look_->deviceEdge, hair_, false);
    if (isReadable(TextStyle::Tag))
        write(painter, drawing.texts(), drawn.tag, TextStyle::Tag,
              view_.pixel(drawn.at() + Point{headInset, 40}), Across::Left, look_->ink);
    else if (hasRoom(rect, drawing.texts(), drawn.tag))
        write(painter, drawing.texts(), drawn.tag, TextStyle::Tag, rect.center(), Across::Middle, look_->ink);
}

void SheetPainter::paintHead(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn) const
{
    const Area head = drawn.shape.head.movedBy(drawn.at());
    const QRect rect = view_.rect(head);
    const TextPool& texts = drawing.texts();
    painter.fillRect(rect, QColor::fromRgb(look_->head));
    if (isHatched(drawn.standing))
        hatch(painter, rect, std::max(6, view_.length(20)), hair_, look_->cellLine);
    const int right = head.right - headInset, first = head.top + 34;
    if (isReadable(TextStyle::Tag) || hasRoom(rect, texts, drawn.tag))
        write(painter, texts, drawn.tag, TextStyle::Tag, view_.pixel({head.left + headInset, first}),
              Across::Left, look_->ink);
    if (!isReadable(TextStyle::Title))
        return;
    const bool hasCorner = drawn.corner != 0;
    if (hasCorner)
        write(painter, texts, drawn.corner, TextStyle::Corner, view_.pixel({right, first}), Across::Right,
              look_->softInk);
    int y = first + 42;
    for (const TextNumber line : drawn.title) {
        const bool isStanding = drawn.standing != Standing::New && line == drawn.title.back();
        write(painter, texts, line, TextStyle::Title, view_.pixel({head.left + headInset, y}), Across::Left,
              isStanding ? look_->ink : look_->softInk);
        y += 32;
    }
}

void SheetPainter::paintCells(QPainter& painter, const Drawing& drawing, const DeviceDrawn& drawn) const
{
    const StripShape& shape = drawn.shape;
    const TextPool& texts = drawing.texts();
    const QColor line = QColor::fromRgb(look_->cellLine), strong = QColor::fromRgb(look_->deviceEdge);
    const bool level = isLevel(shape.facing);
    for (std::size_t i = 0; i < shape.bands.size(); ++i) {
        const QRect band = view_.rect(shape.bands[i].area.movedBy(drawn.at()));
        const QRect start =
            level ? QRect(view_.x(drawn.area.left), band.top(), view_.length(drawn.area.width()), hair_)
                  : QRect(band.left(), band.top(), hair_, band.height());
        if (i > 0 || level)
            painter.fillRect(start, i == 0 ? strong : QColor::fromRgb(look_->frameEdge));
        if (isReadable(TextStyle::Band) && drawn.bands[i] != 0) {
            const int y =
                level ? shape.bands[i].area.top + terminalPitch / 2 : shape.bands[i].area.middle().y;
            write(painter, texts, drawn.bands[i], TextStyle::Band,
                  view_.pixel(drawn.at() + Point{shape.bands[i].area.left + headInset, y}), Across::Left,
                  look_->softInk);
        }
    }
    const bool readable = isReadable(TextStyle::Terminal);
    for (std::size_t i = 0; i < shape.cells.size(); ++i) {
        const Cell& cell = shape.cells[i];
        const QRect rect = view_.rect(cell.area.movedBy(drawn.at()));
        if (!rect.adjusted(-4 * hair_, 0, 4 * hair_, 0).intersects(pixels_))
            continue;
        painter.fillRect(
            QRect(rect.left(), rect.top(), level ? rect.width() : hair_, level ? hair_ : rect.height()),
            i == 0 && level ? strong : line);
        if (level && !shape.isThrough)
            painter.fillRect(QRect(shape.facing == Facing::Right ? rect.left() : rect.right(), rect.top(),
                                   hair_, rect.height()),
                             line);
        if (!drawn.leads.empty() && !cell.lead.empty()) {
            const Point at = cell.landing.at + drawn.at();
            const QPoint inner = view_.pixel(at + away(opposite(shape.facing), 14)),
                         outer = view_.pixel(at + away(shape.facing, 26));
            painter.fillRect(between(inner, outer, core_ / 2 + edge_, core_ - core_ / 2 + edge_),
                             QColor::fromRgb(look_->conductorEdge));
            painter.fillRect(between(inner, outer, core_ / 2, core_ - core_ / 2),
                             QColor::fromRgb(drawn.leads[i].base));
        } else {
            putMark(painter, screw_, view_.pixel(cell.landing.at + drawn.at()));
            if (shape.isThrough)
                putMark(painter, screw_, view_.pixel({drawn.area.left, cell.landing.at.y + drawn.at().y}));
        }
        if (readable) {
            const Point inside = shape.isThrough || !level ? cell.area.middle()
                                 : shape.facing == Facing::Right
                                     ? Point{cell.area.right - headInset, cell.area.middle().y}
                                     : Point{cell.area.left + headInset, cell.area.middle().y};
            write(painter, texts, drawn.names[i], TextStyle::Terminal, view_.pixel(drawn.at() + inside),
                  shape.isThrough || !level       ? Across::Middle
                  : shape.facing == Facing::Right ? Across::Right
                                                  : Across::Left,
                  look_->ink);
        }
    }
}

// A loose part shows what it is: its first lead is the band's side of a diode.
void SheetPainter::paintSymbol(QPainter& painter, const DeviceDrawn& drawn) const
{
    if (drawn.shape.bands.empty() || !isLevel(drawn.shape.facing))
        return;
    const QRectF body = view_.rect(drawn.shape.bands.front().area.movedBy(drawn.at()));
    const double size = view_.length(30);
    const QPointF middle(body.center().x(), body.center().y());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(
        QPen(QColor::fromRgb(look_->deviceEdge), std::max<double>(hair_, 3 * view_.pixelsPerUnit)));
    painter.setBrush(drawn.symbol == Symbol::Diode ? QBrush(QColor::fromRgb(look_->deviceEdge))
                                                   : QBrush(Qt::NoBrush));
    painter.drawLine(QPointF(middle.x(), body.top() + size / 3), QPointF(middle.x(), middle.y() - size / 2));
    painter.drawLine(QPointF(middle.x(), middle.y() + size / 2),
                     QPointF(middle.x(), body.bottom() - size / 3));
    if (drawn.symbol == Symbol::Diode) {
        painter.drawPolygon(QPolygonF{{{middle.x() - size / 2, middle.y() + size / 2},
                                       {middle.x() + size / 2, middle.y() + size / 2},
                                       {middle.x(), middle.y() - size / 2}}});
        painter.drawLine(QPointF(middle.x() - size / 2, middle.y() - size / 2),
                         QPointF(middle.x() + size / 2, middle.y() - size / 2));
    } else {
        painter.drawRect(QRectF(middle.x() - size / 4, middle.y() - size / 2, size / 2, size));
    }
    painter.restore();
}

void SheetPainter::paintSplice(QPainter& painter, const Drawing& drawing, const SpliceDrawn& drawn,
                               bool chosen) const
{
    const QPoint at = view_.pixel(drawn.at);
    if (chosen)
        painter.fillRect(
            QRect(at, at).adjusted(-splice_.width(), -splice_.width(), splice_.width(), splice_.width()),
            QColor::fromRgb(look_->chosenWash));
    putMark(painter, splice_, at);
    if (isReadable(TextStyle::Cable) && detail_ != Detail::Far)
        write(painter, drawing.texts(), drawn.tag, TextStyle::Cable, view_.pixel(drawn.at + Point{24, -28}),
              Across::Left, look_->ink);
}

void SheetPainter::paintNote(QPainter& painter, const Drawing& drawing, const NoteDrawn& drawn,
                             bool chosen) const
{
    const QRect rect = view_.rect(drawn.area);
    painter.fillRect(rect & pixels_, QColor::fromRgb(look_->note));
    painter.fillRect(QRect(rect.left(), rect.top(), std::max(2 * hair_, view_.length(8)), rect.height()),
                     QColor::fromRgb(look_->noteEdge));
    if (chosen)
        drawOutline(painter, drawn.area, look_->chosen, 2 * hair_, false);
    if (!isReadable(TextStyle::Note))
        return;
    int y = drawn.area.top + 20 + 22;
    for (const TextNumber line : drawn.lines) {
        write(painter, drawing.texts(), line, TextStyle::Note, view_.pixel({drawn.area.left + 32, y}),
              Across::Left, look_->ink);
        y += 44;
    }
}

} // namespace doorloom
