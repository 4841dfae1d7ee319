#include "edit/found.h"

#include "edit/details.h"
#include "edit/drawing.h"
#include "edit/jointerminals.h"

#include "desk.h"

namespace doorloom {

namespace {

std::string tags(const std::vector<Found>& all)
{
    std::string joined;
    for (const Found& each : all)
        joined += (joined.empty() ? "" : " ") + (each.tag.empty() ? inWords(each.words) : each.tag);
    return joined;
}

} // namespace

TEST(Found, PutsTheTagThatIsTheWordFirst)
{
    SmallSite site;
    EXPECT_EQ(tags(found(site.job(), "c1")), "C1 C1.1 C1.2 C1.3 C1.4");
    EXPECT_EQ(tags(found(site.job(), "C1.3")), "C1.3");
    EXPECT_EQ(tags(found(site.job(), "ps1")), "PS1 DPS1") << "within a tag comes last";
    EXPECT_EQ(tags(found(site.job(), "")), "");
    EXPECT_EQ(tags(found(site.job(), "zebra")), "");
    EXPECT_EQ(found(site.job(), "c1", Language::English, 2).size(), 2u);
}

TEST(Found, LooksIntoWordsInTheLanguageAskedFor)
{
    SmallSite site;
    site.make(setWords(site.job(), site.strike, "inner leaf, as found"));
    EXPECT_EQ(tags(found(site.job(), "strike")), "ES1");
    EXPECT_EQ(tags(found(site.job(), "electrica", Language::Spanish)), "ES1");
    EXPECT_EQ(tags(found(site.job(), "leaf strike")), "ES1") << "all words";
    EXPECT_EQ(tags(found(site.job(), "leaf supply")), "");
    EXPECT_EQ(tags(found(site.job(), "18/4")), "C1");
    site.make(setWords(site.job(), site.strike, "c1"));
    EXPECT_EQ(tags(found(site.job(), "c1")), "C1 C1.1 C1.2 C1.3 C1.4 ES1") << "tags before words";
    const SheetId sheet = site.make(addSheet(site.job(), site.numbers(), "Door 114")).first;
    site.make(addNote(site.job(), site.numbers(), sheet, {}, "wall is brick"));
    EXPECT_EQ(tags(found(site.job(), "brick")), "note: wall is brick");
    EXPECT_EQ(tags(found(site.job(), "114")), "Door 114");
}

TEST(Found, SaysWhatItIsAndWhere)
{
    SmallSite site;
    site.make(joinTerminals(site.job(), site.numbers(), site.at("PS1:+"), site.at("ES1:1")));
    const auto first = [&](std::string_view letters) {
        return inWords(found(site.job(), letters).front().words);
    };
    EXPECT_EQ(first("es1"), "Electric strike, fail-secure, 24 V, at FRAME");
    EXPECT_EQ(first("c1.1"), "C1.1 (PS1:+ – ES1:1), red");
    EXPECT_EQ(first("c1"), "cable 18/4, CAB1 – FRAME");
    EXPECT_EQ(first("frame"), "place: ");
}

} // namespace doorloom
