#include "edit/openings.h"

#include "check/finding.h"
#include "file/jobfile.h"
#include "judge/findings.h"
#include "judge/report.h"
#include "judge/setaside.h"

#include "desk.h"

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

struct DoorSite : SmallSite {
    DeviceId plate = device("PB1", catalogueKind("push-plate"), frame);
    DeviceId swing = device("DO1", catalogueKind("door-operator"), frame);

    OpeningId opening(Audience audience, const std::string& tag = "114")
    {
        Opening wanted;
        wanted.tag = tag;
        wanted.audience = audience;
        wanted.locks = {strike};
        wanted.doorOperators = {swing};
        return make(addOpening(job(), numbers(), wanted)).first;
    }
    Promised promised(OpeningId id, const std::string& situation, DeviceId device) const
    {
        for (const Promise& promise : job().openings.find(id)->promises)
            if (promise.situation == situationNamed(job(), situation) && promise.device == device)
                return promise.promised;
        return Promised::Nothing;
    }
    Act press(const std::string& name, Side side = Side::Outside)
    {
        return {name, side, throwsNamed(job(), "PB1=pressed")};
    }
};

} // namespace

TEST(UsualPromises, AreThoseOfTheSampleDoors)
{
    for (const std::string name : {"restroom-public", "restroom-staff"}) {
        const Job job = sample(name);
        const Opening& opening = *job.openings.begin();
        const std::vector<Promise> usual = usualPromises(job, opening);
        EXPECT_EQ(usual.size(), opening.promises.size()) << name;
        for (const Promise& promise : opening.promises)
            EXPECT_NE(std::find(usual.begin(), usual.end(), promise), usual.end())
                << name << " " << static_cast<int>(promise.situation.kind) << promise.situation.act;
    }
}

TEST(AddOpening, StartsWithItsLeafAndTheUsualPromises)
{
    DoorSite site;
    const OpeningId open = site.opening(Audience::Public), shut = site.opening(Audience::Staff, "207");
    EXPECT_EQ(nameOf(site.job(), site.job().openings.find(open)->door), "D114");
    EXPECT_EQ(site.promised(open, "rest", site.strike), Promised::Free);
    EXPECT_EQ(site.promised(shut, "rest", site.strike), Promised::Locked);
    EXPECT_EQ(site.promised(shut, "all power lost", site.strike), Promised::Locked) << "fail-secure";
    EXPECT_EQ(site.promised(shut, "rest", site.swing), Promised::MustNotStart);
    Opening again;
    again.tag = "114";
    EXPECT_EQ(refusal(addOpening(site.job(), site.numbers(), again)),
              "114: The tag '114' is another opening's already. Choose one that is free.");
    again.tag = "115";
    again.locks = {site.supply};
    EXPECT_EQ(refusal(addOpening(site.job(), site.numbers(), again)),
              "115: 'PS1' can't be a lock of 115: its kind (DC supply 24 V, 2 A, with battery) does not "
              "lock. Take it "
              "off the list of locks, or give it a kind that locks.");
}

TEST(AddAct, BringsItsPromisesAndTakesThemAway)
{
    DoorSite site;
    const OpeningId id = site.opening(Audience::Staff);
    site.make(addRequest(site.job(), id, site.press("outside plate")));
    EXPECT_EQ(site.promised(id, "request outside plate", site.strike), Promised::Free);
    EXPECT_EQ(site.promised(id, "request outside plate", site.swing), Promised::MayStart);
    site.make(alterAct(site.job(), id, ActList::Requests, "outside plate", site.press("plate")));
    EXPECT_EQ(site.promised(id, "request plate", site.strike), Promised::Free);
    EXPECT_EQ(refusal(addRequest(site.job(), id, site.press("plate"))),
              "114: 114 has an act named 'plate' twice, or without a name. Give each a name of its own.");
    EXPECT_EQ(refusal(removeAct(site.job(), id, ActList::Releases, "plate")),
              "114: 114 has no act 'plate'. Use one of: –.");
    site.make(addRelease(site.job(), id, site.press("pull", Side::Inside)));
    EXPECT_EQ(site.promised(id, "release pull", site.strike), Promised::Free);
    site.make(removeAct(site.job(), id, ActList::Requests, "plate"));
    EXPECT_TRUE(site.job().openings.find(id)->requests.empty());
}

TEST(SetOccupied, AsksWhetherItStaysLocked)
{
    DoorSite site;
    const OpeningId id = site.opening(Audience::Public);
    site.make(addRequest(site.job(), id, site.press("outside plate")));
    site.make(setOccupied(site.job(), id, throwsNamed(site.job(), "LM1:K1=in")));
    EXPECT_EQ(site.promised(id, "occupied", site.strike), Promised::Locked);
    const auto& promises = site.job().openings.find(id)->promises;
    EXPECT_TRUE(std::any_of(promises.begin(), promises.end(), [](const Promise& promise) {
        return promise.situation.kind == SituationKind::RequestWhileOccupied;
    }));
    site.make(setOccupied(site.job(), id, {}));
    EXPECT_EQ(site.promised(id, "occupied", site.strike), Promised::Nothing);
}

