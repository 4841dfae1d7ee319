#include "judge/together.h"

#include "check/check.h"
#include "check/tell.h"
#include "judge/findingtext.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace doorloom {

namespace {

constexpr double mostOfRating = 0.8, coilsOfRating = 0.5; // where the rules begin to speak
constexpr double slack = 1e-9;
constexpr std::string_view rules[] = {"under-voltage", "overloaded-supply", "no-spare-for-recharging", "overloaded-contact", "overloaded-fuse"};

double leastRating(const ContactRating& rating)
{
    double least = std::numeric_limits<double>::infinity();
    for (const auto& each : {rating.dcInductive, rating.acInductive})
        least = each ? std::min(least, each->value) : least;
    for (const auto& each : {rating.dcResistive, rating.acResistive})
        least = each ? std::min(least, coilsOfRating * each->value) : least;
    return least;
}

void addThrough(PartLoad& load, const Facts& facts, std::uint32_t origin, const std::optional<Worst>& worst, double atRest, double limit)
{
    if (worst && worst->value > slack && std::isfinite(limit) && limit > 0)
        load.through.push_back({facts.net.origin(origin).device, facts.net.origin(origin).part, atRest, worst->value, limit,
                                worst->value > atRest + slack ? witnessAt(facts, worst->at).throws : std::vector<NamedThrow>{}});
}

// What parts pass through one source, contact or fuse.
struct Passing {
    const PartLoad::Through* through;
    const LoadedPart* part;
    double gain() const { return through->most - through->atRest; }
};

// Their amperes add up: nothing that they share drops any volts.
class Summed {
public:
    Summed(const Job& whole, std::vector<Passing> passing, std::uint64_t budget)
        : passing_(std::move(passing)), job_(jobOf(*passing_.front().part->rows, whole)), facts_(job_, budget)
    {
        std::stable_sort(passing_.begin(), passing_.end(), [](const Passing& one, const Passing& other) { return one.gain() > other.gain(); });
    }

    std::vector<Finding> found()
    {
        std::vector<Finding> whole = with(passing_.size());
        if (whole.empty())
            return whole;
        std::size_t from = 0, to = passing_.size();
        while (from < to) {
            const std::size_t middle = (from + to) / 2;
            const std::vector<Finding> some = with(middle);
            if (!some.empty() && some.front().severity == whole.front().severity)
                to = middle;
            else
                from = middle + 1;
        }
        return with(to);
    }

private:
    // What is found while so many parts take the most, the others what they take at rest.
    std::vector<Finding> with(std::size_t count)
    {
        Figures figures = figuresIn(job_, facts_.net, facts_.ask, {});
        Worst sum{0, atRest(facts_.circuit())};
        Witness witness;
        for (std::size_t i = 0; i < passing_.size(); ++i) {
            sum.value += i < count ? passing_[i].through->most : passing_[i].through->atRest;
            if (i < count)
                witness.throws.insert(witness.throws.end(), passing_[i].through->throws.begin(), passing_[i].through->throws.end());
        }
        std::sort(witness.throws.begin(), witness.throws.end());
        witness.throws.erase(std::unique(witness.throws.begin(), witness.throws.end()), witness.throws.end());
        for (std::uint32_t i = 0; i < facts_.circuit().feeds.size(); ++i)
            if (isIt(facts_.circuit().feeds[i].origin))
                figures.outOfFeed[i] = sum;
        for (std::uint32_t i = 0; i < facts_.circuit().joints.size(); ++i)
            if (isIt(facts_.circuit().joints[i].origin))
                figures.throughJoint[i] = sum;
        facts_.useFigures(std::move(figures));
        std::vector<Finding> findings;
        for (std::string_view rule : rules)
            for (Finding& finding : checkCalled(rule)->run(facts_)) {
                finding.throws = {witness};
                findings.push_back(std::move(finding));
            }
        return findings;
    }

    bool isIt(std::uint32_t origin) const
    {
        const Origin& at = facts_.net.origin(origin);
        return at.device == passing_.front().through->device && at.part == passing_.front().through->part;
    }

    std::vector<Passing> passing_; // what adds most first
    const Job job_;
    Facts facts_;
};

class Together {
public:
    Together(const Job& job, std::vector<const PartLoad*> parts, std::uint64_t budget) : facts_(job, budget), parts_(std::move(parts))
    {
        std::stable_sort(parts_.begin(), parts_.end(), [](const PartLoad* one, const PartLoad* other) { return one->drawn > other->drawn; });
    }

    std::vector<Finding> found()
    {
        std::vector<Finding> all;
        for (const Finding& whole : with(parts_.size())) {
            Finding finding = inFewest(whole);
            const auto head = std::find_if(all.begin(), all.end(), [&](const Finding& each) { return each.rule == "under-voltage"; });
            if (finding.rule == "under-voltage" && head != all.end())
                head->lines.push_back(std::move(finding)); // the same conductors drop the volts of all
            else
                all.push_back(std::move(finding));
        }
        return all;
    }

private:
    // What is found while so many parts are at their heaviest, the others at rest.
    const std::vector<Finding>& with(std::size_t count)
    {
        const auto [known, isNew] = found_.try_emplace(count);
        if (!isNew)
            return known->second;
        const Position at = positionWith(count);
        facts_.useFigures(figuresIn(facts_.job, facts_.net, facts_.ask, {at}));
        for (std::string_view rule : rules)
            for (Finding& finding : checkCalled(rule)->run(facts_)) {
                finding.throws = {witnessAt(facts_, at)};
                known->second.push_back(std::move(finding));
            }
        return known->second;
    }

