#include "check/check.h"
#include "check/tell.h"

#include <optional>

// Amperes out of each supply: all that can hold at once, with what pulls in, with a battery to be charged.
namespace doorloom {

namespace {

constexpr Text overloaded = {.en = "{source} gives {amperes} A at the most asked of it here, and is made for {most} A.",
                             .es = "A {source} se le piden hasta {amperes} A, y está hecha para {most} A."};
constexpr Text pullingIn = {.en = "With what pulls in at the same moment {source} is asked for {amperes} A, and is made for {most} A.",
                            .es = "Con lo que atrae en el mismo momento se piden a {source} {amperes} A, y está hecha para {most} A."};
constexpr Text atReturn = {.en = "When the mains comes back all that is fed at rest pulls in at once: {amperes} A, and {source} is made for {most} A.",
                           .es = "Al volver la red todo lo alimentado en reposo atrae a la vez: {amperes} A, y {source} está hecha para {most} A."};
constexpr Text noMargin = {.en = "{source} is loaded with {amperes} A of its {most} A: more than 80 %.",
                           .es = "{source} se carga con {amperes} A de sus {most} A: más del 80 %."};
constexpr Text noRecharge = {.en = "With the mains back and the battery flat, loads and charging take {amperes} A, and {source} is made for {most} A in all.",
                             .es = "Al volver la red con la batería agotada, cargas y recarga toman {amperes} A, y {source} está hecha para {most} A en total."};
constexpr Text larger = {.en = "Put some of the loads on another supply, or fit a larger one for {source}.",
                         .es = "Ponga parte de las cargas en otra fuente, o monte una mayor por {source}."};

constexpr double mostOfRating = 0.8; // 75 to 80 %: common practice
constexpr double slack = 1e-9;

struct TooMuch {
    std::string_view reason;
    Severity severity = Severity::Fault;
    double amperes = 0;
    Text why;
    std::optional<Position> at; // nothing: rest
};

// The worst of what is asked of a supply.
std::optional<TooMuch> tooMuch(const Facts& facts, std::uint32_t feed, double most)
{
    const Figures& figures = facts.figures();
    const auto& holding = figures.outOfFeed[feed];
    const auto& pulling = figures.outPullingIn[feed];
    if (holding && holding->value > most + slack)
        return TooMuch{"", Severity::Fault, holding->value, overloaded, holding->at};
    if (pulling && pulling->value > most + slack)
        return TooMuch{"pulling in", Severity::Fault, pulling->value, pullingIn, pulling->at};
    if (figures.outAtReturn[feed] > most + slack)
        return TooMuch{"mains back", Severity::Doubt, figures.outAtReturn[feed], atReturn, {}};
    if (holding && holding->value > mostOfRating * most + slack)
        return TooMuch{"no margin", Severity::Doubt, holding->value, noMargin, holding->at};
    return std::nullopt;
}

Finding atSource(const Facts& facts, std::uint32_t feed, const SourcePart& source, std::string_view rule, double amperes, Text why)
{
    const std::string name = tagOfOrigin(facts, facts.circuit().feeds[feed].origin);
    Finding made;
    made.rule = rule;
    made.at = {source.plus == "+" ? deviceSpot(facts.deviceOfFeed(feed)) : spotOf(facts, facts.circuit().feeds[feed].plus)};
    made.why = {why, {{"source", name}, {"amperes", figureText(amperes)}, {"most", figureText(source.most.value)}}};
    made.remedy = {larger, {{"source", name}}};
    return made;
}

const SourcePart* limitedSource(const Facts& facts, std::uint32_t feed)
{
    const auto* source = partBehind<SourcePart>(facts.job, facts.net.origin(facts.circuit().feeds[feed].origin));
    return source && source->most.value > 0 ? source : nullptr;
}

std::vector<Finding> findOverloaded(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().feeds.size(); ++i) {
        const SourcePart* source = limitedSource(facts, i);
        const auto over = source ? tooMuch(facts, i, source->most.value) : std::nullopt;
        if (!over)
            continue;
        findings.push_back(atSource(facts, i, *source, "overloaded-supply", over->amperes, over->why));
        findings.back().reason = over->reason;
        findings.back().severity = over->severity;
        if (over->at)
            findings.back().throws = {witnessAt(facts, *over->at)};
    }
    return findings;
}

// What a charger in the same device takes of the supply's amperes.
double chargingOf(const Facts& facts, DeviceId device)
{
    const Kind* kind = kindOf(facts.job, device);
    for (std::size_t i = 0; kind && i < kind->parts.size(); ++i)
        if (const auto* port = std::get_if<BatteryPortPart>(&kind->parts[i].body); port && port->charge)
            return port->charge->value;
    return 0;
}

// Mains back, battery flat: the operators that turn it on, where they are its own.
Witness mainsBackBatteryFlat(const Facts& facts, DeviceId device)
{
    Witness witness;
    for (const Operator& moved : facts.job.operators)
        if (moved.nature == OperatorNature::Battery && moved.owner == device)
            for (const Throw& thrown : moved.throws)
                if (thrown.key == moved.unpowered)
                    witness.throws.push_back({moved.id, {}, {}, thrown.key});
    return witness;
}

std::vector<Finding> findNoRecharge(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().feeds.size(); ++i) {
        const SourcePart* source = limitedSource(facts, i);
        const double charging = source ? chargingOf(facts, facts.deviceOfFeed(i)) : 0;
        const auto& holding = facts.figures().outOfFeed[i];
        if (charging <= 0 || !holding || holding->value > source->most.value + slack || holding->value + charging <= source->most.value + slack)
            continue;
        findings.push_back(atSource(facts, i, *source, "no-spare-for-recharging", holding->value + charging, noRecharge));
        findings.back().severity = Severity::Doubt;
        findings.back().throws = {mainsBackBatteryFlat(facts, facts.deviceOfFeed(i))};
    }
    return findings;
}

} // namespace

extern const Check overloadedSupply = {
    .code = "overloaded-supply",
    .worst = Severity::Fault,
    .title = {.en = "Overloaded supply", .es = "Fuente sobrecargada"},
    .notCovered = {.en = "for how long a supply carries more than its rating; transformers behind rectifiers",
                   .es = "cuánto tiempo lleva una fuente más de lo nominal; transformadores tras rectificadores"},
    .run = findOverloaded,
    .readsFigures = true};
extern const Check noSpareForRecharging = {
    .code = "no-spare-for-recharging",
    .worst = Severity::Doubt,
    .title = {.en = "No spare for recharging", .es = "Sin reserva para recargar"},
    .notCovered = {.en = "how long charging takes; chargers in devices of their own", .es = "cuánto tarda la recarga; cargadores en equipos aparte"},
    .run = findNoRecharge,
    .readsFigures = true};

} // namespace doorloom
