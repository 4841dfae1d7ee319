#include "canvas/drawing.h"

#include <algorithm>

// Where conductors cross: the upright one passes under the level one, and is drawn with a gap there.
namespace doorloom {
namespace {

bool isLevelPiece(const ConductorDrawn& drawn, std::size_t i)
{
    return drawn.line[i].y == drawn.line[i + 1].y && drawn.line[i].x != drawn.line[i + 1].x;
}

bool isUprightPiece(const ConductorDrawn& drawn, std::size_t i)
{
    return drawn.line[i].x == drawn.line[i + 1].x && drawn.line[i].y != drawn.line[i + 1].y;
}

bool crosses(const Area& level, const Area& upright)
{
    return level.left < upright.left && upright.left < level.right && upright.top < level.top &&
           level.top < upright.bottom;
}

} // namespace

// Calls visit(piece, other) for each conductor with a piece in the area of one of these; those that wait for
// their way have no crossings yet.
template <class IsWanted, class Visit>
void Drawing::forEachNear(const ConductorDrawn& drawn, IsWanted isWanted, Visit visit) const
{
    std::vector<Handle> found;
    for (std::size_t i = 0; i + 1 < drawn.line.size(); ++i) {
        if (drawn.isWaiting || !isWanted(drawn, i))
            continue;
        found.clear();
        index_.lookUp(areaOf(drawn.line[i], drawn.line[i + 1]), found);
        std::vector<std::uint32_t> others;
        for (const Handle& handle : found)
            if (handle.layer == Layer::Conductor)
                others.push_back(handle.index);
        std::sort(others.begin(), others.end());
        others.erase(std::unique(others.begin(), others.end()), others.end());
        for (const std::uint32_t index : others)
            if (const ConductorDrawn& other = conductors_[index]; &other != &drawn && !other.isWaiting)
                visit(i, other);
    }
}

// The gaps of a conductor under all others.
void Drawing::findGaps(std::uint32_t number)
{
    ConductorDrawn& drawn = *conductors_.edit(number);
    drawn.gaps.clear();
    std::vector<std::uint32_t> above;
    forEachNear(drawn, isUprightPiece, [&](std::size_t i, const ConductorDrawn& other) {
        const Area upright = areaOf(drawn.line[i], drawn.line[i + 1]);
        for (std::size_t k = 0; k + 1 < other.line.size(); ++k)
            if (isLevelPiece(other, k) && crosses(areaOf(other.line[k], other.line[k + 1]), upright)) {
                drawn.gaps.push_back({i, other.line[k].y});
                above.push_back(other.id.number);
            }
    });
    std::sort(drawn.gaps.begin(), drawn.gaps.end());
    for (const std::uint32_t row : above) {
        std::vector<std::uint32_t>& over = conductors_.edit(row)->over;
        if (std::find(over.begin(), over.end(), number) == over.end())
            over.push_back(number);
    }
}

// After lines have changed: theirs, and those of what they cross or crossed.
void Drawing::findCrossings()
{
    std::set<std::uint32_t> all = std::exchange(uncrossed_, {});
    const std::vector<std::uint32_t> moved(all.begin(), all.end());
    for (const std::uint32_t number : moved)
        if (const ConductorDrawn* drawn = conductors_.find(number))
            forEachNear(*drawn, isLevelPiece,
                        [&](std::size_t, const ConductorDrawn& other) { all.insert(other.id.number); });
    for (const std::uint32_t number : all)
        if (conductors_.find(number))
            findGaps(number);
}

} // namespace doorloom
