#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

// Batteries on a charger's terminals: their signed sum has to be what the charger is made for.
namespace doorloom {

namespace {

constexpr double mostOff = 0.1; // of the charger's volts. Common practice, no source

constexpr Text why = {.en = "On {charger}, made for {wanted} V, the batteries give {sum} V{reversed}.",
                      .es = "En {charger}, de {wanted} V, las baterías dan {sum} V{reversed}."};
constexpr Text isReversed = {.en = ": {battery} is landed the wrong way round", .es = ": {battery} está conectada al revés"};
constexpr Text asMany = {.en = "Land batteries in series that add up to {wanted} V, plus to {plus}.",
                         .es = "Conecte baterías en serie que sumen {wanted} V, positivo a {plus}."};
constexpr Text nothing = {.en = "", .es = ""};
constexpr Text shortWhy = {.en = "{plus} and {minus}, to which {charger}'s battery belongs, are one net: the battery is shorted as soon as it is landed.",
                           .es = "{plus} y {minus}, donde va la batería de {charger}, son un mismo punto: la batería queda en cortocircuito al conectarla."};
constexpr Text openWhy = {.en = "Something is landed for {charger}'s battery, and no string of batteries leads from {plus} to {minus}: without mains nothing works.",
                          .es = "Hay algo conectado para la batería de {charger}, y ninguna serie de baterías va de {plus} a {minus}: sin red no funciona nada."};
constexpr Text takeOffWords = {.en = "Take off what joins {plus} and {minus}.", .es = "Quite lo que une {plus} y {minus}."};

struct Battery {
    DeviceId device;
    const BatteryPart* part;
    Vertex plus, minus;
};

struct InString {
    const Battery* battery;
    bool forward; // entered at its plus
};

template <class Body, class Visit> void forEachPart(const Facts& facts, Visit visit)
{
    for (const Device& device : facts.job.devices)
        if (const Kind* kind = kindOf(facts.job, device))
            for (const Part& part : kind->parts)
                if (const auto* body = std::get_if<Body>(&part.body); body && holds(device, part.when)) {
                    const auto plus = facts.net.vertexOf(device.id, body->plus), minus = facts.net.vertexOf(device.id, body->minus);
                    if (plus && minus)
                        visit(device, *body, *plus, *minus);
                }
}

// Batteries in line from one net to another; empty: none. Few, so depth first will do.
std::vector<InString> stringBetween(const Facts& facts, const std::vector<Battery>& batteries, Vertex from, Vertex to,
                                    std::vector<InString> passed)
{
    const auto net = [&](Vertex vertex) { return facts.ask.netOf(vertex); };
    if (net(from) == net(to))
        return passed;
    for (const Battery& battery : batteries) {
        if (std::any_of(passed.begin(), passed.end(), [&](const InString& each) { return each.battery == &battery; }))
            continue;
        for (bool forward : {true, false}) {
            if (net(forward ? battery.plus : battery.minus) != net(from))
                continue;
            std::vector<InString> next = passed;
            next.push_back({&battery, forward});
            if (auto found = stringBetween(facts, batteries, forward ? battery.minus : battery.plus, to, std::move(next)); !found.empty())
                return found;
        }
    }
    return {};
}

double sumOf(const std::vector<InString>& string)
{
    double sum = 0;
    for (const auto& [battery, forward] : string)
        sum += forward ? battery->part->nominal.value : -battery->part->nominal.value;
    return sum;
}

std::string volts(double value)
{
    return fmt::format("{:g}", std::round(value * 10) / 10);
}

// Where no string leads from one of the charger's terminals to the other: joined, or landed and leading nowhere.
std::optional<Finding> withoutString(const Facts& facts, const Device& charger, const BatteryPortPart& port, Vertex plus, Vertex minus)
{
    const bool shorted = facts.ask.netOf(plus) == facts.ask.netOf(minus);
    if (!shorted && !facts.isLanded(plus) && !facts.isLanded(minus))
        return std::nullopt; // inside, or not bought yet
    Finding finding;
    finding.rule = "battery-wrong";
    finding.reason = shorted ? "shorted" : "no string";
    finding.severity = shorted ? Severity::Danger : Severity::Fault;
    finding.at = {deviceSpot(charger.id)};
    finding.why = {shorted ? shortWhy : openWhy, {{"charger", charger.tag}, {"plus", nameOf(facts, plus)}, {"minus", nameOf(facts, minus)}}};
    finding.remedy = {asMany, {{"wanted", volts(port.nominal.value)}, {"plus", nameOf(facts, plus)}}};
    if (shorted) {
        finding.remedy = {takeOffWords, {{"plus", nameOf(facts, plus)}, {"minus", nameOf(facts, minus)}}};
        finding.path = wayBetween(facts, {}, plus, minus, false);
        Remedies remedies(facts);
        remedies.breakWay(finding.path);
        finding.remedies = remedies.taken();
    }
    return finding;
}

std::vector<Finding> findWrongBatteries(const Facts& facts)
{
    std::vector<Battery> batteries;
    forEachPart<BatteryPart>(facts, [&](const Device& device, const BatteryPart& part, Vertex plus, Vertex minus) {
        batteries.push_back({device.id, &part, plus, minus});
    });
    std::vector<Finding> findings;
    forEachPart<BatteryPortPart>(facts, [&](const Device& charger, const BatteryPortPart& port, Vertex plus, Vertex minus) {
        const std::vector<InString> string = stringBetween(facts, batteries, plus, minus, {});
        if (string.empty())
            if (auto finding = withoutString(facts, charger, port, plus, minus))
                findings.push_back(*std::move(finding));
        const double sum = sumOf(string), wanted = port.nominal.value;
        if (string.empty() || std::abs(sum - wanted) <= mostOff * wanted)
            return;
        const auto reversed = std::find_if(string.begin(), string.end(), [](const InString& each) { return !each.forward; });
        const InString& named = reversed != string.end() ? *reversed : string.front();
        Finding finding;
        finding.rule = "battery-wrong";
        finding.severity = Severity::Danger;
        finding.at = {deviceSpot(named.battery->device)};
        const Message turned = reversed != string.end() ? Message{isReversed, {{"battery", tagOf(facts.job, named.battery->device)}}} : Message{nothing};
        finding.why = {why,
                       {{"charger", charger.tag}, {"wanted", volts(wanted)}, {"sum", volts(sum)}, {"reversed", std::vector<Message>{turned}}}};
        finding.remedy = {asMany, {{"wanted", volts(wanted)}, {"plus", nameOf(facts, plus)}}};
        Remedies remedies(facts);
        for (const auto& [battery, forward] : string)
            if (!forward)
                remedies.exchange(battery->device, battery->part->plus, battery->part->minus);
        finding.remedies = remedies.taken();
        findings.push_back(std::move(finding));
    });
    return findings;
}

} // namespace

extern const Check batteryWrong = {
    .code = "battery-wrong",
    .worst = Severity::Danger,
    .title = {.en = "Battery wrong for its charger", .es = "Batería incorrecta para su cargador"},
    .notCovered = {.en = "strings side by side beyond the first; capacity and age", .es = "series en paralelo más allá de la primera; capacidad y edad"},
    .run = findWrongBatteries,
};

} // namespace doorloom
