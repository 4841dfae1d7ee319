#include "papers/power.h"

#include "check/facts.h"
#include "judge/findingtext.h"
#include "papers/naturalorder.h"
#include "papers/voltsreport.h"
#include "solve/loadway.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

constexpr std::uint64_t paperBudget = 20'000'000; // steps
constexpr double slack = 1e-6;                    // volts
constexpr double leastAmperes = 5e-4;             // what is worth a line

std::string printedName(const Job& job, const Landing& landing)
{
    const Terminal* terminal = findTerminal(*kindOf(job, landing.device), landing.terminal);
    return terminal ? terminal->printed : landing.terminal;
}

std::string nameOfSides(const Job& job, const std::pair<Landing, Landing>& sides)
{
    return nameOf(job, sides.first) + ", " + printedName(job, sides.second);
}

bool isFromSheet(const Job& job, const Origin& origin)
{
    const Part* part = findPart(*kindOf(job, origin.device), origin.part);
    return part && part->standing == ValueStanding::Sheet;
}

Ohms loopOhms(const Meter& meter, const LoadWay& way)
{
    Ohms sum;
    for (std::uint32_t joint : way.joints)
        sum = sum + Ohms{meter.ohmsOfJoint[joint]};
    return sum;
}

class PowerWork {
public:
    PowerWork(const Job& job) : job_(job), facts_(job, paperBudget), dc_(job, facts_.net, {}), ac_(job, facts_.net, {.ac = true}) {}

    PowerSheet sheet()
    {
        PowerSheet sheet;
        const auto& circuit = facts_.circuit();
        for (std::uint32_t i = 0; i < circuit.elements.size(); ++i)
            if (const LoadPart* load = facts_.loadOf(i))
                if (const auto sides = sidesOf(job_, originOfElement(i), load->a, load->b))
                    sheet.loads.push_back(lineOf(i, *load, nameOfSides(job_, *sides)));
        for (std::uint32_t i = 0; i < circuit.feeds.size(); ++i)
            if (const auto* source = partBehind<SourcePart>(job_, originOfFeed(i)))
                if (const auto sides = sidesOf(job_, originOfFeed(i), source->plus, source->minus))
                    sheet.sources.push_back(lineOf(i, *source, nameOfSides(job_, *sides)));
        std::stable_sort(sheet.loads.begin(), sheet.loads.end(),
                         [](const LoadLine& a, const LoadLine& b) { return naturallyLess(a.load, b.load); });
        std::stable_sort(sheet.sources.begin(), sheet.sources.end(),
                         [](const SourceLine& a, const SourceLine& b) { return naturallyLess(a.source, b.source); });
        const Coverage& coverage = facts_.figures().coverage;
        sheet.allPositions = coverage.covered >= coverage.positions;
        const OhmsKnown known = ohmsKnownOf(job_);
        sheet.conductors = known.conductors;
        sheet.withoutOhms = known.withoutOhms;
        return sheet;
    }

private:
    const Origin& originOfElement(std::uint32_t element) const { return facts_.net.origin(facts_.circuit().elements[element].origin); }
    const Origin& originOfFeed(std::uint32_t feed) const { return facts_.net.origin(facts_.circuit().feeds[feed].origin); }
    const Conductor& conductorOf(std::uint32_t joint) const
    {
        return *job_.conductors.find(facts_.net.origin(facts_.circuit().joints[joint].origin).conductor);
    }
    bool isOnAc(std::uint32_t element) const
    {
        const std::vector<std::uint32_t> feeds = facts_.ask.feedsNear(facts_.circuit().elements[element].a);
        return std::any_of(feeds.begin(), feeds.end(), [&](std::uint32_t feed) { return facts_.circuit().feeds[feed].ac; });
    }

    std::vector<Message> positionInWords(const Position& at, const std::vector<MovedIndex>& mattering) const
    {
        std::vector<Message> words;
        for (MovedIndex moved : mattering)
            if (at[moved] != facts_.circuit().operators[moved].idle) {
                const NetOperator& row = facts_.net.moved(moved);
                words.push_back(throwWords(job_, {row.id, row.device, row.option, row.throws[at[moved]].key}));
            }
        return words;
    }

    // ---- Loads.

    LoadLine lineOf(std::uint32_t element, const LoadPart& load, std::string name) const
    {
        const Device& device = *job_.devices.find(originOfElement(element).device);
        LoadLine line;
        line.load = std::move(name);
        line.what = device.words;
        line.title = verbatim(kindOf(job_, device)->title);
        line.fromSheet = isFromSheet(job_, originOfElement(element));
        line.least = load.leastVolts;
        line.pullIn = load.pullInVolts;
        line.inrush = load.inrush;
        const auto& worst = facts_.figures().lowestVolts[element];
        if (!worst) {
            line.verdict = isOnAc(element) ? PowerVerdict::NotFedOnAc : PowerVerdict::NeverFed;
            return line;
        }
        line.position = positionInWords(worst->at, facts_.ask.operatorsThatMatter(element));
        const auto& starting = facts_.figures().lowestPullingIn[element];
        fillFigures(line, element, {worst->at, starting ? starting->at : worst->at});
        return line;
    }

