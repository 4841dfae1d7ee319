#include "canvas/drawing.h"

#include "edit/drawing.h"
#include "edit/landcores.h"

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <numeric>

// Cables: where their jackets run on the sheet.
namespace doorloom {
namespace {

constexpr int tagGap = 44, longJacket = 1200;
constexpr int trunkStub = 3 * gridStep, trunkLane = 3 * gridStep, trunkLanes = 5;

constexpr Text toPlace = {.en = "to {place}", .es = "a {place}"};

Area acrossGrown(const Area& area, Facing facing, int more)
{
    return isLevel(facing) ? Area{area.left, area.top - more, area.right, area.bottom + more}
                           : Area{area.left - more, area.top, area.right + more, area.bottom};
}

bool isLanded(const Job& job, CableId cable)
{
    const std::vector<const Conductor*> cores = coresOf(job, cable);
    return std::any_of(cores.begin(), cores.end(), [](const Conductor* core) {
        return core->from.state == EndState::Landed || core->to.state == EndState::Landed;
    });
}

} // namespace

DrawnPart glandPart(CableId cable, std::size_t side)
{
    return {cable.number, static_cast<int>(side) + 1};
}

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
    if (wish.sides[0].landings.empty() && wish.sides[1].landings.empty() && isLanded(job, id))
        return; // on other sheets, though one of its boxes has devices here
    const int cores = static_cast<int>(type->cores.size());
    wish.bend = onGrid(halfWidthOf(cores)) + trunkStub + static_cast<int>(id.number % trunkLanes) * trunkLane;
    const auto plan = planCable(wish.sides[0], wish.sides[1], cores, wish.bend);
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
                const int half = std::max(halfWidthOf(wish->second.plan.cores), roomBeside());
                const Port& across = wish->second.plan.glands[1 - side];
                const CableSide& first = wish->second.sides[0]; // goes straight across, however far that is
                const bool isFollowing = side == (first.isBox || first.landings.empty() ? 0u : 1u);
                const Point at = isFollowing && across.facing == opposite(facing) ? across.at : gland.at;
                walls.push_back({isLevel(facing) ? at.y : at.x, half});
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

// From the middle of one jacket to the next, so that the two widest of the job don't touch.
int Drawing::jacketPitch(const Job& job) const
{
    std::vector<int> cores{1, 1};
    for (const Cable& cable : job.cables)
        if (const CableType* type = job.cableTypes.find(cable.type))
            cores.push_back(static_cast<int>(type->cores.size()));
    std::partial_sort(cores.begin(), cores.begin() + 2, cores.end(), std::greater());
    return std::max(4, cores[0] + cores[1]) / 2 * corePitch;
}

// So much of its wall each has at least: then jackets are as far apart as their ways.
int Drawing::roomBeside() const
{
    return onGrid((jacketPitch_ - wallGap) / 2);
}

// The cable between the glands that its neighbours leave it, along the plain way.
std::optional<CablePlan> Drawing::planFor(CableId id) const
{
    const auto wish = wishes_.find(id.number);
    if (wish == wishes_.end())
        return std::nullopt;
    return planCable(wish->second.sides[0], wish->second.sides[1], wish->second.plan.cores, wish->second.bend);
}

// Whole jackets keep away from what stands by about half their width.
int Drawing::jacketMargin() const
{
    constexpr int most = 3 * gridStep; // glands are not much farther from what they serve
    return std::min(onGrid(jacketPitch_ / 2), most);
}

void Drawing::standForTrunks(std::uint32_t number, const Area& area)
{
    trunks_.stand({number}, area.grownBy(jacketMargin()));
}

// From before the wall of its box, or before the tick itself where there is no box.
void Drawing::wishForTrunk(const Job& job, CableId id)
{
    const std::optional<CablePlan> plan = planFor(id);
    std::optional<WayWish> wish;
    std::array<Area, 2> stands;
    if (plan) {
        const CableWish& sides = wishes_.at(id.number);
        const auto endAt = [&](std::size_t side) {
            const auto& [at, facing] = plan->glands[side];
            if (sides.sides[side].isBox)
                return WayEnd{{at + away(facing, jacketMargin()), facing}, {sides.boxes[side].number}};
            stands[side] = glandOf(*plan, side).grownBy(jacketMargin());
            return WayEnd{{at + away(facing, glandDepth + jacketMargin()), facing}, glandPart(id, side)};
        };
        wish = WayWish{endAt(0), endAt(1)};
    }
    for (const std::size_t side : {0u, 1u})
        trunks_.stand(glandPart(id, side), stands[side]);
    trunks_.wish({id.number}, job.cables.find(id) ? std::move(wish) : std::nullopt);
}

Area Drawing::prepareCable(const Job& job, CableId id)
{
    const auto wish = wishes_.find(id.number);
    if (wish == wishes_.end()) {
        for (const std::size_t side : {0u, 1u})
            routes_.stand(glandPart(id, side), {});
        return replace<CableDrawn>(cables_, id.number, Layer::Cable, std::nullopt);
    }
    const Cable* row = job.cables.find(id);
    const std::array<CableSide, 2>& sides = wish->second.sides;
    std::optional<CablePlan> plan = planFor(id);
    if (const DrawnWay* way = trunks_.find({id.number}); way && way->state == DrawnWay::State::Found) {
        plan->trunk = way->line;
        plan->trunk.insert(plan->trunk.begin(), plan->glands[0].at);
        plan->trunk.push_back(plan->glands[1].at);
        straighten(plan->trunk);
    }

    CableDrawn drawn;
    drawn.id = id;
    drawn.plan = *plan;
    drawn.standing = row->standing;
    drawn.tag = texts_.put(row->tag, TextStyle::Cable);
    drawn.places = placesOf(job, *row, *plan);
    for (const std::size_t side : {0u, 1u}) {
        routes_.stand(glandPart(id, side), glandOf(*plan, side));
        drawn.ticks[side] = acrossGrown(glandOf(*plan, side), plan->glands[side].facing, corePitch / 2);
    }
    placeTags(drawn);
    const int half = halfWidthOf(plan->cores) + corePitch / 2;
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

// In which place of the jacket each core runs: in the order in which they land where they land on fewest
// devices, so that their fan there crosses nothing; those that don't land come last.
std::vector<int> Drawing::placesOf(const Job& job, const Cable& cable, const CablePlan& plan) const
{
    const std::vector<Core>& cores = job.cableTypes.find(cable.type)->cores;
    std::array<std::set<std::uint32_t>, 2> landedOn;
    std::array<std::vector<int>, 2> wanted;
    for (const WhichEnd which : {WhichEnd::From, WhichEnd::To}) {
        const std::size_t side = indexOf(which);
        const Port& gland = plan.glands[side];
        const Area across = glandOf(plan, side);
        const std::vector<Point> first = coreInTrunk(plan, 0);
        const Point start = side == 0 ? first.front() : first.back();
        const bool isLevelWall = !isLevel(gland.facing);
        const bool isRising = isLevelWall ? start.x == across.left : start.y == across.top;
        wanted[side].assign(cores.size(), 1 << 24);
        for (const Conductor* row : coresOf(job, cable.id)) {
            const End& end = endOf(*row, which);
            const auto core = std::find_if(cores.begin(), cores.end(),
                                           [&](const Core& each) { return each.number == row->core; });
            const std::optional<Port> port = portOf(job, end, gland.at);
            if (!port || core == cores.end())
                continue;
            landedOn[side].insert(numberOf(*pointOf(end)));
            const int along = isLevelWall ? port->at.x : port->at.y;
            wanted[side][static_cast<std::size_t>(core - cores.begin())] = isRising ? along : -along;
        }
    }
    const bool useTo = !landedOn[1].empty() && (landedOn[0].empty() || landedOn[1].size() <= landedOn[0].size());
    const std::vector<int>&leading = wanted[useTo ? 1 : 0], &other = wanted[useTo ? 0 : 1];
    std::vector<std::size_t> order(cores.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return std::pair(leading[a], other[a]) < std::pair(leading[b], other[b]);
    });
    std::vector<int> places(cores.size());
    for (std::size_t place = 0; place < order.size(); ++place)
        places[order[place]] = static_cast<int>(place);
    return places;
}

// Beside the glands, where one looks for it; once only on a short jacket.
void Drawing::placeTags(CableDrawn& drawn) const
{
    const int width = static_cast<int>(texts_.width(drawn.tag)), height = heightOf(TextStyle::Cable);
    int length = 0;
    for (std::size_t i = 1; i < drawn.plan.trunk.size(); ++i) {
        const Point step = drawn.plan.trunk[i] - drawn.plan.trunk[i - 1];
        length += std::abs(step.x) + std::abs(step.y);
    }
    for (std::size_t side = 0; side < (length > longJacket ? 2u : 1u); ++side) {
        const auto& [at, facing] = drawn.plan.glands[side];
        const Area& tick = drawn.ticks[side];
        const Point corner =
            isLevel(facing)
                ? Point{at.x + (facing == Facing::Right ? tagGap : -tagGap - width), tick.top - height - 6}
                : Point{tick.right + 6, at.y + (facing == Facing::Bottom ? tagGap : -tagGap - height)};
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

} // namespace doorloom
