#pragma once

#include "base/quantity.h"
#include "base/text.h"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

// What one type of hardware is: its terminals, and the electrical parts behind them. Kinds are data
// (resources/catalogue/*.json); core/catalogue reads them and checks each by itself.
namespace doorloom {

using Key = std::string; // hidden name, stable when the printed name changes

// Where a value comes from. What is not from a sheet carries a † on every paper that uses it.
enum class ValueStanding { Sheet, CommonPractice, Memory };

// One jumper (or switch, or link) in one of its positions.
struct JumperAt {
    Key option, jumper, value;

    friend auto operator<=>(const JumperAt&, const JumperAt&) = default;
};
using Condition = std::vector<JumperAt>; // all of them; empty: always

struct Throw {
    Key key;
    Words words; // "in", "magnet near", "key at HOLD"

    friend bool operator==(const Throw&, const Throw&) = default;
};

enum class OperatorNature { Relay, Door, Hand, KeySwitch, Sensor, Selector, Bolt, Mains, Battery, Fire, Failure };

// A place in a kind for whatever moves some of its contacts, or turns its source on.
struct Role {
    Key key;
    OperatorNature nature = OperatorNature::Hand;
    Words words;
    std::vector<Throw> throws;   // two or more
    Key unpowered;               // as printed: no feed, no hand
    Key idle;                    // mains on, door shut, nobody near
    bool makesBeforeBreaks = false; // then one of the throws is the one between, closing both sides

    friend bool operator==(const Role&, const Role&) = default;
};

struct WireRange {
    std::string thinnest, thickest; // gauge names: "22 AWG", "0.5 mm2"

    friend bool operator==(const WireRange&, const WireRange&) = default;
};

// What is said beside a terminal while its jumpers stand so: "+ always", "− when in".
struct TerminalSign {
    Condition when;
    Words words;

    friend bool operator==(const TerminalSign&, const TerminalSign&) = default;
};

struct Terminal {
    Key key;
    std::string printed;             // as on the device, unique in the kind
    Words words;                     // what it is for, for people
    std::vector<Condition> required; // must be landed while one of these holds; none: may stay empty
    std::optional<std::string> lead; // a flying wire of this colour (IEC 60757 letters) instead of a clamp
    WireRange wire;
    int clampCapacity = 2;           // conductors that one clamp takes
    std::optional<Millimetres> stripLength;
    std::optional<NewtonMetres> torque;
    std::vector<TerminalSign> signs;
    ValueStanding standing = ValueStanding::Memory;

    friend bool operator==(const Terminal&, const Terminal&) = default;
};

// A row of terminals as mounted, first terminal first.
struct Strip {
    Words words;
    std::vector<Terminal> terminals;

    friend bool operator==(const Strip&, const Strip&) = default;
};

struct Jumper {
    Key key;
    Words words;

    friend bool operator==(const Jumper&, const Jumper&) = default;
};

// A choice made with one or more jumpers that are meant to stand alike.
struct Option {
    Key key;
    Words words;
    std::vector<Throw> values;
    std::vector<Jumper> jumpers;
    Key factory; // how it comes out of the box; empty: not known
    ValueStanding standing = ValueStanding::Memory;

    friend bool operator==(const Option&, const Option&) = default;
};

using SettingValue = std::variant<double, std::string>;

// A value set on the device: DIP switches, potentiometer, hold time, delay time, function.
struct Setting {
    Key key;
    Words words;
    enum class Form { Dip, Potentiometer, Number, Choice } form = Form::Number;
    std::string unit;                        // "s", "V"; empty for a choice
    double least = 0, most = 0;              // for numbers
    std::vector<Throw> values;               // for a choice or DIP switches
    std::optional<SettingValue> factory, beforePower;
    ValueStanding standing = ValueStanding::Memory;