    struct Positions {
        Position holding, starting; // in which it gets least
    };

    void fillFigures(LoadLine& line, std::uint32_t element, const Positions& at) const
    {
        const Meter* meter = isOnAc(element) ? &ac_ : &dc_;
        const LoadFigures worst = figuresWith(*meter, element, at);
        line.holding = worst.holding;
        line.amperes = worst.amperes;
        line.atInrush = worst.atInrush;
        line.verdict = judged(line, worst);
        const auto way = wayOf(job_, *meter, at.holding, element);
        if (!way)
            return;
        const SourcePart* source = partBehind<SourcePart>(job_, originOfFeed(way->feed));
        line.source = nameOf(job_, Landing{originOfFeed(way->feed).device, source->plus});
        line.nominal = Volts{meter->volts(way->feed, SupplyLevel::Nominal)};
        line.loop = loopOhms(*meter, *way);
        fillWay(line, *way);
        line.wayIsWhole = std::all_of(way->joints.begin(), way->joints.end(),
                                      [&](std::uint32_t joint) { return hasOhms(job_, conductorOf(joint)); });
        if (line.verdict == PowerVerdict::Enough && !line.wayIsWhole)
            line.verdict = PowerVerdict::LengthMissing;
        findLeastGauge(line, *meter, *way, element, at);
    }

    struct LoadFigures {
        Volts holding;
        Amperes amperes;
        std::optional<Volts> atInrush;
    };
    LoadFigures figuresWith(const Meter& meter, std::uint32_t element, const Positions& at) const
    {
        const auto voltsAcross = [&](const Readings& readings) { return Volts{std::abs(readings.acrossElement(element).value_or(Volts{0}).value)}; };
        const Readings held(meter, at.holding, {.supplies = SupplyLevel::Lowest, .want = Want::JustVolts});
        LoadFigures figures{voltsAcross(held), Amperes{std::abs(held.throughElement(element).value)}, {}};
        if (!meter.loads[element]->inrush)
            return figures;
        for (const std::vector<std::uint32_t>& pulling : startedWith(element, at.starting)) {
            const Readings readings(meter, at.starting, {.supplies = SupplyLevel::Lowest, .want = Want::JustVolts, .pullingIn = pulling});
            const std::vector<std::uint32_t> lost = readings.notCarried();
            if (!readings.hold() || std::find(lost.begin(), lost.end(), element) != lost.end())
                return {figures.holding, figures.amperes, std::nullopt};
            figures.atInrush = std::min(voltsAcross(readings), figures.atInrush.value_or(voltsAcross(readings)));
        }
        return figures;
    }

    // What pulls in at the same moment: all that one operator's throw to here has switched on. It alone, where none has.
    std::vector<std::vector<std::uint32_t>> startedWith(std::uint32_t element, const Position& at) const
    {
        std::vector<std::vector<std::uint32_t>> all;
        for (MovedIndex moved : facts_.ask.operatorsThatMatter(element))
            for (ThrowIndex thrown = 0; thrown < facts_.circuit().operators[moved].throws; ++thrown) {
                Position other = at;
                other[moved] = thrown;
                const auto before = thrown == at[moved] ? std::nullopt : facts_.ask.settled(other);
                if (before && !facts_.ask.returnedIn(*before, element))
                    all.push_back(startedBetween(*before, at));
            }
        if (all.empty())
            all.push_back({element});
        return all;
    }

    std::vector<std::uint32_t> startedBetween(const Position& before, const Position& now) const
    {
        std::vector<std::uint32_t> started;
        for (std::uint32_t i = 0; i < facts_.circuit().elements.size(); ++i)
            if (const LoadPart* load = facts_.loadOf(i); load && load->inrush && facts_.ask.returnedIn(now, i) && !facts_.ask.returnedIn(before, i))
                started.push_back(i);
        return started;
    }

    static PowerVerdict judged(const LoadLine& line, const LoadFigures& figures)
    {
        if (line.least && figures.holding < *line.least - Volts{slack})
            return PowerVerdict::TooFew;
        if (line.inrush && !figures.atInrush)
            return PowerVerdict::NotCarried;
        const auto& starting = line.pullIn ? line.pullIn : line.least;
        if (starting && figures.atInrush.value_or(figures.holding) < *starting - Volts{slack})
            return PowerVerdict::TooFewToPullIn;
        return line.least ? PowerVerdict::Enough : PowerVerdict::LeastNotSaid;
    }

    void fillWay(LoadLine& line, const LoadWay& way) const
    {
        Metres sum;
        for (std::uint32_t joint : way.joints) {
            const Conductor& conductor = conductorOf(joint);
            sum = sum + lengthOf(job_, conductor);
            const std::string gauge = gaugeOf(job_, conductor);
            if (!gauge.empty() && std::find(line.gauges.begin(), line.gauges.end(), gauge) == line.gauges.end())
                line.gauges.push_back(gauge);
        }
        line.way = sum;
    }

