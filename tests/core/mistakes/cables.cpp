#include "sample.h"

#include "edit/details.h"

namespace doorloom {

namespace {

// These wires become the cores of a new cable, in their order; `drain` counts from 1, 0: none.
void intoCable(JobBuilder& job, const std::vector<std::string>& wires, bool shielded = false, int drain = 0)
{
    Numbers numbers(job.job());
    CableType type;
    type.id = {numbers.take()};
    type.name = "cable of " + std::to_string(wires.size());
    type.shielded = shielded;
    for (int n = 1; n <= static_cast<int>(wires.size()); ++n)
        type.cores.push_back({n, {}, "18 AWG", 0, n == drain});
    Cable cable;
    cable.id = {numbers.take()};
    cable.tag = "C1";
    cable.type = type.id;
    Change change;
    change.steps.emplace_back(Put<CableType>{type.id, type});
    change.steps.emplace_back(Put<Cable>{cable.id, cable});
    for (std::size_t i = 0; i < wires.size(); ++i) {
        Conductor row = *job.job().conductors.find(conductorNamed(job.job(), wires[i]));
        row.make = ConductorMake::Core;
        row.cable = cable.id;
        row.core = static_cast<int>(i) + 1;
        row.tag = "C1." + std::to_string(row.core);
        change.steps.emplace_back(Put<Conductor>{row.id, row});
    }
    job.apply(change);
}

void colour(JobBuilder& job, const std::string& wire, const std::string& letters)
{
    Conductor row = *job.job().conductors.find(conductorNamed(job.job(), wire));
    row.colour = letters;
    job.apply({{Put<Conductor>{row.id, row}}});
}

void tag(JobBuilder& job, const std::string& wire, const std::string& written)
{
    Conductor row = *job.job().conductors.find(conductorNamed(job.job(), wire));
    row.tag = written;
    job.apply({{Put<Conductor>{row.id, row}}});
}

void place(JobBuilder& job, const std::string& tag, const std::string& at, Mounting mounting)
{
    Place row;
    row.id = {Numbers(job.job()).take()};
    row.tag = at;
    row.mounting = mounting;
    job.apply({{Put<Place>{row.id, row}}});
    job.apply(setPlace(job.job(), {deviceTagged(job.job(), tag)->id.number}, row.id).value());
}

const std::string readerWires = "RD1:+12 → AC1:12V; RD1:GND → AC1:GND; RD1:D0 → AC1:D0; RD1:D1 → AC1:D1";

JobBuilder readerOnItsController(const std::string& besides = {})
{
    return withDevices("AC1 access-controller; RD1 reader" + besides).wires(readerWires);
}

void data(std::vector<MistakeSample>& all)
{
    all.push_back(mistake("D0 and D1 exchanged", readerOnItsController().job(), [](JobBuilder& job) { job.exchange("RD1:D0", "RD1:D1"); }));
    all.push_back(mistake("D1 left out", readerOnItsController().job(), [](JobBuilder& job) { job.takeOff("RD1:D1 → AC1:D1"); }));
    all.push_back(mistake("reader on another supply", readerOnItsController("; PS1 dc-supply-12; OL1 lamp-12").power("PS1", "OL1").job(),
                          [](JobBuilder& job) { job.move("AC1:12V → RD1:+12", "PS1:+").move("AC1:GND → RD1:GND", "PS1:−"); }));
    JobBuilder door = readerOnItsController("; PS1 dc-supply-24; ES1 strike-fail-secure");
    door.wires("PS1:+ → AC1:LK.C; AC1:LK.NO → ES1:1; ES1:2 → PS1:−");
    const std::vector<std::string> cores{"RD1:+12 → AC1:12V", "RD1:GND → AC1:GND", "RD1:D0 → AC1:D0",
                                         "RD1:D1 → AC1:D1",   "AC1:LK.NO → ES1:1", "ES1:2 → PS1:−"};
    JobBuilder shielded(door.job(), Clamps::Roomy);
    intoCable(shielded, cores, true);
    all.push_back(mistake("reader and strike in one cable", shielded.job(), [](JobBuilder& job) {
        CableType type = *job.job().cableTypes.begin();
        type.shielded = false;
        job.apply({{Put<CableType>{type.id, type}}});
    }));
}

void shields(std::vector<MistakeSample>& all)
{
    JobBuilder cable = readerOnItsController();
    cable.wire("AC1:EARTH", "RD1:CASE");
    intoCable(cable, {"RD1:+12 → AC1:12V", "RD1:GND → AC1:GND", "RD1:D0 → AC1:D0", "RD1:D1 → AC1:D1", "AC1:EARTH → RD1:CASE"}, true, 5);
    const auto withDrain = [job = cable.job()](const End& from, const End& to) {
        JobBuilder changed(job, Clamps::Roomy);
        Conductor drained = *job.conductors.find(conductorNamed(job, "AC1:EARTH → RD1:CASE"));
        drained.from = from;
        drained.to = to;
        return changed.apply({{Put<Conductor>{drained.id, drained}}}).job();
    };
    const End insulated = endNamed(cable.job(), "insulated"), earth = endNamed(cable.job(), "AC1:EARTH"), casing = endNamed(cable.job(), "RD1:CASE");
    all.push_back({"shield earthed twice", withDrain(earth, casing), withDrain(earth, insulated)});
    all.push_back({"shield on nothing", withDrain(insulated, insulated), withDrain(earth, insulated)});
}

void ends(std::vector<MistakeSample>& all)
{
    const Job lamps = withDevices("PS1 dc-supply-24; OL1 OL2 lamp").power("PS1", "OL1 OL2").job();
    all.push_back(mistake("end in the air", lamps, [](JobBuilder& job) { job.wire("PS1:+", "waiting"); }));
    all.push_back(mistake("spare at plus", lamps, [](JobBuilder& job) { job.wire("PS1:+", "spare"); }));
    all.push_back(mistake("alone on a splice", lamps, [](JobBuilder& job) {
        Splice splice;
        splice.id = {Numbers(job.job()).take()};
        splice.tag = "SP1";
        job.apply({{Put<Splice>{splice.id, splice}}});
        Numbers numbers(job.job());
        job.apply(addWire(job.job(), numbers, endNamed(job.job(), "PS1:+"), End{EndState::Landed, splice.id}).second);
    }));
    JobBuilder printed; // clamps as printed
    printed.device("PS1", "dc-supply-24").device("OL1", "lamp").device("OL2", "lamp").power("PS1", "OL1 OL2");
    JobBuilder filled(printed.job());
    filled.device("OL3", "lamp").power("PS1", "OL3");
    all.push_back({"three in a clamp", filled.job(), printed.job()});
    JobBuilder tagged(lamps, Clamps::Roomy);
    tag(tagged, "PS1:+ → OL1:+", "W1");
    tag(tagged, "PS1:+ → OL2:+", "W2");
    all.push_back(mistake("one tag on two wires", tagged.job(), [](JobBuilder& job) { tag(job, "PS1:+ → OL2:+", "W1"); }));
    JobBuilder coloured(withDevices("PS1 dc-supply-24; OL1 lamp").power("PS1", "OL1").job(), Clamps::Roomy);
    colour(coloured, "PS1:+ → OL1:+", "RD");
    colour(coloured, "PS1:− → OL1:−", "BK");
    all.push_back(mistake("red at minus", coloured.job(), [](JobBuilder& job) {
        colour(job, "PS1:+ → OL1:+", "BK");
        colour(job, "PS1:− → OL1:−", "RD");
    }));
}

void mainsAndEarth(std::vector<MistakeSample>& all)
{
    JobBuilder job = withDevices("MP1 mains-point; PS1 dc-supply-24-mains-terminals; KS1 key-switch; OL1 lamp");
    job.wires("MP1:L → PS1:L; MP1:N → PS1:N; MP1:PE → PS1:PE; PS1:+ → KS1:C; KS1:NO → OL1:+; OL1:− → PS1:−");
    JobBuilder apart(job.job(), Clamps::Roomy), together(job.job(), Clamps::Roomy);
    intoCable(apart, {"MP1:L → PS1:L", "MP1:N → PS1:N", "MP1:PE → PS1:PE"});
    intoCable(together, {"MP1:L → PS1:L", "MP1:N → PS1:N", "MP1:PE → PS1:PE", "PS1:+ → KS1:C"});
    all.push_back({"mains in the cable", together.job(), apart.job()});
    job.device("EA1", "earth-bar").device("EA2", "earth-bar").wires("PS1:− → EA1:1; MP1:PE → EA1:2");
    all.push_back(mistake("minus earthed twice", job.job(), [](JobBuilder& wrong) { wrong.wire("OL1:−", "EA2:1"); }));
}

// 0.25 A through two cores of 28 AWG (213 ohms a kilometre), 10 m each, lose 1.1 V of a battery's last 21 V, of 18 AWG 0.1 V; the
// lever lock works from 20.4 V.
void overTheHinge(std::vector<MistakeSample>& all)
{
    JobBuilder job(rightJobCalled("lever lock through a hinge, its RX to the controller"), Clamps::Roomy);
    gaugeAll(job, "18 AWG", 5);
    all.push_back(mistake("thin cores through a transfer", job.job(), [](JobBuilder& wrong) {
        Change change;
        for (const char* name : {"PT1:1' → EL1:+", "EL1:− → PT1:2'"}) {
            Conductor row = *wrong.job().conductors.find(conductorNamed(wrong.job(), name));
            row.gauge = "28 AWG";
            row.length = {10};
            change.steps.emplace_back(Put<Conductor>{row.id, row});
        }
        wrong.apply(change);
    }));
    place(job, "PS1", "CAB", Mounting::Cabinet);
    place(job, "AC1", "CAB2", Mounting::Cabinet);
    place(job, "EL1", "LEAF", Mounting::Leaf);
    place(job, "PT1", "FRAME", Mounting::Frame);
    all.push_back(mistake("leaf without a transfer", job.job(), [](JobBuilder& wrong) {
        wrong.takeOff("PT1:1' → EL1:+").takeOff("EL1:− → PT1:2'").move("PT1:1 → AC1:LK.NO", "EL1:+").move("PT1:2 → PS1:−", "EL1:−");
    }));
}

} // namespace

std::vector<MistakeSample> cableMistakes()
{
    std::vector<MistakeSample> all;
    for (auto add : {data, shields, ends, mainsAndEarth, overTheHinge})
        add(all);
    return all;
}

} // namespace doorloom
