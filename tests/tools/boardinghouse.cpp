#include "tools/boardinghouse.h"

#include "edit/details.h"
#include "edit/openings.h"
#include "edit/typicals.h"
#include "tools/drawing.h"

#include <cstdio>
#include <cstdlib>
#include <string>
#include <tuple>
#include <vector>

// Each room has a supply of its own, so that one fault is one room. The keypad's contact stands in the strike's plus,
// the strike's minus goes home: fed = unlocked. The lever inside always opens the door by hand.
namespace doorloom {
namespace {

using drawing::Drawing;
using drawing::Lands;

constexpr const char* boxGauge = "18 AWG";
constexpr int rooms = 40;

[[noreturn]] void stop(const Problem& problem)
{
    std::fprintf(stderr, "boarding house: %s\n", inWords(problem).c_str());
    std::exit(2);
}

template <class Value> const Value& sure(const Result<Value>& result)
{
    if (!result.ok())
        stop(result.problem());
    return result.value();
}

void make(Job& job, const Change& change)
{
    sure(applyChange(job, change));
}

JobInfo title()
{
    JobInfo info;
    info.number = "B-0219";
    info.title = "Guest rooms 101 to 140: fail-secure strike and keypad, one typical";
    info.site = "Lanternfell Boarding House, ground floor (invented)";
    info.client = "Lanternfell House Society (invented)";
    info.author = "drawing desk";
    info.revision = "A";
    info.date = "2025-12-01";
    info.notes = "Without power a room stays locked from outside; the lever inside and the mechanical key always work.";
    return info;
}

Opening room(const Drawing& site)
{
    Opening door;
    door.tag = "101";
    door.words = "guest room";
    door.egress = Egress::ByHand;
    door.audience = Audience::Staff;
    door.locks = {site.find("101-ES1")};
    door.requests = {{"code", Side::Outside, {site.thrown("101-KP1", "relay", "in")}}};
    for (const auto& [kind, act, promised] : {std::tuple(SituationKind::Rest, "", Promised::Locked),
                                              std::tuple(SituationKind::Request, "code", Promised::Free),
                                              std::tuple(SituationKind::AllPowerLost, "", Promised::Locked)})
        door.promises.push_back({{kind, act, {}}, door.locks[0], promised});
    return door;
}

Drawing firstRoom(const Catalogue& catalogue)
{
    Drawing site(catalogue);
    site.info(title());
    site.cableType("18/2", {.en = "two cores 18 AWG", .es = "dos hilos 18 AWG"}, "18 AWG", {"RD", "WH"});
    site.cableType("22/4", {.en = "four cores 22 AWG", .es = "cuatro hilos 22 AWG"}, "22 AWG", {"RD", "BK", "GN", "WH"});
    site.place("101-CAB", "box above the ceiling of the room", Mounting::Cabinet, true, "L1-8");
    site.place("101-STK", "strike side of frame", Mounting::Frame, false);
    site.place("101-OUT", "corridor wall, beside the door", Mounting::Wall, true);
    site.device("101-PS1", "dc-supply-24", "101-CAB", "supply of the room");
    site.device("101-TSP", "terminal-strip-8", "101-CAB", "plus of the supply");
    site.device("101-TSN", "terminal-strip-8", "101-CAB", "minus of the supply");
    site.device("101-TSK", "terminal-strip-8", "101-CAB", "plus after the keypad's contact");
    site.device("101-KP1", "keypad", "101-OUT", "code from the corridor");
    site.device("101-ES1", "strike-fail-secure", "101-STK", "unlocked only while powered");
    site.wire({"101-B1", "RD", "101-PS1:+", "101-TSP:1", {0.3}}, boxGauge);
    site.wire({"101-B2", "BK", "101-PS1:-", "101-TSN:1", {0.3}}, boxGauge);
    site.cable({"101-W1", "22/4", "101-CAB", "101-OUT", {5}, "101-corridor"}, {{"RD", "101-TSP:2", "101-KP1:+"},
                                                                         {"BK", "101-TSN:2", "101-KP1:-"},
                                                                         {"WH", "101-TSP:3", "101-KP1:C"},
                                                                         {"GN", "101-TSK:1", "101-KP1:NO"}});
    site.cable({"101-W2", "18/2", "101-CAB", "101-STK", {4}, "101-frame"},
               {{"RD", "101-TSK:2", "101-ES1:1"}, {"WH", "101-TSN:3", "101-ES1:2"}});
    site.opening(room(site));
    site.sheet("Room 101", {{"101-PS1", {300, 300}},
                            {"101-TSP", {1500, 300}},
                            {"101-TSN", {1500, 950}},
                            {"101-TSK", {1500, 1600}},
                            {"101-KP1", {2950, 300}, Lands::Left},
                            {"101-ES1", {2950, 1300}, Lands::Left}});
    site.tidy();
    return site;
}

// The corner rooms have a longer way to their corridor box, and ten rooms are on a breaker.
void makeExceptions(Job& job)
{
    for (const Cable& cable : Table<Cable>(job.cables))
        if (cable.tag == "120-W1" || cable.tag == "140-W1")
            make(job, sure(setCableLength(job, cable.id, {8.5})));
    for (Place place : Table<Place>(job.places)) {
        const int ten = (std::stoi(place.tag) - 101) / 10;
        if (place.breaker.empty() || ten == 0)
            continue;
        place.breaker = "L1-" + std::to_string(8 + 2 * ten);
        make(job, sure(alterPlace(job, place)));
    }
}

} // namespace

Job boardingHouse(const Catalogue& catalogue)
{
    const Drawing first = firstRoom(catalogue);
    Job job = first.job();
    Numbers forTypical(job);
    const auto [typical, marked] =
        sure(markTypical(job, forTypical, job.openings.begin()->id, "guest room", {first.find("101-PS1")}));
    make(job, marked);
    Numbers forStamps(job);
    make(job, sure(stampTypical(job, forStamps, typical, rooms - 1, {"102", "{door}-{tag}"})).change);
    makeExceptions(job);
    return job;
}

} // namespace doorloom
