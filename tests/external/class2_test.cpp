#include "check/class2.h"
#include "external/csv.h"

#include <gtest/gtest.h>

#include <cstdio>

// Sources stand in the heads of the tables; what they mark so is from memory.
namespace doorloom {
namespace {

// Five digits are given.
TEST(PublishedClass2Limits, AreTheAmperesOfANameplate)
{
    int compared = 0;
    for (const CsvRow& row : publishedRows("class2_worked.csv")) {
        const Volts volts{std::stod(row.at("supply_V"))};
        const double amperes = std::stod(row.at("nameplate_a")), voltAmperes = std::stod(row.at("nameplate_va"));
        const Current current = row.at("table") == "11(A)" ? Current::Ac : Current::Dc;
        const double ours = class2Amperes(volts, current).value().value;
        EXPECT_NEAR(ours, amperes, 5e-5 * amperes) << row.at("table") << " " << row.at("limit_kind") << " " << volts.value << " V";
        EXPECT_NEAR(ours * volts.value, voltAmperes, 5e-5 * voltAmperes) << row.at("table") << " " << volts.value << " V";
        ++compared;
    }
    std::printf("%d limits\n", compared);
    EXPECT_EQ(compared, 48);
}

// From the table itself: the bands' ends, and that the class ends where they do.
TEST(PublishedClass2Limits, EndWithTheBandsOfTheTable)
{
    int ends = 0;
    for (const CsvRow& row : publishedRows("class2_limits.csv"))
        if (row.at("class") == "2" && row.at("nameplate_a").find('V') == std::string::npos) {
            const Current current = row.at("table") == "11(A)" ? Current::Ac : Current::Dc;
            EXPECT_NEAR(class2Amperes({std::stod(row.at("v_through"))}, current).value().value, std::stod(row.at("nameplate_a")), 1e-9)
                << row.at("table") << " " << row.at("v_through");
            ++ends;
        }
    EXPECT_EQ(ends, 6);
    EXPECT_FALSE(class2Amperes({150.1}, Current::Dc).has_value());
    EXPECT_FALSE(class2Amperes({150.1}, Current::Ac).has_value());
}

} // namespace
} // namespace doorloom
