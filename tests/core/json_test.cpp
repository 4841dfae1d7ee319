#include "base/json.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace doorloom;

namespace {

Json read(std::string_view text)
{
    const Result<Json> json = parseJson(text, "x.json");
    EXPECT_TRUE(json.ok()) << inWords(json.problem());
    return json.ok() ? json.value() : Json{};
}

std::string refusal(std::string_view text)
{
    const Result<Json> json = parseJson(text, "x.json");
    return json.ok() ? "was read" : inWords(json.problem());
}

std::string repeated(const std::string& what, int times)
{
    std::string all;
    for (int i = 0; i < times; ++i)
        all += what;
    return all;
}

} // namespace

TEST(Json, KnowsTheLineOfEveryValue)
{
    const Json json = read("{\n\"a\": 1\n,\n\"b\": [true,\n 2.5\n, null\n],\"c\": \"x\"}\n\n");

    EXPECT_EQ(json.line, 1u);
    EXPECT_EQ(json.find("a")->line, 2u);
    EXPECT_EQ(json.find("b")->line, 4u);
    const auto& items = std::get<Json::Array>(json.find("b")->value);
    EXPECT_EQ(items[0].line, 4u);
    EXPECT_EQ(items[1].line, 5u);
    EXPECT_EQ(items[2].line, 6u);
    EXPECT_EQ(json.find("c")->line, 7u);
}

TEST(Json, KeepsTheOrderOfKeys)
{
    const Json json = read(R"({"z": 1, "a": 2, "m": 3})");

    const auto& members = std::get<Json::Object>(json.value);
    EXPECT_EQ(members[0].key, "z");
    EXPECT_EQ(members[1].key, "a");
    EXPECT_EQ(members[2].key, "m");
    EXPECT_EQ(json.find("q"), nullptr);
}

TEST(Json, IsRefusedWhenItIsCutShort)
{
    const std::string remedy = " The file was cut short: take a complete copy of it.";
    EXPECT_EQ(refusal(""), "x.json, line 1, column 1: The text ends before it is complete." + remedy);
    EXPECT_EQ(refusal("{\n\"a\": [1,"),
              "x.json, line 2, column 8: The text ends before it is complete." + remedy);
    EXPECT_EQ(refusal("{\"a\": \"op"),
              "x.json, line 1, column 9: The text ends before it is complete." + remedy);
    EXPECT_EQ(refusal("{\"a\": tr"),
              "x.json, line 1, column 8: The text ends before it is complete." + remedy);
}

TEST(Json, IsRefusedWhenSomethingElseStandsThere)
{
    const std::string remedy = " Put this line right, or take an undamaged copy of the file.";
    EXPECT_EQ(refusal("[1,\n2,}"),
              "x.json, line 2, column 3: This is not JSON: '2,}' cannot stand here." + remedy);
    EXPECT_EQ(refusal("[NaN]"),
              "x.json, line 1, column 2: This is not JSON: '[N' cannot stand here." + remedy);
    EXPECT_EQ(refusal("[1] 2"),
              "x.json, line 1, column 5: This is not JSON: '2' cannot stand here." + remedy);
    EXPECT_EQ(refusal("[01]"), "x.json, line 1, column 4: This is not JSON: '1' cannot stand here." + remedy);
    EXPECT_EQ(refusal("// no comments\n1"),
              "x.json, line 1, column 1: This is not JSON: '/' cannot stand here." + remedy);
    EXPECT_EQ(refusal("[\"tab\there\"]"),
              "x.json, line 1, column 5: This is not JSON: '\"tab<U+0009>' cannot stand here." + remedy);
    EXPECT_EQ(refusal("[\"\\ud800\"]"),
              "x.json, line 1, column 9: This is not JSON: '\"\\ud800\"' cannot stand here." + remedy);
}

TEST(Json, IsRefusedWithNumbersThatNoDoubleHolds)
{
    EXPECT_EQ(refusal("[1,\n -1e999]"),
              "x.json, line 2, column 8: The number -1e999 is too large. Correct the number.");
}

TEST(Json, IsRefusedWhenAKeyStandsTwice)
{
    EXPECT_EQ(refusal("{\"a\": 1,\n\"b\": {\"a\": 2},\n\"a\": 3}"),
              "x.json, line 3: 'a' stands twice in one object. Keep one of the two.");
}

TEST(Json, IsRefusedWhenItIsNotUtf8)
{
    const std::string remedy = " Save the file as UTF-8, or take an undamaged copy of it.";
    EXPECT_EQ(refusal("[\"ok\",\n\"\xff\"]"), "x.json, line 2, column 2: This text is not UTF-8." + remedy);
    EXPECT_EQ(refusal("[\"\xc0\xaf\"]"),
              "x.json, line 1, column 3: This text is not UTF-8." + remedy); // overlong '/'
    EXPECT_EQ(refusal("[\"\xed\xa0\x80\"]"),
              "x.json, line 1, column 4: This text is not UTF-8." + remedy); // surrogate
}

