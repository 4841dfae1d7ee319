#include "canvas/sheetpainter.h"

#include <algorithm>
#include <cstdlib>

// Conductors and cables.
namespace doorloom {
namespace {

bool isOld(Standing standing)
{
    return standing != Standing::New;
}

} // namespace

void SheetPainter::paintConductor(QPainter& painter, const ConductorDrawn& drawn, bool chosen, bool lit) const
{
    const int half = core_ / 2, rest = core_ - half;
    if (lit || chosen) {
        const int halo = std::max(3 * hair_, view_.length(10));
        fillLine(painter, drawn.line, half + halo, rest + halo, lit ? look_->lit : look_->chosen);
        if (lit)
            fillPieces(painter, drawn.line, core_ + 2 * halo, std::max(2 * hair_, view_.length(8)),
                       std::max(6 * hair_, view_.length(24)), look_->litDash);
    }
    strokesOf(drawn);
    const int dash = std::max(8, view_.length(30)), dashGap = std::max(4, view_.length(14));
    if (isOld(drawn.standing)) { // not ours to pull: broken lines
        fillDashes(painter, core_ + 2 * edge_, dash, dashGap, look_->conductorEdge);
        fillDashes(painter, core_, dash, dashGap, drawn.insulation.base);
    } else {
        fillStrokes(painter, half + edge_, rest + edge_, look_->conductorEdge);
        fillStrokes(painter, half, rest, drawn.insulation.base);
        const int stripe = std::max(3, view_.length(14));
        if (drawn.insulation.stripe)
            fillDashes(painter, core_, stripe, stripe, *drawn.insulation.stripe);
    }
    if (!drawn.straight.empty())
        paintStraight(painter, drawn);
}

// Where there is no way round what stands on the sheet: a broken line straight across, with a mark.
void SheetPainter::paintStraight(QPainter& painter, const ConductorDrawn& drawn) const
{
    const QColor edge = QColor::fromRgb(look_->conductorEdge);
    for (const std::size_t piece : drawn.straight) {
        const QPoint a = view_.pixel(drawn.line[piece]), b = view_.pixel(drawn.line[piece + 1]);
        QPen pen(edge, std::max(core_ + edge_, 2 * hair_));
        pen.setDashPattern({4, 2});
        pen.setCapStyle(Qt::FlatCap);
        painter.setPen(pen);
        painter.drawLine(a, b);
        const QPoint middle = (a + b) / 2;
        const int half = std::max(6 * hair_, view_.length(22)), bar = std::max(hair_, half / 5);
        painter.setPen(QPen(edge, hair_));
        painter.setBrush(QColor::fromRgb(look_->paper));
        const QPoint diamond[] = {middle - QPoint(0, half), middle + QPoint(half, 0), middle + QPoint(0, half),
                                  middle - QPoint(half, 0)};
        painter.drawConvexPolygon(diamond, 4);
        painter.fillRect(QRect(middle.x() - bar / 2, middle.y() - half / 2, bar, half / 2), edge);
        painter.fillRect(QRect(middle.x() - bar / 2, middle.y() + half / 4, bar, bar), edge);
    }
}

void SheetPainter::paintEnds(QPainter& painter, const Drawing& drawing, const ConductorDrawn& drawn) const
{
    const bool letters = detail_ == Detail::Near && isReadable(TextStyle::Letters);
    const bool isInCable = drawn.trunkLast > drawn.trunkFirst;
    for (std::size_t i = 0; i < 2; ++i) {
        const EndDrawn& end = drawn.ends[i];
        const QPoint at = view_.pixel(end.port.at);
        if (!pixels_.adjusted(-200 * hair_, -200 * hair_, 200 * hair_, 200 * hair_).contains(at))
            continue;
        const int reach = std::max(3 * hair_, view_.length(corePitch / 2.0));
        const bool level = isLevel(end.port.facing);
        switch (end.mark) {
        case EndMark::Waiting: // of a cable the ring is the gland's, with their count
            if (!isInCable)
                painter.drawPixmap(at - QPoint(ring_.width() / 2, ring_.height() / 2), ring_);
            break;
        case EndMark::Spare:
        case EndMark::Insulated: { // capped: a bar; on purpose: a block
            const int deep = end.mark == EndMark::Spare ? hair_ * 2 : reach * 2;
            painter.fillRect(QRect(at.x() - (level ? deep / 2 : reach), at.y() - (level ? reach : deep / 2),
                                   level ? deep : 2 * reach, level ? 2 * reach : deep),
                             QColor::fromRgb(look_->conductorEdge));
            break;
        }
        case EndMark::Elsewhere:
            drawReference(painter, drawing, end.port, end.reference);
            break;
        case EndMark::Landed:
            break;
        }
        if (letters && end.isHeld && !end.isSplice && drawn.letters != 0) {
            const Point beside = level ? Point{0, -18} : Point{12, 0};
            const Point out = end.port.at + away(end.port.facing, 16) + beside;
            const Across across = end.port.facing == Facing::Left ? Across::Right : Across::Left;
            const Point down = end.port.facing == Facing::Bottom ? Point{0, 12}
                               : end.port.facing == Facing::Top  ? Point{0, -12}
                                                                 : Point{};
            write(painter, drawing.texts(), drawn.letters, TextStyle::Letters, view_.pixel(out + down),
                  across, look_->softInk);
        }
    }
}

void SheetPainter::drawReference(QPainter& painter, const Drawing& drawing, const Port& port,
                                 TextNumber words) const
{
    const QPoint at = view_.pixel(port.at);
    const int size = std::max(4 * hair_, view_.length(16));
    const Point step = away(port.facing, 1);
    const QPoint tip = at + QPoint(step.x * size, step.y * size);
    const QPoint side = isLevel(port.facing) ? QPoint(0, size / 2) : QPoint(size / 2, 0);
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor::fromRgb(look_->ink));
    const QPoint arrow[] = {at - side, at + side, tip};
    painter.drawConvexPolygon(arrow, 3);
    if (!isReadable(TextStyle::Reference))
        return;
    const Across across = port.facing == Facing::Right  ? Across::Left
                          : port.facing == Facing::Left ? Across::Right
                                                        : Across::Middle;
    write(painter, drawing.texts(), words, TextStyle::Reference, view_.pixel(port.at + away(port.facing, 34)),
          across, look_->ink);
}