    Position positionWith(std::size_t count) const
    {
        Position at = atRest(facts_.circuit());
        for (std::size_t i = 0; i < count; ++i)
            for (const NamedThrow& named : parts_[i]->heaviest) {
                const Operator* moved = facts_.job.operators.find(named.moved);
                const auto index = moved ? facts_.net.indexOf(named.moved) : std::nullopt;
                if (const auto thrown = moved ? findThrow(moved->throws, named.thrown) : std::nullopt; index && thrown)
                    at[*index] = static_cast<ThrowIndex>(*thrown);
            }
        return at;
    }

    Finding inFewest(const Finding& whole)
    {
        std::size_t from = 0, to = parts_.size();
        while (from < to) {
            const std::size_t middle = (from + to) / 2;
            if (same(with(middle), whole))
                to = middle;
            else
                from = middle + 1;
        }
        const Finding* fewest = same(with(to), whole);
        return fewest ? *fewest : whole;
    }

    static const Finding* same(const std::vector<Finding>& among, const Finding& wanted)
    {
        const auto found = std::find_if(among.begin(), among.end(), [&](const Finding& each) {
            return each.rule == wanted.rule && each.at == wanted.at && each.severity == wanted.severity;
        });
        return found == among.end() ? nullptr : &*found;
    }

    Facts facts_;
    std::vector<const PartLoad*> parts_; // the heaviest first
    std::map<std::size_t, std::vector<Finding>> found_;
};

// What two or more parts pass through, where their sum comes near its limit.
std::vector<std::vector<Passing>> nearLimits(const std::vector<LoadedPart>& parts)
{
    std::vector<Passing> all;
    for (const LoadedPart& part : parts)
        for (const PartLoad::Through& through : part.load->through)
            all.push_back({&through, &part});
    const auto key = [](const Passing& each) { return std::tie(each.through->device, each.through->part); };
    std::stable_sort(all.begin(), all.end(), [&](const Passing& one, const Passing& other) { return key(one) < key(other); });
    std::vector<std::vector<Passing>> near;
    for (auto from = all.begin(); from != all.end();) {
        double sum = 0;
        auto to = from;
        for (; to != all.end() && key(*to) == key(*from); ++to)
            sum += to->through->most;
        if (to - from > 1 && sum > from->through->limit + slack)
            near.emplace_back(from, to);
        from = to;
    }
    return near;
}

bool mayLackVolts(const std::vector<LoadedPart>& parts)
{
    double drawn = 0;
    for (const LoadedPart& part : parts)
        drawn += part.load->drawn;
    return std::any_of(parts.begin(), parts.end(),
                       [&](const LoadedPart& part) { return part.load->sharedOhms * (drawn - part.load->drawn) > part.load->leastSpare; });
}

bool addsUp(const std::vector<Passing>& passing)
{
    return std::all_of(passing.begin(), passing.end(),
                       [](const Passing& each) { return each.part->load->sharedOhms <= 0 && !each.part->load->holdsOthers; });
}

} // namespace

PartLoad loadOf(const Facts& facts)
{
    PartLoad load;
    const Figures& figures = facts.figures();
    for (std::uint32_t i = 0; i < facts.circuit().feeds.size(); ++i) {
        const std::uint32_t origin = facts.circuit().feeds[i].origin;
        const auto* source = partBehind<SourcePart>(facts.job, facts.net.origin(origin));
        const auto& worst = figures.outOfFeed[i];
        addThrough(load, facts, origin, worst, figures.outAtRest[i], source ? mostOfRating * source->most.value : 0);
        if (worst && worst->value > load.drawn) {
            load.drawn = worst->value;
            load.heaviest = witnessAt(facts, worst->at).throws;
        }
    }
    for (std::uint32_t i = 0; i < facts.circuit().joints.size(); ++i) {
        const Origin& origin = facts.net.origin(facts.circuit().joints[i].origin);
        if (const auto* contact = partBehind<ContactPart>(facts.job, origin))
            addThrough(load, facts, facts.circuit().joints[i].origin, figures.throughJoint[i], figures.throughAtRest[i], leastRating(contact->rating));
        else if (const auto* fuse = partBehind<FusePart>(facts.job, origin))
            addThrough(load, facts, facts.circuit().joints[i].origin, figures.throughJoint[i], figures.throughAtRest[i], fuse->limit.value);
    }
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i)
        if (const LoadPart* part = facts.loadOf(i); part && part->leastVolts && figures.lowestVolts[i])
            load.leastSpare = std::min(load.leastSpare, figures.lowestVolts[i]->value * figures.batteryShare - part->leastVolts->value);
    return load;
}

std::vector<Finding> foundTogether(const Job& job, const std::vector<LoadedPart>& parts, std::uint64_t budget)
{
    std::vector<Finding> all;
    bool needsTheWhole = mayLackVolts(parts);
    for (std::vector<Passing>& passing : nearLimits(parts)) {
        if (!addsUp(passing)) {
            needsTheWhole = true;
            continue;
        }
        for (Finding& finding : Summed(job, std::move(passing), budget).found())
            all.push_back(std::move(finding));
    }
    if (!needsTheWhole)
        return all;
    std::vector<const PartLoad*> loads;
    for (const LoadedPart& part : parts)
        loads.push_back(part.load);
    for (Finding& finding : Together(job, std::move(loads), budget).found())
        if (std::none_of(all.begin(), all.end(), [&](const Finding& each) { return each.rule == finding.rule && each.at == finding.at; }))
            all.push_back(std::move(finding));
    return all;
}

} // namespace doorloom
