#include "core/randomjob.h"

#include "core/jobs.h"
#include "core/smallkinds.h"

#include <algorithm>
#include <string>
#include <vector>

namespace doorloom {

namespace {

constexpr std::size_t mostOperators = 7;

LoadPart loadOf(const Key& a, const Key& b, double volts, double amperes)
{
    LoadPart load;
    load.a = a;
    load.b = b;
    load.rated = {{{volts}, {amperes}}};
    load.leastVolts = Volts{0.85 * volts};
    load.mostVolts = Volts{1.2 * volts};
    load.releaseVolts = Volts{0.1 * volts};
    return load;
}

MovePart moveOf(MoveManner manner, const Key& powered)
{
    MovePart move;
    move.role = "K";
    move.manner = manner;
    move.powered = powered;
    return move;
}

class Sketch {
public:
    Sketch(Random& random, Copper copper) : random_(random), copper_(copper) {}

    Job drawn()
    {
        addSupplies();
        const bool hasTwoDoors = !random_.oneIn(4);
        for (int i = random_.oneIn(2) ? 4 : 6; i > 0; --i)
            points_.push_back(place(kindOfParts(named("point"), {"t"})) + ":t");
        for (int i = random_.between(1, 4); i > 0; --i, turnTo(hasTwoDoors))
            addSwitch();
        for (int i = random_.between(2, 5); i > 0; --i, turnTo(hasTwoDoors))
            addLoad();
        if (random_.oneIn(2))
            addRelay();
        if (random_.oneIn(4))
            addModule();
        if (random_.oneIn(4))
            addSensor();
        if (random_.oneIn(4))
            addInput();
        if (random_.oneIn(4) && (pluses_.size() == 1 || !hasCoil_)) // a coil fed through another source's resistor is by graph alone
            addBetween("resistor", ResistorPart{"a", "b", {random_.between(1, 20) * 100.0}});
        for (int i = random_.oneIn(3) ? random_.between(1, 2) : 0; i > 0; --i)
            addBetween("diode", DiodePart{"a", "b"});
        Job job = job_.job();
        std::vector<ConductorId> all;
        for (const Conductor& conductor : job.conductors)
            all.push_back(conductor.id);
        const bool isMostlyBare = random_.oneIn(3); // lengths are not known yet
        for (ConductorId conductor : all)
            if (!isMostlyBare || random_.oneIn(5))
                setCopper(job, conductor, random_, copper_);
        return job;
    }

private:
    std::string named(const std::string& what) { return what + "-" + std::to_string(kinds_++); }
    std::string place(const Kind& kind)
    {
        std::string tag = "N" + std::to_string(devices_++);
        job_.device(tag, kind);
        operators_ += kind.roles.size();
        return tag;
    }
    bool hasRoomFor(std::size_t operators) const { return operators_ + operators <= mostOperators; }

    void turnTo(bool nextDoor) { door_ = nextDoor ? 1 - door_ : door_; }
    const std::string& plus() { return random_.oneOf(pluses_); }
    const std::string& minus() { return random_.oneOf(minuses_); }
    // Of the door that is drawn; at times of any.
    const std::string& point() { return points_[random_.oneIn(24) ? random_.below(points_.size()) : 2 * random_.below(points_.size() / 2) + door_]; }
    // Mostly what feeds, at times a point on the way.
    const std::string& feeding() { return random_.oneIn(4) ? point() : random_.oneIn(8) ? minus() : plus(); }
    const std::string& returning() { return random_.oneIn(4) ? point() : minus(); }
    void land(const std::string& from, const std::string& to) { job_.wire(from, to); }

    void addSupplies()
    {
        const int supplies = random_.oneIn(3) ? 1 : 2;
        const double same = random_.oneIn(3) ? 12 : 24;
        for (int i = 0; i < supplies; ++i) {
            Kind kind = kindOfParts(named("supply"), {"+", "-"});
            const double volts = random_.oneIn(4) ? 12 : same;
            SourcePart source;
            source.plus = "+";
            source.minus = "-";
            source.lowest = {0.95 * volts};
            source.nominal = {volts};
            source.highest = {(random_.oneIn(4) ? 1.1 : 1.15) * volts};
            source.most = {2};
            if (random_.oneIn(4)) {
                kind.roles = {roleOf("mains", OperatorNature::Mains, "lost", "on")};
                kind.roles[0].idle = random_.oneIn(8) ? "lost" : "on";
                source.live = {{{"mains", "on"}}};
            }
            kind.parts = {{"output", {}, source}};
            const std::string tag = place(kind);
            pluses_.push_back(tag + ":+");
            minuses_.push_back(tag + ":-");
        }
        if (supplies == 1)
            return;
        if (const std::size_t tie = random_.below(5); tie < 2)
            land(minuses_[0], minuses_[1]);
        else if (tie == 2)
            land(minuses_[0], pluses_[1]);
    }

