#include "catalogue/kindcells.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

using Sort = FormType::Sort;

std::string asJson(Sort sort, const std::string& cell)
{
    FormType type;
    type.sort = sort;
    return cellAsJson(type, cell);
}

TEST(KindCells, AreNumbersTruthsWordsListsAndPairs)
{
    EXPECT_EQ(asJson(Sort::Number, "0.25"), "0.25");
    EXPECT_EQ(asJson(Sort::Truth, "yes"), "true");
    EXPECT_EQ(asJson(Sort::Truth, "no"), "false");
    EXPECT_EQ(asJson(Sort::Text, "say \"when\""), "\"say \\\"when\\\"\"");
    EXPECT_EQ(asJson(Sort::List, " in , out,, "), "[\"in\",\"out\"]");
    EXPECT_EQ(asJson(Sort::List, ""), "[]");
    EXPECT_EQ(asJson(Sort::Pairs, "K1.JA = wet, K1.JB"), "{\"K1.JA\":\"wet\",\"K1.JB\":\"\"}");
    EXPECT_EQ(asJson(Sort::NumberOrText, "one-shot"), "\"one-shot\"");
}

TEST(KindCells, LeaveToTheReaderWhatIsNoNumberOrTruth)
{
    for (const char* cell : {"0,25", "inf", "nan", "1e999", "24 V", "0x1p3", "-", "maybe"}) {
        EXPECT_EQ(asJson(Sort::Number, cell), quoted(cell));
        EXPECT_EQ(asJson(Sort::Truth, cell), quoted(cell));
    }
}

TEST(KindCells, GiveBackWhatTheyShow)
{
    for (const auto& [sort, json] :
         {std::pair(Sort::Number, "-1.5"), std::pair(Sort::Truth, "true"),
          std::pair(Sort::Text, "\"a, b = c\""), std::pair(Sort::List, "[\"a\",\"b\"]"),
          std::pair(Sort::Pairs, "{\"a\":\"b\",\"c\":\"d\"}")})
        EXPECT_EQ(asJson(sort, cellOf(parseJson(json, "cell").value())), json);
}

} // namespace
} // namespace doorloom
