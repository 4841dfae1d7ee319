#pragma once

#include "base/id.h"
#include "base/quantity.h"
#include "model/kind.h"

#include <string>
#include <variant>
#include <vector>

// The rows of a job's tables: plain values that refer to each other by id.
namespace doorloom {

struct JobInfo;
struct JobKind;
struct CableType;
struct Place;
struct Operator;
struct Device;
struct Cable;
struct Conductor;
struct Splice;
struct Opening;
struct Sheet;
struct Placement;
struct Bends;
struct Note;
struct SetAside;
struct Typical;
struct Stamp;

using JobInfoId = Id<JobInfo>;
using KindId = Id<JobKind>;
using CableTypeId = Id<CableType>;
using PlaceId = Id<Place>;
using OperatorId = Id<Operator>;
using DeviceId = Id<Device>;
using CableId = Id<Cable>;
using ConductorId = Id<Conductor>;
using SpliceId = Id<Splice>;
using OpeningId = Id<Opening>;
using SheetId = Id<Sheet>;
using PlacementId = Id<Placement>;
using BendsId = Id<Bends>;
using NoteId = Id<Note>;
using SetAsideId = Id<SetAside>;
using TypicalId = Id<Typical>;
using StampId = Id<Stamp>;

enum class Standing { New, Existing, Moved, ByOthers, LeaveAlone };

// The title block. A job has at most one row.
struct JobInfo {
    JobInfoId id;
    std::string number, title, site, client, author, revision, date, notes;
    bool english = true, spanish = false; // the languages of its papers

    friend bool operator==(const JobInfo&, const JobInfo&) = default;
};

// The job's own copy of a kind: a newer catalogue never changes a job silently.
struct JobKind {
    KindId id;
    Kind kind;

    friend bool operator==(const JobKind&, const JobKind&) = default;
};

struct Core {
    int number = 1;            // 1, 2, 3 … as the maker orders them; the drain is a core too
    std::string colour;        // IEC 60757 letters: "RD", "WH+BU" for white with a blue stripe
    std::string gauge;         // "18 AWG"
    int pair = 0;              // cores of one pair share a number; 0: no pair
    bool drain = false;

    friend bool operator==(const Core&, const Core&) = default;
};

struct CableType {
    CableTypeId id;
    std::string name; // "18/2", "22/6 shielded"
    Words words;
    std::vector<Core> cores; // in the order in which they are used up
    bool shielded = false, carriesMains = false;

    friend bool operator==(const CableType&, const CableType&) = default;
};

enum class Mounting { Frame, Leaf, Wall, Ceiling, Cabinet, Elsewhere };

// A box, or a spot where devices are: 'cabinet above ceiling', 'strike side of frame'.
struct Place {
    PlaceId id;
    std::string tag; // "CAB1", "FRAME"
    std::string words;
    Mounting mounting = Mounting::Elsewhere;
    bool isBox = false;
    std::string breaker; // the circuit that kills it, as marked on the panel

    friend bool operator==(const Place&, const Place&) = default;
};

// What moves contacts together, or turns a source on.
struct Operator {
    OperatorId id;
    std::string tag;     // empty: named after the device and role that own it ("LM1:K1", "PB1")
    DeviceId owner;      // nothing: a door, the fire alarm, the building's mains
    Key ownerRole;
    OperatorNature nature = OperatorNature::Hand;
    std::vector<Throw> throws;
    Key unpowered, idle;

    friend bool operator==(const Operator&, const Operator&) = default;
};

// How one jumper stands.
struct Choice {
    Key option, jumper;
    Key value; // empty: not chosen yet

    friend bool operator==(const Choice&, const Choice&) = default;
};

struct SettingChoice {
    Key setting;
    SettingValue value;

    friend bool operator==(const SettingChoice&, const SettingChoice&) = default;
};

struct Binding {
    Key role;
    OperatorId moved; // by this operator

    friend bool operator==(const Binding&, const Binding&) = default;
};

// One piece of hardware with a tag. Choices: one for each jumper of its kind; bindings: one for each role.
struct Device {
    DeviceId id;
    std::string tag; // unique in the job
    std::string words;
    KindId kind;
    PlaceId place; // nothing: not said yet
    Standing standing = Standing::New;
    std::vector<Choice> choices;
    std::vector<SettingChoice> settings;
    std::vector<Binding> bindings;

    friend bool operator==(const Device&, const Device&) = default;
};

struct Cable {
    CableId id;
    std::string tag;
    CableTypeId type;
    PlaceId from, to;
    Metres length;
    std::string pull; // cables pulled together share a name
    Standing standing = Standing::New;
    std::string notes;

    friend bool operator==(const Cable&, const Cable&) = default;
};

struct Landing {
    DeviceId device;
    Key terminal;

    friend bool operator==(const Landing&, const Landing&) = default;
};

enum class EndState {
    Waiting,   // not landed yet: the only state that is a finding
    Landed,
    Spare,     // capped
    Insulated  // on purpose: a drain at its far end
};

// One of a conductor's two ends.
struct End {
    EndState state = EndState::Waiting;
    std::variant<std::monostate, Landing, SpliceId> on; // while Landed

