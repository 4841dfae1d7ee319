#pragma once

#include "edit/change.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

// A small job with one of everything that a paper must tell, drawn without the catalogue.
namespace doorloom::papersite {

inline Words same(const std::string& words)
{
    return {words, words};
}

inline Throw throwOf(const Key& key, const std::string& en, const std::string& es)
{
    return {key, {en, es}};
}

inline Terminal terminalOf(const Key& key, const std::string& printed)
{
    Terminal terminal;
    terminal.key = key;
    terminal.printed = printed;
    terminal.wire = {"22 AWG", "14 AWG"};
    terminal.stripLength = Millimetres{6};
    return terminal;
}

inline Strip stripOf(const std::string& en, const std::string& es, const std::vector<std::string>& printed)
{
    Strip strip;
    strip.words = {en, es};
    for (const std::string& each : printed)
        strip.terminals.push_back(terminalOf(each, each));
    return strip;
}

inline Role roleOf(const Key& key, OperatorNature nature, const Key& unpowered, const Key& other)
{
    Role role;
    role.key = key;
    role.nature = nature;
    role.words = same(key);
    role.throws = {throwOf(unpowered, unpowered, unpowered), throwOf(other, other, other)};
    role.unpowered = role.idle = unpowered;
    return role;
}

inline Kind kindOf(const std::string& name, const std::string& en, const std::string& es,
                   const std::string& family)
{
    Kind kind;
    kind.name = name;
    kind.title = {en, es};
    kind.family = family;
    return kind;
}

template <class Body> void addPart(Kind& kind, Body body, Condition when = {})
{
    kind.parts.push_back({"part" + std::to_string(kind.parts.size() + 1), std::move(when), std::move(body)});
}

inline LoadPart loadOf(const Key& a, const Key& b)
{
    LoadPart load;
    load.a = a;
    load.b = b;
    return load;
}

inline Kind supply()
{
    Kind kind = kindOf("test-supply", "Supply 24 V with battery", "Fuente 24 V con batería", "supply");
    kind.roles = {roleOf("mains", OperatorNature::Mains, "lost", "on"),
                  roleOf("battery", OperatorNature::Battery, "flat", "good")};
    kind.strips = {stripOf("DC output", "salida CC", {"+", "−"}),
                   stripOf("battery", "batería", {"B+", "B−"})};
    SourcePart source;
    source.plus = "+";
    source.minus = "−";
    source.nominal = Volts{24};
    addPart(kind, source);
    BatteryPortPart port;
    port.plus = "B+";
    port.minus = "B−";
    port.nominal = Volts{24};
    addPart(kind, port);
    return kind;
}

inline DryInputPart dryInput(const Key& terminal, const Key& reference)
{
    DryInputPart input;
    input.terminal = terminal;
    input.reference = reference;
    return input;
}

inline Setting holdTime()
{
    Setting hold;
    hold.key = "hold";
    hold.words = {"relay 1 stays in for", "relé 1 activado durante"};
    hold.unit = "s";
    hold.least = 1;
    hold.most = 30;
    hold.factory = 6.0;
    hold.standing = ValueStanding::Sheet;
    return hold;
}

// Wet: C at plus, the moving contact at minus.
inline Kind module()
{
    Kind kind = kindOf("test-module", "Relay module", "Módulo de relés", "logic");
    kind.roles = {roleOf("K1", OperatorNature::Relay, "rest", "in")};
    kind.strips = {stripOf("supply", "alimentación", {"+", "−"}),
                   stripOf("inputs", "entradas", {"COM", "IN1", "IN2"}),
                   stripOf("relay 1", "relé 1", {"C", "NO", "NC"})};
    for (Terminal& terminal : kind.strips[0].terminals)
        terminal.required = {{}};
    kind.strips[2].terminals[0].signs = {{{{"K1", "JA", "wet"}}, {"+ always", "+ siempre"}}};
    kind.strips[2].terminals[1].signs = {{{{"K1", "JB", "wet"}}, {"− when in", "− al activarse"}}};
    kind.strips[2].terminals[2].signs = {{{{"K1", "JB", "wet"}}, {"− at rest", "− en reposo"}}};
    Option wet;
    wet.key = "K1";
    wet.words = {"relay 1 output", "salida de relé 1"};
    wet.values = {throwOf("wet", "wet", "con tensión"), throwOf("dry", "dry", "sin tensión")};
    wet.jumpers = {{"JA", same("JA")}, {"JB", same("JB")}};
    kind.options = {wet};
    kind.settings = {holdTime()};
    addPart(kind, loadOf("+", "−"));
    addPart(kind, LinkPart{"COM", "−"});
    addPart(kind, dryInput("IN1", "COM"));
    addPart(kind, dryInput("IN2", "COM"));
    addPart(kind, LinkPart{"C", "+"}, {{"K1", "JA", "wet"}});
    addPart(kind, LinkPart{"C", ".moving"}, {{"K1", "JA", "dry"}});
    addPart(kind, LinkPart{".moving", "−"}, {{"K1", "JB", "wet"}});
    addPart(kind, ContactPart{".moving", "NO", "K1", {"in"}, {}});
    addPart(kind, ContactPart{".moving", "NC", "K1", {"rest"}, {}});
    return kind;
}

inline Kind strike()
{
    Kind kind = kindOf("test-strike", "Electric strike, fail-secure, 24 V",
                       "Cerradero, bloqueado sin tensión, 24 V", "lock");
    kind.standing = ValueStanding::Sheet;
    kind.strips = {stripOf("coil", "bobina", {"1", "2"})};
    for (Terminal& terminal : kind.strips[0].terminals)
        terminal.standing = ValueStanding::Sheet;
    LoadPart coil = loadOf("1", "2");
    coil.use = LoadUse::Lock;
    addPart(kind, coil);
    return kind;
}

inline Kind plate()
{
    Kind kind = kindOf("test-plate", "Push plate", "Placa de empuje", "actuator");
    kind.roles = {roleOf("hand", OperatorNature::Hand, "rest", "pressed")};
    kind.strips = {stripOf("contact", "contacto", {"C", "NO", "NC"})};
    addPart(kind, ContactPart{"C", "NO", "hand", {"pressed"}, {}});
    addPart(kind, ContactPart{"C", "NC", "hand", {"rest"}, {}});
    return kind;
}

inline Kind diode()
{
    Kind kind = kindOf("test-diode", "Suppression diode", "Diodo de supresión", "part");
    kind.strips = {stripOf("leads", "hilos", {"K", "A"})};
    DiodePart body;
    body.anode = "A";
    body.cathode = "K";
    addPart(kind, body);
    return kind;
}

inline Kind reader()
{
    Kind kind = kindOf("test-reader", "Card reader", "Lector de tarjetas", "actuator");
    kind.strips = {stripOf("tail", "cola", {"red", "black", "green"})};
    kind.strips[0].terminals[0].lead = "RD";
    kind.strips[0].terminals[1].lead = "BK";
    kind.strips[0].terminals[2].lead = "GN";
    addPart(kind, loadOf("red", "black"));
    addPart(kind, SignalPart{"green", "black", "D0"});
    return kind;
}

inline Kind strip()
{
    Kind kind = kindOf("test-strip", "Terminal strip", "Regleta", "joint");
    kind.strips = {stripOf("clamps", "bornes", {"1", "2", "3"})};
    addPart(kind, LinkPart{"1", "2"});
    addPart(kind, LinkPart{"2", "3"});
    return kind;
}

inline Kind label()
{
    return kindOf("test-sign", "Sign, no terminals", "Letrero, sin bornes", "lamp");
}

inline std::vector<Kind> kinds()
{
    return {supply(), module(), strike(), plate(), diode(), reader(), strip(), label()};
}

// Draws rows under the next free numbers; every change goes through applyChange.
class Site {
public:
    Job job;

