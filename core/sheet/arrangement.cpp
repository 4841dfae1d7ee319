#include "sheet/arrangement.h"

#include "sheet/stripshape.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace doorloom {
namespace {

constexpr int gap = 150;         // between devices of one place, one below the other
constexpr int placeGap = 250;    // between places in one column
constexpr int columnGap = 800;   // between columns: conductors and jackets run there
constexpr int outsideGap = 1200; // between a cabinet and what it serves: wire ways of both, and jackets
constexpr int blockGap = 800;    // between a box with its doors and the next
constexpr int tallest = 3300;    // of a column
constexpr double shapeOfScreen = 1.7;

struct Piece {
    std::uint32_t number;
    PlaceId place;
    bool isJoint = false;
    int width = 0, height = 0;
};

struct Block {
    std::vector<Arranged> seats; // from its own corner
    int width = 0, height = 0;
};

Piece pieceOf(const Job& job, std::uint32_t number, Language language)
{
    if (const Splice* splice = job.splices.find({number}))
        return {number, splice->place, false, 2 * terminalPitch, terminalPitch};
    const Device& device = *job.devices.find({number});
    const Kind* kind = kindOf(job, device);
    const StripShape shape = stripShape(*kind, {device.tag, {}, {}}, Facing::Right, language);
    return {number, device.place, kind->family == "joint", shape.area.width(), shape.area.height()};
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

// One column after the other, from the top.
class Columns {
public:
    explicit Columns(Block& block, int before = columnGap)
        : block_(block), x_(block.width == 0 ? 0 : block.width + before)
    {
    }

    void add(const std::vector<Piece>& pieces, Facing facing)
    {
        const bool fits = y_ == 0 || y_ + placeGap + heightOf(pieces) <= tallest;
        y_ = fits ? y_ + (y_ == 0 ? 0 : placeGap) : startColumn();
        for (const Piece& piece : pieces) {
            if (y_ > 0 && y_ + piece.height > tallest)
                y_ = startColumn();
            block_.seats.push_back({piece.number, {onGrid({x_, y_}), facing}});
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
            (piece.isJoint ? joints : modules).push_back(piece);
        if (!modules.empty())
            Columns(block).add(modules, Facing::Right);
        if (!joints.empty())
            Columns(block).add(joints, Facing::Right);
    }
    Columns outside(block, outsideGap);
    for (std::size_t i = startsWithHub ? 1 : 0; i < places.size(); ++i)
        outside.add(places[i], Facing::Left);
    return block;
}

std::vector<Block> blocksOf(const Job& job, std::span<const std::uint32_t> numbers, Language language)
{
    const auto unsaidLast = [](PlaceId a, PlaceId b) { return a.number - 1 < b.number - 1; };
    std::map<PlaceId, std::map<PlaceId, std::vector<Piece>>, decltype(unsaidLast)> byHub(unsaidLast);
    for (const std::uint32_t number : numbers) {
        const Piece piece = pieceOf(job, number, language);
        byHub[hubOf(job, piece.place)][piece.place].push_back(piece);
    }
    std::vector<Block> blocks;
    for (auto& [hub, byPlace] : byHub) {
        std::vector<std::vector<Piece>> places;
        const auto own = byPlace.find(hub);
        const bool startsWithHub = own != byPlace.end() && isHub(job, hub);
        if (startsWithHub)
            places.push_back(own->second);
        for (auto& [place, pieces] : byPlace)
            if (!startsWithHub || place != hub)
                places.push_back(pieces);
        blocks.push_back(blockOf(places, startsWithHub));
    }
    return blocks;
}

} // namespace

std::vector<Arranged> arranged(const Job& job, std::span<const std::uint32_t> numbers, Point from,
                               Language language)
{
    const std::vector<Block> blocks = blocksOf(job, numbers, language);
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
