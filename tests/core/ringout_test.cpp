#include "papers/ohmsreport.h"
#include "solve/ringout.h"

#include "core/jobs.h"
#include "core/lines.h"
#include "core/random.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

// Copper at 20 °C, per 1000 ft: 22 AWG 16.14 Ω, 18 AWG 6.385 Ω (a maker's table, read).
namespace doorloom {
namespace {

using namespace lines;
using papersite::Site;

using Throws = std::vector<std::pair<std::string, std::string>>; // operator, throw

RingOut rung(const Job& job, std::string_view first, std::string_view second, const std::vector<std::string>& lifted = {}, const Throws& throws = {})
{
    const Netlist net(job);
    std::vector<std::pair<MovedIndex, ThrowIndex>> moved;
    for (const auto& [name, thrown] : throws) {
        const OperatorId id = operatorNamed(job, name);
        moved.emplace_back(*net.indexOf(id), static_cast<ThrowIndex>(*findThrow(job.operators.find(id)->throws, thrown)));
    }
    Probes probes{landingNamed(job, first), landingNamed(job, second), {}};
    for (const std::string& each : lifted)
        probes.lifted.push_back(landingNamed(job, each));
    return ringOut(job, Meter(job, net), positionOff(job, net, moved), probes);
}

void expectOhms(const RingOut& read, double ohms)
{
    for (const OhmsRead* each : {&read.redOnFirst, &read.redOnSecond}) {
        EXPECT_EQ(each->what, Reads::Resistance);
        EXPECT_NEAR(each->ohms.value_or(Ohms{-1}).value, ohms, 0.001 * ohms + 0.009);
    }
}

void expectBoth(const RingOut& read, Reads what)
{
    EXPECT_EQ(read.redOnFirst.what, what);
    EXPECT_EQ(read.redOnSecond.what, what);
}

std::vector<std::string> liftOf(const Job& job, const RingOut& read)
{
    std::vector<std::string> names;
    for (const Landing& landing : read.lift)
        names.push_back(nameOf(job, landing));
    return names;
}

using Names = std::vector<std::string>;

Kind resistorOf(double ohms)
{
    Kind kind = papersite::kindOf("test-resistor-" + std::to_string(ohms), "Resistor", "Resistencia", "part");
    kind.strips = {papersite::stripOf("leads", "hilos", {"a", "b"})};
    papersite::addPart(kind, ResistorPart{"a", "b", Ohms{ohms}});
    return kind;
}

// ---- The steps of a ring-out.

// A supply that is off is no short: electronics, until its poles are joined.
TEST(RingOut, KnowsAShortedOutputFromOneThatProvesNothing)
{
    Lines lines(dcSupply(24, 24));
    expectBoth(rung(lines.site.job, "PS1:+", "PS1:−"), Reads::NoUsefulOhms);
    lines.wire(Site::at(lines.supply(), "+"), Site::at(lines.supply(), "−"), "18 AWG", 10);
    expectOhms(rung(lines.site.job, "PS1:+", "PS1:−"), 0.06385);
}

// 200 ft: 2 × 0.2 × 16.14 = 6.456 Ω, 18 AWG 2.554 Ω. The supply beside it would be read as well.
TEST(RingOut, ReadsAPairWhoseFarEndIsTwisted)
{
    for (const auto& [gauge, ohms] : {std::pair("22 AWG", 6.456), std::pair("18 AWG", 2.554)}) {
        Lines lines(dcSupply(24, 24));
        lines.load("TS1", papersite::strip(), gauge, 200);
        expectOhms(rung(lines.site.job, "PS1:+", "PS1:−", {"PS1:+", "PS1:−"}), ohms);
        const RingOut landed = rung(lines.site.job, "PS1:+", "PS1:−");
        expectBoth(landed, Reads::NotReadable);
        EXPECT_FALSE(landed.redOnFirst.ohms); // nobody knows what the supply adds
        EXPECT_EQ(liftOf(lines.site.job, landed), Names{"PS1:+"});
    }
}

TEST(RingOut, ReadsAPairWhoseFarEndIsOpenAsOpen)
{
    Lines lines(dcSupply(24, 24));
    for (const char* pole : {"+", "−"})
        lines.wire(Site::at(lines.supply(), pole), {EndState::Waiting, {}}, "22 AWG", 200);
    expectBoth(rung(lines.site.job, "PS1:+", "PS1:−", {"PS1:+", "PS1:−"}), Reads::Open);
}

// V ÷ I: 50 Ω and 200 Ω. A magnet with electronics and a coil for AC tell nothing.
TEST(RingOut, ReadsCoilsByTheirRatingAndNothingOfElectronics)
{
    Lines lines(dcSupply(24, 24));
    lines.load("ES1", lockOf(12, 0.24, 10), "18 AWG", 20);
    lines.site.device("ES2", lockOf(24, 0.12, 20), {});
    lines.site.device("ML1", catalogueKind("mag-lock"), {});
    lines.site.device("ES3", catalogueKind("strike-ac"), {});
    const Job& job = lines.site.job;
    expectOhms(rung(job, "ES2:1", "ES2:2"), 200);
    expectOhms(rung(job, "ES1:1", "ES1:2", {"ES1:1"}), 50);
    expectBoth(rung(job, "ML1:+", "ML1:-"), Reads::NoUsefulOhms);
    expectBoth(rung(job, "ES3:1", "ES3:2"), Reads::NoUsefulOhms);
    const RingOut landed = rung(job, "ES1:1", "ES1:2");
    expectBoth(landed, Reads::NotReadable); // the supply
    EXPECT_EQ(liftOf(job, landed), Names{"ES1:1"});
}

// Shorted leads read none together with the coil; the coil alone is there once they are off.
TEST(RingOut, TellsACoilFromTheShortAcrossIt)
{
    Site site;
    const DeviceId strike = site.device("ES1", lockOf(24, 0.12, 20), {});
    site.wire("1", "", Site::at(strike, "1"), Site::at(strike, "2"));
    const RingOut read = rung(site.job, "ES1:1", "ES1:2");
    expectBoth(read, Reads::NotReadable);
    EXPECT_NEAR(read.redOnFirst.ohms.value().value, 0, 0.05);
    EXPECT_EQ(liftOf(site.job, read), Names{"ES1:1"});
}

TEST(RingOut, ReadsContactsInTheirPosition)
{
    Site site;
    site.device("PB1", papersite::plate(), {});
    expectOhms(rung(site.job, "PB1:C", "PB1:NC"), 0);
    expectBoth(rung(site.job, "PB1:C", "PB1:NO"), Reads::Open);
    expectBoth(rung(site.job, "PB1:C", "PB1:NC", {}, {{"PB1", "pressed"}}), Reads::Open);
    expectOhms(rung(site.job, "PB1:C", "PB1:NO", {}, {{"PB1", "pressed"}}), 0);
}

// A door switch at the end of 100 ft of 22 AWG: 3.228 Ω of loop shut, nothing open.
TEST(RingOut, ReadsASwitchAtTheEndOfItsPair)
{
    Lines lines(dcSupply(24, 24));
    Site& site = lines.site;
    const DeviceId door = site.device("DS1", papersite::plate(), {}), near = site.device("TS1", lockOf(24, 1, 20, LoadLaw::ConstantCurrent), {});
    lines.wire(Site::at(near, "1"), Site::at(door, "C"), "22 AWG", 100);
    lines.wire(Site::at(near, "2"), Site::at(door, "NC"), "22 AWG", 100);
    expectOhms(rung(site.job, "TS1:1", "TS1:2", {"TS1:1", "TS1:2"}), 3.228);
    expectBoth(rung(site.job, "TS1:1", "TS1:2", {"TS1:1", "TS1:2"}, {{"DS1", "pressed"}}), Reads::Open);
    EXPECT_EQ(rung(site.job, "TS1:1", "TS1:2", {"TS1:1", "TS1:2"}).withoutOhms, 0u);
}

// 2.2 kΩ in series with the contact, 8.2 kΩ across it: closed 2.2, open 10.4, cut none, short 0.
TEST(RingOut, ReadsTheFourStatesOfDoubleEndOfLineResistors)
{
    Site site;
    const DeviceId module = site.device("LM1", papersite::module(), {}), plate = site.device("PB1", papersite::plate(), {});
    const DeviceId series = site.device("R1", catalogueKind("resistor"), {}), across = site.device("R2", catalogueKind("resistor-8k2"), {});
    const ConductorId out = site.wire("1", "", Site::at(module, "IN1"), Site::at(series, "a"));
    site.wire("2", "", Site::at(series, "b"), Site::at(plate, "C"));
    site.wire("3", "", Site::at(plate, "NO"), Site::at(module, "COM"));
    site.wire("4", "", Site::at(plate, "C"), Site::at(across, "a"));
    site.wire("5", "", Site::at(plate, "NO"), Site::at(across, "b"));
    const Throws pressed = {{"PB1", "pressed"}};
    expectOhms(rung(site.job, "LM1:IN1", "LM1:COM", {"LM1:IN1"}, pressed), 2200);
    expectOhms(rung(site.job, "LM1:IN1", "LM1:COM", {"LM1:IN1"}), 10400);
    const RingOut landed = rung(site.job, "LM1:IN1", "LM1:COM");
    expectBoth(landed, Reads::NotReadable); // the input itself
    EXPECT_EQ(liftOf(site.job, landed), Names{"LM1:IN1"});
    // The contact with its resistor across reads closed, and 8.2 kΩ where it alone would read open.
    expectOhms(rung(site.job, "PB1:C", "PB1:NO", {}, pressed), 0);
    const RingOut contact = rung(site.job, "PB1:C", "PB1:NO", {"LM1:IN1"});
    EXPECT_EQ(contact.redOnFirst.what, Reads::NotReadable);
    EXPECT_NEAR(contact.redOnFirst.ohms.value().value, 8200, 1);

    Job cut = site.job;
    Change change;
    Conductor row = *cut.conductors.find(out);
    row.to = {EndState::Waiting, {}};
    change.steps = {Put<Conductor>{out, row}};
    ASSERT_TRUE(applyChange(cut, change).ok());
    expectBoth(rung(cut, "LM1:IN1", "LM1:COM", {"LM1:IN1"}), Reads::Open);
    site.wire("6", "", Site::at(module, "IN1"), Site::at(module, "COM"));
    expectOhms(rung(site.job, "LM1:IN1", "LM1:COM", {"LM1:IN1"}), 0);
}

// Dry: C to NC none, C to NO open. Wet: C stands at +, NC at −, and from C to NC the module is read.
TEST(RingOut, TellsADryOutputFromAWetOne)
{
    Site site;
    const DeviceId module = site.device("LM1", papersite::module(), {});
    const auto set = [&](const Key& value) {
        site.jumper(module, "K1", "JA", value);
        site.jumper(module, "K1", "JB", value);
    };
    set("dry");
    expectOhms(rung(site.job, "LM1:C", "LM1:NC"), 0);
    expectBoth(rung(site.job, "LM1:C", "LM1:NO"), Reads::Open);
    set("wet");
    expectOhms(rung(site.job, "LM1:C", "LM1:+"), 0);
    expectOhms(rung(site.job, "LM1:NC", "LM1:−"), 0);
    expectBoth(rung(site.job, "LM1:C", "LM1:NC"), Reads::NoUsefulOhms);
}

// ---- Diodes.

TEST(RingOut, ReadsADiodeOneWayRound)
{
    Site site;
    site.device("D1", papersite::diode(), {});
    const RingOut read = rung(site.job, "D1:A", "D1:K");
    EXPECT_EQ(read.redOnFirst.what, Reads::DiodeDrop);
    EXPECT_EQ(read.redOnSecond.what, Reads::Open);
}

// A meter of 1 V behind 1 kΩ puts 0.17 V on 200 Ω, under what a diode takes, and 0.69 V on 2.2 kΩ.
TEST(RingOut, SeesADiodeBesideWhatIsLargeAlone)
{
    Site site;
    const DeviceId diode = site.device("D1", papersite::diode(), {}), coil = site.device("ES1", lockOf(24, 0.12, 20), {}),
                   other = site.device("D2", papersite::diode(), {}), resistor = site.device("R1", catalogueKind("resistor"), {});
    site.wire("1", "", Site::at(diode, "A"), Site::at(coil, "1"), ConductorMake::Lead);
    site.wire("2", "", Site::at(diode, "K"), Site::at(coil, "2"), ConductorMake::Lead);
    site.wire("3", "", Site::at(other, "A"), Site::at(resistor, "a"), ConductorMake::Lead);
    site.wire("4", "", Site::at(other, "K"), Site::at(resistor, "b"), ConductorMake::Lead);
    expectOhms(rung(site.job, "ES1:1", "ES1:2"), 200);
    const RingOut read = rung(site.job, "R1:a", "R1:b");
    EXPECT_EQ(read.redOnFirst.what, Reads::NotReadable);
    EXPECT_EQ(read.redOnSecond.what, Reads::Resistance);
    EXPECT_EQ(liftOf(site.job, read), Names{"R1:a"});
    // The diode itself can't be told from the coil across it, until one lead is off.
    const RingOut clamp = rung(site.job, "D1:A", "D1:K");
    expectBoth(clamp, Reads::NotReadable);
    EXPECT_EQ(liftOf(site.job, clamp), Names{"D1:A"});
    EXPECT_EQ(rung(site.job, "D1:A", "D1:K", {"D1:A"}).redOnFirst.what, Reads::DiodeDrop);
    EXPECT_EQ(rung(site.job, "D1:A", "D1:K", {"D1:A"}).redOnSecond.what, Reads::Open);
}

// ---- Other ways round.

TEST(RingOut, NamesTheFewestToLiftWhereLoadsLieSideBySide)
{
    Lines lines(dcSupply(24, 24));
    Site& site = lines.site;
    const DeviceId one = site.device("ES1", lockOf(24, 0.12, 20), {}), two = site.device("ES2", lockOf(24, 0.12, 20), {});
    lines.pair(one, "1", "2", two, "18 AWG", 20);
    const RingOut read = rung(site.job, "ES1:1", "ES1:2");
    expectBoth(read, Reads::NotReadable);
    EXPECT_NEAR(read.redOnFirst.ohms.value().value, 100, 0.1); // both
    EXPECT_EQ(liftOf(site.job, read), Names{"ES1:1"});
}

// From strip to strip by two ways, one over a third strip: the third is lifted, not the ends.
TEST(RingOut, LiftsTheOtherWayRoundOutsideDevices)
{
    Site site;
    const DeviceId here = site.device("TS1", papersite::strip(), {}), there = site.device("TS2", papersite::strip(), {}),
                   between = site.device("TS3", papersite::strip(), {});
    const auto join = [&](DeviceId from, DeviceId to, double lengthFeet) {
        Conductor row;
        row.tag = "N" + std::to_string(site.job.conductors.size());
        row.gauge = "22 AWG";
        row.from = Site::at(from, "1");
        row.to = Site::at(to, "1");
        row.length = Metres{lengthFeet * feet};
        site.put(row);
    };
    join(here, there, 200);
    join(here, between, 200);
    join(between, there, 200);
    const RingOut read = rung(site.job, "TS1:1", "TS2:1");
    expectBoth(read, Reads::NotReadable);
    EXPECT_NEAR(read.redOnFirst.ohms.value().value, 3.228 * 2 / 3, 0.01); // 3.228 beside 6.456
    EXPECT_EQ(liftOf(site.job, read), Names{"TS3:1"});
    expectOhms(rung(site.job, "TS1:1", "TS2:1", {"TS3:1"}), 3.228);
}

TEST(RingOut, CountsConductorsOnTheWayThatHaveNoLength)
{
    Site site;
    const DeviceId one = site.device("PB1", papersite::plate(), {}), other = site.device("PB2", papersite::plate(), {});
    Conductor row;
    row.tag = "N";
    row.from = Site::at(one, "C");
    row.to = Site::at(other, "C");
    site.put(row);
    const RingOut read = rung(site.job, "PB1:NC", "PB2:NC");
    expectOhms(read, 0);
    EXPECT_EQ(read.withoutOhms, 1u);
}

TEST(RingOut, HasCoilsLetGoAndHandsAsAtRest)
{
    const Job job = oneDoor().job();
    const Netlist net(job);
    const Position off = positionOff(job, net);
    for (const Operator& moved : job.operators) {
        const bool isHand = moved.nature == OperatorNature::Hand || moved.nature == OperatorNature::Door;
        EXPECT_EQ(moved.throws[off[*net.indexOf(moved.id)]].key, isHand ? moved.idle : moved.unpowered) << nameOf(job, moved);
    }
}

// ---- Against the obvious way: star into mesh, vertex by vertex, until two are left.

double byElimination(std::vector<std::vector<double>> siemens, std::size_t x, std::size_t y)
{
    for (std::size_t out = 0; out < siemens.size(); ++out) {
        if (out == x || out == y)
            continue;
        double sum = 0;
        for (double each : siemens[out])
            sum += each;
        for (std::size_t a = 0; a < siemens.size() && sum > 0; ++a)
            for (std::size_t b = 0; b < siemens.size(); ++b)
                if (a != b && a != out && b != out)
                    siemens[a][b] += siemens[out][a] * siemens[out][b] / sum;
        for (std::size_t a = 0; a < siemens.size(); ++a)
            siemens[a][out] = siemens[out][a] = 0;
    }
    return siemens[x][y] > 0 ? 1 / siemens[x][y] : std::numeric_limits<double>::infinity();
}

TEST(RingOut, ReadsRandomResistorsAsEliminationDoes)
{
    int open = 0, alone = 0, together = 0, lifted = 0;
    forEachSeed(300, [&](Random& random) {
        Site site;
        const std::size_t strips = static_cast<std::size_t>(random.between(2, 6));
        std::vector<DeviceId> strip;
        for (std::size_t i = 0; i < strips; ++i)
            strip.push_back(site.device("TS" + std::to_string(i), papersite::strip(), {}));
        std::vector<std::vector<double>> siemens(strips, std::vector<double>(strips));
        for (int count = random.between(1, 9); count > 0; --count) {
            const std::size_t a = random.below(strips), b = random.below(strips);
            const double ohms = std::pow(10.0, random.between(0, 8) / 2.0);
            const DeviceId resistor = site.device("R" + std::to_string(count), resistorOf(ohms), {});
            Conductor lead;
            lead.make = ConductorMake::Lead;
            lead.from = Site::at(resistor, "a");
            lead.to = Site::at(strip[a], "1");
            site.put(lead);
            lead.from = Site::at(resistor, "b");
            lead.to = Site::at(strip[b], "2");
            site.put(lead);
            if (a != b) {
                siemens[a][b] += 1 / ohms;
                siemens[b][a] += 1 / ohms;
            }
        }
        const RingOut read = rung(site.job, "TS0:3", "TS1:3");
        const double wanted = byElimination(siemens, 0, 1);
        for (const OhmsRead* each : {&read.redOnFirst, &read.redOnSecond}) {
            if (std::isinf(wanted)) {
                EXPECT_EQ(each->what, Reads::Open);
                continue;
            }
            ASSERT_TRUE(each->what == Reads::Resistance || each->what == Reads::NotReadable);
            EXPECT_NEAR(each->ohms.value().value, wanted, 1e-6 * wanted);
        }
        open += std::isinf(wanted);
        alone += read.redOnFirst.what == Reads::Resistance;
        together += read.redOnFirst.what == Reads::NotReadable;
        if (read.lift.empty())
            return;
        ++lifted;
        const RingOut after = rung(site.job, "TS0:3", "TS1:3", liftOf(site.job, read));
        EXPECT_EQ(after.redOnFirst.what, Reads::Resistance);
        EXPECT_GT(after.redOnFirst.ohms.value().value, wanted); // one way alone is more than all together
    });
    if (!std::getenv("SEED")) {
        EXPECT_GT(open, 30);
        EXPECT_GT(alone, 30);
        EXPECT_GT(together, 30);
        EXPECT_GT(lifted, 10);
    }
}

// ---- Words.

TEST(RingOut, SaysWhatToLiftAndWhatIsReadThen)
{
    Lines lines(dcSupply(24, 24));
    lines.load("ES1", lockOf(24, 0.12, 20), "18 AWG", 20);
    const Job& job = lines.site.job;
    const Netlist net(job);
    const OhmsReport report = ohmsReport(job, net, {}, {landingNamed(job, "ES1:1"), landingNamed(job, "ES1:2"), {}});
    EXPECT_EQ(ohmsText(job, report, "door.doorjob", Language::English),
              "door.doorjob\n"
              "All power off and proved dead, batteries out.\n"
              "  ES1:1 to ES1:2, either way round  not readable here: other ways round are read as well\n"
              "Lift ES1:1; then:\n"
              "  ES1:1 to ES1:2, either way round  200 Ω\n"
              "Computed, not measured: ±20 % of wire and coils, and what the meter's own leads have.\n");
    EXPECT_NE(ohmsText(job, report, "door.doorjob", Language::Spanish).find("Levante ES1:1; entonces:"), std::string::npos);
    EXPECT_EQ(ohmsJson(job, report), "{\"position\": {}, \"first\": \"ES1:1\", \"second\": \"ES1:2\", \"lifted\": [],\n"
                                     "\"redOnFirst\": {\"reads\": \"not readable\", \"ohms\": null}, \"redOnSecond\": {\"reads\": \"not readable\", \"ohms\": null},\n"
                                     "\"lift\": [\"ES1:1\"], \"onceLifted\": {\"redOnFirst\": {\"reads\": \"ohms\", \"ohms\": 200}, "
                                     "\"redOnSecond\": {\"reads\": \"ohms\", \"ohms\": 200}}, \"withoutOhms\": 0}\n");
}

TEST(RingOut, WritesOhmsAsAMeterShowsThem)
{
    EXPECT_EQ(ohmsFigure(Ohms{0}), "0.00 Ω");
    EXPECT_EQ(ohmsFigure(Ohms{6.456}), "6.46 Ω");
    EXPECT_EQ(ohmsFigure(Ohms{200}), "200 Ω");
    EXPECT_EQ(ohmsFigure(Ohms{2200}), "2.2 kΩ");
    EXPECT_EQ(ohmsFigure(Ohms{10400}), "10.4 kΩ");
}

} // namespace
} // namespace doorloom