    template <class Row> Id<Row> put(Row row)
    {
        if (!row.id)
            row.id = {job.nextNumber};
        const Id<Row> id = row.id;
        Change change;
        change.steps.push_back(Put<Row>{id, std::move(row)});
        const auto done = applyChange(job, change);
        EXPECT_TRUE(done.ok()) << (done.ok() ? "" : inWords(done.problem()));
        return id;
    }

    PlaceId place(const std::string& tag, const std::string& words, bool isBox,
                  const std::string& breaker = {})
    {
        Place row;
        row.tag = tag;
        row.words = words;
        row.isBox = isBox;
        row.breaker = breaker;
        return put(row);
    }

    DeviceId device(const std::string& tag, const Kind& kind, PlaceId place, const std::string& words = {},
                    Standing standing = Standing::New)
    {
        Device row;
        row.tag = tag;
        row.words = words;
        row.place = place;
        row.standing = standing;
        row.kind = kindRow(kind);
        row.id = {job.nextNumber};
        for (const Option& option : kind.options)
            for (const Jumper& jumper : option.jumpers)
                row.choices.push_back({option.key, jumper.key, ""});
        Change change;
        for (const Role& role : kind.roles) {
            Operator moved;
            moved.id = {row.id.number + 1 + static_cast<std::uint32_t>(row.bindings.size())};
            moved.owner = row.id;
            moved.ownerRole = role.key;
            moved.nature = role.nature;
            moved.throws = role.throws;
            moved.unpowered = role.unpowered;
            moved.idle = role.idle;
            row.bindings.push_back({role.key, moved.id});
            change.steps.push_back(Put<Operator>{moved.id, moved});
        }
        change.steps.push_back(Put<Device>{row.id, row});
        const auto done = applyChange(job, change);
        EXPECT_TRUE(done.ok()) << (done.ok() ? "" : inWords(done.problem()));
        return row.id;
    }

