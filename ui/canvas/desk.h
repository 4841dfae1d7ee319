#pragma once

#include "canvas/drawing.h"
#include "canvas/gestures.h"
#include "canvas/sheetpainter.h"
#include "canvas/sheetview.h"
#include "canvas/view.h"

#include <QTimer>

#include <optional>
#include <vector>

namespace doorloom {

// Several operations that become one Change: each sees the job as the ones before it leave it.
class Steps {
public:
    explicit Steps(const Job& job) : job_(job), numbers(job) {}

    const Job& job() const { return job_; }
    bool add(const Change& change);
    bool add(const Result<Change>& change);
    bool refuse(const Problem& problem);
    const std::optional<Problem>& problem() const { return problem_; }
    const Change& change() const { return change_; }

private:
    Job job_;
    Change change_;
    std::optional<Problem> problem_;

public:
    Numbers numbers;
};

// What the sheet's gestures share: the job, what is drawn of it, and what one is in the middle of.
class Desk {
public:
    Desk(SheetView& view, OpenJob& open, Selection& selection);

    const Job& job() const { return open_.job(); }
    Selection& selection() { return selection_; }
    const Selection& selection() const { return selection_; }
    const Drawing& drawing() const { return drawing_; }
    const View& view() const { return view_; }
    const Look& look() const { return lookOf(widget_.palette()); }
    SheetView& widget() { return widget_; }

    // ---- Showing
    void show(SheetId sheet);
    void refresh(const Touched& touched);
    void displace(const std::vector<std::uint32_t>& rows, Point by);
    void repaint(const Area& area);
    void repaintAll();
    void emphasise(); // what is chosen or lit is another
    void paint(const QRect& widgets);
    void setLanguage(Language language);
    Language language() const { return drawing_.language(); }

    // ---- Looking
    void setScale(double scale, QPointF about);
    void scroll(QPoint pixels); // of the widget, the way in which the sheet goes
    void fit();
    void fitAgain(); // in another size, unless the user has looked elsewhere since
    void centreOn(const Area& area);
    void setRatio(double ratio);
    int reach() const; // beside a line, in tenths of a millimetre
    Pointer pointerAt(QPointF at, Qt::KeyboardModifiers keys) const;

    // ---- Doing
    SheetView::Tool tool() const { return tool_; }
    void useTool(SheetView::Tool tool);
    void press(const Pointer& pointer);
    void move(const Pointer& pointer);
    void release(const Pointer& pointer);
    void stop();         // back to nothing begun; the tool stays
    bool isHeld() const; // a button is down for what one is in the middle of
    bool isBusy() const { return !std::holds_alternative<Idle>(gesture_); }
    void begin(Gesture gesture);
    const Gesture& gesture() const { return gesture_; }
    bool make(const Message& what, const Result<Change>& change);
    bool make(const Message& what, const Steps& steps);
    void refuse(const Problem& problem);
    bool isFarEnough(QPoint from, QPoint to) const; // a drag, not a click
    SheetId sheetFor(Steps& steps) const;           // the one shown; a new one where the job has none

    std::optional<Kind> kind; // Tool::Place
    PlaceId place;
    std::optional<CableType> cableType; // Tool::Pull
    Point ghost;                        // where it would go

    // ---- The keyboard's focus
    struct Focus {
        Hit hit;
        bool isShown = false; // the keyboard moved it last
    };
    const Focus& focus() const { return focus_; }
    void setFocus(const Hit& hit, bool isShown);

private:
    void prepareEmphasis();
    void settleLater();
    void showGesture(); // repaints where it was drawn and where it is
    void holdView();    // some of the sheet stays in view
    void dropStale();

    SheetView& widget_;
    OpenJob& open_;
    Selection& selection_;
    Drawing drawing_;
    View view_;
    bool isFitted_ = false;
    SheetPainter painter_;
    Emphasis emphasis_;
    SheetView::Tool tool_ = SheetView::Tool::Choose;
    Gesture gesture_;
    Area gestureShown_;
    Focus focus_;
    QTimer settling_; // while ways are still to be found, between events
};

} // namespace doorloom