TEST(Json, IsRefusedWithAZeroByteEvenBehindItsEnd)
{
    EXPECT_EQ(refusal(std::string_view("[1]\n\0[2]", 8)),
              "x.json, line 2, column 1: A byte of value 0 stands here: this is no "
              "text. Take an undamaged copy of the file.");
}

TEST(Json, IsRefusedOneLevelPastTheDeepestAllowed)
{
    const auto nested = [](int depth) { return repeated("[", depth) + repeated("]", depth); };
    EXPECT_TRUE(parseJson(nested(mostJsonDepth), "x.json").ok());
    EXPECT_EQ(refusal(nested(mostJsonDepth + 1)), "x.json, line 1, column 65: Lists and objects are nested "
                                                  "more than 64 deep. No file of this program is "
                                                  "so: take an undamaged copy.");
    EXPECT_EQ(
        refusal(repeated("{\"a\":", 1'000'000)),
        "x.json, line 1, column 321: Lists and objects are nested more than 64 deep. No file of this program "
        "is so: take an undamaged copy.");
}

TEST(Json, IsRefusedWhenItIsHuge)
{
    const std::string remedy = " No file of this program is so: take an undamaged copy.";
    EXPECT_EQ(refusal(std::string(mostJsonBytes + 1, ' ')), "x.json: The file has more than 64 MB." + remedy);
    EXPECT_EQ(refusal("[" + repeated("0,", static_cast<int>(mostJsonValues)) + "0]"),
              "x.json, line 1, column 8000001: The file has more than 4000000 values." + remedy);
}

TEST(Json, SaysTheSameInSpanish)
{
    const Result<Json> json = parseJson("[1,", "x.json");
    EXPECT_EQ(inWords(json.problem(), Language::Spanish),
              "x.json, line 1, column 3: El texto termina antes de estar completo. El archivo quedó cortado: "
              "use una "
              "copia completa.");
}

TEST(Json, PathsLeadToValuesAndBack)
{
    const Json json = read(R"({"devices": [{"tag": "A"}, {"tag": "B", "sizes": [[1, 2], [3]]}]})");
    const Json& devices = *json.find("devices");
    const Json& second = std::get<Json::Array>(devices.value)[1];
    const Json& two = std::get<Json::Array>(std::get<Json::Array>(second.find("sizes")->value)[0].value)[1];

    EXPECT_EQ(pathTo(json, json), "");
    EXPECT_EQ(pathTo(two, json), "devices[1].sizes[0][1]");
    EXPECT_EQ(pathTo(two, second), "sizes[0][1]");
    EXPECT_EQ(&valueAt(json, "devices[1].sizes[0][1]"), &two);
    EXPECT_EQ(&valueAt(json, "devices[1].nothing.there"), &second);
    EXPECT_EQ(&valueAt(json, "devices[7]"), &devices);
    EXPECT_EQ(&valueAt(json, "devices[7"), &devices);
}

TEST(Quoted, ReadsBackAsItWas)
{
    const std::string odd = std::string("a\"b\\c\n\t\x01\x7f") + '\0' + "ñ † Ω − 𝄞";
    EXPECT_EQ(std::get<std::string>(read(doorloom::quoted(odd)).value), odd);
    EXPECT_EQ(doorloom::quoted("a\"\\\n\x01"), "\"a\\\"\\\\\\n\\u0001\"");
}

TEST(Quoted, IsUtf8WhateverWentIn)
{
    for (const std::string bad :
         {"\xff", "a\xc3", "\xe2\x82", "\xed\xa0\x80", "\xf5\x80\x80\x80", "\xc0\xaf"}) {
        const Result<Json> json = parseJson(doorloom::quoted(bad + "z"), "x.json");
        ASSERT_TRUE(json.ok()) << inWords(json.problem());
        const std::string& back = std::get<std::string>(json.value().value);
        EXPECT_NE(back.find("\xEF\xBF\xBD"), std::string::npos);
        EXPECT_EQ(back.back(), 'z');
    }
}

TEST(NumberText, HasTheFewestDigitsThatReadBack)
{
    EXPECT_EQ(numberText(0), "0");
    EXPECT_EQ(numberText(-0.0), "0");
    EXPECT_EQ(numberText(100000), "100000");
    EXPECT_EQ(numberText(16'000'000), "16000000");
    EXPECT_EQ(numberText(0.1), "0.1");
    EXPECT_EQ(numberText(-13.8), "-13.8");
    for (double number : {1.0 / 3, 5e-324, 1.7976931348623157e308, 1e15, 123456789012345678.0, -2.5e-7})
        EXPECT_EQ(std::get<double>(read(numberText(number)).value), number) << numberText(number);
}
