#include "edit/jointerminals.h"

#include "edit/nexttag.h"
#include "edit/references.h"
#include "edit/rownames.h"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

namespace doorloom {

namespace {

// What may be used, and how well it suits: the least comes first.
struct Candidate {
    const Conductor* core = nullptr;
    WhichEnd atA = WhichEnd::From;
    std::array<std::size_t, 4> order{}; // half landed already, how its cable suits, cable, core
};

bool isLandedOn(const End& end, const LandingPoint& joint)
{
    return end == landedAt(joint);
}

std::uint32_t numberOf(const LandingPoint& joint)
{
    if (const Landing* landing = std::get_if<Landing>(&joint))
        return landing->device.number;
    return std::get<SpliceId>(joint).number;
}

std::vector<const Conductor*> conductorsOn(const Job& job, const LandingPoint& joint)
{
    if (const Landing* landing = std::get_if<Landing>(&joint))
        return conductorsOn(job, landing->device);
    return conductorsOn(job, std::get<SpliceId>(joint));
}

std::uint32_t thingAt(const End& end)
{
    if (const Landing* landing = landingOf(end))
        return landing->device.number;
    const SpliceId* splice = spliceOf(end);
    return splice ? splice->number : 0;
}

// How much goes on at a place: the cables that end there, then the terminals. A cabinet has more of both.
std::pair<std::size_t, std::size_t> traffic(const Job& job, PlaceId place)
{
    std::pair<std::size_t, std::size_t> count;
    for (std::uint32_t user : referrersOf(job, place.number))
        if (job.cables.find({user}))
            ++count.first;
        else if (const Kind* kind = kindOf(job, DeviceId{user}))
            for (const Strip& strip : kind->strips)
                count.second += strip.terminals.size();
    return count;
}

class Joining {
public:
    Joining(const Job& job, const LandingPoint& a, const LandingPoint& b, const ConductorWish& wish)
        : job_(job), a_(a), b_(b), wish_(wish), placeA_(placeOf(job, a)), placeB_(placeOf(job, b)),
          bIsFarSide_(traffic(job, placeB_) <= traffic(job, placeA_))
    {
    }

    Result<Landed> made(Numbers& numbers) const
    {
        if (auto problem = jointsProblem())
            return *std::move(problem);
        if (isWire())
            return wired(numbers);
        if (!placeA_ || !placeB_)
            return noPlace(placeA_ ? b_ : a_);
        const std::vector<Candidate> candidates = suitable();
        if (candidates.empty())
            return noCore();
        const auto best = std::min_element(
            candidates.begin(), candidates.end(),
            [](const Candidate& one, const Candidate& other) { return one.order < other.order; });
        return landed(*best->core, best->atA);
    }

private:
    bool isWire() const { return wish_.wire || (placeA_ == placeB_ && wish_.core == 0 && !wish_.cable); }

    std::optional<Problem> jointsProblem() const
    {
        for (const LandingPoint& joint : {a_, b_})
            if (auto problem = pointProblem(job_, joint))
                return problem;
        const Gaps gaps = {{"a", nameOfPoint(job_, a_)}, {"b", nameOfPoint(job_, b_)}};
        if (a_ == b_)
            return problemAt(
                nameOfPoint(job_, a_),
                {.en = "'{a}' can't be joined to itself.", .es = "'{a}' no se puede unir consigo mismo."},
                {.en = "Choose another terminal.", .es = "Elija otro borne."}, gaps);
        const Conductor* there = wish_.isOpen() ? joinedBy() : nullptr;
        if (!there)
            return std::nullopt;
        return problemAt(
            nameOfRow(job_, *there),
            {.en = "'{a}' and '{b}' are joined already.", .es = "'{a}' y '{b}' ya están unidos."},
            {.en = "To double it, say with which core or wire.", .es = "Para doblarlo, diga con qué hilo."},
            gaps);
    }

