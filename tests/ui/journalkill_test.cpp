#include "core/random.h"
#include "file/jobfile.h"
#include "ui/openjobs.h"

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <memory>
#include <sstream>
#include <thread>

#include <unistd.h>

namespace doorloom {
namespace {

using Clock = std::chrono::steady_clock; // of the machine: the same in every process
using std::chrono::milliseconds;
using std::chrono::nanoseconds;

// An edit of two rows that bear its number: a half of it would show.
Change numbered(const Job& job, long number)
{
    JobInfo info;
    info.id = job.info.empty() ? JobInfoId{job.nextNumber} : job.info.begin()->id;
    info.title = std::to_string(number);
    Sheet sheet;
    sheet.id = job.sheets.empty() ? SheetId{job.nextNumber + 1} : job.sheets.begin()->id;
    sheet.title = info.title;
    return joined(put(info), put(sheet));
}

std::string titleOf(const Job& job)
{
    const std::string info = job.info.empty() ? "" : job.info.begin()->title;
    const std::string sheet = job.sheets.empty() ? "" : job.sheets.begin()->title;
    return info == sheet ? info : "half an edit: " + info + " and " + sheet;
}

std::optional<Judged> nothing(const Job&, const IsWanted&)
{
    return std::nullopt;
}

// Tells the parent what the job is called now, and when.
void tell(const Job& job)
{
    const auto now = nanoseconds(Clock::now().time_since_epoch()).count();
    const std::string line = "#" + std::to_string(now) + " " + titleOf(job) + "\n";
    if (::write(STDOUT_FILENO, line.data(), line.size()) < 0)
        ::_exit(1);
}

} // namespace

// The child's part of the test below.
TEST(JournalChild, DISABLED_EditsUntilItIsKilled)
{
    ASSERT_TRUE(qEnvironmentVariableIsSet("CHILD_FOLDER"));
    Random random(qEnvironmentVariable("CHILD_SEED").toULongLong());
    OpenJob open(nullptr, nothing);
    ASSERT_FALSE(open.open(qEnvironmentVariable("CHILD_FOLDER").toStdString() + "/x.doorjob"));
    for (long number = 1;; ++number) {
        QUndoStack& history = open.history();
        if (random.oneIn(40)) {
            ASSERT_FALSE(open.save());
        }
        if (random.oneIn(8) && history.canUndo())
            history.undo();
        else if (random.oneIn(8) && history.canRedo())
            history.redo();
        else if (open.make(words("count"), numbered(open.job(), number)))
            FAIL();
        tell(open.job());
        QCoreApplication::processEvents();
        std::this_thread::sleep_for(milliseconds(random.below(4))); // as a hand would, only faster
    }
}

namespace {

// A child, what it has told, and when it was killed.
class Victim {
public:
    explicit Victim(std::uint64_t seed) : random_(seed)
    {
        EXPECT_TRUE(saveJobFile({}, path()).ok());
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert("CHILD_FOLDER", folder_.path());
        environment.insert("CHILD_SEED", QString::number(seed));
        startAgain(process_, "JournalChild.DISABLED_EditsUntilItIsKilled", environment);
    }

    // Out: whether it is dead now.
    bool killWhenItsTimeHasCome()
    {
        told_ += process_.readAllStandardOutput().toStdString();
        if (!dies_ && told_.find('#') != std::string::npos)
            dies_ = Clock::now() + milliseconds(random_.between(1000, 2200));
        if (process_.state() == QProcess::NotRunning)
            return true;
        if (!dies_ || Clock::now() < *dies_)
            return false;
        died_ = Clock::now();
        ::kill(static_cast<pid_t>(process_.processId()), SIGKILL);
        process_.waitForFinished();
        told_ += process_.readAllStandardOutput().toStdString();
        return true;
    }

    // Out: how old the oldest edit was that is not back; zero: all are.
    nanoseconds lost()
    {
        EXPECT_TRUE(died_) << "it ended by itself: " << told_;
        EXPECT_TRUE(readJobFile(path()).ok());
        OpenJob open(nullptr, nothing);
        EXPECT_FALSE(open.open(path()));
        EXPECT_FALSE(open.readOnly()); // the dead one's lock holds nobody up
        EXPECT_FALSE(open.recoverable() && open.recoverable()->damage);
        EXPECT_FALSE(open.recover());
        EXPECT_TRUE(verifyJob(open.job()).empty());
        return ageOfFirstAfter(titleOf(open.job()));
    }

private:
    std::string path() const { return folder_.filePath("x.doorjob").toStdString(); }

    // Of the first edit that was told and is not in a job of this title; zero: all of them are.
    nanoseconds ageOfFirstAfter(const std::string& title) const
    {
        bool isTold = title.empty();
        long newest = 0;
        nanoseconds lost{0}; // when it was told; 0: none
        for (const auto& [when, told] : told()) {
            isTold = isTold || told == title;
            newest = std::max(newest, std::atol(told.c_str()));
            if (told == title)
                lost = nanoseconds::zero();
            else if (lost == nanoseconds::zero())
                lost = when;
        }
        if (!isTold) { // written, and killed before it was told
            EXPECT_GT(std::atol(title.c_str()), newest) << title;
            return nanoseconds::zero();
        }
        return lost > nanoseconds::zero() ? died_->time_since_epoch() - lost : lost;
    }

    std::vector<std::pair<nanoseconds, std::string>> told() const
    {
        std::vector<std::pair<nanoseconds, std::string>> all;
        std::istringstream lines(told_);
        for (std::string line; std::getline(lines, line) && !lines.eof();) // the last may be cut short
            if (const std::size_t blank = line.find(' '); line.starts_with('#'))
                all.emplace_back(std::stoll(line.substr(1, blank - 1)), line.substr(blank + 1));
        return all;
    }

    QTemporaryDir folder_;
    QProcess process_;
    Random random_;
    std::string told_;
    std::optional<Clock::time_point> dies_, died_;
};

int kills()
{
    const int wanted = qEnvironmentVariableIntValue("KILLS");
    return wanted > 0 ? wanted : 60;
}

} // namespace

// KILLS=200 in the environment: so many moments.
TEST(Journal, LosesNoEditOlderThanASecondWhenTheProgramIsKilled)
{
    constexpr std::size_t mostAtOnce = 8;
    const char* only = std::getenv("SEED");
    const std::uint64_t first = only ? std::strtoull(only, nullptr, 10) : 1;
    const std::uint64_t last = only ? first : static_cast<std::uint64_t>(kills());
    nanoseconds worst{0};
    int killed = 0, complete = 0;
    std::map<std::uint64_t, std::unique_ptr<Victim>> victims;
    for (std::uint64_t next = first; next <= last || !victims.empty();) {
        for (; next <= last && victims.size() < mostAtOnce; ++next)
            victims.emplace(next, std::make_unique<Victim>(next));
        QTest::qWait(1); // the children's pipes are read meanwhile
        std::erase_if(victims, [&](const auto& each) {
            if (!each.second->killWhenItsTimeHasCome())
                return false;
            SCOPED_TRACE("SEED=" + std::to_string(each.first));
            const nanoseconds lost = each.second->lost();
            EXPECT_LT(lost, std::chrono::seconds(1));
            worst = std::max(worst, lost);
            complete += lost == nanoseconds::zero() ? 1 : 0;
            ++killed;
            return true;
        });
    }
    std::printf("killed at %d moments: %d times nothing was lost, at worst an edit %.1f ms old\n", killed,
                complete, std::chrono::duration<double, std::milli>(worst).count());
}

} // namespace doorloom
