#pragma once

#include "window/window.h"

#include <memory>
#include <vector>

namespace doorloom::bench {

// The window as people have it, shown, with this file open and judged. Ends the program when it is refused.
std::unique_ptr<Window> judgedWindow(const QString& file);
void waitUntilJudged(const Window& window); // and shown; spends no time of this thread meanwhile

// One edit after another, of the sorts that people make, the same in every run.
class Edits {
public:
    static constexpr int sorts = 5;
    static const char* sortOf(int number);

    explicit Edits(Window& window);

    void choose(int number); // its device is in view, and in every other round the one that is chosen
    void make(int number);   // ends the program when it is refused

private:
    Device deviceAt(int number) const;
    Result<Change> changeAt(int number) const;

    Window& window_;
    std::vector<DeviceId> devices_;
    std::vector<ConductorId> conductors_;
};

} // namespace doorloom::bench
