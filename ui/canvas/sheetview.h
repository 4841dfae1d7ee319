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

    // ---- Where one looks. Scale 1: true size on the screen as it says of itself.
    double scale() const;
    void scaleTo(double scale); // about the middle; held within the limits
    void scaleBy(double factor);
    void fit();                                          // the whole sheet in view
    void bringIntoView(const std::vector<std::uint32_t>& rows);

    // ---- What the pointer or the keyboard does next. Escape goes back to choosing.
    enum class Tool { Choose, Place, Pull, Wire, Splice, Note };
    Tool tool() const;
    void useTool(Tool tool);
    void place(const Kind& kind, PlaceId place);         // Tool::Place: a click puts it there
    void placeAtFreeSpot(const Kind& kind, PlaceId place); // at once, beside what is there
    void pull(const CableType& type);                    // Tool::Pull: from one box or device to another

    // ---- On what is chosen
    void nudge(int columns, int rows); // in steps of the grid
    enum class Along { Left, Right, Top, Bottom };
    void align(Along edge);
    void turn();                       // terminals to the next side

    // The words for what is under a point of the widget; empty where there is nothing.
    Message wordsAt(QPoint point) const;

signals:
    void hovered(const doorloom::Message& words);
    void refused(const doorloom::Problem& problem);
    void toolChanged();
    void scaleChanged();
    void sheetChanged();
    void activated(std::uint32_t row); // double-clicked, or Enter: show its details

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

} // namespace doorloom
