#pragma once

#include "edit/change.h"

#include <string>
#include <utility>
#include <vector>

// What a user does, each as a function from the job to a Change. None of them writes to the job.
// An id for a new row is taken from `numbers`, which starts at the job's counter, so that several
// operations can be joined before the change is made.
namespace doorloom {

struct Numbers {
    std::uint32_t next;
    explicit Numbers(const Job& job) : next(job.nextNumber) {}
    std::uint32_t take() { return next++; }
};

// Takes a kind into the job. The job's own copy when it has the very same one.
std::pair<KindId, Change> takeKind(const Job& job, Numbers& numbers, const Kind& kind);

// A device with an operator of its own for each role, its jumpers not chosen, its settings as from the factory.
std::pair<DeviceId, Change> placeDevice(const Job& job, Numbers& numbers, const Kind& kind, std::string tag,
                                        PlaceId place = {});

// Errors: 'leave alone' devices.  The conductors on it are left with waiting ends, openings forget it,
// and operators that nobody else is bound to go with it.
Result<Change> removeDevice(const Job& job, DeviceId device);

// A cable and a conductor row for each of its cores, both ends waiting. Core tags are "CABLE.1", "CABLE.2" …
std::pair<CableId, Change> pullCable(const Job& job, Numbers& numbers, Cable cable);
Result<Change> removeCable(const Job& job, CableId cable);

// A wire between two landings.
std::pair<ConductorId, Change> addWire(const Job& job, Numbers& numbers, End from, End to, std::string tag = {});
// A wire or lead goes; a core keeps its row, both ends waiting.
Result<Change> takeOff(const Job& job, ConductorId conductor);

enum class WhichEnd { From, To };
// Lands, moves, caps or insulates one end.   Errors: a conductor marked 'leave alone'
Result<Change> setEnd(const Job& job, ConductorId conductor, WhichEnd which, End end);
// Exchanges everything landed on two terminals of one device.   Errors: 'leave alone', of it or of what is landed
Result<Change> exchangeTerminals(const Job& job, DeviceId device, const Key& one, const Key& other);

// An empty value: not chosen.   Errors: an option, jumper or value that the kind does not have
Result<Change> setJumper(const Job& job, DeviceId device, const Key& option, const Key& jumper, const Key& value);
Result<Change> setOption(const Job& job, DeviceId device, const Key& option, const Key& value); // all its jumpers
// Errors: out of limits
Result<Change> setSetting(const Job& job, DeviceId device, const Key& setting, SettingValue value);

// Another kind for a device: landings go by terminal key, choices and bindings by key.
// Out:    the change, and a line for each thing that could not be carried over
// Errors: a landing on a terminal that the new kind does not have
struct KindSwap {
    Change change;
    std::vector<Message> leftBehind;
};
Result<KindSwap> setKind(const Job& job, Numbers& numbers, DeviceId device, const Kind& kind);

// Moved by another operator from now on; its own goes when nobody else is bound to it.
// Errors: throws that do not match
Result<Change> bindRole(const Job& job, DeviceId device, const Key& role, OperatorId moved);
// Operators that can move a role of this device: with its throws, of its nature. Cost: a walk along operators.
std::vector<OperatorId> operatorsFor(const Job& job, DeviceId device, const Key& role);
Result<Change> setIdle(const Job& job, OperatorId moved, const Key& idle);
Result<Change> renameDevice(const Job& job, DeviceId device, std::string tag);

} // namespace doorloom
