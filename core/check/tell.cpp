#include "check/tell.h"

#include <fmt/format.h>

#include <map>
#include <numeric>

namespace doorloom {

Spot deviceSpot(DeviceId device) { return {device, {}, {}, {}}; }
Spot terminalSpot(const Landing& landing) { return {landing.device, landing.terminal, {}, {}}; }
Spot optionSpot(DeviceId device, const Key& option) { return {device, option, {}, {}}; }

Spot spotOf(const Facts& facts, Vertex vertex)
{
    const auto landing = facts.landingAt(vertex);
    return landing ? terminalSpot(*landing) : deviceSpot(facts.net.vertex(vertex).device);
}

Spot loadSpot(const Facts& facts, std::uint32_t element)
{
    const LoadPart* load = facts.loadOf(element);
    const DeviceId device = facts.deviceOf(facts.circuit().elements[element].origin);
    const Kind* kind = kindOf(facts.job, device);
    if (!load || !kind)
        return deviceSpot(device);
    std::map<Key, int> uses;
    int loads = 0;
    for (const Part& part : kind->parts)
        if (const auto* other = std::get_if<LoadPart>(&part.body)) {
            ++loads;
            ++uses[other->a];
            ++uses[other->b];
        }
    if (load->use != LoadUse::Input && (loads < 2 || load->use == LoadUse::Electronics || load->use == LoadUse::Lock))
        return deviceSpot(device);
    for (const Key& key : {load->a, load->b})
        if (findTerminal(*kind, key) && uses[key] == 1)
            return terminalSpot({device, key});
    return deviceSpot(device);
}

Spot feedSpot(const Facts& facts, std::uint32_t feed)
{
    const auto* source = partBehind<SourcePart>(facts.job, facts.net.origin(facts.circuit().feeds[feed].origin));
    return source && source->plus != "+" && source->plus != "1" ? spotOf(facts, facts.circuit().feeds[feed].plus)
                                                               : deviceSpot(facts.deviceOfFeed(feed));
}

std::vector<Witness> witnessesOf(const Facts& facts, const std::vector<Cube>& cubes)
{
    std::vector<Witness> all;
    for (const Cube& cube : cubes) {
        Witness witness;
        for (const ThrowAt& each : cube) {
            const NetOperator& moved = facts.net.moved(each.moved);
            witness.throws.push_back({moved.id, moved.device, moved.option, moved.throws[each.thrown].key});
        }
        all.push_back(std::move(witness));
    }
    return all;
}

void happensIn(Finding& finding, const Facts& facts, const Verdict& verdict)
{
    finding.throws = verdict.answer == Answer::Always ? std::vector<Witness>{Witness{}}
                                                      : witnessesOf(facts, verdict.cubes);
    finding.moreThrows = verdict.more && verdict.answer != Answer::Always;
}

std::string nameOf(const Facts& facts, Vertex vertex)
{
    if (const auto landing = facts.landingAt(vertex))
        return nameOf(facts.job, *landing);
    if (const Splice* splice = facts.job.splices.find(facts.net.vertex(vertex).splice))
        return splice->tag;
    return tagOf(facts.job, facts.net.vertex(vertex).device);
}

std::string tagOfOrigin(const Facts& facts, std::uint32_t origin) { return tagOf(facts.job, facts.deviceOf(origin)); }

Finding notProved(std::string_view rule, Spot at)
{
    Finding finding;
    finding.rule = rule;
    finding.reason = "not proved";
    finding.severity = Severity::Hint;
    finding.at = {std::move(at)};
    finding.why = Text{.en = "Not decided: more positions than the budget of steps allows.",
                       .es = "Sin decidir: más posiciones que las que permite el presupuesto de pasos."};
    finding.undecided = true;
    return finding;
}

std::vector<Pole> polesNear(const Facts& facts, Vertex vertex)
{
    std::vector<Pole> poles;
    for (std::uint32_t feed : facts.ask.feedsNear(vertex)) {
        poles.push_back({facts.circuit().feeds[feed].plus, feed, true});
        poles.push_back({facts.circuit().feeds[feed].minus, feed, false});
    }
    return poles;
}

bool occurs(const Verdict& verdict) { return verdict.answer == Answer::Some || verdict.answer == Answer::Always; }

Witness witnessAt(const Facts& facts, const Position& at, const std::vector<MovedIndex>& mattering)
{
    Cube cube;
    for (MovedIndex moved : mattering)
        if (at[moved] != facts.circuit().operators[moved].idle)
            cube.push_back({moved, at[moved]});
    return witnessesOf(facts, {cube}).front();
}

Witness witnessAt(const Facts& facts, const Position& at)
{
    std::vector<MovedIndex> all(at.size());
    std::iota(all.begin(), all.end(), MovedIndex{0});
    return witnessAt(facts, at, all);
}

std::string figureText(double value) { return fmt::format("{:.2f}", value); }

} // namespace doorloom
