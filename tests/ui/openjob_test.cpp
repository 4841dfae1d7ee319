#include "core/jobs.h"
#include "core/random.h"
#include "edit/operations.h"
#include "ui/openjobs.h"

#include <gtest/gtest.h>

#include <QCoreApplication>

#include <atomic>
#include <mutex>
#include <semaphore>

namespace doorloom {
namespace {

Change note(std::uint32_t number, std::uint32_t sheet, const std::string& text)
{
    return put(Note{{number}, {sheet}, {}, text});
}

std::vector<std::string_view> rulesOf(const CheckResult& check)
{
    std::vector<std::string_view> rules;
    for (const Finding& finding : check.findings)
        rules.push_back(finding.rule);
    return rules;
}

// What jobChanged has said.
struct Heard {
    std::vector<Touched> touched;

    explicit Heard(OpenJob& open)
    {
        QObject::connect(&open, &OpenJob::jobChanged, &open,
                         [this](const Touched& each) { touched.push_back(each); });
    }
};

bool isJudged(OpenJob& open)
{
    return QTest::qWaitFor([&] { return open.judged() != nullptr; }, 20'000);
}

// A judge that says which job it saw by a finding for each place, and waits until it may go on.
class SlowJudge {
public:
    Judge judge()
    {
        return [this](const Job& job, const IsWanted& isWanted) -> std::optional<Judged> {
            ++started;
            if (isSlow)
                mayGoOn_.acquire();
            if (givesUp && !isWanted())
                return std::nullopt;
            Judged judged;
            judged.check.findings.resize(job.places.size());
            return judged;
        };
    }
    void goOn() { mayGoOn_.release(); }
    bool hasStarted(int times)
    {
        return QTest::qWaitFor([&] { return started >= times; }, 20'000);
    }

    std::atomic<int> started = 0;
    std::atomic<bool> isSlow = true, givesUp = false;

private:
    std::counting_semaphore<> mayGoOn_{0};
};

} // namespace

TEST(OpenJob, UndoAndRedoGoThroughWhatWasMade)
{
    OpenJob open;
    open.begin({});
    EXPECT_EQ(open.make(words("one"), placeNamed(1, "ONE")), std::nullopt);
    EXPECT_EQ(open.make(words("two"), placeNamed(2, "TWO")), std::nullopt);
    EXPECT_EQ(open.history().undoText(), "do two");
    const std::uint64_t before = open.generation();

    open.history().undo();
    EXPECT_EQ(placesOf(open.job()), std::vector<std::string>{"ONE"});
    EXPECT_EQ(open.history().undoText(), "do one");
    EXPECT_EQ(open.history().redoText(), "do two");
    open.history().undo();
    EXPECT_EQ(open.job(), Job{});
    open.history().redo();
    open.history().redo();
    EXPECT_EQ(placesOf(open.job()), (std::vector<std::string>{"ONE", "TWO"}));
    EXPECT_EQ(open.generation(), before + 4);
}

TEST(OpenJob, KeepsTheJobWhenAChangeIsRefused)
{
    OpenJob open;
    Heard heard(open);
    const std::optional<Problem> problem = open.make(words("note"), note(5, 4, "on no sheet"));
    ASSERT_TRUE(problem);
    EXPECT_EQ(open.job(), Job{});
    EXPECT_EQ(open.history().count(), 0);
    EXPECT_EQ(open.generation(), 0u);
    EXPECT_TRUE(heard.touched.empty());
}

TEST(OpenJob, MakesNoStepOfAChangeThatChangesNothing)
{
    OpenJob open;
    EXPECT_EQ(open.make(words("place"), placeNamed(1, "ONE")), std::nullopt);
    Heard heard(open);
    EXPECT_EQ(open.make(words("nothing"), {}), std::nullopt);
    EXPECT_EQ(open.make(words("place"), placeNamed(1, "ONE")), std::nullopt);
    EXPECT_EQ(open.history().count(), 1);
    EXPECT_EQ(open.generation(), 1u);
    EXPECT_TRUE(heard.touched.empty());
}

TEST(OpenJob, SaysWhatItUndoesInTheLanguageOfTheWindow)
{
    OpenJob open;
    open.setLanguage(Language::Spanish);
    EXPECT_EQ(open.make(words("uno"), placeNamed(1, "ONE")), std::nullopt);
    EXPECT_EQ(open.history().undoText(), "hacer uno");
}

TEST(OpenJob, JoinsChangesOfOneRunIntoOneStep)
{
    OpenJob open;
    EXPECT_EQ(open.make(words("place"), placeNamed(1, "P")), std::nullopt);
    for (const char* tag : {"A", "AB", "ABC"})
        EXPECT_EQ(open.make(words(tag), placeNamed(1, tag), "typing"), std::nullopt);
    EXPECT_EQ(open.make(words("two"), placeNamed(2, "Q"), "typing"), std::nullopt);
    ASSERT_EQ(open.history().count(), 2);
    EXPECT_EQ(open.history().undoText(), "do two");

    open.history().undo();
    EXPECT_EQ(placesOf(open.job()), std::vector<std::string>{"P"});
    open.history().redo();
    EXPECT_EQ(placesOf(open.job()), (std::vector<std::string>{"ABC", "Q"}));
}

TEST(OpenJob, MakesNoStepOfARunThatComesToNothing)
{
    OpenJob open;
    EXPECT_EQ(open.make(words("place"), placeNamed(1, "P")), std::nullopt);
    for (const char* tag : {"PA", "PAB", "PA", "P"})
        EXPECT_EQ(open.make(words(tag), placeNamed(1, tag), "typing"), std::nullopt);
    EXPECT_EQ(open.history().count(), 1);
    EXPECT_EQ(open.make(words("PX"), placeNamed(1, "PX"), "typing"), std::nullopt);
    EXPECT_EQ(open.history().count(), 2);
    open.history().undo();
    EXPECT_EQ(placesOf(open.job()), std::vector<std::string>{"P"});
    open.history().undo();
    EXPECT_EQ(open.job(), Job{});
}

TEST(OpenJob, EndsARunWithAnotherKeyOrAnUndo)
{
    OpenJob open;
    const auto type = [&](const char* tag, const char* key) {
        EXPECT_EQ(open.make(words(tag), placeNamed(1, tag), key), std::nullopt);
        return open.history().count();
    };
    EXPECT_EQ(type("A", "one"), 1);
    EXPECT_EQ(type("B", "other"), 2);
    EXPECT_EQ(type("C", "one"), 3);
    EXPECT_EQ(type("D", ""), 4);
    EXPECT_EQ(type("E", ""), 5);
    EXPECT_EQ(type("F", "one"), 6);
    open.history().undo();
    open.history().redo();
    EXPECT_EQ(type("G", "one"), 7);
}

TEST(OpenJob, SaysOnceWhatAChangeTouched)
{
    OpenJob open;
    Heard heard(open);
    Change two = joined(placeNamed(7, "SEVEN"), placeNamed(3, "THREE"));
    EXPECT_EQ(open.make(words("two"), two), std::nullopt);
    ASSERT_EQ(heard.touched.size(), 1u);
    EXPECT_EQ(heard.touched[0].rows, (std::vector<std::uint32_t>{3, 7}));
    EXPECT_TRUE(heard.touched[0].wiring);
    EXPECT_FALSE(heard.touched[0].everything);

    EXPECT_EQ(open.make(words("gone"), {{Put<Place>{{3}, std::nullopt}}}), std::nullopt);
    EXPECT_EQ(heard.touched.at(1).rows, std::vector<std::uint32_t>{3});

    open.history().setIndex(0); // both at once
    ASSERT_EQ(heard.touched.size(), 3u);
    EXPECT_EQ(heard.touched[2].rows, (std::vector<std::uint32_t>{3, 7}));

    open.begin({});
    ASSERT_EQ(heard.touched.size(), 4u);
    EXPECT_TRUE(heard.touched[3].everything && heard.touched[3].wiring && heard.touched[3].rows.empty());
}

TEST(OpenJob, TellsDrawingFromWiring)
{
    OpenJob open;
    open.begin(oneDoor().job());
    const std::uint32_t next = open.job().nextNumber;
    const DeviceId device = open.job().devices.begin()->id;
    const ConductorId conductor = open.job().conductors.begin()->id;
    Heard heard(open);
    for (const Change& drawing : {put(Sheet{{next}, "Sheet", 1}), note(next + 1, next, "words"),
                                  put(Placement{{next + 2}, {next}, device, {1, 2}, 0}),
                                  put(Bends{{next + 3}, conductor, {{3, 4}}})}) {
        EXPECT_EQ(open.make(words("draw"), drawing), std::nullopt);
        EXPECT_FALSE(heard.touched.back().wiring);
    }
    const Change both = joined(note(next + 1, next, "other words"), placeNamed(next + 4, "P"));
    EXPECT_EQ(open.make(words("both"), both), std::nullopt);
    EXPECT_TRUE(heard.touched.back().wiring);
}

TEST(OpenJob, AnswersHistoryRightlyWhileTheSignalIsHeard)
{
    OpenJob open;
    bool isRight = false;
    QObject::connect(&open, &OpenJob::jobChanged, &open, [&] {
        isRight = open.history().canUndo() == !open.job().places.empty() &&
                  open.unsaved() == !open.job().places.empty();
    });
    EXPECT_EQ(open.make(words("one"), placeNamed(1, "ONE")), std::nullopt);
    EXPECT_TRUE(isRight);
    isRight = false;
    open.history().undo();
    EXPECT_TRUE(isRight);
}

TEST(OpenJob, JudgesTheJobAsTheChecksDo)
{
    OpenJob open;
    open.begin(oneDoor().job());
    ASSERT_TRUE(isJudged(open));
    const auto expected = rulesOf(checkJob(open.job(), windowBudget));
    EXPECT_EQ(rulesOf(open.judged()->check), expected);
    EXPECT_EQ(open.judged()->schedule.boxes.size(), scheduleOf(open.job(), {}).boxes.size());

    const ConductorId wire = conductorNamed(open.job(), "PS1:+ → LM1:+");
    const Result<Change> off = takeOff(open.job(), wire);
    ASSERT_TRUE(off.ok());
    EXPECT_EQ(open.make(words("off"), off.value()), std::nullopt);
    EXPECT_EQ(open.judged(), nullptr);
    ASSERT_TRUE(isJudged(open));
    EXPECT_EQ(rulesOf(open.judged()->check), rulesOf(checkJob(open.job(), windowBudget)));
    EXPECT_NE(rulesOf(open.judged()->check), expected);
}

TEST(OpenJob, NeverShowsWhatIsStale)
{
    SlowJudge slow;
    OpenJob open(nullptr, slow.judge());
    std::vector<std::size_t> shown; // by judgedChanged
    QObject::connect(&open, &OpenJob::judgedChanged, &open, [&] {
        if (const Judged* judged = open.judged()) {
            EXPECT_EQ(judged->check.findings.size(), open.job().places.size());
            shown.push_back(judged->check.findings.size());
        }
    });
    open.begin({});
    ASSERT_TRUE(slow.hasStarted(1)); // it looks at the empty job
    for (std::uint32_t number = 1; number <= 5; ++number) {
        EXPECT_EQ(open.make(words("place"), placeNamed(number, "P")), std::nullopt);
        EXPECT_EQ(open.judged(), nullptr);
    }
    slow.goOn(); // what it found of the empty job comes now, too late
    ASSERT_TRUE(slow.hasStarted(2));
    QCoreApplication::processEvents();
    EXPECT_EQ(open.judged(), nullptr);
    slow.goOn();
    ASSERT_TRUE(isJudged(open));
    EXPECT_EQ(shown, std::vector<std::size_t>{5});
    EXPECT_EQ(slow.started, 2); // those between were never looked at
}

TEST(OpenJob, LetsItsWorkerGiveUpWhatNobodyWantsAnyMore)
{
    SlowJudge slow;
    slow.givesUp = true;
    auto open = std::make_unique<OpenJob>(nullptr, slow.judge());
    open->begin({});
    ASSERT_TRUE(slow.hasStarted(1));
    EXPECT_EQ(open->make(words("place"), placeNamed(1, "P")), std::nullopt);
    slow.goOn(); // gives up the empty job
    ASSERT_TRUE(slow.hasStarted(2));
    slow.goOn(); // the newest is always wanted
    ASSERT_TRUE(isJudged(*open));
    EXPECT_EQ(open->judged()->check.findings.size(), 1u);
}

TEST(OpenJob, KeepsWhatWasJudgedWhileOnlyTheDrawingChanges)
{
    SlowJudge slow;
    slow.isSlow = false;
    OpenJob open(nullptr, slow.judge());
    open.begin({});
    ASSERT_TRUE(isJudged(open));
    const Judged* before = open.judged();
    EXPECT_EQ(open.make(words("sheet"), put(Sheet{{1}, "Sheet", 1})), std::nullopt);
    EXPECT_EQ(open.judged(), before);
    EXPECT_EQ(slow.started, 1);

    slow.isSlow = true;
    EXPECT_EQ(open.make(words("place"), placeNamed(2, "P")), std::nullopt);
    ASSERT_TRUE(slow.hasStarted(2));
    EXPECT_EQ(open.make(words("note"), note(3, 1, "drawn while the worker looks")), std::nullopt);
    slow.goOn();
    ASSERT_TRUE(isJudged(open)); // still true of the wiring as it is
    EXPECT_EQ(slow.started, 2);
}

TEST(OpenJob, EndsWhileItsWorkerIsBusy)
{
    SlowJudge slow;
    auto open = std::make_unique<OpenJob>(nullptr, slow.judge());
    open->begin({});
    ASSERT_TRUE(slow.hasStarted(1));
    slow.goOn();
    open.reset(); // what the worker tells now reaches nobody
    QCoreApplication::processEvents();
}

TEST(OpenJob, ComesBackToTheStartAfterAnyWalkThroughItsHistory)
{
    forEachSeed(50, [](Random& random) {
        OpenJob open;
        const Job start = oneDoor().job();
        open.begin(start);
        std::vector<Job> at = {open.job()}; // by the history's index
        for (int step = 0; step < 60; ++step) {
            QUndoStack& history = open.history();
            if (random.oneIn(3)) {
                history.setIndex(
                    static_cast<int>(random.below(static_cast<std::size_t>(history.count() + 1))));
            } else {
                const std::uint32_t number = random.oneIn(2) || open.job().places.empty()
                                                 ? open.job().nextNumber
                                                 : open.job().places.begin()->id.number;
                const std::string key = random.oneIn(2) ? "run" : "";
                const std::uint64_t before = open.generation();
                EXPECT_EQ(
                    open.make(words("place"), placeNamed(number, "P" + std::to_string(random.below(3))), key),
                    std::nullopt);
                if (open.generation() > before) { // a step of its own, a part of the last one, or its end
                    at.resize(static_cast<std::size_t>(history.index()));
                    at.push_back(open.job());
                }
            }
            EXPECT_EQ(open.job(), at.at(static_cast<std::size_t>(history.index())));
            EXPECT_TRUE(verifyJob(open.job()).empty());
        }
        open.history().setIndex(0);
        EXPECT_EQ(open.job(), start);
    });
}

} // namespace doorloom
