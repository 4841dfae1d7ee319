#include "catalogue/kindproblems.h"

namespace doorloom {

namespace {

constexpr Text wrongPart = {.en = "'{key}' is no part that can stand here.",
                            .es = "'{key}' no es una parte que pueda estar aquí."};
constexpr Text nameLoad = {.en = "Name a part of type load.", .es = "Nombre una parte de tipo load."};
constexpr Text nameInput = {.en = "Name a part of type dryInput, load or signal.",
                            .es = "Nombre una parte de tipo dryInput, load o signal."};
constexpr Text powerNotSaid = {.en = "It is not said what powers it.", .es = "No se dice qué lo alimenta."};
constexpr Text sayPower = {
    .en = "Give 'powered' the load that must be fed, or 'poweredIn' a role and its throw.",
    .es = "Ponga en 'powered' la carga que debe estar alimentada, o en 'poweredIn' un papel y su posición."};
constexpr Text coilNotSaid = {.en = "A plain coil needs the load that moves it.",
                              .es = "Una bobina simple necesita la carga que la mueve."};
constexpr Text sayCoil = {.en = "Give 'powered' that load.", .es = "Ponga esa carga en 'powered'."};
constexpr Text nothingFollowed = {.en = "It is not said what it follows.", .es = "No se dice a qué sigue."};
constexpr Text sayFollowed = {.en = "Give 'sense' a role, or 'by' an input.",
                              .es = "Ponga en 'sense' un papel, o en 'by' una entrada."};
constexpr Text twoThrows = {.en = "Role '{role}' follows, and has more than two throws.",
                            .es = "El papel '{role}' sigue a otro y tiene más de dos posiciones."};
constexpr Text giveTwo = {.en = "Give it two.", .es = "Déle dos."};
constexpr Text senseOfOther = {.en = "Only a part that follows has a 'sense'.",
                               .es = "Solo una parte que sigue tiene 'sense'."};
constexpr Text takeSenseOut = {.en = "Take it out, or make the manner 'follows'.",
                               .es = "Quítelo, o ponga la manera 'follows'."};
constexpr Text otherThrows = {.en = "'{key}' has other throws than '{role}'.",
                              .es = "'{key}' tiene otras posiciones que '{role}'."};
constexpr Text sameThrows = {.en = "Give both roles the same throws.",
                             .es = "Dé a los dos papeles las mismas posiciones."};
constexpr Text noOption = {.en = "An output that can be wet needs its option.",
                           .es = "Una salida que puede tener tensión necesita su opción."};
constexpr Text nameOption = {.en = "Name the option in 'option', or take 'wetValue' out.",
                             .es = "Nombre la opción en 'option', o quite 'wetValue'."};

// Checks the body of one part; `where_` is the part's path.
class BodyCheck {
public:
    BodyCheck(KindProblems& problems, std::string where) : problems_(problems), where_(std::move(where)) {}

    void operator()(const LinkPart& link) { ends(link.a, link.b); }

    void operator()(const ContactPart& contact)
    {
        ends(contact.a, contact.b);
        problems_.atLeast(at("closedIn"), contact.closedIn.size(), 1);
        const bool hasRole = problems_.known(at("role"), contact.role, problems_.kind.roles);
        std::set<std::string> seen;
        for (std::size_t i = 0; i < contact.closedIn.size(); ++i) {
            problems_.unique(inList(at("closedIn"), i), contact.closedIn[i], seen);
            if (hasRole)
                problems_.known(inList(at("closedIn"), i), contact.closedIn[i],
                                findRole(problems_.kind, contact.role)->throws);
        }
        rating(contact.rating);
    }

    void operator()(const LoadPart& load)
    {
        ends(load.a, load.b);
        for (std::size_t i = 0; i < load.rated.size(); ++i) {
            problems_.positive(inList(at("rated"), i) + ".volts", load.rated[i].volts.value);
            problems_.positive(inList(at("rated"), i) + ".amperes", load.rated[i].amperes.value);
        }
        optionalPositive("leastVolts", load.leastVolts);
        optionalPositive("mostVolts", load.mostVolts);
        optionalPositive("releaseVolts", load.releaseVolts);
        optionalPositive("pullInVolts", load.pullInVolts);
        optionalPositive("inrushAmperes", load.inrush);
        optionalPositive("inrushMilliseconds", load.inrushTime);
        if (load.powerFactor) {
            problems_.positive(at("powerFactor"), *load.powerFactor);
            problems_.inOrder(at("powerFactor"), "powerFactor", *load.powerFactor, "1", 1);
        }
        inOrder("leastVolts", load.leastVolts, "mostVolts", load.mostVolts);
        inOrder("releaseVolts", load.releaseVolts, "leastVolts", load.leastVolts);
        inOrder("releaseVolts", load.releaseVolts, "pullInVolts", load.pullInVolts);
    }

