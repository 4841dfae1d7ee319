#include "canvas/desk.h"

#include "edit/jointerminals.h"
#include "edit/rownames.h"

#include <algorithm>

// Landing by the pointer: from terminal to terminal, and a conductor's end to another terminal.
namespace doorloom {
namespace {

constexpr Text landOn = {.en = "land {a} on {b}", .es = "conectar {a} con {b}"};
constexpr Text moveEnd = {.en = "move an end of {name} to {point}",
                          .es = "mover un extremo de {name} a {point}"};
constexpr Text takeOffEnd = {.en = "take an end of {name} off", .es = "desconectar un extremo de {name}"};

bool isThere(const Job& job, const LandingPoint& point)
{
    if (const SpliceId* splice = std::get_if<SpliceId>(&point))
        return job.splices.find(*splice) != nullptr;
    const Landing& landing = std::get<Landing>(point);
    const Kind* kind = kindOf(job, landing.device);
    return kind && findTerminal(*kind, landing.terminal);
}

void join(Desk& desk, const LandingPoint& from, const LandingPoint& to)
{
    Numbers numbers(desk.job());
    const Result<Landed> landed = joinTerminals(desk.job(), numbers, from, to);
    if (!landed.ok()) {
        desk.refuse(landed.problem());
        return;
    }
    const Message what{landOn, {{"a", nameOfPoint(desk.job(), from)}, {"b", nameOfPoint(desk.job(), to)}}};
    if (desk.make(what, Result<Change>(landed.value().change)))
        desk.selection().choose({landed.value().conductor.number});
}

} // namespace

void beginJoining(Desk& desk, const Pointer& pointer)
{
    if (const auto point = landingPointOf(desk.drawing(), pointer.hit))
        desk.begin(Joining{*point, pointer.point, pointer.at, !pointer.isKeyboard});
    else
        desk.selection().choose({});
}

void moved(Desk&, Joining& joining, const Pointer& pointer)
{
    joining.to = pointer.point;
}

// A press and release on one terminal: the second click ends it. The device is chosen meanwhile.
void released(Desk& desk, const Joining& joining, const Pointer& pointer)
{
    if (!joining.isHeld)
        return;
    const auto to = landingPointOf(desk.drawing(), pointer.hit);
    if (to && *to == joining.from) {
        Joining clicked = joining;
        clicked.isHeld = false;
        desk.begin(clicked);
        desk.selection().choose({pointer.hit.row});
        return;
    }
    desk.stop();
    if (to)
        join(desk, joining.from, *to);
}

bool pressedAgain(Desk& desk, const Joining& joining, const Pointer& pointer)
{
    const auto to = landingPointOf(desk.drawing(), pointer.hit);
    desk.stop();
    if (!to)
        return pointer.hit.what == Hit::What::Nothing || pointer.hit.what == Hit::What::Frame;
    if (!(*to == joining.from))
        join(desk, joining.from, *to);
    return true;
}

bool isStale(const Desk& desk, const Joining& joining)
{
    return !isThere(desk.job(), joining.from);
}

// ---- An end, to another terminal; onto bare paper: off

void moved(Desk& desk, MovingEnd& moving, const Pointer& pointer)
{
    moving.hasMoved = moving.hasMoved || desk.isFarEnough(moving.pressedAt, pointer.at);
    moving.to = pointer.point;
}

void released(Desk& desk, const MovingEnd& moving, const Pointer& pointer)
{
    desk.stop();
    const Conductor* row = desk.job().conductors.find(moving.end.conductor);
    if (!moving.hasMoved || !row)
        return;
    const std::string name = nameOfRow(desk.job(), *row);
    const End before = endOf(*row, moving.end.which);
    if (const auto to = landingPointOf(desk.drawing(), pointer.hit)) {
        if (!(before == landedAt(*to)))
            desk.make({moveEnd, {{"name", name}, {"point", nameOfPoint(desk.job(), *to)}}},
                      setEnd(desk.job(), moving.end.conductor, moving.end.which, landedAt(*to)));
        return;
    }
    const bool onPaper = pointer.hit.what == Hit::What::Nothing || pointer.hit.what == Hit::What::Frame;
    if (onPaper && before.state == EndState::Landed)
        desk.make({takeOffEnd, {{"name", name}}}, freeEnd(desk.job(), moving.end));
}

bool isStale(const Desk& desk, const MovingEnd& moving)
{
    return !desk.job().conductors.find(moving.end.conductor) ||
           !desk.drawing().conductors().find(moving.end.conductor.number);
}

} // namespace doorloom