TEST(SetPromise, SetsAltersAndTakesAway)
{
    DoorSite site;
    const OpeningId id = site.opening(Audience::Public);
    const Situation rest{SituationKind::Rest, {}, {}};
    site.make(setPromise(site.job(), id, rest, site.strike, Promised::FreeButLatched));
    EXPECT_EQ(site.promised(id, "rest", site.strike), Promised::FreeButLatched);
    site.make(setPromise(site.job(), id, rest, site.strike, Promised::Nothing));
    EXPECT_EQ(site.promised(id, "rest", site.strike), Promised::Nothing);
    site.make(setPromise(site.job(), id, rest, site.strike, Promised::Locked));
    EXPECT_EQ(site.promised(id, "rest", site.strike), Promised::Locked);
    EXPECT_FALSE(setPromise(site.job(), id, rest, site.strike, Promised::MayStart).ok());
    EXPECT_FALSE(
        setPromise(site.job(), id, {SituationKind::Request, "none", {}}, site.strike, Promised::Free).ok());
}

TEST(AddToOpening, ListsADeviceOnceWithItsPromises)
{
    DoorSite site;
    const OpeningId id = site.opening(Audience::Staff);
    const DeviceId second = site.device("ES2", catalogueKind("strike-fail-safe"), site.frame);
    site.make(addToOpening(site.job(), id, OpeningPart::Lock, second));
    EXPECT_EQ(site.promised(id, "all power lost", second), Promised::Free) << "fail-safe";
    EXPECT_FALSE(addToOpening(site.job(), id, OpeningPart::Lock, second).ok());
    site.make(takeFromOpening(site.job(), id, second));
    EXPECT_EQ(site.promised(id, "rest", second), Promised::Nothing);
    EXPECT_EQ(site.job().openings.find(id)->locks, std::vector<DeviceId>{site.strike});
}

TEST(AlterOpening, AnswersToAFireAlarm)
{
    DoorSite site;
    const OpeningId id = site.opening(Audience::Public);
    const OperatorId fire = site.make(addOperator(site.job(), site.numbers(), fireAlarm("FA1"))).first;
    Opening wanted = *site.job().openings.find(id);
    wanted.fire = fire;
    wanted.fireRated = true;
    site.make(alterOpening(site.job(), wanted));
    EXPECT_EQ(site.job().openings.find(id)->fire, fire);
    EXPECT_EQ(refusal(addOperator(site.job(), site.numbers(), doorLeaf("PB1"))),
              "PB1: 'PB1' is the name of another operator. Choose one that is free.");
    site.make(bindRole(site.job(), site.contact, "door", wanted.door)); // a leaf fits every door switch
    site.make(removeOpening(site.job(), id));
    EXPECT_TRUE(site.job().openings.empty());
    EXPECT_TRUE(site.job().operators.find(wanted.door));
}

TEST(SetAside, NeedsSomebodyWhoAnswersForIt)
{
    const Job broken = sample("restroom-public-broken");
    Desk desk(broken);
    const std::vector<Finding> findings = checkJob(desk.job()).findings;
    const auto with = [&](Severity severity) {
        return *std::find_if(findings.begin(), findings.end(),
                             [&](const Finding& each) { return each.severity == severity; });
    };
    const Finding fault = with(Severity::Fault);
    EXPECT_FALSE(setAside(desk.job(), desk.numbers(), fault, "", "A. Writer", "2025-11-03").ok());
    EXPECT_FALSE(setAside(desk.job(), desk.numbers(), fault, "as found", " ", "2025-11-03").ok());
    const SetAsideId id =
        desk.make(setAside(desk.job(), desk.numbers(), fault, "as found", "A. Writer", "2025-11-03")).first;
    ASSERT_TRUE(setAsideFor(desk.job(), fault));
    EXPECT_EQ(setAsideFor(desk.job(), fault)->id, id);
    EXPECT_FALSE(setAside(desk.job(), desk.numbers(), fault, "again", "A. Writer", "2025-11-03").ok());
    desk.make(takeUpAgain(desk.job(), id));
    EXPECT_FALSE(setAsideFor(desk.job(), fault));
    EXPECT_FALSE(
        setAside(desk.job(), desk.numbers(), with(Severity::Danger), "as found", "A. Writer", "2025-11-03")
            .ok());
}

} // namespace doorloom
