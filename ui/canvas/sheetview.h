#pragma once

#include "base/result.h"
#include "edit/operations.h"
#include "model/job.h"
#include "openjob/openjob.h"
#include "openjob/selection.h"

#include <QWidget>

#include <cstdint>
#include <memory>
#include <vector>

namespace doorloom {

// The sheet: devices as strips of terminals, conductors between them. One widget that paints what it prepared
// when the job changed; a drag becomes one change, on release.
class SheetView : public QWidget {
    Q_OBJECT
public:
    SheetView(OpenJob& open, Selection& selection, QWidget* parent = nullptr);
    ~SheetView() override;

    SheetId sheet() const;
    void showSheet(SheetId sheet);
    void setLanguage(Language language); // of the words on it; English until then

    // ---- Where one looks. Scale 1: true size on the screen as it says of itself.
    double scale() const;
    void scaleTo(double scale); // about the middle; held within the limits
    void scaleBy(double factor);
    void fit(); // the whole sheet in view
    void bringIntoView(const std::vector<std::uint32_t>& rows);

    // ---- What the pointer or the keyboard does next. Escape goes back to choosing.
    enum class Tool { Choose, Place, Pull, Wire, Splice, Note };
    Tool tool() const;
    void useTool(Tool tool);
    void place(const Kind& kind,
               PlaceId place); // Tool::Place: a click puts it there, once or while Ctrl is held
    void placeAtFreeSpot(const Kind& kind, PlaceId place); // at once, beside what is there
    void pull(const CableType& type);                      // Tool::Pull: from one box or device to another

    // ---- On what is chosen
    void nudge(int columns, int rows); // in steps of the grid
    enum class Along { Left, Right, Top, Bottom };
    void align(Along edge);
    void turn();   // terminals to the next side
    void letRun(); // conductors go as they like, not through pinned points

    // Whether a way has been looked for for every conductor; until then some run the plain way.
    bool isSettled() const;

    // Sets everything on the sheet out anew, whatever is chosen.
    void tidy();

    // The words for what is under a point of the widget; empty where there is nothing.
    Message wordsAt(QPoint point) const;

    void showMiddleOf(std::uint32_t row); // what is drawn of it, in the middle of the view
    // The number of the row under a point of the widget; 0 where there is none.
    std::uint32_t rowAt(QPoint point) const;
    // Where a row, or one terminal of a device, is drawn on the widget; empty when it is not on this sheet.
    QRect rectOf(std::uint32_t row, const Key& terminal = {}) const;

signals:
    void hovered(const doorloom::Message& words);
    void refused(const doorloom::Problem& problem);
    void toolChanged();
    void scaleChanged();
    void sheetChanged();
    void activated(std::uint32_t row); // double-clicked, or Enter: show its details

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    friend class AccessibleSheet;
    void walkTo(std::uint32_t row, std::size_t cell, bool onTerminal);
    void pressFocus();
    void tellFocus();  // to screen readers
    void tellChange(); // to screen readers: what there is, or its words, are others
    Message wordsOfFocus() const;

    struct Inside;
    std::unique_ptr<Inside> inside_;
};

} // namespace doorloom
