#pragma once

#include "sheet/arrangement.h"
#include "sheet/cableplan.h"
#include "canvas/drawnthings.h"
#include "canvas/sceneindex.h"
#include "canvas/textpool.h"
#include "model/job.h"
#include "openjob/openjob.h"
#include "sheet/routes.h"

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

    // Ways that are still to be found: until then conductors run the plain way, through whatever stands there.
    bool isSettled() const { return !routes_.isWaiting() && !trunks_.isWaiting(); }
    // Another thread is at it: settleMore is of use after a while.
    bool isWaitingForThread() const { return trunks_.isWaiting() ? trunks_.isWaitingForThread() : routes_.isWaitingForThread(); }
    // Finds some of them. Out: what has to be painted again.   Cost: some milliseconds
    Area settleMore(const Job& job);

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

    // A stretch of a conductor, and the plain way while none is found.
    struct Stretch {
        int number;
        std::optional<WayWish> wish;
        std::vector<Point> plain;
    };
    struct ConductorPlan {
        ConductorDrawn drawn;
        std::vector<Stretch> stretches; // from `from` to `to`
    };
    enum class Settling { Now, WhenPutDown };

    // What a touched row reaches.
    void note(const Job& job, std::uint32_t row, Dirty& dirty) const;
    void noteOwner(const Job& job, std::uint32_t owner, Dirty& dirty) const;
    void noteConductorsOn(const Job& job, std::uint32_t owner, Dirty& dirty) const;
    void noteCablesOf(const Job& job, Dirty& dirty) const;
    Area prepare(const Job& job, Dirty dirty, Settling settling);
    void keepOwner(const Job& job, std::uint32_t row);

    // Each makes one thing anew, and says which area changed.
    Area prepareDevice(const Job& job, DeviceId id);
    Area prepareSplice(const Job& job, SpliceId id);
    Area prepareNote(const Job& job, NoteId id);
    Area prepareFrame(const Job& job, PlaceId id);
    void wishForCable(const Job& job, CableId id, std::set<std::uint32_t>& boxes);
    // Out: through `moved`, cables that go through a wall elsewhere now
    void spreadCables(const Job& job, PlaceId box, std::set<std::uint32_t>& moved);
    int jacketPitch(const Job& job) const;
    int jacketMargin() const;
    int roomBeside() const;
    std::optional<CablePlan> planFor(CableId id) const;
    void wishForTrunk(const Job& job, CableId id);
    void standForTrunks(std::uint32_t number, const Area& area);
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
    Facing sideOfSplice(const Job& job, const SpliceDrawn& splice, const ConductorEnd& wanted) const;
    WayEnd wayEndOf(const Job& job, const Conductor& row, WhichEnd which, const Port& port) const;
    std::vector<int> placesOf(const Job& job, const Cable& cable, const CablePlan& plan) const;
    void placeTags(CableDrawn& drawn) const;
    Area referenceArea(const Port& port, TextNumber words) const;
    std::optional<ConductorPlan> planOf(const Job& job, const Conductor& row);
    void planAlone(const Job& job, const Conductor& row, ConductorPlan& plan);
    void planInCable(const Job& job, const Conductor& row, const CableDrawn& cable, ConductorPlan& plan);
    WayWish wishInJacket(const CableDrawn& cable, const std::vector<Point>& trunk) const;
    Stretch fanOf(const Job& job, const Conductor& row, WhichEnd which, const CableDrawn& cable, Point gland,
                  int index, EndDrawn& drawn);
    void wishForConductor(const Job& job, ConductorId id);
    void append(ConductorDrawn& drawn, ConductorId id, const Stretch& stretch) const;
    std::string referenceTo(const Job& job, const End& end) const;

    template <class IsWanted, class Visit>
    void forEachNear(const ConductorDrawn& drawn, IsWanted isWanted, Visit visit) const;
    void findGaps(std::uint32_t number);
    void findCrossings();

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
    Routes routes_, trunks_; // of conductors, and of whole jackets
    int jacketPitch_ = 0;
    std::set<std::uint32_t> uncrossed_;    // conductors whose gaps are to be found again
    std::vector<std::uint32_t> displaced_; // sorted
    Point displacedBy_;
};

inline std::size_t indexOf(WhichEnd which)
{
    return which == WhichEnd::From ? 0 : 1;
}
std::optional<LandingPoint> pointOf(const End& end); // nothing while it is on none
std::uint32_t numberOf(const LandingPoint& point);   // of its device or splice
DrawnPart glandPart(CableId cable, std::size_t side); // what stands where its jacket ends

} // namespace doorloom