    void jumper(DeviceId device, const Key& option, const Key& jumper, const Key& value)
    {
        Device row = *job.devices.find(device);
        for (Choice& choice : row.choices)
            if (choice.option == option && choice.jumper == jumper)
                choice.value = value;
        put(row);
    }

    CableTypeId cableType(const std::string& name, const std::vector<std::string>& colours,
                          bool withDrain = false, bool carriesMains = false)
    {
        CableType type;
        type.name = name;
        type.carriesMains = carriesMains;
        for (const std::string& colour : colours)
            type.cores.push_back({static_cast<int>(type.cores.size()) + 1, colour, "18 AWG", 0, false});
        if (withDrain)
            type.cores.push_back({static_cast<int>(type.cores.size()) + 1, "", "24 AWG", 0, true});
        return put(type);
    }

    CableId cable(const std::string& tag, CableTypeId type, PlaceId from, PlaceId to)
    {
        Cable row;
        row.tag = tag;
        row.type = type;
        row.from = from;
        row.to = to;
        row.length = Metres{8};
        return put(row);
    }

    static End at(DeviceId device, const Key& terminal)
    {
        return {EndState::Landed, Landing{device, terminal}};
    }
    static End at(SpliceId splice) { return {EndState::Landed, splice}; }

    ConductorId core(CableId cable, int number, End from, End to)
    {
        Conductor row;
        row.tag = job.cables.find(cable)->tag + "." + std::to_string(number);
        row.make = ConductorMake::Core;
        row.cable = cable;
        row.core = number;
        row.from = from;
        row.to = to;
        return put(row);
    }

