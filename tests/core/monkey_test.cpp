#include "edit/details.h"
#include "edit/drawing.h"
#include "edit/duplicatedoor.h"
#include "edit/found.h"
#include "edit/jointerminals.h"
#include "edit/nexttag.h"
#include "edit/openings.h"
#include "edit/removeany.h"
#include "edit/typedline.h"
#include "edit/typicals.h"

#include "catalogue/catalogue.h"
#include "catalogue/stockcables.h"
#include "file/fragment.h"
#include "file/jobfile.h"

#include "desk.h"
#include "fulljob.h"
#include "random.h"

#include <map>

namespace doorloom {

namespace {

const std::vector<Kind>& kinds()
{
    static const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    return catalogue.value().kinds;
}

// Picks rows, terminals and words of a job, wrong ones now and then.
class Hand {
public:
    Hand(const Job& job, Random& random) : job_(job), random_(random), numbers_(job) {}

    const Job& job() const { return job_; }
    Random& random() { return random_; }
    Numbers& numbers() { return numbers_; }

    template <class Row> Id<Row> some()
    {
        const Table<Row>& rows = tableOf<Row>(job_);
        if (rows.empty() || random_.oneIn(40))
            return {static_cast<std::uint32_t>(random_.below(job_.nextNumber + 3))};
        auto row = rows.begin();
        for (std::size_t steps = random_.below(rows.size()); steps > 0; --steps)
            ++row;
        return row->id;
    }
    template <class Row> Id<Row> someOrNone() { return random_.oneIn(4) ? Id<Row>{} : some<Row>(); }
    std::vector<std::uint32_t> rows(int most = 5)
    {
        std::vector<std::uint32_t> all;
        for (int count = random_.between(0, most); count > 0; --count) {
            const std::uint32_t numbers[] = {some<Device>().number,  some<Splice>().number,
                                             some<Cable>().number,   some<Conductor>().number,
                                             some<Note>().number,    some<Sheet>().number,
                                             some<Opening>().number, some<Place>().number};
            all.push_back(numbers[random_.oneIn(3) ? random_.below(8) : random_.below(5)]);
        }
        return all;
    }
    Landing landing()
    {
        const DeviceId device = some<Device>();
        const Kind* kind = kindOf(job_, device);
        const auto terminals = kind ? terminalsOf(*kind) : std::vector<const Terminal*>();
        if (terminals.empty() || random_.oneIn(30))
            return {device, "nothing"};
        return {device, random_.oneOf(terminals)->key};
    }
    LandingPoint point() { return random_.oneIn(8) ? LandingPoint(some<Splice>()) : LandingPoint(landing()); }
    ConductorEnd end() { return {some<Conductor>(), random_.oneIn(2) ? WhichEnd::From : WhichEnd::To}; }
    Placeable placeable() { return random_.oneIn(5) ? Placeable(some<Splice>()) : Placeable(some<Device>()); }
    Point spot()
    {
        return random_.oneIn(40) ? Point{2'000'000'000, -2'000'000'000}
                                 : Point{random_.between(-400, 4000), random_.between(-400, 3000)};
    }
    std::string word()
    {
        static const std::vector<std::string> words = {"A1", "EL1", "C1",       "two words",
                                                       "",   "Ñ:2", "Door 114", "x"};
        return random_.oneIn(2) ? random_.oneOf(words) : "T" + std::to_string(random_.below(50));
    }
    Thrown thrown()
    {
        const OperatorId moved = some<Operator>();
        const Operator* row = job_.operators.find(moved);
        return {moved, row && !random_.oneIn(30) ? random_.oneOf(row->throws).key : "nowhere"};
    }
    Act act()
    {
        Act act{word(), random_.oneIn(2) ? Side::Inside : Side::Outside, {}};
        for (int count = random_.between(1, 3); count > 0; --count)
            act.throws.push_back(thrown());
        return act;
    }
    std::string actName(OpeningId opening)
    {
        const Opening* row = job_.openings.find(opening);
        return row && !row->requests.empty() ? random_.oneOf(row->requests).name : word();
    }
    Situation situation(OpeningId opening)
    {
        switch (random_.below(5)) {
        case 0:
            return {SituationKind::Request, actName(opening), {}};
        case 1:
            return {SituationKind::LostAlone, {}, some<Operator>()};
        case 2:
            return {SituationKind::Release, word(), {}};
        default:
            return {random_.oneIn(2) ? SituationKind::Rest : SituationKind::AllPowerLost, {}, {}};
        }
    }

private:
    const Job& job_;
    Random& random_;
    Numbers numbers_;
};

using Made = std::optional<Change>;

Made made(Result<Change> result)
{
    return result.ok() ? Made(std::move(result.value())) : std::nullopt;
}
template <class Value> Made made(const Result<Value>& result)
{
    if (!result.ok())
        return std::nullopt;
    if constexpr (requires { result.value().change; })
        return result.value().change;
    else
        return result.value().second;
}

struct Operation {
    const char* name;
    Made (*run)(Hand&);
};

ConductorWish wish(Hand& hand)
{
    ConductorWish wish;
    if (hand.random().oneIn(3))
        wish.colour = hand.random().oneOf(std::vector<std::string>{"RD", "BK", "WH", "PK"});
    if (hand.random().oneIn(5))
        wish.core = hand.random().between(1, 5);
    wish.wire = hand.random().oneIn(5);
    if (hand.random().oneIn(8))
        wish.cable = hand.some<Cable>();
    return wish;
}

Made pullBetween(Hand& hand)
{
    Cable cable;
    cable.tag = nextCableTag(hand.job());
    cable.type = hand.some<CableType>();
    cable.from = hand.some<Place>();
    cable.to = hand.some<Place>();
    if (!hand.job().cableTypes.find(cable.type) || !hand.job().places.find(cable.from) ||
        !hand.job().places.find(cable.to))
        return std::nullopt;
    return pullCable(hand.job(), hand.numbers(), cable).second;
}

Made typeALine(Hand& hand)
{
    const Stock stock{kinds(), stockCables()};
    std::string line;
    for (int word = 0; word < 7; ++word) {
        const std::vector<Completion> offered = completionsFor(hand.job(), stock, line, line.size());
        if (offered.empty())
            break;
        line += hand.random().oneOf(offered).text;
        const Result<Typed> typed = readLine(hand.job(), stock, line);
        if (typed.ok() && hand.random().oneIn(2))
            return typed.value().change;
        line += ' ';
    }
    return std::nullopt;
}

Made copyAndPaste(Hand& hand)
{
    const std::string text = copiedText(hand.job(), hand.rows());
    return text.empty()
               ? Made()
               : made(pasted(hand.job(), hand.numbers(), text, {hand.someOrNone<Sheet>(), hand.spot()}));
}

Made duplicate(Hand& hand)
{
    if (hand.job().devices.size() > 80)
        return std::nullopt; // it doubles a door each time
    return made(duplicateDoor(hand.job(), hand.numbers(), hand.some<Opening>()));
}

Made markATypical(Hand& hand)
{
    return made(markTypical(hand.job(), hand.numbers(), hand.some<Opening>(), {}, {hand.some<Device>()}));
}

Made stampATypical(Hand& hand)
{
    if (hand.job().devices.size() > 80)
        return std::nullopt;
    return made(stampTypical(hand.job(), hand.numbers(), hand.some<Typical>(), hand.random().between(1, 2),
                             {{}, hand.random().oneIn(2) ? "{door}-{tag}" : ""}));
}

// Of all its doors, or of some.
Made bringDoorsUp(Hand& hand)
{
    const Result<DoorChanges> changes = changesForStamps(hand.job(), hand.numbers(), hand.some<Typical>());
    if (!changes.ok())
        return std::nullopt;
    std::vector<StampId> chosen;
    for (const DoorChange& door : changes.value().doors)
        if (!hand.random().oneIn(3))
            chosen.push_back(door.stamp);
    return chosenDoors(hand.job(), changes.value(), chosen);
}

Made newOpening(Hand& hand)
{
    Opening wanted;
    wanted.tag = hand.word();
    wanted.audience = hand.random().oneIn(2) ? Audience::Public : Audience::Staff;
    wanted.locks = {hand.some<Device>()};
    if (hand.random().oneIn(2))
        wanted.doorOperators = {hand.some<Device>()};
    return made(addOpening(hand.job(), hand.numbers(), wanted));
}

Made otherOpening(Hand& hand)
{
    const Opening* row = hand.job().openings.find(hand.some<Opening>());
    if (!row)
        return std::nullopt;
    Opening wanted = *row;
    wanted.tag = hand.random().oneIn(2) ? hand.word() : wanted.tag;
    wanted.fireRated = !wanted.fireRated;
    wanted.fire = hand.someOrNone<Operator>();
    return made(alterOpening(hand.job(), wanted));
}

Made splice(Hand& hand)
{
    std::vector<ConductorEnd> ends;
    for (int count = hand.random().between(1, 3); count > 0; --count)
        ends.push_back(hand.end());
    return made(joinAtSplice(hand.job(), hand.numbers(), ends, nextSpliceTag(hand.job())));
}

Made align(Hand& hand)
{
    std::vector<Outline> outlines;
    for (std::uint32_t row : hand.rows())
        outlines.push_back({row, hand.spot(), hand.spot()});
    return made(alignRows(hand.job(), outlines, static_cast<Edge>(hand.random().below(4))));
}

Made release(Hand& hand)
{
    const Device* device = hand.job().devices.find(hand.some<Device>());
    if (!device || device->bindings.empty())
        return std::nullopt;
    const Key role = hand.random().oneOf(device->bindings).role;
    if (hand.random().oneIn(2))
        return made(bindRole(hand.job(), device->id, role, hand.some<Operator>()));
    return made(releaseRole(hand.job(), hand.numbers(), device->id, role));
}

Made place(Hand& hand)
{
    const Kind& kind = hand.random().oneOf(kinds());
    const PlaceId at = hand.someOrNone<Place>();
    if (at && !hand.job().places.find(at))
        return std::nullopt;
    return placeDevice(hand.job(), hand.numbers(), kind, nextDeviceTag(hand.job(), kind), at).second;
}

constexpr Operation operations[] = {
    {"placeDevice", place},
    {"pullCable", pullBetween},
    {"typed line", typeALine},
    {"copy and paste", copyAndPaste},
    {"duplicateDoor", duplicate},
    {"markTypical", markATypical},
    {"stampTypical", stampATypical},
    {"changesForStamps", bringDoorsUp},
    {"unmarkTypical",
     [](Hand& h) { return h.random().oneIn(6) ? made(unmarkTypical(h.job(), h.some<Typical>())) : Made(); }},
    {"joinTerminals",
     [](Hand& h) { return made(joinTerminals(h.job(), h.numbers(), h.point(), h.point(), wish(h))); }},
    {"landNext", [](Hand& h) { return made(landNext(h.job(), h.some<Cable>(), h.point())); }},
    {"capEnd", [](Hand& h) { return made(capEnd(h.job(), h.end())); }},
    {"insulateEnd", [](Hand& h) { return made(insulateEnd(h.job(), h.end())); }},
    {"freeEnd", [](Hand& h) { return made(freeEnd(h.job(), h.end())); }},
    {"capUnused", [](Hand& h) { return made(capUnused(h.job(), h.some<Cable>())); }},
    {"joinAtSplice", splice},
    {"putOnSheet",
     [](Hand& h) {
         return made(putOnSheet(h.job(), h.numbers(), h.some<Sheet>(), h.placeable(), h.spot(),
                                h.random().between(-5, 5)));
     }},
    {"takeOffSheet", [](Hand& h) { return Made(takeOffSheet(h.job(), h.rows())); }},
    {"moveRows", [](Hand& h) { return made(moveRows(h.job(), h.rows(), h.spot())); }},
    {"alignRows", align},
    {"turnRows", [](Hand& h) { return Made(turnRows(h.job(), h.rows(), h.random().between(-3, 3))); }},
    {"pinBends",
     [](Hand& h) {
         std::vector<Point> points;
         for (int count = h.random().between(0, 3); count > 0; --count)
             points.push_back(h.spot());
         return made(pinBends(h.job(), h.numbers(), h.some<Conductor>(), points));
     }},
    {"clearBends", [](Hand& h) { return Made(clearBends(h.job(), h.rows())); }},
    {"addNote",
     [](Hand& h) { return made(addNote(h.job(), h.numbers(), h.some<Sheet>(), h.spot(), h.word())); }},
    {"rewordNote", [](Hand& h) { return made(rewordNote(h.job(), h.some<Note>(), h.word())); }},
    {"addSheet", [](Hand& h) { return made(addSheet(h.job(), h.numbers(), h.word())); }},
    {"renameSheet", [](Hand& h) { return made(renameSheet(h.job(), h.some<Sheet>(), h.word())); }},
    {"moveSheet", [](Hand& h) { return made(moveSheet(h.job(), h.some<Sheet>(), h.random().below(5))); }},
    {"removeSheet", [](Hand& h) { return made(removeSheet(h.job(), h.some<Sheet>())); }},
    {"removeSheetAndDevices",
     [](Hand& h) {
         return h.random().oneIn(10) ? made(removeSheetAndDevices(h.job(), h.some<Sheet>())) : Made();
     }},
    {"setInfo",
     [](Hand& h) {
         JobInfo info;
         info.title = h.word();
         info.spanish = info.english = !h.random().oneIn(5);
         return made(setInfo(h.job(), h.numbers(), info));
     }},
    {"removeAny", [](Hand& h) { return made(removeAny(h.job(), h.rows(2))); }},
    {"addPlace",
     [](Hand& h) {
         Place place;
         place.tag = h.word();
         return made(addPlace(h.job(), h.numbers(), place));
     }},
    {"renamePlace", [](Hand& h) { return made(renamePlace(h.job(), h.some<Place>(), h.word())); }},
    {"setPlace", [](Hand& h) { return made(setPlace(h.job(), h.rows(), h.someOrNone<Place>())); }},
    {"setWords", [](Hand& h) { return made(setWords(h.job(), h.some<Device>(), h.word())); }},
    {"setStanding",
     [](Hand& h) {
         return Made(setStanding(h.job(), h.rows(2), static_cast<Standing>(h.random().below(5))));
     }},
    {"releaseRole", release},
    {"renameCable", [](Hand& h) { return made(renameCable(h.job(), h.some<Cable>(), h.word())); }},
    {"setCableLength",
     [](Hand& h) {
         return made(setCableLength(h.job(), h.some<Cable>(), {double(h.random().between(-1, 40))}));
     }},
    {"setCablePull", [](Hand& h) { return made(setCablePull(h.job(), h.some<Cable>(), h.word())); }},
    {"setCableEnds",
     [](Hand& h) {
         return made(setCableEnds(h.job(), h.some<Cable>(), h.someOrNone<Place>(), h.someOrNone<Place>()));
     }},
    {"setCableType",
     [](Hand& h) {
         return made(setCableType(h.job(), h.numbers(), h.some<Cable>(), h.random().oneOf(stockCables())));
     }},
    {"renameConductor",
     [](Hand& h) { return made(renameConductor(h.job(), h.some<Conductor>(), h.word())); }},
    {"setWire", [](Hand& h) { return made(setWire(h.job(), h.some<Conductor>(), "RD", "18 AWG", {0.5})); }},
    {"renameSplice", [](Hand& h) { return made(renameSplice(h.job(), h.some<Splice>(), h.word())); }},
    {"setSpliceConnector",
     [](Hand& h) {
         return made(setSpliceConnector(h.job(), h.some<Splice>(), h.word(), h.random().between(0, 5)));
     }},
    {"addOpening", newOpening},
    {"alterOpening", otherOpening},
    {"addToOpening",
     [](Hand& h) {
         return made(addToOpening(h.job(), h.some<Opening>(),
                                  h.random().oneIn(2) ? OpeningPart::Lock : OpeningPart::DoorOperator,
                                  h.some<Device>()));
     }},
    {"takeFromOpening",
     [](Hand& h) { return made(takeFromOpening(h.job(), h.some<Opening>(), h.some<Device>())); }},
    {"addAct",
     [](Hand& h) {
         return made(addAct(h.job(), h.some<Opening>(),
                            h.random().oneIn(3) ? ActList::Releases : ActList::Requests, h.act()));
     }},
    {"alterAct",
     [](Hand& h) {
         const OpeningId opening = h.some<Opening>();
         return made(alterAct(h.job(), opening, ActList::Requests, h.actName(opening), h.act()));
     }},
    {"removeAct",
     [](Hand& h) {
         const OpeningId opening = h.some<Opening>();
         return made(removeAct(h.job(), opening, ActList::Requests, h.actName(opening)));
     }},
    {"setOccupied",
     [](Hand& h) {
         const std::vector<Thrown> throws =
             h.random().oneIn(3) ? std::vector<Thrown>() : std::vector{h.thrown()};
         return made(setOccupied(h.job(), h.some<Opening>(), throws));
     }},
    {"setPromise",
     [](Hand& h) {
         const OpeningId opening = h.some<Opening>();
         return made(setPromise(h.job(), opening, h.situation(opening), h.some<Device>(),
                                static_cast<Promised>(h.random().below(6))));
     }},
    {"addOperator",
     [](Hand& h) {
         return made(addOperator(h.job(), h.numbers(),
                                 h.random().oneIn(2) ? doorLeaf(h.word()) : fireAlarm(h.word())));
     }},
};

Job startFor(Random& random)
{
    if (random.oneIn(4))
        return fullJob();
    if (random.oneIn(4))
        return SmallSite().job();
    const Result<Job> job =
        readJobFile(std::string(SOURCE_FOLDER "/samples/") +
                    (random.oneIn(2) ? "restroom-public" : "restroom-staff") + ".doorjob");
    if (!job.ok())
        throw std::runtime_error(inWords(job.problem()));
    return job.value();
}

} // namespace

// Whatever is done with the operations: a change that one of them gives is accepted, keeps every promise of
// the model, and undoing them all gives back the job.
TEST(AnyOperations, MakeSoundChangesThatCanBeUndone)
{
    std::map<std::string, std::pair<int, int>> counts; // made, refused
    forEachSeed(120, [&](Random& random) {
        const Job start = startFor(random);
        Job job = start;
        std::vector<Change> undo;
        for (int step = 0; step < 60 && !::testing::Test::HasFailure(); ++step) {
            const Operation& operation = operations[random.below(std::size(operations))];
            SCOPED_TRACE(std::string(operation.name) + ", step " + std::to_string(step));
            Hand hand(job, random);
            const Made change = operation.run(hand);
            auto& [accepted, refused] = counts[operation.name];
            ++(change ? accepted : refused);
            if (!change)
                continue;
            const Result<Change> back = applyChange(job, *change);
            ASSERT_TRUE(back.ok()) << inWords(back.problem());
            undo.push_back(back.value());
            for (const Problem& problem : verifyJob(job))
                ADD_FAILURE() << inWords(problem);
            found(job, hand.word());
        }
        const Result<Job> read = readJob(jobText(job), "monkey.doorjob");
        ASSERT_TRUE(read.ok()) << inWords(read.problem());
        EXPECT_EQ(read.value(), job) << "what can be made can be saved";
        for (auto back = undo.rbegin(); back != undo.rend(); ++back)
            ASSERT_TRUE(applyChange(job, *back).ok());
        EXPECT_EQ(job, start);
    });
    if (std::getenv("SEED"))
        return;
    for (const Operation& operation : operations)
        EXPECT_GT(counts[operation.name].first, 0) << operation.name << " was never made";
}

} // namespace doorloom
