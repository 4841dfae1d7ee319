#include "check/check.h"
#include "check/tell.h"

#include <fmt/format.h>

#include <numbers>

// A varistor or clamp that the supply's highest volts reach: it conducts and heats.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{part} bears {rating} V, and {source} puts up to {volts} V across it: it conducts, heats and burns.",
                      .es = "{part} soporta {rating} V, y {source} le aplica hasta {volts} V: conduce, se calienta y se quema."};
constexpr Text higher = {.en = "In place of {part}, fit one for more than {volts} V.", .es = "En lugar de {part}, monte uno para más de {volts} V."};

std::string figure(double volts) { return fmt::format("{:.3g}", volts); }

// Of AC, the peak.
double peakOf(const Feed& feed) { return feed.highest / 1000.0 * (feed.ac ? std::numbers::sqrt2 : 1); }

std::vector<Finding> findUnderRated(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& element = facts.circuit().elements[number];
        const auto* part = partBehind<SuppressorPart>(facts.job, facts.net.origin(element.origin));
        if (!part)
            continue;
        const std::string name = tagOfOrigin(facts, element.origin);
        for (std::uint32_t source : facts.ask.feedsNear(element.a)) {
            const Feed& feed = facts.circuit().feeds[source];
            if (peakOf(feed) <= part->rating.value)
                continue;
            const Verdict across = facts.ask.returnedVia(number, source, Direction::Either);
            if (!occurs(across))
                continue;
            Finding finding;
            finding.rule = "varistor-rating";
            finding.at = {deviceSpot(facts.deviceOf(element.origin))};
            happensIn(finding, facts, across);
            finding.why = {why,
                           {{"part", name},
                            {"rating", figure(part->rating.value)},
                            {"source", tagOfOrigin(facts, feed.origin)},
                            {"volts", figure(peakOf(feed))}}};
            finding.remedy = {higher, {{"part", name}, {"volts", figure(peakOf(feed))}}};
            findings.push_back(std::move(finding));
            break; // one source is enough
        }
    }
    return findings;
}

} // namespace

extern const Check varistorRating = {
    .code = "varistor-rating",
    .worst = Severity::Fault,
    .title = {.en = "Varistor below the supply's highest volts", .es = "Varistor por debajo de la tensión máxima de la fuente"},
    .notCovered = {.en = "ageing of varistors; volts that reach one through loads, or of supplies in series",
                   .es = "envejecimiento de varistores; tensión que llega por cargas, o de fuentes en serie"},
    .run = findUnderRated,
};

} // namespace doorloom
