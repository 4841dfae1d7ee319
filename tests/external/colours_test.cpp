#include "model/colours.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace doorloom {
namespace {

// Letters, words and order of IEC 60757, read; the source and what is known of its errors stand in the file.
TEST(ColourCodes, AreThoseOfIec60757InItsOrder)
{
    std::ifstream in(SOURCE_FOLDER "/tests/external/colours_iec60757.csv");
    ASSERT_TRUE(in);
    std::size_t row = 0;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line[0] == '#' || line.starts_with("order"))
            continue;
        std::istringstream cells(line);
        std::string order, code, words;
        std::getline(cells, order, ',');
        std::getline(cells, code, ',');
        std::getline(cells, words, ',');
        ASSERT_LT(row, colourCodes().size());
        EXPECT_EQ(std::to_string(row + 1), order);
        EXPECT_EQ(colourCodes()[row].letters, code);
        EXPECT_EQ(colourCodes()[row].words.en, words);
        EXPECT_EQ(inWords(colourInWords(code)), words);
        ++row;
    }
    EXPECT_EQ(row, colourCodes().size());
    EXPECT_EQ(row, 15u);
}

TEST(ColourCodes, AreReadWithStripesAndInSmallLetters)
{
    EXPECT_EQ(inWords(colourInWords("WH+BU")), "white, stripe blue");
    EXPECT_EQ(inWords(colourInWords("WH+BU"), Language::Spanish), "blanco, raya azul");
    EXPECT_EQ(inWords(colourInWords("RDBU")), "red and blue");
    EXPECT_EQ(inWords(colourInWords("gnye")), "green-and-yellow");
    EXPECT_EQ(inWords(colourInWords("")), "");
    EXPECT_EQ(inWords(colourInWords("striped")), "");
    EXPECT_EQ(inWords(colourInWords("RD+")), "");
    EXPECT_EQ(inWords(colourInWords("RDX")), "");
}

} // namespace
} // namespace doorloom
