#include "base/json.h"
#include "core/program.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <vector>

namespace doorloom::test {
namespace {

using Words = std::vector<std::string>;

// A desk without a screen, a font or any of Qt's own settings, and a platform that is not there.
const std::vector<std::pair<std::string, std::string>> bareDesk = {
    {"PATH", "/nowhere"}, {"QT_QPA_PLATFORM", "nonsense"}, {"FONTCONFIG_FILE", "/dev/null"}};

// Pages need to know where fonts are, though they use the shipped one alone.
const std::vector<std::pair<std::string, std::string>> deskForPages = {{"QT_QPA_PLATFORM", "nonsense"}};

Ended doorloom(Words arguments)
{
    const bool drawsPages = std::any_of(arguments.begin(), arguments.end(),
                                        [](const std::string& word) { return word.ends_with(".pdf"); });
    return runProgram(
        {.arguments = std::move(arguments), .environment = drawsPages ? deskForPages : bareDesk});
}

std::string firstLine(const std::string& text)
{
    return text.substr(0, text.find('\n'));
}

std::string contentsOfFile(const std::string& file)
{
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

struct BadLine {
    Words arguments;
    std::string firstLineOfErr;
};

TEST(CommandLine, ThatIsWrongIsAnsweredOnStderrWithWhatToDo)
{
    const std::vector<BadLine> lines = {
        {{"--lang", "en"}, "doorloom: No verb is given. Use one of: check, volts, ohms, spice, print, tidy, kinds, new, import."},
        {{"chekc"}, "doorloom: There is no verb 'chekc'. Use one of: check, volts, ohms, spice, print, tidy, kinds, new, import."},
        {{"--lang", "es", "chekc"},
         "doorloom: No existe el verbo 'chekc'. Use uno de: check, volts, ohms, spice, print, tidy, kinds, new, import."},
        {{"check"}, "doorloom: 'check' needs FILE. Write it as shown here:"},
        {{"check", "a", "b"}, "doorloom: 'b' is one word too many for 'check'. Write it as shown here:"},
        {{"check", "a", "--jsn"}, "doorloom: 'check' has no option '--jsn'. Write it as shown here:"},
        {{"check", "a", "--json", "--json"},
         "doorloom: Option '--json' is given twice. Write it as shown here:"},
        {{"check", "a", "--lang", "fr"}, "doorloom: There is no language 'fr'. Use 'en' or 'es'."},
        {{"check", "a", "--lang"}, "doorloom: Option '--lang' has no value. Use 'en' or 'es'."},
        {{"print", "a", "--paper", "schedule"},
         "doorloom: 'print' needs the option '--to'. Write it as shown here:"},
        {{"print", "a", "--to"}, "doorloom: Option '--to' has no value. Write it as shown here:"},
        {{"new", "a"}, "doorloom: 'new' needs the option '--from'. Write it as shown here:"},
    };
    for (const BadLine& line : lines) {
        const Ended run = doorloom(line.arguments);
        EXPECT_EQ(firstLine(run.err), line.firstLineOfErr);
        EXPECT_EQ(run.exit, 2) << line.firstLineOfErr;
        EXPECT_EQ(run.out, "") << line.firstLineOfErr;
    }
}

TEST(CommandLine, WithoutAVerbSaysThatTheWindowNeedsADisplay)
{
    const std::vector<std::pair<std::string, std::string>> noDisplay = {
        {"DISPLAY", ""}, {"WAYLAND_DISPLAY", ""}, {"QT_QPA_PLATFORM", ""}};
    for (const Words& arguments : {Words{}, Words{SOURCE_FOLDER "/samples/restroom-staff.doorjob"}}) {
        const Ended run = runProgram({.arguments = arguments, .environment = noDisplay});
        EXPECT_EQ(run.exit, 2);
        EXPECT_EQ(run.out, "");
        EXPECT_EQ(run.err, "doorloom: There is no display to open the window on. Start it from a desktop, or use a "
                           "verb: 'doorloom check FILE'. 'doorloom --help' lists them.\n");
    }
}

TEST(CommandLine, ThatIsWrongShowsTheUsageOfItsVerb)
{
    EXPECT_EQ(doorloom({"print"}).err, "doorloom: 'print' needs FILE. Write it as shown here:\n"
                                       "usage: doorloom print FILE --paper NAME --to OUT.(pdf|csv|txt) [--page "
                                       "a4|letter] [--labels NAME] [--start N] [--by rows|columns] "
                                       "[--only conductors|cables|devices] [--qr] [--measured LEFT TOP] [--offset-page]\n"
                                       "  Prints one paper of a job.\n"
                                       "every verb: --lang en|es (the language of what is said), --help\n");
}

TEST(CommandLine, GivesHelpOnStdout)
{
    for (const Words& arguments :
         {Words{"--help"}, Words{"--lang", "es", "--help"}, Words{"check", "--help"},
          Words{"print", "--help"}, Words{"kinds", "--help"}, Words{"new", "--help"}}) {
        const Ended run = doorloom(arguments);
        EXPECT_EQ(run.exit, 0);
        EXPECT_EQ(run.err, "");
        EXPECT_NE(run.out.find(arguments.size() == 3 ? "uso:" : "usage:"), std::string::npos) << run.out;
    }
}

// A verb's words could all fit while their end is lost.
TEST(CommandLine, SaysWhenItsAnswerCouldNotBeWritten)
{
    const Ended run = runProgram({.arguments = {"--help"}, .outTo = "/dev/full"});
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(
        run.err,
        "doorloom: the answer can't be written to the output. Free some space, or name another file.\n");
}

const Words samples = {"restroom-public", "restroom-public-broken", "restroom-staff",
                       "restroom-staff-broken"};

TEST(Check, EndsWithWhatItFound)
{
    EXPECT_EQ(doorloom({"check", sampleFile("restroom-public")}).exit, 0);
    EXPECT_EQ(doorloom({"check", sampleFile("restroom-staff")}).exit, 0);
    EXPECT_EQ(doorloom({"check", sampleFile("restroom-public-broken")}).exit, 1);
    EXPECT_EQ(doorloom({"check", sampleFile("restroom-staff-broken"), "--json"}).exit, 1);
    EXPECT_EQ(doorloom({"check", "/nowhere/a.doorjob"}).exit, 2);
}

Words rulesIn(const Json& findings)
{
    Words rules;
    for (const Json& finding : std::get<Json::Array>(findings.value)) {
        rules.push_back(std::get<std::string>(finding.find("rule")->value));
        const Words lines = rulesIn(*finding.find("lines"));
        rules.insert(rules.end(), lines.begin(), lines.end());
    }
    return rules;
}

TEST(Check, TellsTheThreeMainFindingsOfTheBrokenSamplesToPrograms)
{
    for (const char* name : {"restroom-public-broken", "restroom-staff-broken"}) {
        const Ended run = doorloom({"check", sampleFile(name), "--json"});
        const Result<Json> report = parseJson(run.out, "report");
        ASSERT_TRUE(report.ok()) << inWords(report.problem());
        const Words rules = rulesIn(*report.value().find("findings"));
        for (const char* rule : {"shorted", "wet-output", "never-fed"})
            EXPECT_NE(std::find(rules.begin(), rules.end(), rule), rules.end()) << name << ": " << rule;
    }
}

// What is fail-safe may be called so; nothing else is ever 'safe'.
TEST(Check, NeverSaysSafe)
{
    for (const std::string& sample : samples) {
        const std::string said = doorloom({"check", sampleFile(sample)}).out;
        ASSERT_NE(said, "");
        EXPECT_FALSE(std::regex_search(said, std::regex("(^|[^-a-z])safe", std::regex::icase))) << said;
        const std::string spanish = doorloom({"check", sampleFile(sample), "--lang", "es"}).out;
        EXPECT_FALSE(std::regex_search(spanish, std::regex("segur[oa]([^a-z]|$)", std::regex::icase)))
            << spanish;
    }
}

TEST(Check, SaysWhatWasNotExaminedAndWhoDecides)
{
    const std::string said = doorloom({"check", sampleFile("restroom-public")}).out;
    for (const char* line : {"\nNot examined:\n", "\nLooked at: all ", "No finding is not approval."})
        EXPECT_NE(said.find(line), std::string::npos) << line;
}

// The block of the README that starts with this line, fences left out.
std::string blockOfReadme(const std::string& start)
{
    const std::string readme = contentOf(SOURCE_FOLDER "/README.md");
    const std::size_t begin = readme.find("```\n" + start);
    if (begin == std::string::npos)
        return "";
    return readme.substr(begin + 4, readme.find("\n```", begin + 4) + 1 - (begin + 4));
}

TEST(Check, SaysWhatTheReadmeShows)
{
    const std::string shown = blockOfReadme("Job: samples/restroom-staff-broken.doorjob");
    ASSERT_NE(shown, "");
    const Ended run = runProgram({.arguments = {"check", "samples/restroom-staff-broken.doorjob"},
                                  .folder = SOURCE_FOLDER,
                                  .environment = bareDesk});
    EXPECT_EQ(run.out.substr(0, shown.size()), shown);
}

TEST(Check, LeavesTheFileAsItWas)
{
    const TemporaryFolder folder;
    const std::string file = folder.write("job.doorjob", contentOf(sampleFile("restroom-public")));
    EXPECT_EQ(doorloom({"check", file}).exit, 0);
    EXPECT_EQ(contentOf(file), contentOf(sampleFile("restroom-public")));
    EXPECT_EQ(folder.names(), Words{"job.doorjob"});
}

TEST(New, WritesAnEmptyJobThatIsReadAgain)
{
    const TemporaryFolder folder;
    const std::string file = folder.file("fresh.doorjob");
    const Ended made = doorloom({"new", file, "--from", "empty"});
    EXPECT_EQ(made.err, "");
    EXPECT_EQ(made.exit, 0);
    EXPECT_EQ(made.out, "Written: " + file + "\n");
    EXPECT_EQ(doorloom({"check", file}).exit, 0);
    EXPECT_EQ(folder.names(), Words{"fresh.doorjob"});
}

TEST(New, CopiesASample)
{
    const TemporaryFolder folder;
    const std::string file = folder.file("copy.doorjob");
    EXPECT_EQ(doorloom({"new", file, "--from", "restroom-public"}).exit, 0);
    EXPECT_EQ(contentOf(file), contentOf(sampleFile("restroom-public")));
}

TEST(New, NeverWritesOverAFile)
{
    const TemporaryFolder folder;
    const std::string file = folder.write("mine.doorjob", "my only copy");
    const Ended run = doorloom({"new", file, "--from", "empty"});
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(run.err,
              file + ": The file is there already. Name another file, or move this one away first.\n");
    EXPECT_EQ(contentOf(file), "my only copy");
}

TEST(New, NamesTheSamplesThatThereAre)
{
    const TemporaryFolder folder;
    const Ended run = doorloom({"new", folder.file("a.doorjob"), "--from", "airlock"});
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(run.err, "--from: There is no sample 'airlock'. Use one of: empty, archive-room, archive-room-broken, boarding-house-forty, "
                       "restroom-public, restroom-public-broken, restroom-staff, restroom-staff-broken, vestibule, yard-gate, "
                       "yard-gate-broken.\n");
    EXPECT_EQ(folder.names(), Words{});
}

// A job with nothing in it, for what does not depend on what is in it.
std::string emptyJob(const TemporaryFolder& folder)
{
    const std::string file = folder.file("empty.doorjob");
    EXPECT_EQ(doorloom({"new", file, "--from", "empty"}).exit, 0);
    return file;
}

struct BadFile {
    std::string content, why; // after the file's name
};

TEST(Print, SaysWhereAFileIsBadAndWhatToDo)
{
    const std::vector<BadFile> files = {
        {"", ", line 1, column 1: The text ends before it is complete. The file was cut short: take a "
             "complete copy "
             "of it."},
        {"{\n\"doorloom\":1,\n\"nex",
         ", line 3, column 4: The text ends before it is complete. The file was cut "
         "short: take a complete copy of it."},
        {"{\"doorloom\":1,\n\"nextNumber\":\"1\"}",
         ", line 2, nextNumber: Here stands a text, but it should be a number. Write a number."},
        {"{\"doorloom\":99,\"nextNumber\":1}", ", line 1, doorloom: The file has version 99; this program "
                                               "reads versions up to 2. Open it with a newer "
                                               "version of this program."},
        {"{\"doorloom\":1,\"nextNumber\":1,\"colour\":3}",
         ", line 1, colour: The key 'colour' is not known here. Take it out or correct it; known here: "
         "doorloom, "
         "nextNumber, info, kinds, cableTypes, places, operators, devices, cables, splices, conductors, "
         "openings, "
         "sheets, placements, bends, notes, setAside, typicals, stamps."},
        {std::string(100'000, '['),
         ", line 1, column 65: Lists and objects are nested more than 64 deep. No file of "
         "this program is so: take an undamaged copy."},
    };
    const TemporaryFolder folder;
    for (const BadFile& bad : files) {
        const std::string file = folder.write("bad.doorjob", bad.content);
        const Ended run = doorloom({"print", file, "--paper", "schedule", "--to", folder.file("out.csv")});
        EXPECT_EQ(run.err, file + bad.why + "\n");
        EXPECT_EQ(run.exit, 2);
        EXPECT_EQ(run.out, "");
        EXPECT_EQ(contentOf(file), bad.content);
        EXPECT_EQ(folder.names(), Words{"bad.doorjob"});
    }
}

TEST(Print, SaysWhenAFileIsNotThereOrTooLarge)
{
    const TemporaryFolder folder;
    const std::string file = folder.file("job.doorjob");
    EXPECT_EQ(doorloom({"print", file, "--paper", "tags", "--to", folder.file("out.csv")}).err,
              file +
                  ": The file cannot be read: No such file or directory. Look whether it is there and may be "
                  "read.\n");
    folder.write("job.doorjob", "");
    std::filesystem::resize_file(file, 65u * 1024 * 1024); // a hole: it takes no room
    EXPECT_EQ(doorloom({"print", file, "--paper", "tags", "--to", folder.file("out.csv")}).err,
              file +
                  ": The file has more than 64 MB. No file of this program is so large: take another one.\n");
    EXPECT_EQ(folder.names(), Words{"job.doorjob"});
}

TEST(Print, SpeaksSpanishWhenAsked)
{
    const Ended run = doorloom({"--lang", "es", "print", "/nowhere/a", "--paper", "tags", "--to", "out.csv"});
    EXPECT_EQ(
        run.err,
        "/nowhere/a: No se puede leer el archivo: No such file or directory. Compruebe que existe y que "
        "se puede leer.\n");
}

TEST(Print, NamesThePapersAndForms)
{
    const TemporaryFolder folder;
    const std::string job = emptyJob(folder);
    EXPECT_EQ(doorloom({"print", job, "--paper", "poster", "--to", "out.csv"}).err,
              "--paper: There is no paper 'poster'. Use one of: schedule, tags, pull, settings, power, parts, ring-out, meter, locks, function-test, findings.\n");
    EXPECT_EQ(doorloom({"print", job, "--paper", "tags", "--to", "out.odt"}).err,
              "--to: 'out.odt' ends with no form that a paper can have. Let its name end with .pdf, .csv or "
              ".txt.\n");
    EXPECT_EQ(doorloom({"print", job, "--paper", "schedule", "--to", "out.pdf", "--page", "A0"}).err,
              "--page: There is no page size 'A0'. Use a4 or letter.\n");
    EXPECT_EQ(folder.names(), Words{"empty.doorjob"});
}

// Source: ISO 216 A4 297 × 210 mm and ANSI/ASME Y14.1 letter 11 × 8.5 in, from memory, in points of 1/72 in.
TEST(Print, DrawsOnTheSheetThatIsAskedFor)
{
    const TemporaryFolder folder;
    const std::string job = emptyJob(folder);
    for (const auto& [page, box] : {std::pair("a4", "/MediaBox [0 0 842.000000 595.000000]"), std::pair("letter", "/MediaBox [0 0 792.000000 612.000000]")}) {
        const std::string out = folder.file(page) + ".pdf";
        const Ended run = runProgram({.arguments = {"print", job, "--paper", "schedule", "--to", out, "--page", page},
                                      .environment = deskForPages});
        EXPECT_EQ(run.exit, 0) << run.err;
        EXPECT_NE(contentOf(out).find(box), std::string::npos) << page;
    }
}

TEST(Print, SaysWhenTheFolderIsNotThere)
{
    const TemporaryFolder folder;
    const std::string job = emptyJob(folder);
    for (const char* form : {"csv", "txt", "pdf"}) {
        const Ended run =
            doorloom({"print", job, "--paper", "schedule", "--to", folder.file("nowhere/out.") + form});
        EXPECT_EQ(run.err, folder.file("nowhere/out.") + form +
                               ": The file cannot be saved: No such file or directory. "
                               "Make the folder " +
                               folder.file("nowhere") + " first, or save elsewhere.\n");
        EXPECT_EQ(run.exit, 2);
    }
}

TEST(Print, LeavesWhatWasThereWhenTheDiskIsFull)
{
    const TemporaryFolder folder;
    const std::string job = emptyJob(folder);
    for (const char* form : {"csv", "txt", "pdf"}) {
        const std::string name = std::string("out.") + form;
        const std::string out = folder.write(name, "yesterday's");
        const Ended run = runProgram({.arguments = {"print", job, "--paper", "schedule", "--to", out},
                                      .environment = deskForPages,
                                      .mostFileBytes = 20});
        EXPECT_EQ(run.err,
                  out + ": The file cannot be saved: File too large. Make room or save elsewhere; what was "
                        "there before is unchanged.\n");
        EXPECT_EQ(run.exit, 2);
        EXPECT_EQ(contentOf(out), "yesterday's");
        EXPECT_EQ(folder.names(), (Words{"empty.doorjob", name}));
        std::filesystem::remove(out);
    }
}

TEST(Print, DrawsPagesWithoutADisplay)
{
    const TemporaryFolder folder;
    const std::string out = folder.file("out.pdf");
    const Ended run = doorloom({"print", sampleFile("restroom-staff"), "--paper", "schedule", "--to", out});
    EXPECT_EQ(run.err, "");
    EXPECT_EQ(run.out, "Written: " + out + "\n");
    EXPECT_EQ(run.exit, 0);
    const std::string bytes = contentOf(out);
    EXPECT_EQ(bytes.substr(0, 5), "%PDF-");
    EXPECT_NE(bytes.find("%%EOF", bytes.size() - 10), std::string::npos);
}

TEST(Print, PutsTagsOnTheLabelsThatAreAskedFor)
{
    const TemporaryFolder folder;
    const std::string out = folder.file("tags.pdf");
    const auto print = [&](Words more) {
        Words words = {"print", sampleFile("restroom-staff"), "--paper", "tags", "--to", out};
        words.insert(words.end(), more.begin(), more.end());
        return doorloom(words);
    };
    EXPECT_EQ(print({"--labels", "tape-12", "--only", "conductors"}).err, "");
    EXPECT_NE(contentOf(out).find(" 34.000000]"), std::string::npos); // 12 mm are 34 points
    EXPECT_EQ(print({"--page", "letter", "--start", "30", "--by", "columns", "--qr", "--measured", "30.5", "29.5"}).err, "");
    EXPECT_NE(contentOf(out).find("/MediaBox [0 0 612.000000 792.000000]"), std::string::npos);
    EXPECT_EQ(print({"--offset-page"}).err, "");
}

TEST(Print, RefusesLabelsThatAreNotThere)
{
    const TemporaryFolder folder;
    const auto said = [&](Words more, const std::string& paper = "tags", const std::string& out = "tags.pdf") {
        Words words = {"print", sampleFile("restroom-staff"), "--paper", paper, "--to", folder.file(out)};
        words.insert(words.end(), more.begin(), more.end());
        const Ended run = doorloom(words);
        EXPECT_EQ(run.exit, 2);
        return run.err;
    };
    EXPECT_TRUE(said({"--labels", "a4-9x9"}).starts_with("--labels: There is no label sheet 'a4-9x9'. Use one of: a4-3x7, a4-3x8, "));
    EXPECT_EQ(said({"--start", "25"}), "Tags: 'a4-3x8' has no label 25. Start at a label from 1 to 24.\n");
    EXPECT_EQ(said({"--start", "2nd"}),
              "--start: '2nd' is no number of a label. Count the labels from 1, in the order in which they are filled.\n");
    EXPECT_EQ(said({"--by", "diagonals"}), "--by: There is no order 'diagonals'. Use one of: rows, columns.\n");
    EXPECT_EQ(said({"--only", "doors"}), "--only: There are no tags called 'doors'. Use one of: conductors, cables, devices.\n");
    for (const auto& [left, top] : {std::pair("30", "nan"), std::pair("5", "30"), std::pair("", "30"), std::pair("30", "30mm")})
        EXPECT_EQ(said({"--measured", left, top}), std::string("--measured: '") + left + " " + top +
                                                       "' is not what the offset page can measure. Give both distances in mm, about 30 each: "
                                                       "first from the left edge, then from the upper edge.\n");
    EXPECT_EQ(said({"--qr"}, "schedule"), "--qr: '--qr' is about labels: the paper 'tags' as PDF. Leave it out.\n");
    EXPECT_EQ(said({"--start", "2"}, "tags", "tags.csv"), "--start: '--start' is about labels: the paper 'tags' as PDF. Leave it out.\n");
    EXPECT_EQ(folder.names(), Words{});
}

TEST(New, LeavesNothingWhenTheDiskIsFull)
{
    const TemporaryFolder folder;
    const std::string out = folder.file("a.doorjob");
    const Ended run = runProgram(
        {.arguments = {"new", out, "--from", "empty"}, .environment = bareDesk, .mostFileBytes = 5});
    EXPECT_EQ(run.err,
              out + ": The file cannot be saved: File too large. Make room or save elsewhere; what was there "
                    "before is unchanged.\n");
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(folder.names(), Words{});
}

TEST(Kinds, AreListedAndToldInFull)
{
    const Ended list = doorloom({"kinds"});
    EXPECT_EQ(list.exit, 0);
    EXPECT_NE(list.out.find("\nstrike-fail-safe "), std::string::npos) << list.out;

    const Ended one = doorloom({"kinds", "strike-fail-safe"});
    EXPECT_EQ(one.exit, 0);
    EXPECT_NE(one.out.find("fail-safe: locked only while powered, unlocks without power"), std::string::npos)
        << one.out;

    const Ended none = doorloom({"kinds", "strike-fail-sometimes"});
    EXPECT_EQ(none.exit, 2);
    EXPECT_EQ(none.err,
              "doorloom kinds: There is no kind 'strike-fail-sometimes'. 'doorloom kinds' lists them.\n");
}

TEST(Volts, SaysInAPositionWhatAMeterReadsAndWhatFlows)
{
    const std::string file = sampleFile("restroom-staff");
    const Ended rest = doorloom({"volts", file});
    EXPECT_EQ(rest.exit, 0);
    EXPECT_NE(rest.out.find("Position: at rest"), std::string::npos) << rest.out;
    EXPECT_NE(rest.out.find("PS1:+    PS1:−    24.000 V  0.2300 A  of 2.00 A"), std::string::npos) << rest.out;
    EXPECT_NE(rest.out.find("prove dead before work"), std::string::npos);
    // 24 V over a strike of 200 ohms and its lines: less than 24 V, and between its terminals nothing while K1 is at rest.
    const Ended released = doorloom({"volts", file, "--position", "lm1:k1=in", "--between", "es1:1", "es1:2"});
    EXPECT_NE(released.out.find("Position: LM1:K1=in, all others at rest"), std::string::npos) << released.out;
    EXPECT_NE(released.out.find("ES1:1  ES1:2  23."), std::string::npos) << released.out;
    EXPECT_EQ(doorloom({"volts", file, "--between", "ES1:1", "PS1:B+"}).out.find("floating") == std::string::npos, false);
}

TEST(Volts, GivesProgramsTheSameFigures)
{
    const std::string file = sampleFile("restroom-staff");
    const Ended json = doorloom({"volts", file, "--position", "LM1:K1=in", "--supplies", "highest", "--celsius", "75", "--json"});
    EXPECT_EQ(json.exit, 0) << json.err;
    for (const char* part : {"\"position\": {\"LM1:K1\": \"in\"}", "\"supplies\": \"highest\", \"celsius\": 75",
                             "\"volts\": 27.6, \"amperes\": ", "\"settled\": true"})
        EXPECT_NE(json.out.find(part), std::string::npos) << part << "\n" << json.out;
}

// A strike of 200 ohms behind 41.7 ohms of line, works from 20.4 V: 24 · 200 / 236 V at the lowest.
TEST(Volts, SaysTheWorstOfAllPositionsAndWhereItIs)
{
    const std::string file = sampleFile("yard-gate-broken");
    const Ended worst = doorloom({"volts", file, "--worst"});
    EXPECT_EQ(worst.exit, 0) << worst.err;
    for (const char* part : {"all 2 positions", "ES1:1  ES1:2  20.336 V (KS1=on)  23.386 V (KS1=on)", "PS1:+  PS1:−  0.102 A (KS1=on)   of 2.00 A"})
        EXPECT_NE(worst.out.find(part), std::string::npos) << part << "\n" << worst.out;
    const Ended between = doorloom({"volts", file, "--worst", "--between", "ES1:1", "ES1:2", "--json"});
    for (const char* part : {"\"position\": {}}, \"highest\"", "\"highest\": {\"volts\": 23.38", "\"covered\": 2"})
        EXPECT_NE(between.out.find(part), std::string::npos) << part << "\n" << between.out;
    const Ended floating = doorloom({"volts", file, "--worst", "--between", "ES1:1", "KS1:NC"});
    EXPECT_NE(floating.out.find("Floating, nothing fixes it:"), std::string::npos) << floating.out;
    EXPECT_EQ(firstLine(doorloom({"volts", file, "--worst", "--ac"}).err),
              "--ac: '--worst' looks at every position and level by itself. Leave out --ac.");
}

TEST(Ohms, SaysWhatAMeterReadsWithThePowerOff)
{
    const std::string file = sampleFile("restroom-staff");
    const Ended coil = doorloom({"ohms", file, "es1:1", "ES1:2", "--lift", "ES1:1"});
    EXPECT_EQ(coil.exit, 0);
    EXPECT_NE(coil.out.find("ES1:1 to ES1:2, either way round  200 Ω"), std::string::npos) << coil.out;
    const Ended key = doorloom({"ohms", file, "KS1:C", "KS1:NO", "--position", "ks1=on", "--json"});
    EXPECT_TRUE(key.out.starts_with("{\"position\": {\"KS1\": \"on\"}, \"first\": \"KS1:C\"")) << key.out;
    EXPECT_NE(key.out.find("\"redOnFirst\": {\"reads\": \"ohms\", \"ohms\": 0}"), std::string::npos) << key.out;
}

TEST(Ohms, RefusesWhatItCannotFindAndSaysWhatThereIs)
{
    const std::string file = sampleFile("restroom-staff");
    const std::vector<BadLine> lines = {
        {{"ohms", file, "ES1:1"}, "doorloom: 'ohms' needs FILE A B."},
        {{"ohms", file, "ES1:1", "PS9:+"}, "PS9:+: There is no device 'PS9'."},
        {{"ohms", file, "ES1:1", "ES1:2", "--lift", "ES1:1,ES1"}, "ES1: 'ES1' is no terminal. Write device and terminal, as in 'PS1:+'."},
        {{"ohms", file, "ES1:1", "ES1:2", "--position", "KS1=up"}, "--position: KS1 has no throw 'up'. Use one of: off, on."},
    };
    for (const BadLine& line : lines) {
        const Ended run = doorloom(line.arguments);
        EXPECT_TRUE(firstLine(run.err).starts_with(line.firstLineOfErr)) << run.err;
        EXPECT_EQ(run.exit, 2) << line.firstLineOfErr;
    }
}

TEST(Volts, RefusesWhatItCannotFindAndSaysWhatThereIs)
{
    const std::string file = sampleFile("restroom-staff");
    const std::vector<BadLine> lines = {
        {{"volts", file, "--position", "KS1"}, "--position: 'KS1' is no operator in one of its throws. Write it as in 'KS1=on', several with commas between."},
        {{"volts", file, "--position", "KS1=up"}, "--position: KS1 has no throw 'up'. Use one of: off, on."},
        {{"volts", file, "--position", "KS1=on,ks1=off"}, "--position: KS1 is given twice. Give it once."},
        {{"volts", file, "--between", "PS1:+"}, "doorloom: Option '--between' has no value. Write it as shown here:"},
        {{"volts", file, "--between", "PS1:+", "PS9:+"}, "PS9:+: There is no device 'PS9'."},
        {{"volts", file, "--between", "PS1:+", "PS1:x"}, "PS1:x: PS1 has no terminal 'x'. Use one of:"},
        {{"volts", file, "--between", "PS1:+", "PS1"}, "PS1: 'PS1' is no terminal. Write device and terminal, as in 'PS1:+'."},
        {{"volts", file, "--supplies", "full"}, "--supplies: There is no level 'full' of the supplies. Use one of: lowest, nominal, highest, battery."},
        {{"volts", file, "--celsius", "nan"}, "--celsius: 'nan' is no temperature of copper. Give degrees Celsius from -60 to 200."},
    };
    for (const BadLine& line : lines) {
        const Ended run = doorloom(line.arguments);
        EXPECT_TRUE(firstLine(run.err).starts_with(line.firstLineOfErr)) << run.err;
        EXPECT_EQ(run.exit, 2) << line.firstLineOfErr;
        EXPECT_EQ(run.out, "") << line.firstLineOfErr;
    }
}

TEST(Spice, WritesADeckWithTheTerminalsOfEachNode)
{
    const Ended run = doorloom({"spice", sampleFile("restroom-staff"), "--position", "KS1=on"});
    EXPECT_EQ(run.exit, 0) << run.err;
    EXPECT_NE(run.out.find(": PS1:+\n"), std::string::npos) << run.out;
    EXPECT_NE(run.out.find("DC 24\n"), std::string::npos);
    EXPECT_TRUE(run.out.ends_with(".end\n"));
}

TEST(Tidy, WritesACopyOrTheFileItselfAndSaysHowMuchItMoved)
{
    const std::filesystem::path folder = std::filesystem::temp_directory_path() / "doorloom-tidy";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directory(folder);
    const std::string file = folder / "gate.doorjob", copy = folder / "copy.doorjob";
    std::filesystem::copy_file(SOURCE_FOLDER "/samples/yard-gate.doorjob", file);

    const Ended copied = doorloom({"tidy", file, "--to", copy});
    EXPECT_EQ(copied.exit, 0) << copied.err;
    EXPECT_NE(copied.out.find(" have another place."), std::string::npos) << copied.out;
    EXPECT_EQ(contentsOfFile(file), contentsOfFile(SOURCE_FOLDER "/samples/yard-gate.doorjob"));
    EXPECT_NE(contentsOfFile(copy), contentsOfFile(file));

    EXPECT_EQ(doorloom({"tidy", file}).exit, 0);
    EXPECT_EQ(contentsOfFile(file), contentsOfFile(copy));
    EXPECT_EQ(doorloom({"tidy", file}).out, "Every sheet is tidy already.\n");
    EXPECT_EQ(doorloom({"tidy", folder / "none.doorjob"}).exit, 2);
    std::filesystem::remove_all(folder);
}

} // namespace
} // namespace doorloom::test
