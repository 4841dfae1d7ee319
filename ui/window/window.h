#pragma once

#include "canvas/sheetview.h"
#include "edit/typedline.h"
#include "openjob/openjob.h"
#include "openjob/selection.h"

#include <QMainWindow>

#include <string>
#include <vector>

class QLabel;
class QTabBar;

namespace doorloom {

class Details;
class FindingsPanel;
class LocksPanel;
class NoticeBar;
class SchedulePanel;
class Shelf;
class TypedEntry;

// What comes with the program.
struct Surroundings {
    std::vector<Kind> kinds;
    std::string resources, samples; // folders
    std::string ownKinds{};         // the folder of the user's own kinds; empty: there is none
};

// The one window: the sheet in the middle, shelf, details, findings and schedule around it.
class Window : public QMainWindow {
    Q_OBJECT
public:
    explicit Window(Surroundings surroundings, QWidget* parent = nullptr);
    ~Window() override;

    // ---- Files. Each asks first about what is unsaved; false: the user stays where they were.
    bool openFile(const QString& path);
    void openSample(const QString& name); // as a job without a file
    void beginEmpty();
    bool recoverUnnamed(); // what an earlier run left of a job without a file, if the user wants it
    bool save();
    bool saveAs();
    void askForFile();

    // ---- What is where, for the actions
    OpenJob& open() { return open_; }
    const OpenJob& open() const { return open_; }
    Selection& selection() { return selection_; }
    const Selection& selection() const { return selection_; }
    SheetView& sheet() { return *sheet_; }
    const SheetView& sheet() const { return *sheet_; }
    Shelf& shelf() { return *shelf_; }
    TypedEntry& entry() { return *entry_; }
    FindingsPanel& findings() { return *findings_; }
    const Surroundings& surroundings() const { return surroundings_; }
    Stock stock() const;
    std::optional<Problem> objectionTo(const Kind& kind) const; // a kind of the program's has its name
    const Kind* ownKind(const std::string& name) const;         // of the user's, on the shelf
    void tellUnreadKinds(); // in the bar, below what is said there already
    // On the shelf, and in the user's folder unless there is a problem with that.
    // In: one to which there is no objection
    std::optional<Problem> keepOwnKind(const Kind& kind);

    void show(const std::optional<Problem>& problem); // in the bar above the sheet; nothing: the bar goes
    void make(const Message& what, const Result<Change>& change);
    void jumpTo(const std::vector<std::uint32_t>& rows);
    void showSheetAt(int place); // among the sheets in order

    using QMainWindow::show;

protected:
    void showEvent(QShowEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override; // Escape that nobody wanted goes back to the sheet

private:
    void readOwnKinds();
    void buildMiddle();
    void buildPanels();
    void arrangePanels(); // as there is room for, until the user has put them elsewhere
    void connectParts();
    void jobChanged(const Touched& touched);
    void showTitle();
    void showSheets();
    void makePlace(const QString& words);
    bool mayLeaveJob();                 // saved, or the user lets it go
    bool offerRecovery();               // whether they were made again
    void remember(const QString& path); // among the recent files

    Surroundings surroundings_; // its kinds: the program's, then the user's own
    std::size_t programKinds_ = 0;
    std::vector<Problem> unreadKinds_;
    OpenJob open_;
    Selection selection_;
    SheetView* sheet_ = nullptr;
    NoticeBar* notice_ = nullptr;
    QTabBar* sheets_ = nullptr;
    TypedEntry* entry_ = nullptr;
    Shelf* shelf_ = nullptr;
    Details* details_ = nullptr;
    FindingsPanel* findings_ = nullptr;
    SchedulePanel* schedule_ = nullptr;
    LocksPanel* locks_ = nullptr;
    QLabel* hovered_ = nullptr;
    bool arranged_ = false; // the panels: by the user's settings, or for the room that there is
};

} // namespace doorloom
