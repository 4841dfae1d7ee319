#include "check/figures.h"
#include "core/smallkinds.h"
#include "edit/operations.h"
#include "fuzz/insist.h"
#include "judge/findings.h"
#include "judge/findingtext.h"
#include "solve/network.h"
#include "solve/readings.h"

#include <algorithm>
#include <cmath>
#include <limits>

// Any bytes are a circuit: as numbers alone, which is solved, and as a small job, which is judged. Zero ohms, absurd volts,
// loops, floating pieces and shorted sources give an answer or none, but no number that is none.
namespace {

using namespace doorloom;

class Bytes {
public:
    Bytes(const std::uint8_t* data, std::size_t size) : data_(data), end_(data + size) {}

    bool isEmpty() const { return data_ == end_; }
    std::size_t below(std::size_t count) { return isEmpty() ? 0 : *data_++ % count; }
    // Ordinary ones, and what breaks sums.
    double number()
    {
        static constexpr double all[] = {0,   0.05, 0.7, 1,  2.4,   5,     12,    24,     27.6,   48,   200,  1200,
                                         4700, 1e6, 1e9, 1e-6, 1e-12, 1e-300, 5e-324, 1e12, 1e100, 1e300, 1.7e308, 3};
        return all[below(std::size(all))];
    }

private:
    const std::uint8_t *data_, *end_;
};

bool isNumber(double value) { return !std::isnan(value); }
bool areNumbers(const std::vector<double>& values) { return std::all_of(values.begin(), values.end(), isNumber); }

void solveNetwork(Bytes bytes)
{
    Network net;
    net.vertices = static_cast<Vertex>(2 + bytes.below(12));
    const auto some = [&] { return static_cast<Vertex>(bytes.below(net.vertices)); };
    while (!bytes.isEmpty() && net.resistors.size() + net.diodes.size() + net.draws.size() < 60) {
        const std::size_t what = bytes.below(8);
        const Vertex a = some(), b = some();
        if (what < 3)
            net.resistors.push_back({a, b, bytes.number()});
        else if (what == 3)
            net.resistors.push_back({a, b, 0});
        else if (what == 4)
            net.sources.push_back({a, b, bytes.number()});
        else if (what < 7)
            net.diodes.push_back({a, b, bytes.number()});
        else
            net.draws.push_back({a, b, bytes.below(2) ? LoadLaw::ConstantCurrent : LoadLaw::ConstantPower, bytes.number(), bytes.number(), bytes.number()});
    }
    const Solution solution = solved(net);
    insist(solution.volts.size() == net.vertices && solution.piece.size() == net.vertices, "every vertex has volts");
    insist(solution.resistors.size() == net.resistors.size() && solution.sources.size() == net.sources.size() &&
               solution.diodes.size() == net.diodes.size() && solution.draws.size() == net.draws.size(),
           "everything has amperes");
    if (solution.settled)
        for (const auto& list : {solution.volts, solution.resistors, solution.sources, solution.diodes, solution.draws})
            insist(areNumbers(list), "what has settled is in numbers");
}

// ---- A small job.

class Site {
public:
    explicit Site(Bytes bytes) : bytes_(bytes) {}