    friend bool operator==(const Setting&, const Setting&) = default;
};

// ---- Parts. A node is the key of a terminal, or a name that starts with '.': a point inside the kind.

enum class Current { Dc, Ac, Either };
enum class LoadLaw { Resistive, ConstantCurrent, ConstantPower };
enum class Duty { Continuous, Intermittent };
enum class LoadUse { Electronics, Lock, Coil, Lamp, Sounder, Motor, Input };

struct LinkPart { // always a joint
    Key a, b;
    friend bool operator==(const LinkPart&, const LinkPart&) = default;
};

struct ContactRating {
    std::optional<Amperes> dcResistive, dcInductive, acResistive, acInductive;
    std::optional<Volts> mostVolts, leastVolts;
    std::optional<Amperes> leastCurrent;
    friend bool operator==(const ContactRating&, const ContactRating&) = default;
};

struct ContactPart {
    Key a, b, role;
    std::vector<Key> closedIn; // throws of the role
    ContactRating rating;
    bool solidState = false;   // then current runs from a to b only
    friend bool operator==(const ContactPart&, const ContactPart&) = default;
};

struct LoadAt {
    Volts volts;
    Amperes amperes;
    friend bool operator==(const LoadAt&, const LoadAt&) = default;
};

struct LoadPart {
    Key a, b; // a is the plus where it is polarised
    LoadUse use = LoadUse::Electronics;
    bool polarised = false, suppressed = false;
    Current accepts = Current::Dc;
    std::vector<LoadAt> rated;
    LoadLaw law = LoadLaw::Resistive;
    std::optional<Volts> leastVolts, mostVolts, releaseVolts, pullInVolts;
    std::optional<Amperes> inrush;
    std::optional<Milliseconds> inrushTime;
    Duty duty = Duty::Continuous;
    std::optional<double> powerFactor; // on AC, lagging; nothing: 1
    friend bool operator==(const LoadPart&, const LoadPart&) = default;
};

enum class MoveManner {
    Plain,     // a coil: in while its load is fed
    Follows,   // the device's own sensing moves it by itself, while powered
    Programmed // a module's, controller's or operator's logic: any throw while powered
};

// What moves a role's operator away from its unpowered throw.
struct MovePart {
    Key role;
    MoveManner manner = MoveManner::Plain;
    Key powered;              // the load that must be fed; empty: see poweredIn
    std::vector<std::pair<Key, Key>> poweredIn; // (role, throw) of the device's own, such as its mains on
    std::vector<Key> by;      // inputs, one of which must be able to operate; empty: needs none
    Key sense;                // for Follows: the role that it follows; its throws have the same keys
    bool latching = false;
    std::optional<Milliseconds> delay, hold;
    friend bool operator==(const MovePart&, const MovePart&) = default;
};

struct InputBand {
    Words words;
    Ohms least, most;
    friend bool operator==(const InputBand&, const InputBand&) = default;
};

// Puts out its own wetting volts and wants a bare contact.
struct DryInputPart {
    Key terminal, reference;
    std::optional<Volts> wettingVolts;
    std::optional<Ohms> wettingOhms;
    bool isolated = false, mayShareContact = false, mustBeClosed = false;
    Ohms closedBelow{500};
    std::vector<InputBand> bands;
    friend bool operator==(const DryInputPart&, const DryInputPart&) = default;
};

struct SourcePart {
    Key plus, minus; // of AC: its two legs
    bool ac = false, mayParallel = false, minusEarthed = false;
    Volts lowest, nominal, highest;
    std::optional<Volts> lowestOnBattery;
    Amperes most;
    std::string supplyClass;                                 // "Class 2"
    std::vector<std::vector<std::pair<Key, Key>>> live;      // or of ands of (role, throw); empty: always
    friend bool operator==(const SourcePart&, const SourcePart&) = default;
};

struct BatteryPortPart { // a charger's terminals: no source of its own
    Key plus, minus;
    Volts nominal;
    std::optional<Amperes> charge;
    friend bool operator==(const BatteryPortPart&, const BatteryPortPart&) = default;
};

struct BatteryPart {
    Key plus, minus;
    Volts nominal;
    std::optional<AmpereHours> capacity;
    friend bool operator==(const BatteryPart&, const BatteryPart&) = default;
};

struct SignalPart {
    Key terminal, reference;
    std::string line; // "D0", "D1", "A", "B"
    friend bool operator==(const SignalPart&, const SignalPart&) = default;
};

struct EarthPart {
    Key terminal;
    friend bool operator==(const EarthPart&, const EarthPart&) = default;
};

// Where the mains comes in. It carries no volts in the model: with a role the device has its mains (that operator) only while
// contacts lead from here to a point where the mains is to be had; without one it is such a point.
struct MainsPart {
    Key terminal, role;
    friend bool operator==(const MainsPart&, const MainsPart&) = default;
};

struct DiodePart {
    Key anode, cathode;
    Volts drop{0.7};
    friend bool operator==(const DiodePart&, const DiodePart&) = default;
};

struct ResistorPart {
    Key a, b;
    Ohms ohms;
    friend bool operator==(const ResistorPart&, const ResistorPart&) = default;
};

struct SuppressorPart { // absent below its rating
    Key a, b;
    Volts rating;
    friend bool operator==(const SuppressorPart&, const SuppressorPart&) = default;
};

struct FusePart { // a joint with a limit
    Key a, b;
    Amperes limit;
    friend bool operator==(const FusePart&, const FusePart&) = default;
};

using PartBody = std::variant<LinkPart, ContactPart, LoadPart, MovePart, DryInputPart, SourcePart, BatteryPortPart,
                              BatteryPart, SignalPart, EarthPart, MainsPart, DiodePart, ResistorPart, SuppressorPart, FusePart>;

struct Part {
    Key key;
    Condition when; // the jumpers with which the part is there
    PartBody body;
    ValueStanding standing = ValueStanding::Memory;

