#include "check/check.h"
#include "check/loops.h"
#include "check/tell.h"

#include <fmt/format.h>

#include <algorithm>

// A contact that needs more volts or current to stay clean than the dry input behind it puts out.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{contact} wants {least} to stay clean, and {input} puts out no more than {given}: it closes badly after a while.",
                      .es = "{contact} necesita {least} para mantenerse limpio, y {input} da como mucho {given}: con el tiempo cierra mal."};
constexpr Text sealed = {.en = "In place of {contact}, use a contact for small signals: gold, or a reed.",
                         .es = "En lugar de {contact}, use un contacto para señales pequeñas: dorado, o de lámina."};
constexpr double milli = 1000;

std::string volts(double value) { return fmt::format("{:.3g} V", value); }
std::string milliamperes(double value) { return fmt::format("{:.3g} mA", value * milli); }

bool wantsLeast(const ContactRating& rating) { return rating.leastVolts || rating.leastCurrent; }

const ContactPart& contactAt(const Facts& facts, std::uint32_t joint)
{
    return *partBehind<ContactPart>(facts.job, facts.net.origin(facts.circuit().joints[joint].origin));
}

bool anyWantsLeast(const Facts& facts)
{
    return std::any_of(facts.circuit().joints.begin(), facts.circuit().joints.end(), [&](const Joint& joint) {
        const auto* contact = partBehind<ContactPart>(facts.job, facts.net.origin(joint.origin));
        return contact && wantsLeast(contact->rating);
    });
}

// What the input puts out into a closed contact, where it falls short of what the contact wants; else nothing.
std::optional<std::pair<std::string, std::string>> shortOf(const DryInputPart& input, const ContactRating& rating)
{
    if (rating.leastVolts && input.wettingVolts && input.wettingVolts->value < rating.leastVolts->value)
        return std::pair(volts(rating.leastVolts->value), volts(input.wettingVolts->value));
    if (!rating.leastCurrent || !input.wettingVolts || !input.wettingOhms || input.wettingOhms->value <= 0)
        return std::nullopt;
    const double given = input.wettingVolts->value / input.wettingOhms->value;
    return given < rating.leastCurrent->value ? std::optional(std::pair(milliamperes(rating.leastCurrent->value), milliamperes(given)))
                                              : std::nullopt;
}

std::vector<Finding> findStarved(const Facts& facts)
{
    std::vector<Finding> findings;
    if (!anyWantsLeast(facts))
        return findings;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number) {
        const DryInput& input = facts.circuit().inputs[number];
        const auto* part = partBehind<DryInputPart>(facts.job, facts.net.origin(input.origin));
        if (!part || !facts.isLanded(input.terminal))
            continue;
        for (std::uint32_t joint : Loop(facts, number).contactJoints()) {
            const auto told = shortOf(*part, contactAt(facts, joint).rating);
            if (!told)
                continue;
            Finding finding;
            finding.rule = "contact-least";
            finding.severity = Severity::Doubt;
            finding.at = {spotOf(facts, facts.circuit().joints[joint].b)};
            const std::string contact = nameOf(facts, facts.circuit().joints[joint].b);
            finding.why = {why, {{"contact", contact}, {"least", told->first}, {"input", nameOf(facts, input.terminal)}, {"given", told->second}}};
            finding.remedy = {sealed, {{"contact", contact}}};
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

} // namespace

extern const Check contactLeast = {
    .code = "contact-least",
    .worst = Severity::Doubt,
    .title = {.en = "Too little for the contact", .es = "Demasiado poco para el contacto"},
    .notCovered = {.en = "contacts in the feed of small loads; inputs whose own volts or ohms are not known",
                   .es = "contactos que alimentan cargas pequeñas; entradas cuya tensión u ohmios propios no constan"},
    .run = findStarved,
};

} // namespace doorloom