    Job drawn()
    {
        while (!bytes_.isEmpty() && job_.devices.size() < 10 && job_.conductors.size() < 40)
            switch (bytes_.below(10)) {
            case 0:
                place(supply());
                break;
            case 1:
                place(load());
                break;
            case 2:
                place(contact());
                break;
            case 3:
                place(relay());
                break;
            case 4:
                place(between(DiodePart{"+", "-", {bytes_.number()}}));
                break;
            case 5:
                place(between(ResistorPart{"+", "-", {bytes_.number()}}));
                break;
            default:
                wire();
            }
        return job_;
    }

private:
    Kind named(const std::vector<Key>& terminals) { return kindOfParts("kind-" + std::to_string(kinds_++), terminals); }
    Kind supply()
    {
        Kind kind = named({"+", "-"});
        SourcePart source;
        source.plus = "+";
        source.minus = "-";
        source.ac = bytes_.below(8) == 0;
        source.nominal = {bytes_.number()};
        source.lowest = source.highest = source.nominal;
        source.most = {bytes_.number()};
        kind.parts = {{"output", {}, source}};
        return kind;
    }
    LoadPart loadPart()
    {
        LoadPart load;
        load.a = "+";
        load.b = "-";
        load.law = static_cast<LoadLaw>(bytes_.below(3));
        load.rated = {{{bytes_.number()}, {bytes_.number()}}};
        load.leastVolts = Volts{bytes_.number()};
        load.releaseVolts = Volts{bytes_.number()};
        load.mostVolts = Volts{bytes_.number()};
        if (bytes_.below(3) == 0)
            load.inrush = Amperes{bytes_.number()};
        load.polarised = bytes_.below(2) == 0;
        return load;
    }
    Kind load()
    {
        Kind kind = named({"+", "-"});
        kind.parts = {{"load", {}, loadPart()}};
        return kind;
    }
    Kind contact()
    {
        Kind kind = named({"+", "-"});
        kind.roles = {roleOf("hand", OperatorNature::Hand, "off", "on")};
        ContactPart contact{"+", "-", "hand", {bytes_.below(2) ? "on" : "off"}, {}};
        contact.rating.dcResistive = Amperes{bytes_.number()};
        kind.parts = {{"contact", {}, contact}};
        return kind;
    }
    Kind relay()
    {
        Kind kind = named({"+", "-", "C", "NO"});
        kind.roles = {roleOf("K", OperatorNature::Relay, "out", "in")};
        MovePart move;
        move.role = "K";
        move.manner = static_cast<MoveManner>(bytes_.below(3));
        move.powered = "coil";
        kind.parts = {{"coil", {}, loadPart()}, {"move", {}, move}, {"NO", {}, ContactPart{"C", "NO", "K", {"in"}, {}}}};
        return kind;
    }
    Kind between(PartBody body)
    {
        Kind kind = named({"+", "-"});
        kind.parts = {{"part", {}, std::move(body)}};
        return kind;
    }

    void place(const Kind& kind)
    {
        Numbers numbers(job_);
        insist(applyChange(job_, placeDevice(job_, numbers, kind, "N" + std::to_string(kinds_)).second).ok(), "a device is placed");
    }
    End end()
    {
        auto device = job_.devices.begin();
        for (std::size_t steps = bytes_.below(job_.devices.size()); steps > 0; --steps)
            ++device;
        const auto terminals = terminalsOf(*kindOf(job_, device->id));
        return {EndState::Landed, Landing{device->id, terminals[bytes_.below(terminals.size())]->key}};
    }
    void wire()
    {
        static const std::string gauges[] = {"", "18 AWG", "24 AWG", "0.5 mm2", "1e-300 mm2", "1e300 mm2", "40 AWG", "4/0 AWG"};
        if (job_.devices.empty())
            return;
        Numbers numbers(job_);
        const End from = end();
        auto [id, change] = addWire(job_, numbers, from, end());
        for (Step& step : change.steps)
            if (auto* put = std::get_if<Put<Conductor>>(&step)) {
                put->after->gauge = gauges[bytes_.below(std::size(gauges))];
                put->after->length = {bytes_.number()};
            }
        insist(applyChange(job_, change).ok(), "a wire is drawn");
    }

    Bytes bytes_;
    Job job_;
    int kinds_ = 0;
};

void insistOnNumbers(const Worsts& worsts)
{
    for (const auto& worst : worsts)
        insist(!worst || isNumber(worst->value), "the worst is a number");
}

void insistOnWords(const Job& job, const Finding& finding)
{
    for (Language language : {Language::English, Language::Spanish})
        for (const Message* words : {&finding.why, &finding.remedy}) {
            const std::string text = inWords(*words, language);
            insist(text.find("nan ") == std::string::npos && text.find("nan.") == std::string::npos, "no finding speaks of what is no number");
        }
    insist(!inWords(finding.why, Language::English).empty() && !atText(job, finding).empty(), "a finding says what and where");
    for (const Finding& line : finding.lines)
        insistOnWords(job, line);
}

void judge(const Job& job)
{
    constexpr std::uint64_t budget = 300'000;
    const Netlist net(job);
    const Questions ask(net.circuit(), budget);
    const Figures figures = figuresOf(job, net, ask, budget, VoltsWanted::All);
    for (const Worsts* worsts : {&figures.lowestVolts, &figures.lowestOnBattery, &figures.highestVolts, &figures.lowestPullingIn, &figures.unfedVolts,
                                 &figures.inputVolts, &figures.outOfFeed, &figures.outPullingIn, &figures.outPastLoads, &figures.throughJoint,
                                 &figures.throughPullingIn})
        insistOnNumbers(*worsts);
    insist(areNumbers(figures.outAtReturn), "what is drawn when the mains comes back is a number");
    for (const Finding& finding : checkJob(job, budget).findings)
        insistOnWords(job, finding);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size == 0)
        return 0;
    const Bytes bytes(data + 1, size - 1);
    if (data[0] % 2)
        solveNetwork(bytes);
    else
        judge(Site(bytes).drawn());
    return 0;
}
