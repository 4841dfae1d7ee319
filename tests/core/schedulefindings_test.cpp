#include "papers/papers.h"

#include "circuits/circuit.h"
#include "core/jobfromcsv.h"
#include "core/papercsv.h"
#include "external/samples.h"

#include "catalogue/catalogue.h"
#include "judge/findings.h"
#include "judge/findingtext.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <map>

// Whoever wires by the schedule alone builds what the job says: what is shorted, fed twice, never fed or reversed in
// one is so in the other.
namespace doorloom {
namespace {

const std::map<std::string, Job>& judgedJobs()
{
    static const std::map<std::string, Job> all = [] {
        std::map<std::string, Job> jobs = sampleJobs();
        for (const JudgedCircuit& circuit : allCircuits()) {
            jobs.emplace(circuit.name, circuit.right);
            for (const WrongForm& form : circuit.wrong)
                jobs.emplace(circuit.name + ", wrong form " + form.name, wrongJob(circuit, form));
        }
        return jobs;
    }();
    return all;
}

std::string csvOf(const Job& job, Language language)
{
    return paperNamed("schedule")->csv(job, {language, "0123456789ab"});
}

// By name from the catalogue; invented ones, which it can't have, from the job.
Kind kindCalled(const Job& job, const std::string& name)
{
    static const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    const Kind* kind = catalogue.value().find(name);
    return kind ? *kind : kindNamed(job, name)->kind;
}

Job readBack(const Job& job, Language language)
{
    return jobFromCsv(csvOf(job, language), [&](const std::string& name) { return kindCalled(job, name); });
}

using Known = std::multiset<std::string>;

void addKnown(const Job& job, const std::vector<Finding>& findings, Known& all)
{
    for (const Finding& finding : findings) {
        addKnown(job, finding.lines, all);
        if (finding.rule != "shorted" && finding.rule != "two-feeds" && finding.rule != "never-fed" &&
            finding.rule != "reverse-polarity")
            continue;
        std::string throws;
        for (const std::vector<std::string>& cube : throwTexts(job, finding))
            throws += fmt::format("[{}]", fmt::join(cube, ", "));
        all.insert(fmt::format("{} {} {} {}{}", finding.rule, finding.reason, atText(job, finding), throws,
                               finding.moreThrows ? " and others" : ""));
    }
}

Known known(const Job& job)
{
    Known all;
    addKnown(job, findingsOf(job, windowBudget), all);
    return all;
}

TEST(ScheduleReadBack, HasTheSameFindingsAsTheJob)
{
    std::map<std::string, int> rules;
    for (const auto& [name, job] : judgedJobs())
        for (const Language language : {Language::English, Language::Spanish}) {
            const Known ours = known(job);
            EXPECT_EQ(known(readBack(job, language)), ours) << name;
            for (const std::string& finding : ours)
                ++rules[finding.substr(0, finding.find(' '))];
        }
    for (const char* rule : {"shorted", "two-feeds", "never-fed", "reverse-polarity"})
        EXPECT_GE(rules[rule], 2) << rule;
}

// ---- Every landing exactly once, on its own device's page.

std::string endOf(const Job& job, const Conductor& conductor, const End& end)
{
    const Landing* landing = landingOf(end);
    const Cable* cable = job.cables.find(conductor.cable);
    return fmt::format("{} {} {} {}", landing ? nameOf(job, *landing) : "a splice", conductor.tag,
                       cable ? cable->tag : "", conductor.core);
}

Known landingsOf(const Job& job)
{
    Known all;
    for (const Conductor& conductor : job.conductors)
        for (const End* end : {&conductor.from, &conductor.to})
            if (end->state == EndState::Landed)
                all.insert(endOf(job, conductor, *end));
    return all;
}

Known landingsIn(const std::string& csv)
{
    Known all;
    for (const papercsv::Record& record : papercsv::readRecords(csv))
        if (record.at("row") == "landing")
            all.insert(fmt::format(
                "{} {} {} {}", record.at("kind").empty() ? "a splice" : record.at("device") + ":" + record.at("terminal"),
                record.at("conductor"), record.at("cable"), record.at("core").empty() ? "0" : record.at("core")));
    return all;
}

TEST(ScheduleReadBack, HasEveryLandingOnce)
{
    for (const auto& [name, job] : judgedJobs())
        EXPECT_EQ(landingsIn(csvOf(job, Language::English)), landingsOf(job)) << name;
}

} // namespace
} // namespace doorloom
