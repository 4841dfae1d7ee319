#pragma once

#include "canvas/desk.h"
#include "canvas/sheetview.h"

#include <QPoint>

#include <optional>

namespace doorloom {

struct SheetView::Inside {
    Desk desk;
    std::optional<QPoint> panning; // where the pointer was
    bool spaceHeld = false, hasPanned = false, isFitted = false;
    Hit hovered;

    Inside(SheetView& view, OpenJob& job, Selection& selection) : desk(view, job, selection), open(job) {}
    std::uint64_t generation() const { return open.generation(); }
    Message wordsOf(const Hit& hit) const; // what is there and, of a terminal, what a meter reads

private:
    OpenJob& open;
};

} // namespace doorloom