void SheetPainter::paintCable(QPainter& painter, const Drawing&, const CableDrawn& drawn, bool chosen) const
{
    if (!chosen)
        return;
    const int half = view_.length(drawn.plan.cores * corePitch / 2.0) + std::max(3 * hair_, view_.length(10));
    fillLine(painter, drawn.plan.trunk, half, half, look_->chosenWash);
}

// The jacket's ticks and tag, and the rings of waiting ends, over the cores.
void SheetPainter::paintCableWords(QPainter& painter, const Drawing& drawing, const CableDrawn& drawn) const
{
    const QColor jacket = QColor::fromRgb(look_->jacket);
    for (const Area& area : drawn.ticks) {
        const QRect tick = view_.rect(area).adjusted(-hair_, -hair_, hair_, hair_);
        painter.fillRect(tick, QColor::fromRgb(look_->conductorEdge));
        painter.fillRect(tick.adjusted(hair_, hair_, -hair_, -hair_), jacket);
    }
    for (std::size_t side = 0; side < 2; ++side) {
        const Ring& ring = drawn.rings[side];
        if (drawn.elsewhere[side] != 0)
            drawReference(painter, drawing,
                          {ring.at + away(opposite(drawn.plan.glands[side].facing), 30),
                           opposite(drawn.plan.glands[side].facing)},
                          drawn.elsewhere[side]);
        if (ring.waiting == 0)
            continue;
        const QPoint at = view_.pixel(ring.at);
        painter.drawPixmap(at - QPoint(ring_.width() / 2, ring_.height() / 2), ring_);
        if (isReadable(TextStyle::Letters))
            write(painter, drawing.texts(), ring.count, TextStyle::Letters, at, Across::Middle,
                  look_->waiting);
    }
    if (drawn.tag == 0 || !isReadable(TextStyle::Cable))
        return;
    for (const Area& tag : drawn.tags)
        if (!tag.isEmpty())
            write(painter, drawing.texts(), drawn.tag, TextStyle::Cable, view_.pixel(tag.middle()),
                  Across::Middle, look_->jacketInk);
}

} // namespace doorloom
