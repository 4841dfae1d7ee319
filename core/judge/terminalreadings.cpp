#include "judge/terminalreadings.h"

#include "judge/dividedjob.h"
#include "solve/readings.h"
#include "solve/worst.h"
#include "verdict/questions.h"

#include <fmt/format.h>

#include <cmath>

namespace doorloom {

namespace {

constexpr Text inAll = {.en = "{rest}; {lowest} to {highest} V in all {positions} positions{floating}",
                        .es = "{rest}; de {lowest} a {highest} V en las {positions} posiciones{floating}"};
constexpr Text inSome = {.en = "{rest}; {lowest} to {highest} V in {covered} of {positions} positions{floating}",
                         .es = "{rest}; de {lowest} a {highest} V en {covered} de {positions} posiciones{floating}"};
constexpr Text floatsToo = {.en = ", floating in some", .es = ", flotante en algunas"}, nothingMore = {.en = "", .es = ""};

std::string volts(const Worst& worst) { return fmt::format("{:.2f}", std::abs(worst.value) < 0.005 ? 0 : worst.value); }

Message withRange(Message rest, const ReadingRange& range)
{
    if (!range.lowest || !range.highest)
        return rest;
    const bool isWhole = range.coverage.covered >= range.coverage.positions;
    return {isWhole ? inAll : inSome,
            {{"rest", std::vector<Message>{std::move(rest)}},
             {"lowest", volts(*range.lowest)},
             {"highest", volts(*range.highest)},
             {"covered", fmt::format("{:.0f}", range.coverage.covered)},
             {"positions", fmt::format("{:.0f}", range.coverage.positions)},
             {"floating", std::vector<Message>{range.floatingIn ? floatsToo : nothingMore}}}};
}

} // namespace

struct TerminalReadings::Opened {
    Opened(const Division& rows, const Job& whole) : division(&rows), job(jobOf(rows, whole)), net(job), meter(job, net), ask(net.circuit(), windowBudget) {}

    const Division* division;
    const Job job;
    const Netlist net;
    const Meter meter;
    const Questions ask;
};

TerminalReadings::TerminalReadings(const Job& job) : job_(job), rest_(job_) {}
TerminalReadings::~TerminalReadings() = default;

const TerminalReadings::Opened* TerminalReadings::opened(DeviceId device) const
{
    if (!parts_)
        parts_ = std::make_unique<DividedJob>(job_);
    const Division* part = parts_->of(device);
    if (!part)
        return nullptr;
    if (!opened_ || opened_->division != part)
        opened_ = std::make_unique<Opened>(*part, job_);
    return opened_.get();
}

Message TerminalReadings::at(const Landing& terminal) const
{
    Message rest = rest_.at(terminal);
    const auto minus = rest_.minusFor(terminal);
    const Opened* part = minus ? opened(terminal.device) : nullptr;
    const auto x = part ? part->net.vertexOf(terminal.device, terminal.terminal) : std::nullopt;
    const auto y = part ? part->net.vertexOf(minus->device, minus->terminal) : std::nullopt;
    return x && y ? withRange(std::move(rest), rangeBetween(part->meter, part->ask, *x, *y, windowBudget)) : rest;
}

} // namespace doorloom
