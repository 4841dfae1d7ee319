#pragma once

#include "edit/change.h"
#include "edit/operations.h"
#include "model/job.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

// Jobs drawn in a few lines, so that a test reads like the site. A slip in a test (a terminal that is not
// there, a throw misspelt) throws std::runtime_error with the words that were not understood.
namespace doorloom {

// A kind that comes with the program, read once.
const Kind& catalogueKind(const std::string& name);

// How many conductors a clamp takes, and how thick: as its kind says, or as a test likes. The circuits leave out the
// strips that a real job would have between one pole and its many landings.
enum class Clamps { AsPrinted, Roomy };

struct ActSketch {
    std::string name;
    std::string throws; // "PB1=pressed LM1:K1=in"
    Side side = Side::Both;
};

struct PromiseSketch {
    std::string situation; // "rest", "request PB1", "all power lost", "LM1:K1 lost" …
    Promised promised = Promised::Nothing;
    std::string device{}; // empty: the first lock
};

struct OpeningSketch {
    std::string tag = "DOOR1";
    std::vector<std::string> locks;
    std::vector<std::string> doorOperators{};
    Egress egress = Egress::ByHand;
    bool fireRated = false;
    std::vector<ActSketch> requests{}, releases{};
    std::string occupied{}; // throws
    std::string fire{};     // the operator that it answers to
    std::vector<PromiseSketch> promises{};
};

// Terminals are written "DEVICE:TERMINAL" by key or as printed, with '-' or '−'; operators by their names
// ("LM1:K1", "PB1"). An end may also be "waiting", "spare" or "insulated".
class JobBuilder {
public:
    explicit JobBuilder(Clamps clamps = Clamps::AsPrinted) : clamps_(clamps) {}
    explicit JobBuilder(Job job, Clamps clamps = Clamps::AsPrinted) : job_(std::move(job)), clamps_(clamps) {}

    JobBuilder& device(const std::string& tag, const std::string& kind);
    JobBuilder& device(const std::string& tag, const Kind& kind);
    JobBuilder& wire(std::string_view from, std::string_view to);
    JobBuilder& wires(std::string_view text); // "PS1:+ → LM1:+; PS1:− → LM1:−"
    JobBuilder& power(const std::string& supply, const std::string& devices); // plus and minus; "LM1 WO1"

    JobBuilder& takeOff(std::string_view wire);                   // "PS1:+ → LM1:+", either way round
    JobBuilder& move(std::string_view wire, std::string_view to); // its first end, "ES1:2 → PS1:−"
    JobBuilder& exchange(std::string_view one, std::string_view other);
    JobBuilder& option(const std::string& tag, const std::string& option, const std::string& value);
    JobBuilder& jumper(const std::string& tag, const std::string& option, const std::string& jumper,
                       const std::string& value);
    JobBuilder& setting(const std::string& tag, const std::string& setting, SettingValue value);
    JobBuilder& kind(const std::string& tag, const std::string& kind);
    JobBuilder& kind(const std::string& tag, const Kind& kind);
    JobBuilder& idle(const std::string& operatorName, const std::string& thrown);
    JobBuilder& bind(const std::string& tag, const std::string& role, const std::string& operatorName);
    JobBuilder& rename(const std::string& tag, const std::string& newTag);
    JobBuilder& remove(const std::string& tag);
    JobBuilder& opening(const OpeningSketch& sketch);
    JobBuilder& apply(const Change& change);

    const Job& job() const { return job_; }
    // Everything done since the builder was made, as one change.
    const Change& change() const { return change_; }

private:
    const Device& deviceCalled(std::string_view tag) const;
    Kind fitted(Kind kind) const;
    template <class T> T carriedOut(Result<T> result) const;

    Job job_;
    Change change_;
    Clamps clamps_;
};

// ---- What tests look up by name. All throw std::runtime_error when there is no such thing.

Landing landingNamed(const Job& job, std::string_view name);
End endNamed(const Job& job, std::string_view name);
ConductorId conductorNamed(const Job& job, std::string_view wire); // "PS1:+ → LM1:+", either way round
OperatorId operatorNamed(const Job& job, std::string_view name);
std::vector<Thrown> throwsNamed(const Job& job, std::string_view text); // "PB1=pressed LM1:K1=in"
Situation situationNamed(const Job& job, std::string_view text);

std::vector<std::string> splitWords(std::string_view text);

// The same job drawn again: every row under another number, in the order of `seed`.
Job renumbered(const Job& job, unsigned seed);

// One door in its plainest form: a module whose relay 1 is wet drives a fail-secure strike, a plate asks.
JobBuilder oneDoor(Clamps clamps = Clamps::Roomy);

} // namespace doorloom
