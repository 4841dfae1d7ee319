#pragma once

#include "sheet/area.h"
#include "sheet/cableplan.h"
#include "canvas/look.h"
#include "sheet/plainroute.h"
#include "sheet/stripshape.h"
#include "canvas/textpool.h"
#include "edit/landcores.h"
#include "model/rows.h"

#include <array>
#include <cstdint>
#include <unordered_map>
#include <vector>

// What Drawing keeps of each thing on the sheet.
namespace doorloom {

// Round the devices of one place that is a box.
struct FrameDrawn {
    PlaceId id;
    Area area;
    TextNumber tag = 0, words = 0;

    friend bool operator==(const FrameDrawn&, const FrameDrawn&) = default;
};

enum class Symbol { None, Resistor, Diode };

struct DeviceDrawn {
    DeviceId id;
    PlaceId place;
    Area area; // on the sheet
    StripShape shape;
    Standing standing = Standing::New;
    Symbol symbol = Symbol::None;
    int firstLane = 0;
    TextNumber tag = 0, corner = 0;
    std::vector<TextNumber> title, bands, names;
    std::vector<Insulation> leads; // one for each cell; empty when no terminal is a flying wire

    Point at() const { return {area.left, area.top}; }
};

enum class EndMark { Landed, Waiting, Spare, Insulated, Elsewhere };

struct EndDrawn {
    EndMark mark = EndMark::Landed;
    bool isSplice = false;
    bool isHeld = false;      // by something on this sheet: then a drag can take it away
    Port port;                // where it is, and where the line leaves to
    TextNumber reference = 0; // "to LM1:C, sheet 2"
};

// Where an upright piece passes under a level one of another conductor: it is drawn with a gap there.
struct Gap {
    std::size_t piece = 0; // by the point before
    int at = 0;            // y

    friend auto operator<=>(const Gap&, const Gap&) = default;
};

struct ConductorDrawn {
    ConductorId id;
    CableId cable;
    Area area;                                 // marks and letters included
    std::vector<Point> line;                   // level and upright pieces, from `from` to `to`
    std::size_t trunkFirst = 0, trunkLast = 0; // the points between which it runs in its cable's jacket
    Insulation insulation;
    Standing standing = Standing::New;
    bool isPinned = false;
    TextNumber letters = 0;
    std::array<EndDrawn, 2> ends;
    std::vector<std::size_t> straight; // pieces, by the point before, where no way was found
    bool isWaiting = false;            // some of it runs the plain way until one is looked for
    std::vector<Gap> gaps;             // sorted
    std::vector<std::uint32_t> over;   // conductors that have or had gaps under it
    std::vector<LandingPoint> landed;
};

// Waiting ends of a cable, at its gland.
struct Ring {
    Point at;
    int waiting = 0;
    TextNumber count = 0;
};

struct CableDrawn {
    CableId id;
    Area area;
    CablePlan plan;
    std::vector<int> places; // of each core, where it runs in the jacket
    Standing standing = Standing::New;
    std::array<Area, 2> ticks; // round its cores, where the jacket ends
    std::array<Ring, 2> rings;
    std::array<TextNumber, 2> elsewhere{}; // words at an end whose place is not on this sheet
    TextNumber tag = 0;
    std::array<Area, 2>
        tags; // where it is written: beside the first gland, and beside the other of a long jacket
};

struct SpliceDrawn {
    SpliceId id;
    PlaceId place;
    Area area;
    Point at;
    Standing standing = Standing::New;
    TextNumber tag = 0;
};

struct NoteDrawn {
    NoteId id;
    Area area;
    std::vector<TextNumber> lines;
};

constexpr int spliceReach = gridStep; // from its middle to where conductors leave it
constexpr int markRoom = 60; // what stands beside a line: letters, rings, caps

// In front of the terminals of a place, conductors turn at lanes: each device has its own, as far as they go.
constexpr int laneWidth = 12, lanes = 36;
bool sharesWireWay(const DeviceDrawn& a, const DeviceDrawn& b);
Area withWireWay(
    const DeviceDrawn& device); // in front of its terminals each conductor turns at its own distance

// Drawn things by the number of their row. A place in the list stays a thing's own until it goes; an empty
// one has an empty area.
template <class Drawn> class Slots {
public:
    const std::vector<Drawn>& all() const { return all_; }
    const Drawn& operator[](std::size_t index) const { return all_[index]; }
    std::size_t count() const { return indices_.size(); }

    const Drawn* find(std::uint32_t number) const
    {
        const auto found = indices_.find(number);
        return found == indices_.end() ? nullptr : &all_[found->second];
    }
    // Out: its place in the list.
    std::uint32_t put(std::uint32_t number, Drawn drawn)
    {
        const auto [found, isNew] = indices_.try_emplace(number, 0u);
        if (isNew && !free_.empty()) {
            found->second = free_.back();
            free_.pop_back();
        } else if (isNew) {
            found->second = static_cast<std::uint32_t>(all_.size());
            all_.emplace_back();
        }
        all_[found->second] = std::move(drawn);
        return found->second;
    }
    std::uint32_t indexOf(std::uint32_t number) const { return indices_.at(number); }
    Drawn* edit(std::uint32_t number) // not what the index goes by
    {
        const auto found = indices_.find(number);
        return found == indices_.end() ? nullptr : &all_[found->second];
    }
    void drop(std::uint32_t number)
    {
        const auto found = indices_.find(number);
        if (found == indices_.end())
            return;
        all_[found->second] = Drawn{};
        free_.push_back(found->second);
        indices_.erase(found);
    }
    void clear() { *this = Slots(); }

private:
    std::vector<Drawn> all_;
    std::vector<std::uint32_t> free_;
    std::unordered_map<std::uint32_t, std::uint32_t> indices_;
};

} // namespace doorloom
