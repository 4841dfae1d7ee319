#pragma once

#include "edit/operations.h"
#include "model/job.h"
#include "papers/titleblock.h"

#include <array>
#include <string>
#include <vector>

// The terminal schedule: what a helper with a screwdriver holds at an open cabinet. Box by box, device by
// device, terminals in the order printed on the device, every landing exactly once and on its own device's
// page.
namespace doorloom {

enum class RowKind {
    Landing,   // a conductor end on a terminal or splice
    Empty,     // a terminal with nothing on it
    Link,      // terminals joined inside the device: fit no wire
    Spare,     // a core end, capped
    Waiting,   // a core end that has no place yet
    Insulated, // a core end insulated on purpose
    Bare       // a device with nothing to land
};

// Where the other end of a conductor is.
struct FarEnd {
    EndState state = EndState::Waiting;
    std::string box, boxWords;    // of the place
    std::string device, terminal; // as printed; a splice has no terminals
    bool sameBox = false;
};

struct ScheduleRow {
    RowKind kind = RowKind::Landing;
    ConductorId conductor; // none: an empty terminal, a link
    WhichEnd end = WhichEnd::From;
    Words strip;          // the row of terminals where it is
    std::string terminal; // as printed
    std::vector<Message>
        signs; // with the jumpers as they stand: '+ always'; the colour of its lead; the band
    std::string cable;
    int core = 0, pair = 0;
    Message wire;       // 'C3 core 2, pair 1', 'wire', 'lead of D1, band end'
    std::string colour; // letters of IEC 60757
    std::string tag, gauge;
    std::vector<std::string> alsoInClamp;
    Message carries;
    FarEnd far;
    Standing standing = Standing::New;
    Message note; // of a row that is no landing: 'empty', 'joined inside to 2, 3' …
};

struct Counts {
    int landings = 0, empties = 0, spares = 0, waiting = 0;

    friend bool operator==(const Counts&, const Counts&) = default;
};

enum class BlockKind { Device, Splice, LooseEnds };

// A device, a splice, or the unlanded ends of one cable at one place.
struct ScheduleBlock {
    BlockKind kind = BlockKind::Device;
    DeviceId device;
    std::string tag;      // as printed on the tag; made up for a splice without one, so that no two are alike
    std::string words;    // what the job calls it
    Message title;        // of the device's kind
    std::string kindName; // 'relay-module-negative'
    Standing standing = Standing::New;
    std::vector<Message> before;   // any work: leave alone or not, what to switch off, jumpers to set
    std::vector<Message> facts;    // settings, clamps
    std::string options, settings; // for programs: 'K1.JA=wet; K1.JB='
    bool showsStrips = false;      // it has more than one
    std::vector<ScheduleRow> rows;
    Counts counts;
};

struct ScheduleBox {
    PlaceId place; // none: what has no place yet
    std::string tag, words, breaker;
    bool isBox = false;
    std::vector<ScheduleBlock> blocks;
    Counts counts;
};

struct Schedule {
    TitleBlock title;
    std::vector<ScheduleBox> boxes;
    Counts counts;
};

// In:   the digest for the title block, digestOf(job) (core/file)
// Cost: linear in the job
Schedule scheduleOf(const Job& job, std::string digest);

ScheduleBox boxAt(const Job& job, PlaceId id); // without its blocks

// ---- The same words for every form of the paper.

extern const Text scheduleTitle;

inline constexpr std::size_t scheduleColumns = 12;
using ScheduleCells = std::array<std::string, scheduleColumns>;
enum ScheduleColumn : std::size_t {
    TerminalColumn,
    SignColumn,
    WireColumn,
    ColourColumn,
    TagColumn,
    GaugeColumn,
    AlsoColumn,
    CarriesColumn,
    FarColumn,
    PlaceColumn,
    LandedColumn,
    CheckedColumn
};
ScheduleCells headCells(Language language);
// No cell is empty: where there is nothing to say stands '–'.
ScheduleCells cellsOf(const ScheduleRow& row, Language language);

// 'CAB1 · cabinet above ceiling · breaker L2/14'
std::string headingOf(const ScheduleBox& box, Language language);
// Its tag, or 'Loose wires'; and 'Relay module … · relay-module-negative'.
std::string nameOf(const ScheduleBlock& block, Language language);
std::string aboutOf(const ScheduleBlock& block, Language language);
// 'Count back: 12 landings, 5 empty terminals, 2 spare core ends.'
Message countsInWords(const Counts& counts);
Message wholeJobInWords(const Counts& counts);
Message stripInWords(const Words& strip); // 'strip: relay 1'

} // namespace doorloom