    friend bool operator==(const Part&, const Part&) = default;
};

// A relay output that an option makes wet (switches the device's own supply) or dry (a bare contact).
struct SwitchedOutput {
    Key key, option;
    Key wetValue;               // the value of the option that makes it wet; empty: always dry
    std::vector<Key> terminals; // common first, then NO, NC
    friend bool operator==(const SwitchedOutput&, const SwitchedOutput&) = default;
};

enum class FailMode {
    Safe,     // locked only while powered
    Secure,   // unlocked only while powered
    StaysPut  // keeps its state
};

struct Lock {
    FailMode failMode = FailMode::Secure;
    Key load;                 // the part that is fed
    bool holdsDoorOpen = false; // a magnet that lets go to close the door
    bool latches = true;        // it is (or works on) a latch; a magnetic lock is none
    std::optional<Milliseconds> actsIn;
    friend bool operator==(const Lock&, const Lock&) = default;
};

struct Kind {
    std::string name; // "relay-module-negative": lower case, no maker, no model
    Words title, words;
    std::string family; // supply, logic, lock, switch, actuator, lamp, operator, relay, part, joint
    ValueStanding standing = ValueStanding::Memory;
    std::vector<Role> roles;
    std::vector<Strip> strips;
    std::vector<Option> options;
    std::vector<Setting> settings;
    std::vector<Part> parts;
    std::vector<SwitchedOutput> outputs;
    std::optional<Lock> lock;

    friend bool operator==(const Kind&, const Kind&) = default;
};

// Look-ups; null when absent. Cost: a walk along the kind.
const Terminal* findTerminal(const Kind& kind, const Key& key);
const Terminal* findPrinted(const Kind& kind, const std::string& printed);
const Role* findRole(const Kind& kind, const Key& key);
const Option* findOption(const Kind& kind, const Key& key);
const Setting* findSetting(const Kind& kind, const Key& key);
const Part* findPart(const Kind& kind, const Key& key);
std::optional<std::size_t> findThrow(const std::vector<Throw>& throws, const Key& key);

template <class Body>
const Body* findPartAs(const Kind& kind, const Key& key)
{
    const Part* part = findPart(kind, key);
    return part ? std::get_if<Body>(&part->body) : nullptr;
}

// All terminals of all strips, in order. The pointers live as long as the kind.
std::vector<const Terminal*> terminalsOf(const Kind& kind);

} // namespace doorloom
