#pragma once

#include "core/random.h"
#include "ui/testwindow.h"

#include <QPointer>

#include <vector>

namespace doorloom {

// Somebody who hits everything: random events of every sort at the window, through the window system as a
// hand's would come. What opens and waits for an answer gets a random one; files are written in the folder of
// the test alone.
class Monkey : public QObject {
public:
    Monkey(TestWindow& desk, Random& random);
    ~Monkey() override;

    // One event, or a few that belong together (a drag, a word). Ends with nothing waiting for an answer.
    void act();
    // Lets go of every button and escapes from everything; then nothing may be held or begun.
    void settle();
    // Undo to the start gives what was opened, redo the job as it was.
    void undoAll();

    // For verifyJob: whether the job is another one since it was asked last.
    bool hasChanged() { return std::exchange(changed_, false); }
    int events() const { return events_; }

private:
    // ---- The pointer
    void press();
    void release();
    void move();
    void doubleClick();
    void drag();
    void wheel();
    QPoint anywhere();   // of the window, and a little beyond its edges
    QPoint onTheSheet(); // where something is drawn
    QPoint onAControl();

    // ---- The keyboard
    void stroke();
    void shortcut();
    void typeALine();
    void typeLetters();
    void key(Qt::Key key, Qt::KeyboardModifiers keys = Qt::NoModifier);
    void letters(const std::string& text);

    // ---- The rest
    void trigger(); // anything in a menu
    void chooseRows();
    void placeOrPull();
    void soilClipboard();
    void soilDisk();
    void resize();
    void thinOut(); // a job that grows for ever makes every event slower

    // ---- What waits for an answer
    void watch();
    void answer(QWidget& dialog);
    void answerWithFile(QWidget& dialog);

    std::string garbage();
    Window& window() { return desk_.window(); }
    QWindow* screen() { return desk_.window().windowHandle(); }
    Qt::KeyboardModifiers modifiers();
    Qt::MouseButton button();

    TestWindow& desk_;
    Random& random_;
    Job opened_;
    QPointer<QWidget> answered_; // the dialog that is being answered just now
    std::vector<Qt::MouseButton> held_;
    int turnsOfPopup_ = 0;
    bool changed_ = false;
    int events_ = 0;
};

} // namespace doorloom
