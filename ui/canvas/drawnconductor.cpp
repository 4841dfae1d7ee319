#include "canvas/drawing.h"

#include "edit/drawing.h"
#include "edit/landcores.h"

#include <algorithm>
#include <cstdlib>

// Conductors and cables: where they run on the sheet.
namespace doorloom {
namespace {

constexpr int besideEachOther = 14; // conductors on one clamp
constexpr int stubLength = 160;     // of a conductor whose other end is not on this sheet
constexpr int tagGap = 44, longJacket = 1200;
constexpr int referencePitch = 32, referenceFan = 130; // cores that go to another sheet, each with its words
constexpr int cappedLength = 40;
constexpr int trunkStub = 70, trunkLane = 70, trunkLanes = 5;

constexpr Text toOnSheet = {.en = "to {end}, sheet {sheet}", .es = "a {end}, hoja {sheet}"};
constexpr Text toNowhere = {.en = "to {end}, on no sheet", .es = "a {end}, en ninguna hoja"};
constexpr Text toPlace = {.en = "to {place}", .es = "a {place}"};

EndMark markOf(EndState state)
{
    switch (state) {
    case EndState::Waiting:
        return EndMark::Waiting;
    case EndState::Spare:
        return EndMark::Spare;
    case EndState::Insulated:
        return EndMark::Insulated;
    case EndState::Landed:
        break;
    }
    return EndMark::Elsewhere;
}

std::size_t indexOf(WhichEnd which)
{
    return which == WhichEnd::From ? 0 : 1;
}

int ordinalOf(const StripShape& shape, const Key& terminal)
{
    const auto cell = std::find_if(shape.cells.begin(), shape.cells.end(),
                                   [&](const Cell& each) { return each.terminal == terminal; });
    return static_cast<int>(cell - shape.cells.begin());
}

Area areaOfLine(const std::vector<Point>& line)
{
    Area area;
    for (const Point point : line)
        area = together(area, areaOf(point, point));
    return area;
}

Port facingTowards(Point from, Point to)
{
    const Point way = to - from;
    if (std::abs(way.x) >= std::abs(way.y))
        return {from, way.x >= 0 ? Facing::Right : Facing::Left};
    return {from, way.y >= 0 ? Facing::Bottom : Facing::Top};
}

} // namespace

// ---- Ends

// About where an end is, before its port is known.
std::optional<Point> Drawing::roughly(const Job&, const End& end) const
{
    if (const Landing* landing = landingOf(end))
        if (const DeviceDrawn* device = devices_.find(landing->device.number))
            return device->area.middle();
    if (const SpliceId* splice = spliceOf(end))
        if (const SpliceDrawn* drawn = splices_.find(splice->number))
            return drawn->at;
    return std::nullopt;
}

std::optional<Port> Drawing::portOf(const Job&, const End& end, Point otherEnd) const
{
    if (const SpliceId* splice = spliceOf(end)) {
        const SpliceDrawn* drawn = splices_.find(splice->number);
        return drawn ? std::optional(facingTowards(drawn->at, otherEnd)) : std::nullopt;
    }
    const Landing* landing = landingOf(end);
    const DeviceDrawn* device = landing ? devices_.find(landing->device.number) : nullptr;
    if (!device)
        return std::nullopt;
    const auto cell = static_cast<std::size_t>(ordinalOf(device->shape, landing->terminal));
    if (cell >= device->shape.cells.size())
        return std::nullopt;
    return landingOn(device->shape, cell, device->at(), otherEnd);
}

// Conductors on one clamp lie beside each other: 0, 1, −1 steps from its middle.
int Drawing::slotOf(const Job& job, const Conductor& conductor, const Landing& landing) const
{
    int before = 0;
    for (const std::uint32_t number : referrersOf(job, landing.device.number)) {
        if (number >= conductor.id.number)
            break;
        const Conductor* other = job.conductors.find({number});
        if (!other)
            continue;
        for (const End* end : {&other->from, &other->to})
            if (const Landing* theirs = landingOf(*end); theirs && *theirs == landing)
                ++before;
    }
    constexpr int places[] = {0, 1, -1};
    return places[before % 3] * besideEachOther;
}

Port Drawing::besideOthers(const Job& job, const Conductor& row, const End& end, Port port) const
{
    if (const Landing* landing = landingOf(end))
        (isLevel(port.facing) ? port.at.y : port.at.x) += slotOf(job, row, *landing);
    return port;
}

// How far a conductor goes straight out: on the way down (or to the right) the first terminal's goes
// furthest, on the way up the last one's, so that those of one device do not cross.
int Drawing::stubOf(const End& end, const Port& port, Point target) const
{
    const Landing* landing = landingOf(end);
    const DeviceDrawn* device = landing ? devices_.find(landing->device.number) : nullptr;
    if (!device)
        return terminalPitch;
    const int count = static_cast<int>(device->shape.cells.size());
    const int ordinal = ordinalOf(device->shape, landing->terminal);
    const bool ahead = isLevel(port.facing) ? target.y > port.at.y : target.x > port.at.x;
    const int rank = ahead ? count - 1 - ordinal : ordinal;
    return terminalPitch + 10 + (device->firstLane + rank) % lanes * laneWidth;
}

std::string Drawing::referenceTo(const Job& job, const End& end) const
{
    const Landing* landing = landingOf(end);
    const SpliceId* splice = spliceOf(end);
    if (!landing && !splice)
        return {};
    const std::string name = landing ? nameOfPoint(job, *landing) : nameOfPoint(job, *splice);
    const std::uint32_t number = landing ? landing->device.number : splice->number;
    const std::vector<const Sheet*> sheets = sheetsInOrder(job);
    const Placement* placement = placementOf(job, number);
    const SheetId sheet = placement ? placement->sheet : sheets.empty() ? SheetId{} : sheets.front()->id;
    const auto found =
        std::find_if(sheets.begin(), sheets.end(), [&](const Sheet* each) { return each->id == sheet; });
    if (found == sheets.end())
        return inWords(Message{toNowhere, {{"end", name}}}, language_);
    return inWords(Message{toOnSheet, {{"end", name}, {"sheet", std::to_string(found - sheets.begin() + 1)}}},
                   language_);
}

// ---- Cables

CableSide Drawing::sideOf(const Job& job, const Cable& cable, WhichEnd which) const
{
    const PlaceId place = which == WhichEnd::From ? cable.from : cable.to;
    CableSide side;
    Area landedOn;
    for (const Conductor* core : coresOf(job, cable.id)) {
        const End& end = endOf(*core, which);
        const std::optional<Point> other = roughly(job, endOf(*core, otherEnd(which)));
        const std::optional<Port> port = portOf(job, end, other.value_or(Point{}));
        if (!port)
            continue;
        side.landings.push_back(*port);
        if (const Landing* landing = landingOf(end))
            landedOn = together(landedOn, withWireWay(*devices_.find(landing->device.number)));
        else
            landedOn = together(landedOn, areaOf(port->at, port->at).grownBy(2 * terminalPitch));
    }
    if (const FrameDrawn* frame = frames_.find(place.number)) {
        side.area = frame->area;
        side.isBox = true;
    } else {
        side.area = landedOn.isEmpty() && place ? contentsOf(job, place) : landedOn;
    }
    return side;
}

void Drawing::wishForCable(const Job& job, CableId id, std::set<std::uint32_t>& boxes)
{
    if (const auto before = wishes_.find(id.number); before != wishes_.end())
        for (const PlaceId box : before->second.boxes)
            boxes.insert(box.number);
    wishes_.erase(id.number);
    const Cable* row = job.cables.find(id);
    const CableType* type = row ? job.cableTypes.find(row->type) : nullptr;
    if (!type || type->cores.empty())
        return;
    CableWish wish;
    wish.sides = {sideOf(job, *row, WhichEnd::From), sideOf(job, *row, WhichEnd::To)};
    wish.bend = trunkStub + static_cast<int>(id.number % trunkLanes) * trunkLane;
    const auto plan =
        planCable(wish.sides[0], wish.sides[1], static_cast<int>(type->cores.size()), wish.bend);
    if (!plan)
        return;
    wish.plan = *plan;
    for (std::size_t side = 0; side < 2; ++side)
        if (wish.sides[side].isBox)
            wish.boxes[side] = side == 0 ? row->from : row->to;
    for (const PlaceId box : wish.boxes)
        boxes.insert(box.number);
    wishes_[id.number] = std::move(wish);
}

void Drawing::spreadCables(const Job& job, PlaceId box, std::set<std::uint32_t>& moved)
{
    struct Entry {
        std::uint32_t cable;
        std::size_t side;
    };
    for (const Facing facing : {Facing::Right, Facing::Bottom, Facing::Left, Facing::Top}) {
        std::vector<Entry> entries;
        std::vector<ThroughWall> walls;
        Area area;
        for (const std::uint32_t number : referrersOf(job, box.number)) {
            const auto wish = wishes_.find(number);
            for (std::size_t side = 0; wish != wishes_.end() && side < 2; ++side) {
                const Port& gland = wish->second.plan.glands[side];
                if (!(wish->second.boxes[side] == box) || gland.facing != facing)
                    continue;
                entries.push_back({number, side});
                walls.push_back(
                    {isLevel(facing) ? gland.at.y : gland.at.x, halfWidthOf(wish->second.plan.cores)});
                area = wish->second.sides[side].area;
            }
        }
        const std::vector<int> along = isLevel(facing) ? spreadAlong(walls, area.top, area.bottom)
                                                       : spreadAlong(walls, area.left, area.right);
        for (std::size_t i = 0; i < entries.size(); ++i) {
            std::optional<int>& known = wishes_[entries[i].cable].sides[entries[i].side].along;
            if (known != along[i])
                moved.insert(entries[i].cable);
            known = along[i];
        }
    }
}

Area Drawing::prepareCable(const Job& job, CableId id)
{
    const auto wish = wishes_.find(id.number);
    if (wish == wishes_.end())
        return replace<CableDrawn>(cables_, id.number, Layer::Cable, std::nullopt);
    const Cable* row = job.cables.find(id);
    const std::array<CableSide, 2>& sides = wish->second.sides;
    const auto plan = planCable(sides[0], sides[1], wish->second.plan.cores, wish->second.bend);

    CableDrawn drawn;
    drawn.id = id;
    drawn.plan = *plan;
    drawn.standing = row->standing;
    drawn.tag = texts_.put(row->tag, TextStyle::Cable);
    placeTags(drawn);
    const int half = plan->cores * corePitch / 2 + terminalPitch;
    drawn.area = together(areaOfLine(plan->trunk).grownBy(half), together(drawn.tags[0], drawn.tags[1]));
    for (const WhichEnd which : {WhichEnd::From, WhichEnd::To}) {
        const std::size_t side = indexOf(which);
        Ring& ring = drawn.rings[side];
        ring.at = plan->glands[side].at;
        bool isReferred = false; // each core says where it goes
        for (const Conductor* core : coresOf(job, id)) {
            ring.waiting += endOf(*core, which).state == EndState::Waiting ? 1 : 0;
            isReferred = isReferred || endOf(*core, which).state == EndState::Landed;
        }
        ring.count = texts_.put(std::to_string(ring.waiting), TextStyle::Letters);
        const Place* place = job.places.find(which == WhichEnd::From ? row->from : row->to);
        if (sides[side].area.isEmpty() && place && !isReferred)
            drawn.elsewhere[side] = texts_.put(inWords(Message{toPlace, {{"place", place->tag}}}, language_),
                                               TextStyle::Reference);
        drawn.area = together(drawn.area, referenceArea(plan->glands[side], drawn.elsewhere[side]));
    }
    return replace<CableDrawn>(cables_, id.number, Layer::Cable, std::move(drawn)).grownBy(markRoom);
}

// Beside the glands, where one looks for it; once only on a short jacket.
void Drawing::placeTags(CableDrawn& drawn) const
{
    const int width = static_cast<int>(texts_.width(drawn.tag)), height = heightOf(TextStyle::Cable);
    const int half = drawn.plan.cores * corePitch / 2;
    int length = 0;
    for (std::size_t i = 1; i < drawn.plan.trunk.size(); ++i) {
        const Point step = drawn.plan.trunk[i] - drawn.plan.trunk[i - 1];
        length += std::abs(step.x) + std::abs(step.y);
    }
    for (std::size_t side = 0; side < (length > longJacket ? 2u : 1u); ++side) {
        const auto& [at, facing] = drawn.plan.glands[side];
        const Point corner =
            isLevel(facing)
                ? Point{at.x + (facing == Facing::Right ? tagGap : -tagGap - width),
                        at.y - half - height - 14}
                : Point{at.x + half + 14, at.y + (facing == Facing::Bottom ? tagGap : -tagGap - height)};
        drawn.tags[side] = {corner.x, corner.y, corner.x + width, corner.y + height};
    }
}

Area Drawing::referenceArea(const Port& port, TextNumber words) const
{
    if (words == 0)
        return {};
    const int width = static_cast<int>(texts_.width(words)) + 60;
    return areaOf(port.at, port.at + away(port.facing, width)).grownBy(heightOf(TextStyle::Reference));
}

// ---- Conductors

Area Drawing::prepareConductor(const Job& job, ConductorId id)
{
    const Conductor* row = job.conductors.find(id);
    ConductorDrawn drawn;
    if (row) {
        drawn.id = id;
        drawn.cable = row->cable;
        drawn.standing = row->standing;
        const CableDrawn* cable = row->cable ? cables_.find(row->cable.number) : nullptr;
        const Bends* bends = bendsOf(job, id);
        drawn.isPinned = bends && !bends->pinned.empty();
        if (cable && !drawn.isPinned)
            layInCable(job, *row, *cable, drawn);
        else
            lay(job, *row, drawn);
    }
    if (drawn.line.size() < 2)
        return replace<ConductorDrawn>(conductors_, id.number, Layer::Conductor, std::nullopt);
    const std::string colour = colourOf(job, *row);
    drawn.insulation = insulationOf(colour);
    drawn.letters = texts_.put(colour, TextStyle::Letters);
    drawn.area = areaOfLine(drawn.line).grownBy(markRoom / 2);
    for (const EndDrawn& end : drawn.ends)
        drawn.area = together(drawn.area, referenceArea(end.port, end.reference));
    for (const End* end : {&row->from, &row->to})
        if (const Landing* landing = landingOf(*end))
            drawn.landed.push_back(*landing);
    return replace<ConductorDrawn>(conductors_, id.number, Layer::Conductor, std::move(drawn))
        .grownBy(markRoom);
}

// By itself, from one port to the other; a stub where there is one port alone.
void Drawing::lay(const Job& job, const Conductor& row, ConductorDrawn& drawn)
{
    const std::array<const End*, 2> ends{&row.from, &row.to};
    const std::array<std::optional<Point>, 2> rough{roughly(job, row.from), roughly(job, row.to)};
    const Bends* bends = bendsOf(job, row.id);
    const std::vector<Point> pinned = bends ? bends->pinned : std::vector<Point>{};
    std::array<std::optional<Port>, 2> ports;
    for (std::size_t i = 0; i < 2; ++i) {
        const Point other = pinned.empty() ? rough[1 - i].value_or(Point{1 << 20, 0})
                            : i == 0       ? pinned.front()
                                           : pinned.back();
        ports[i] = portOf(job, *ends[i], other);
        if (ports[i])
            ports[i] = besideOthers(job, row, *ends[i], *ports[i]);
    }
    if (!ports[0] && !ports[1])
        return;
    for (std::size_t i = 0; i < 2; ++i) {
        EndDrawn& end = drawn.ends[i];
        end.isHeld = ports[i].has_value();
        end.mark = end.isHeld ? EndMark::Landed : markOf(ends[i]->state);
        end.isSplice = spliceOf(*ends[i]) != nullptr;
        const Port& held = ports[i] ? *ports[i] : *ports[1 - i];
        end.port = end.isHeld ? held : Port{held.at + away(held.facing, stubLength), held.facing};
        if (!end.isHeld)
            end.reference = texts_.put(referenceTo(job, *ends[i]), TextStyle::Reference);
    }
    if (ports[0] && ports[1])
        drawn.line = route(*ports[0], *ports[1], pinned, stubOf(row.from, *ports[0], ports[1]->at));
    else
        drawn.line = {drawn.ends[0].port.at, drawn.ends[1].port.at};
}

// Fanned out at both sides, side by side with the cable's other cores between.
void Drawing::layInCable(const Job& job, const Conductor& row, const CableDrawn& cable, ConductorDrawn& drawn)
{
    const CableType* type = job.cableTypes.find(job.cables.find(cable.id)->type);
    const auto core = std::find_if(type->cores.begin(), type->cores.end(),
                                   [&](const Core& each) { return each.number == row.core; });
    const int index = static_cast<int>(core - type->cores.begin());
    const std::vector<Point> trunk = coreInTrunk(cable.plan, index);
    std::array<std::vector<Point>, 2> fans;
    for (const WhichEnd which : {WhichEnd::From, WhichEnd::To}) {
        const std::size_t side = indexOf(which);
        const End& end = endOf(row, which);
        const Point gland = side == 0 ? trunk.front() : trunk.back();
        EndDrawn& drawnEnd = drawn.ends[side];
        const std::optional<Port> port = portOf(job, end, gland);
        drawnEnd.isHeld = port.has_value();
        drawnEnd.isSplice = spliceOf(end) != nullptr;
        drawnEnd.mark = port ? EndMark::Landed : markOf(end.state);
        const Port inward{gland, opposite(cable.plan.glands[side].facing)};
        drawnEnd.port = port ? besideOthers(job, row, end, *port) : inward;
        if (drawnEnd.mark == EndMark::Elsewhere) {
            const int across = (2 * index - (cable.plan.cores - 1)) * referencePitch / 2;
            const Point middle = cable.plan.glands[side].at + away(inward.facing, referenceFan);
            drawnEnd.port.at = middle + (isLevel(inward.facing) ? Point{0, across} : Point{across, 0});
            drawnEnd.reference = texts_.put(referenceTo(job, end), TextStyle::Reference);
            fans[side] = route({drawnEnd.port.at, opposite(inward.facing)}, inward, {}, terminalPitch);
        }
        if (drawnEnd.mark == EndMark::Spare || drawnEnd.mark == EndMark::Insulated) { // seen past the jacket
            drawnEnd.port.at = gland + away(inward.facing, cappedLength);
            fans[side] = {drawnEnd.port.at, gland};
        }
        if (port)
            fans[side] = route(drawnEnd.port, inward, {}, stubOf(end, drawnEnd.port, gland));
    }
    drawn.line = std::move(fans[0]);
    drawn.trunkFirst = drawn.line.empty() ? 0 : drawn.line.size() - 1;
    if (!drawn.line.empty())
        drawn.line.pop_back();
    drawn.line.insert(drawn.line.end(), trunk.begin(), trunk.end());
    drawn.trunkLast = drawn.line.size() - 1;
    if (!fans[1].empty())
        drawn.line.insert(drawn.line.end(), fans[1].rbegin() + 1, fans[1].rend());
}

} // namespace doorloom
