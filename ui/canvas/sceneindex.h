#pragma once

#include "sheet/area.h"

#include <cstdint>
#include <memory>
#include <vector>

namespace doorloom {

enum class Layer : std::uint8_t { Frame, Cable, Conductor, Device, Splice, Note };

// Something drawn: where it stands among the things of its layer.
struct Handle {
    Layer layer = Layer::Frame;
    std::uint32_t index = 0;

    friend bool operator==(const Handle&, const Handle&) = default;
};

struct Indexed {
    Area area;
    Handle what;
};

// What lies where on the sheet.
// Cost: a look at an area grows with what lies there; one thing in or out, with the logarithm of all
class SceneIndex {
public:
    SceneIndex();
    ~SceneIndex();
    SceneIndex(SceneIndex&&) noexcept;
    SceneIndex& operator=(SceneIndex&&) noexcept;

    void fill(const std::vector<Indexed>& all); // instead of what is there
    void insert(const Indexed& one);
    void remove(const Indexed& one);
    // Appends everything that meets the area; a thing with several pieces may come more than once.
    void lookUp(const Area& area, std::vector<Handle>& found) const;

private:
    struct Tree;
    std::unique_ptr<Tree> tree_;
};

} // namespace doorloom
