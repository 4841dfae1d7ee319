#pragma once

#include "openjob/openjob.h"

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

namespace doorloom {

// Judges snapshots on a thread of its own, the newest only: one that still waits is replaced by a newer, and
// the one that is being judged is not wanted any more then.
// Owns: the thread; going away waits until it has given up.
class Worker {
public:
    struct Verdict {
        std::uint64_t snapshot = 0;
        std::shared_ptr<const Judged> judged;
    };
    using Tell = std::function<void(Verdict)>; // called on the worker's thread

    Worker(Judge judge, Tell tell);
    ~Worker();
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;

    void look(std::uint64_t snapshot, Job job);

private:
    struct Waiting {
        std::uint64_t snapshot = 0;
        Job job;
    };
    void run();
    std::optional<Waiting> next(); // nothing: the end
    bool isNextAwaited();

    Judge judge_;
    Tell tell_;
    std::mutex mutex_;
    std::condition_variable changed_;
    std::optional<Waiting> waiting_;
    bool isEnding_ = false;
    std::thread thread_; // last: it uses the rest
};

} // namespace doorloom
