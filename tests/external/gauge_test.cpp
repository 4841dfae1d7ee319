#include "external/csv.h"
#include "solve/gauge.h"
#include "solve/network.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <optional>

// Sources stand in the heads of the tables.
namespace doorloom {
namespace {

constexpr double kiloFoot = 304.8;

double number(const CsvRow& row, const std::string& column) { return std::stod(row.at(column)); }
double ohmsPerKilometre(const std::string& gauge, double celsius = 20) { return ohmsOf(gauge, {1000}, celsius).value().value; }

std::string awg(const CsvRow& row)
{
    const std::string& name = row.at("awg");
    return (name.size() > 1 && name.starts_with("0") ? std::to_string(name.size()) + "/0" : name) + " AWG";
}

// The table has four digits.
TEST(PublishedGauges, AreAsTheDefinitionComputesThem)
{
    for (const CsvRow& row : publishedRows("awg.csv")) {
        EXPECT_NEAR(squareMillimetresOf(awg(row)).value(), number(row, "def_area_mm2"), 5e-4 * number(row, "def_area_mm2")) << awg(row);
        EXPECT_NEAR(ohmsPerKilometre(awg(row)), number(row, "def_ohm_per_km_20C"), 5e-4 * number(row, "def_ohm_per_km_20C")) << awg(row);
    }
}

// Between families of tables there is up to 1 %: they round the diameter differently.
TEST(PublishedGauges, AreWithinOnePercentOfTheTables)
{
    int compared = 0;
    for (const CsvRow& row : publishedRows("awg.csv")) {
        const double per = ohmsPerKilometre(awg(row)) * kiloFoot / 1000;
        for (const char* column : {"hp_ohm_per_kft_20C", "b258r_ohm_per_kft_20C"})
            if (!row.at(column).empty()) {
                EXPECT_NEAR(per, number(row, column), 0.01 * number(row, column)) << awg(row) << " " << column;
                ++compared;
            }
        // Table 8 of the code is at 75 °C; a strand lies a little longer than the core, which solid has not.
        if (row.at("nec_status") == "read") {
            EXPECT_NEAR(ohmsPerKilometre(awg(row), 75) * kiloFoot / 1000, number(row, "nec_solid_unc_ohm_per_kft_75C"),
                        0.01 * number(row, "nec_solid_unc_ohm_per_kft_75C"))
                << awg(row);
            ++compared;
        }
    }
    EXPECT_GT(compared, 60);
}

TEST(PublishedGauges, OfMetricSizesAreTheMostThatTheirClassAllows)
{
    int compared = 0;
    for (const CsvRow& row : publishedRows("iec60228.csv")) {
        EXPECT_NEAR(ohmsPerKilometre(row.at("area_mm2") + " mm2"), number(row, "class5_plain"), 1e-9) << row.at("area_mm2");
        ++compared;
    }
    EXPECT_EQ(compared, 8);
}

// Ohms of one conductor by the constant that the row is worked with; nothing: another kind of sum.
std::optional<double> ohmsOfConductor(const CsvRow& row)
{
    const std::string& unit = row.at("constant_unit");
    const double constant = number(row, "constant"), length = number(row, "length");
    if (unit == "ohm")
        return constant;
    if (unit == "ohm/ft")
        return constant * length;
    if (unit == "ohm/kft")
        return constant * length / 1000;
    if (unit == "ohm cmil/ft" || unit == "ohm mm2/m")
        return constant * length / number(row, "conductor_area");
    return std::nullopt;
}

// Worked examples, one load at the end of one or two conductors, against what the row's own formula gives (`recomputed`:
// where the published figure is wrong, that is right).
TEST(PublishedDrops, AreWhatALoadAtTheEndOfTheLineLoses)
{
    int compared = 0;
    for (const CsvRow& row : publishedRows("voltage_drop_examples.csv")) {
        if (row.at("supply_kind") == "ac3" || row.at("constant").empty())
            continue;
        const auto ohms = ohmsOfConductor(row);
        if (!ohms)
            continue;
        const double volts = row.at("supply_V").empty() ? 28 : number(row, "supply_V"); // 28 V DC in aircraft, where none is said
        Network line{4, {{1, 2, *ohms}, {3, 0, row.at("factor") == "2" ? *ohms : 0}}, {{1, 0, volts}}, {},
                     {{2, 3, LoadLaw::ConstantCurrent, number(row, "load_A"), 1, 0}}};
        const double drop = volts - solved(line).between(2, 3).value();
        EXPECT_NEAR(drop, number(row, "recomputed_drop_V"), 1e-5 * drop) << row.at("id");
        ++compared;
    }
    std::printf("%d examples\n", compared);
    EXPECT_GE(compared, 22);
}

TEST(PublishedDrops, FollowFromGaugeAndLengthWhereTheConstantIsOurs)
{
    int compared = 0;
    for (const CsvRow& row : publishedRows("voltage_drop_examples.csv"))
        if (row.at("constant_unit") == "ohm mm2/m" && row.at("constant") == "0.017241") {
            const Ohms way = ohmsOf(row.at("conductor_area") + " mm2", {number(row, "length")}).value();
            EXPECT_NEAR(2 * way.value * number(row, "load_A"), number(row, "recomputed_drop_V"), 1e-4) << row.at("id");
            ++compared;
        }
    EXPECT_EQ(compared, 2);
}

} // namespace
} // namespace doorloom
