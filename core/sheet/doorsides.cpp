#include "sheet/doorsides.h"

namespace doorloom {
namespace {

class Places {
public:
    explicit Places(const Job& job) : job_(job) {}

    // A door goes before the next, its frame before its sides.
    void take(DeviceId device, OpeningId opening, DoorSide side)
    {
        const Device* row = job_.devices.find(device);
        if (!row || !row->place)
            return;
        const auto [found, isNew] = all_.try_emplace(row->place, AtDoor{opening, side});
        AtDoor& known = found->second;
        if (!isNew && known.opening == opening && (side == DoorSide::Frame || known.side == DoorSide::Unknown))
            known.side = side;
    }
    void take(const Act& act, OpeningId opening)
    {
        const DoorSide side = act.side == Side::Outside  ? DoorSide::Outside
                              : act.side == Side::Inside ? DoorSide::Inside
                                                         : DoorSide::Unknown;
        for (const Thrown& thrown : act.throws)
            if (const Operator* moved = job_.operators.find(thrown.moved))
                take(moved->owner, opening, side);
    }
    std::map<PlaceId, AtDoor> all() && { return std::move(all_); }

private:
    const Job& job_;
    std::map<PlaceId, AtDoor> all_;
};

} // namespace

std::map<PlaceId, AtDoor> placesAtDoors(const Job& job)
{
    Places places(job);
    for (const Opening& opening : job.openings) {
        for (const std::vector<DeviceId>* devices : {&opening.locks, &opening.doorOperators})
            for (const DeviceId device : *devices)
                places.take(device, opening.id, DoorSide::Frame);
        for (const std::vector<Act>* acts : {&opening.requests, &opening.releases})
            for (const Act& act : *acts)
                places.take(act, opening.id);
    }
    return std::move(places).all();
}

} // namespace doorloom
