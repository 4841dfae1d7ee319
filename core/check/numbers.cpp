#include "check/check.h"
#include "check/tell.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

// Volts at each load and amperes through supplies and contacts, over every position.
namespace doorloom {

namespace {

constexpr Text under = {.en = "{load} gets {volts} V at the least, and works from {least} V.",
                        .es = "{load} recibe {volts} V como mínimo y trabaja desde {least} V."};
constexpr Text underOnBattery = {.en = "At the end of the battery {load} gets {volts} V, and works from {least} V.",
                                 .es = "Al final de la batería {load} recibe {volts} V y trabaja desde {least} V."};
constexpr Text thicker = {.en = "Use thicker conductors or a shorter way to {load}, or a supply of more volts.",
                          .es = "Use conductores más gruesos o un camino más corto hasta {load}, o una fuente de más tensión."};
constexpr Text over = {.en = "{load} gets {volts} V at the most, and takes no more than {most} V.",
                       .es = "{load} recibe hasta {volts} V y no admite más de {most} V."};
constexpr Text lower = {.en = "Feed {load} from a supply of fewer volts, or fit one made for {volts} V.",
                        .es = "Alimente {load} de una fuente de menos tensión, o monte una para {volts} V."};
constexpr Text overloaded = {.en = "{source} gives {amperes} A at the most asked of it here, and is made for {most} A.",
                             .es = "A {source} se le piden hasta {amperes} A, y está hecha para {most} A."};
constexpr Text noMargin = {.en = "{source} is loaded with {amperes} A of its {most} A: more than 80 %.",
                           .es = "{source} se carga con {amperes} A de sus {most} A: más del 80 %."};
constexpr Text larger = {.en = "Put some of the loads on another supply, or fit a larger one for {source}.",
                         .es = "Ponga parte de las cargas en otra fuente, o monte una mayor por {source}."};
constexpr Text contactWhy = {.en = "{amperes} A run through {contact}, made for {most} A{coils}.",
                             .es = "Por {contact} pasan {amperes} A, y está hecho para {most} A{coils}."};
constexpr Text ofCoils = {.en = " of coils", .es = " de bobinas"}, plainly = {.en = "", .es = ""};
constexpr Text stronger = {.en = "Let {contact} move a relay with stronger contacts, or share the loads out.",
                           .es = "Haga que {contact} mueva un relé de contactos mayores, o reparta las cargas."};

constexpr double mostOfRating = 0.8;         // 75 to 80 %: common practice
constexpr double inductiveOfResistive = 0.5; // where a rating says nothing of coils: common practice

std::string figure(double value) { return fmt::format("{:.2f}", value); }

// Those that matter, where they are not as at rest.
Witness witnessOf(const Facts& facts, const Position& at, const std::vector<MovedIndex>& mattering)
{
    Cube cube;
    for (MovedIndex moved : mattering)
        if (at[moved] != facts.circuit().operators[moved].idle)
            cube.push_back({moved, at[moved]});
    return witnessesOf(facts, {cube}).front();
}

Finding finding(std::string_view rule, Severity severity, Spot at, Witness when, Message why, Message remedy)
{
    Finding made;
    made.rule = rule;
    made.severity = severity;
    made.at = {std::move(at)};
    made.throws = {std::move(when)};
    made.why = std::move(why);
    made.remedy = std::move(remedy);
    return made;
}

std::vector<Finding> findUnder(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i) {
        const LoadPart* load = facts.loadOf(i);
        const auto &worst = facts.figures().lowestVolts[i], &battery = facts.figures().lowestOnBattery[i];
        if (!load || !load->leastVolts || !worst)
            continue;
        const double least = load->leastVolts->value;
        const bool isUnder = worst->value < least - 1e-6;
        if (!isUnder && (!battery || battery->value >= least - 1e-6))
            continue;
        const Worst& told = isUnder ? *worst : *battery;
        const std::string name = tagOfOrigin(facts, facts.circuit().elements[i].origin);
        findings.push_back(finding("under-voltage", isUnder ? Severity::Fault : Severity::Doubt, loadSpot(facts, i),
                                   witnessOf(facts, told.at, facts.ask.operatorsThatMatter(i)),
                                   {isUnder ? under : underOnBattery, {{"load", name}, {"volts", figure(told.value)}, {"least", figure(least)}}},
                                   {thicker, {{"load", name}}}));
        findings.back().reason = isUnder ? "" : "on battery";
    }
    return findings;
}

std::vector<Finding> findOver(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i) {
        const LoadPart* load = facts.loadOf(i);
        const auto& worst = facts.figures().highestVolts[i];
        if (!load || !load->mostVolts || !worst || worst->value <= load->mostVolts->value + 1e-6)
            continue;
        const std::string name = tagOfOrigin(facts, facts.circuit().elements[i].origin);
        findings.push_back(finding("over-voltage", Severity::Danger, loadSpot(facts, i),
                                   witnessOf(facts, worst->at, facts.ask.operatorsThatMatter(i)),
                                   {over, {{"load", name}, {"volts", figure(worst->value)}, {"most", figure(load->mostVolts->value)}}},
                                   {lower, {{"load", name}, {"volts", figure(worst->value)}}}));
    }
    return findings;
}

