#include "base/json.h"
#include "catalogue/catalogue.h"
#include "catalogue/kindjson.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

#include <unistd.h>

using namespace doorloom;

namespace {

// Every member of every struct away from its default.
Kind fullKind()
{
    const Condition wet = {{"K1", "JA", "wet"}, {"K1", "JB", "wet"}};
    const auto words = [](const char* en, const char* es) { return Words{en, es}; };
    Kind kind;
    kind.name = "everything-2";
    kind.title = words("Everything", "Todo");
    kind.words = words("All there is.", "");
    kind.family = "logic";
    kind.standing = ValueStanding::Sheet;
    kind.roles = {{"K1",
                   OperatorNature::Relay,
                   words("relay 1", "relé 1"),
                   {{"rest", words("at rest", "en reposo")}, {"in", words("in", "activado")}},
                   "rest",
                   "in",
                   true},
                  {"magnet",
                   OperatorNature::Sensor,
                   words("magnet", "imán"),
                   {{"in", words("near", "cerca")}, {"rest", words("away", "lejos")}},
                   "rest",
                   "rest",
                   false},
                  {"mains",
                   OperatorNature::Mains,
                   words("mains", "red"),
                   {{"on", words("on", "hay")}, {"lost", words("lost", "falta")}},
                   "lost",
                   "on",
                   false}};
    Terminal plus{"+",
                  "+",
                  words("plus", "positivo"),
                  {{}, wet},
                  "RD",
                  {"22 AWG", "14 AWG"},
                  1,
                  Millimetres{6.5},
                  NewtonMetres{0.4},
                  {{wet, words("+ always", "+ siempre")}},
                  ValueStanding::Sheet};
    Terminal minus;
    minus.key = "-";
    minus.printed = "−";
    Terminal in = minus;
    in.key = in.printed = "IN1";
    kind.strips = {{words("supply", "alimentación"), {plus, minus}}, {{}, {in}}};
    kind.options = {{"K1",
                     words("output 1", "salida 1"),
                     {{"wet", words("wet", "con tensión")}, {"dry", words("dry", "seca")}},
                     {{"JA", words("jumper A", "puente A")}, {"JB", {}}},
                     "dry",
                     ValueStanding::CommonPractice}};
    kind.settings = {{"hold",
                      words("hold", "retención"),
                      Setting::Form::Potentiometer,
                      "s",
                      0.5,
                      30,
                      {},
                      5.0,
                      1.0,
                      ValueStanding::Sheet},
                     {"mode",
                      words("mode", "modo"),
                      Setting::Form::Dip,
                      "",
                      0,
                      0,
                      {{"a", words("A", "A")}, {"b", words("B", "B")}},
                      "a",
                      "b",
                      ValueStanding::Memory}};
    kind.parts = {
        {"link", {}, LinkPart{"+", ".p"}, ValueStanding::CommonPractice},
        {"contact", wet,
         ContactPart{"-",
                     ".k",
                     "K1",
                     {"in"},
                     {Amperes{1}, Amperes{2}, Amperes{3}, Amperes{4}, Volts{30}, Volts{1}, Amperes{0.01}},
                     true},
         ValueStanding::Sheet},
        {"load",
         {},
         LoadPart{"+",
                  "-",
                  LoadUse::Lock,
                  true,
                  true,
                  Current::Either,
                  {{Volts{12}, Amperes{0.3}}, {Volts{24}, Amperes{0.15}}},
                  LoadLaw::ConstantPower,
                  Volts{10},
                  Volts{28},
                  Volts{2},
                  Volts{9},
                  Amperes{1},
                  Milliseconds{40},
                  Duty::Intermittent},
         ValueStanding::Sheet},
        {"move",
         {},
         MovePart{"K1",
                  MoveManner::Follows,
                  "load",
                  {{"mains", "on"}, {"magnet", "in"}},
                  {"input"},
                  "magnet",
                  true,
                  Milliseconds{50},
                  Milliseconds{500}},
         ValueStanding::Sheet},
        {"input",
         {},
         DryInputPart{"IN1",
                      "-",
                      Volts{5},
                      Ohms{4700},
                      true,
                      true,
                      true,
                      Ohms{300},
                      {{words("short", "corto"), Ohms{0}, Ohms{100}}}},
         ValueStanding::Sheet},
        {"source",
         {},
         SourcePart{".p",
                    "-",
                    true,
                    true,
                    true,
                    Volts{23},
                    Volts{24},
                    Volts{27.6},
                    Volts{21},
                    Amperes{2.5},
                    "Class 2",
                    {{{"mains", "on"}}, {{"K1", "in"}, {"magnet", "rest"}}}},
         ValueStanding::Sheet},
        {"port", {}, BatteryPortPart{"+", "-", Volts{24}, Amperes{0.5}}, ValueStanding::Sheet},
        {"battery", {}, BatteryPart{"+", "-", Volts{24}, AmpereHours{7}}, ValueStanding::Sheet},
        {"signal", {}, SignalPart{"IN1", "-", "D0"}, ValueStanding::Sheet},
        {"earth", {}, EarthPart{"-"}, ValueStanding::Sheet},
        {"diode", {}, DiodePart{"-", "+", Volts{0.3}}, ValueStanding::Sheet},
        {"resistor", {}, ResistorPart{"IN1", "-", Ohms{8200}}, ValueStanding::Sheet},
        {"suppressor", {}, SuppressorPart{"+", "-", Volts{40}}, ValueStanding::Sheet},
        {"fuse", {}, FusePart{"+", ".q", Amperes{1.1}}, ValueStanding::Sheet}};
    kind.outputs = {{"K1", "K1", "wet", {"+", "-", "IN1"}}};
    kind.lock = Lock{FailMode::StaysPut, "load", true, false, Milliseconds{300}};
    return kind;
}

Json parsed(std::string_view text)
{
    const Result<Json> json = parseJson(text, "kind.json");
    EXPECT_TRUE(json.ok()) << inWords(json.problem());
    return json.ok() ? json.value() : Json{};
}

std::string refusal(std::string_view text)
{
    const Result<Kind> kind = readKind(parsed(text), "kind.json", "");
    return kind.ok() ? "was read" : inWords(kind.problem());
}

// A kind's text around one part.
std::string withPart(const std::string& part)
{
    return "{\"name\": \"k\", \"title\": {\"en\": \"K\"}, \"family\": \"part\",\n\"parts\": [\n" + part +
           "\n]}";
}

} // namespace

