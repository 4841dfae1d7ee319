#include "solve/restreadings.h"

#include "solve/readings.h"
#include "verdict/questions.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr std::uint32_t none = ~0u;
constexpr Text reads = {.en = "{volts} V against {minus} at rest", .es = "{volts} V respecto a {minus} en reposo"};
constexpr Text floats = {.en = "floating at rest", .es = "flotante en reposo"};

std::string minusName(const Job& job, const Netlist& net, const Feed& feed)
{
    const auto terminal = landingAt(job, net, feed.minus);
    return terminal ? nameOf(job, *terminal) : tagOf(job, net.vertex(feed.minus).device);
}

} // namespace

RestReadings::RestReadings(const Job& job) : net_(job)
{
    const Circuit& circuit = net_.circuit();
    const std::optional<Position> settled = Questions(circuit, windowBudget).settled(atRest(circuit));
    if (!settled)
        return;
    const Meter meter(job, net_);
    const Readings readings(meter, *settled, {.want = Want::JustVolts});
    if (!readings.hold())
        return;
    solution_ = readings.solution();
    std::uint32_t pieces = 0;
    for (std::uint32_t piece : solution_->piece)
        pieces = std::max(pieces, piece + 1);
    feedOf_.assign(pieces, none);
    for (std::uint32_t i = 0; i < circuit.feeds.size(); ++i) {
        minusNames_.push_back(minusName(job, net_, circuit.feeds[i]));
        minuses_.push_back(landingAt(job, net_, circuit.feeds[i].minus));
        std::uint32_t& feed = feedOf_[solution_->piece[circuit.feeds[i].minus]];
        if (feed == none && !circuit.feeds[i].ac)
            feed = i;
    }
}

// None: it floats.
std::uint32_t RestReadings::feedAt(const Landing& terminal, std::optional<Vertex>& vertex) const
{
    vertex = net_.vertexOf(terminal.device, terminal.terminal);
    return vertex && solution_ ? feedOf_[solution_->piece[*vertex]] : none;
}

std::optional<Landing> RestReadings::minusFor(const Landing& terminal) const
{
    std::optional<Vertex> vertex;
    const std::uint32_t feed = feedAt(terminal, vertex);
    return feed == none ? std::nullopt : minuses_[feed];
}

Message RestReadings::at(const Landing& terminal) const
{
    std::optional<Vertex> vertex;
    const std::uint32_t feed = feedAt(terminal, vertex);
    if (!vertex || !solution_)
        return {};
    if (feed == none)
        return floats;
    const double volts = *solution_->between(*vertex, net_.circuit().feeds[feed].minus);
    return {reads, {{"volts", fmt::format("{:.2f}", std::abs(volts) < 0.005 ? 0 : volts)}, {"minus", minusNames_[feed]}}};
}

} // namespace doorloom
