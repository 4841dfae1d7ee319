#include "canvas/drawing.h"

#include "edit/drawing.h"

#include <algorithm>
#include <sstream>

// Devices, splices, notes and the frames round places.
namespace doorloom {
namespace {

constexpr int framePadding = 50, frameTitle = 80;
constexpr int spliceRadius = 18;
constexpr int looseGap = 200; // below everything, where something without a placement appears
constexpr int noteLine = 44, notePadding = 20, noteMark = 12;

constexpr Text existing = {.en = "existing", .es = "existente"};
constexpr Text moved = {.en = "moved", .es = "trasladado"};
constexpr Text byOthers = {.en = "by others", .es = "por otros"};
constexpr Text leaveAlone = {.en = "leave alone", .es = "no tocar"};

std::string_view wordsOf(Standing standing, Language language)
{
    switch (standing) {
    case Standing::Existing:
        return inWords(existing, language);
    case Standing::Moved:
        return inWords(moved, language);
    case Standing::ByOthers:
        return inWords(byOthers, language);
    case Standing::LeaveAlone:
        return inWords(leaveAlone, language);
    case Standing::New:
        break;
    }
    return {};
}

Symbol symbolOf(const Kind& kind)
{
    if (kind.family != "part")
        return Symbol::None;
    for (const Part& part : kind.parts) {
        if (std::holds_alternative<DiodePart>(part.body))
            return Symbol::Diode;
        if (std::holds_alternative<ResistorPart>(part.body))
            return Symbol::Resistor;
    }
    return Symbol::None;
}

// Where the words of a box stand, whatever their font: no conductor runs through them.
Area titleArea(const Place& place, const Area& frame)
{
    const int words = roomFor(place.tag, TextStyle::Place) + 24 + roomFor(place.words, TextStyle::PlaceWords);
    return outToGrid({frame.left + 40, frame.top + 30, std::min(frame.left + 40 + words, frame.right - 30),
                      frame.top + frameTitle - 15});
}

} // namespace

Area withWireWay(const DeviceDrawn& device)
{
    const int used = std::min(device.firstLane + static_cast<int>(device.shape.cells.size()), lanes);
    const int way = 2 * terminalPitch + used * laneWidth / gridStep * gridStep;
    Area area = device.area;
    const auto open = [&](Facing facing) {
        (facing == Facing::Right    ? area.right
         : facing == Facing::Left   ? area.left
         : facing == Facing::Bottom ? area.bottom
                                    : area.top) +=
            facing == Facing::Right || facing == Facing::Bottom ? way : -way;
    };
    open(device.shape.facing);
    if (device.shape.isThrough)
        open(opposite(device.shape.facing));
    return area;
}

bool sharesWireWay(const DeviceDrawn& a, const DeviceDrawn& b)
{
    return a.place == b.place && a.shape.isThrough == b.shape.isThrough && a.shape.facing == b.shape.facing;
}

// After the lanes of those before it in its place; of the nearest two dozen, which is more than there are
// lanes.
int Drawing::firstLaneOf(const Job& job, const DeviceDrawn& device) const
{
    const auto neighbours = referrersOf(job, device.place.number);
    auto before = std::lower_bound(neighbours.begin(), neighbours.end(), device.id.number);
    int lane = 0;
    for (int looked = 0; before != neighbours.begin() && looked < 2 * lanes / 3; ++looked) {
        const DeviceDrawn* other = devices_.find(*--before);
        if (other && sharesWireWay(*other, device))
            lane += static_cast<int>(other->shape.cells.size());
    }
    return lane % lanes;
}

std::optional<Seat> Drawing::seatFor(const Job& job, std::uint32_t number)
{
    if (placementOf(job, number))
        loose_.erase(number);
    else if (isFirstSheet_ && !loose_.contains(number)) {
        const Area all = bounds();
        const int left = all.isEmpty() ? looseGap : all.left,
                  below = all.isEmpty() ? looseGap : all.bottom + looseGap;
        loose_[number] = {onGrid(Point{left, below}), Facing::Right};
    }
    std::optional<Seat> seat = seatOf(job, number);
    if (seat)
        seat->at = seat->at + displacement(number);
    return seat;
}

Area Drawing::prepareDevice(const Job& job, DeviceId id)
{
    const Device* row = job.devices.find(id);
    const Kind* kind = row ? kindOf(job, *row) : nullptr;
    const std::optional<Seat> seat = kind ? seatFor(job, id.number) : std::nullopt;
    if (!row)
        loose_.erase(id.number);
    if (!seat) {
        routes_.stand({id.number}, {});
        standForTrunks(id.number, {});
        return replace<DeviceDrawn>(devices_, id.number, Layer::Device, std::nullopt);
    }

    const Place* place = job.places.find(row->place);
    const std::string corner = place && !place->isBox ? place->tag : std::string();
    DeviceDrawn drawn;
    drawn.id = id;
    drawn.place = row->place;
    const std::string standing(wordsOf(row->standing, language_));
    drawn.shape = stripShape(*kind, {row->tag, corner, standing}, seat->facing, language_);
    drawn.area = drawn.shape.area.movedBy(seat->at);
    drawn.standing = row->standing;
    drawn.symbol = symbolOf(*kind);
    drawn.firstLane = firstLaneOf(job, drawn);
    const int width = drawn.shape.area.width();
    drawn.tag = texts_.put(row->tag, TextStyle::Tag, width);
    drawn.corner = texts_.put(corner, TextStyle::Corner);
    for (const std::string& line : drawn.shape.title)
        drawn.title.push_back(texts_.put(line, TextStyle::Title, width - 30));
    for (const Band& band : drawn.shape.bands)
        drawn.bands.push_back(
            drawn.shape.isThrough ? 0 : texts_.put(band.words, TextStyle::Band, band.area.width() - 20));
    for (const Cell& cell : drawn.shape.cells) {
        drawn.names.push_back(texts_.put(cell.printed, TextStyle::Terminal));
        if (!cell.lead.empty())
            drawn.leads.resize(drawn.shape.cells.size());
    }
    for (std::size_t i = 0; i < drawn.leads.size(); ++i)
        drawn.leads[i] = insulationOf(drawn.shape.cells[i].lead);
    routes_.stand({id.number}, drawn.area);
    standForTrunks(id.number, place && place->isBox ? Area{} : drawn.area); // the box stands there itself
    return replace<DeviceDrawn>(devices_, id.number, Layer::Device, std::move(drawn)).grownBy(markRoom);
}

Area Drawing::prepareSplice(const Job& job, SpliceId id)
{
    const Splice* row = job.splices.find(id);
    const std::optional<Seat> seat = row ? seatFor(job, id.number) : std::nullopt;
    if (!row)
        loose_.erase(id.number);
    if (!seat) {
        routes_.stand({id.number}, {});
        return replace<SpliceDrawn>(splices_, id.number, Layer::Splice, std::nullopt);
    }
    SpliceDrawn drawn;
    drawn.id = id;
    drawn.place = row->place;
    drawn.at = seat->at;
    drawn.tag = texts_.put(row->tag, TextStyle::Cable);
    drawn.area = Area{seat->at.x, seat->at.y, seat->at.x, seat->at.y}.grownBy(spliceRadius);
    drawn.area.top -= heightOf(TextStyle::Cable) + 10;
    drawn.area.right += static_cast<int>(texts_.width(drawn.tag)) + 10;
    routes_.stand({id.number}, areaOf(drawn.at, drawn.at).grownBy(spliceReach));
    return replace<SpliceDrawn>(splices_, id.number, Layer::Splice, std::move(drawn)).grownBy(markRoom);
}

Area Drawing::prepareNote(const Job& job, NoteId id)
{
    const Note* row = job.notes.find(id);
    if (!row || !(row->sheet == sheet_))
        return replace<NoteDrawn>(notes_, id.number, Layer::Note, std::nullopt);
    NoteDrawn drawn;
    drawn.id = id;
    double widest = 2 * terminalPitch;
    std::istringstream lines(row->words);
    for (std::string line; std::getline(lines, line);) {
        drawn.lines.push_back(texts_.put(line, TextStyle::Note));
        widest = std::max(widest, texts_.width(drawn.lines.back()));
    }
    const Point at = row->at + displacement(id.number);
    drawn.area = {at.x, at.y, at.x + static_cast<int>(widest) + 2 * notePadding + noteMark,
                  at.y + static_cast<int>(drawn.lines.size()) * noteLine + 2 * notePadding};
    return replace<NoteDrawn>(notes_, id.number, Layer::Note, std::move(drawn)).grownBy(markRoom);
}

Area Drawing::contentsOf(const Job& job, PlaceId place) const
{
    Area area;
    for (const std::uint32_t number : referrersOf(job, place.number)) {
        if (const DeviceDrawn* device = devices_.find(number))
            area = together(area, withWireWay(*device));
        if (const SpliceDrawn* splice = splices_.find(number))
            area = together(area, splice->area);
    }
    return area;
}

Area Drawing::prepareFrame(const Job& job, PlaceId id)
{
    const Place* row = job.places.find(id);
    Area area = row && row->isBox ? contentsOf(job, id).grownBy(framePadding) : Area{};
    if (area.isEmpty()) {
        routes_.stand({id.number}, {});
        standForTrunks(id.number, {});
        return replace<FrameDrawn>(frames_, id.number, Layer::Frame, std::nullopt);
    }
    area.top -= frameTitle - framePadding / 2;
    area = outToGrid(area);
    routes_.stand({id.number}, titleArea(*row, area));
    standForTrunks(id.number, area);
    FrameDrawn drawn{id, area, texts_.put(row->tag, TextStyle::Place), 0};
    drawn.words = texts_.put(row->words, TextStyle::PlaceWords,
                             std::max(1, area.width() - static_cast<int>(texts_.width(drawn.tag)) - 110));
    const FrameDrawn* before = frames_.find(id.number);
    if (before && *before == drawn)
        return {};
    return replace<FrameDrawn>(frames_, id.number, Layer::Frame, std::move(drawn)).grownBy(markRoom);
}

} // namespace doorloom
