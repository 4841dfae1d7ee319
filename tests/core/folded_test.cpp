#include "base/folded.h"

#include "model/colours.h"

#include <gtest/gtest.h>

namespace doorloom {

TEST(Folded, DropsCapitalsAccentsAndKindsOfDashes)
{
    EXPECT_EQ(folded("Contrachapa ELÉCTRICA ñandú"), "contrachapa electrica nandu");
    EXPECT_EQ(folded("B− – 1′"), "b- - 1'");
    EXPECT_EQ(folded("Ω×÷ ß\xc3"), "Ω×÷ ß\xc3") << "what is not known stays";
    EXPECT_EQ(folded(""), "");
}

TEST(ColourLetters, AreFoundByWordInEitherLanguageOrByThemselves)
{
    EXPECT_EQ(colourLetters("red"), "RD");
    EXPECT_EQ(colourLetters("Marron"), "BN");
    EXPECT_EQ(colourLetters("wh+bu"), "WH+BU");
    EXPECT_EQ(colourLetters("1"), "");
    EXPECT_EQ(colourLetters(""), "");
}

} // namespace doorloom