    // Square millimetres that both of a load's terminals take.
    double thinnestIn(std::uint32_t element) const
    {
        double thinnest = 0;
        const Kind& kind = *kindOf(job_, originOfElement(element).device);
        for (const Key& key : {facts_.loadOf(element)->a, facts_.loadOf(element)->b})
            if (const Terminal* terminal = findTerminal(kind, key); terminal && !terminal->lead)
                thinnest = std::max(thinnest, squareMillimetresOf(terminal->wire.thinnest).value_or(0));
        return thinnest;
    }

    // All of its way in one gauge, everything else as it is.
    void findLeastGauge(LoadLine& line, const Meter& meter, const LoadWay& way, std::uint32_t element, const Positions& at) const
    {
        const bool hasLengths = std::all_of(way.joints.begin(), way.joints.end(),
                                            [&](std::uint32_t joint) { return lengthOf(job_, conductorOf(joint)).value > 0; });
        if (!line.least || !hasLengths || way.joints.empty())
            return;
        const auto gauges = gaugesLike(line.gauges.empty() ? "" : line.gauges.front());
        const double thinnest = thinnestIn(element);
        const auto found = std::partition_point(gauges.begin(), gauges.end(), [&](std::string_view gauge) {
            if (squareMillimetresOf(gauge).value_or(0) < thinnest * (1 - 1e-6))
                return true;
            const Meter other = withGauge(meter, job_, way.joints, gauge);
            return judged(line, figuresWith(other, element, at)) != PowerVerdict::Enough;
        });
        line.noGaugeWouldDo = found == gauges.end();
        if (found != gauges.end())
            line.leastGauge = std::string(*found);
    }

    // ---- Sources.

    SourceLine lineOf(std::uint32_t feed, const SourcePart& source, std::string name) const
    {
        const Device& device = *job_.devices.find(originOfFeed(feed).device);
        SourceLine line;
        line.source = std::move(name);
        line.what = device.words;
        line.title = verbatim(kindOf(job_, device)->title);
        line.fromSheet = isFromSheet(job_, originOfFeed(feed));
        if (source.most.value > 0)
            line.limit = source.most;
        const auto& worst = facts_.figures().outOfFeed[feed];
        const bool isAc = facts_.circuit().feeds[feed].ac;
        if (!worst || (isAc && worst->value <= 0))
            return line;
        fillDrawn(line, feed, isAc ? ac_ : dc_, worst->at);
        return line;
    }

    void fillDrawn(SourceLine& line, std::uint32_t feed, const Meter& meter, const Position& at) const
    {
        const Readings readings(meter, at);
        line.sum = readings.outOf(feed);
        line.others = line.sum;
        for (std::uint32_t i = 0; i < meter.loads.size(); ++i) {
            const Amperes drawn{meter.loads[i] ? std::abs(readings.throughElement(i).value) : 0};
            const auto sides = drawn.value > leastAmperes ? sidesOf(job_, originOfElement(i), meter.loads[i]->a, meter.loads[i]->b) : std::nullopt;
            const auto way = sides ? wayOf(job_, meter, at, i) : std::nullopt;
            if (!way || way->feed != feed)
                continue;
            line.loads.emplace_back(nameOfSides(job_, *sides), drawn);
            line.others = line.others - drawn;
        }
        std::stable_sort(line.loads.begin(), line.loads.end(), [](const auto& a, const auto& b) { return naturallyLess(a.first, b.first); });
        if (std::abs(line.others.value) < leastAmperes)
            line.others = {};
        line.position = positionInWords(at, allOperators());
        line.verdict = judged(line);
    }

    static SourceVerdict judged(const SourceLine& line)
    {
        if (!line.limit)
            return SourceVerdict::LimitNotSaid;
        const double share = line.sum.value / line.limit->value - 1e-9;
        return share > 1 ? SourceVerdict::OverLimit : share > mostOfLimit ? SourceVerdict::Over80 : SourceVerdict::Under80;
    }

    std::vector<MovedIndex> allOperators() const
    {
        std::vector<MovedIndex> operators;
        for (MovedIndex moved = 0; moved < facts_.circuit().operators.size(); ++moved)
            operators.push_back(moved);
        return operators;
    }

    const Job& job_;
    const Facts facts_;
    const Meter dc_, ac_;
};

} // namespace

std::optional<double> LoadLine::dropPercent() const
{
    if (!holding || !nominal || nominal->value <= 0)
        return std::nullopt;
    return (nominal->value - holding->value) / nominal->value * 100;
}

PowerSheet powerOf(const Job& job, std::string digest)
{
    PowerSheet sheet = PowerWork(job).sheet();
    sheet.title = titleBlockOf(job, std::move(digest));
    return sheet;
}

} // namespace doorloom
