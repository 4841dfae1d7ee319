#pragma once

#include "sheet/arrangement.h"
#include "sheet/cableplan.h"
#include "canvas/drawnthings.h"
#include "canvas/sceneindex.h"
#include "canvas/textpool.h"
#include "model/job.h"
#include "openjob/openjob.h"

#include <array>
#include <optional>
#include <set>
#include <unordered_map>
#include <vector>

namespace doorloom {

// What lies in an area, each once, in the order in which it is drawn.
struct Visible {
    std::vector<std::uint32_t> frames, cables, conductors, devices, splices,
        notes; // places in Drawing's lists
};

// One sheet of a job, ready to be painted and pointed at: positions, lines and words are worked out when the
// job changes, for what the change reaches alone. Positions are in tenths of a millimetre. Cost: refresh
// grows with the touched rows, what hangs on them, and the cables of their places
class Drawing {
public:
    Drawing(const QFont& font, Language language);

    void show(const Job& job, SheetId sheet); // everything anew
    // Out: what has to be painted again
    Area refresh(const Job& job, const Touched& touched);
    // Draws devices, splices and notes beside where they stand, while they are dragged; {} puts them back.
    Area displace(const Job& job, const std::vector<std::uint32_t>& numbers, Point by);

    SheetId sheet() const { return sheet_; }
    Language language() const { return language_; }
    Area bounds() const; // of everything
    const Slots<FrameDrawn>& frames() const { return frames_; }
    const Slots<CableDrawn>& cables() const { return cables_; }
    const Slots<ConductorDrawn>& conductors() const { return conductors_; }
    const Slots<DeviceDrawn>& devices() const { return devices_; }
    const Slots<SpliceDrawn>& splices() const { return splices_; }
    const Slots<NoteDrawn>& notes() const { return notes_; }
    const TextPool& texts() const { return texts_; }

    void lookUp(const Area& area,
                Visible& visible) const; // buffers are used again: nothing is allocated for long
    void lookUp(const Area& area, std::vector<Handle>& found) const { index_.lookUp(area, found); }

    // Where a device or splice stands on this sheet without being dragged; nothing when it is not here.
    std::optional<Seat> seatOf(const Job& job, std::uint32_t number) const;

private:
    struct Dirty {
        std::set<std::uint32_t> devices, splices, places, cables, conductors, notes;
    };

    // A cable as it would run by itself, and where it goes through the walls of boxes beside its neighbours.
    struct CableWish {
        std::array<CableSide, 2> sides;
        CablePlan plan;
        std::array<PlaceId, 2> boxes; // that its ends enter
        int bend = 0;
    };

    // What a touched row reaches.
    void note(const Job& job, std::uint32_t row, Dirty& dirty) const;
    void noteOwner(const Job& job, std::uint32_t owner, Dirty& dirty) const;
    void noteConductorsOn(const Job& job, std::uint32_t owner, Dirty& dirty) const;
    void noteCablesOf(const Job& job, Dirty& dirty) const;
    Area prepare(const Job& job, Dirty dirty);
    void keepOwner(const Job& job, std::uint32_t row);

    // Each makes one thing anew, and says which area changed.
    Area prepareDevice(const Job& job, DeviceId id);
    Area prepareSplice(const Job& job, SpliceId id);
    Area prepareNote(const Job& job, NoteId id);
    Area prepareFrame(const Job& job, PlaceId id);
    void wishForCable(const Job& job, CableId id, std::set<std::uint32_t>& boxes);
    // Out: through `moved`, cables that go through a wall elsewhere now
    void spreadCables(const Job& job, PlaceId box, std::set<std::uint32_t>& moved);
    Area prepareCable(const Job& job, CableId id);
    Area prepareConductor(const Job& job, ConductorId id);

    int firstLaneOf(const Job& job, const DeviceDrawn& device) const;
    Point displacement(std::uint32_t number) const;
    std::optional<Seat> seatFor(const Job& job, std::uint32_t number); // found for it when it has none
    void arrangeLoose(const Job& job);
    Area contentsOf(const Job& job, PlaceId place) const; // its devices and splices on this sheet
    CableSide sideOf(const Job& job, const Cable& cable, WhichEnd which) const;
    std::optional<Port> portOf(const Job& job, const End& end, Point otherEnd) const;
    std::optional<Point> roughly(const Job& job, const End& end) const;
    int slotOf(const Job& job, const Conductor& conductor, const Landing& landing) const;
    Port besideOthers(const Job& job, const Conductor& row, const End& end, Port port) const;
    int stubOf(const End& end, const Port& port, Point target) const;
    void placeTags(CableDrawn& drawn) const;
    Area referenceArea(const Port& port, TextNumber words) const;
    void lay(const Job& job, const Conductor& row, ConductorDrawn& drawn);
    void layInCable(const Job& job, const Conductor& row, const CableDrawn& cable, ConductorDrawn& drawn);
    std::string referenceTo(const Job& job, const End& end) const;

    template <class Drawn> void enter(Slots<Drawn>& list, std::uint32_t number, Layer layer, Drawn drawn);
    template <class Drawn> Area leave(Slots<Drawn>& list, std::uint32_t number, Layer layer);
    template <class Drawn>
    Area replace(Slots<Drawn>& list, std::uint32_t number, Layer layer, std::optional<Drawn> drawn);

    TextPool texts_;
    Language language_;
    SheetId sheet_;
    bool isFirstSheet_ = true;
    Slots<FrameDrawn> frames_;
    Slots<CableDrawn> cables_;
    Slots<ConductorDrawn> conductors_;
    Slots<DeviceDrawn> devices_;
    Slots<SpliceDrawn> splices_;
    Slots<NoteDrawn> notes_;
    SceneIndex index_;
    bool filling_ = false; // show() fills the index once, at its end
    std::vector<Indexed> filled_;
    std::unordered_map<std::uint32_t, std::uint32_t>
        owners_;                                          // of placements and bends, as they were last drawn
    std::unordered_map<std::uint32_t, Seat> loose_;       // devices and splices without a placement
    std::unordered_map<std::uint32_t, CableWish> wishes_; // of cables
    std::vector<std::uint32_t> displaced_;                // sorted
    Point displacedBy_;
};

} // namespace doorloom