    // Two throws and a changeover, or three with whatever contacts.
    void addSwitch()
    {
        if (!hasRoomFor(1))
            return;
        Kind kind = kindOfParts(named("switch"), {"C", "NO", "NC"});
        kind.roles = {roleOf("hand", OperatorNature::Hand, "off", "on")};
        std::vector<Key> no{"on"}, nc{"off"};
        if (random_.oneIn(4)) {
            kind.roles[0].throws.push_back(throwNamed("far"));
            (random_.oneIn(2) ? no : nc).push_back("far");
        }
        kind.parts = {{"NO", {}, ContactPart{"C", "NO", "hand", no, {}}}, {"NC", {}, ContactPart{"C", "NC", "hand", nc, {}}}};
        landContacts(place(kind));
    }

    void landContacts(const std::string& tag)
    {
        land(tag + ":C", feeding());
        land(tag + ":NO", point());
        if (random_.oneIn(2))
            land(tag + ":NC", point());
    }

    void addLoad()
    {
        Kind kind = kindOfParts(named("load"), {"a", "b"});
        LoadPart load = loadOf("a", "b", random_.oneIn(3) ? 12 : 24, random_.between(1, 40) / 50.0);
        load.polarised = random_.oneIn(4);
        if (random_.oneIn(8))
            load.law = random_.oneIn(2) ? LoadLaw::ConstantCurrent : LoadLaw::ConstantPower;
        kind.parts = {{"load", {}, load}};
        const std::string tag = place(kind);
        land(tag + ":a", random_.oneIn(3) ? feeding() : point());
        land(tag + ":b", returning());
    }

    Kind switching(const std::string& name, OperatorNature nature)
    {
        Kind kind = kindOfParts(named(name), {"+", "-", "C", "NO", "NC"});
        kind.roles = {roleOf("K", nature, "out", "in")};
        kind.parts = {{"coil", {}, loadOf("+", "-", 24, random_.between(1, 10) / 50.0)},
                      {"NO", {}, ContactPart{"C", "NO", "K", {"in"}, {}}},
                      {"NC", {}, ContactPart{"C", "NC", "K", {"out"}, {}}}};
        return kind;
    }
    void landSwitching(const Kind& kind)
    {
        hasCoil_ = true;
        const std::string tag = place(kind);
        land(tag + ":+", random_.oneIn(2) ? plus() : point());
        land(tag + ":-", returning());
        landContacts(tag);
    }

    void addRelay()
    {
        if (!hasRoomFor(1))
            return;
        Kind kind = switching("relay", OperatorNature::Relay);
        kind.parts.push_back({"move", {}, moveOf(MoveManner::Plain, "coil")});
        if (random_.oneIn(4)) {
            std::get<LoadPart>(kind.parts[0].body).polarised = true;
            kind.parts.push_back({"diode", {}, DiodePart{"-", "+"}});
        }
        landSwitching(kind);
    }

    void addModule()
    {
        if (!hasRoomFor(1))
            return;
        Kind kind = switching("module", OperatorNature::Relay);
        kind.parts.push_back({"move", {}, moveOf(MoveManner::Programmed, "coil")});
        landSwitching(kind);
    }

    // Its relay is in while somebody is there and it is fed.
    void addSensor()
    {
        if (!hasRoomFor(2))
            return;
        Kind kind = switching("sensor", OperatorNature::Relay);
        kind.roles.push_back(roleOf("sense", OperatorNature::Sensor, "out", "in"));
        MovePart move = moveOf(MoveManner::Follows, "coil");
        move.sense = "sense";
        kind.parts.push_back({"move", {}, move});
        landSwitching(kind);
    }

    void addInput()
    {
        Kind kind = kindOfParts(named("input"), {"IN", "COM"});
        DryInputPart input;
        input.terminal = "IN";
        input.reference = "COM";
        input.wettingVolts = Volts{5};
        input.wettingOhms = Ohms{4700};
        kind.parts = {{"input", {}, input}};
        const std::string tag = place(kind);
        land(tag + ":IN", point());
        land(tag + ":COM", returning());
    }

    void addBetween(const std::string& name, PartBody body)
    {
        Kind kind = kindOfParts(named(name), {"a", "b"});
        kind.parts = {{name, {}, std::move(body)}};
        const std::string tag = place(kind);
        land(tag + ":a", random_.oneIn(3) ? feeding() : point());
        land(tag + ":b", point());
    }

    Random& random_;
    Copper copper_;
    JobBuilder job_{Clamps::Roomy};
    int kinds_ = 0, devices_ = 0;
    bool hasCoil_ = false;
    std::size_t operators_ = 0, door_ = 0;
    std::vector<std::string> pluses_, minuses_, points_;
};

} // namespace

Job randomSmallJob(Random& random, Copper copper) { return Sketch(random, copper).drawn(); }

void setCopper(Job& job, ConductorId conductor, Random& random, Copper copper)
{
    static const std::vector<std::string> metric{"0.5 mm2", "0.75 mm2", "1.5 mm2"}, awg{"24 AWG", "22 AWG", "18 AWG"};
    Conductor row = *job.conductors.find(conductor);
    row.gauge = random.oneIn(4) ? "" : random.oneOf(copper == Copper::Metric ? metric : awg);
    row.length = {random.oneIn(4) ? 0.0 : random.between(1, 60) * 1.0};
    EXPECT_TRUE(applyChange(job, {{Put<Conductor>{row.id, row}}}).ok());
}

} // namespace doorloom
