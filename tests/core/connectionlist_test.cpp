#include "file/connectionlist.h"

#include "core/jobs.h"
#include "core/program.h"
#include "edit/removeany.h"
#include "file/jobfile.h"
#include "papers/scheduleforms.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>
#include <set>

namespace doorloom {
namespace {

// PS1 and LM1 in the cabinet, ES1 at the frame, PB1 without a place.
Job site()
{
    JobBuilder job;
    job.device("PS1", "dc-supply-24")
        .device("LM1", "relay-module-negative")
        .device("ES1", "strike-fail-secure")
        .device("PB1", "push-plate");
    Change change;
    std::uint32_t next = job.job().nextNumber;
    for (const auto& [tag, devices] :
         std::map<std::string, std::vector<std::string>>{{"CAB", {"PS1", "LM1"}}, {"FRAME", {"ES1"}}}) {
        Place place;
        place.id = {next++};
        place.tag = tag;
        change.steps.emplace_back(Put<Place>{place.id, place});
        for (const std::string& device : devices) {
            Device moved = *deviceTagged(job.job(), device);
            moved.place = place.id;
            change.steps.emplace_back(Put<Device>{moved.id, moved});
        }
    }
    return job.apply(change).job();
}

struct Taken {
    Job job;
    ConnectionList list;
};

Taken take(Job job, std::string_view csv)
{
    const auto table = readTable(csv, "list.csv");
    EXPECT_TRUE(table.ok()) << (table.ok() ? "" : inWords(table.problem()));
    ConnectionList list = connectionList(job, table.value(), guessedLayout(table.value()));
    const auto back = applyChange(job, list.change);
    EXPECT_TRUE(back.ok()) << (back.ok() ? "" : inWords(back.problem()));
    EXPECT_TRUE(verifyJob(job).empty());
    return {std::move(job), std::move(list)};
}

// "line 2 taken: W1 (PS1:+ – LM1:+)", one a row.
std::vector<std::string> fates(const ConnectionList& list)
{
    static const char* const names[] = {"taken", "again", "left"};
    std::vector<std::string> lines;
    for (const ListedRow& row : list.rows)
        lines.push_back("line " + std::to_string(row.line) + " " + names[static_cast<std::size_t>(row.fate)] +
                        ": " + inWords(row.words));
    return lines;
}

using Lines = std::vector<std::string>;

TEST(ConnectionList, LandsWiresAndCoresAndMakesTheCablesThatAreMissing)
{
    const Taken taken = take(site(), "From device,From terminal,To device,To terminal,Cable,Core,Colour\n"
                                     "PS1,+,LM1,+,,,red\n"
                                     "LM1,K1.C,ES1,1,C1,1,RD\n"
                                     "LM1,K1.NO,ES1,2,C1,3,rojo\n"
                                     "PB1,C,LM1,IN1,C2,,WH+BU\n"
                                     "PB1,NO,LM1,COM,C2,,\n");
    const Kind& module = *kindOf(taken.job, *deviceTagged(taken.job, "LM1"));
    const std::string c = findTerminal(module, "K1.C")->printed, no = findTerminal(module, "K1.NO")->printed;
    EXPECT_EQ(fates(taken.list),
              (Lines{"line 2 taken: W1 (PS1:+ – LM1:+)", "line 3 taken: C1.1 (LM1:" + c + " – ES1:1)",
                     "line 4 taken: C1.3 (LM1:" + no + " – ES1:2)", "line 5 taken: C2.1 (PB1:C – LM1:IN1)",
                     "line 6 taken: C2.2 (PB1:NO – LM1:COM)"}));
    EXPECT_EQ(taken.list.newCables, (Lines{"C1", "C2"}));

    ASSERT_EQ(taken.job.cables.size(), 2u);
    const Cable& c1 = *taken.job.cables.begin();
    EXPECT_EQ(taken.job.places.find(c1.from)->tag, "CAB");
    EXPECT_EQ(taken.job.places.find(c1.to)->tag, "FRAME");
    const CableType& type = *taken.job.cableTypes.find(c1.type);
    ASSERT_EQ(type.cores.size(), 3u) << "up to the highest number in the list";
    EXPECT_EQ(type.cores[0].colour, "RD");
    EXPECT_EQ(type.cores[1].colour, "");
    EXPECT_EQ(type.cores[2].colour, "RD");
    EXPECT_EQ(type.cores[0].gauge, "") << "the list has none";
    EXPECT_EQ(coresOf(taken.job, c1.id).size(), 3u);
}

TEST(ConnectionList, UsesTheCablesOfTheJobEitherWayRound)
{
    const Taken first =
        take(site(), "LM1:K1.C,ES1:1,C1,1,RD\n"); // five columns and no names: read in the usual order
    EXPECT_EQ(countOf(first.list, RowFate::Left), 1u);
    const Taken made =
        take(site(), "from,to,cable,core,colour\nLM1:K1.C,ES1:1,C1,1,RD\nLM1:K1.NO,ES1:2,C1,2,WH\n");
    Job job = made.job;
    Change off;
    for (const Conductor& row : made.job.conductors) {
        Conductor free = row;
        free.from = free.to = {};
        off.steps.emplace_back(Put<Conductor>{free.id, free});
    }
    ASSERT_TRUE(applyChange(job, off).ok());

    const Taken taken =
        take(job, "from,to,cable,core,colour\nES1:2,LM1:K1.NO,c1,2,white\nES1:1,LM1:K1.C,C1,,red\n");

    EXPECT_EQ(countOf(taken.list, RowFate::Taken), 2u) << testing::PrintToString(fates(taken.list));
    EXPECT_EQ(taken.job.conductors, made.job.conductors) << "the cable's own way from cabinet to frame";
    EXPECT_TRUE(taken.list.newCables.empty());
}

TEST(ConnectionList, SaysOfEachRowThatIsLeftWhy)
{
    const Job job =
        take(site(), "from,to,cable,core,colour\nLM1:K1.C,ES1:1,C1,1,RD\nLM1:K1.NO,ES1:2,C1,2,WH\n").job;
    const Taken taken = take(job, "from,to,cable,core,colour\n"
                                  "PS9:+,LM1:+,,,\n"
                                  "PS1:+,LM1:+9,,,\n"
                                  "PS1:+,,,,\n"
                                  ",LM1:+,,,\n"
                                  "PS1:+,PS1:+,,,\n"
                                  "LM1:−,LM1:COM,,,\n"
                                  "PS1:+,LM1:+,,,mauve-ish\n"
                                  "PS1:+,LM1:+,,2,\n"
                                  "LM1:K1.NC,ES1:1,C1,x1y,RD\n"
                                  "LM1:K1.NC,ES1:1,C1,3,\n"
                                  "LM1:K1.NC,ES1:1,C1,2,RD\n"
                                  "LM1:K1.NC,ES1:1,C1,2,WH\n"
                                  "PS1:+,LM1:+,C1,1,\n"
                                  "PS1:+,LM1:+,C 7,1,\n"
                                  "PS1,LM1:+,,,\n");
    const std::string printed = "+, −";
    const std::vector<std::string> why = {
        "The job has no device 'PS9'.",
        "LM1 has no terminal '+9'.",
        "The row has no second device.",
        "The row has no first device.",
        "'PS1:+' can't be joined to itself.",
        "The device itself joins 'LM1:−' and 'LM1:COM'.",
        "'mauve-ish' is no colour.",
        "The row has a core, '2', and no cable.",
        "'x1y' is no core's number.",
        "C1 has no core '3'.",
        "Core 2 of C1 is WH, not RD.",
        "The core is landed elsewhere: C1.2 (LM1:" +
            findTerminal(catalogueKind("relay-module-negative"), "K1.NO")->printed + " – ES1:2).",
        "C1 does not run between PS1:+ and LM1:+.",
        "A cable can't have the tag 'C 7'.",
        "PS1 has no terminal ''."};
    ASSERT_EQ(taken.list.rows.size(), why.size());
    for (std::size_t row = 0; row < why.size(); ++row) {
        EXPECT_EQ(taken.list.rows[row].fate, RowFate::Left);
        EXPECT_EQ(inWords(taken.list.rows[row].words), why[row]);
        EXPECT_FALSE(inWords(taken.list.rows[row].remedy, Language::Spanish).empty());
        EXPECT_EQ(taken.list.rows[row].line, row + 2);
    }
    EXPECT_EQ(taken.list.missingDevices, Lines{"PS9"});
    EXPECT_EQ(taken.job, job) << "nothing of them is in the job, not even a cable";
    EXPECT_EQ(inWords(summaryOf(taken.list)),
              "Rows taken: 0. Told again: 0. Left: 15. New cables: –. Devices not in the job: PS9.");
}

TEST(ConnectionList, TakesNoRowTwiceHoweverOftenItIsTold)
{
    const std::string csv =
        "from,to,cable,core\nPS1:+,LM1:+,,\nLM1:+,PS1:+,,\nLM1:K1.C,ES1:1,C1,1\nES1:1,LM1:K1.C,C1,1\n";
    const Taken once = take(site(), csv);
    EXPECT_EQ(countOf(once.list, RowFate::Taken), 2u);
    EXPECT_EQ(fates(once.list)[1], "line 3 again: as line 2");
    EXPECT_EQ(fates(once.list)[3], "line 5 again: as line 4");

    const Taken twice = take(once.job, csv);
    EXPECT_EQ(countOf(twice.list, RowFate::Again), 4u);
    EXPECT_EQ(fates(twice.list)[0], "line 2 again: in the job already: W1 (PS1:+ – LM1:+)");
    EXPECT_TRUE(twice.list.change.steps.empty());
}

TEST(ConnectionList, LeavesCoresAloneThatAreToBeLeftAlone)
{
    Job job = take(site(), "from,to,cable,core\nLM1:K1.C,ES1:1,C1,2\n").job;
    Change alone;
    for (const Conductor& row : job.conductors) {
        Conductor changed = row;
        changed.standing = Standing::LeaveAlone;
        alone.steps.emplace_back(Put<Conductor>{row.id, changed});
    }
    ASSERT_TRUE(applyChange(job, alone).ok());
    const Taken taken = take(job, "from,to,cable,core\nLM1:K1.NO,ES1:2,C1,1\n");
    EXPECT_EQ(countOf(taken.list, RowFate::Left), 1u);
    EXPECT_EQ(taken.job, job);
}

// ---- The schedule's own CSV, read back into the job without its conductors.

using Joint = std::pair<std::string, std::string>;

std::string pointOf(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        return nameOf(job, *landing);
    const SpliceId* splice = spliceOf(end);
    return splice ? job.splices.find(*splice)->tag : std::string();
}

// What every landed conductor joins, with cable and core, however it is drawn.
std::multiset<std::pair<Joint, std::string>> jointsOf(const Job& job)
{
    std::multiset<std::pair<Joint, std::string>> joints;
    for (const Conductor& row : job.conductors) {
        if (row.from.state != EndState::Landed || row.to.state != EndState::Landed)
            continue;
        const std::string a = pointOf(job, row.from), b = pointOf(job, row.to);
        const Cable* cable = job.cables.find(row.cable);
        joints.insert(
            {{std::min(a, b), std::max(a, b)},
             (cable ? cable->tag + "." + std::to_string(row.core) : "wire") + " " + colourOf(job, row)});
    }
    return joints;
}

Job withoutConductors(const Job& job)
{
    Job bare = job;
    std::vector<std::uint32_t> rows;
    for (const Cable& cable : job.cables)
        rows.push_back(cable.id.number);
    for (const Conductor& row : job.conductors)
        if (row.make != ConductorMake::Core)
            rows.push_back(row.id.number);
    const auto removed = removeAny(bare, rows);
    EXPECT_TRUE(removed.ok() && applyChange(bare, removed.value()).ok());
    EXPECT_TRUE(bare.conductors.empty());
    return bare;
}

TEST(ConnectionList, ReadsTheScheduleOfEverySampleBackIntoTheSameNetlist)
{
    std::size_t joints = 0;
    for (const auto& entry : std::filesystem::directory_iterator(SOURCE_FOLDER "/samples")) {
        const Result<Job> sample = readJobFile(entry.path().string());
        ASSERT_TRUE(sample.ok()) << entry.path();
        const Job& job = sample.value();
        for (const Language language : {Language::English, Language::Spanish}) {
            const Taken taken =
                take(withoutConductors(job), scheduleCsv(scheduleOf(job, digestOf(job)), language));
            EXPECT_EQ(jointsOf(taken.job), jointsOf(job)) << entry.path();
            EXPECT_EQ(countOf(taken.list, RowFate::Taken), jointsOf(job).size());
            EXPECT_EQ(countOf(taken.list, RowFate::Again), jointsOf(job).size())
                << "each conductor is told at both its ends";
            EXPECT_TRUE(taken.list.missingDevices.empty());
        }
        joints += jointsOf(job).size();
    }
    EXPECT_GT(joints, 100u);
}

// ---- The verb

TEST(ImportVerb, WritesTheJobWithTheConnectionsAndSaysWhatItLeft)
{
    const test::TemporaryFolder folder;
    ASSERT_TRUE(saveJobFile(site(), folder.file("job.doorjob")).ok());
    folder.write("list.csv", "from;to\nPS1:+;LM1:+\nPS1:−;XX1:−\n");

    const test::Ended run = test::runProgram(
        {.arguments = {"import", "job.doorjob", "list.csv", "--to", "out.doorjob"}, .folder = folder.path()});

    EXPECT_EQ(run.exit, 0) << run.err;
    EXPECT_EQ(run.out,
              "line 3: The job has no device 'XX1'. Place it first, or write its tag as in the job.\n"
              "Rows taken: 1. Told again: 0. Left: 1. New cables: –. Devices not in the job: XX1.\n"
              "Written: out.doorjob\n");
    const Result<Job> out = readJobFile(folder.file("out.doorjob"));
    ASSERT_TRUE(out.ok());
    EXPECT_EQ(out.value().conductors.size(), 1u);
}

TEST(ImportVerb, TakesColumnsAsItIsTold)
{
    const test::TemporaryFolder folder;
    ASSERT_TRUE(saveJobFile(site(), folder.file("job.doorjob")).ok());
    folder.write("list.csv", "x;y;z;u;v\nnote;LM1;+;PS1;+\n");
    const auto run = [&](const std::string& columns) {
        return test::runProgram({.arguments = {"import", "job.doorjob", "list.csv", "--columns", columns,
                                               "--to", columns + ".doorjob"},
                                 .folder = folder.path()});
    };
    EXPECT_EQ(run("head:4,5,2,3").out.substr(0, 15), "Rows taken: 1. ");
    for (const std::string wrong : {"4", "0,1", "1,2,3,4,5,6,7,8", "a,b", "", "1,,2", "201,1"}) {
        EXPECT_EQ(run(wrong).exit, 2) << wrong;
        EXPECT_NE(run(wrong).err.find("does not say which column is which"), std::string::npos) << wrong;
    }
}

TEST(ImportVerb, WritesNothingWhereNoRowCanBeTakenOrAFileIsThere)
{
    const test::TemporaryFolder folder;
    ASSERT_TRUE(saveJobFile(site(), folder.file("job.doorjob")).ok());
    folder.write("list.csv", "from,to\nXX1:1,XX2:2\n");
    const auto none = test::runProgram(
        {.arguments = {"import", "job.doorjob", "list.csv", "--to", "out.doorjob"}, .folder = folder.path()});
    EXPECT_EQ(none.exit, 2);
    EXPECT_EQ(none.err, "list.csv: No row can be taken. Nothing is written. The reasons stand above.\n");
    EXPECT_EQ(none.out.substr(0, 8), "line 2: ");
    const auto there = test::runProgram(
        {.arguments = {"import", "job.doorjob", "list.csv", "--to", "list.csv"}, .folder = folder.path()});
    EXPECT_EQ(there.exit, 2);
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"job.doorjob", "list.csv"}));
}

} // namespace
} // namespace doorloom