TEST(KindJson, ReadsBackEveryMember)
{
    const Kind kind = fullKind();
    ASSERT_TRUE(checkKind(kind).empty()) << inWords(checkKind(kind).front());

    const Result<Kind> back = readKind(parsed(kindText(kind)), "kind.json", "");

    ASSERT_TRUE(back.ok()) << inWords(back.problem());
    EXPECT_EQ(back.value(), kind);
    EXPECT_EQ(kindText(back.value()), kindText(kind));
}

TEST(KindJson, LeavesOutWhatStandsAtItsDefault)
{
    Kind kind;
    kind.name = "k";
    kind.parts = {{"d1", {}, DiodePart{"a", "b"}, ValueStanding::Memory}};
    EXPECT_EQ(
        kindText(kind),
        R"({"name":"k","title":{},"family":"","parts":[{"type":"diode","key":"d1","anode":"a","cathode":"b"}]})");
}

TEST(KindJson, HashFollowsTheContent)
{
    Kind kind = fullKind();
    const std::string before = contentHash(kind);
    EXPECT_EQ(before.size(), 64u);
    EXPECT_EQ(before, contentHash(fullKind()));
    kind.strips[0].terminals[0].clampCapacity = 3;
    EXPECT_NE(contentHash(kind), before);
}

TEST(KindJson, HashIsSha256OfTheText)
{
    // SHA-256 of {"name":"k","title":{},"family":""} by sha256sum of GNU coreutils.
    Kind kind;
    kind.name = "k";
    EXPECT_EQ(contentHash(kind), "554dafe1331499172f00558539e9094206d7600295da749a4c1703e2935b8cee");
}

TEST(KindJson, RefusesKeysThatItDoesNotKnow)
{
    EXPECT_EQ(
        refusal("{\"name\": \"k\",\n \"titel\": {}}"),
        "kind.json, line 2, titel: The key 'titel' is not known here. Take it out or correct it; known here: "
        "name, title, words, family, standing, roles, strips, options, settings, parts, outputs, lock.");
    EXPECT_EQ(refusal(withPart("{\"type\": \"fuse\", \"key\": \"f\", \"a\": \"x\", \"b\": \"y\", "
                               "\"limitAmperes\": 1,\n \"ohms\": 3}")),
              "kind.json, line 4, parts[0].ohms: The key 'ohms' is not known here. Take it out or correct "
              "it; known "
              "here: type, key, when, standing, a, b, limitAmperes.");
}

TEST(KindJson, RefusesWordsThatAreNoMember)
{
    EXPECT_EQ(
        refusal(withPart("{\"type\": \"fuze\"}")),
        "kind.json, line 3, parts[0].type: The word 'fuze' is not known here. Use one of: link, contact, "
        "load, "
        "move, dryInput, source, batteryPort, battery, signal, earth, diode, resistor, suppressor, fuse.");
    EXPECT_EQ(refusal("{\"name\": \"k\", \"title\": {}, \"family\": \"x\",\n\"standing\": \"guess\"}"),
              "kind.json, line 2, standing: The word 'guess' is not known here. Use one of: sheet, "
              "commonPractice, memory.");
}

