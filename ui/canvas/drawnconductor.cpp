#include "canvas/drawing.h"

#include "edit/drawing.h"
#include "edit/landcores.h"

#include <algorithm>
#include <cstdlib>

// Conductors: where they end and where they run on the sheet.
namespace doorloom {
namespace {

constexpr int besideEachOther = gridStep / 2; // conductors on one clamp
constexpr int stubLength = 160;     // of a conductor whose other end is not on this sheet
constexpr int referencePitch = 32, referenceFan = 130; // cores that go to another sheet, each with its words
constexpr int cappedLength = 40;

constexpr Text toOnSheet = {.en = "to {end}, sheet {sheet}", .es = "a {end}, hoja {sheet}"};
constexpr Text toNowhere = {.en = "to {end}, on no sheet", .es = "a {end}, en ninguna hoja"};

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

int ordinalOf(const StripShape& shape, const Key& terminal)
{
    const auto cell = std::find_if(shape.cells.begin(), shape.cells.end(),
                                   [&](const Cell& each) { return each.terminal == terminal; });
    return static_cast<int>(cell - shape.cells.begin());
}

// The sides of a splice, the one that looks at the point first.
std::array<Facing, 4> facingsTowards(Point from, Point to)
{
    const Point way = to - from;
    const Facing level = way.x >= 0 ? Facing::Right : Facing::Left;
    const Facing upright = way.y >= 0 ? Facing::Bottom : Facing::Top;
    if (std::abs(way.x) >= std::abs(way.y))
        return {level, upright, opposite(upright), opposite(level)};
    return {upright, level, opposite(level), opposite(upright)};
}

// What of a conductor is laid by itself: all of it, or what is before, in and behind a jacket.
constexpr int whole = 0, before = 1, inJacket = 2, behind = 3;

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
        return drawn ? std::optional(Port{drawn->at, facingsTowards(drawn->at, otherEnd).front()}) : std::nullopt;
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

// Conductors in a splice leave it by different sides, as far as there are any.
Facing Drawing::sideOfSplice(const Job& job, const SpliceDrawn& splice, const ConductorEnd& wanted) const
{
    std::array<bool, 4> isTaken{};
    for (const std::uint32_t number : referrersOf(job, splice.id.number)) {
        const Conductor* row = job.conductors.find({number});
        for (const WhichEnd which : {WhichEnd::From, WhichEnd::To}) {
            const SpliceId* on = row ? spliceOf(endOf(*row, which)) : nullptr;
            if (!on || !(*on == splice.id))
                continue;
            const Point other = roughly(job, endOf(*row, otherEnd(which))).value_or(splice.at);
            const std::array<Facing, 4> sides = facingsTowards(splice.at, other);
            const auto free = std::find_if(sides.begin(), sides.end(), [&](Facing side) {
                return !isTaken[static_cast<std::size_t>(side)];
            });
            const Facing side = free == sides.end() ? sides.front() : *free;
            if (row->id == wanted.conductor && which == wanted.which)
                return side;
            isTaken[static_cast<std::size_t>(side)] = true;
        }
    }
    return Facing::Right;
}

// Where the way of an end begins: at its port, or at the edge of its splice.
WayEnd Drawing::wayEndOf(const Job& job, const Conductor& row, WhichEnd which, const Port& port) const
{
    const End& end = endOf(row, which);
    if (const Landing* landing = landingOf(end))
        return {port, {landing->device.number}};
    const SpliceDrawn& splice = *splices_.find(spliceOf(end)->number);
    const Facing side = sideOfSplice(job, splice, {row.id, which});
    return {{splice.at + away(side, spliceReach), side}, {splice.id.number}};
}

// ---- Conductors

Area Drawing::prepareConductor(const Job& job, ConductorId id)
{
    const Conductor* row = job.conductors.find(id);
    std::optional<ConductorPlan> plan = row ? planOf(job, *row) : std::nullopt;
    if (const ConductorDrawn* known = conductors_.find(id.number))
        uncrossed_.insert(known->over.begin(), known->over.end());
    uncrossed_.insert(id.number);
    if (!plan)
        return replace<ConductorDrawn>(conductors_, id.number, Layer::Conductor, std::nullopt);
    ConductorDrawn& drawn = plan->drawn;
    for (const Stretch& stretch : plan->stretches)
        append(drawn, id, stretch);
    const std::string colour = colourOf(job, *row);
    drawn.insulation = insulationOf(colour);
    drawn.letters = texts_.put(colour, TextStyle::Letters);
    drawn.area = areaOfLine(drawn.line).grownBy(markRoom / 2);
    for (const EndDrawn& end : drawn.ends)
        drawn.area = together(drawn.area, referenceArea(end.port, end.reference));
    for (const End* end : {&row->from, &row->to})
        if (const std::optional<LandingPoint> point = pointOf(*end))
            drawn.landed.push_back(*point);
    return replace<ConductorDrawn>(conductors_, id.number, Layer::Conductor, std::move(drawn))
        .grownBy(markRoom);
}

// What is asked of the ways of a conductor.
void Drawing::wishForConductor(const Job& job, ConductorId id)
{
    const Conductor* row = job.conductors.find(id);
    const std::optional<ConductorPlan> plan = row ? planOf(job, *row) : std::nullopt;
    std::array<std::optional<WayWish>, 4> wishes;
    if (plan)
        for (const Stretch& stretch : plan->stretches)
            wishes[static_cast<std::size_t>(stretch.number)] = stretch.wish;
    for (std::size_t i = 0; i < wishes.size(); ++i)
        routes_.wish({id.number, static_cast<int>(i)}, std::move(wishes[i]));
}

// Goes on with a stretch: along the way found for it, straight where there is none, the plain way until it
// is looked for.
void Drawing::append(ConductorDrawn& drawn, ConductorId id, const Stretch& stretch) const
{
    const DrawnWay* way = stretch.wish && !stretch.wish->isLaid ? routes_.find({id.number, stretch.number}) : nullptr;
    std::vector<Point> line = stretch.plain;
    if (way && way->state == DrawnWay::State::Found) {
        line = way->line;
        if (line.front() != stretch.plain.front()) // from the middle of a splice
            line.insert(line.begin(), stretch.plain.front());
        if (line.back() != stretch.plain.back())
            line.push_back(stretch.plain.back());
        straighten(line);
    } else if (way && way->state == DrawnWay::State::Impossible) {
        line = {stretch.plain.front(), stretch.plain.back()};
        drawn.straight.push_back(drawn.line.empty() ? 0 : drawn.line.size() - 1);
    }
    drawn.isWaiting = drawn.isWaiting || (way && way->state == DrawnWay::State::Waiting);
    const bool goesOn = !drawn.line.empty() && !line.empty() && drawn.line.back() == line.front();
    if (stretch.number == inJacket)
        drawn.trunkFirst = goesOn ? drawn.line.size() - 1 : drawn.line.size();
    drawn.line.insert(drawn.line.end(), line.begin() + (goesOn ? 1 : 0), line.end());
    if (stretch.number == inJacket)
        drawn.trunkLast = drawn.line.size() - 1;
}

// Its ends, and what is laid between them; nothing where it is not on this sheet.
std::optional<Drawing::ConductorPlan> Drawing::planOf(const Job& job, const Conductor& row)
{
    ConductorPlan plan;
    plan.drawn.id = row.id;
    plan.drawn.cable = row.cable;
    plan.drawn.standing = row.standing;
    const CableDrawn* cable = row.cable ? cables_.find(row.cable.number) : nullptr;
    const Bends* bends = bendsOf(job, row.id);
    plan.drawn.isPinned = bends && !bends->pinned.empty();
    if (cable && !plan.drawn.isPinned)
        planInCable(job, row, *cable, plan);
    else
        planAlone(job, row, plan);
    return plan.stretches.empty() ? std::nullopt : std::optional(std::move(plan));
}

// From one port to the other; a stub where there is one port alone.
void Drawing::planAlone(const Job& job, const Conductor& row, ConductorPlan& plan)
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
        EndDrawn& end = plan.drawn.ends[i];
        end.isHeld = ports[i].has_value();
        end.mark = end.isHeld ? EndMark::Landed : markOf(ends[i]->state);
        end.isSplice = spliceOf(*ends[i]) != nullptr;
        const Port& held = ports[i] ? *ports[i] : *ports[1 - i];
        end.port = end.isHeld ? held : Port{held.at + away(held.facing, stubLength), held.facing};
        if (!end.isHeld)
            end.reference = texts_.put(referenceTo(job, *ends[i]), TextStyle::Reference);
    }
    if (!ports[0] || !ports[1]) {
        plan.stretches.push_back({whole, {}, {plan.drawn.ends[0].port.at, plan.drawn.ends[1].port.at}});
        return;
    }
    plan.stretches.push_back(
        {whole,
         WayWish{wayEndOf(job, row, WhichEnd::From, *ports[0]), wayEndOf(job, row, WhichEnd::To, *ports[1]),
                 pinned},
         route(*ports[0], *ports[1], pinned, stubOf(row.from, *ports[0], ports[1]->at))});
}

