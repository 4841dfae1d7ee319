#include "papers/papers.h"
#include "papers/powerforms.h"

#include "core/golden.h"
#include "core/jobs.h"
#include "core/lines.h"

#include <gtest/gtest.h>

// The figures were worked by hand from the resistance of copper at 20 °C, per 1000 ft: 22 AWG 16.14 Ω, 20 AWG 10.15 Ω, 18 AWG 6.385 Ω,
// 16 AWG 4.016 Ω, 14 AWG 2.525 Ω, 12 AWG 1.588 Ω (a maker's table, read). R = 2 × ft ÷ 1000 × Ω; a coil of a fixed resistance gets
// V = Vs × Rload ÷ (Rload + R), a load of a fixed current V = Vs − I × R.
namespace doorloom {
namespace {

using namespace lines;
using papersite::Site;

const PaperSetup english{Language::English, "0123456789ab"}, spanish{Language::Spanish, "0123456789ab"};

PowerSheet sheetOf(const Lines& lines) { return powerOf(lines.site.job, ""); }

LoadLine lineOfOne(const Kind& supply, const Kind& load, const std::string& gauge, double oneWayFeet)
{
    Lines lines(supply);
    lines.load("L1", load, gauge, oneWayFeet);
    return sheetOf(lines).loads.at(0);
}

// ---- Figures.

TEST(Power, GivesAResistiveLoadWhatItsLoopLeaves)
{
    struct Case {
        double supply, lowest;
        Kind load;
        const char* gauge;
        double feet, ohms, volts, percent;
        PowerVerdict verdict;
    };
    const Kind strike12 = lockOf(12, 0.24, 10.8), strike24 = lockOf(24, 0.12, 21.6), magnet12 = lockOf(12, 0.5, 10.8), magnet24 = lockOf(24, 0.25, 21.6);
    for (const Case& each : {
             Case{12, 12, strike12, "22 AWG", 200, 6.456, 10.63, 11.4, PowerVerdict::TooFew}, // 12 × 50 ÷ 56.456
             Case{24, 24, strike24, "22 AWG", 200, 6.456, 23.25, 3.1, PowerVerdict::Enough},  // 24 × 200 ÷ 206.456
             Case{24, 24, strike12, "22 AWG", 200, 6.456, 21.26, 11.4, PowerVerdict::Enough}, // 24 × 50 ÷ 56.456: the wrong part
             Case{12, 12, strike12, "18 AWG", 200, 2.554, 11.42, 4.9, PowerVerdict::Enough},
             Case{12, 10.5, strike12, "22 AWG", 200, 6.456, 9.30, 22.5, PowerVerdict::TooFew}, // low, against 12
             Case{12, 12, magnet12, "22 AWG", 150, 4.842, 9.99, 16.8, PowerVerdict::TooFew},   // 12 × 24 ÷ 28.842
             Case{12, 12, magnet12, "18 AWG", 150, 1.9155, 11.11, 7.4, PowerVerdict::Enough},
             Case{24, 24, magnet24, "18 AWG", 150, 1.9155, 23.53, 2.0, PowerVerdict::Enough},
         }) {
        const LoadLine line = lineOfOne(dcSupply(each.supply, each.lowest), each.load, each.gauge, each.feet);
        EXPECT_NEAR(line.loop.value().value, each.ohms, 0.002);
        EXPECT_NEAR(line.holding.value().value, each.volts, 0.005);
        EXPECT_NEAR(line.dropPercent().value(), each.percent, 0.05);
        EXPECT_NEAR(line.way.value().value, 2 * each.feet * feet, 1e-9);
        EXPECT_EQ(line.verdict, each.verdict) << each.volts;
        EXPECT_EQ(line.gauges, std::vector<std::string>{each.gauge});
    }
}

// 12 − 0.24 × 6.456.
TEST(Power, TellsALoadOfConstantCurrentFromACoil)
{
    const LoadLine line = lineOfOne(dcSupply(12, 12), lockOf(12, 0.24, 10.8, LoadLaw::ConstantCurrent), "22 AWG", 200);
    EXPECT_NEAR(line.holding.value().value, 10.45, 0.005);
    EXPECT_NEAR(line.dropPercent().value(), 12.9, 0.05);
}

// 2.4 V ÷ (0.5 A × 2 × Ω/1000), and half of it at 12 V.
TEST(Power, FindsTheLeastGaugeForALength)
{
    const char* gauges[] = {"22 AWG", "20 AWG", "18 AWG", "16 AWG", "14 AWG", "12 AWG"};
    for (const auto& [volts, reach] : {std::pair(24.0, std::vector<double>{149, 236, 376, 598, 950}),
                                       std::pair(12.0, std::vector<double>{74, 118, 188, 299, 475})}) {
        const Kind supply = dcSupply(volts, volts), load = lockOf(volts, 0.5, 0.9 * volts, LoadLaw::ConstantCurrent);
        for (std::size_t i = 0; i < reach.size(); ++i) {
            const LoadLine near = lineOfOne(supply, load, gauges[i], reach[i] - 1), far = lineOfOne(supply, load, gauges[i], reach[i] + 1);
            EXPECT_EQ(near.verdict, PowerVerdict::Enough) << gauges[i];
            EXPECT_EQ(far.verdict, PowerVerdict::TooFew) << gauges[i];
            EXPECT_EQ(near.leastGauge.value(), gauges[i]);
            EXPECT_EQ(far.leastGauge.value(), gauges[i + 1]);
        }
    }
}

// Its terminals take 22 to 14 AWG: 24 would carry it, and does not fit. No gauge carries half an ampere two miles.
TEST(Power, NamesNoGaugeThatTheTerminalsDoNotTakeOrThatDoesNotExist)
{
    const Kind load = lockOf(24, 0.1, 12);
    EXPECT_EQ(lineOfOne(dcSupply(24, 24), load, "22 AWG", 5).leastGauge.value(), "22 AWG");
    EXPECT_EQ(lineOfOne(dcSupply(24, 24), load, "0.5 mm2", 5).leastGauge.value(), "0.5 mm2");
    const LoadLine far = lineOfOne(dcSupply(24, 24), lockOf(24, 0.5, 23, LoadLaw::ConstantCurrent), "14 AWG", 10'000);
    EXPECT_TRUE(far.noGaugeWouldDo);
    EXPECT_FALSE(far.leastGauge);
}

// Inrush 12 A at 24 V, 3.6 V allowed: a loop of 0.30 Ω, that is 94, 59, 37 and 23 ft. With 30 A 0.12 Ω: 38, 24, 15 and 9 ft.
TEST(Power, JudgesTheInrushByWhatPullsIn)
{
    const char* gauges[] = {"12 AWG", "14 AWG", "16 AWG", "18 AWG"};
    for (const auto& [inrush, reach] : {std::pair(12.0, std::vector<double>{94, 59, 37, 23}), std::pair(30.0, std::vector<double>{38, 24, 15, 9})}) {
        Kind bar = lockOf(24, 0.4, 18);
        coilOf(bar).inrush = Amperes{inrush};
        coilOf(bar).pullInVolts = Volts{20.4};
        for (std::size_t i = 0; i < reach.size(); ++i) {
            const LoadLine near = lineOfOne(dcSupply(24, 24, 40), bar, gauges[i], reach[i] - 0.6), far = lineOfOne(dcSupply(24, 24, 40), bar, gauges[i], reach[i] + 0.6);
            EXPECT_EQ(near.verdict, PowerVerdict::Enough) << gauges[i] << " " << inrush << " A";
            EXPECT_EQ(far.verdict, PowerVerdict::TooFewToPullIn) << gauges[i] << " " << inrush << " A";
            EXPECT_NEAR(far.atInrush.value().value, 24 - inrush * far.loop.value().value, 1e-6);
        }
    }
    Kind bar = lockOf(24, 0.4, 18);
    coilOf(bar).inrush = Amperes{16};
    const LoadLine line = lineOfOne(dcSupply(24, 24), bar, "22 AWG", 60); // 1.94 Ω: 16 A would take 31 V
    EXPECT_EQ(line.verdict, PowerVerdict::NotCarried);
    EXPECT_FALSE(line.atInrush);
}

// 100 ft of 22 AWG are 3.228 Ω. While L2 takes 2 A, L1 holds with 0.5 A on its own line.
TEST(Power, LetsTheOthersHoldWhileOneTakesItsInrush)
{
    Kind heavy = lockOf(24, 0.5, 12, LoadLaw::ConstantCurrent);
    coilOf(heavy).inrush = Amperes{2};
    Lines lines(dcSupply(24, 24));
    const DeviceId first = lines.load("L1", lockOf(24, 0.5, 12, LoadLaw::ConstantCurrent), "22 AWG", 100);
    const DeviceId last = lines.site.device("L2", heavy, {});
    lines.pair(first, "1", "2", last, "22 AWG", 100);
    const LoadLine line = sheetOf(lines).loads.at(1);
    EXPECT_NEAR(line.holding.value().value, 24 - 3.228 * 1.0 - 3.228 * 0.5, 0.005);
    EXPECT_NEAR(line.atInrush.value().value, 24 - 3.228 * 2.5 - 3.228 * 2.0, 0.01);
    EXPECT_NEAR(line.way.value().value, 400 * feet, 1e-9); // out and back of both pieces
}

// One plate starts two locks of 2 A at the end of 100 ft of 22 AWG, 3.228 Ω.
TEST(Power, HasWhatOneOperatorStartsPullInTogether)
{
    Kind lock = lockOf(24, 0.5, 8);
    coilOf(lock).inrush = Amperes{2};
    Lines lines(dcSupply(24, 24));
    const DeviceId plate = lines.site.device("PB1", papersite::plate(), {});
    const DeviceId first = lines.site.device("L1", lock, {}), second = lines.site.device("L2", lock, {});
    lines.wire(Site::at(lines.supply(), "+"), Site::at(plate, "C"), "22 AWG", 100);
    lines.wire(Site::at(lines.supply(), "−"), Site::at(first, "2"), "22 AWG", 100);
    lines.wire(Site::at(plate, "NO"), Site::at(first, "1"), "22 AWG", 0);
    lines.pair(first, "1", "2", second, "22 AWG", 0);
    for (const LoadLine& line : sheetOf(lines).loads)
        EXPECT_NEAR(line.atInrush.value().value, 24 - 3.228 * 4, 0.01) << line.load;
}

// 50 ft of 18 AWG are 0.6385 Ω there and back: 1.5 A + 1.0 A + 0.5 A.
TEST(Power, AddsUpAlongAChain)
{
    const Kind lock = lockOf(24, 0.5, 12, LoadLaw::ConstantCurrent);
    Lines lines(dcSupply(24, 24));
    DeviceId last = lines.load("L1", lock, "18 AWG", 50);
    for (const char* tag : {"L2", "L3"}) {
        const DeviceId next = lines.site.device(tag, lock, {});
        lines.pair(last, "1", "2", next, "18 AWG", 50);
        last = next;
    }
    const PowerSheet sheet = sheetOf(lines);
    const double drops[] = {0.96, 1.60, 1.92};
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_NEAR(24 - sheet.loads.at(i).holding.value().value, drops[i], 0.005);
    EXPECT_NEAR(sheet.loads[2].dropPercent().value(), 8.0, 0.05);
    EXPECT_NEAR(sheet.loads[2].loop.value().value, 3 * 0.6385, 0.002);
    EXPECT_NEAR(24 - lineOfOne(dcSupply(24, 24), lock, "18 AWG", 150).holding.value().value, 0.96, 0.005); // a home run
}

// ---- What is not known.

TEST(Power, DoesNotCallEnoughWhatHangsOnAConductorWithoutLengthOrGauge)
{
    const Kind supply = dcSupply(12, 12), strike = lockOf(12, 0.24, 10.8);
    const LoadLine noLength = lineOfOne(supply, strike, "18 AWG", 0), noGauge = lineOfOne(supply, strike, "", 100);
    EXPECT_EQ(noLength.verdict, PowerVerdict::LengthMissing);
    EXPECT_FALSE(noLength.leastGauge);
    EXPECT_EQ(cellsOf(noLength, Language::English)[LoopColumn], "–");
    EXPECT_EQ(cellsOf(noGauge, Language::English)[WayColumn], "≥ 61.0 m / 200 ft");
    EXPECT_EQ(noGauge.verdict, PowerVerdict::LengthMissing);
    EXPECT_EQ(noGauge.leastGauge.value(), "22 AWG"); // 3.228 Ω: 11.27 V
    // Too few is too few, whatever else the line loses.
    EXPECT_EQ(lineOfOne(dcSupply(12, 10), strike, "18 AWG", 0).verdict, PowerVerdict::TooFew);
}

TEST(Power, SaysWhatIsNotKnownOfALoad)
{
    Kind silent = lockOf(12, 0.24, 0);
    coilOf(silent).leastVolts.reset();
    EXPECT_EQ(lineOfOne(dcSupply(12, 12), silent, "18 AWG", 100).verdict, PowerVerdict::LeastNotSaid);
    Lines lines(dcSupply(12, 12));
    lines.site.device("L1", silent, {});
    EXPECT_EQ(sheetOf(lines).loads.at(0).verdict, PowerVerdict::NeverFed);
    EXPECT_FALSE(sheetOf(lines).loads.at(0).holding);
}

// ---- Positions and sources.

TEST(Power, NamesTheWorstPositionAndTheWayThroughItsContact)
{
    Lines lines(dcSupply(24, 24));
    const DeviceId plate = lines.site.device("PB1", papersite::plate(), {}), lock = lines.site.device("L1", lockOf(24, 0.5, 12), {});
    lines.wire(Site::at(lines.supply(), "+"), Site::at(plate, "C"), "18 AWG", 30);
    lines.wire(Site::at(plate, "NO"), Site::at(lock, "1"), "16 AWG", 20);
    lines.wire(Site::at(lock, "2"), Site::at(lines.supply(), "−"), "18 AWG", 50);
    const LoadLine line = sheetOf(lines).loads.at(0);
    ASSERT_EQ(line.position.size(), 1u);
    EXPECT_EQ(inWords(line.position.front()), "PB1 pressed");
    EXPECT_EQ(line.source, "PS1:+");
    EXPECT_NEAR(line.way.value().value, 100 * feet, 1e-9);
    EXPECT_NEAR(line.loop.value().value, 0.08 * 6.385 + 0.02 * 4.016, 0.001);
    EXPECT_EQ(line.gauges, (std::vector<std::string>{"18 AWG", "16 AWG"}));
}

// Two mag locks 0.25, a strike 0.25, two sensors 0.05, two readers 0.12: 1.09 A; 80 % of 1.5 A are 1.2, of 1.3 A 1.04.
TEST(Power, AddsUpWhatASourceGivesByLoad)
{
    for (const auto& [most, words] : {std::pair(1.5, "under 80 %"), std::pair(1.3, "OVER 80 %"), std::pair(1.0, "OVER ITS LIMIT")}) {
        Lines lines(dcSupply(24, 24, most));
        int number = 0;
        for (double amperes : {0.25, 0.25, 0.25, 0.05, 0.05, 0.12, 0.12})
            lines.load("L" + std::to_string(++number), lockOf(24, amperes, 12, LoadLaw::ConstantCurrent), "18 AWG", 20);
        const SourceLine line = sheetOf(lines).sources.at(0);
        EXPECT_NEAR(line.sum.value, 1.09, 1e-9);
        EXPECT_EQ(line.loads.size(), 7u);
        EXPECT_EQ(line.loads.at(3).first, "L4:1, 2");
        EXPECT_NEAR(line.loads.at(3).second.value, 0.05, 1e-9);
        EXPECT_EQ(line.others.value, 0);
        EXPECT_EQ(inWords(verdictInWords(line)), words);
    }
}

TEST(Power, ListsWhatFlowsElsewhereThanIntoLoads)
{
    Lines lines(dcSupply(24, 24));
    const DeviceId resistor = lines.site.device("R1", catalogueKind("resistor"), {});
    lines.wire(Site::at(lines.supply(), "+"), Site::at(resistor, "a"), "18 AWG", 1);
    lines.wire(Site::at(lines.supply(), "−"), Site::at(resistor, "b"), "18 AWG", 1);
    lines.load("L1", lockOf(24, 0.5, 12), "18 AWG", 1);
    EXPECT_NEAR(sheetOf(lines).sources.at(0).others.value, 24 / 2200.0, 1e-4);
}

TEST(Power, MarksWhatIsFromNoSheet)
{
    Kind lock = lockOf(24, 0.5, 12);
    const std::string memory = cellsOf(lineOfOne(dcSupply(24, 24), lock, "18 AWG", 10), Language::English)[LeastColumn];
    lock.parts.back().standing = ValueStanding::Sheet;
    EXPECT_EQ(memory, "12 V †");
    EXPECT_EQ(cellsOf(lineOfOne(dcSupply(24, 24), lock, "18 AWG", 10), Language::English)[LeastColumn], "12 V");
}

// ---- Golden.

// A module moves a strike on a long line; a mag lock on a thin one; a line without a length; a load of AC; one that nobody feeds.
Job powerJob()
{
    Lines lines(catalogueKind("dc-supply-24"));
    Site& site = lines.site;
    JobInfo info;
    info.number = "J-8";
    info.title = "Long corridor";
    info.revision = "B";
    site.put(info);
    const auto join = [&](DeviceId from, const Key& one, DeviceId to, const Key& other, const char* gauge, double lengthFeet) {
        lines.wire(Site::at(from, one), Site::at(to, other), gauge, lengthFeet);
    };
    const DeviceId supply = lines.supply();
    const DeviceId plate = site.device("PB1", papersite::plate(), {}), strike = site.device("ES1", catalogueKind("strike-fail-secure"), {}, "cellar door");
    join(supply, "+", plate, "C", "18 AWG", 30);
    join(plate, "NO", strike, "1", "22 AWG", 900);
    join(supply, "-", strike, "2", "22 AWG", 900);
    const DeviceId magnet = site.device("ML1", catalogueKind("mag-lock"), {});
    join(supply, "+", magnet, "+", "22 AWG", 150);
    join(supply, "-", magnet, "-", "22 AWG", 150);
    const DeviceId sensor = site.device("MS1", catalogueKind("exit-sensor"), {});
    join(supply, "+", sensor, "+", "22 AWG", 40);
    join(supply, "-", sensor, "-", "22 AWG", 0);
    const DeviceId transformer = site.device("TR1", catalogueKind("transformer-24"), {}), buzzer = site.device("ES2", catalogueKind("strike-ac"), {});
    join(transformer, "1", buzzer, "1", "18 AWG", 50);
    join(transformer, "2", buzzer, "2", "18 AWG", 50);
    site.device("ES10", catalogueKind("strike-fail-secure"), {});
    return site.job;
}

TEST(Power, ReadsLikeThis) { expectGolden("power.txt", textOf(*paperNamed("power"), powerJob(), english)); }
TEST(Power, ReadsLikeThisInSpanish) { expectGolden("power-es.txt", textOf(*paperNamed("power"), powerJob(), spanish)); }
TEST(Power, GivesThisCsv) { expectGolden("power.csv", paperNamed("power")->csv(powerJob(), english)); }

TEST(Power, HasNoEmptyCellAndNoWordOfSafety)
{
    const PowerSheet sheet = powerOf(powerJob(), "");
    for (const Language language : {Language::English, Language::Spanish}) {
        for (const LoadLine& line : sheet.loads)
            for (const std::string& cell : cellsOf(line, language))
                EXPECT_FALSE(cell.empty());
        const std::string text = powerText(sheet, language);
        EXPECT_EQ(text.find("safe"), std::string::npos);
        EXPECT_EQ(text.find("segur"), std::string::npos);
    }
}

} // namespace
} // namespace doorloom
