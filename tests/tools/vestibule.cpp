#include "tools/vestibule.h"

#include "tools/drawing.h"

#include <tuple>

// One cabinet for both doors. The sequencer's K1 stands in the strike's plus, the strike's minus goes home: fed =
// unlocked; K2 asks the outer door operator for its turn half a second later. The outer strike is let go from the
// vestibule always, and from outside only while the key is on. The inner door has no lock: either of its waves
// asks its operator, through ways 2 and 3 of TX1. The operators' commons are never joined. Both doors open by
// hand from inside.
namespace doorloom {
namespace {

using drawing::Drawing;
using drawing::Lands;

constexpr const char* boxGauge = "18 AWG";

JobInfo title()
{
    JobInfo info;
    info.number = "V-0088";
    info.title = "Entrance vestibule: outer door with strike and operator, inner door with operator";
    info.site = "Ferncombe Concert Rooms, main entrance (invented)";
    info.client = "Ferncombe Rooms Trust (invented)";
    info.author = "drawing desk";
    info.revision = "A";
    info.date = "2025-12-08";
    info.notes = "Turn the key off when the house shuts: the outside actuator is then dead. Without power the outer door "
                 "stays locked from outside; the lever inside always opens it by hand.";
    return info;
}

void places(Drawing& site)
{
    site.place("CAB", "cabinet above the ceiling of the vestibule", Mounting::Cabinet, true, "L1-22");
    site.place("STK1", "strike side of the outer frame", Mounting::Frame, false);
    site.place("HEAD1", "header of the outer frame, inside", Mounting::Frame, false, "L1-24");
    site.place("HEAD2", "header of the inner frame, lobby side", Mounting::Frame, false, "L1-26");
    site.place("OUT", "outside wall, beside the outer door", Mounting::Wall, true);
    site.place("VEST1", "vestibule wall, beside the outer door", Mounting::Wall, true);
    site.place("VEST2", "vestibule wall, beside the inner door", Mounting::Wall, true);
    site.place("LOBBY", "lobby wall, beside the inner door", Mounting::Wall, true);
}

void cabinet(Drawing& site)
{
    site.device("PS1", "dc-supply-24", "CAB", "supply for sequencer, strike and actuators");
    site.device("SQ1", "sequencer", "CAB", "outer door: strike, then operator", {{"delay.K2", 0.5}, {"hold", 6.0}});
    site.device("TSP", "terminal-strip-8", "CAB", "plus of PS1");
    site.device("TSN", "terminal-strip-8", "CAB", "minus of PS1");
    site.device("TSC", "terminal-strip-8", "CAB", "common of SQ1's input");
    site.device("TSI", "terminal-strip-8", "CAB", "requests to SQ1");
    site.device("TX1", "terminal-strip-4x", "CAB", "1: wave outside to the key; 2, 3: requests to DO2");
    site.wire({"B1", "RD", "PS1:+", "TSP:1", {0.4}}, boxGauge);
    site.wire({"B2", "BK", "PS1:-", "TSN:1", {0.4}}, boxGauge);
    site.wire({"B3", "RD", "TSP:2", "SQ1:+", {0.3}}, boxGauge);
    site.wire({"B4", "BK", "TSN:2", "SQ1:-", {0.3}}, boxGauge);
    site.wire({"B5", "WH", "SQ1:COM", "TSC:1", {0.3}}, boxGauge);
    site.wire({"B6", "GN", "SQ1:IN", "TSI:1", {0.3}}, boxGauge);
    site.wire({"B7", "RD", "TSP:3", "SQ1:K1.C", {0.3}}, boxGauge);
}

void outerDoor(Drawing& site)
{
    site.device("ES1", "strike-fail-secure", "STK1", "unlocked only while powered");
    site.device("DO1", "door-operator", "HEAD1", "outer door operator, mains by the electrician", {{"hold", 6.0}});
    site.device("WO1", "wave-actuator", "OUT", "request from outside", {{"hold", 1.0}, {"range", 4.0}});
    site.device("WV1", "wave-actuator", "VEST1", "way out, from the vestibule", {{"hold", 1.0}, {"range", 4.0}});
    site.cable({"W1", "18/2", "CAB", "STK1", {7}, "outer frame"}, {{"RD", "SQ1:K1.NO", "ES1:1"}, {"WH", "TSN:3", "ES1:2"}});
    site.cable({"W2", "22/4", "CAB", "OUT", {11.5}, "outer wall"},
               {{"RD", "TSP:4", "WO1:+"}, {"BK", "TSN:4", "WO1:-"}, {"WH", "TSC:2", "WO1:C"}, {"GN", "TX1:1", "WO1:NO"}});
    site.cable({"W3", "22/4", "CAB", "VEST1", {6}, "outer wall"},
               {{"RD", "TSP:5", "WV1:+"}, {"BK", "TSN:5", "WV1:-"}, {"WH", "TSC:3", "WV1:C"}, {"GN", "TSI:2", "WV1:NO"}});
    site.cable({"W4", "22/2", "CAB", "HEAD1", {5.5}, "outer frame"}, {{"WH", "SQ1:K2.C", "DO1:ACOM"}, {"RD", "SQ1:K2.NO", "DO1:ACT"}});
}

void innerDoor(Drawing& site)
{
    site.device("DO2", "door-operator", "HEAD2", "inner door operator, mains by the electrician", {{"hold", 6.0}});
    site.device("WV2", "wave-actuator", "VEST2", "way in, from the vestibule", {{"hold", 2.0}, {"range", 4.0}});
    site.device("WI1", "wave-actuator", "LOBBY", "way out, from the lobby", {{"hold", 2.0}, {"range", 4.0}});
    site.device("KS1", "key-switch", "LOBBY", "on while the house is open: lets the outside actuator work");
    site.cable({"W5", "22/4", "CAB", "VEST2", {6.5}, "inner wall"},
               {{"RD", "TSP:6", "WV2:+"}, {"BK", "TSN:6", "WV2:-"}, {"WH", "TX1:2", "WV2:C"}, {"GN", "TX1:3", "WV2:NO"}});
    site.cable({"W6", "22/4", "CAB", "LOBBY", {10.5}, "inner wall"},
               {{"RD", "TSP:7", "WI1:+"}, {"BK", "TSN:7", "WI1:-"}, {"WH", "TX1:2", "WI1:C"}, {"GN", "TX1:3", "WI1:NO"}});
    site.cable({"W7", "22/2", "CAB", "LOBBY", {10.5}, "inner wall"}, {{"WH", "TX1:1'", "KS1:C"}, {"RD", "TSI:3", "KS1:NO"}});
    site.cable({"W8", "22/2", "CAB", "HEAD2", {6}, "inner frame"}, {{"WH", "TX1:2'", "DO2:ACOM"}, {"RD", "TX1:3'", "DO2:ACT"}});
}

Opening outerOpening(const Drawing& site)
{
    const Thrown outside = site.thrown("WO1", "hand", "waved"), key = site.thrown("KS1", "key", "on"),
                 inside = site.thrown("WV1", "hand", "waved"), unlocks = site.thrown("SQ1", "K1", "in"),
                 opens = site.thrown("SQ1", "K2", "in");
    Opening door;
    door.tag = "E1";
    door.words = "outer door of the vestibule";
    door.egress = Egress::ByHand;
    door.audience = Audience::Public;
    door.locks = {site.find("ES1")};
    door.doorOperators = {site.find("DO1")};
    door.requests = {{"wave outside, key on", Side::Outside, {outside, key, unlocks, opens}},
                     {"wave in the vestibule", Side::Inside, {inside, unlocks, opens}},
                     {"wave outside, key off", Side::Outside, {outside}}};
    for (const auto& [kind, act, strike, drive] :
         {std::tuple(SituationKind::Rest, "", Promised::Locked, Promised::MustNotStart),
          std::tuple(SituationKind::Request, "wave outside, key on", Promised::Free, Promised::MayStart),
          std::tuple(SituationKind::Request, "wave in the vestibule", Promised::Free, Promised::MayStart),
          std::tuple(SituationKind::Request, "wave outside, key off", Promised::Locked, Promised::MustNotStart),
          std::tuple(SituationKind::AllPowerLost, "", Promised::Locked, Promised::MustNotStart)}) {
        door.promises.push_back({{kind, act, {}}, door.locks[0], strike});
        door.promises.push_back({{kind, act, {}}, door.doorOperators[0], drive});
    }
    return door;
}

Opening innerOpening(const Drawing& site)
{
    Opening door;
    door.tag = "E2";
    door.words = "inner door of the vestibule";
    door.egress = Egress::ByHand;
    door.audience = Audience::Public;
    door.doorOperators = {site.find("DO2")};
    door.requests = {{"wave in the vestibule", Side::Outside, {site.thrown("WV2", "hand", "waved")}},
                     {"wave in the lobby", Side::Inside, {site.thrown("WI1", "hand", "waved")}}};
    for (const auto& [kind, act, drive] : {std::tuple(SituationKind::Rest, "", Promised::MustNotStart),
                                           std::tuple(SituationKind::Request, "wave in the vestibule", Promised::MayStart),
                                           std::tuple(SituationKind::Request, "wave in the lobby", Promised::MayStart),
                                           std::tuple(SituationKind::AllPowerLost, "", Promised::MustNotStart)})
        door.promises.push_back({{kind, act, {}}, door.doorOperators[0], drive});
    return door;
}

} // namespace

Job vestibule(const Catalogue& catalogue)
{
    Drawing site(catalogue);
    site.info(title());
    site.cableType("18/2", {.en = "two cores 18 AWG", .es = "dos hilos 18 AWG"}, "18 AWG", {"RD", "WH"});
    site.cableType("22/2", {.en = "two cores 22 AWG", .es = "dos hilos 22 AWG"}, "22 AWG", {"RD", "WH"});
    site.cableType("22/4", {.en = "four cores 22 AWG", .es = "cuatro hilos 22 AWG"}, "22 AWG", {"RD", "BK", "GN", "WH"});
    places(site);
    cabinet(site);
    outerDoor(site);
    innerDoor(site);
    site.opening(outerOpening(site));
    site.opening(innerOpening(site));
    site.sheet("Vestibule", {{"PS1", {300, 300}},
                             {"SQ1", {300, 900}},
                             {"TSP", {1500, 300}},
                             {"TSN", {1500, 950}},
                             {"TSC", {1500, 1600}},
                             {"TSI", {1500, 2250}},
                             {"TX1", {1500, 2900}},
                             {"ES1", {2950, 300}, Lands::Left},
                             {"DO1", {2950, 800}, Lands::Left},
                             {"WO1", {2950, 1300}, Lands::Left},
                             {"WV1", {2950, 2100}, Lands::Left},
                             {"DO2", {3800, 300}, Lands::Left},
                             {"WV2", {3800, 900}, Lands::Left},
                             {"WI1", {3800, 1700}, Lands::Left},
                             {"KS1", {3800, 2500}, Lands::Left}});
    site.tidy();
    return site.job();
}

} // namespace doorloom
