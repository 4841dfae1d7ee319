#include "external/csv.h"
#include "solve/gauge.h"

#include <gtest/gtest.h>

#include <cstdio>

// Sources stand in the head of the table. Rows with another copper (0.004041 at 20 °C) are of other tables.
namespace doorloom {
namespace {

double number(const CsvRow& row, const std::string& column) { return std::stod(row.at(column)); }
double ohmsAt(double celsius) { return ohmsOf("18 AWG", {100}, celsius).value().value; }
double perDegreeAt(double celsius) { return (ohmsAt(celsius + 1) - ohmsAt(celsius)) / ohmsAt(celsius); }

TEST(PublishedTemperatureLaw, HasOurConstants)
{
    int compared = 0;
    for (const CsvRow& row : publishedRows("ac_or_temperature.csv")) {
        if (row.at("kind") != "constant" || row.at("alpha_or_T0") == "0.004041")
            continue;
        const double published = number(row, "alpha_or_T0"), celsius = number(row, "T1_C");
        if (published > 1) // degrees below nothing at which the law gives no ohms
            EXPECT_NEAR(1 / perDegreeAt(celsius) - celsius, published, 0.1) << row.at("id");
        else
            EXPECT_NEAR(perDegreeAt(celsius), published, 1e-2 * published) << row.at("id"); // one is rounded to two digits
        ++compared;
    }
    EXPECT_EQ(compared, 5);
}

// One of the five is rounded badly.
TEST(PublishedTemperatureLaw, GivesTheWorkedExamples)
{
    int compared = 0;
    for (const CsvRow& row : publishedRows("ac_or_temperature.csv")) {
        if (row.at("kind") != "alpha_at_T1" || row.at("alpha_or_T0") != "0.00393" || number(row, "T1_C") != ordinaryCelsius)
            continue;
        const double warm = number(row, "R1_ohm") * ohmsAt(number(row, "T2_C")) / ohmsAt(ordinaryCelsius);
        EXPECT_NEAR(warm, number(row, "recomputed_R2_ohm"), 1e-5 * warm) << row.at("id");
        EXPECT_NEAR(warm, number(row, "published_R2_ohm"), 1.5e-3 * warm) << row.at("id");
        ++compared;
    }
    std::printf("%d examples\n", compared);
    EXPECT_EQ(compared, 5);
}

} // namespace
} // namespace doorloom
