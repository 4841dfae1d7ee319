#include "route/lines.h"

#include <cmath>

namespace doorloom::routing {
namespace {

constexpr double same = 1e-6; // places nearer than this are one line

void sortOut(std::vector<double>& places)
{
    std::sort(places.begin(), places.end());
    const auto isSame = [](double a, double b) { return b - a < same; };
    places.erase(std::unique(places.begin(), places.end(), isSame), places.end());
}

// Lines at the wanted gap after `from`; when there are too many, they stand along both ends.
void fill(double from, double to, int most, std::vector<double>& lines)
{
    const double room = std::floor((to - from) / wantedGap + same) - 1;
    if (room <= most) {
        for (int i = 1; i <= room; ++i)
            lines.push_back(from + wantedGap * i);
        return;
    }
    for (int i = 1; i <= most / 2; ++i) {
        lines.push_back(from + wantedGap * i);
        lines.push_back(to - wantedGap * i);
    }
}

void measure(Lines& lines, double scale)
{
    const int count = lines.count();
    lines.step.assign(static_cast<std::size_t>(count), 0);
    lines.distance.assign(static_cast<std::size_t>(count), 0);
    lines.nearFirst.resize(static_cast<std::size_t>(count));
    lines.nearLast.resize(static_cast<std::size_t>(count));
    int first = 0;
    for (int i = 0; i < count; ++i) {
        const auto k = static_cast<std::size_t>(i);
        if (i > 0) {
            const double cost = std::clamp(std::round((lines.at[k] - lines.at[k - 1]) * scale), 1.0, 400.0);
            lines.step[k] = static_cast<Cost>(cost);
            lines.distance[k] = lines.distance[k - 1] + lines.step[k];
        }
        while (lines.at[k] - lines.at[static_cast<std::size_t>(first)] > wantedGap - 0.05)
            ++first;
        lines.nearFirst[k] = first;
        lines.nearLast[k] = i;
        for (int j = first; j < i; ++j)
            lines.nearLast[static_cast<std::size_t>(j)] = i;
    }
}

} // namespace

int Lines::firstFrom(double place) const
{
    return static_cast<int>(std::lower_bound(at.begin(), at.end(), place) - at.begin());
}

int Lines::nearest(double place) const
{
    const auto after = std::lower_bound(at.begin(), at.end(), place);
    if (after == at.begin())
        return 0;
    const int i = static_cast<int>(after - at.begin());
    return after == at.end() || place - at[static_cast<std::size_t>(i - 1)] < *after - place ? i - 1 : i;
}

bool Lines::has(double place) const
{
    return !at.empty() && std::abs(at[static_cast<std::size_t>(nearest(place))] - place) < same;
}

Lines layLines(std::vector<double> needed, int spare, int most, double scale)
{
    Lines lines;
    if (needed.empty())
        return lines;
    sortOut(needed);
    lines.at = needed;
    for (std::size_t i = 0; i + 1 < needed.size(); ++i)
        fill(needed[i], needed[i + 1], most, lines.at);
    for (int i = 1; i <= spare; ++i) {
        lines.at.push_back(needed.front() - wantedGap * i);
        lines.at.push_back(needed.back() + wantedGap * i);
    }
    sortOut(lines.at);
    measure(lines, scale);
    return lines;
}

} // namespace doorloom::routing
