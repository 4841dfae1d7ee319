#include "canvas/desk.h"

#include "edit/jointerminals.h"
#include "edit/landcores.h"
#include "edit/nexttag.h"
#include "edit/rownames.h"

#include <algorithm>

// Pulling a cable from place to place, and using its cores up.
namespace doorloom {
namespace {

constexpr Text pullFromTo = {.en = "pull {tag} from {from} to {to}", .es = "tender {tag} de {from} a {to}"};
constexpr Text landCore = {.en = "land {cable} on {point}", .es = "conectar {cable} en {point}"};
constexpr Text noPlace = {.en = "{name} has no place yet, so that no cable can end there.",
                          .es = "{name} aún no tiene lugar, así que ningún cable puede terminar allí."};
constexpr Text sayPlace = {.en = "Say in its details where it is.",
                           .es = "Indique en sus detalles dónde está."};
constexpr Text onePlace = {.en = "Both ends would be at {place}.",
                           .es = "Los dos extremos quedarían en {place}."};
constexpr Text useWire = {
    .en = "Join terminals of one place by dragging from one to the other: that draws a wire.",
    .es = "Una los bornes de un mismo lugar arrastrando de uno al otro: eso dibuja un conductor."};

Problem withoutPlace(const Desk& desk, const Hit& hit)
{
    const std::string tag = hit.what == Hit::What::Splice ? nameOfPoint(desk.job(), SpliceId{hit.row})
                                                          : tagOf(desk.job(), {hit.row});
    return problemAt(tag, noPlace, sayPlace, {{"name", tag}});
}

bool isPulledFrom(const Hit& hit)
{
    return hit.what == Hit::What::Device || hit.what == Hit::What::Terminal ||
           hit.what == Hit::What::Splice || hit.what == Hit::What::Frame;
}

CableTypeId typeIn(Steps& steps, CableType type)
{
    for (const CableType& known : steps.job().cableTypes) {
        type.id = known.id;
        if (type == known)
            return known.id;
    }
    type.id = {steps.numbers.take()};
    steps.add(Change{{Put<CableType>{type.id, type}}});
    return type.id;
}

void pullTo(Desk& desk, PlaceId from, PlaceId to)
{
    const auto tag = [&](PlaceId place) { return desk.job().places.find(place)->tag; };
    if (from == to) {
        desk.refuse(problemAt(tag(from), onePlace, useWire, {{"place", tag(from)}}));
        return;
    }
    Steps steps(desk.job());
    Cable cable;
    cable.tag = nextCableTag(desk.job());
    cable.type = typeIn(steps, *desk.cableType);
    cable.from = from;
    cable.to = to;
    const auto [id, change] = pullCable(steps.job(), steps.numbers, cable);
    steps.add(change);
    if (!desk.make({pullFromTo, {{"tag", cable.tag}, {"from", tag(from)}, {"to", tag(to)}}}, steps))
        return;
    desk.selection().choose({id.number});
    desk.begin(UsingUp{id, {}, false});
}

bool waits(const Job& job, CableId cable)
{
    const std::vector<const Conductor*> cores = coresOf(job, cable);
    return std::any_of(cores.begin(), cores.end(), [](const Conductor* core) {
        return core->from.state == EndState::Waiting || core->to.state == EndState::Waiting;
    });
}

// A landing of the cable's; when all its ends are used up, that is over.
void landBy(Desk& desk, CableId cable, const std::string& where, const Result<Landed>& landed)
{
    if (!landed.ok())
        return desk.refuse(landed.problem());
    const Message what{landCore, {{"cable", desk.job().cables.find(cable)->tag}, {"point", where}}};
    if (desk.make(what, Result<Change>(landed.value().change)) && !waits(desk.job(), cable))
        desk.stop();
}

void landNextAt(Desk& desk, CableId cable, const LandingPoint& point)
{
    landBy(desk, cable, nameOfPoint(desk.job(), point), landNext(desk.job(), cable, point));
}

void landBothAt(Desk& desk, CableId cable, const LandingPoint& from, const LandingPoint& to)
{
    Numbers numbers(desk.job());
    landBy(desk, cable, nameOfPoint(desk.job(), from) + ", " + nameOfPoint(desk.job(), to),
           joinTerminals(desk.job(), numbers, from, to,
                         {.wire = false, .colour = {}, .core = 0, .cable = cable}));
}

} // namespace

void beginPulling(Desk& desk, const Pointer& pointer)
{
    if (!isPulledFrom(pointer.hit) || !desk.cableType)
        return;
    const PlaceId place = placeOf(desk.drawing(), pointer.hit);
    if (!desk.job().places.find(place)) {
        desk.refuse(withoutPlace(desk, pointer.hit));
        return;
    }
    desk.begin(Pulling{pointer.hit, place, pointer.point, pointer.point, pointer.at, !pointer.isKeyboard});
}

void moved(Desk&, Pulling& pulling, const Pointer& pointer)
{
    pulling.to = pointer.point;
}

void released(Desk& desk, const Pulling& pulling, const Pointer& pointer)
{
    if (!pulling.isHeld)
        return;
    if (!desk.isFarEnough(pulling.pressedAt, pointer.at)) {
        Pulling clicked = pulling;
        clicked.isHeld = false;
        desk.begin(clicked);
        return;
    }
    pressedAgain(desk, pulling, pointer);
}

bool pressedAgain(Desk& desk, const Pulling& pulling, const Pointer& pointer)
{
    desk.stop();
    if (!isPulledFrom(pointer.hit))
        return true;
    const PlaceId place = placeOf(desk.drawing(), pointer.hit);
    if (!desk.job().places.find(place))
        desk.refuse(withoutPlace(desk, pointer.hit));
    else
        pullTo(desk, pulling.place, place);
    return true;
}

bool isStale(const Desk& desk, const Pulling& pulling)
{
    return !desk.job().places.find(pulling.place);
}

// ---- Cores, one after another

void moved(Desk&, UsingUp& using_, const Pointer& pointer)
{
    using_.to = pointer.point;
}

void released(Desk& desk, const UsingUp& using_, const Pointer& pointer)
{
    if (!using_.isHeld)
        return;
    const auto point = landingPointOf(desk.drawing(), pointer.hit);
    const bool onRing = pointer.hit.what == Hit::What::Ring && pointer.hit.row == using_.cable.number;
    if (using_.pressedOn || onRing)
        desk.begin(UsingUp{.cable = using_.cable, .to = pointer.point}); // it goes on
    else
        desk.stop();
    if (point && using_.pressedOn && !(*point == *using_.pressedOn))
        landBothAt(desk, using_.cable, *using_.pressedOn, *point);
    else if (point)
        landNextAt(desk, using_.cable, *point);
}

bool pressedAgain(Desk& desk, const UsingUp& using_, const Pointer& pointer)
{
    const auto point = landingPointOf(desk.drawing(), pointer.hit);
    if (point && pointer.isKeyboard)
        landNextAt(desk, using_.cable, *point);
    else if (point)
        desk.begin(UsingUp{.cable = using_.cable, .to = pointer.point, .isHeld = true, .pressedOn = point});
    return point.has_value();
}

bool isStale(const Desk& desk, const UsingUp& using_)
{
    return !desk.job().cables.find(using_.cable);
}

} // namespace doorloom
