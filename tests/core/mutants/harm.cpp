#include "harm.h"

#include <algorithm>

namespace doorloom {

namespace {

const char* inWords(LoadState state)
{
    constexpr const char* words[] = {"dead", "weak", "fed", "reversed", "on the wrong current", "on too many volts"};
    return words[static_cast<std::size_t>(state)];
}

const char* inWords(SourceState state)
{
    constexpr const char* words[] = {"off", "good", "overloaded", "shorted"};
    return words[static_cast<std::size_t>(state)];
}

std::string inWords(const InputState& state)
{
    return (state.foreign ? "under foreign volts, " : "") + (state.reads == 0   ? std::string("open")
                                                             : state.reads == 1 ? std::string("closed")
                                                                                : "in band " + std::to_string(state.reads));
}

template <class State> State stateIn(const std::map<PartAt, State>& states, const PartAt& at)
{
    const auto found = states.find(at);
    return found == states.end() ? State{} : found->second;
}

class Comparing {
public:
    Comparing(const Job& right, const Job& wrong) : right_(right), wrong_(wrong) {}

    void position(const PositionAt& at, const WhatHappens& was, const WhatHappens& is)
    {
        at_ = &at;
        if (was.settles != is.settles)
            say(Harm::Changed, "a coil", "settles", "buzzes");
        each(was.sources, is.sources, [](SourceState, SourceState now) { return now == SourceState::Shorted ? Harm::Danger : Harm::Changed; });
        each(was.loads, is.loads, [](LoadState, LoadState now) {
            return now == LoadState::WrongCurrent || now == LoadState::TooManyVolts ? Harm::Danger : Harm::Changed;
        });
        for (const auto& [part, state] : is.inputs)
            if (const InputState before = stateIn(was.inputs, part); !(before == state))
                say(harmOf(part, before, state), nameOf(part), inWords(before), inWords(state));
        for (const auto& [part, before] : was.inputs)
            if (!is.inputs.contains(part) && !(before == InputState{}))
                say(Harm::Changed, nameOf(part), inWords(before), "not there");
        for (const auto& [part, conducts] : is.suppressors)
            if (conducts && !stateIn(was.suppressors, part))
                say(Harm::Changed, nameOf(part), "idle", "conducting");
        for (const Opening& opening : right_.openings)
            for (DeviceId lock : opening.locks)
                compare(opening, lock, was, is);
    }

    void fixed(const std::map<PartAt, std::string>& was, const std::map<PartAt, std::string>& is)
    {
        static const PositionAt always{"every position", {}};
        at_ = &always;
        for (const auto& [part, before] : was)
            if (const std::string now = stateIn(is, part); now != before && before != "protecting nothing")
                say(now.ends_with(" V") ? Harm::Danger : Harm::Changed, nameOf(part), before, now);
        for (const auto& [part, now] : is)
            if (!was.contains(part) && !now.empty() && right_.devices.find(part.first))
                say(Harm::Changed, nameOf(part), "nothing", now);
    }

    Judgement judgement;

private:
    void say(Harm harm, const std::string& what, const std::string& was, const std::string& is)
    {
        if (harm > judgement.harm)
            judgement = {harm, what + " was " + was + " and is " + is + " in " + at_->name};
    }

    std::string nameOf(const PartAt& part) const
    {
        const Device* device = wrong_.devices.find(part.first);
        return (device ? device->tag : "?") + "." + part.second;
    }

    template <class State, class HarmOf> void each(const std::map<PartAt, State>& was, const std::map<PartAt, State>& is, HarmOf harmOf)
    {
        for (const auto& [part, state] : is)
            if (const State before = stateIn(was, part); before != state)
                say(harmOf(before, state), nameOf(part), inWords(before), inWords(state));
        for (const auto& [part, before] : was)
            if (!is.contains(part) && before != State{})
                say(Harm::Changed, nameOf(part), inWords(before), "not there");
    }

