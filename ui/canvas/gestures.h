#pragma once

#include "canvas/hit.h"
#include "canvas/sheetpainter.h"

#include <QPoint>
#include <QString>

#include <cstdint>
#include <optional>
#include <variant>
#include <vector>

// What the pointer (or the keyboard, in its stead) is in the middle of: plain states, and what each does when
// the pointer moves, presses again or lets go. A gesture ends in one change, or leaves the job as it was.
namespace doorloom {

class Desk;
class Steps;

// The pointer where something happens. From the keyboard it stands on what has the focus.
struct Pointer {
    QPoint at;   // of the widget
    Point point; // of the sheet
    Hit hit;
    Qt::KeyboardModifiers keys = Qt::NoModifier;
    bool isKeyboard = false;
};

struct Idle {};

struct RubberBand {
    Point from, to;
    std::vector<std::uint32_t> before; // chosen already
};

struct Dragging { // devices, splices and notes
    std::vector<std::uint32_t> rows;
    std::uint32_t pressed = 0;
    QPoint pressedAt;
    Point from, by;
    bool hasMoved = false,
         isChoice = false; // isChoice: without moving, the press chose what was pressed alone
};

struct Joining { // from one terminal to another: held down, or by two clicks
    LandingPoint from;
    Point to;
    QPoint pressedAt;
    bool isHeld = true;
};

struct MovingEnd { // of a conductor, to another terminal
    ConductorEnd end;
    Point to;
    QPoint pressedAt;
    bool hasMoved = false;
};

struct Bending { // pins a point of a conductor's line
    ConductorId conductor;
    std::size_t piece = 0;
    Point from, to;
    QPoint pressedAt;
    bool hasMoved = false;
};

struct Pulling { // a cable from one place to another: held down, or by two clicks
    Hit from;
    PlaceId place;
    Point start, to;
    QPoint pressedAt;
    bool isHeld = true;
};

struct UsingUp { // a cable's cores, by clicking terminals one after another, or dragging from one to the
                 // other
    CableId cable;
    Point to;
    bool isHeld =
        false; // without pressedOn: dragged out of the ring of its waiting ends, one core, then it is over
    std::optional<LandingPoint> pressedOn{};
};

using Gesture = std::variant<Idle, RubberBand, Dragging, Joining, MovingEnd, Bending, Pulling, UsingUp>;

// ---- What each does. `pressedAgain`: false when the press begins something else instead.

inline void moved(Desk&, Idle&, const Pointer&) {}
void moved(Desk&, RubberBand&, const Pointer&);
void moved(Desk&, Dragging&, const Pointer&);
void moved(Desk&, Joining&, const Pointer&);
void moved(Desk&, MovingEnd&, const Pointer&);
void moved(Desk&, Bending&, const Pointer&);
void moved(Desk&, Pulling&, const Pointer&);
void moved(Desk&, UsingUp&, const Pointer&);

inline void released(Desk&, const Idle&, const Pointer&) {}
void released(Desk&, const RubberBand&, const Pointer&);
void released(Desk&, const Dragging&, const Pointer&);
void released(Desk&, const Joining&, const Pointer&);
void released(Desk&, const MovingEnd&, const Pointer&);
void released(Desk&, const Bending&, const Pointer&);
void released(Desk&, const Pulling&, const Pointer&);
void released(Desk&, const UsingUp&, const Pointer&);

bool pressedAgain(Desk&, const Joining&, const Pointer&);
bool pressedAgain(Desk&, const Pulling&, const Pointer&);
bool pressedAgain(Desk&, const UsingUp&, const Pointer&);
template <class Other> bool pressedAgain(Desk&, const Other&, const Pointer&)
{
    return false;
}

// Whether what it is about is gone.
bool isStale(const Desk&, const RubberBand&);
bool isStale(const Desk&, const Dragging&);
bool isStale(const Desk&, const Joining&);
bool isStale(const Desk&, const MovingEnd&);
bool isStale(const Desk&, const Bending&);
bool isStale(const Desk&, const Pulling&);
bool isStale(const Desk&, const UsingUp&);
inline bool isStale(const Desk&, const Idle&)
{
    return false;
}

// Puts back what it showed. The gesture is over by then.
void stopped(Desk&, const Dragging&);
template <class Other> void stopped(Desk&, const Other&) {}

// What it draws on top, and where.
Area reachOf(const Desk&, const Gesture&);
void paintGesture(const Desk&, const Gesture&, QPainter&, const SheetPainter&);

// ---- What a press begins, by what was pressed.

void beginChoosing(Desk&, const Pointer&);
void beginJoining(Desk&, const Pointer&);
void beginPulling(Desk&, const Pointer&);
void placeHere(Desk&, const Pointer&);
void spliceHere(Desk&, const Pointer&);
void noteHere(Desk&, const Pointer&);

// ---- What they end in, and the window's commands too.

SheetId settle(Desk&, Steps&); // out: the sheet, a new one where the job had none
void moveBy(Desk&, const std::vector<std::uint32_t>& rows, Point by);
DeviceId putDevice(Desk&, Point at); // of the desk's kind; nothing when it was refused
void rewriteNote(Desk&, NoteId note);

} // namespace doorloom