    void operator()(const MovePart& move)
    {
        const bool hasRole = problems_.known(at("role"), move.role, problems_.kind.roles);
        power(move);
        for (std::size_t i = 0; i < move.by.size(); ++i)
            partOf<DryInputPart, LoadPart, SignalPart>(inList(at("by"), i), move.by[i], nameInput);
        if (move.manner == MoveManner::Follows && move.sense.empty() && move.by.empty())
            problems_.say(where_, nothingFollowed, sayFollowed);
        if (move.manner != MoveManner::Follows && !move.sense.empty())
            problems_.say(at("sense"), senseOfOther, takeSenseOut);
        if (hasRole && !move.sense.empty() && problems_.known(at("sense"), move.sense, problems_.kind.roles))
            sensed(move);
        optionalNotNegative("delayMilliseconds", move.delay);
        optionalNotNegative("holdMilliseconds", move.hold);
    }

    void operator()(const DryInputPart& input)
    {
        problems_.twoNodes(where_, "terminal", input.terminal, "reference", input.reference);
        optionalPositive("wettingVolts", input.wettingVolts);
        optionalNotNegative("wettingOhms", input.wettingOhms);
        problems_.positive(at("closedBelowOhms"), input.closedBelow.value);
        for (std::size_t i = 0; i < input.bands.size(); ++i) {
            const std::string band = inList(at("bands"), i);
            problems_.notNegative(band + ".leastOhms", input.bands[i].least.value);
            problems_.inOrder(band, "leastOhms", input.bands[i].least.value, "mostOhms",
                              input.bands[i].most.value);
        }
    }

    void operator()(const SourcePart& source)
    {
        poles(source.plus, source.minus);
        problems_.positive(at("lowestVolts"), source.lowest.value);
        problems_.positive(at("mostAmperes"), source.most.value);
        optionalPositive("lowestOnBatteryVolts", source.lowestOnBattery);
        problems_.inOrder(where_, "lowestVolts", source.lowest.value, "nominalVolts", source.nominal.value);
        problems_.inOrder(where_, "nominalVolts", source.nominal.value, "highestVolts", source.highest.value);
        inOrder("lowestOnBatteryVolts", source.lowestOnBattery, "highestVolts",
                std::optional(source.highest));
        for (std::size_t i = 0; i < source.live.size(); ++i) {
            problems_.atLeast(inList(at("live"), i), source.live[i].size(), 1);
            roleThrows(inList(at("live"), i), source.live[i]);
        }
    }

    void operator()(const BatteryPortPart& port)
    {
        poles(port.plus, port.minus);
        problems_.positive(at("nominalVolts"), port.nominal.value);
        optionalPositive("chargeAmperes", port.charge);
    }

    void operator()(const BatteryPart& battery)
    {
        poles(battery.plus, battery.minus);
        problems_.positive(at("nominalVolts"), battery.nominal.value);
        optionalPositive("ampereHours", battery.capacity);
    }

    void operator()(const SignalPart& signal)
    {
        problems_.twoNodes(where_, "terminal", signal.terminal, "reference", signal.reference);
    }

    void operator()(const EarthPart& earth) { problems_.node(at("terminal"), earth.terminal); }

    void operator()(const MainsPart& mains)
    {
        problems_.node(at("terminal"), mains.terminal);
        if (!mains.role.empty())
            problems_.known(at("role"), mains.role, problems_.kind.roles);
    }

    void operator()(const DiodePart& diode)
    {
        problems_.twoNodes(where_, "anode", diode.anode, "cathode", diode.cathode);
        problems_.notNegative(at("dropVolts"), diode.drop.value);
    }

    void operator()(const ResistorPart& resistor)
    {
        ends(resistor.a, resistor.b);
        problems_.positive(at("ohms"), resistor.ohms.value);
    }

    void operator()(const SuppressorPart& suppressor)
    {
        ends(suppressor.a, suppressor.b);
        problems_.positive(at("ratingVolts"), suppressor.rating.value);
    }

    void operator()(const FusePart& fuse)
    {
        ends(fuse.a, fuse.b);
        problems_.positive(at("limitAmperes"), fuse.limit.value);
    }

private:
    std::string at(const char* member) const { return where_ + "." + member; }
    void ends(const Key& a, const Key& b) { problems_.twoNodes(where_, "a", a, "b", b); }
    void poles(const Key& plus, const Key& minus)
    {
        problems_.twoNodes(where_, "plus", plus, "minus", minus);
    }

    template <class Value> void optionalPositive(const char* name, const std::optional<Value>& value)
    {
        if (value)
            problems_.positive(at(name), value->value);
    }

    template <class Value> void optionalNotNegative(const char* name, const std::optional<Value>& value)
    {
        if (value)
            problems_.notNegative(at(name), value->value);
    }

