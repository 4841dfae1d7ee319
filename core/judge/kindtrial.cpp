#include "judge/kindtrial.h"

#include "edit/operations.h"
#include "graph/joinedsets.h"
#include "solve/readings.h"
#include "verdict/questions.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>

namespace doorloom {

namespace {

constexpr Text byItself = {.en = "as it settles by itself", .es = "como queda por sí solo"};
constexpr Text thrownSo = {.en = "{operator}: {throw}", .es = "{operator}: {throw}"};
constexpr Text fedBetween = {.en = "{volts} V {current} between {a} and {b}",
                             .es = "{volts} V {current} entre {a} y {b}"};
constexpr Text feedsItself = {.en = "it is a source by itself", .es = "es una fuente por sí solo"};
constexpr Text fedByNothing = {.en = "nothing: no load of it has both ends on terminals",
                               .es = "nada: ninguna carga suya tiene ambos extremos en bornes"};
constexpr Text volts = {.en = "{volts} V against {minus}", .es = "{volts} V respecto a {minus}"};
constexpr Text floating = {.en = "floating", .es = "flotante"};
constexpr Text shortedSource = {.en = "no figure: the source is shorted",
                                .es = "sin lectura: la fuente está en corto"};
constexpr Text neverSettles = {.en = "no figure: its coils never settle",
                               .es = "sin lectura: sus bobinas no se estabilizan"};

Kind trialSupply(const LoadAt& rated, bool ac)
{
    Kind kind;
    kind.name = "trial-supply";
    for (const Key key : {"+", "-"}) {
        Terminal terminal;
        terminal.key = terminal.printed = key;
        kind.strips.resize(1);
        kind.strips[0].terminals.push_back(terminal);
    }
    SourcePart source;
    source.plus = "+";
    source.minus = "-";
    source.ac = ac;
    source.lowest = source.nominal = source.highest = rated.volts;
    source.most = {100};
    kind.parts.push_back({"out", {}, source, ValueStanding::Memory});
    return kind;
}

bool standsFromFactory(const Kind& kind, const Condition& when);

// The load that a supply would be landed on.
const LoadPart* loadToFeed(const Kind& kind)
{
    for (const LoadUse use : {LoadUse::Electronics, LoadUse::Coil, LoadUse::Lock, LoadUse::Motor,
                              LoadUse::Lamp, LoadUse::Sounder})
        for (const Part& part : kind.parts) {
            const auto* load = std::get_if<LoadPart>(&part.body);
            if (load && load->use == use && !load->rated.empty() && findTerminal(kind, load->a) &&
                findTerminal(kind, load->b) && standsFromFactory(kind, part.when))
                return load;
        }
    return nullptr;
}

Key factoryValue(const Option& option)
{
    return option.factory.empty() && !option.values.empty() ? option.values.front().key : option.factory;
}

bool standsFromFactory(const Kind& kind, const Condition& when)
{
    return std::all_of(when.begin(), when.end(), [&](const JumperAt& at) {
        const Option* option = findOption(kind, at.option);
        return option && factoryValue(*option) == at.value;
    });
}

// The device, and the supply that feeds it.
class TrialJob {
public:
    explicit TrialJob(const Kind& kind) : kind_(kind)
    {
        device_ = place(kind, "T1");
        Device row = *job_.devices.find(device_);
        for (Choice& choice : row.choices)
            choice.value = factoryValue(*findOption(kind, choice.option));
        apply({{Put<Device>{device_, row}}});
        feed();
    }

    const Job& job() const { return job_; }
    const Device& device() const { return *job_.devices.find(device_); }
    const Message& fed() const { return fed_; }
    bool isAc() const { return ac_; }

private:
    void apply(const Change& change)
    {
        [[maybe_unused]] const auto back = applyChange(job_, change);
        assert(back.ok());
    }

    DeviceId place(const Kind& kind, const std::string& tag)
    {
        Numbers numbers(job_);
        auto [id, change] = placeDevice(job_, numbers, kind, tag);
        apply(change);
        return id;
    }

    void land(DeviceId supply, const Key& pole, const Key& terminal)
    {
        Numbers numbers(job_);
        apply(addWire(job_, numbers, {EndState::Landed, Landing{supply, pole}},
                      {EndState::Landed, Landing{device_, terminal}})
                  .second);
    }

    void feed()
    {
        const SourcePart* own = nullptr;
        for (const Part& part : kind_.parts)
            own = own ? own : std::get_if<SourcePart>(&part.body);
        const LoadPart* load = loadToFeed(kind_);
        ac_ = own ? own->ac : load && load->accepts == Current::Ac;
        fed_ = own ? feedsItself : fedByNothing;
        if (own || !load)
            return;
        const DeviceId supply = place(trialSupply(load->rated.front(), ac_), "TRIAL");
        land(supply, "+", load->a);
        land(supply, "-", load->b);
        fed_ = {fedBetween,
                {{"volts", fmt::format("{}", load->rated.front().volts.value)},
                 {"current", std::string(ac_ ? "AC" : "DC")},
                 {"a", findTerminal(kind_, load->a)->printed},
                 {"b", findTerminal(kind_, load->b)->printed}}};
    }

