#include "judge/mergeparts.h"

#include "verdict/verdict.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <tuple>

namespace doorloom {

namespace {

bool isShared(const Division& rows, const Spot& spot)
{
    return rows.shares(spot.device.number) || rows.shares(spot.conductor.number);
}

bool isShared(const Division& rows, const Finding& finding)
{
    return !finding.at.empty() &&
           std::all_of(finding.at.begin(), finding.at.end(), [&](const Spot& spot) { return isShared(rows, spot); });
}

bool passesOwnRows(const Division& rows, const Finding& finding)
{
    return std::any_of(finding.path.begin(), finding.path.end(), [&](const Origin& origin) {
        return !rows.shares(origin.conductor.number) && !rows.shares(origin.device.number);
    });
}

std::size_t fewestThrows(const Finding& finding)
{
    std::size_t fewest = ~std::size_t{0};
    for (const Witness& witness : finding.throws)
        fewest = std::min(fewest, witness.throws.size());
    return fewest;
}

// The fewest throws of both.
void addThrows(Finding& to, const Finding& other)
{
    if (fewestThrows(other) > fewestThrows(to) || !to.throws.front().situation.empty())
        return;
    if (fewestThrows(other) < fewestThrows(to)) {
        to.throws = other.throws;
        to.moreThrows = other.moreThrows;
        to.path = other.path;
        return;
    }
    for (const Witness& witness : other.throws)
        if (std::find(to.throws.begin(), to.throws.end(), witness) == to.throws.end())
            to.throws.push_back(witness);
    to.moreThrows = to.moreThrows || other.moreThrows || to.throws.size() > mostCubes;
    to.throws.resize(std::min(to.throws.size(), mostCubes));
}

class Merger {
public:
    Merger(const Wiring& wiring, std::uint32_t nextNumber) : wiring_(wiring), nextNumber_(nextNumber) {}

    std::vector<Finding> merged(const std::vector<FoundIn>& found)
    {
        for (const FoundIn& each : found)
            for (const Finding& finding : *each.findings)
                if (!isShared(*each.rows, finding))
                    addOwn(*each.rows, finding);
        for (const FoundIn& each : found)
            for (const Finding& finding : *each.findings)
                if (isShared(*each.rows, finding))
                    addShared(*each.rows, finding);
        return std::move(heads_);
    }

private:
    using At = std::tuple<std::string_view, std::string_view, std::vector<Spot>>;
    // What a remedy does to conductors: which (0: a new one), and between which nets.
    using Mend = std::vector<std::tuple<std::uint32_t, std::uint32_t, std::uint32_t>>;

    static At placeOf(const Finding& finding) { return {finding.rule, finding.reason, finding.at}; }

    std::optional<Mend> mendOf(const Finding& finding) const
    {
        Mend mend;
        if (finding.remedies.empty())
            return std::nullopt;
        for (const Step& step : finding.remedies.front().change.steps) {
            const auto* put = std::get_if<Put<Conductor>>(&step);
            if (!put || !put->after)
                return std::nullopt;
            const auto nets = std::minmax({wiring_.netOf(put->after->from), wiring_.netOf(put->after->to)}); // by value
            mend.emplace_back(put->id.number >= nextNumber_ ? 0 : put->id.number, nets.first, nets.second);
        }
        return mend;
    }

    void addOwn(const Division& rows, const Finding& finding)
    {
        const auto mend = mendOf(finding);
        if (mend) {
            const auto [same, isNew] = mended_.try_emplace(*mend, heads_.size(), rows.key);
            if (!isNew && same->second.second != rows.key)
                return addAsLine(heads_[same->second.first], finding);
        }
        addHead(finding);
    }

    void addHead(const Finding& finding)
    {
        headAt_.try_emplace(placeOf(finding), heads_.size());
        heads_.push_back(finding);
    }

    static void addAsLine(Finding& head, const Finding& finding)
    {
        head.severity = std::max(head.severity, finding.severity);
        Finding line = finding;
        std::vector<Finding> own = std::move(line.lines);
        line.lines.clear();
        head.lines.push_back(std::move(line));
        std::move(own.begin(), own.end(), std::back_inserter(head.lines));
    }

    // Where nobody else says it, and nothing of this division is on its way, too little of the shared rows is here
    // to say it: then what hangs on it speaks.
    void addShared(const Division& rows, const Finding& finding)
    {
        Finding here = finding;
        std::erase_if(here.lines, [&](const Finding& line) { return isShared(rows, line) && !passesOwnRows(rows, line); });
        if (const auto same = headAt_.find(placeOf(finding)); same != headAt_.end()) {
            Finding& head = heads_[same->second];
            addThrows(head, here);
            head.severity = std::max(head.severity, here.severity);
            std::move(here.lines.begin(), here.lines.end(), std::back_inserter(head.lines));
        } else if (passesOwnRows(rows, finding)) {
            addHead(here);
        } else {
            for (const Finding& line : here.lines)
                addOwn(rows, line);
        }
    }

    const Wiring& wiring_;
    std::uint32_t nextNumber_;
    std::vector<Finding> heads_;
    std::map<At, std::size_t> headAt_;
    std::map<Mend, std::pair<std::size_t, std::uint32_t>> mended_; // the head, and the division that it is of
};

} // namespace

std::vector<Finding> mergedFindings(const Wiring& wiring, const std::vector<FoundIn>& found, std::uint32_t nextNumber)
{
    return Merger(wiring, nextNumber).merged(found);
}

} // namespace doorloom
