#include "papers/naturalorder.h"
#include "papers/papers.h"
#include "papers/scheduleforms.h"

#include "core/golden.h"
#include "core/papercsv.h"
#include "core/papersite.h"
#include "core/random.h"

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <sstream>

namespace doorloom {
namespace {

using papersite::Site;

const PaperSetup english{Language::English, "0123456789ab"}, spanish{Language::Spanish, "0123456789ab"};

template <class Visit> void forEachRow(const Schedule& schedule, Visit visit)
{
    for (const ScheduleBox& box : schedule.boxes)
        for (const ScheduleBlock& block : box.blocks)
            for (const ScheduleRow& row : block.rows)
                visit(box, block, row);
}

const ScheduleBlock& blockTagged(const Schedule& schedule, const std::string& tag)
{
    for (const ScheduleBox& box : schedule.boxes)
        for (const ScheduleBlock& block : box.blocks)
            if (block.tag == tag && block.kind != BlockKind::LooseEnds)
                return block;
    throw std::runtime_error("no block " + tag);
}

std::string cellOf(const Schedule& schedule, const std::string& device, const std::string& terminal,
                   ScheduleColumn column)
{
    for (const ScheduleRow& row : blockTagged(schedule, device).rows)
        if (row.terminal == terminal)
            return cellsOf(row, Language::English)[column];
    throw std::runtime_error("no terminal " + terminal);
}

// ---- Golden.

TEST(Schedule, ReadsLikeThis)
{
    expectGolden("schedule.txt", textOf(*paperNamed("schedule"), papersite::oneOfEverything(), english));
}

TEST(Schedule, ReadsLikeThisInSpanish)
{
    expectGolden("schedule-es.txt", textOf(*paperNamed("schedule"), papersite::oneOfEverything(), spanish));
}

TEST(Schedule, GivesThisCsv)
{
    expectGolden("schedule.csv", paperNamed("schedule")->csv(papersite::oneOfEverything(), english));
}

// ---- Order.

TEST(Schedule, TakesBoxesFirstThenOtherPlacesThenWhatHasNone)
{
    std::vector<std::string> tags;
    const Schedule schedule = scheduleOf(papersite::oneOfEverything(), "");
    for (const ScheduleBox& box : schedule.boxes)
        tags.push_back(box.tag);
    EXPECT_EQ(tags, (std::vector<std::string>{"CAB1", "FRAME", "WALL", ""}));
}

TEST(Schedule, TakesDevicesAsTheyStandOnTheSheet)
{
    std::vector<std::string> tags;
    const Schedule schedule = scheduleOf(papersite::oneOfEverything(), "");
    for (const ScheduleBlock& block : schedule.boxes[0].blocks)
        if (block.kind == BlockKind::Device)
            tags.push_back(block.tag);
    EXPECT_EQ(tags, (std::vector<std::string>{"PS1", "LM1", "LM2", "TS1"}));
}

TEST(Schedule, TakesDevicesThatAreOnNoSheetByTag)
{
    Site site;
    const PlaceId cabinet = site.place("CAB", "", true);
    for (const char* tag : {"PB10", "PB9", "PB1"})
        site.device(tag, papersite::plate(), cabinet);
    std::vector<std::string> tags;
    const Schedule schedule = scheduleOf(site.job, "");
    for (const ScheduleBlock& block : schedule.boxes[0].blocks)
        tags.push_back(block.tag);
    EXPECT_EQ(tags, (std::vector<std::string>{"PB1", "PB9", "PB10"}));
}

TEST(Schedule, SortsTagsAsPeopleDo)
{
    EXPECT_TRUE(naturallyLess("K2", "K10"));
    EXPECT_FALSE(naturallyLess("K10", "K2"));
    EXPECT_TRUE(naturallyLess("K", "K1"));
    EXPECT_TRUE(naturallyLess("007", "7"));
    EXPECT_FALSE(naturallyLess("7", "007"));
    EXPECT_FALSE(naturallyLess("A1", "A1"));
    EXPECT_TRUE(naturallyLess("A99999999999999999999998", "A99999999999999999999999"));
}

TEST(Schedule, KeepsTheTerminalsInTheOrderPrintedOnTheDevice)
{
    const Schedule schedule = scheduleOf(papersite::oneOfEverything(), "");
    std::vector<std::string> printed;
    for (const ScheduleRow& row : blockTagged(schedule, "LM1").rows)
        if (row.kind != RowKind::Link)
            printed.push_back(row.terminal);
    EXPECT_EQ(printed, (std::vector<std::string>{"+", "−", "COM", "IN1", "IN2", "C", "NO", "NC"}));
}

// ---- What the rows say.

TEST(Schedule, PrintsASignOnlyWithTheJumpersThatMakeIt)
{
    const Schedule schedule = scheduleOf(papersite::oneOfEverything(), "");
    EXPECT_EQ(cellOf(schedule, "LM1", "C", SignColumn), "+ always");
    EXPECT_EQ(cellOf(schedule, "LM2", "C", SignColumn), "+ always");
    EXPECT_EQ(cellOf(schedule, "LM2", "NO", SignColumn), "–");
}

TEST(Schedule, SaysWhatAConductorCarries)
{
    const Schedule schedule = scheduleOf(papersite::oneOfEverything(), "");
    EXPECT_EQ(cellOf(schedule, "PS1", "−", CarriesColumn), "24 V DC −");
    EXPECT_EQ(cellOf(schedule, "LM1", "C", CarriesColumn), "24 V DC +");
    EXPECT_EQ(cellOf(schedule, "LM1", "NO", CarriesColumn),
              "24 V DC − switched"); // the diode brings no plus to it
    EXPECT_EQ(cellOf(schedule, "LM1", "COM", CarriesColumn), "dry (−)");
    EXPECT_EQ(cellOf(schedule, "LM1", "IN1", CarriesColumn), "dry");
    EXPECT_EQ(cellOf(schedule, "CR1", "green", CarriesColumn), "data D0");
}

TEST(Schedule, CallsACommonDryOnlyWhileNothingButDryInputsHangsOnIt)
{
    Site site;
    const DeviceId supply = site.device("PS1", papersite::supply(), {}),
                   module = site.device("LM1", papersite::module(), {}),
                   plate = site.device("PB1", papersite::plate(), {}),
                   strike = site.device("ES1", papersite::strike(), {});
    site.wire("1", "", Site::at(supply, "−"), Site::at(module, "−"));
    site.wire("2", "", Site::at(module, "COM"), Site::at(plate, "C"));
    site.wire("3", "", Site::at(plate, "NO"), Site::at(module, "IN1"));
    EXPECT_EQ(cellOf(scheduleOf(site.job, ""), "PB1", "C", CarriesColumn), "dry (−)");
    site.wire("4", "", Site::at(plate, "C"), Site::at(strike, "1"));
    EXPECT_EQ(cellOf(scheduleOf(site.job, ""), "PB1", "C", CarriesColumn), "24 V DC −");
}

TEST(Schedule, SaysThatAWireIntoADryInputCarriesAForeignPlus)
{
    Site site;
    const DeviceId supply = site.device("PS1", papersite::supply(), {}),
                   module = site.device("LM1", papersite::module(), {}),
                   plate = site.device("PB1", papersite::plate(), {});
    site.wire("1", "", Site::at(supply, "+"), Site::at(plate, "C"));
    site.wire("2", "", Site::at(plate, "NO"), Site::at(module, "IN1"));
    EXPECT_EQ(cellOf(scheduleOf(site.job, ""), "LM1", "IN1", CarriesColumn), "24 V DC + switched");
}

TEST(Schedule, NamesMainsWhateverItIsLandedOn)
{
    int mains = 0;
    forEachRow(scheduleOf(papersite::oneOfEverything(), ""), [&](auto&, auto&, const ScheduleRow& row) {
        if (row.cable == "W10") {
            EXPECT_EQ(inWords(row.carries), "MAINS: licensed person only");
            ++mains;
        }
    });
    EXPECT_EQ(mains, 6);
}

TEST(Schedule, TellsWhichSuppliesMustBeOffBeforeADeviceIsTouched)
{
    Site site;
    const PlaceId cabinet = site.place("CAB", "", true, "P3");
    const DeviceId one = site.device("PS1", papersite::supply(), cabinet),
                   two = site.device("PS2", papersite::supply(), {}),
                   module = site.device("LM1", papersite::module(), {}),
                   plate = site.device("PB1", papersite::plate(), {}),
                   strike = site.device("ES1", papersite::strike(), {}),
                   alone = site.device("ES2", papersite::strike(), {});
    (void)alone;
    site.wire("1", "", Site::at(one, "+"), Site::at(module, "+"));
    site.wire("2", "", Site::at(one, "−"), Site::at(module, "−"));
    site.wire("3", "", Site::at(one, "−"), Site::at(two, "−"));
    site.wire("4", "", Site::at(module, "COM"), Site::at(plate, "C"));
    site.wire("5", "", Site::at(plate, "NO"), Site::at(module, "IN1"));
    site.wire("6", "", Site::at(two, "+"), Site::at(strike, "1"));
    site.wire("7", "", Site::at(strike, "2"), Site::at(module, "NO"));
    site.jumper(module, "K1", "JA", "dry");
    site.jumper(module, "K1", "JB", "dry");
    const Schedule schedule = scheduleOf(site.job, "");
    const auto first = [&](const char* tag) { return inWords(blockTagged(schedule, tag).before.front()); };
    const std::string both =
        "OFF FIRST, then prove dead: PS1 (breaker P3), its battery unplugged; PS2, its battery unplugged.";
    EXPECT_EQ(first("ES1"), "OFF FIRST, then prove dead: PS2, its battery unplugged.");
    EXPECT_EQ(first("LM1"), both); // PS2 comes through the strike
    EXPECT_EQ(first("PB1"), both); // whatever feeds the module whose input it works
    EXPECT_EQ(first("ES2"), "No supply reaches it on these sheets: prove dead all the same.");
}

TEST(Schedule, PutsAWaitingEndWhereTheOtherEndOfItsCableIsNot)
{
    Site site;
    const PlaceId cabinet = site.place("CAB", "", true), wall = site.place("WALL", "", false);
    const DeviceId plate = site.device("PB1", papersite::plate(), wall);
    const CableId cable = site.cable("W1", site.cableType("18/2", {"RD", "WH"}), cabinet, wall);
    site.core(cable, 1, Site::at(plate, "C"), {EndState::Waiting, {}}); // drawn from the wall to the cabinet
    forEachRow(scheduleOf(site.job, ""), [&](const ScheduleBox& box, auto&, const ScheduleRow& row) {
        if (row.kind == RowKind::Waiting) {
            EXPECT_EQ(box.tag, "CAB");
        }
    });
}

TEST(Schedule, NamesJumpersThatDisagreeOrAreNotChosen)
{
    Site site;
    const DeviceId module = site.device("LM1", papersite::module(), {});
    const auto line = [&] {
        const Schedule schedule = scheduleOf(site.job, "");
        return inWords(blockTagged(schedule, "LM1").before[1]);
    };
    EXPECT_EQ(line(),
              "SET FIRST, power off: relay 1 output: JA NOT CHOSEN, JB NOT CHOSEN †. Ask before power.");
    site.jumper(module, "K1", "JA", "wet");
    site.jumper(module, "K1", "JB", "dry");
    EXPECT_EQ(
        line(),
        "SET FIRST, power off: relay 1 output: JA wet, JB dry †. THE JUMPERS DISAGREE: ask before power.");
}

TEST(Schedule, MakesUpANameForASpliceWithoutATagOrWithOneThatIsTaken)
{
    Site site;
    site.device("SP1", papersite::plate(), {});
    for (const char* tag : {"", "SP1", ""}) {
        Splice splice;
        splice.tag = tag;
        site.put(splice);
    }
    std::set<std::string> names;
    const Schedule schedule = scheduleOf(site.job, "");
    for (const ScheduleBlock& block : schedule.boxes.at(0).blocks)
        names.insert(block.tag);
    EXPECT_EQ(names, (std::set<std::string>{"SP1", "SP1 2", "splice 1", "splice 2"}));
}

TEST(Schedule, HasNothingToSayOfAnEmptyJob)
{
    const Schedule schedule = scheduleOf(Job{}, "");
    EXPECT_TRUE(schedule.boxes.empty());
    EXPECT_NE(scheduleText(schedule, Language::English).find("Nothing to count back."), std::string::npos);
}

// ---- Every landing once, on random jobs.

struct AnyEnd {
    std::uint32_t conductor;
    WhichEnd which;
    friend auto operator<=>(const AnyEnd&, const AnyEnd&) = default;
};

End randomEnd(Random& random, const Job& job, const std::vector<DeviceId>& devices,
              const std::vector<SpliceId>& splices)
{
    const int sort = random.between(0, 9);
    if (sort < 6) {
        const DeviceId device = random.oneOf(devices);
        const auto terminals = terminalsOf(*kindOf(job, device));
        if (!terminals.empty())
            return Site::at(device, random.oneOf(terminals)->key);
    }
    if (sort == 6)
        return Site::at(random.oneOf(splices));
    return {std::vector{EndState::Waiting, EndState::Spare, EndState::Insulated}[random.below(3)], {}};
}

Job randomJob(Random& random)
{
    Site site;
    std::vector<PlaceId> places = {{}};
    for (int count = random.between(0, 3); count > 0; --count)
        places.push_back(
            site.place("P" + std::to_string(count), random.oneIn(3) ? "" : "somewhere", random.oneIn(2)));
    std::vector<DeviceId> devices;
    for (int count = random.between(1, 8); count > 0; --count) {
        devices.push_back(site.device("D" + std::to_string(count), random.oneOf(papersite::kinds()),
                                      random.oneOf(places), "", static_cast<Standing>(random.below(5))));
        const Device device = *site.job.devices.find(devices.back());
        for (const Choice& choice : device.choices)
            site.jumper(device.id, choice.option, choice.jumper,
                        std::vector<Key>{"wet", "dry", ""}[random.below(3)]);
    }
    std::vector<SpliceId> splices;
    for (int count = random.between(1, 2); count > 0; --count) {
        Splice splice;
        splice.tag = random.oneIn(2) ? "" : "D" + std::to_string(count);
        splice.place = random.oneOf(places);
        splices.push_back(site.put(splice));
    }
    const CableTypeId type = site.cableType("18/4", {"RD", "BK", "GN", "WH+BU"}, random.oneIn(2));
    for (int count = random.between(0, 4); count > 0; --count) {
        const CableId cable =
            site.cable("W" + std::to_string(count), type, random.oneOf(places), random.oneOf(places));
        for (int core = 1; core <= 4; ++core)
            site.core(cable, core, randomEnd(random, site.job, devices, splices),
                      randomEnd(random, site.job, devices, splices));
    }
    for (int count = random.between(0, 6); count > 0; --count)
        site.wire(random.oneIn(2) ? "" : "+" + std::to_string(count), random.oneIn(2) ? "RD" : "=\"odd\"",
                  randomEnd(random, site.job, devices, splices),
                  randomEnd(random, site.job, devices, splices),
                  random.oneIn(4) ? ConductorMake::Lead : ConductorMake::Wire,
                  static_cast<Standing>(random.below(5)));
    return site.job;
}

TEST(Schedule, HoldsEveryConductorEndOnceAndEveryTerminalOnItsOwnDevice)
{
    forEachSeed(200, [](Random& random) {
        const Job job = randomJob(random);
        std::map<AnyEnd, int> seen;
        std::map<std::pair<std::string, std::string>, int> rowsOf;
        Counts counts;
        const Schedule schedule = scheduleOf(job, "");
        forEachRow(schedule, [&](const ScheduleBox&, const ScheduleBlock& block, const ScheduleRow& row) {
            if (row.conductor) {
                ++seen[{row.conductor.number, row.end}];
                const Conductor& conductor = *job.conductors.find(row.conductor);
                const End& end = row.end == WhichEnd::From ? conductor.from : conductor.to;
                EXPECT_EQ(row.kind == RowKind::Landing, end.state == EndState::Landed);
                if (const Landing* landing = landingOf(end)) {
                    EXPECT_EQ(nameOf(job, *landing), block.tag + ":" + row.terminal);
                }
            }
            if (block.kind == BlockKind::Device)
                ++rowsOf[{block.tag, row.terminal}];
            counts.landings += row.kind == RowKind::Landing;
            counts.empties += row.kind == RowKind::Empty;
            for (const std::string& cell : cellsOf(row, Language::Spanish))
                EXPECT_FALSE(cell.empty());
        });
        EXPECT_EQ(seen.size(), 2 * job.conductors.size());
        for (const auto& [end, times] : seen)
            EXPECT_EQ(times, 1);
        for (const Device& device : job.devices)
            for (const Terminal* terminal : terminalsOf(*kindOf(job, device)))
                EXPECT_GE((rowsOf[{device.tag, terminal->printed}]), 1);
        EXPECT_EQ(schedule.counts.landings, counts.landings);
        EXPECT_EQ(schedule.counts.empties, counts.empties);
    });
}

// ---- The CSV read back without the job.

using Spot = std::pair<std::string, std::string>; // device or splice, terminal as printed
using Wiring = std::multiset<std::tuple<Spot, Spot, std::string, std::string, std::string, std::string>>;
struct ReadBack {
    Wiring wiring;                                                       // with tag, cable, core, colour
    std::map<std::string, std::tuple<std::string, std::string>> devices; // kind, options
    friend bool operator==(const ReadBack&, const ReadBack&) = default;
};

Spot spotOf(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        return {tagOf(job, landing->device),
                findTerminal(*kindOf(job, landing->device), landing->terminal)->printed};
    return {};
}

std::pair<Spot, Spot> inOrder(Spot a, Spot b)
{
    return a < b ? std::pair(a, b) : std::pair(b, a);
}

ReadBack wiringOf(const Job& job)
{
    ReadBack read;
    for (const Conductor& conductor : job.conductors) {
        if (!landingOf(conductor.from) || !landingOf(conductor.to))
            continue; // splices have names of the schedule's own: compared by their joined landings below
        const auto [a, b] = inOrder(spotOf(job, conductor.from), spotOf(job, conductor.to));
        const Cable* cable = job.cables.find(conductor.cable);
        read.wiring.emplace(a, b, conductor.tag, cable ? cable->tag : "",
                            conductor.core ? std::to_string(conductor.core) : "", colourOf(job, conductor));
    }
    for (const Device& device : job.devices) {
        std::string options;
        for (const Choice& choice : device.choices)
            options +=
                (options.empty() ? "" : "; ") + choice.option + "." + choice.jumper + "=" + choice.value;
        read.devices[device.tag] = {kindOf(job, device)->name, options};
    }
    return read;
}

ReadBack readBack(const std::string& csv)
{
    const auto records = papercsv::readRecords(csv);
    std::set<std::string> splices;
    for (const auto& record : records)
        if (record.at("kind").empty() && !record.at("device").empty())
            splices.insert(record.at("device"));
    ReadBack read;
    std::map<std::tuple<Spot, Spot, std::string, std::string, std::string, std::string>, int> halves;
    for (const auto& record : records) {
        if (!record.at("kind").empty())
            read.devices[record.at("device")] = {record.at("kind"), record.at("options")};
        if (record.at("row") != "landing" || record.at("far_state") != "landed" ||
            splices.contains(record.at("device")) || splices.contains(record.at("far_device")))
            continue;
        const auto [a, b] = inOrder({record.at("device"), record.at("terminal")},
                                    {record.at("far_device"), record.at("far_terminal")});
        ++halves[{a, b, record.at("conductor"), record.at("cable"), record.at("core"), record.at("colour")}];
    }
    for (const auto& [wire, times] : halves) {
        EXPECT_EQ(times % 2, 0) << "a conductor is listed at one of its ends alone";
        for (int time = 0; time < times / 2; ++time)
            read.wiring.insert(wire);
    }
    return read;
}

// What a splice joins, as sorted lists of terminals: its name does not matter.
std::multiset<std::vector<Spot>> joinedBySplices(const Job& job)
{
    std::map<std::uint32_t, std::vector<Spot>> joined;
    for (const Conductor& conductor : job.conductors)
        for (const auto& [here, there] :
             {std::pair(&conductor.from, &conductor.to), std::pair(&conductor.to, &conductor.from)})
            if (const SpliceId* splice = spliceOf(*here); splice && landingOf(*there))
                joined[splice->number].push_back(spotOf(job, *there));
    std::multiset<std::vector<Spot>> all;
    for (auto& [splice, spots] : joined) {
        std::sort(spots.begin(), spots.end());
        all.insert(spots);
    }
    return all;
}

std::multiset<std::vector<Spot>> joinedBySplices(const std::string& csv)
{
    std::map<std::string, std::vector<Spot>> joined;
    for (const auto& record : papercsv::readRecords(csv))
        if (record.at("kind").empty() && record.at("row") == "landing" && !record.at("far_terminal").empty())
            joined[record.at("device")].emplace_back(record.at("far_device"), record.at("far_terminal"));
    std::multiset<std::vector<Spot>> all;
    for (auto& [splice, spots] : joined) {
        std::sort(spots.begin(), spots.end());
        all.insert(spots);
    }
    return all;
}

TEST(Schedule, GivesACsvFromWhichTheWiringIsBuiltAgain)
{
    const Job job = papersite::oneOfEverything();
    const std::string csv = paperNamed("schedule")->csv(job, english);
    EXPECT_EQ(readBack(csv), wiringOf(job));
    EXPECT_EQ(joinedBySplices(csv), joinedBySplices(job));
    EXPECT_EQ(readBack(csv).wiring.size(), 10u);
    EXPECT_EQ(joinedBySplices(csv).size(), 1u);
}

TEST(Schedule, GivesSuchACsvOfAnyJob)
{
    forEachSeed(200, [](Random& random) {
        const Job job = randomJob(random);
        const std::string csv = paperNamed("schedule")->csv(job, spanish);
        EXPECT_EQ(readBack(csv), wiringOf(job));
        EXPECT_EQ(joinedBySplices(csv), joinedBySplices(job));
    });
}

// ---- The table of papers.

TEST(Papers, HaveNamesThatAreTheirOwnAndWordsInEveryLanguage)
{
    std::set<std::string_view> names;
    for (const Paper* paper : allPapers()) {
        EXPECT_TRUE(names.insert(paper->name).second) << paper->name;
        EXPECT_FALSE(paper->title.en.empty());
        EXPECT_FALSE(paper->title.es.empty());
        EXPECT_EQ(paperNamed(paper->name), paper);
        EXPECT_NE(namesOfPapers().find(paper->name), std::string::npos);
    }
    EXPECT_EQ(paperNamed("napkin"), nullptr);
}

TEST(Papers, SayEveryCautionInBothLanguages)
{
    const std::string text = textOf(*paperNamed("schedule"), papersite::oneOfEverything(), spanish);
    for (const Message& caution : cautions())
        for (const Language language : {Language::English, Language::Spanish})
            EXPECT_NE(text.find(inWords(caution, language)), std::string::npos) << inWords(caution, language);
}

TEST(Papers, SayWhenTheJobHasNoTitle)
{
    for (const Paper* paper : allPapers())
        EXPECT_NE(textOf(*paper, Job(), english).find(": a job without a title yet\n"), std::string::npos) << paper->name;
}

TEST(Papers, CarryRevisionAndDigest)
{
    for (const Paper* paper : allPapers())
        EXPECT_NE(textOf(*paper, papersite::oneOfEverything(), english)
                      .find("Revision B · digest 0123456789ab · destroy"),
                  std::string::npos)
            << paper->name;
}

} // namespace
} // namespace doorloom