TEST(KindJson, RefusesValuesOfAnotherType)
{
    EXPECT_EQ(refusal("[]"),
              "kind.json, line 1: Here stands a list, but it should be an object. Write an object.");
    EXPECT_EQ(refusal("{\"name\": 5}"),
              "kind.json, line 1, name: Here stands a number, but it should be a text. Write a text.");
    EXPECT_EQ(refusal("{\"parts\":\n {}}"),
              "kind.json, line 2, parts: Here stands an object, but it should be a list. Write a list.");
    EXPECT_EQ(refusal("{\"lock\": {\"latches\":\n null}}"),
              "kind.json, line 2, lock.latches: Here stands null, but it should be true or false. Write true "
              "or false.");
    EXPECT_EQ(
        refusal(withPart("{\"type\": \"resistor\", \"ohms\": \"8200\"}")),
        "kind.json, line 3, parts[0].ohms: Here stands a text, but it should be a number. Write a number.");
    EXPECT_EQ(refusal("{\"strips\": [{\"terminals\": [{\"clampCapacity\": 1.5}]}]}"),
              "kind.json, line 1, strips[0].terminals[0].clampCapacity: The number 1.5 is out of range. "
              "Write a whole number "
              "from -2147483648 to 2147483647.");
    EXPECT_EQ(refusal("{\"settings\": [{\"factory\": true}]}"),
              "kind.json, line 1, settings[0].factory: Here stands true or false, but it should be a number "
              "or a text. Write a "
              "number or a text.");
}

TEST(KindJson, RefusesWhatIsMissing)
{
    EXPECT_EQ(refusal("{\"title\": {}, \"family\": \"x\"}"),
              "kind.json, line 1: The key 'name' is missing. Add it to this object.");
    EXPECT_EQ(refusal(withPart("{\"key\": \"r\"}")),
              "kind.json, line 3, parts[0]: The key 'type' is missing. Add it to this object.");
    EXPECT_EQ(refusal(withPart("{\"type\": \"link\", \"key\": \"r\", \"a\": \"x\"}")),
              "kind.json, line 3, parts[0]: The key 'b' is missing. Add it to this object.");
}

TEST(KindJson, RefusesConditionsThatNameNoJumper)
{
    EXPECT_EQ(
        refusal(withPart(
            "{\"type\": \"link\", \"key\": \"r\", \"a\": \"x\", \"b\": \"y\", \"when\": {\"K1\": \"wet\"}}")),
        "kind.json, line 3, parts[0].when.K1: 'K1' names no jumper. Write OPTION.JUMPER, such as K1.JA.");
}

namespace {

struct Folder {
    std::filesystem::path path =
        std::filesystem::temp_directory_path() / ("kinds" + std::to_string(::getpid()));

    Folder() { std::filesystem::create_directories(path); }
    ~Folder() { std::filesystem::remove_all(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string write(const std::string& name, const std::string& text) const
    {
        std::ofstream(path / name, std::ios::binary) << text;
        return (path / name).string();
    }
};

} // namespace

TEST(Catalogue, ReadsAFolderInTheOrderOfNames)
{
    const Folder folder;
    for (const char* name : {"relay", "diode", "relay-timed"}) // a file's name sorts "relay-timed.json" first
        folder.write(std::string(name) + ".json",
                     std::string("{\"name\":\"") + name + "\",\"title\":{\"en\":\"X\"},\"family\":\"part\"}");
    folder.write("readme.txt", "no kind");

    const Result<Catalogue> catalogue = readCatalogue(folder.path.string());

    ASSERT_TRUE(catalogue.ok()) << inWords(catalogue.problem());
    ASSERT_EQ(catalogue.value().kinds.size(), 3u);
    EXPECT_EQ(catalogue.value().kinds[0].name, "diode");
    EXPECT_EQ(catalogue.value().find("relay"), &catalogue.value().kinds[1]);
    EXPECT_EQ(catalogue.value().kinds[2].name, "relay-timed");
    EXPECT_EQ(catalogue.value().find("lamp"), nullptr);
}

TEST(Catalogue, IsRefusedWithTheFirstKindThatContradictsItself)
{
    const Folder folder;
    const std::string file = folder.write(
        "diode.json", "{\"name\":\"diode\",\"title\":{\"en\":\"X\"},\"family\":\"part\",\n\"parts\":[{"
                      "\"type\":\"diode\",\"key\":\"d\",\n\"anode\":\"A\",\"cathode\":\".x\"}]}");

    const Result<Catalogue> catalogue = readCatalogue(folder.path.string());

    ASSERT_FALSE(catalogue.ok());
    EXPECT_EQ(inWords(catalogue.problem()), file + ", line 3, parts[0].anode: 'A' is not there. There are "
                                                   "none to choose from: add it, or take this out.");
}

TEST(Catalogue, IsRefusedWhenAFileHasAnotherName)
{
    const Folder folder;
    const std::string file =
        folder.write("relay.json", "{\"name\":\"diode\",\"title\":{\"en\":\"X\"},\"family\":\"part\"}");

    const Result<Catalogue> catalogue = readCatalogue(folder.path.string());

    ASSERT_FALSE(catalogue.ok());
    EXPECT_EQ(inWords(catalogue.problem()), file + ": The kind 'diode' does not bear its file's name. Call "
                                                   "the file diode.json, or the kind as the file.");
}

TEST(Catalogue, IsRefusedWhenTheFolderIsNotThere)
{
    const Result<Catalogue> catalogue = readCatalogue("/nowhere/kinds");
    ASSERT_FALSE(catalogue.ok());
    EXPECT_EQ(inWords(catalogue.problem()),
              "/nowhere/kinds: The catalogue's folder cannot be read: No such file or directory. "
              "Name the folder that holds the kinds (*.json).");
}
