#include "tools/samplejobs.h"

#include "edit/change.h"
#include "edit/typicals.h"
#include "file/jobfile.h"
#include "judge/findings.h"
#include "judge/findingtext.h"
#include "judge/report.h"
#include "sheet/tidy.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

namespace doorloom {
namespace {

const std::vector<Sample>& samples()
{
    static const std::vector<Sample> drawn = [] {
        const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
        EXPECT_TRUE(catalogue.ok()) << (catalogue.ok() ? "" : inWords(catalogue.problem()));
        return catalogue.ok() ? sampleJobs(catalogue.value()) : std::vector<Sample>{};
    }();
    return drawn;
}

const Job& sample(const std::string& name)
{
    const auto found =
        std::find_if(samples().begin(), samples().end(), [&](const Sample& one) { return one.name == name; });
    EXPECT_NE(found, samples().end()) << name;
    return found->job;
}

std::string bytesOf(const std::string& path)
{
    std::ifstream file(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

std::vector<const Landing*> landingsOf(const Conductor& conductor)
{
    std::vector<const Landing*> landings;
    for (const End* end : {&conductor.from, &conductor.to})
        if (const Landing* landing = landingOf(*end))
            landings.push_back(landing);
    return landings;
}

// Two edits may be the same to whoever makes them: then one is offered.
TEST(Samples, AreMendedByRemediesThatReadDifferently)
{
    std::size_t remedies = 0;
    for (const Sample& one : samples())
        for (const Finding& finding : findingsOf(one.job, windowBudget)) {
            std::set<std::string> words;
            for (const Remedy& remedy : finding.remedies)
                EXPECT_TRUE(words.insert(inWords(remedy.words)).second) << one.name << ": " << inWords(remedy.words);
            remedies += words.size();
        }
    EXPECT_GT(remedies, 4u);
}

TEST(Samples, AreTheFilesThatTheProgramWrites)
{
    for (const Sample& one : samples())
        EXPECT_TRUE(bytesOf(SOURCE_FOLDER "/samples/" + one.name + ".doorjob") == jobText(one.job))
            << one.name << " differs: run make_samples " SOURCE_FOLDER "/resources/catalogue " SOURCE_FOLDER
            << "/samples and read the difference";
}

TEST(Samples, ReadBackEqualAndKeepEveryPromiseOfTheModel)
{
    for (const Sample& one : samples()) {
        const Result<Job> read = readJobFile(SOURCE_FOLDER "/samples/" + one.name + ".doorjob");
        ASSERT_TRUE(read.ok()) << inWords(read.problem());
        EXPECT_TRUE(read.value() == one.job) << one.name;
        for (const Problem& problem : verifyJob(read.value()))
            ADD_FAILURE() << one.name << ": " << inWords(problem);
    }
}

TEST(Samples, EveryConductorIsACoreOrAWireInsideOneBox)
{
    for (const Sample& one : samples())
        for (const Conductor& conductor : one.job.conductors) {
            if (conductor.make == ConductorMake::Core) {
                const Cable* cable = one.job.cables.find(conductor.cable);
                for (const Landing* landing : landingsOf(conductor)) {
                    const PlaceId place = one.job.devices.find(landing->device)->place;
                    const bool isFrom = landing == landingOf(conductor.from);
                    EXPECT_EQ(place, isFrom ? cable->from : cable->to) << one.name << ": " << conductor.tag;
                }
                continue;
            }
            const std::vector<const Landing*> ends = landingsOf(conductor);
            ASSERT_EQ(ends.size(), 2u) << one.name << ": " << conductor.tag;
            EXPECT_EQ(one.job.devices.find(ends[0]->device)->place, one.job.devices.find(ends[1]->device)->place)
                << one.name << ": " << conductor.tag;
            EXPECT_FALSE(conductor.colour.empty()) << conductor.tag;
            EXPECT_FALSE(conductor.gauge.empty()) << conductor.tag;
            EXPECT_GT(conductor.length.value, 0) << conductor.tag;
        }
}

TEST(Samples, NoEndWaitsAndEverySpareCoreIsCappedAtBothEnds)
{
    for (const std::string name : {"restroom-public", "restroom-staff"})
        for (const Conductor& conductor : sample(name).conductors) {
            EXPECT_NE(conductor.from.state, EndState::Waiting) << name << ": " << conductor.tag;
            EXPECT_NE(conductor.to.state, EndState::Waiting) << name << ": " << conductor.tag;
            EXPECT_EQ(conductor.from.state == EndState::Spare, conductor.to.state == EndState::Spare)
                << name << ": " << conductor.tag;
        }
}

TEST(Samples, NoClampHoldsMoreThanItTakesOrAThicknessThatItDoesNot)
{
    for (const Sample& one : samples()) {
        std::map<std::pair<DeviceId, Key>, int> held;
        for (const Conductor& conductor : one.job.conductors)
            for (const Landing* landing : landingsOf(conductor)) {
                ++held[{landing->device, landing->terminal}];
                const Terminal* terminal = findTerminal(*kindOf(one.job, landing->device), landing->terminal);
                const int gauge = std::stoi(gaugeOf(one.job, conductor)); // AWG: a larger number is thinner
                EXPECT_LE(gauge, std::stoi(terminal->wire.thinnest)) << one.name << ": " << nameOf(one.job, *landing);
                EXPECT_GE(gauge, std::stoi(terminal->wire.thickest)) << one.name << ": " << nameOf(one.job, *landing);
            }
        for (const auto& [at, count] : held)
            EXPECT_LE(count, findTerminal(*kindOf(one.job, at.first), at.second)->clampCapacity)
                << one.name << ": " << nameOf(one.job, Landing{at.first, at.second});
    }
}

TEST(Samples, RedIsNeverOnASupplysMinusNorAnotherColourOnItsPlus)
{
    for (const std::string name : {"restroom-public", "restroom-staff"}) {
        const Job& job = sample(name);
        for (const Conductor& conductor : job.conductors)
            for (const Landing* landing : landingsOf(conductor)) {
                const std::string tag = tagOf(job, landing->device);
                const std::string colour = colourOf(job, conductor);
                if (tag == "TSN" || nameOf(job, *landing) == "PS1:−") {
                    EXPECT_NE(colour, "RD") << name << ": " << conductor.tag;
                }
                if (tag == "TSP" || nameOf(job, *landing) == "PS1:+") {
                    EXPECT_EQ(colour, "RD") << name << ": " << conductor.tag;
                }
            }
    }
}

TEST(Samples, HaveDifferentFailModesAndTellTheirModuleSo)
{
    const auto lockOf = [](const std::string& name) {
        return kindOf(sample(name), *deviceTagged(sample(name), "ES1"))->lock->failMode;
    };
    const auto modeOf = [](const std::string& name) {
        return settingOf(*deviceTagged(sample(name), "LM1"), "mode");
    };
    EXPECT_EQ(lockOf("restroom-public"), FailMode::Safe);
    EXPECT_EQ(modeOf("restroom-public"), SettingValue("normally-unlocked"));
    EXPECT_EQ(lockOf("restroom-staff"), FailMode::Secure);
    EXPECT_EQ(modeOf("restroom-staff"), SettingValue("normally-locked"));
}

TEST(Samples, TheDoorSwitchMovesWithItsOpeningsDoor)
{
    for (const Sample& one : samples()) {
        ASSERT_EQ(one.job.openings.size(), one.name == "boarding-house-forty" ? 40u : one.name == "vestibule" ? 2u : 1u) << one.name;
        if (const Device* reed = deviceTagged(one.job, "DPS1")) {
            EXPECT_EQ(boundTo(*reed, "door"), one.job.openings.begin()->door) << one.name;
        } else {
            EXPECT_FALSE(one.name.starts_with("restroom")) << one.name;
        }
    }
}

TEST(Samples, TheBoardingHousesRoomsAreTheirTypicalsButForBreakersAndTwoLengths)
{
    const Job& job = sample("boarding-house-forty");
    Numbers numbers(job);
    const Result<DoorChanges> changes = changesForStamps(job, numbers, job.typicals.begin()->id);
    ASSERT_TRUE(changes.ok());
    EXPECT_EQ(changes.value().doors.size(), 39u);
    std::vector<std::string> breakers, others;
    for (const DoorChange& door : changes.value().doors)
        for (const DoorLine& line : door.lines) {
            EXPECT_EQ(line.sort, DoorLineSort::Own);
            const std::string words = inWords(line.words);
            (words.find("breaker") == std::string::npos ? others : breakers).push_back(words);
        }
    ASSERT_EQ(breakers.size(), 30u);
    EXPECT_EQ(breakers.back(), "140-CAB: breaker is 'L1-14' here; the typical has 'L1-8'.");
    EXPECT_EQ(others, (std::vector<std::string>{"120-W1: length is 8.5 m here; the typical has 5 m.",
                                                "140-W1: length is 8.5 m here; the typical has 5 m."}));
}

TEST(Samples, TheVestibuleAndTheBoardingHouseAreTidy)
{
    for (const std::string name : {"vestibule", "boarding-house-forty"}) {
        const Result<Change> tidied = tidySheets(sample(name));
        ASSERT_TRUE(tidied.ok());
        EXPECT_TRUE(tidied.value().steps.empty()) << name;
    }
}

TEST(Samples, TheBrokenGateAndArchiveAreOneChangeAway)
{
    for (const std::string name : {"yard-gate", "archive-room"})
        EXPECT_EQ(difference(sample(name), sample(name + "-broken")).steps.size(), 1u) << name;
}

TEST(Samples, ABrokenCopyIsAFewEditsAwayFromItsRightJob)
{
    for (const std::string name : {"restroom-public", "restroom-staff"}) {
        const Change edits = difference(sample(name), sample(name + "-broken"));
        EXPECT_GE(edits.steps.size(), 3u) << name;
        EXPECT_LE(edits.steps.size(), 5u) << name;
        for (const Step& step : edits.steps)
            EXPECT_TRUE(std::holds_alternative<Put<Conductor>>(step) || std::holds_alternative<Put<Device>>(step))
                << name;
    }
}

// "danger shorted PS1 [PB1=pressed]", its lines below it.
std::vector<std::string> told(const Job& job, const std::vector<Finding>& findings, const std::string& before = {})
{
    std::vector<std::string> all;
    for (const Finding& finding : findings) {
        all.push_back(before + std::string(severityKey(finding.severity)) + " " + ruleOf(finding) + " " +
                      atText(job, finding) + " [" + throwsKey(job, finding) + "]");
        const std::vector<std::string> lines = told(job, finding.lines, before + "- ");
        all.insert(all.end(), lines.begin(), lines.end());
    }
    return all;
}

TEST(Samples, NothingIsSaidOfTheRightOnes)
{
    for (const std::string name : {"restroom-public", "restroom-staff", "yard-gate", "archive-room", "boarding-house-forty", "vestibule"}) {
        const CheckResult result = checkJob(sample(name));
        EXPECT_EQ(told(sample(name), result.findings), std::vector<std::string>{}) << name;
        EXPECT_TRUE(result.everyQuestionAnswered) << name;
    }
}

TEST(Samples, OnlyTheNumbersFindTheBrokenGate)
{
    const Job& job = sample("yard-gate-broken");
    EXPECT_EQ(told(job, findingsOf(job)), (std::vector<std::string>{"fault under-voltage ES1 [KS1=on]"}));
}

TEST(Samples, TheBrokenArchiveRoomHasAReleaseThatOpensNothing)
{
    const Job& job = sample("archive-room-broken");
    const std::vector<std::string> findings = told(job, findingsOf(job));
    EXPECT_EQ(findings.front(), "danger direct-release EB1 [EB1=pressed]");
    EXPECT_EQ(std::count_if(findings.begin(), findings.end(), [](const std::string& each) { return !each.starts_with("- "); }), 1);
}

TEST(Samples, TheBrokenPublicRestroomShowsThreeRoots)
{
    const Job& job = sample("restroom-public-broken");
    EXPECT_EQ(told(job, findingsOf(job)),
              (std::vector<std::string>{
                  "danger shorted PS1 [PB1=pressed]",
                  "danger wet-output LM1:K1 []",
                  "- fault never-fed ES1 []",
                  "- danger wrong-in-situation ES1 [occupied]",
                  "- danger wrong-in-situation ES1 [request outside wave, not answered while occupied]",
                  "fault never-fed WI1 []",
              }));
}

TEST(Samples, TheBrokenStaffRestroomShowsThreeRoots)
{
    const Job& job = sample("restroom-staff-broken");
    EXPECT_EQ(told(job, findingsOf(job)),
              (std::vector<std::string>{
                  "danger shorted PS1 [KS1=on]",
                  "- fault operator-in-situation DO1:ACT [request staff key]",
                  "- fault wrong-in-situation ES1 [request staff key]",
                  "fault wet-output LM1:K1 []",
                  "- fault never-fed ES1 []",
                  "- fault wrong-in-situation ES1 [request inside plate]",
                  "- fault wrong-in-situation ES1 [request outside wave]",
                  "fault never-fed PB1 []",
              }));
}

bool isDryInput(const Job& job, const Landing& landing)
{
    const std::vector<Part>& parts = kindOf(job, landing.device)->parts;
    return std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
        const auto* input = std::get_if<DryInputPart>(&part.body);
        return input && input->terminal == landing.terminal;
    });
}

// An input with nothing landed is silent: it may be a spare one.
TEST(Samples, AnyOtherConductorThatIsCappedByMistakeIsMissed)
{
    for (const std::string name : {"restroom-public", "restroom-staff"})
        for (const Conductor& conductor : sample(name).conductors) {
            const std::vector<const Landing*> landings = landingsOf(conductor);
            if (landings.size() < 2 || isDryInput(sample(name), *landings[0]) || isDryInput(sample(name), *landings[1]))
                continue;
            Conductor capped = conductor;
            capped.from = capped.to = {EndState::Spare, {}};
            Job job = sample(name);
            Change change;
            change.steps.push_back(Put<Conductor>{capped.id, capped});
            ASSERT_TRUE(applyChange(job, change).ok());
            const std::vector<Finding> findings = findingsOf(job);
            EXPECT_TRUE(std::any_of(findings.begin(), findings.end(),
                                    [](const Finding& finding) { return finding.severity >= Severity::Fault; }))
                << name << ": " << conductor.tag;
        }
}

} // namespace
} // namespace doorloom
