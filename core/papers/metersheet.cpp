#include "papers/metersheet.h"

#include "check/figures.h"
#include "papers/devicehead.h"
#include "papers/naturalorder.h"
#include "papers/voltsreport.h"
#include "solve/readings.h"
#include "verdict/positions.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace doorloom {

constinit const Text meterTitle = {.en = "Meter sheet", .es = "Hoja de mediciones"};

namespace {

constexpr std::uint64_t paperBudget = 20'000'000; // steps

constexpr Text live = {.en = "Power is on: one hand, insulated leads, nothing of mains. Computed, not measured: ±10 % is the same.",
                       .es = "Hay tensión: una mano, puntas aisladas, nada de la red. Calculado, no medido: ±10 % es lo mismo."};
constexpr Text columnsMean = {.en = "At rest: nobody at the door, supplies at their nominal volts. From … to: the least while it is fed and the most, over every position "
                                    "looked at. On battery: mains off, at rest, battery near its end.",
                              .es = "En reposo: nadie en la puerta, fuentes en su tensión nominal. De … a: lo menos mientras recibe tensión y lo más, en toda posición "
                                    "mirada. Con batería: sin red, en reposo, batería casi agotada."};
constexpr Text lengthsMissing = {.en = "{without} of {all} conductors have no length or no gauge and count as no ohms.",
                                 .es = "{without} de {all} conductores no tienen longitud o calibre y cuentan como cero ohmios."};
constexpr Text sourcesTitle = {.en = "Sources", .es = "Fuentes"}, loadsTitle = {.en = "Loads", .es = "Cargas"}, inputsTitle = {.en = "Dry inputs", .es = "Entradas secas"};
constexpr Text noSources = {.en = "There is no source.", .es = "No hay ninguna fuente."};
constexpr Text floating = {.en = "floating: ignore", .es = "flotante: ignore"};
constexpr Text neverFed = {.en = "never fed", .es = "nunca alimentada"};
constexpr Text fromTo = {.en = "{low} to {high} V", .es = "{low} a {high} V"};

const std::vector<Text> heads = {{.en = "What", .es = "Qué"},             {.en = "Red lead on", .es = "Punta roja en"}, {.en = "Black lead on", .es = "Punta negra en"},
                                 {.en = "DC/AC", .es = "CC/CA"},          {.en = "At rest", .es = "En reposo"},         {.en = "From … to", .es = "De … a"},
                                 {.en = "On battery", .es = "Con batería"}, {.en = "Read", .es = "Leído"},               {.en = "Initials", .es = "Iniciales"}};

using Sides = std::pair<Landing, Landing>;

class MeterWork {
public:
    MeterWork(const Job& job, Language language)
        : job_(job), language_(language), net_(job), ask_(net_.circuit(), paperBudget), rest_(atRest(net_.circuit())),
          figures_(figuresOf(job, net_, ask_, paperBudget, VoltsWanted::All)), dc_(job, net_, {}), ac_(job, net_, {.ac = true})
    {
    }

    PaperTable sources() const
    {
        PaperTable table = begun(sourcesTitle);
        table.none = inWords(noSources, language_);
        for (const Feed& feed : net_.circuit().feeds)
            if (const auto* source = partBehind<SourcePart>(job_, net_.origin(feed.origin)))
                if (const auto sides = sidesOf(job_, net_.origin(feed.origin), source->plus, source->minus)) {
                    const std::string range = rangeWords(source->lowest.value, source->highest.value);
                    add(table, *sides, feed.ac, range, source->lowestOnBattery ? figure(source->lowestOnBattery->value) : nothingToSay);
                }
        return sorted(std::move(table));
    }

    PaperTable loads() const
    {
        PaperTable table = begun(loadsTitle);
        for (std::uint32_t i = 0; i < net_.circuit().elements.size(); ++i) {
            const Origin& origin = net_.origin(net_.circuit().elements[i].origin);
            const auto* load = partBehind<LoadPart>(job_, origin);
            if (const auto sides = load ? sidesOf(job_, origin, load->a, load->b) : std::nullopt; sides && isLanded(*sides))
                add(table, *sides, load->accepts == Current::Ac, rangeOf(i), onBattery(*sides));
        }
        return sorted(std::move(table));
    }

