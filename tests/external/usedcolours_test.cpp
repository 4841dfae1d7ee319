#include "external/csv.h"
#include "external/samples.h"

#include "catalogue/catalogue.h"

#include <gtest/gtest.h>

#include <set>

namespace doorloom {
namespace {

// Source: letter codes of IEC 60757 as adopted in GOST 28763-90; read, addresses in the head of the file.
// Differently coloured parts are joined with '+' (read); 'white with a blue stripe' is written WH+BU here.
std::set<std::string> publishedLetters()
{
    std::set<std::string> letters;
    for (const CsvRow& row : publishedRows("colours_iec60757.csv"))
        letters.insert(row.at("code"));
    return letters;
}

bool isWrittenInPublishedLetters(const std::string& colour)
{
    static const std::set<std::string> letters = publishedLetters();
    std::size_t from = 0;
    for (auto at = colour.find('+'); at != std::string::npos; at = colour.find('+', from)) {
        if (!letters.contains(colour.substr(from, at - from)))
            return false;
        from = at + 1;
    }
    return letters.contains(colour.substr(from));
}

TEST(UsedColours, AreToldFromMisspeltOnes)
{
    EXPECT_EQ(publishedLetters().size(), 15u);
    EXPECT_TRUE(isWrittenInPublishedLetters("WH+BU"));
    EXPECT_TRUE(isWrittenInPublishedLetters("GNYE"));
    EXPECT_FALSE(isWrittenInPublishedLetters("RED"));
    EXPECT_FALSE(isWrittenInPublishedLetters("WH/BU"));
    EXPECT_FALSE(isWrittenInPublishedLetters(""));
}

TEST(UsedColours, OfLeadsInTheCatalogueAreWrittenInPublishedLetters)
{
    const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    ASSERT_TRUE(catalogue.ok()) << inWords(catalogue.problem());
    for (const Kind& kind : catalogue.value().kinds)
        for (const Terminal* terminal : terminalsOf(kind))
            if (terminal->lead) {
                EXPECT_TRUE(isWrittenInPublishedLetters(*terminal->lead))
                    << kind.name << ", " << terminal->printed << ": " << *terminal->lead;
            }
}

TEST(UsedColours, OfTheSamplesAreWrittenInPublishedLetters)
{
    int seen = 0;
    for (const auto& [name, job] : sampleJobs())
        for (const Conductor& conductor : job.conductors) {
            const std::string colour = colourOf(job, conductor);
            if (colour.empty()) // a bare drain, or a wire whose colour is left to the
                                // site
                continue;
            ++seen;
            EXPECT_TRUE(isWrittenInPublishedLetters(colour))
                << name << ", conductor " << conductor.tag << ": " << colour;
        }
    EXPECT_GT(seen, 0) << "no sample has a coloured conductor";
}

} // namespace
} // namespace doorloom
