#include "base/json.h"
#include "catalogue/catalogue.h"
#include "catalogue/kindjson.h"
#include "core/fullkind.h"
#include "core/heldagainstschema.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

#include <unistd.h>

using namespace doorloom;

namespace {

Json parsed(std::string_view text)
{
    const Result<Json> json = parseJson(text, "kind.json");
    EXPECT_TRUE(json.ok()) << inWords(json.problem());
    return json.ok() ? json.value() : Json{};
}

std::string refusal(std::string_view text)
{
    test::holdAgainstSchema(test::Schema::Kind, std::string(text));
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
        "move, dryInput, source, batteryPort, battery, signal, earth, mains, diode, resistor, suppressor, fuse.");
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