    Harm harmOf(const PartAt& part, const InputState& was, const InputState& is) const
    {
        const Kind* kind = kindOf(wrong_, part.first);
        const auto* input = kind ? findPartAs<DryInputPart>(*kind, part.second) : nullptr;
        if (is.foreign && !was.foreign)
            return Harm::Danger;
        return input && input->mustBeClosed && kind->family == "operator" && is.reads == 1 ? Harm::Danger : Harm::Changed;
    }

    enum class Stands { Locked, Free, Unknown };
    static Stands standsIn(const Job& job, DeviceId device, const WhatHappens& what)
    {
        const Kind* kind = kindOf(job, device);
        if (!kind || !kind->lock || kind->lock->failMode == FailMode::StaysPut)
            return Stands::Unknown;
        const LoadState state = stateIn(what.loads, {device, kind->lock->load});
        const bool holds = state == LoadState::Works || state == LoadState::TooManyVolts;
        return holds == (kind->lock->failMode == FailMode::Safe) ? Stands::Locked : Stands::Free;
    }

    // Is this a position in which people must get out?
    bool mustLetOut(const Opening& opening) const
    {
        if (opening.egress != Egress::ByElectricity)
            return false;
        const Operator* fire = right_.operators.find(opening.fire);
        const auto burning = fire ? at_->given.find(fire->id) : at_->given.end();
        return isPowerLost(right_, at_->given) || (fire && burning != at_->given.end() && burning->second != fire->idle) ||
               std::any_of(opening.releases.begin(), opening.releases.end(), [&](const Act& act) { return hasAll(right_, at_->given, act.throws); });
    }

    void compare(const Opening& opening, DeviceId lock, const WhatHappens& was, const WhatHappens& is)
    {
        const Stands before = standsIn(right_, lock, was), now = standsIn(wrong_, lock, is);
        if (before == Stands::Free && now == Stands::Locked)
            say(mustLetOut(opening) ? Harm::Danger : Harm::Changed, tagOf(wrong_, lock), "free", "locked");
        if (before == Stands::Locked && now == Stands::Free)
            say(hasAll(right_, at_->given, opening.occupied) ? Harm::Danger : Harm::Changed, tagOf(wrong_, lock), "locked", "free");
    }

    const Job& right_;
    const Job& wrong_;
    const PositionAt* at_ = nullptr;
};

} // namespace

RightTable::RightTable(const Job& right) : right_(right), positions_(positionsToCompare(right))
{
    const Oracle oracle(right);
    for (const PositionAt& at : positions_)
        table_.push_back(oracle.in(at.given));
    fixed_ = oracle.fixed();
}

Judgement RightTable::compared(const Job& wrong) const
{
    Comparing comparing(right_, wrong);
    const Oracle oracle(wrong);
    comparing.fixed(fixed_, oracle.fixed());
    for (std::size_t i = 0; i < positions_.size() && comparing.judgement.harm != Harm::Danger; ++i)
        comparing.position(positions_[i], table_[i], oracle.in(positions_[i].given));
    return comparing.judgement;
}

std::string RightTable::limitsPassed() const
{
    for (std::size_t i = 0; i < positions_.size(); ++i) {
        const WhatHappens& what = table_[i];
        const auto nameOf = [&](const PartAt& part) { return tagOf(right_, part.first) + "." + part.second + " in " + positions_[i].name; };
        if (!what.settles)
            return "a coil buzzes in " + positions_[i].name;
        for (const auto& [part, state] : what.sources)
            if (state == SourceState::Shorted || state == SourceState::Overloaded)
                return std::string(inWords(state)) + " " + nameOf(part);
        for (const auto& [part, state] : what.loads)
            if (state == LoadState::Reversed || state == LoadState::WrongCurrent || state == LoadState::TooManyVolts)
                return std::string(inWords(state)) + " " + nameOf(part);
        for (const auto& [part, state] : what.inputs)
            if (state.foreign)
                return inWords(state) + " " + nameOf(part);
        for (const auto& [part, conducts] : what.suppressors)
            if (conducts)
                return "conducting " + nameOf(part);
    }
    return {};
}

} // namespace doorloom
