#include "check/check.h"
#include "check/loops.h"
#include "check/remedies.h"
#include "check/tell.h"

#include "edit/details.h"

#include <algorithm>

// Resistors of a supervised loop that stand where the input is, and its contact is elsewhere: the cable between is not watched.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{resistors} stand beside {input} in {here}, and {contact} is in {there}: a cut or short of the cable between is not seen.",
                      .es = "{resistors} están junto a {input} en {here}, y {contact} está en {there}: no se ve un corte ni un corto del cable entre ambos."};
constexpr Text move = {.en = "Fit {resistors} at {contact}, in {there}.", .es = "Monte {resistors} junto a {contact}, en {there}."};

struct Placed {
    std::vector<DeviceId> resistors; // at the input
    DeviceId contact;                // elsewhere
    PlaceId here, there;
};

std::optional<Placed> placedAtInput(const Facts& facts, std::uint32_t number)
{
    const auto placeOf = [&](DeviceId device) {
        const Device* row = facts.job.devices.find(device);
        return row ? row->place : PlaceId{};
    };
    Placed placed;
    placed.here = placeOf(facts.deviceOf(facts.circuit().inputs[number].origin));
    if (!placed.here)
        return std::nullopt;
    const Loop loop(facts, number);
    for (DeviceId device : loop.resistors())
        if (placeOf(device) == placed.here)
            placed.resistors.push_back(device);
    const std::vector<DeviceId> contacts = loop.contacts();
    const auto away = std::find_if(contacts.begin(), contacts.end(), [&](DeviceId device) {
        return placeOf(device) && placeOf(device) != placed.here;
    });
    if (placed.resistors.empty() || away == contacts.end())
        return std::nullopt;
    placed.contact = *away;
    placed.there = placeOf(*away);
    return placed;
}

Finding findingFor(const Facts& facts, std::uint32_t number, const Placed& placed)
{
    const auto placeName = [&](PlaceId place) {
        const Place* row = facts.job.places.find(place);
        return row ? row->tag : std::string();
    };
    const Vertex terminal = facts.circuit().inputs[number].terminal;
    std::vector<Message> names;
    std::vector<std::uint32_t> rows;
    for (DeviceId device : placed.resistors) {
        names.push_back(verbatim(tagOf(facts.job, device)));
        rows.push_back(device.number);
    }
    Finding finding;
    finding.rule = "end-of-line-place";
    finding.severity = Severity::Doubt;
    finding.at = {spotOf(facts, terminal)};
    const std::string contact = tagOf(facts.job, placed.contact), there = placeName(placed.there);
    finding.why = {why,
                   {{"resistors", names},
                    {"input", nameOf(facts, terminal)},
                    {"here", placeName(placed.here)},
                    {"contact", contact},
                    {"there", there}}};
    Remedies remedies(facts);
    remedies.add({move, {{"resistors", names}, {"contact", contact}, {"there", there}}}, setPlace(facts.job, rows, placed.there));
    finding.remedies = remedies.taken();
    return finding;
}

std::vector<Finding> findAtInput(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number)
        if (supervisedInput(facts, number))
            if (const auto placed = placedAtInput(facts, number))
                findings.push_back(findingFor(facts, number, *placed));
    return findings;
}

} // namespace

extern const Check endOfLinePlace = {
    .code = "end-of-line-place",
    .worst = Severity::Doubt,
    .title = {.en = "End-of-line resistor at the panel", .es = "Resistencia de fin de línea en el panel"},
    .notCovered = {.en = "devices whose place is not said", .es = "dispositivos cuyo lugar no consta"},
    .run = findAtInput,
};

} // namespace doorloom