    PaperTable inputs() const
    {
        PaperTable table = begun(inputsTitle);
        for (const DryInput& input : net_.circuit().inputs) {
            const auto terminal = landingAt(job_, net_, input.terminal), reference = landingAt(job_, net_, input.reference);
            if (terminal && reference && isLanded({*terminal, *reference}))
                add(table, {*terminal, *reference}, false, nothingToSay, nothingToSay);
        }
        return sorted(std::move(table));
    }

private:
    PaperTable begun(const Text& title) const { return {std::string(inWords(title, language_)), {}, headsIn(heads, language_), {}, {1, 2}}; }
    static PaperTable sorted(PaperTable table)
    {
        std::stable_sort(table.rows.begin(), table.rows.end(), [](const auto& a, const auto& b) { return naturallyLess(a[1], b[1]); });
        return table;
    }
    static std::string figure(double volts) { return fmt::format("{:.1f} V", std::abs(volts) < 0.05 ? 0 : volts); }
    std::string rangeWords(double low, double high) const
    {
        return inWords(Message{fromTo, {{"low", fmt::format("{:.1f}", low)}, {"high", fmt::format("{:.1f}", high)}}}, language_);
    }

    bool isLanded(const Sides& sides) const
    {
        const auto isOn = [&](const Landing& landing) {
            const auto conductors = conductorsOn(job_, landing.device);
            return std::any_of(conductors.begin(), conductors.end(), [&](const Conductor* each) {
                const Landing *from = landingOf(each->from), *to = landingOf(each->to);
                return (from && *from == landing) || (to && *to == landing);
            });
        };
        return isOn(sides.first) && isOn(sides.second);
    }

    std::string read(const Sides& sides, const Meter& meter, SupplyLevel level) const
    {
        const auto x = net_.vertexOf(sides.first.device, sides.first.terminal), y = net_.vertexOf(sides.second.device, sides.second.terminal);
        if (!x || !y)
            return nothingToSay;
        auto& readings = readings_[&meter == &ac_][level == SupplyLevel::OnBattery];
        if (!readings)
            readings.emplace(meter, rest_, Asked{.supplies = level});
        const auto volts = readings->hold() ? readings->between(*x, *y) : std::nullopt;
        return volts ? figure(volts->value) : std::string(inWords(floating, language_));
    }

    std::string onBattery(const Sides& sides) const { return hasBattery() ? read(sides, dc_, SupplyLevel::OnBattery) : nothingToSay; }
    bool hasBattery() const
    {
        return std::any_of(net_.circuit().feeds.begin(), net_.circuit().feeds.end(), [&](const Feed& feed) {
            const auto* source = partBehind<SourcePart>(job_, net_.origin(feed.origin));
            return source && source->lowestOnBattery;
        });
    }

    std::string rangeOf(std::uint32_t element) const
    {
        const auto &low = figures_.lowestVolts[element], &high = figures_.highestVolts[element];
        return low && high ? rangeWords(low->value, high->value) : std::string(inWords(neverFed, language_));
    }

    void add(PaperTable& table, const Sides& sides, bool ac, const std::string& range, const std::string& battery) const
    {
        const Device* device = job_.devices.find(sides.first.device);
        table.rows.push_back({device && !device->words.empty() ? device->words : std::string(inWords(titleOf(*kindOf(job_, sides.first.device)), language_)),
                              nameOf(job_, sides.first), nameOf(job_, sides.second), ac ? "AC" : "DC", read(sides, ac ? ac_ : dc_, SupplyLevel::Nominal), range, battery,
                              toFillIn, toFillIn});
    }

    const Job& job_;
    Language language_;
    const Netlist net_;
    const Questions ask_;
    const Position rest_;
    const Figures figures_;
    const Meter dc_, ac_;
    mutable std::optional<Readings> readings_[2][2]; // at rest: of AC, on battery
};

} // namespace

TablePaper meterTables(const Job& job, std::string digest, Language language)
{
    TablePaper paper{meterTitle, titleBlockOf(job, std::move(digest)), {live, columnsMean}, {}};
    if (const OhmsKnown known = ohmsKnownOf(job); known.withoutOhms > 0)
        paper.opening.push_back({lengthsMissing, {{"without", std::to_string(known.withoutOhms)}, {"all", std::to_string(known.conductors)}}});
    const MeterWork work(job, language);
    for (PaperTable table : {work.sources(), work.loads(), work.inputs()})
        if (!table.rows.empty() || !table.none.empty())
            paper.tables.push_back(std::move(table));
    return paper;
}

} // namespace doorloom
