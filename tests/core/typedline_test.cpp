#include "edit/typedline.h"

#include "catalogue/catalogue.h"
#include "catalogue/stockcables.h"
#include "edit/landcores.h"

#include "desk.h"
#include "random.h"

#include <algorithm>

namespace doorloom {

namespace {

const Stock& stock()
{
    static const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    static const Stock stock{catalogue.value().kinds, stockCables()};
    return stock;
}

// What was done, and how the first row that it concerns stands afterwards.
std::string typed(Desk& desk, std::string_view line)
{
    const Result<Typed> read = readLine(desk.job(), stock(), line);
    if (!read.ok())
        return inWords(read.problem());
    desk.make(read.value().change);
    std::string said = inWords(read.value().what);
    if (!read.value().rows.empty() && desk.job().conductors.find({read.value().rows.front()}))
        said += " | " + desk.drawn({read.value().rows.front()});
    return said;
}

std::string texts(const std::vector<Completion>& completions, std::size_t most = 6)
{
    std::string joined;
    for (std::size_t at = 0; at < completions.size() && at < most; ++at)
        joined += (at == 0 ? "" : " ") + completions[at].text;
    return joined;
}

std::string completed(const Desk& desk, std::string_view line, Language language = Language::English)
{
    return texts(completionsFor(desk.job(), stock(), line, line.size(), language));
}

Kind ledStrip()
{
    Kind kind = catalogueKind("lamp");
    kind.name = "led-strip";
    kind.strips[0].terminals[0].lead = "RD";
    kind.strips[0].terminals[1].lead = "BK";
    return kind;
}

} // namespace

TEST(TypedLine, JoinsTwoTerminals)
{
    SmallSite site;
    EXPECT_EQ(typed(site, "ps1 + es1 1"), "land PS1:+ – ES1:1 | C1.1: PS1:+ – ES1:1");
    EXPECT_EQ(typed(site, "PS1:- es1:2 white"), "land PS1:− – ES1:2 | C1.4: PS1:− – ES1:2");
    EXPECT_EQ(typed(site, "lm1 com dps1 a 3"), "land LM1:COM – DPS1:A | C1.3: LM1:COM – DPS1:A");
    EXPECT_EQ(typed(site, "lm1 in4 dps1 b c1.2"), "land LM1:IN4 – DPS1:B | C1.2: LM1:IN4 – DPS1:B");
    EXPECT_EQ(typed(site, "ps1 + lm1 + red"), "land PS1:+ – LM1:+ | W1: PS1:+ – LM1:+");
    EXPECT_EQ(typed(site, "ps1 – lm1 — wire bk"), "land PS1:− – LM1:− | W2: PS1:− – LM1:−");
}

TEST(TypedLine, KnowsALeadByItsColour)
{
    SmallSite site;
    site.device("LED1", ledStrip(), site.cabinet);
    EXPECT_EQ(typed(site, "ps1 + led1 red"), "land PS1:+ – LED1:+ | W1: PS1:+ – LED1:+");
    EXPECT_EQ(typed(site, "ps1 - led1 negro"), "land PS1:− – LED1:− | W2: PS1:− – LED1:−");
}

TEST(TypedLine, LandsTheNextCoreOfACable)
{
    SmallSite site;
    EXPECT_EQ(typed(site, "c1 es1 1"), "land C1 – ES1:1 | C1.1: waiting – ES1:1");
    EXPECT_EQ(typed(site, "c1 es1 2"), "land C1 – ES1:2 | C1.2: waiting – ES1:2");
    EXPECT_EQ(typed(site, "c1 ps1 +"), "land C1 – PS1:+ | C1.1: PS1:+ – ES1:1");
}

TEST(TypedLine, SaysWhichWordIsWrongAndWhatWouldDo)
{
    SmallSite site;
    EXPECT_EQ(typed(site, ""),
              "The line ends where a tag or a command should follow. Use one of: PS1, LM1, ES1, DPS1, place, "
              "pull, set, cap, insulate, lift, splice, move ….");
    EXPECT_EQ(
        typed(site, "ps9 +"),
        "'ps9' is not a command, or a device, splice or cable of the job. Use one of: PS1, place, pull, "
        "LM1, ES1, DPS1, set, cap, insulate, lift, splice, move ….");
    EXPECT_EQ(typed(site, "ps1 no"), "'no' is not a terminal of PS1. Use one of: +, −, B+, B−.");
    EXPECT_EQ(typed(site, "ps1"),
              "The line ends where a terminal of PS1 should follow. Use one of: +, −, B+, B−.");
    EXPECT_EQ(typed(site, "ps1 + el1 1"),
              "'el1' is not a device or splice of the job. Use one of: ES1, PS1, LM1, DPS1.");
    EXPECT_EQ(
        typed(site, "ps1 + es1 1 pink-ish"),
        "'pink-ish' is not a colour, a core or its number, or 'wire'. Use one of: C1.1, C1.2, C1.3, C1.4, "
        "wire.");
    EXPECT_EQ(
        typed(site, "set lm1 k1 wet now"),
        "'now' stands behind the end of what was understood. Take it away, or begin another line with it.");
    EXPECT_EQ(
        typed(site, "set lm1 k2 wet"),
        "'k2' is not an option or setting of LM1. Use one of: K1, K3, K1.JA, K1.JB, K3.JA, K3.JB, mode, "
        "delay.K2, hold.");
    EXPECT_EQ(typed(site, "move es1 nowhere"),
              "'nowhere' is not a place of the job (CAB1, FRAME). To make it, say behind it what it is, in "
              "quotes: \"cabinet above ceiling\".");
}

TEST(TypedLine, PlacesAKindByItsWords)
{
    SmallSite site;
    EXPECT_EQ(typed(site, "place strike cab1"),
              "'strike' fits several kinds. Say which: strike-ac, strike-ac-16, strike-fail-safe, strike-fail-safe-12, "
              "strike-fail-secure, strike-fail-secure-12, strike-fail-secure-bare, strike-monitor-fail-safe, "
              "strike-monitor-fail-secure.");
    EXPECT_EQ(typed(site, "place strike fail-s cab1"),
              "'strike fail-s' fits several kinds. Say which: strike-ac, strike-ac-16, strike-fail-safe, "
              "strike-fail-safe-12, strike-fail-secure, strike-fail-secure-12, strike-fail-secure-bare, "
              "strike-monitor-fail-safe, strike-monitor-fail-secure.");
    EXPECT_EQ(typed(site, "place strike fail-sec 12v frame"), "place ES2");
    EXPECT_EQ(typed(site, "place strike-fail-safe frame es7 \"inner leaf\""), "place ES7");
    const Device& seven = *deviceTagged(site.job(), "ES7");
    EXPECT_EQ(seven.place, site.frame);
    EXPECT_EQ(seven.words, "inner leaf");
    EXPECT_EQ(kindOf(site.job(), seven)->name, "strike-fail-safe");
    EXPECT_EQ(typed(site, "poner contrachapa strike-fail-safe frame"), "place ES3")
        << "in the other language";
    EXPECT_EQ(typed(site, "place relay cab1 es1"),
              "ES1: The tag 'ES1' is on two devices. Give one of them another tag.");
}

TEST(TypedLine, MakesAPlaceThatIsDescribed)
{
    Desk desk;
    EXPECT_EQ(typed(desk, "place dc-supply-24 cab1 \"cabinet above ceiling\""), "place PS1");
    ASSERT_EQ(desk.job().places.size(), 1u);
    EXPECT_EQ(desk.job().places.begin()->tag, "CAB1");
    EXPECT_EQ(desk.job().places.begin()->words, "cabinet above ceiling");
    EXPECT_EQ(deviceTagged(desk.job(), "PS1")->place, desk.job().places.begin()->id);
    EXPECT_EQ(typed(desk, "move ps1 cab2 \"cabinet in the hall\""), "move ps1");
    EXPECT_EQ(desk.job().places.find(deviceTagged(desk.job(), "PS1")->place)->tag, "CAB2");
}

TEST(TypedLine, PullsACable)
{
    SmallSite site;
    EXPECT_EQ(typed(site, "pull 22/4 shielded cab1 frame 40 ft"), "pull C2");
    const auto tagged = [&](const std::string& tag) {
        return *std::find_if(site.job().cables.begin(), site.job().cables.end(),
                             [&](const Cable& cable) { return cable.tag == tag; });
    };
    EXPECT_EQ(site.job().cableTypes.find(tagged("C2").type)->name, "22/4 shielded");
    EXPECT_EQ(coresOf(site.job(), tagged("C2").id).size(), 5u);
    EXPECT_DOUBLE_EQ(tagged("C2").length.value, 12.192);
    EXPECT_EQ(typed(site, "pull 18/4 ps1 es1 W9 12,5m"), "pull W9") << "where the devices are";
    EXPECT_EQ(tagged("W9").from, site.cabinet);
    EXPECT_EQ(tagged("W9").to, site.frame);
    EXPECT_EQ(tagged("W9").type, site.four) << "the job's own type of this name";
    EXPECT_DOUBLE_EQ(tagged("W9").length.value, 12.5);
    EXPECT_EQ(typed(site, "pull 18/4 ps1 lm1"),
              "The cable would begin and end at CAB1. Name two places; within one, wires do.");
    EXPECT_EQ(typed(site, "pull 18/4 cab1 frame c1"),
              "C1: The tag 'C1' is another cable's already. Choose one that is free.");
    EXPECT_EQ(typed(site, "pull 18/4 cab1 frame 12"),
              "'12' is not a length. Write it with its unit: 12 m or 40 ft.");
    EXPECT_EQ(
        typed(site, "pull 19/4 cab1 frame"),
        "'19/4' is not a cable type. Use one of: 18/4, 18/2, 18/3, 18/5, 16/2, 14/2, 22/4 shielded, 22/2, "
        "22/3, 22/4, 24/4 pairs.");
}

TEST(TypedLine, CapsAndInsulatesWhatWaits)
{
    SmallSite site;
    EXPECT_EQ(typed(site, "cap c1.4 frame"), "cap c1.4 | C1.4: waiting – spare");
    EXPECT_EQ(typed(site, "insulate c1.4"), "insulate c1.4 | C1.4: insulated – spare");
    EXPECT_EQ(typed(site, "cap c1.4"), "c1.4: No end of 'c1.4' waits. Take it off first: lift c1.4.");
    EXPECT_EQ(typed(site, "cap c1"), "cap C1");
    EXPECT_EQ(typed(site, "cap c1.1"), "c1.1: No end of 'c1.1' waits. Take it off first: lift c1.1.");
}

TEST(TypedLine, LiftsACoreOrWhatIsOnATerminal)
{
    SmallSite site;
    typed(site, "ps1 + es1 1");
    typed(site, "ps1 + lm1 +");
    EXPECT_EQ(typed(site, "lift ps1 +"), "take off PS1:+ | C1.1: waiting – ES1:1");
    EXPECT_EQ(site.job().conductors.size(), 4u) << "the wire is gone";
    EXPECT_EQ(typed(site, "lift c1.1"), "take off c1.1 | C1.1: waiting – waiting");
    EXPECT_EQ(typed(site, "lift es1:2"), "ES1:2: Nothing is on 'ES1:2'. Choose a terminal that is in use.");
}

TEST(TypedLine, SplicesCoresWhereTheyMeet)
{
    SmallSite site;
    site.place("HEAD");
    typed(site, "pull 18/4 frame head");
    EXPECT_EQ(typed(site, "splice c1.1 c2.1"), "splice c1.1, c2.1");
    EXPECT_EQ(site.drawn(conductorNamed(site.job(), "waiting → waiting")).substr(0, 2), "C1");
    ASSERT_EQ(site.job().splices.size(), 1u);
    EXPECT_EQ(site.job().splices.begin()->tag, "S1");
    EXPECT_EQ(site.job().splices.begin()->place, site.frame);
    EXPECT_EQ(typed(site, "ps1 - s1"), "land PS1:− – S1 | C1.1: PS1:− – S1");
    EXPECT_EQ(typed(site, "splice c1.2 c1.3"),
              "These cores wait together at two places. Say behind them at which: CAB1 or FRAME.");
    EXPECT_EQ(typed(site, "splice c1.2 c1.3 cab1 s9"), "splice c1.2, c1.3");
    EXPECT_EQ(
        typed(site, "splice c1.1 c2.2"),
        "These cores do not all wait at one place. Name cores whose cables meet, and take off what is landed "
        "there.");
}

TEST(TypedLine, SetsOptionsAndSettings)
{
    SmallSite site;
    EXPECT_EQ(typed(site, "set lm1 k1 wet"), "set LM1 k1 wet");
    const auto module = [&] { return *deviceTagged(site.job(), "LM1"); };
    EXPECT_EQ(chosen(module(), "K1", "JA"), "wet");
    EXPECT_EQ(chosen(module(), "K1", "JB"), "wet");
    EXPECT_EQ(typed(site, "set lm1 k1.jb dry"), "set LM1 k1.jb dry");
    EXPECT_EQ(chosen(module(), "K1", "JB"), "dry");
    EXPECT_EQ(typed(site, "set lm1 k1 ?"), "set LM1 k1 ?");
    EXPECT_EQ(chosen(module(), "K1", "JA"), std::nullopt);
    EXPECT_EQ(typed(site, "set lm1 hold 7.5 s"), "set LM1 hold 7.5");
    EXPECT_EQ(settingOf(module(), "hold"), SettingValue(7.5));
    EXPECT_EQ(typed(site, "ajustar lm1 hold 8s"), "set LM1 hold 8s");
    EXPECT_EQ(settingOf(module(), "hold"), SettingValue(8.0));
    EXPECT_EQ(typed(site, "set lm1 mode normally-l"), "set LM1 mode normally-l");
    EXPECT_EQ(settingOf(module(), "mode"), SettingValue("normally-locked"));
    EXPECT_EQ(typed(site, "set lm1 k1 damp"),
              "LM1: Jumper JA of LM1 can't stand at 'damp'. Use one of: wet, dry; or leave it not chosen.");
}

TEST(TypedLine, RenamesMovesAndRemoves)
{
    SmallSite site;
    EXPECT_EQ(typed(site, "rename c1 c7"), "rename c1");
    EXPECT_EQ(site.job().cables.find(site.cable1)->tag, "C7");
    EXPECT_EQ(coresOf(site.job(), site.cable1).front()->tag, "C7.1") << "its cores follow";
    EXPECT_EQ(typed(site, "rename es1 ps1"),
              "PS1: The tag 'PS1' is on two devices. Give one of them another tag.");
    EXPECT_EQ(typed(site, "move es1 cab1"), "move es1");
    EXPECT_EQ(site.job().devices.find(site.strike)->place, site.cabinet);
    EXPECT_EQ(typed(site, "remove es1 c7"), "remove es1, c7");
    EXPECT_FALSE(site.job().devices.find(site.strike));
    EXPECT_FALSE(site.job().cables.find(site.cable1));
    EXPECT_EQ(site.job().conductors.size(), 0u);
}

TEST(TypedLine, TellsTagsApartThatDifferInCapitals)
{
    SmallSite site;
    site.device("ps1", catalogueKind("lamp"), site.cabinet);
    EXPECT_EQ(typed(site, "ps1 + PS1 +"), "land ps1:+ – PS1:+ | W1: ps1:+ – PS1:+");
    EXPECT_EQ(typed(site, "Ps1 - lm1 -").substr(0, 17), "'Ps1' is not a de");
}

TEST(LineForms, AreAllUnderstoodAsTheirExamplesShow)
{
    for (const LineForm& form : lineForms()) {
        SmallSite site;
        site.place("HEAD");
        typed(site, "pull 18/4 cab1 frame c2");
        typed(site, "pull \"22/4 shielded\" cab1 frame c2b");
        std::string line(form.example);
        if (line.starts_with("place"))
            typed(site, "remove es1");
        if (line.starts_with("lift"))
            typed(site, "ps1 + es1 1");
        if (line.starts_with("pull"))
            typed(site, "remove c1");
        if (line.starts_with("splice"))
            line += " FRAME";
        if (line.starts_with("insulate"))
            line = "insulate C2.4 FRAME";
        const Result<Typed> read = readLine(site.job(), stock(), line);
        EXPECT_TRUE(read.ok()) << line << ": " << refusal(read);
    }
}

TEST(Completions, ListWhatMayFollow)
{
    SmallSite site;
    EXPECT_EQ(completed(site, ""), "PS1 LM1 ES1 DPS1 place pull");
    EXPECT_EQ(completed(site, "p"), "PS1 place pull");
    EXPECT_EQ(completed(site, "p", Language::Spanish), "PS1 poner");
    EXPECT_EQ(completed(site, "ps1 "), "+ − B+ B−");
    EXPECT_EQ(completed(site, "ps1:"), "PS1:+ PS1:− PS1:B+ PS1:B−");
    EXPECT_EQ(completed(site, "ps1 + e"), "ES1");
    EXPECT_EQ(completed(site, "ps1 + es1 1 "), "C1.1 C1.2 C1.3 C1.4 wire");
    EXPECT_EQ(completed(site, "place "), texts(completionsFor(site.job(), stock(), "place x", 6)));
    EXPECT_EQ(completed(site, "place strike"), "strike-ac strike-ac-16 strike-fail-safe strike-fail-safe-12 "
                                               "strike-fail-secure strike-fail-secure-12");
    EXPECT_EQ(completed(site, "place strike "), "strike-ac strike-ac-16 strike-fail-safe strike-fail-safe-12 "
                                                "strike-fail-secure strike-fail-secure-12");
    EXPECT_EQ(completed(site, "place strike-fail-safe "), "CAB1 FRAME");
    EXPECT_EQ(completed(site, "place strike-fail-safe FRAME "), "ES2");
    EXPECT_EQ(completed(site, "pull 18"), "18/4 18/2 18/3 18/5");
    EXPECT_EQ(completed(site, "set "), "LM1");
    EXPECT_EQ(completed(site, "set lm1 k1 "), "wet dry");
    EXPECT_EQ(completed(site, "cap c1.2 "), "CAB1 FRAME");
    EXPECT_EQ(completed(site, "move es1 \"cab"), "");
}

TEST(Completions, PutFreeTerminalsAndDevicesFirst)
{
    SmallSite site;
    typed(site, "ps1 + es1 1");
    EXPECT_EQ(completed(site, "ps1 "), "− B+ B− +");
    typed(site, "ps1 - es1 2");
    EXPECT_EQ(completed(site, ""), "PS1 LM1 DPS1 ES1 place pull");
}

TEST(WordStart, IsWhereTheWordAtTheCursorBegins)
{
    EXPECT_EQ(wordStart("ps1 + es", 8), 6u);
    EXPECT_EQ(wordStart("ps1 + es", 6), 6u);
    EXPECT_EQ(wordStart("ps1 + es", 5), 4u);
    EXPECT_EQ(wordStart("ps1 ", 4), 4u);
    EXPECT_EQ(wordStart("move a \"x y", 11), 7u);
    EXPECT_EQ(wordStart("", 99), 0u);
}

// Whoever follows the completions is never told that a word was not understood.
TEST(Completions, LeadToLinesThatAreUnderstood)
{
    std::size_t accepted = 0;
    forEachSeed(150, [&](Random& random) {
        SmallSite site;
        for (int line = 0; line < 4; ++line) {
            std::string text;
            for (int word = 0; word < 7; ++word) {
                const std::vector<Completion> offered =
                    completionsFor(site.job(), stock(), text, text.size());
                if (offered.empty())
                    break;
                text += random.oneOf(offered).text;
                const Result<Typed> read = readLine(site.job(), stock(), text);
                if (!read.ok()) {
                    EXPECT_EQ(inWords(read.problem()).find("' is not a"), std::string::npos)
                        << text << ": " << inWords(read.problem());
                } else if (random.oneIn(2)) {
                    site.make(read.value().change);
                    ++accepted;
                    break;
                }
                text += ' ';
            }
        }
    });
    EXPECT_GT(accepted, std::getenv("SEED") ? 0u : 200u);
}

TEST(ReadLine, SurvivesAnyWords)
{
    const std::vector<std::string> words = {
        "ps1",  "+",      "es1",     "1",    "c1",     "c1.2",   "place",    "pull", "cap",
        "lift", "set",    "18/4",    "cab1", "frame",  "\"",     ":",        "PS1:", "99",
        "-1",   "12m",    "\"a b\"", "wire", "red",    "strike", "splice",   "?",    "k1",
        "move", "remove", "rename",  "\xc3", "1e999m", "nan",    "insulate", "x"};
    forEachSeed(400, [&](Random& random) {
        SmallSite site;
        for (int line = 0; line < 4; ++line) {
            std::string text;
            for (int count = random.between(1, 6); count > 0; --count)
                text += random.oneOf(words) + (random.oneIn(8) ? "" : " ");
            completionsFor(site.job(), stock(), text, random.below(text.size() + 2));
            const Result<Typed> read = readLine(site.job(), stock(), text);
            SCOPED_TRACE(text);
            if (read.ok())
                site.make(read.value().change);
            else
                EXPECT_FALSE(inWords(read.problem()).empty());
        }
    });
}

TEST(MatchingKinds, FindsByALettersOfAnyLanguageBestFirst)
{
    const auto names = [](std::string_view letters, Language language = Language::English) {
        std::string joined;
        for (const Kind* kind : matchingKinds(stock().kinds, letters, language))
            joined += (joined.empty() ? "" : " ") + kind->name;
        return joined;
    };
    const std::string secure = "strike-ac strike-ac-16 strike-fail-secure strike-fail-secure-12 strike-fail-secure-bare "
                               "strike-monitor-fail-secure";
    EXPECT_EQ(names("strike sec"), secure);
    EXPECT_EQ(names("contra sec", Language::Spanish), secure);
    EXPECT_EQ(names("electrica 12", Language::Spanish).substr(0, 20), "strike-fail-safe-12 ");
    EXPECT_EQ(names("rel").substr(0, 5), "relay");
    EXPECT_EQ(names("no such thing"), "");
    EXPECT_EQ(matchingKinds(stock().kinds, " ").size(), stock().kinds.size());
}

} // namespace doorloom