    ConductorId wire(const std::string& tag, const std::string& colour, End from, End to,
                     ConductorMake make = ConductorMake::Wire, Standing standing = Standing::New)
    {
        Conductor row;
        row.tag = tag;
        row.make = make;
        row.colour = colour;
        row.gauge = "18 AWG";
        row.from = from;
        row.to = to;
        row.length = Metres{0.4};
        row.standing = standing;
        return put(row);
    }

private:
    KindId kindRow(const Kind& kind)
    {
        for (const JobKind& row : job.kinds)
            if (row.kind == kind)
                return row.id;
        JobKind row;
        row.kind = kind;
        return put(row);
    }
};

inline constexpr EndState spare = EndState::Spare, waiting = EndState::Waiting,
                          insulated = EndState::Insulated;

// A cabinet, a frame and a wall; one core of each state, a diode across the strike, a splice, a factory link,
// two wires in one clamp, a drain, existing and foreign devices, a device without a place, mains.
inline Job oneOfEverything()
{
    Site site;
    JobInfo info;
    info.number = "J-7";
    info.title = "Store room, one door";
    info.site = "Invented house";
    info.client = "Nobody";
    info.author = "desk";
    info.revision = "B";
    info.date = "2026-03-01";
    site.put(info);

    const PlaceId wall = site.place("WALL", "corridor wall", false);
    const PlaceId frame = site.place("FRAME", "strike side of frame", false);
    const PlaceId cabinet = site.place("CAB1", "cabinet above ceiling", true, "L1-14");

    const DeviceId module = site.device("LM1", papersite::module(), cabinet, "logic of the door");
    const DeviceId supply = site.device("PS1", papersite::supply(), cabinet);
    const DeviceId strike = site.device("ES1", papersite::strike(), frame);
    const DeviceId clamp = site.device("D1", papersite::diode(), frame, "across ES1");
    const DeviceId plate = site.device("PB1", papersite::plate(), wall, "", Standing::Existing);
    const DeviceId second = site.device("LM2", papersite::module(), cabinet, "", Standing::LeaveAlone);
    const DeviceId tail = site.device("CR1", papersite::reader(), wall, "", Standing::ByOthers);
    const DeviceId bar = site.device("TS1", papersite::strip(), cabinet);
    site.device("SIGN1", papersite::label(), {});
    site.jumper(module, "K1", "JA", "wet");
    site.jumper(module, "K1", "JB", "wet");
    site.jumper(second, "K1", "JA", "wet");

    Sheet sheet;
    sheet.title = "Door";
    const SheetId door = site.put(sheet);
    for (const auto& [device, x, y] : {std::tuple{supply, 0, 0}, std::tuple{module, 500, 0},
                                       std::tuple{second, 0, 900}, std::tuple{bar, 500, 900}}) {
        Placement placement;
        placement.sheet = door;
        placement.what = device;
        placement.at = {x, y};
        site.put(placement);
    }

    site.wire("B1", "RD", Site::at(supply, "+"), Site::at(bar, "1"));
    site.wire("B2", "RD", Site::at(bar, "1"), Site::at(module, "+"));
    site.wire("B3", "BK", Site::at(supply, "−"), Site::at(module, "−"));
    site.wire("", "", Site::at(second, "+"), Site::at(bar, "2"), ConductorMake::Wire, Standing::LeaveAlone);

    const CableTypeId pair = site.cableType("18/2", {"RD", "WH"});
    const CableTypeId four = site.cableType("18/4 shielded", {"RD", "BK", "GN", "WH+BU"}, true);
    const CableTypeId mains = site.cableType("mains 14/3", {"BK", "WH", "GNYE"}, false, true);

    const CableId w1 = site.cable("W1", pair, cabinet, frame);
    site.core(w1, 1, Site::at(module, "C"), Site::at(strike, "1"));
    site.core(w1, 2, Site::at(module, "NO"), Site::at(strike, "2"));
    site.wire("", "", Site::at(clamp, "K"), Site::at(strike, "1"), ConductorMake::Lead);
    site.wire("", "", Site::at(clamp, "A"), Site::at(strike, "2"), ConductorMake::Lead);

    Splice joint;
    joint.tag = "SP1";
    joint.place = wall;
    joint.connector = "for three 18 AWG";
    const SpliceId splice = site.put(joint);
    const CableId w2 = site.cable("W2", four, cabinet, wall);
    site.core(w2, 1, Site::at(module, "COM"), Site::at(splice));
    site.wire("P1", "GY", Site::at(splice), Site::at(plate, "C"));
    site.core(w2, 2, Site::at(module, "IN1"), Site::at(plate, "NO"));
    site.core(w2, 3, {spare, {}}, {spare, {}});
    site.core(w2, 4, Site::at(bar, "3"), {waiting, {}});
    site.core(w2, 5, {spare, {}}, {insulated, {}});

    const CableId w3 = site.cable("W3", pair, cabinet, wall);
    site.core(w3, 1, Site::at(bar, "3"), Site::at(tail, "red"));
    site.core(w3, 2, {waiting, {}}, Site::at(tail, "green"));

    const CableId w10 = site.cable("W10", mains, {}, cabinet);
    site.core(w10, 1, {waiting, {}}, {waiting, {}});
    site.core(w10, 2, {waiting, {}}, {waiting, {}});
    site.core(w10, 3, {waiting, {}}, {waiting, {}});
    return site.job;
}

} // namespace doorloom::papersite