    friend bool operator==(const End&, const End&) = default;
};

enum class ConductorMake {
    Core, // of a cable
    Wire, // on its own
    Lead  // a loose part's or device's own lead
};

struct Conductor {
    ConductorId id;
    std::string tag;
    ConductorMake make = ConductorMake::Wire;
    CableId cable; // of a core
    int core = 0;
    End from, to;
    std::string colour, gauge; // of a wire or lead; a core's stand in its cable type
    Metres length;             // of a wire or lead
    Standing standing = Standing::New;

    friend bool operator==(const Conductor&, const Conductor&) = default;
};

// A joint of conductor ends away from any terminal.
struct Splice {
    SpliceId id;
    std::string tag;
    PlaceId place;
    std::string connector; // its size, in words
    int capacity = 3;

    friend bool operator==(const Splice&, const Splice&) = default;
};

enum class Egress { ByHand, ByElectricity, DelayedInsideLock };
enum class Audience { Public, Staff };
enum class Side { Inside, Outside, Both };

// An operator in one of its throws.
struct Thrown {
    OperatorId moved;
    Key thrown;

    friend auto operator<=>(const Thrown&, const Thrown&) = default;
};

// A request or a release, as operators and throws, with the side it serves.
struct Act {
    std::string name; // unique among the opening's requests, and among its releases
    Side side = Side::Both;
    std::vector<Thrown> throws;

    friend bool operator==(const Act&, const Act&) = default;
};

enum class SituationKind {
    Rest, Request, Release, Occupied, RequestWhileOccupied, OtherDoorOpen,
    MainsLost, AllPowerLost, LostAlone, FireAlarm, FireReset
};

// A named position that an opening makes promises about.
struct Situation {
    SituationKind kind = SituationKind::Rest;
    std::string act;   // of a request (occupied or not) or release: its name
    OperatorId lost;   // of LostAlone

    friend auto operator<=>(const Situation&, const Situation&) = default;
};

enum class Promised { Nothing, Locked, Free, FreeButLatched, MayStart, MustNotStart };

struct Promise {
    Situation situation;
    DeviceId device; // a lock, or a door operator
    Promised promised = Promised::Nothing;

    friend bool operator==(const Promise&, const Promise&) = default;
};

// One door with its frame.
struct Opening {
    OpeningId id;
    std::string tag, words;
    Egress egress = Egress::ByHand;
    bool fireRated = false;
    Audience audience = Audience::Public;
    OperatorId door, fire; // its leaf, and the fire alarm that it answers to
    std::vector<DeviceId> locks, doorOperators;
    std::vector<Act> requests, releases;
    std::vector<Thrown> occupied; // how the operators stand while somebody is inside
    std::vector<Promise> promises;

    friend bool operator==(const Opening&, const Opening&) = default;
};

// ---- Drawing. It is not wiring: no check reads it. Whole tenths of a millimetre, x to the right, y down.

struct Point {
    std::int32_t x = 0, y = 0;

    friend bool operator==(const Point&, const Point&) = default;
};

struct Sheet {
    SheetId id;
    std::string title;
    int order = 0;

    friend bool operator==(const Sheet&, const Sheet&) = default;
};

struct Placement {
    PlacementId id;
    SheetId sheet;
    std::variant<DeviceId, SpliceId> what;
    Point at;
    int quarterTurns = 0;

    friend bool operator==(const Placement&, const Placement&) = default;
};

struct Bends {
    BendsId id;
    ConductorId conductor;
    std::vector<Point> pinned;

    friend bool operator==(const Bends&, const Bends&) = default;
};

struct Note {
    NoteId id;
    SheetId sheet;
    Point at;
    std::string words;

    friend bool operator==(const Note&, const Note&) = default;
};

// A finding that somebody answers for. Known by rule, at and throws.
struct SetAside {
    SetAsideId id;
    std::string rule, at, throws, reason, name, date;

    friend bool operator==(const SetAside&, const SetAside&) = default;
};

// A row of a door as it stood once: what it refers to may be gone since.
using DoorRow = std::variant<Place, Operator, Device, Cable, Splice, Conductor, Opening, Sheet, Placement, Bends>;

// A typical as it stood when doors were last brought up to it.
struct Edition {
    int number = 1; // counts up
    std::vector<DoorRow> rows;

    friend bool operator==(const Edition&, const Edition&) = default;
};

// A door drawn once; a stamp is one of its copies, with who is whom.
struct Typical {
    TypicalId id;
    std::string name;
    std::vector<std::uint32_t> rows; // numbers of the rows that belong to it
    std::vector<Edition> editions;   // those that its stamps are at, oldest first

    friend bool operator==(const Typical&, const Typical&) = default;
};

struct Stamp {
    StampId id;
    TypicalId typical;
    std::string name;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> rows; // typical's row (it may be gone), stamp's row
    int edition = 0;        // of the typical, that this door was last brought up to; 0: not known
    std::string tagPattern; // "{door}-{tag}"; empty: tags are counted on

    friend bool operator==(const Stamp&, const Stamp&) = default;
};

} // namespace doorloom
