#include "canvas/drawing.h"

#include "edit/drawing.h"

#include <algorithm>

namespace doorloom {
namespace {

constexpr int waysAtOnce = 300; // that are looked for before anything is shown

// Jackets seldom lie beside each other nearer than the widest is wide: there a core would lie on another.
routing::Prices trunkPrices()
{
    routing::Prices prices;
    prices.length = 2; // the router's unit is some five times that of conductors
    prices.crossing = 60;
    prices.near = 60;
    return prices;
}

// The pieces under which a thing is found.
template <class Visit> void forEachPiece(const ConductorDrawn& drawn, Visit visit)
{
    for (std::size_t i = 1; i < drawn.line.size(); ++i)
        visit(areaOf(drawn.line[i - 1], drawn.line[i]));
    for (const EndDrawn& end : drawn.ends)
        if (end.reference != 0)
            visit(drawn.area);
}

template <class Visit> void forEachPiece(const CableDrawn& drawn, Visit visit)
{
    const int half = halfWidthOf(drawn.plan.cores);
    for (std::size_t i = 1; i < drawn.plan.trunk.size(); ++i)
        visit(areaOf(drawn.plan.trunk[i - 1], drawn.plan.trunk[i]).grownBy(half));
    if (drawn.elsewhere[0] != 0 || drawn.elsewhere[1] != 0)
        visit(drawn.area);
}

template <class Drawn, class Visit> void forEachPiece(const Drawn& drawn, Visit visit)
{
    if (!drawn.area.isEmpty())
        visit(drawn.area);
}

void sortOut(std::vector<std::uint32_t>& indices)
{
    std::sort(indices.begin(), indices.end());
    indices.erase(std::unique(indices.begin(), indices.end()), indices.end());
}

bool landsOn(const Conductor& row, const LandingPoint& point)
{
    return pointOf(row.from) == point || pointOf(row.to) == point;
}


template <class Drawn> Area boundsOf(const Slots<Drawn>& list)
{
    Area bounds;
    for (const Drawn& drawn : list.all())
        bounds = together(bounds, drawn.area);
    return bounds;
}

} // namespace

std::optional<LandingPoint> pointOf(const End& end)
{
    if (const Landing* landing = landingOf(end))
        return *landing;
    if (const SpliceId* splice = spliceOf(end))
        return *splice;
    return std::nullopt;
}

std::uint32_t numberOf(const LandingPoint& point)
{
    const Landing* landing = std::get_if<Landing>(&point);
    return landing ? landing->device.number : std::get<SpliceId>(point).number;
}

Drawing::Drawing(const QFont& font, Language language) : texts_(font), language_(language) {}

// ---- What is in the lists and in the index

template <class Drawn> void Drawing::enter(Slots<Drawn>& list, std::uint32_t number, Layer layer, Drawn drawn)
{
    const std::uint32_t index = list.put(number, std::move(drawn));
    forEachPiece(list[index], [&](const Area& piece) {
        const Indexed one{piece, {layer, index}};
        if (filling_)
            filled_.push_back(one);
        else
            index_.insert(one);
    });
}

template <class Drawn> Area Drawing::leave(Slots<Drawn>& list, std::uint32_t number, Layer layer)
{
    const Drawn* drawn = list.find(number);
    if (!drawn)
        return {};
    const Area area = drawn->area;
    forEachPiece(*drawn, [&, index = list.indexOf(number)](const Area& piece) {
        index_.remove({piece, {layer, index}});
    });
    return area;
}

template <class Drawn>
Area Drawing::replace(Slots<Drawn>& list, std::uint32_t number, Layer layer, std::optional<Drawn> drawn)
{
    Area changed = leave(list, number, layer);
    if (!drawn) {
        list.drop(number);
        return changed;
    }
    changed = together(changed, drawn->area);
    enter(list, number, layer, std::move(*drawn));
    return changed;
}

template Area Drawing::replace(Slots<FrameDrawn>&, std::uint32_t, Layer, std::optional<FrameDrawn>);
template Area Drawing::replace(Slots<CableDrawn>&, std::uint32_t, Layer, std::optional<CableDrawn>);
template Area Drawing::replace(Slots<ConductorDrawn>&, std::uint32_t, Layer, std::optional<ConductorDrawn>);
template Area Drawing::replace(Slots<DeviceDrawn>&, std::uint32_t, Layer, std::optional<DeviceDrawn>);
template Area Drawing::replace(Slots<SpliceDrawn>&, std::uint32_t, Layer, std::optional<SpliceDrawn>);
template Area Drawing::replace(Slots<NoteDrawn>&, std::uint32_t, Layer, std::optional<NoteDrawn>);

Area Drawing::bounds() const
{
    Area bounds = together(boundsOf(frames_), boundsOf(devices_));
    bounds = together(bounds, together(boundsOf(cables_), boundsOf(conductors_)));
    return together(bounds, together(boundsOf(splices_), boundsOf(notes_)));
}

void Drawing::lookUp(const Area& area, Visible& visible) const
{
    static thread_local std::vector<Handle> found;
    found.clear();
    index_.lookUp(area.grownBy(markRoom), found);
    std::vector<std::uint32_t>* const lists[] = {&visible.frames,  &visible.cables,  &visible.conductors,
                                                 &visible.devices, &visible.splices, &visible.notes};
    for (std::vector<std::uint32_t>* list : lists)
        list->clear();
    for (const Handle& handle : found)
        lists[static_cast<std::size_t>(handle.layer)]->push_back(handle.index);
    for (std::vector<std::uint32_t>* list : lists)
        sortOut(*list);
}

// ---- Everything

void Drawing::show(const Job& job, SheetId sheet)
{
    const std::vector<const Sheet*> sheets = sheetsInOrder(job);
    const bool known = job.sheets.find(sheet) != nullptr;
    sheet_ = known ? sheet : sheets.empty() ? SheetId{} : sheets.front()->id;
    isFirstSheet_ = sheets.empty() || sheets.front()->id == sheet_;
    frames_.clear();
    cables_.clear();
    conductors_.clear();
    devices_.clear();
    splices_.clear();
    notes_.clear();
    owners_.clear();
    wishes_.clear();
    displaced_.clear();
    routes_ = Routes();
    jacketPitch_ = jacketPitch(job);
    trunks_ = Routes(jacketPitch_, trunkPrices());
    uncrossed_.clear();
    arrangeLoose(job);

    filling_ = true;
    for (const Device& device : job.devices)
        prepareDevice(job, device.id);
    for (const Splice& splice : job.splices)
        prepareSplice(job, splice.id);
    for (const Place& place : job.places)
        prepareFrame(job, place.id);
    std::set<std::uint32_t> boxes, moved;
    for (const Cable& cable : job.cables)
        wishForCable(job, cable.id, boxes);
    for (const std::uint32_t box : boxes)
        spreadCables(job, {box}, moved);
    for (const Cable& cable : job.cables)
        wishForTrunk(job, cable.id);
    trunks_.settle(waysAtOnce);
    for (const Cable& cable : job.cables)
        prepareCable(job, cable.id);
    for (const Conductor& conductor : job.conductors)
        wishForConductor(job, conductor.id);
    routes_.settle(waysAtOnce);
    for (const Conductor& conductor : job.conductors)
        prepareConductor(job, conductor.id);
    for (const Note& note : job.notes)
        prepareNote(job, note.id);
    for (const Placement& placement : job.placements)
        keepOwner(job, placement.id.number);
    for (const Bends& bends : job.bends)
        keepOwner(job, bends.id.number);
    filling_ = false;
    index_.fill(filled_);
    filled_.clear();
    findCrossings();
}

void Drawing::arrangeLoose(const Job& job)
{
    loose_.clear();
    if (!isFirstSheet_)
        return;
    std::vector<std::uint32_t> numbers;
    for (const Device& device : job.devices)
        if (!placementOf(job, device.id))
            numbers.push_back(device.id.number);
    for (const Splice& splice : job.splices)
        if (!placementOf(job, splice.id))
            numbers.push_back(splice.id.number);
    Point from{200, 300};
    for (const Placement& placement : job.placements) // below what is placed: no device is taller than 150 mm
        if (placement.sheet == sheet_)
            from.y = std::max(from.y, placement.at.y + 1500);
    for (const Arranged& each : arranged(job, numbers, from))
        loose_[each.number] = each.seat;
}

// ---- What a change reaches

Area Drawing::refresh(const Job& job, const Touched& touched)
{
    const bool otherSheets = std::any_of(touched.rows.begin(), touched.rows.end(), [&](std::uint32_t row) {
        return row == sheet_.number || job.sheets.find({row});
    });
    if (touched.everything || otherSheets || !job.sheets.find(sheet_) || jacketPitch(job) != jacketPitch_) {
        const Area before = bounds();
        show(job, sheet_);
        return together(before, bounds());
    }
    Dirty dirty;
    for (const std::uint32_t row : touched.rows)
        note(job, row, dirty);
    const Area changed = prepare(job, std::move(dirty), Settling::Now);
    for (const std::uint32_t row : touched.rows)
        keepOwner(job, row);
    return changed;
}

// Remembers whose a placement or bends are, for when they are gone.
void Drawing::keepOwner(const Job& job, std::uint32_t row)
{
    if (const Placement* placement = job.placements.find({row}))
        owners_[row] = std::visit([](auto id) { return id.number; }, placement->what);
    else if (const Bends* bends = job.bends.find({row}))
        owners_[row] = bends->conductor.number;
    else
        owners_.erase(row);
}

void Drawing::note(const Job& job, std::uint32_t row, Dirty& dirty) const
{
    const auto noteReferrers = [&](std::set<std::uint32_t>& kind, const auto& table) {
        for (const std::uint32_t number : referrersOf(job, row))
            if (table.find({number}))
                kind.insert(number);
    };
    noteOwner(job, row, dirty);
    if (const auto owner = owners_.find(row); owner != owners_.end())
        noteOwner(job, owner->second, dirty);
    if (const Placement* placement = job.placements.find({row}))
        noteOwner(job, std::visit([](auto id) { return id.number; }, placement->what), dirty);
    if (const Bends* bends = job.bends.find({row}))
        dirty.conductors.insert(bends->conductor.number);
    if (job.places.find({row}) || frames_.find(row)) {
        dirty.places.insert(row);
        noteReferrers(dirty.devices, job.devices);
    }
    if (job.kinds.find({row}))
        noteReferrers(dirty.devices, job.devices);
    if (job.cableTypes.find({row}))
        noteReferrers(dirty.cables, job.cables);
}

// A row that stands on the sheet itself, or stood there.
void Drawing::noteOwner(const Job& job, std::uint32_t owner, Dirty& dirty) const
{
    if (job.devices.find({owner}) || devices_.find(owner))
        dirty.devices.insert(owner);
    if (job.splices.find({owner}) || splices_.find(owner))
        dirty.splices.insert(owner);
    if (job.conductors.find({owner}) || conductors_.find(owner))
        dirty.conductors.insert(owner);
    if (job.cables.find({owner}) || cables_.find(owner))
        dirty.cables.insert(owner);
    if (job.notes.find({owner}) || notes_.find(owner))
        dirty.notes.insert(owner);
}

void Drawing::noteConductorsOn(const Job& job, std::uint32_t owner, Dirty& dirty) const
{
    for (const std::uint32_t number : referrersOf(job, owner))
        if (job.conductors.find({number}))
            dirty.conductors.insert(number);
}

void Drawing::noteCablesOf(const Job& job, Dirty& dirty) const
{
    for (const std::uint32_t place : dirty.places)
        for (const std::uint32_t number : referrersOf(job, place))
            if (job.cables.find({number}))
                dirty.cables.insert(number);
    const auto less = [](const LandingPoint& a, const LandingPoint& b) {
        const auto keyOf = [](const LandingPoint& point) {
            const Landing* landing = std::get_if<Landing>(&point);
            return std::pair(numberOf(point), landing ? landing->terminal : Key{});
        };
        return keyOf(a) < keyOf(b);
    };
    std::set<LandingPoint, decltype(less)> shared(less); // those that share a point make room for each other
    for (const std::uint32_t number : dirty.conductors) {
        if (const ConductorDrawn* drawn = conductors_.find(number)) {
            dirty.cables.insert(drawn->cable.number);
            shared.insert(drawn->landed.begin(), drawn->landed.end());
        }
        if (const Conductor* row = job.conductors.find({number})) {
            dirty.cables.insert(row->cable.number);
            for (const End* end : {&row->from, &row->to})
                if (const std::optional<LandingPoint> point = pointOf(*end))
                    shared.insert(*point);
        }
    }
    for (const LandingPoint& point : shared)
        for (const std::uint32_t number : referrersOf(job, numberOf(point)))
            if (const Conductor* row = job.conductors.find({number}); row && landsOn(*row, point))
                dirty.conductors.insert(number);
}

Area Drawing::prepare(const Job& job, Dirty dirty, Settling settling)
{
    Area changed;
    const auto placeOfDrawn = [&](const auto& list, std::uint32_t number) {
        const auto* drawn = list.find(number);
        return drawn ? drawn->place.number : 0;
    };
    for (const std::uint32_t number : dirty.devices) {
        dirty.places.insert(placeOfDrawn(devices_, number));
        changed = together(changed, prepareDevice(job, {number}));
        dirty.places.insert(placeOfDrawn(devices_, number));
        noteConductorsOn(job, number, dirty);
    }
    for (const std::uint32_t place : dirty.places)
        for (const std::uint32_t number : referrersOf(job, place))
            if (const DeviceDrawn* device = devices_.find(number);
                device && device->firstLane != firstLaneOf(job, *device)) {
                changed = together(changed, prepareDevice(job, {number}));
                noteConductorsOn(job, number, dirty);
            }
    for (const std::uint32_t number : dirty.splices) {
        dirty.places.insert(placeOfDrawn(splices_, number));
        changed = together(changed, prepareSplice(job, {number}));
        dirty.places.insert(placeOfDrawn(splices_, number));
        noteConductorsOn(job, number, dirty);
    }
    dirty.places.erase(0);
    for (const std::uint32_t number : dirty.places)
        changed = together(changed, prepareFrame(job, {number}));
    noteCablesOf(job, dirty);
    dirty.cables.erase(0);
    std::set<std::uint32_t> boxes;
    for (const std::uint32_t number : dirty.cables)
        wishForCable(job, {number}, boxes);
    boxes.erase(0);
    for (const std::uint32_t number : boxes)
        spreadCables(job, {number}, dirty.cables);
    for (const std::uint32_t number : dirty.cables)
        wishForTrunk(job, {number});
    const std::vector<std::uint32_t> trunks =
        settling == Settling::Now ? trunks_.settle(waysAtOnce) : trunks_.follow();
    dirty.cables.insert(trunks.begin(), trunks.end());
    for (const std::uint32_t number : dirty.cables) {
        changed = together(changed, prepareCable(job, {number}));
        noteConductorsOn(job, number, dirty);
    }
    for (const std::uint32_t number : dirty.conductors)
        wishForConductor(job, {number});
    const std::vector<std::uint32_t> rows =
        settling == Settling::Now ? routes_.settle(waysAtOnce) : routes_.follow();
    dirty.conductors.insert(rows.begin(), rows.end());
    for (const std::uint32_t number : dirty.conductors)
        changed = together(changed, prepareConductor(job, {number}));
    findCrossings();
    for (const std::uint32_t number : dirty.notes)
        changed = together(changed, prepareNote(job, {number}));
    return changed;
}

Area Drawing::displace(const Job& job, const std::vector<std::uint32_t>& numbers, Point by)
{
    Dirty dirty;
    for (const std::uint32_t number : displaced_)
        noteOwner(job, number, dirty);
    displaced_ = numbers;
    std::sort(displaced_.begin(), displaced_.end());
    displacedBy_ = by;
    for (const std::uint32_t number : displaced_)
        noteOwner(job, number, dirty);
    return prepare(job, std::move(dirty), numbers.empty() ? Settling::Now : Settling::WhenPutDown);
}

Area Drawing::settleMore(const Job& job)
{
    if (trunks_.isWaiting()) {
        Dirty dirty;
        for (const std::uint32_t number : trunks_.settle(1)) // one group
            dirty.cables.insert(number);
        return prepare(job, std::move(dirty), Settling::WhenPutDown);
    }
    Area changed;
    for (const std::uint32_t number : routes_.settle(1)) // one group
        changed = together(changed, prepareConductor(job, {number}));
    findCrossings();
    return changed;
}

Point Drawing::displacement(std::uint32_t number) const
{
    return std::binary_search(displaced_.begin(), displaced_.end(), number) ? displacedBy_ : Point{};
}

std::optional<Seat> Drawing::seatOf(const Job& job, std::uint32_t number) const
{
    const Placement* placement = placementOf(job, number);
    if (placement && placement->sheet == sheet_)
        return Seat{placement->at, static_cast<Facing>(((placement->quarterTurns % 4) + 4) % 4)};
    const auto loose = loose_.find(number);
    return placement || loose == loose_.end() ? std::nullopt : std::optional(loose->second);
}

} // namespace doorloom
