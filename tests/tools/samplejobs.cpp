#include "tools/samplejobs.h"

#include "tools/boardinghouse.h"
#include "tools/drawing.h"
#include "tools/vestibule.h"

#include <tuple>

// Two restrooms for one person, a gate and an archive room. Both restrooms have a lever inside that always opens the door by hand.
//
//  public: normally unlocked, fail-safe strike. The strike hangs between K1.C and K1.NO of a wet output,
//  which
//          holds C at plus and brings minus to NO while relay 1 is in: fed = locked, only while occupied.
//  staff:  normally locked, fail-secure strike. K1 is a dry contact in the strike's plus; the strike's minus
//  goes
//          home: fed = unlocked, only for a request.
//
// Cable colours: 22/6 after ICEA method E-1 (from memory); 18/2, 22/2 and 22/4 common practice, no source.
namespace doorloom {
namespace {

using drawing::Drawing;
using drawing::Lands;
using drawing::Seat;

constexpr const char* boxGauge = "18 AWG";

void cableTypes(Drawing& site)
{
    site.cableType("18/2", {.en = "two cores 18 AWG", .es = "dos hilos 18 AWG"}, "18 AWG", {"RD", "WH"});
    site.cableType("22/2", {.en = "two cores 22 AWG", .es = "dos hilos 22 AWG"}, "22 AWG", {"RD", "WH"});
    site.cableType("22/4", {.en = "four cores 22 AWG", .es = "cuatro hilos 22 AWG"}, "22 AWG",
                   {"RD", "BK", "GN", "WH"});
    site.cableType("22/6 shielded",
                   {.en = "six cores 22 AWG with foil and drain", .es = "seis hilos 22 AWG con malla y dren"},
                   "22 AWG", {"BK", "WH", "RD", "GN", "OG", "BU"}, true);
}

// The cabinet on the left, as both jobs have it; the door stands to the right of it.
std::vector<Seat> cabinetSeats()
{
    return {{"PS1", {425, 300}},   {"LM1", {300, 850}},   {"TSP", {1450, 300}}, {"TSN", {1450, 950}},
            {"TSC", {1450, 1600}}, {"TSR", {1450, 2250}}, {"PE1", {1450, 2900}}};
}

void places(Drawing& site)
{
    site.place("CAB", "cabinet above ceiling, inside", Mounting::Cabinet, true, "L1-14");
    site.place("STK", "strike side of frame", Mounting::Frame, false);
    site.place("HEAD", "header of frame, inside", Mounting::Frame, false, "L1-16");
    site.place("OUT", "outside wall, beside the door", Mounting::Wall, true);
    site.place("LITE", "outside wall, above the door", Mounting::Wall, true);
    site.place("INS", "inside wall, beside the door", Mounting::Wall, true);
}

// What both cabinets hold, and the two devices of the header.
void cabinet(Drawing& site, const std::string& mode)
{
    site.device("PS1", "dc-supply-24", "CAB", "supply for module, strike, actuators and lights");
    site.device("LM1", "relay-module-negative", "CAB", "relay module",
                {{"mode", mode}, {"delay.K2", 0.5}, {"hold", 6.0}});
    site.device("TSP", "terminal-strip-8", "CAB", "plus of PS1");
    site.device("TSN", "terminal-strip-8", "CAB", "minus of PS1");
    site.device("TSC", "terminal-strip-8", "CAB", "common of LM1's inputs");
    site.device("TSR", "terminal-strip-8", "CAB", "occupied lights, minus from K3.NO");
    site.device("PE1", "earth-bar", "CAB", "earth of the cabinet");
    site.option("LM1", "K3", "wet");
    site.wire({"B1", "RD", "PS1:+", "TSP:1", {0.4}}, boxGauge);
    site.wire({"B2", "BK", "PS1:-", "TSN:1", {0.4}}, boxGauge);
    site.wire({"B3", "RD", "TSP:2", "LM1:+", {0.3}}, boxGauge);
    site.wire({"B4", "BK", "TSN:2", "LM1:-", {0.3}}, boxGauge);
    site.wire({"B5", "WH", "LM1:COM", "TSC:1", {0.3}}, boxGauge);
    site.wire({"B6", "OG", "LM1:K3.NO", "TSR:1", {0.3}}, boxGauge);
}

void header(Drawing& site)
{
    site.device("DPS1", "door-switch", "HEAD", "door position, closed when shut");
    site.device("DO1", "door-operator", "HEAD", "door operator, mains by the electrician", {{"hold", 8.0}});
    site.cable({"W6", "22/2", "CAB", "HEAD", {6.5}, "head"},
               {{"WH", "TSC:5", "DPS1:A"}, {"RD", "LM1:IN4", "DPS1:B"}});
    site.cable({"W7", "22/2", "CAB", "HEAD", {6.5}, "head"},
               {{"WH", "LM1:K2.C", "DO1:ACOM"}, {"RD", "LM1:K2.NO", "DO1:ACT"}});
}

// The outside actuator with its light, the lock button with its light, and the light above the door. All
// three lights show 'occupied': they hang on plus and get minus from K3.NO while relay 3 is in.
void actuatorsAndLights(Drawing& site)
{
    site.device("WO1", "wave-actuator-led", "OUT", "request from outside", {{"hold", 1.0}, {"range", 4.0}});
    site.cable({"W2", "22/6 shielded", "CAB", "OUT", {12.5}, "outside"}, {{"RD", "TSP:3", "WO1:+"},
                                                                          {"BK", "TSN:3", "WO1:-"},
                                                                          {"WH", "TSC:2", "WO1:C"},
                                                                          {"GN", "LM1:IN1", "WO1:NO"},
                                                                          {"OG", "TSR:2", "WO1:LED"},
                                                                          {"BU", "spare", "spare"},
                                                                          {"drain", "PE1:1", "insulated"}});
    site.device("PB1", "push-to-lock", "INS", "push to lock");
    site.cable({"W3", "22/4", "CAB", "INS", {9.0}, "inside"}, {{"RD", "LM1:K3.C", "PB1:L+"},
                                                               {"BK", "TSR:3", "PB1:L-"},
                                                               {"WH", "TSC:4", "PB1:C"},
                                                               {"GN", "LM1:IN3", "PB1:NO"}});
    site.device("OL1", "lamp-common-plus", "LITE", "red: occupied, green: vacant");
    site.cable({"W4", "22/4", "CAB", "LITE", {11.0}, "outside"}, {{"RD", "LM1:K3.C", "OL1:COM"},
                                                                  {"BK", "TSR:4", "OL1:RED"},
                                                                  {"GN", "LM1:K3.NC", "OL1:GRN"},
                                                                  {"WH", "spare", "spare"}});
}

// What one situation promises of the strike and of the door operator.
struct Row {
    SituationKind kind;
    std::string act;
    Promised strike, drive;
};

constexpr SituationKind rest = SituationKind::Rest, request = SituationKind::Request,
                        occupied = SituationKind::Occupied,
                        whileOccupied = SituationKind::RequestWhileOccupied,
                        allPowerLost = SituationKind::AllPowerLost;
constexpr Promised locked = Promised::Locked, unlocked = Promised::Free, starts = Promised::MayStart,
                   stays = Promised::MustNotStart;

Opening opening(Drawing& site, const std::string& tag, const std::string& words, Audience audience,
                const std::vector<Row>& rows)
{
    const DeviceId strike = site.find("ES1"), drive = site.find("DO1");
    Opening opening;
    opening.tag = tag;
    opening.words = words;
    opening.egress = Egress::ByHand;
    opening.audience = audience;
    opening.door = site.sharedOperator("D" + tag, "DPS1", "door");
    opening.locks = {strike};
    opening.doorOperators = {drive};
    for (const Row& row : rows) {
        opening.promises.push_back({{row.kind, row.act, {}}, strike, row.strike});
        opening.promises.push_back({{row.kind, row.act, {}}, drive, row.drive});
    }
    return opening;
}

JobInfo info(const std::string& number, const std::string& title, const std::string& site,
             const std::string& client, const std::string& date, const std::string& notes)
{
    JobInfo info;
    info.number = number;
    info.title = title;
    info.site = site;
    info.client = client;
    info.author = "drawing desk";
    info.revision = "A";
    info.date = date;
    info.notes = notes;
    return info;
}

Drawing publicRestroom(const Catalogue& catalogue)
{
    Drawing site(catalogue);
    site.info(info("R-0142", "Public restroom 114: normally unlocked, fail-safe strike",
                   "Quillmere Reading Hall, level 1 (invented)", "Quillmere Hall Trust (invented)",
                   "2025-11-03",
                   "On battery the room works as on mains; with the battery flat too, the door is free."));
    cableTypes(site);
    places(site);
    cabinet(site, "normally-unlocked");
    site.option("LM1", "K1", "wet");

    site.device("ES1", "strike-fail-safe", "STK", "locked only while powered");
    site.cable({"W1", "18/2", "CAB", "STK", {9.5}, "strike"},
               {{"RD", "LM1:K1.C", "ES1:1"}, {"WH", "LM1:K1.NO", "ES1:2"}});
    actuatorsAndLights(site);
    site.device("WI1", "wave-actuator", "INS", "request from inside", {{"hold", 1.0}, {"range", 4.0}});
    site.cable({"W5", "22/4", "CAB", "INS", {9.0}, "inside"}, {{"RD", "TSP:4", "WI1:+"},
                                                               {"BK", "TSN:4", "WI1:-"},
                                                               {"WH", "TSC:3", "WI1:C"},
                                                               {"GN", "LM1:IN2", "WI1:NO"}});
    header(site);

    const Thrown opens = site.thrown("LM1", "K2", "in"), outside = site.thrown("WO1", "hand", "waved");
    Opening door = opening(site, "114", "public restroom for one person, normally unlocked", Audience::Public,
                           {{rest, "", unlocked, stays},
                            {request, "outside wave", unlocked, starts},
                            {request, "inside wave", unlocked, starts},
                            {occupied, "", locked, stays},
                            {whileOccupied, "outside wave, not answered", locked, stays},
                            {allPowerLost, "", unlocked, stays}});
    door.requests = {{"outside wave", Side::Outside, {outside, opens}},
                     {"inside wave", Side::Inside, {site.thrown("WI1", "hand", "waved"), opens}},
                     {"outside wave, not answered", Side::Outside, {outside}}};
    door.occupied = {site.thrown("LM1", "K1", "in"), site.thrown("LM1", "K3", "in")};
    site.opening(door);
    std::vector<Seat> seats = cabinetSeats();
    seats.insert(seats.end(), {{"ES1", {2950, 300}, Lands::Left},
                               {"WO1", {2950, 1000}, Lands::Left},
                               {"DPS1", {2950, 1850}, Lands::Left},
                               {"DO1", {2950, 2600}, Lands::Left},
                               {"OL1", {3800, 550}, Lands::Left},
                               {"PB1", {3800, 1350}, Lands::Left},
                               {"WI1", {3800, 2100}, Lands::Left}});
    site.sheet("Door 114", seats);
    return site;
}

Drawing staffRestroom(const Catalogue& catalogue)
{
    Drawing site(catalogue);
    site.info(info(
        "R-0157", "Staff restroom 207: normally locked, fail-secure strike",
        "Tarnwick Pump Works, office floor 2 (invented)", "Tarnwick Works Office (invented)", "2025-11-10",
        "Without any power the door stays locked from outside; the lever inside and the mechanical "
        "key always work."));
    cableTypes(site);
    places(site);
    cabinet(site, "normally-locked");
    site.option("LM1", "K1", "dry");
    site.wire({"B7", "RD", "TSP:5", "LM1:K1.C", {0.3}}, boxGauge);

    site.device("ES1", "strike-fail-secure", "STK", "unlocked only while powered");
    site.cable({"W1", "18/2", "CAB", "STK", {8.0}, "strike"},
               {{"RD", "LM1:K1.NO", "ES1:1"}, {"WH", "TSN:5", "ES1:2"}});
    actuatorsAndLights(site);
    site.device("PI1", "push-plate", "INS", "request from inside");
    site.cable({"W5", "22/2", "CAB", "INS", {9.0}, "inside"},
               {{"WH", "TSC:3", "PI1:C"}, {"RD", "LM1:IN2", "PI1:NO"}});
    header(site);
    site.device("KS1", "key-switch", "OUT", "staff override");
    site.cable({"W8", "22/2", "CAB", "OUT", {12.5}, "outside"},
               {{"WH", "TSC:6", "KS1:C"}, {"RD", "LM1:IN5", "KS1:NO"}});

    const Thrown unlocks = site.thrown("LM1", "K1", "in"), opens = site.thrown("LM1", "K2", "in"),
                 outside = site.thrown("WO1", "hand", "waved");
    Opening door = opening(site, "207", "staff restroom for one person, normally locked", Audience::Staff,
                           {{rest, "", locked, stays},
                            {request, "outside wave", unlocked, starts},
                            {request, "inside plate", unlocked, starts},
                            {request, "staff key", unlocked, starts},
                            {occupied, "", locked, stays},
                            {whileOccupied, "outside wave, not answered", locked, stays},
                            {allPowerLost, "", locked, stays}});
    door.requests = {{"outside wave", Side::Outside, {outside, unlocks, opens}},
                     {"inside plate", Side::Inside, {site.thrown("PI1", "hand", "pressed"), unlocks, opens}},
                     {"staff key", Side::Outside, {site.thrown("KS1", "key", "on"), unlocks, opens}},
                     {"outside wave, not answered", Side::Outside, {outside}}};
    door.occupied = {site.thrown("LM1", "K3", "in")};
    site.opening(door);
    std::vector<Seat> seats = cabinetSeats();
    seats.insert(seats.end(), {{"ES1", {2950, 300}, Lands::Left},
                               {"WO1", {2950, 1000}, Lands::Left},
                               {"KS1", {2950, 1550}, Lands::Left},
                               {"DPS1", {2950, 2250}, Lands::Left},
                               {"DO1", {2950, 2750}, Lands::Left},
                               {"OL1", {3800, 550}, Lands::Left},
                               {"PB1", {3800, 1750}, Lands::Left},
                               {"PI1", {3800, 2400}, Lands::Left}});
    site.sheet("Door 207", seats);
    return site;
}

// A gate 340 m from its supply: the strike's volts hang on the cable. 14 AWG (8.28 ohms a kilometre) leaves 23.3 of 24 V,
// 22 AWG (53 ohms) 20.3 V, and the strike works from 20.4 V.
Drawing yardGate(const Catalogue& catalogue, const std::string& cable)
{
    Drawing site(catalogue);
    site.info(info("G-0031", "Yard gate: fail-secure strike on a long line", "Harrowfold Timber Yard, east gate (invented)",
                   "Harrowfold Yard Office (invented)", "2025-11-17",
                   "Without power the gate stays locked from outside; the lever inside always opens it by hand."));
    site.cableType("14/2", {.en = "two cores 14 AWG", .es = "dos hilos 14 AWG"}, "14 AWG", {"RD", "WH"});
    site.cableType("22/2", {.en = "two cores 22 AWG", .es = "dos hilos 22 AWG"}, "22 AWG", {"RD", "WH"});
    site.place("CAB", "cabinet in the office", Mounting::Cabinet, true, "L2-6");
    site.place("POST", "box on the gate post", Mounting::Frame, true);
    site.device("PS1", "dc-supply-24", "CAB", "supply for the gate");
    site.device("KS1", "key-switch", "CAB", "opens the gate from the office");
    site.device("TSG", "terminal-strip-8", "POST", "strike's plus");
    site.device("TSM", "terminal-strip-8", "POST", "strike's minus");
    site.device("ES1", "strike-fail-secure", "POST", "unlocked only while powered");
    site.wire({"B1", "RD", "PS1:+", "KS1:C", {0.4}}, boxGauge);
    site.cable({"W1", cable, "CAB", "POST", {340}, "yard"}, {{"RD", "KS1:NO", "TSG:1"}, {"WH", "PS1:-", "TSM:1"}});
    site.wire({"B2", "RD", "TSG:2", "ES1:1", {0.3}}, boxGauge);
    site.wire({"B3", "WH", "TSM:2", "ES1:2", {0.3}}, boxGauge);
    Opening gate;
    gate.tag = "GATE";
    gate.words = "yard gate, opened from the office";
    gate.audience = Audience::Staff;
    gate.locks = {site.find("ES1")};
    gate.requests = {{"office key", Side::Both, {site.thrown("KS1", "key", "on")}}};
    gate.promises = {{{rest, "", {}}, gate.locks[0], locked},
                     {{request, "office key", {}}, gate.locks[0], unlocked},
                     {{allPowerLost, "", {}}, gate.locks[0], locked}};
    site.opening(gate);
    site.sheet("Gate", {{"PS1", {425, 300}}, {"KS1", {425, 1000}}, {"TSG", {1900, 300}}, {"TSM", {1900, 1000}},
                        {"ES1", {3000, 500}, Lands::Left}});
    return site;
}

// A mag lock: people get out only by electricity, so fire relay, button and sensor stand in its plus one after another, and
// the controller's contact after them.
Drawing archiveRoom(const Catalogue& catalogue)
{
    Drawing site(catalogue);
    site.info(info("A-0077", "Archive room: mag lock with releases in series", "Quillmere Reading Hall, basement (invented)",
                   "Quillmere Hall Trust (invented)", "2025-11-24",
                   "Do not leave the door locked until each release has been proved alone, with the controller unplugged."));
    cableTypes(site);
    site.place("CAB", "cabinet above ceiling, inside", Mounting::Cabinet, true, "L1-22");
    site.place("FIRE", "fire alarm panel's relay box", Mounting::Wall, true);
    site.place("HEAD", "header of frame, inside", Mounting::Frame, false);
    site.place("INS", "inside wall, beside the door", Mounting::Wall, true);
    site.device("PS1", "dc-supply-24", "CAB", "supply for lock and sensor");
    site.device("AC1", "access-controller", "CAB", "card controller, mains by the electrician");
    site.device("TSP", "terminal-strip-8", "CAB", "plus of PS1");
    site.device("TSN", "terminal-strip-8", "CAB", "minus of PS1");
    site.device("TSF", "terminal-strip-8", "CAB", "plus after the fire relay");
    site.device("TSE", "terminal-strip-8", "CAB", "plus after the exit button");
    site.device("FR1", "fire-relay", "FIRE", "opens in alarm");
    site.device("EB1", "exit-button", "INS", "exit button");
    site.device("MS1", "exit-sensor", "HEAD", "sees who walks to the door");
    site.device("ML1", "mag-lock", "HEAD", "locked only while powered");
    site.option("MS1", "relay", "held-in");
    site.wire({"B1", "RD", "PS1:+", "TSP:1", {0.4}}, boxGauge);
    site.wire({"B2", "BK", "PS1:-", "TSN:1", {0.4}}, boxGauge);
    site.cable({"W1", "18/2", "CAB", "FIRE", {18}, "fire"}, {{"RD", "TSP:2", "FR1:C"}, {"WH", "TSF:1", "FR1:NC"}});
    site.cable({"W2", "18/2", "CAB", "INS", {8}, "inside"}, {{"RD", "TSF:2", "EB1:C"}, {"WH", "TSE:1", "EB1:NC"}});
    site.cable({"W3", "22/6 shielded", "CAB", "HEAD", {6}, "head"}, {{"RD", "TSP:3", "MS1:+"},
                                                                     {"BK", "TSN:2", "MS1:-"},
                                                                     {"WH", "TSE:2", "MS1:C"},
                                                                     {"GN", "AC1:LK.C", "MS1:NO"},
                                                                     {"OG", "AC1:GND", "MS1:C2"},
                                                                     {"BU", "AC1:REX", "MS1:NC2"},
                                                                     {"drain", "AC1:EARTH", "insulated"}});
    site.cable({"W4", "18/2", "CAB", "HEAD", {6}, "head"}, {{"RD", "AC1:LK.NC", "ML1:+"}, {"WH", "TSN:3", "ML1:-"}});
    Opening door;
    door.tag = "B12";
    door.words = "archive room, no lever on the lock";
    door.egress = Egress::ByElectricity;
    door.audience = Audience::Staff;
    door.locks = {site.find("ML1")};
    door.fire = site.thrown("FR1", "fire", "alarm").moved;
    door.requests = {{"card", Side::Outside, {site.thrown("AC1", "LK", "in")}}};
    door.releases = {{"button", Side::Inside, {site.thrown("EB1", "hand", "pressed")}},
                     {"sensor", Side::Inside, {site.thrown("MS1", "sensing", "motion")}}};
    for (const auto& [kind, act, promised] : {std::tuple(rest, "", locked), std::tuple(request, "card", unlocked),
                                              std::tuple(SituationKind::Release, "button", unlocked),
                                              std::tuple(SituationKind::Release, "sensor", unlocked),
                                              std::tuple(SituationKind::MainsLost, "", locked),
                                              std::tuple(SituationKind::FireAlarm, "", unlocked),
                                              std::tuple(allPowerLost, "", unlocked)})
        door.promises.push_back({{kind, act, {}}, door.locks[0], promised});
    site.opening(door);
    site.sheet("Door B12", {{"PS1", {300, 300}},
                            {"AC1", {300, 850}},
                            {"TSP", {1500, 300}},
                            {"TSN", {1500, 950}},
                            {"TSF", {1500, 1600}},
                            {"TSE", {1500, 2250}},
                            {"FR1", {2950, 300}, Lands::Left},
                            {"EB1", {2950, 850}, Lands::Left},
                            {"MS1", {2950, 1400}, Lands::Left},
                            {"ML1", {2950, 2400}, Lands::Left}});
    return site;
}

// A jumper from cable round the exit button's contact: pressing it opens nothing.
Drawing archiveBroken(Drawing site)
{
    site.wire({"B3", "RD", "EB1:C", "EB1:NC", {0.1}}, boxGauge);
    return site;
}

// The strike wired as if K1 were a bare contact, though its jumpers stand at wet: both sides on minus. The
// lock button's core on the plus strip instead of IN3: pressing it shorts PS1. The inside actuator's minus
// capped.
Drawing publicBroken(Drawing site)
{
    site.wire({"B7", "RD", "TSP:5", "LM1:K1.C", {0.3}}, boxGauge);
    site.moveEnd("W1.1", WhichEnd::From, "LM1:K1.NO");
    site.moveEnd("W1.2", WhichEnd::From, "TSN:5");
    site.moveEnd("W3.3", WhichEnd::From, "TSP:6");
    site.moveEnd("W5.2", WhichEnd::From, "spare");
    return site;
}

// Jumpers of K1 left as they come from the factory, wet. The key switch's core on the plus strip instead of
// IN5: turning the key shorts PS1. The minus of the lock button's light capped.
Drawing staffBroken(Drawing site)
{
    site.option("LM1", "K1", "wet");
    site.moveEnd("W8.1", WhichEnd::From, "TSP:6");
    site.moveEnd("W3.2", WhichEnd::From, "spare");
    return site;
}

} // namespace

std::vector<Sample> sampleJobs(const Catalogue& catalogue)
{
    const Drawing open = publicRestroom(catalogue), staff = staffRestroom(catalogue), archive = archiveRoom(catalogue);
    return {{"restroom-public", open.job()},
            {"restroom-public-broken", publicBroken(open).job()},
            {"restroom-staff", staff.job()},
            {"restroom-staff-broken", staffBroken(staff).job()},
            {"yard-gate", yardGate(catalogue, "14/2").job()},
            {"yard-gate-broken", yardGate(catalogue, "22/2").job()},
            {"archive-room", archive.job()},
            {"archive-room-broken", archiveBroken(archive).job()},
            {"boarding-house-forty", boardingHouse(catalogue)},
            {"vestibule", vestibule(catalogue)}};
}

} // namespace doorloom
