#pragma once

#include "core/jobs.h"

#include <functional>
#include <string>
#include <vector>

// Circuits that every version must judge right: a right job, wrong forms of it, and what is to be said of
// them.
namespace doorloom {

// Sets of throws in which a finding happens: "KS1=on R2=rest" is one set, "" the empty one (always).
using Cubes = std::vector<std::string>;

// What a finding also tells. An empty reason, or no cubes: not asked.
struct ExpectedLine {
    std::string rule, at;
    std::string reason{};
    Cubes throws{};
};

struct Expected {
    std::string rule, severity, at; // severity: "danger", "fault", "doubt", "hint"
    Cubes throws = {""};
    std::string reason{};              // why never fed
    std::vector<ExpectedLine> lines{}; // these at least
    std::vector<std::string> names{};  // terminals and jumpers that the finding must name
};

// Why a load is never fed, in the words of the tests.
namespace reason {
inline const std::string onePole = "both sides on one pole", missingReturn = "missing return",
                         inSeries = "in series with another load", untied = "poles of two untied supplies",
                         twoSupplies = "poles of two supplies",
                         ownContact = "must be in before it can pull in", whileShorted = "only while shorted";
}

// Whether what went wrong can be told from the wrong job alone. Where another edit mends it as well (another
// kind of module, a contact instead of a strike, any conductor of a ring), the remedy need not name the
// reverse edit.
enum class Mending { TheReverseEdit, AnyOfSeveral, InWords }; // in words: what is missing is not in the job

struct WrongForm {
    std::string name;
    Change change;                  // from the right job
    std::vector<Expected> findings; // above a hint: these and no others
    Mending mending = Mending::TheReverseEdit;
};

struct JudgedCircuit {
    std::string name;
    Job right;
    std::vector<Expected> hints; // of the right job, which has nothing above them
    std::vector<WrongForm> wrong;
};

using Edit = std::function<void(JobBuilder&)>;

inline WrongForm wrongForm(std::string name, const Job& right, const Edit& edit,
                           std::vector<Expected> findings, Mending mending = Mending::TheReverseEdit)
{
    JobBuilder builder(right, Clamps::Roomy);
    edit(builder);
    return {std::move(name), builder.change(), std::move(findings), mending};
}

inline Job wrongJob(const JudgedCircuit& circuit, const WrongForm& form)
{
    return JobBuilder(circuit.right).apply(form.change).job();
}

// A builder with devices on it: "PS1 dc-supply-24; KS1 KS2 key-switch" (the last word of each is the kind).
JobBuilder withDevices(std::string_view text);
// The same with options and settings "LM1.K1=wet MS1.relay=held-in WO1.hold=2", conductors and openings.
Job drawnJob(std::string_view devices, std::string_view wires, std::string_view options, const std::vector<OpeningSketch>& openings);
// A module that switches the minus where its relay 1 or 3 is wet; both dry until told otherwise.
JobBuilder& addModule(JobBuilder& builder, const std::string& tag);
// Every wire of the job so thick and long.
void gaugeAll(JobBuilder& job, const std::string& gauge, double metres);

std::vector<JudgedCircuit> wetOutputCircuits();    // A
std::vector<JudgedCircuit> twoSupplyCircuits();    // B, C
std::vector<JudgedCircuit> relayCircuits();        // D
std::vector<JudgedCircuit> lampInputCircuits();    // I
std::vector<JudgedCircuit> whichContactCircuits(); // N
std::vector<JudgedCircuit> doorOperatorCircuits();
std::vector<JudgedCircuit> releaseCircuits();      // E, K, L
std::vector<JudgedCircuit> currentCircuits();      // G, J, M
std::vector<JudgedCircuit> numberCircuits();       // volts and amperes
std::vector<JudgedCircuit> supervisedCircuits();   // F
std::vector<JudgedCircuit> topologyCircuits();     // whole doors, and the mistakes that hold somebody in
std::vector<JudgedCircuit> ratingCircuits();       // M: what parts, contacts, fuses and conductors bear
std::vector<JudgedCircuit> trapCircuits();         // a, b, c …
std::vector<JudgedCircuit> allCircuits();

} // namespace doorloom