    const Conductor* joinedBy() const
    {
        for (const Conductor* row : conductorsOn(job_, a_))
            if ((isLandedOn(row->from, a_) && isLandedOn(row->to, b_)) ||
                (isLandedOn(row->from, b_) && isLandedOn(row->to, a_)))
                return row;
        return nullptr;
    }

    // ---- Wires

    Landed landed(const Conductor& row, WhichEnd atA) const
    {
        Conductor after = row;
        (atA == WhichEnd::From ? after.from : after.to) = landedAt(a_);
        (atA == WhichEnd::From ? after.to : after.from) = landedAt(b_);
        return {row.id, {{Put<Conductor>{row.id, after}}}};
    }

    // A wire that hangs on one of the two with its other end waiting.
    const Conductor* hangingWire(WhichEnd& atA) const
    {
        for (const LandingPoint* joint : {&a_, &b_})
            for (const Conductor* row : conductorsOn(job_, *joint))
                for (WhichEnd which : {WhichEnd::From, WhichEnd::To}) {
                    if (row->make != ConductorMake::Wire || row->standing == Standing::LeaveAlone ||
                        !isLandedOn(endOf(*row, which), *joint) ||
                        endOf(*row, otherEnd(which)).state != EndState::Waiting ||
                        (!wish_.colour.empty() && row->colour != wish_.colour))
                        continue;
                    atA = joint == &a_ ? which : otherEnd(which);
                    return row;
                }
        return nullptr;
    }

    Result<Landed> wired(Numbers& numbers) const
    {
        WhichEnd atA = WhichEnd::From;
        if (const Conductor* hanging = hangingWire(atA))
            return landed(*hanging, atA);
        auto [id, change] = addWire(job_, numbers, landedAt(a_), landedAt(b_), nextWireTag(job_));
        std::get<Put<Conductor>>(change.steps.front()).after->colour = wish_.colour;
        return Landed{id, std::move(change)};
    }

    // ---- Cores

    std::vector<const Cable*> cablesBetween() const
    {
        std::vector<const Cable*> cables;
        for (std::uint32_t user : referrersOf(job_, placeA_.number))
            if (const Cable* cable = job_.cables.find({user});
                cable && (!wish_.cable || cable->id == wish_.cable) &&
                ((cable->from == placeA_ && cable->to == placeB_) ||
                 (cable->from == placeB_ && cable->to == placeA_)))
                cables.push_back(cable);
        return cables;
    }

    // Judged on the far side, where cables serve single devices: 0, it serves this one; 1, nobody yet; 2,
    // others.
    std::size_t rankOf(const Cable& cable) const
    {
        const PlaceId place = bIsFarSide_ ? placeB_ : placeA_;
        const std::uint32_t served = numberOf(bIsFarSide_ ? b_ : a_);
        std::size_t rank = 1;
        for (const Conductor* core : coresOf(job_, cable.id)) {
            const std::uint32_t thing = thingAt(cable.from == place ? core->from : core->to);
            if (thing == served)
                return 0;
            if (thing != 0)
                rank = 2;
        }
        return rank;
    }

    bool suitsWish(const Conductor& core) const
    {
        return (wish_.colour.empty() || colourOf(job_, core) == wish_.colour) &&
               (wish_.core == 0 || core.core == wish_.core);
    }

    bool isFree(const End& end) const
    {
        const bool named = !wish_.colour.empty() || wish_.core != 0;
        return end.state == EndState::Waiting || (named && end.state == EndState::Spare);
    }

