#include "canvas/sheetview.h"

#include "canvas/insideview.h"
#include "canvas/walk.h"

#include <QFocusEvent>
#include <QKeyEvent>

#include <optional>

// The keyboard on the sheet.
namespace doorloom {
namespace {

std::optional<Facing> sideOf(int key)
{
    switch (key) {
    case Qt::Key_Right:
        return Facing::Right;
    case Qt::Key_Down:
        return Facing::Bottom;
    case Qt::Key_Left:
        return Facing::Left;
    case Qt::Key_Up:
        return Facing::Top;
    default:
        return std::nullopt;
    }
}

bool isEnter(int key)
{
    return key == Qt::Key_Return || key == Qt::Key_Enter;
}

} // namespace

// The focus is a pointer too: it presses, and lines follow it.
void SheetView::walkTo(std::uint32_t row, std::size_t cell, bool onTerminal)
{
    Desk& desk = inside_->desk;
    const Hit hit{onTerminal                           ? Hit::What::Terminal
                  : desk.drawing().devices().find(row) ? Hit::What::Device
                  : desk.drawing().splices().find(row) ? Hit::What::Splice
                                                       : Hit::What::Note,
                  row, cell, 0, WhichEnd::From};
    desk.setFocus(hit, true);
    if (!desk.isBusy())
        desk.selection().choose({row});
    const Area area = focusArea(desk.drawing(), hit);
    if (!desk.view().area(rect()).holds(area))
        desk.centreOn(area);
    desk.move({desk.view().widgetRect(area).center(), area.middle(), hit, Qt::NoModifier, true});
    emit hovered(wordsOfFocus());
    tellFocus();
}

void SheetView::keyPressEvent(QKeyEvent* event)
{
    Desk& desk = inside_->desk;
    const Hit focus = desk.focus().hit;
    const bool walks = desk.focus().isShown;
    if (event->key() == Qt::Key_Escape) {
        if (desk.isBusy())
            desk.stop();
        else if (tool() != Tool::Choose)
            useTool(Tool::Choose);
        else if (focus.what == Hit::What::Terminal && walks)
            walkTo(focus.row, 0, false);
        else if (!desk.selection().rows().empty())
            desk.selection().choose({});
        else
            QWidget::keyPressEvent(event);
        return;
    }
    if (const std::optional<Facing> side = sideOf(event->key())) {
        const bool nudges =
            event->modifiers().testFlag(Qt::ControlModifier) || (!walks && !desk.selection().rows().empty());
        const Point step = away(*side, 1);
        if (nudges) {
            nudge(step.x, step.y);
            return;
        }
        const Hit next = isLevel(*side) ? beside(desk.drawing(), focus, *side)
                                        : nextTerminal(desk.drawing(), focus,
                                                       *side == Facing::Bottom ? Way::Forth : Way::Back);
        if (next)
            walkTo(next.row, next.cell, next.what == Hit::What::Terminal);
        return;
    }
    const bool putsDown = tool() == Tool::Place || tool() == Tool::Splice || tool() == Tool::Note;
    if (isEnter(event->key()) && (focus || putsDown)) {
        pressFocus();
        return;
    }
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        inside_->spaceHeld = true;
        inside_->hasPanned = false;
        return;
    }
    QWidget::keyPressEvent(event);
}

void SheetView::pressFocus()
{
    Desk& desk = inside_->desk;
    const Hit focus = desk.focus().hit;
    const Area area = focusArea(desk.drawing(), focus);
    if (tool() == Tool::Choose && !desk.isBusy() && focus.what != Hit::What::Terminal &&
        focus.what != Hit::What::Splice) {
        emit activated(focus.row);
        return;
    }
    Pointer pointer{desk.view().widgetRect(area).center(), area.middle(), focus, Qt::NoModifier, true};
    if (tool() == Tool::Splice || tool() == Tool::Note || area.isEmpty()) { // below what has the focus
        pointer.point = area.isEmpty() ? desk.view().point(rect().center())
                                       : Point{area.left, area.bottom + 2 * terminalPitch};
        pointer.at = desk.view().pixel(pointer.point) / desk.view().ratio;
        pointer.hit = {};
    }
    desk.setFocus(focus, true);
    if (tool() == Tool::Choose && !desk.isBusy())
        beginJoining(desk, pointer);
    else
        desk.press(pointer);
}

void SheetView::keyReleaseEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        const bool wasHeld = std::exchange(inside_->spaceHeld, false);
        const Hit focus = inside_->desk.focus().hit;
        if (wasHeld && !inside_->hasPanned && focus) // pressed without dragging: chooses as well
            inside_->desk.selection().toggle(focus.row);
        return;
    }
    QWidget::keyReleaseEvent(event);
}

// Tab goes from device to device, and past the last one out of the sheet.
bool SheetView::focusNextPrevChild(bool next)
{
    Desk& desk = inside_->desk;
    const Hit to = nextDevice(desk.drawing(), desk.focus().isShown ? desk.focus().hit : Hit{},
                              next ? Way::Forth : Way::Back);
    if (!to) {
        desk.setFocus({}, false);
        return QWidget::focusNextPrevChild(next);
    }
    walkTo(to.row, 0, false);
    return true;
}

void SheetView::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    const bool byTab = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason;
    Desk& desk = inside_->desk;
    if (byTab)
        if (const Hit first = nextDevice(desk.drawing(), {},
                                         event->reason() == Qt::TabFocusReason ? Way::Forth : Way::Back))
            walkTo(first.row, 0, false);
    update();
}

void SheetView::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    inside_->spaceHeld = false;
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::OtherFocusReason)
        inside_->desk.stop();
    update();
}

} // namespace doorloom
