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

void addThrough(PartLoad& load, const Facts& facts, std::uint32_t origin, const std::optional<Worst>& worst, double limit)
{
    if (worst && worst->value > slack && std::isfinite(limit) && limit > 0)
        load.through.push_back({facts.net.origin(origin).device, facts.net.origin(origin).part, worst->value, limit});
}

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

// Do the parts' sums come near a limit of anything that two of them pass through?
bool mayOverload(const std::vector<const PartLoad*>& parts)
{
    std::vector<const PartLoad::Through*> all;
    for (const PartLoad* part : parts)
        for (const PartLoad::Through& through : part->through)
            all.push_back(&through);
    const auto key = [](const PartLoad::Through* each) { return std::tie(each->device, each->part); };
    std::sort(all.begin(), all.end(), [&](const auto* one, const auto* other) { return key(one) < key(other); });
    for (std::size_t i = 0; i < all.size();) {
        double sum = 0;
        std::size_t next = i;
        for (; next < all.size() && key(all[next]) == key(all[i]); ++next)
            sum += all[next]->most;
        if (next > i + 1 && sum > all[i]->limit + slack)
            return true;
        i = next;
    }
    return false;
}

bool mayLackVolts(const std::vector<const PartLoad*>& parts)
{
    double drawn = 0;
    for (const PartLoad* part : parts)
        drawn += part->drawn;
    return std::any_of(parts.begin(), parts.end(), [&](const PartLoad* part) { return part->sharedOhms * (drawn - part->drawn) > part->leastSpare; });
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
        addThrough(load, facts, origin, worst, source ? mostOfRating * source->most.value : 0);
        if (worst && worst->value > load.drawn) {
            load.drawn = worst->value;
            load.heaviest = witnessAt(facts, worst->at).throws;
        }
    }
    for (std::uint32_t i = 0; i < facts.circuit().joints.size(); ++i) {
        const Origin& origin = facts.net.origin(facts.circuit().joints[i].origin);
        if (const auto* contact = partBehind<ContactPart>(facts.job, origin))
            addThrough(load, facts, facts.circuit().joints[i].origin, figures.throughJoint[i], leastRating(contact->rating));
        else if (const auto* fuse = partBehind<FusePart>(facts.job, origin))
            addThrough(load, facts, facts.circuit().joints[i].origin, figures.throughJoint[i], fuse->limit.value);
    }
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i)
        if (const LoadPart* part = facts.loadOf(i); part && part->leastVolts && figures.lowestVolts[i])
            load.leastSpare = std::min(load.leastSpare, figures.lowestVolts[i]->value * figures.batteryShare - part->leastVolts->value);
    return load;
}

std::vector<Finding> foundTogether(const Job& job, const std::vector<const PartLoad*>& parts, std::uint64_t budget)
{
    if (parts.size() < 2 || !(mayOverload(parts) || mayLackVolts(parts)))
        return {};
    return Together(job, parts, budget).found();
}

} // namespace doorloom