    const Kind& kind_;
    Job job_;
    DeviceId device_;
    Message fed_;
    bool ac_ = false;
};

class Trial {
public:
    explicit Trial(const Kind& kind)
        : kind_(kind), job_(kind), net_(job_.job()), meter_(job_.job(), net_, {.ac = job_.isAc()}),
          ask_(net_.circuit(), windowBudget)
    {
    }

    KindTrial tried()
    {
        KindTrial trial;
        trial.fed = job_.fed();
        trial.positions.push_back(tried(byItself, std::nullopt));
        for (const Role& role : kind_.roles)
            for (std::size_t thrown = 0; thrown < role.throws.size(); ++thrown) {
                if (trial.positions.size() > mostTrialPositions) {
                    trial.cutShort = true;
                    return trial;
                }
                const Message when{
                    thrownSo,
                    {{"operator", role.words.en.empty() ? Words{role.key, role.key} : role.words},
                     {"throw", role.throws[thrown].words}}};
                const MovedIndex moved = *net_.indexOf(boundTo(job_.device(), role.key));
                trial.positions.push_back(tried(when, std::pair(moved, static_cast<ThrowIndex>(thrown))));
            }
        return trial;
    }

private:
    using Thrown = std::optional<std::pair<MovedIndex, ThrowIndex>>;

    // What was thrown stays so, even where its coil says otherwise.
    std::optional<Position> settledWith(const Thrown& thrown) const
    {
        Position position = atRest(net_.circuit());
        if (thrown)
            position[thrown->first] = thrown->second;
        std::optional<Position> settled = ask_.settled(position);
        if (settled && thrown)
            (*settled)[thrown->first] = thrown->second;
        return settled;
    }

    TrialPosition tried(const Message& when, const Thrown& thrown)
    {
        TrialPosition found{when, {}, {}};
        const std::optional<Position> position = settledWith(thrown);
        if (!position) {
            for (const Terminal* terminal : terminalsOf(kind_))
                found.reads.emplace_back(terminal->printed, neverSettles);
            return found;
        }
        found.joined = joinedIn(*position);
        const Readings readings(meter_, *position, {.want = Want::JustVolts});
        for (const Terminal* terminal : terminalsOf(kind_))
            found.reads.emplace_back(terminal->printed, readings.hold() ? readingAt(readings, *terminal)
                                                                        : Message(shortedSource));
        return found;
    }

    Vertex vertexOf(const Terminal& terminal) const { return *net_.vertexOf(job_.device().id, terminal.key); }

    std::vector<std::vector<std::string>> joinedIn(const Position& position) const
    {
        JoinedSets sets(net_.circuit().vertices);
        for (const Joint& joint : net_.circuit().joints)
            if (holds(joint.guard, position))
                sets.join(joint.a, joint.b);
        std::map<std::uint32_t, std::vector<std::string>> groups;
        for (const Terminal* terminal : terminalsOf(kind_))
            groups[sets.find(vertexOf(*terminal))].push_back(terminal->printed);
        std::vector<std::vector<std::string>> joined;
        for (auto& [root, terminals] : groups)
            if (terminals.size() > 1)
                joined.push_back(std::move(terminals));
        return joined;
    }

    // Against a minus of the source that its potential hangs on.
    Message readingAt(const Readings& readings, const Terminal& terminal) const
    {
        for (const Feed& feed : net_.circuit().feeds) {
            const std::optional<Volts> against = readings.between(vertexOf(terminal), feed.minus);
            if (!against)
                continue;
            const double value = std::abs(against->value) < 0.005 ? 0 : against->value;
            return {volts, {{"volts", fmt::format("{:.2f}", value)}, {"minus", minusOf(feed)}}};
        }
        return floating;
    }

    // The device's own terminal at the minus, where there is one.
    std::string minusOf(const Feed& feed) const
    {
        for (const Joint& joint : net_.circuit().joints)
            if (net_.origin(joint.origin).conductor && (joint.a == feed.minus || joint.b == feed.minus))
                if (const Terminal* terminal = terminalAt(joint.a == feed.minus ? joint.b : joint.a))
                    return terminal->printed;
        const Terminal* own = terminalAt(feed.minus);
        return own ? own->printed : "−";
    }

    const Terminal* terminalAt(Vertex vertex) const
    {
        const NetVertex& at = net_.vertex(vertex);
        return at.device == job_.device().id ? findTerminal(kind_, at.node) : nullptr;
    }

    const Kind& kind_;
    TrialJob job_;
    Netlist net_;
    Meter meter_;
    Questions ask_;
};

} // namespace

KindTrial kindTrial(const Kind& kind)
{
    return Trial(kind).tried();
}

} // namespace doorloom