// Fanned out at both sides, side by side with the cable's other cores between.
void Drawing::planInCable(const Job& job, const Conductor& row, const CableDrawn& cable, ConductorPlan& plan)
{
    const CableType* type = job.cableTypes.find(job.cables.find(cable.id)->type);
    const auto core = std::find_if(type->cores.begin(), type->cores.end(),
                                   [&](const Core& each) { return each.number == row.core; });
    const int index = cable.places[static_cast<std::size_t>(core - type->cores.begin())];
    const std::vector<Point> trunk = coreInTrunk(cable.plan, index);
    Stretch fan = fanOf(job, row, WhichEnd::From, cable, trunk.front(), index, plan.drawn.ends[0]);
    if (!fan.plain.empty())
        plan.stretches.push_back(std::move(fan));
    plan.stretches.push_back({inJacket, wishInJacket(cable, trunk), trunk});
    fan = fanOf(job, row, WhichEnd::To, cable, trunk.back(), index, plan.drawn.ends[1]);
    std::reverse(fan.plain.begin(), fan.plain.end());
    if (fan.wish)
        std::swap(fan.wish->from, fan.wish->to);
    if (!fan.plain.empty())
        plan.stretches.push_back(std::move(fan));
}

WayWish Drawing::wishInJacket(const CableDrawn& cable, const std::vector<Point>& trunk) const
{
    const auto end = [&](std::size_t side, Point at) {
        const Facing facing = cable.plan.glands[side].facing;
        return WayEnd{{at + away(facing, glandDepth), facing}, glandPart(cable.id, side)};
    };
    WayWish wish{end(0, trunk.front()), end(1, trunk.back()), {trunk.begin() + 1, trunk.end() - 1}, true};
    return wish;
}

