#include "canvas/desk.h"

#include "edit/drawing.h"
#include "edit/nexttag.h"
#include "edit/undowords.h"

#include <QKeyEvent>
#include <QPlainTextEdit>

#include <functional>

// New things on the sheet: devices, splices, notes.
namespace doorloom {
namespace {

// A box in which a note is written: Enter ends it, Shift and Enter begins a line, Escape gives up.
class NoteEditor : public QPlainTextEdit {
public:
    NoteEditor(QWidget* parent, std::function<void(const QString&)> done)
        : QPlainTextEdit(parent), done_(std::move(done))
    {
        setTabChangesFocus(true);
        setAccessibleName(SheetView::tr("Note"));
    }

protected:
    void keyPressEvent(QKeyEvent* event) override
    {
        const bool isEnter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
        if (event->key() == Qt::Key_Escape)
            end(false);
        else if (isEnter && !event->modifiers().testFlag(Qt::ShiftModifier))
            end(true);
        else
            QPlainTextEdit::keyPressEvent(event);
    }
    void focusOutEvent(QFocusEvent* event) override
    {
        QPlainTextEdit::focusOutEvent(event);
        end(true);
    }

private:
    void end(bool keep)
    {
        if (!done_)
            return;
        const auto done = std::exchange(done_, nullptr);
        const QString words = keep ? toPlainText() : QString();
        if (parentWidget() && hasFocus())
            parentWidget()->setFocus();
        hide();
        deleteLater();
        if (!words.trimmed().isEmpty())
            done(words);
    }

    std::function<void(const QString&)> done_;
};

void edit(Desk& desk, QPoint at, const QString& words, std::function<void(const QString&)> done)
{
    auto* editor = new NoteEditor(&desk.widget(), std::move(done)); // of the sheet, until it ends
    editor->setPlainText(words);
    const int line = editor->fontMetrics().height();
    editor->setGeometry(QRect(at, QSize(line * 16, line * 5)));
    editor->show();
    editor->setFocus();
    editor->selectAll();
}

} // namespace

DeviceId putDevice(Desk& desk, Point at)
{
    Steps steps(desk.job());
    auto [id, change] = placeDevice(steps.job(), steps.numbers, *desk.kind,
                                    nextDeviceTag(steps.job(), *desk.kind), desk.place);
    steps.add(change);
    const SheetId sheet = settle(desk, steps);
    steps.add(putOnSheet(steps.job(), steps.numbers, sheet, id, onGrid(at)));
    if (!desk.make(undoWords(steps.job(), doing::place, {id.number}), steps))
        return {};
    desk.selection().choose({id.number});
    return id;
}

void placeHere(Desk& desk, const Pointer& pointer)
{
    if (!desk.kind)
        return;
    if (pointer.isKeyboard)
        desk.widget().placeAtFreeSpot(*desk.kind, desk.place);
    else
        putDevice(desk, pointer.point);
    if (!pointer.keys.testFlag(
            Qt::ControlModifier)) // with Ctrl the next one of its kind hangs on the pointer
        desk.useTool(SheetView::Tool::Choose);
}

void spliceHere(Desk& desk, const Pointer& pointer)
{
    Steps steps(desk.job());
    Splice splice;
    splice.id = {steps.numbers.take()};
    splice.tag = nextSpliceTag(steps.job());
    splice.place = placeOf(desk.drawing(), pointer.hit);
    steps.add(Change{{Put<Splice>{splice.id, splice}}});
    const SheetId sheet = settle(desk, steps);
    steps.add(putOnSheet(steps.job(), steps.numbers, sheet, splice.id, onGrid(pointer.point)));
    if (desk.make(undoWords(steps.job(), doing::place, {splice.id.number}), steps))
        desk.selection().choose({splice.id.number});
}

void noteHere(Desk& desk, const Pointer& pointer)
{
    if (pointer.hit.what == Hit::What::Note) {
        rewriteNote(desk, {pointer.hit.row});
        return;
    }
    const Point at = onGrid(pointer.point);
    edit(desk, pointer.at, {}, [&desk, at](const QString& words) {
        Steps steps(desk.job());
        const SheetId sheet = desk.sheetFor(steps);
        const auto added = addNote(steps.job(), steps.numbers, sheet, at, words.toStdString());
        if (added.ok())
            steps.add(added.value().second);
        else
            steps.refuse(added.problem());
        if (desk.make(doing::note, steps))
            desk.selection().choose({added.value().first.number});
    });
}

void rewriteNote(Desk& desk, NoteId note)
{
    const NoteDrawn* drawn = desk.drawing().notes().find(note.number);
    const Note* row = desk.job().notes.find(note);
    if (!drawn || !row)
        return;
    edit(desk, desk.view().widgetRect(drawn->area).topLeft(), QString::fromStdString(row->words),
         [&desk, note](const QString& words) {
             desk.make(doing::reword, rewordNote(desk.job(), note, words.toStdString()));
         });
}

} // namespace doorloom
