#pragma once

#include "catalogue/catalogue.h"
#include "edit/operations.h"
#include "model/job.h"

#include <string>
#include <vector>

// Draws a job in the words of a wiring list. A mistake in the list ends the program with its message:
// there is nobody to mend it at run time.
namespace doorloom::drawing {

// A terminal as "PS1:+", as printed (an ASCII '-' stands for '−'); or "spare", "insulated", "waiting".
using Spot = std::string;

struct CoreRow {
    std::string colour; // the first core of this colour not used yet; "drain" for the drain
    Spot from, to;
};

struct Pull {
    std::string tag, type, from, to; // cable's tag, its type's name, tags of two places
    Metres length;
    std::string pull; // cables pulled together share it
};

struct BoxWire {
    std::string tag, colour;
    Spot from, to;
    Metres length;
};

struct Set {
    std::string key;
    SettingValue value;
};

// Where a device is drawn, and on which side its conductors land.
enum class Lands { Right, Left };
struct Seat {
    std::string tag;
    Point at; // of its upper left corner, tenths of a millimetre
    Lands landsOn = Lands::Right;
};

class Drawing {
public:
    explicit Drawing(const Catalogue& catalogue);

    void info(JobInfo title);
    void cableType(const std::string& name, const Words& words, const std::string& gauge,
                   const std::vector<std::string>& colours, bool shielded = false);
    void place(const std::string& tag, const std::string& words, Mounting mounting, bool isBox,
               const std::string& breaker = {});
    void device(const std::string& tag, const std::string& kind, const std::string& place,
                const std::string& words, const std::vector<Set>& settings = {});
    void option(const std::string& tag, const Key& option, const Key& value);
    // An operator that no device owns, such as a door leaf, with the throws of this device's role, which it
    // moves.
    OperatorId sharedOperator(const std::string& tag, const std::string& device, const Key& role);
    void wire(const BoxWire& wire, const std::string& gauge);
    void cable(const Pull& pull, const std::vector<CoreRow>& rows);
    void opening(Opening door);
    // One sheet with the devices on it.
    void sheet(const std::string& title, const std::vector<Seat>& seats);
    // Sets all sheets out by box and door.
    void tidy();

    void moveEnd(const std::string& conductor, WhichEnd which, const Spot& to);

    DeviceId find(const std::string& tag) const;
    Thrown thrown(const std::string& device, const Key& role, const Key& key) const;
    const Job& job() const { return job_; }

private:
    void make(const Change& change);
    void make(const Result<Change>& change);
    PlaceId placeTagged(const std::string& tag) const;
    ConductorId conductorTagged(const std::string& tag) const;
    End endAt(const Spot& spot) const;

    const Catalogue& catalogue_;
    Job job_;
};

} // namespace doorloom::drawing