// From what the end is landed on to the gland, or a short piece that shows why it is not.
Drawing::Stretch Drawing::fanOf(const Job& job, const Conductor& row, WhichEnd which, const CableDrawn& cable,
                                Point gland, int index, EndDrawn& drawn)
{
    const std::size_t side = indexOf(which);
    const End& end = endOf(row, which);
    const Port inward{gland, opposite(cable.plan.glands[side].facing)};
    const std::optional<Port> port = portOf(job, end, gland);
    drawn.isHeld = port.has_value();
    drawn.isSplice = spliceOf(end) != nullptr;
    drawn.mark = port ? EndMark::Landed : markOf(end.state);
    drawn.port = port ? besideOthers(job, row, end, *port) : inward;
    Stretch fan{which == WhichEnd::From ? before : behind, {}, {}};
    if (drawn.mark == EndMark::Elsewhere) {
        const int across = (2 * index - (cable.plan.cores - 1)) * referencePitch / 2;
        const Point middle = cable.plan.glands[side].at + away(inward.facing, referenceFan);
        drawn.port.at = middle + (isLevel(inward.facing) ? Point{0, across} : Point{across, 0});
        drawn.reference = texts_.put(referenceTo(job, end), TextStyle::Reference);
        fan.plain = route({drawn.port.at, opposite(inward.facing)}, inward, {}, terminalPitch);
    }
    if (drawn.mark == EndMark::Spare || drawn.mark == EndMark::Insulated) { // seen past the jacket
        drawn.port.at = gland + away(inward.facing, cappedLength);
        fan.plain = {drawn.port.at, gland};
    }
    if (port) {
        fan.plain = route(drawn.port, inward, {}, stubOf(end, drawn.port, gland));
        fan.wish = WayWish{wayEndOf(job, row, which, drawn.port), {inward, glandPart(cable.id, side)}};
    }
    return fan;
}

} // namespace doorloom
