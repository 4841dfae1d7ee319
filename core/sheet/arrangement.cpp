#include "sheet/arrangement.h"

#include "sheet/doorsides.h"
#include "sheet/stripshape.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace doorloom {
namespace {

constexpr int gap = 150;         // between devices of one place, one below the other
constexpr int placeGap = 250;    // between places in one column
constexpr int columnGap = 800;   // between columns: conductors and jackets run there
constexpr int outsideGap = 1800; // between a cabinet and what it serves: wire ways of both, and jackets
constexpr int blockGap = 800;    // between a box with its doors and the next
constexpr int tallestInside = 3300; // of a column in a cabinet
constexpr int tallestOutside = 4800; // of a column of places: jackets run round the first to get to the next
constexpr double shapeOfScreen = 1.7;

struct Piece {
    std::uint32_t number;
    PlaceId place;
    std::string family; // of its kind
    int width = 0, height = 0;

    bool isJoint() const { return family == "joint"; }
};

struct Block {
    std::vector<Arranged> seats; // from its own corner
    int width = 0, height = 0;
};

Piece pieceOf(const Job& job, std::uint32_t number)
{
    if (const Splice* splice = job.splices.find({number}))
        return {number, splice->place, "joint", 2 * terminalPitch, terminalPitch};
    const Device& device = *job.devices.find({number});
    const Kind* kind = kindOf(job, device);
    Piece piece{number, device.place, kind->family};
    for (const Language language : {Language::English, Language::Spanish}) {
        const StripShape shape = stripShape(*kind, {device.tag, {}, {}}, Facing::Right, language);
        piece.width = std::max(piece.width, shape.area.width());
        piece.height = std::max(piece.height, shape.area.height());
    }
    return piece;
}

bool isHub(const Job& job, PlaceId place)
{
    const Place* row = job.places.find(place);
    return row && row->isBox && row->mounting == Mounting::Cabinet;
}

// The cabinet that most cables of a place come from; the place itself when it is one, or has none.
PlaceId hubOf(const Job& job, PlaceId place)
{
    if (!job.places.find(place) || isHub(job, place))
        return place;
    std::map<PlaceId, int> cables;
    for (const std::uint32_t number : referrersOf(job, place.number))
        if (const Cable* cable = job.cables.find({number})) {
            const PlaceId other = cable->from == place ? cable->to : cable->from;
            if (isHub(job, other))
                ++cables[other];
        }
    const auto most = std::max_element(cables.begin(), cables.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == cables.end() ? place : most->first;
}

// Supplies above the logic that they feed, and what is left below.
int rankInCabinet(const Piece& piece)
{
    if (piece.family == "supply")
        return 0;
    return piece.family == "logic" || piece.family == "relay" ? 1 : 2;
}

// One door after the other: what is outside above its frame, what is inside below.
class ByDoor {
public:
    explicit ByDoor(const Job& job) : doors_(placesAtDoors(job)) {}

    bool operator()(PlaceId a, PlaceId b) const { return keyOf(a) < keyOf(b); }

private:
    std::tuple<std::uint32_t, DoorSide, std::uint32_t> keyOf(PlaceId place) const
    {
        const auto found = doors_.find(place);
        const AtDoor door = found == doors_.end() ? AtDoor{} : found->second;
        return {door.opening.number - 1, door.side, place.number - 1}; // unsaid last
    }

    std::map<PlaceId, AtDoor> doors_;
};

// One column after the other, from the top.
class Columns {
public:
    Columns(Block& block, int before, int tallest)
        : block_(block), tallest_(tallest), x_(block.width == 0 ? 0 : block.width + before)
    {
    }

    void add(const std::vector<Piece>& pieces, Facing facing)
    {
        const bool fits = y_ == 0 || y_ + placeGap + heightOf(pieces) <= tallest_;
        y_ = fits ? y_ + (y_ == 0 ? 0 : placeGap) : startColumn();
        for (const Piece& piece : pieces) {
            if (y_ > 0 && y_ + piece.height > tallest_)
                y_ = startColumn();
            block_.seats.push_back({piece.number, {onGrid({x_, y_}), facing}, piece.height});
            width_ = std::max(width_, piece.width);
            y_ += piece.height;
            block_.height = std::max(block_.height, y_);
            y_ += gap;
        }
        block_.width = std::max(block_.width, x_ + width_);
    }

private:
    static int heightOf(const std::vector<Piece>& pieces)
    {
        int height = 0;
        for (const Piece& piece : pieces)
            height += piece.height + gap;
        return height;
    }
    int startColumn()
    {
        x_ += width_ + columnGap;
        width_ = 0;
        return 0;
    }

    Block& block_;
    int tallest_;
    int x_, y_ = 0, width_ = 0;
};

// The cabinet with its supplies and modules, its strips beside them, and the places that it serves beside
// these.
Block blockOf(const std::vector<std::vector<Piece>>& places, bool startsWithHub)
{
    Block block;
    if (startsWithHub && !places.empty()) {
        std::vector<Piece> modules, joints;
        for (const Piece& piece : places.front())
            (piece.isJoint() ? joints : modules).push_back(piece);
        std::stable_sort(modules.begin(), modules.end(), [](const Piece& a, const Piece& b) {
            return rankInCabinet(a) < rankInCabinet(b);
        });
        if (!modules.empty())
            Columns(block, columnGap, tallestInside).add(modules, Facing::Right);
        if (!joints.empty())
            Columns(block, columnGap, tallestInside).add(joints, Facing::Right);
    }
    Columns outside(block, outsideGap, tallestOutside);
    for (std::size_t i = startsWithHub ? 1 : 0; i < places.size(); ++i)
        outside.add(places[i], Facing::Left);
    return block;
}

std::vector<Block> blocksOf(const Job& job, std::span<const std::uint32_t> numbers)
{
    const auto unsaidLast = [](PlaceId a, PlaceId b) { return a.number - 1 < b.number - 1; };
    std::map<PlaceId, std::map<PlaceId, std::vector<Piece>>, decltype(unsaidLast)> byHub(unsaidLast);
    for (const std::uint32_t number : numbers) {
        const Piece piece = pieceOf(job, number);
        byHub[hubOf(job, piece.place)][piece.place].push_back(piece);
    }
    const ByDoor byDoor(job);
    std::vector<Block> blocks;
    for (auto& [hub, byPlace] : byHub) {
        std::vector<std::vector<Piece>> places;
        const auto own = byPlace.find(hub);
        const bool startsWithHub = own != byPlace.end() && isHub(job, hub);
        if (startsWithHub)
            places.push_back(own->second);
        std::vector<PlaceId> outside;
        for (const auto& [place, pieces] : byPlace)
            if (!startsWithHub || place != hub)
                outside.push_back(place);
        std::stable_sort(outside.begin(), outside.end(), byDoor);
        for (const PlaceId place : outside)
            places.push_back(byPlace[place]);
        blocks.push_back(blockOf(places, startsWithHub));
    }
    return blocks;
}

} // namespace

std::vector<Arranged> arranged(const Job& job, std::span<const std::uint32_t> numbers, Point from)
{
    const std::vector<Block> blocks = blocksOf(job, numbers);
    double all = 0;
    int widest = 0;
    for (const Block& block : blocks) {
        all += double(block.width + blockGap) * (block.height + blockGap);
        widest = std::max(widest, block.width);
    }
    const int rowWidth = std::max(widest, static_cast<int>(std::sqrt(all * shapeOfScreen)));

    std::vector<Arranged> result;
    int x = 0, y = 0, rowHeight = 0;
    for (const Block& block : blocks) {
        if (x > 0 && x + block.width > rowWidth) {
            x = 0;
            y += rowHeight + blockGap;
            rowHeight = 0;
        }
        for (Arranged each : block.seats) {
            each.seat.at = onGrid(each.seat.at + from + Point{x, y});
            result.push_back(each);
        }
        x += block.width + blockGap;
        rowHeight = std::max(rowHeight, block.height);
    }
    return result;
}

} // namespace doorloom