std::vector<MovedIndex> all(const Facts& facts)
{
    std::vector<MovedIndex> operators(facts.circuit().operators.size());
    for (MovedIndex moved = 0; moved < operators.size(); ++moved)
        operators[moved] = moved;
    return operators;
}

std::vector<Finding> findOverloadedSources(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().feeds.size(); ++i) {
        const auto* source = partBehind<SourcePart>(facts.job, facts.net.origin(facts.circuit().feeds[i].origin));
        const auto& worst = facts.figures().mostOutOfFeed[i];
        if (!source || source->most.value <= 0 || !worst || worst->value <= mostOfRating * source->most.value + 1e-9)
            continue;
        const bool isOver = worst->value > source->most.value + 1e-9;
        const std::string name = tagOfOrigin(facts, facts.circuit().feeds[i].origin);
        const Spot at = source->plus == "+" ? deviceSpot(facts.deviceOfFeed(i)) : spotOf(facts, facts.circuit().feeds[i].plus);
        findings.push_back(finding("overloaded-supply", isOver ? Severity::Fault : Severity::Doubt, at, witnessOf(facts, worst->at, all(facts)),
                                   {isOver ? overloaded : noMargin,
                                    {{"source", name}, {"amperes", figure(worst->value)}, {"most", figure(source->most.value)}}},
                                   {larger, {{"source", name}}}));
    }
    return findings;
}

// Where coils or locks are among the loads, contacts break their currents.
bool hasCoils(const Facts& facts)
{
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i)
        if (const LoadPart* load = facts.loadOf(i); load && (load->use == LoadUse::Lock || load->use == LoadUse::Coil || load->use == LoadUse::Motor))
            return true;
    return false;
}

// Nothing said: as much as anybody likes.
double ratingOf(const ContactRating& rating, bool coils)
{
    if (coils && rating.dcInductive)
        return rating.dcInductive->value;
    if (!rating.dcResistive)
        return std::numeric_limits<double>::infinity();
    return coils ? inductiveOfResistive * rating.dcResistive->value : rating.dcResistive->value;
}

std::vector<Finding> findOverloadedContacts(const Facts& facts)
{
    std::vector<Finding> findings;
    const bool coils = hasCoils(facts);
    for (std::uint32_t i = 0; i < facts.circuit().joints.size(); ++i) {
        const Joint& joint = facts.circuit().joints[i];
        const auto* contact = partBehind<ContactPart>(facts.job, facts.net.origin(joint.origin));
        if (!contact)
            continue;
        const double most = ratingOf(contact->rating, coils);
        const auto& worst = facts.figures().mostThroughJoint[i];
        if (!worst || worst->value <= most + 1e-9)
            continue;
        const Spot at = spotOf(facts, joint.b);
        const std::string name = nameOf(facts, joint.b);
        findings.push_back(finding("overloaded-contact", Severity::Fault, at, witnessOf(facts, worst->at, all(facts)),
                                   {contactWhy,
                                    {{"amperes", figure(worst->value)},
                                     {"contact", name},
                                     {"most", figure(most)},
                                     {"coils", std::vector<Message>{coils ? ofCoils : plainly}}}},
                                   {stronger, {{"contact", name}}}));
    }
    return findings;
}

constexpr Text apart = {.en = "drop and amperes of doors that are judged apart on one supply; AC; inrush; conductors without a length or a "
                              "gauge count as none",
                        .es = "caída y corriente de puertas que se juzgan por separado en una fuente; CA; picos de arranque; los conductores sin "
                              "longitud o calibre no cuentan"};

} // namespace

extern const Check underVoltage = {.code = "under-voltage",
                                   .worst = Severity::Fault,
                                   .title = {.en = "Too few volts", .es = "Tensión insuficiente"},
                                   .notCovered = apart,
                                   .run = findUnder,
                                   .readsFigures = true};
extern const Check overVoltage = {.code = "over-voltage",
                                  .worst = Severity::Danger,
                                  .title = {.en = "Too many volts", .es = "Tensión excesiva"},
                                  .notCovered = apart,
                                  .run = findOver,
                                  .readsFigures = true};
extern const Check overloadedSupply = {.code = "overloaded-supply",
                                       .worst = Severity::Fault,
                                       .title = {.en = "Overloaded supply", .es = "Fuente sobrecargada"},
                                       .notCovered = apart,
                                       .run = findOverloadedSources,
                                       .readsFigures = true};
extern const Check overloadedContact = {.code = "overloaded-contact",
                                        .worst = Severity::Fault,
                                        .title = {.en = "Overloaded contact", .es = "Contacto sobrecargado"},
                                        .notCovered = apart,
                                        .run = findOverloadedContacts,
                                        .readsFigures = true};

} // namespace doorloom
