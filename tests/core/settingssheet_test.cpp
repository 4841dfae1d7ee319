#include "papers/papers.h"
#include "papers/settingssheet.h"

#include "core/golden.h"
#include "core/jobs.h"
#include "core/papercsv.h"
#include "core/papersite.h"

#include <gtest/gtest.h>

#include <map>

namespace doorloom {
namespace {

const PaperSetup english{Language::English, "0123456789ab"};

TEST(SettingsSheet, ReadsLikeThis)
{
    expectGolden("settings.txt", textOf(*paperNamed("settings"), papersite::oneOfEverything(), english));
    expectGolden("settings-es.txt", textOf(*paperNamed("settings"), papersite::oneOfEverything(), {Language::Spanish, "0123456789ab"}));
}

SettingLine jumper(std::optional<std::size_t> position)
{
    SettingLine line;
    line.isJumper = true;
    line.positions = {{"wet", "con tensión"}, {"dry", "sin tensión"}};
    line.position = position;
    return line;
}

TEST(SettingsSheet, DrawsAJumperOverItsPinsAndNoneWhereItIsNotChosen)
{
    EXPECT_EQ(pictureOf(jumper(0), Language::English), "[■■]□  ◉ wet  ○ dry");
    EXPECT_EQ(pictureOf(jumper(1), Language::Spanish), "□[■■]  ○ con tensión  ◉ sin tensión");
    EXPECT_EQ(pictureOf(jumper({}), Language::English), "□□□  ○ wet  ○ dry");
}

TEST(SettingsSheet, DrawsADialFromItsLeastToItsMost)
{
    SettingLine dial;
    dial.least = 1;
    dial.most = 31;
    dial.unit = "s";
    dial.number = 1;
    EXPECT_EQ(pictureOf(dial, Language::English), "1 ├●──────────┤ 31 s");
    dial.number = 16;
    EXPECT_EQ(pictureOf(dial, Language::English), "1 ├─────●─────┤ 31 s");
    dial.number = 99; // out of its range: at its end
    EXPECT_EQ(pictureOf(dial, Language::English), "1 ├──────────●┤ 31 s");
    dial.number.reset();
    EXPECT_EQ(pictureOf(dial, Language::English), "–");
}

std::map<std::string, std::string> toldOf(const Job& job, const std::string& jumper)
{
    for (const auto& record : papercsv::readRecords(paperNamed("settings")->csv(job, english)))
        if (record.at("device") == "LM1" && record.at("jumper") == jumper)
            return record;
    return {};
}

TEST(SettingsSheet, SaysWhatMustBeChangedFromTheFactoryAndWhatDisagrees)
{
    papersite::Site site;
    Kind kind = papersite::module();
    kind.options[0].factory = "dry";
    const DeviceId module = site.device("LM1", kind, site.place("CAB1", "", true));
    site.jumper(module, "K1", "JA", "wet");
    site.jumper(module, "K1", "JB", "dry");
    EXPECT_EQ(toldOf(site.job, "JA").at("change"), "yes");
    EXPECT_EQ(toldOf(site.job, "JB").at("change"), "no");
    EXPECT_EQ(toldOf(site.job, "JA").at("disagrees"), "yes");
    site.jumper(module, "K1", "JB", "wet");
    EXPECT_EQ(toldOf(site.job, "JA").at("disagrees"), "no");
    EXPECT_EQ(toldOf(site.job, "").at("set_to"), "6 s"); // nobody chose: as from the factory
    EXPECT_EQ(toldOf(site.job, "").at("change"), "no");
    const std::string text = textOf(*paperNamed("settings"), site.job, english);
    EXPECT_NE(text.find("CHANGE"), std::string::npos);
    EXPECT_NE(text.find("SET WITH POWER OFF"), std::string::npos);
}

TEST(SettingsSheet, OfAJobWithoutSettingsSaysSo)
{
    EXPECT_NE(textOf(*paperNamed("settings"), Job{}, english).find("No device has anything to set."), std::string::npos);
}

// By "DEVICE what": what the rules about settings advise.
std::map<std::string, std::string> advised(const Job& job)
{
    std::map<std::string, std::string> advice;
    for (const auto& record : papercsv::readRecords(paperNamed("settings")->csv(job, english)))
        if (!record.at("advice").empty())
            advice[record.at("device") + " " + record.at("what")] = record.at("advice");
    return advice;
}

using Advice = std::map<std::string, std::string>;

TEST(SettingsSheet, SaysWhatToSetLongerOrFurtherApart)
{
    const auto adviceFor = [](double hold, double spacing) {
        OpeningSketch door{.locks = {}, .doorOperators = {"DO1"}, .requests = {{"wave", "WO1=waved"}}};
        JobBuilder job(Clamps::Roomy);
        job.device("PS1", "dc-supply-24").device("WO1", "wave-actuator").device("DO1", "door-operator");
        job.wires("PS1:+ → WO1:+; PS1:− → WO1:−; WO1:C → DO1:ACOM; WO1:NO → DO1:ACT").opening(door);
        return advised(job.setting("WO1", "hold", hold).setting("WO1", "spacing", spacing).job());
    };
    EXPECT_EQ(adviceFor(1, 304),
              (Advice{{"WO1 contact stays closed for", "SET OVER 1 s: it asks DO1"},
                      {"WO1 centre to centre to the next touchless actuator on its wall", "SET 305 mm APART"}}));
    EXPECT_EQ(adviceFor(1.5, 305), Advice());
}

TEST(SettingsSheet, SaysWhereAFunctionIsStillToBeChosen)
{
    Kind module = catalogueKind("relay-module-negative");
    for (Setting& setting : module.settings)
        if (setting.key == "mode") {
            setting.values.push_back({"none", {"no function", "sin función"}});
            setting.factory = "none";
        }
    JobBuilder job(Clamps::Roomy);
    job.device("LM1", module);
    EXPECT_EQ(advised(job.job()), (Advice{{"LM1 what the room does at rest", "CHOOSE: as it stands, nothing happens"}}));
    EXPECT_EQ(advised(job.setting("LM1", "mode", "normally-locked").job()), Advice());
}

} // namespace
} // namespace doorloom