    template <class Value>
    void inOrder(const char* lessName, const std::optional<Value>& less, const char* moreName,
                 const std::optional<Value>& more)
    {
        if (less && more)
            problems_.inOrder(where_, lessName, less->value, moreName, more->value);
    }

    void rating(const ContactRating& rating)
    {
        const std::string where = at("rating");
        const auto check = [&](const char* name, const auto& value) {
            if (value)
                problems_.notNegative(where + "." + name, value->value);
        };
        check("dcResistiveAmperes", rating.dcResistive);
        check("dcInductiveAmperes", rating.dcInductive);
        check("acResistiveAmperes", rating.acResistive);
        check("acInductiveAmperes", rating.acInductive);
        check("mostVolts", rating.mostVolts);
        check("leastVolts", rating.leastVolts);
        check("leastAmperes", rating.leastCurrent);
        if (rating.leastVolts && rating.mostVolts)
            problems_.inOrder(where, "leastVolts", rating.leastVolts->value, "mostVolts",
                              rating.mostVolts->value);
    }

    void power(const MovePart& move)
    {
        if (!move.powered.empty())
            partOf<LoadPart>(at("powered"), move.powered, nameLoad);
        roleThrows(at("poweredIn"), move.poweredIn);
        if (move.manner == MoveManner::Plain && move.powered.empty())
            problems_.say(where_, coilNotSaid, sayCoil);
        else if (move.powered.empty() && move.poweredIn.empty())
            problems_.say(where_, powerNotSaid, sayPower);
    }

    void sensed(const MovePart& move)
    {
        const auto keysOf = [&](const Key& role) {
            std::set<Key> keys;
            for (const Throw& thrown : findRole(problems_.kind, role)->throws)
                keys.insert(thrown.key);
            return keys;
        };
        if (keysOf(move.role) != keysOf(move.sense))
            problems_.say(at("sense"), {otherThrows, {{"key", move.sense}, {"role", move.role}}}, sameThrows);
        else if (keysOf(move.role).size() != 2)
            problems_.say(at("sense"), {twoThrows, {{"role", move.role}}}, giveTwo);
    }

    void roleThrows(const std::string& where, const std::vector<std::pair<Key, Key>>& pairs)
    {
        std::set<std::string> seen;
        for (const auto& [role, thrown] : pairs) {
            problems_.unique(where + "." + role, role, seen);
            problems_.roleThrow(where + "." + role, role, thrown);
        }
    }

    template <class... Bodies> void partOf(const std::string& where, const Key& key, const Text& remedy)
    {
        if (!(findPartAs<Bodies>(problems_.kind, key) || ...))
            problems_.say(where, {wrongPart, {{"key", key}}}, remedy);
    }

    KindProblems& problems_;
    std::string where_;
};

void checkOutputs(KindProblems& problems)
{
    std::set<std::string> seen;
    for (std::size_t i = 0; i < problems.kind.outputs.size(); ++i) {
        const SwitchedOutput& output = problems.kind.outputs[i];
        const std::string where = inList("outputs", i);
        problems.key(where + ".key", output.key);
        problems.unique(where + ".key", output.key, seen);
        problems.atLeast(where + ".terminals", output.terminals.size(), 2);
        for (std::size_t t = 0; t < output.terminals.size(); ++t)
            problems.known(inList(where + ".terminals", t), output.terminals[t], problems.terminalKeys);
        if (output.option.empty() && !output.wetValue.empty())
            problems.say(where, noOption, nameOption);
        if (output.option.empty() || !problems.known(where + ".option", output.option, problems.kind.options))
            continue;
        if (!output.wetValue.empty())
            problems.known(where + ".wetValue", output.wetValue,
                           findOption(problems.kind, output.option)->values);
    }
}

void checkLock(KindProblems& problems)
{
    const std::optional<Lock>& lock = problems.kind.lock;
    if (!lock)
        return;
    if (!findPartAs<LoadPart>(problems.kind, lock->load))
        problems.say("lock.load", {wrongPart, {{"key", lock->load}}}, nameLoad);
    if (lock->actsIn)
        problems.notNegative("lock.actsInMilliseconds", lock->actsIn->value);
}

} // namespace

void checkParts(KindProblems& problems)
{
    std::set<std::string> seen;
    for (std::size_t i = 0; i < problems.kind.parts.size(); ++i) {
        const Part& part = problems.kind.parts[i];
        const std::string where = inList("parts", i);
        problems.key(where + ".key", part.key);
        problems.unique(where + ".key", part.key, seen);
        problems.condition(where + ".when", part.when);
        std::visit(BodyCheck(problems, where), part.body);
    }
    checkOutputs(problems);
    checkLock(problems);
}

} // namespace doorloom