    std::vector<Candidate> suitable() const
    {
        std::vector<Candidate> found;
        std::size_t cableOrder = 0;
        for (const Cable* cable : cablesBetween()) {
            const std::size_t rank = rankOf(*cable);
            const WhichEnd atA = cable->from == placeA_ ? WhichEnd::From : WhichEnd::To;
            std::size_t coreOrder = 0;
            for (const Conductor* core : coresInOrder(job_, *cable)) {
                const End &ofA = endOf(*core, atA), &ofB = endOf(*core, otherEnd(atA));
                const bool half =
                    (isLandedOn(ofA, a_) && isFree(ofB)) || (isFree(ofA) && isLandedOn(ofB, b_));
                if ((half || (isFree(ofA) && isFree(ofB))) && suitsWish(*core) &&
                    core->standing != Standing::LeaveAlone)
                    found.push_back({core, atA, {half ? 0u : 1u, rank, cableOrder, coreOrder}});
                ++coreOrder;
            }
            ++cableOrder;
        }
        return found;
    }

    // ---- Refusals

    Problem noPlace(const LandingPoint& joint) const
    {
        return problemAt(nameOfPoint(job_, joint),
                         {.en = "'{joint}' has no place yet, so no cable can be found for it.",
                          .es = "'{joint}' aún no tiene lugar, así que no se le encuentra cable."},
                         {.en = "Say first where its device is, or join it with a wire.",
                          .es = "Diga antes dónde está su dispositivo, o únalo con un hilo suelto."},
                         {{"joint", nameOfPoint(job_, joint)}});
    }

    std::string freeCores() const
    {
        std::string names;
        for (const Cable* cable : cablesBetween())
            for (const Conductor* core : coresInOrder(job_, *cable))
                if (core->from.state != EndState::Landed && core->to.state != EndState::Landed &&
                    core->standing != Standing::LeaveAlone)
                    names += (names.empty() ? "" : ", ") + cable->tag + "." + std::to_string(core->core) +
                             " " + colourOf(job_, *core);
        return names;
    }

    Problem noCore() const
    {
        const std::string left = freeCores();
        const Gaps gaps = {{"a", nameOfPoint(job_, a_)},
                           {"b", nameOfPoint(job_, b_)},
                           {"from", nameOfRow(job_, *job_.places.find(placeA_))},
                           {"to", nameOfRow(job_, *job_.places.find(placeB_))},
                           {"wish", wish_.core != 0 ? std::to_string(wish_.core) : wish_.colour},
                           {"left", left}};
        const std::string where = nameOfPoint(job_, b_);
        if (placeA_ == placeB_)
            return problemAt(
                where,
                {.en = "'{a}' and '{b}' are both at {from}, and no such core ends there twice.",
                 .es = "'{a}' y '{b}' están en {from}, y ningún hilo así termina allí dos veces."},
                {.en = "Join them with a wire.", .es = "Únalos con un hilo suelto."}, gaps);
        if (left.empty())
            return problemAt(where,
                             {.en = "No free core runs between {from} and {to}.",
                              .es = "Ningún hilo libre va de {from} a {to}."},
                             {.en = "Pull a cable between {from} and {to} first.",
                              .es = "Tienda antes un cable entre {from} y {to}."},
                             gaps);
        if (wish_.core == 0 && wish_.colour.empty())
            return problemAt(where,
                             {.en = "Between {from} and {to} only spare cores are left.",
                              .es = "Entre {from} y {to} solo quedan hilos de reserva."},
                             {.en = "Name one of them ({left}), or pull another cable.",
                              .es = "Nombre uno de ellos ({left}), o tienda otro cable."},
                             gaps);
        return problemAt(where,
                         {.en = "No free core '{wish}' runs between {from} and {to}.",
                          .es = "Ningún hilo libre '{wish}' va de {from} a {to}."},
                         {.en = "Use one of: {left}; or pull another cable.",
                          .es = "Use uno de: {left}; o tienda otro cable."},
                         gaps);
    }

    const Job& job_;
    const LandingPoint &a_, &b_;
    const ConductorWish& wish_;
    PlaceId placeA_, placeB_;
    bool bIsFarSide_; // less goes on there
};

} // namespace

Result<Landed> joinTerminals(const Job& job, Numbers& numbers, const LandingPoint& a, const LandingPoint& b,
                             const ConductorWish& wish)
{
    return Joining(job, a, b, wish).made(numbers);
}

} // namespace doorloom
