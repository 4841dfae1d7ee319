#include "file/fragment.h"

#include "edit/drawing.h"
#include "edit/jointerminals.h"
#include "file/jobfile.h"

#include "desk.h"
#include "fulljob.h"
#include "random.h"

#include <algorithm>

namespace doorloom {

namespace {

Job sample(const std::string& name)
{
    const Result<Job> job = readJobFile(SOURCE_FOLDER "/samples/" + name + ".doorjob");
    if (!job.ok())
        throw std::runtime_error(inWords(job.problem()));
    return job.value();
}

Pasted paste(Desk& desk, const std::string& text, const PasteOptions& options = {})
{
    const Result<Pasted> made = pasted(desk.job(), desk.numbers(), text, options);
    if (!made.ok())
        throw std::runtime_error(inWords(made.problem()));
    desk.make(made.value().change);
    return made.value();
}

template <class Row> std::string tagsOf(const Table<Row>& rows)
{
    std::string joined;
    for (const Row& row : rows)
        joined += (joined.empty() ? "" : " ") + row.tag;
    return joined;
}

struct WiredSite : SmallSite {
    WiredSite()
    {
        for (const auto& [a, b] : {std::pair("LM1:K1.C", "ES1:1"), std::pair("LM1:K1.NO", "ES1:2"),
                                   std::pair("PS1:+", "LM1:+"), std::pair("PS1:−", "LM1:−")})
            make(joinTerminals(job(), numbers(), at(a), at(b)));
        sheet = make(addSheet(job(), numbers(), "Door 114")).first;
        make(putOnSheet(job(), numbers(), sheet, module, {100, 200}));
        make(putOnSheet(job(), numbers(), sheet, strike, {500, 200}));
    }
    SheetId sheet;
};

} // namespace

TEST(Fragment, CarriesWhatHangsTogetherToAnotherJob)
{
    WiredSite site;
    const std::string text = copiedText(site.job(), {site.module.number, site.strike.number});
    Desk other;
    const Pasted made = paste(other, text);
    EXPECT_EQ(tagsOf(other.job().devices), "LM1 ES1");
    EXPECT_EQ(tagsOf(other.job().places), "CAB1 FRAME");
    EXPECT_EQ(tagsOf(other.job().cables), "C1");
    EXPECT_EQ(tagsOf(other.job().conductors), "C1.1 C1.2 C1.3 C1.4") << "wires to PS1 stay behind";
    EXPECT_EQ(other.drawn(conductorNamed(other.job(), "LM1:K1.C → ES1:1")), "C1.1: LM1:K1.C – ES1:1");
    EXPECT_EQ(other.job().operators.size(), 3u);
    EXPECT_EQ(other.job().kinds.size(), 2u);
    EXPECT_EQ(other.job().placements.size(), 0u) << "without a sheet nothing is drawn";
    EXPECT_EQ(made.rows.size(), 3u);
}

TEST(Fragment, CountsTagsOnInTheSameJob)
{
    WiredSite site;
    const std::size_t kinds = site.job().kinds.size();
    const std::string text = copiedText(site.job(), {site.module.number, site.strike.number});
    paste(site, text, {site.sheet, {50, -20}});
    EXPECT_EQ(tagsOf(site.job().devices), "PS1 LM1 ES1 DPS1 LM2 ES2");
    EXPECT_EQ(tagsOf(site.job().cables), "C1 C2");
    EXPECT_EQ(tagsOf(site.job().places), "CAB1 FRAME");
    EXPECT_EQ(site.job().kinds.size(), kinds);
    EXPECT_EQ(site.drawn(conductorNamed(site.job(), "LM2:K1.C → ES2:1")), "C2.1: LM2:K1.C – ES2:1");
    EXPECT_EQ(placementOf(site.job(), deviceTagged(site.job(), "LM2")->id)->at, (Point{150, 180}));
    paste(site, text);
    EXPECT_EQ(tagsOf(site.job().cables), "C1 C2 C3");
}

TEST(Fragment, LeavesEndsWaitingThatLeadElsewhere)
{
    WiredSite site;
    const ConductorId wire = conductorNamed(site.job(), "PS1:+ → LM1:+");
    Desk other;
    paste(other, copiedText(site.job(), {site.cable1.number, site.strike.number, wire.number}));
    EXPECT_EQ(tagsOf(other.job().devices), "ES1");
    EXPECT_EQ(other.drawn(conductorNamed(other.job(), "waiting → ES1:1")), "C1.1: waiting – ES1:1");
    EXPECT_EQ(tagsOf(other.job().conductors), "C1.1 C1.2 C1.3 C1.4 W1");
}

TEST(Fragment, TakesNoCableThatIsLandedElsewhereToo)
{
    WiredSite site;
    site.make(joinTerminals(site.job(), site.numbers(), site.at("PS1:+"), site.at("DPS1:A")));
    Desk other;
    paste(other, copiedText(site.job(), {site.module.number, site.strike.number}));
    EXPECT_EQ(tagsOf(other.job().cables), "") << "C1 carries the door switch too";
    EXPECT_EQ(tagsOf(other.job().conductors), "");
}

TEST(Fragment, KeepsWiresTagsFreeOfTheJobs)
{
    WiredSite site;
    paste(site, copiedText(site.job(), {site.supply.number, site.module.number}));
    EXPECT_EQ(site.drawn(conductorNamed(site.job(), "PS2:+ → LM2:+")), "W3: PS2:+ – LM2:+");
}

TEST(Fragment, GivesDevicesOperatorsOfTheirOwnWhereTheOwnerStaysBehind)
{
    SmallSite site;
    const DeviceId second = site.device("DPS2", catalogueKind("door-switch"), site.frame);
    site.make(bindRole(site.job(), second, "door", boundTo(*site.job().devices.find(site.contact), "door")));
    Desk other;
    paste(other, copiedText(site.job(), {second.number}));
    const Device& copy = *deviceTagged(other.job(), "DPS2");
    EXPECT_EQ(other.job().operators.find(boundTo(copy, "door"))->owner, copy.id);
    Desk both;
    paste(both, copiedText(site.job(), {second.number, site.contact.number}));
    EXPECT_EQ(boundTo(*deviceTagged(both.job(), "DPS2"), "door"),
              boundTo(*deviceTagged(both.job(), "DPS1"), "door"));
}

TEST(Fragment, RefusesWhatIsNone)
{
    Desk desk;
    const auto refused = [&](const std::string& text) {
        return refusal(pasted(desk.job(), desk.numbers(), text));
    };
    EXPECT_EQ(refused("lunch at noon"),
              "What was copied is no part of a job. Copy devices, cables or notes of a job first.");
    EXPECT_EQ(refused(""),
              "What was copied is no part of a job. Copy devices, cables or notes of a job first.");
    EXPECT_EQ(refused("doorloom part\n{\"doorloom\":99}").substr(0, 64),
              "copied text, line 1, doorloom: The file has version 99; this pro");
    EXPECT_TRUE(isCopiedText("doorloom part\n"));
    EXPECT_FALSE(isCopiedText("doorloom"));
    EXPECT_EQ(copiedText(desk.job(), {1, 2, 3}), "");
    SmallSite site;
    const std::string text = copiedText(site.job(), {site.strike.number});
    EXPECT_FALSE(pasted(desk.job(), desk.numbers(), text, {{999}, {}}).ok());
}

// Whatever is copied out of a job can be pasted into it, into an empty one and into another.
TEST(Fragment, OfAnyRowsCanBePasted)
{
    const Job jobs[] = {sample("restroom-public"), sample("restroom-staff"), fullJob()};
    forEachSeed(60, [&](Random& random) {
        const Job& from = jobs[random.below(3)];
        std::vector<std::uint32_t> rows;
        for (std::uint32_t number = 1; number < from.nextNumber; ++number)
            if (random.oneIn(3))
                rows.push_back(number);
        const std::string text = copiedText(from, rows);
        if (text.empty())
            return; // no device, cable or note among the rows
        for (const Job& into : {from, Job{}, jobs[random.below(3)]}) {
            Desk desk(into);
            PasteOptions options{.sheet = into.sheets.empty() ? SheetId{} : into.sheets.begin()->id,
                                 .by = {random.between(-500, 500), 2'000'000'000}};
            const Pasted made = paste(desk, text, options);
            EXPECT_TRUE(!(desk.job() == into) || !options.sheet) << "only notes need a sheet";
            EXPECT_EQ(copiedText(desk.job(), made.rows).empty(), made.rows.empty());
        }
    });
}

// A text cut or changed anywhere is refused with words, or makes a sound change.
TEST(Fragment, SurvivesDamage)
{
    WiredSite site;
    const std::string whole = copiedText(site.job(), {site.module.number, site.strike.number});
    forEachSeed(120, [&](Random& random) {
        std::string text = whole;
        if (random.oneIn(2))
            text.resize(random.below(text.size()));
        for (int count = random.between(0, 3); count > 0 && text.size() > 20; --count)
            text[14 + random.below(text.size() - 14)] = static_cast<char>(random.between(1, 255));
        Desk desk;
        const Result<Pasted> made = pasted(desk.job(), desk.numbers(), text);
        if (made.ok())
            desk.make(made.value().change);
        else
            EXPECT_FALSE(inWords(made.problem()).empty());
    });
}

} // namespace doorloom
