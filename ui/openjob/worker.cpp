#include "openjob/worker.h"

#include <utility>

namespace doorloom {

Worker::Worker(Judge judge, Tell tell)
    : judge_(std::move(judge)), tell_(std::move(tell)), thread_([this] { run(); })
{
}

Worker::~Worker()
{
    {
        const std::lock_guard lock(mutex_);
        isEnding_ = true;
        waiting_.reset();
    }
    changed_.notify_one();
    thread_.join();
}

void Worker::look(std::uint64_t snapshot, Job job)
{
    {
        const std::lock_guard lock(mutex_);
        waiting_ = Waiting{snapshot, std::move(job)};
    }
    changed_.notify_one();
}

std::optional<Worker::Waiting> Worker::next()
{
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [this] { return isEnding_ || waiting_; });
    return std::exchange(waiting_, std::nullopt);
}

bool Worker::isNextAwaited()
{
    const std::lock_guard lock(mutex_);
    return isEnding_ || waiting_;
}

// What was told stays until there is another: its thousands of rows are then given back on this thread, not
// on the window's.
void Worker::run()
{
    std::shared_ptr<const Judged> told;
    while (const std::optional<Waiting> snapshot = next())
        if (std::optional<Judged> judged = judge_(snapshot->job, [this] { return !isNextAwaited(); })) {
            told = std::make_shared<const Judged>(*std::move(judged));
            tell_({snapshot->snapshot, told});
        }
}

} // namespace doorloom
