#include "core/randomcircuit.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace doorloom {
namespace {

class Random {
public:
    explicit Random(std::uint32_t seed) : state_(seed * 0x9e3779b97f4a7c15u + 0x2545f4914f6cdd1du) {}

    std::uint32_t below(std::uint32_t limit) // splitmix64: Vigna, public domain, from memory
    {
        state_ += 0x9e3779b97f4a7c15u;
        std::uint64_t mixed = state_;
        mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9u;
        mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebu;
        return static_cast<std::uint32_t>((mixed ^ (mixed >> 31)) >> 32) % limit;
    }
    std::uint32_t between(std::uint32_t least, std::uint32_t most) { return least + below(most - least + 1); }
    bool happens(std::uint32_t percent) { return below(100) < percent; }

private:
    std::uint64_t state_;
};

class Drawing {
public:
    explicit Drawing(std::uint32_t seed) : random_(seed) {}

    Circuit doors();
    Circuit manyDoors();
    Circuit chance();

private:
    void addOperators();
    void addOperator(std::uint32_t threeThrowPercent);
    void addDoors(std::uint32_t doors);
    Vertex any() { return random_.below(circuit_.vertices); }
    Vertex anyBut(Vertex vertex);
    Vertex fresh(); // or any, when there are enough
    MovedIndex anyOperator() { return random_.below(static_cast<std::uint32_t>(circuit_.operators.size())); }
    Atom atom();
    Guard contact();
    Guard live();
    void join(Vertex a, Vertex b, Guard guard = {})
    {
        circuit_.joints.push_back({a, b, std::move(guard), 0});
    }
    std::uint32_t load(Vertex a, Vertex b);
    void addFeed(Vertex plus, Vertex minus);
    void addSecondFeeds();
    void addDrive(std::uint32_t load);
    void addInput();
    void addOddments();
    void addDoor();
    void makeMistakes();

    Random random_;
    Circuit circuit_;
    Vertex mostVertices_ = 12;
};

void Drawing::addOperators()
{
    static constexpr std::uint32_t counts[] = {2, 2, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 6, 6, 6, 7, 7, 8};
    const std::uint32_t count = counts[random_.below(std::size(counts))];
    for (std::uint32_t i = 0; i < count; ++i)
        addOperator(count > 6 ? 12 : 30);
}

void Drawing::addOperator(std::uint32_t threeThrowPercent)
{
    MovedOperator moved;
    moved.throws = random_.happens(threeThrowPercent) ? 3 : 2;
    moved.unpowered = static_cast<ThrowIndex>(random_.happens(75) ? 0 : random_.below(moved.throws));
    moved.idle = random_.happens(75) ? moved.unpowered : static_cast<ThrowIndex>(random_.below(moved.throws));
    circuit_.operators.push_back(moved);
}

Vertex Drawing::anyBut(Vertex vertex)
{
    const Vertex other = random_.below(circuit_.vertices - 1);
    return other < vertex ? other : other + 1;
}

Vertex Drawing::fresh()
{
    return circuit_.vertices < mostVertices_ ? circuit_.vertices++ : any();
}

Atom Drawing::atom()
{
    const MovedIndex moved = anyOperator();
    const std::uint32_t all = (1u << circuit_.operators[moved].throws) - 1;
    if (random_.happens(1))
        return {moved, all};
    return {moved, random_.between(1, all - 1)};
}

Guard Drawing::contact()
{
    if (random_.happens(1))
        return Guard{{}}; // never
    Guard guard{{{atom()}}};
    if (random_.happens(10))
        guard.anyOf[0].push_back(atom());
    if (random_.happens(12))
        guard.anyOf.push_back({atom()});
    return guard;
}

Guard Drawing::live()
{
    if (random_.happens(60))
        return {};
    Guard guard{{{atom()}}};
    if (random_.happens(40))
        guard.anyOf.push_back({atom()}); // mains on, or battery good
    else if (random_.happens(20))
        guard.anyOf[0].push_back(atom());
    return guard;
}

std::uint32_t Drawing::load(Vertex a, Vertex b)
{
    circuit_.elements.push_back({a, b, ElementKind::Load, random_.happens(40), 0, 0});
    return static_cast<std::uint32_t>(circuit_.elements.size() - 1);
}

void Drawing::addFeed(Vertex plus, Vertex minus)
{
    Feed feed;
    feed.plus = plus;
    feed.minus = minus;
    feed.highest = random_.happens(50) ? 13800 : 27600;
    feed.nominal = feed.lowest = feed.highest > 20000 ? 24000 : 12000;
    feed.ac = random_.happens(8);
    feed.live = live();
    circuit_.feeds.push_back(feed);
}

void Drawing::addSecondFeeds()
{
    while (circuit_.feeds.size() < 3 && random_.happens(45)) {
        const Feed first = circuit_.feeds.front();
        const std::uint32_t tie = random_.below(10);
        if (tie < 3)
            addFeed(fresh(), first.minus);
        else if (tie < 4)
            addFeed(first.plus, fresh());
        else if (tie < 5)
            addFeed(fresh(), first.plus); // stacked
        else {
            const Vertex plus = fresh();
            addFeed(plus, anyBut(plus));
        }
    }
}

void Drawing::addDrive(std::uint32_t load)
{
    const MovedIndex moved = anyOperator();
    for (const Drive& drive : circuit_.drives)
        if (drive.moved == moved)
            return;
    Drive drive;
    drive.moved = moved;
    const std::uint32_t manner = random_.below(10);
    drive.manner = manner < 5   ? Drive::Manner::Plain
                   : manner < 7 ? Drive::Manner::Follows
                                : Drive::Manner::Programmed;
    if (drive.manner == Drive::Manner::Plain || random_.happens(80))
        drive.load = load;
    if (random_.happens(drive.load ? 10 : 80)) {
        const Atom powered = atom();
        if (powered.moved != moved)
            drive.powered = Guard{{{powered}}};
    }
    if (drive.manner == Drive::Manner::Programmed && random_.happens(60)) {
        drive.needsInput = true;
        for (std::uint32_t i = 0; i < circuit_.inputs.size(); ++i)
            if (random_.happens(60))
                drive.dryInputs.push_back(i);
        for (std::uint32_t e = 0; e < circuit_.elements.size(); ++e)
            if (circuit_.elements[e].kind == ElementKind::Load && e != load && random_.happens(25))
                drive.voltageInputs.push_back(e);
    }
    circuit_.drives.push_back(drive);
}

void Drawing::addInput()
{
    DryInput input;
    input.terminal = fresh();
    input.reference = random_.happens(50) ? fresh() : any();
    if (input.terminal == input.reference)
        input.reference = anyBut(input.terminal);
    input.closedBelowOhms = random_.happens(30) ? 0 : 500;
    circuit_.inputs.push_back(input);
    const Vertex far = random_.happens(70) ? input.reference : any();
    if (random_.happens(30)) { // through a resistor, in its band or past it
        const Vertex middle = fresh();
        join(input.terminal, middle, contact());
        circuit_.elements.push_back(
            {middle, far, ElementKind::Resistor, false, 100.0 * random_.between(1, 8), 0});
    } else if (random_.happens(30)) {
        const Vertex middle = fresh();
        join(input.terminal, middle, contact());
        join(middle, far, contact());
    } else {
        join(input.terminal, far, contact());
    }
    circuit_.elements.push_back({input.terminal, input.reference, ElementKind::Wetting, false, 0, 0});
}

void Drawing::addOddments()
{
    for (std::uint32_t left = random_.below(4); left > 0; --left) {
        const Vertex a = any(), b = anyBut(a);
        switch (random_.below(6)) {
        case 0:
        case 1:
        case 2:
            circuit_.diodes.push_back({a, b, random_.happens(85) ? 700 : 13000, 0});
            break;
        case 3:
        case 4:
            circuit_.elements.push_back(
                {a, b, ElementKind::Resistor, false, 100.0 * random_.between(1, 8), 0});
            break;
        default:
            circuit_.elements.push_back({a, b, ElementKind::Suppressor, false, 0, 0});
        }
    }
}

// Plus, contacts, load, contacts, minus, with the load's operator somewhere in another door as often as not.
void Drawing::addDoor()
{
    const Feed feed = circuit_.feeds[random_.below(static_cast<std::uint32_t>(circuit_.feeds.size()))];
    Vertex high = feed.plus, low = feed.minus;
    for (std::uint32_t contacts = random_.between(0, 2); contacts > 0; --contacts) {
        const Vertex next = fresh();
        join(high, next, contact());
        high = next;
    }
    if (random_.happens(25)) { // the changeover's other side
        const MovedIndex moved = anyOperator();
        const Vertex common = fresh();
        join(common, low, Guard{{{{moved, 1}}}});
        join(common, random_.happens(60) ? fresh() : high, Guard{{{{moved, 2}}}});
        low = common;
    } else if (random_.happens(40)) {
        const Vertex next = fresh();
        join(next, low, contact());
        low = next;
    }
    if (high == low)
        high = anyBut(low);
    const std::uint32_t lock = random_.happens(90) ? load(high, low) : load(low, high);
    if (random_.happens(50))
        addDrive(lock);
    if (random_.happens(25)) // across the load: suppression
        circuit_.diodes.push_back(random_.happens(80) ? Diode{low, high, 700, 0} : Diode{high, low, 700, 0});
}

void Drawing::makeMistakes()
{
    for (std::uint32_t left = random_.below(4); left > 0; --left) {
        const std::uint32_t which = random_.below(static_cast<std::uint32_t>(circuit_.joints.size()) + 1);
        if (which == circuit_.joints.size() || random_.happens(30)) {
            const Vertex a = any();
            join(a, anyBut(a), random_.happens(50) ? Guard{} : contact());
        } else if (random_.happens(50)) {
            circuit_.joints[which].b = anyBut(circuit_.joints[which].a);
        } else if (random_.happens(50)) {
            circuit_.joints[which].guard = contact();
        } else {
            circuit_.joints.erase(circuit_.joints.begin() + which);
        }
    }
}

void Drawing::addDoors(std::uint32_t doors)
{
    circuit_.vertices = 2;
    addFeed(0, 1);
    addSecondFeeds();
    for (std::uint32_t inputs = random_.below(3); inputs > 0; --inputs)
        addInput();
    if (random_.happens(30)) // a module between the rails
        addDrive(load(0, 1));
    for (; doors > 0; --doors)
        addDoor();
    if (random_.happens(50))
        addOddments();
    makeMistakes();
}

Circuit Drawing::doors()
{
    addOperators();
    addDoors(random_.between(1, 3));
    return circuit_;
}

Circuit Drawing::manyDoors()
{
    for (std::uint32_t left = random_.between(10, 20); left > 0; --left)
        addOperator(20);
    mostVertices_ = 40;
    addDoors(random_.between(4, 9));
    return circuit_;
}

Circuit Drawing::chance()
{
    addOperators();
    circuit_.vertices = mostVertices_ = random_.between(4, 12);
    const Vertex plus = any();
    addFeed(plus, anyBut(plus));
    addSecondFeeds();
    for (std::uint32_t inputs = random_.below(3); inputs > 0; --inputs)
        addInput();
    const std::uint32_t joints = random_.between(circuit_.vertices / 2, circuit_.vertices + 3);
    for (std::uint32_t i = 0; i < joints; ++i) {
        const Vertex a = any();
        join(a, anyBut(a), random_.happens(25) ? Guard{} : contact());
    }
    for (std::uint32_t loads = random_.between(1, 4); loads > 0; --loads) {
        const Vertex a = any();
        const std::uint32_t number = load(a, anyBut(a));
        if (random_.happens(50))
            addDrive(number);
    }
    addOddments();
    return circuit_;
}

} // namespace

Circuit randomCircuit(std::uint32_t seed)
{
    Drawing drawing(seed);
    return seed % 2 == 0 ? drawing.doors() : drawing.chance();
}

Circuit randomLargeCircuit(std::uint32_t seed)
{
    return Drawing(seed).manyDoors();
}

Circuit redrawn(Circuit circuit, std::uint32_t seed)
{
    Random random(seed);
    const auto shuffle = [&](auto& things) {
        for (std::size_t left = things.size(); left > 1; --left)
            std::swap(things[left - 1], things[random.below(static_cast<std::uint32_t>(left))]);
    };
    shuffle(circuit.joints);
    shuffle(circuit.diodes);
    for (Joint& joint : circuit.joints)
        if (random.happens(50))
            std::swap(joint.a, joint.b);
    for (Element& element : circuit.elements)
        if (!element.polarised && random.happens(50))
            std::swap(element.a, element.b);
    return circuit;
}

// ---- Shrinking

namespace {

template <class Thing> void dropAt(std::vector<Thing>& things, std::size_t at)
{
    things.erase(things.begin() + static_cast<std::ptrdiff_t>(at));
}

// Numbers past the dropped one come down by one.
void renumber(std::vector<std::uint32_t>& numbers, std::size_t dropped)
{
    std::erase(numbers, dropped);
    for (std::uint32_t& number : numbers)
        if (number > dropped)
            --number;
}

void dropElement(Circuit& circuit, std::size_t element)
{
    dropAt(circuit.elements, element);
    for (Drive& drive : circuit.drives) {
        renumber(drive.voltageInputs, element);
        if (drive.load && *drive.load == element)
            drive.load.reset();
        else if (drive.load && *drive.load > element)
            --*drive.load;
    }
}

void dropInput(Circuit& circuit, std::size_t input)
{
    dropAt(circuit.inputs, input);
    for (Drive& drive : circuit.drives)
        renumber(drive.dryInputs, input);
}

template <class Act> void forEachGuard(Circuit& circuit, const Act& act)
{
    for (Joint& joint : circuit.joints)
        act(joint.guard);
    for (Feed& feed : circuit.feeds)
        act(feed.live);
    for (Drive& drive : circuit.drives)
        act(drive.powered);
}

template <class Act> void forEachVertex(Circuit& circuit, const Act& act)
{
    for (Joint& joint : circuit.joints)
        act(joint.a), act(joint.b);
    for (Diode& diode : circuit.diodes)
        act(diode.anode), act(diode.cathode);
    for (Element& element : circuit.elements)
        act(element.a), act(element.b);
    for (Feed& feed : circuit.feeds)
        act(feed.plus), act(feed.minus);
    for (DryInput& input : circuit.inputs)
        act(input.terminal), act(input.reference);
}

// Nothing when something still names it.
std::optional<Circuit> withoutOperator(Circuit circuit, MovedIndex moved)
{
    bool named = false;
    forEachGuard(circuit, [&](Guard& guard) {
        for (Term& term : guard.anyOf)
            for (Atom& atom : term) {
                named = named || atom.moved == moved;
                atom.moved -= atom.moved > moved;
            }
    });
    for (Drive& drive : circuit.drives) {
        named = named || drive.moved == moved;
        drive.moved -= drive.moved > moved;
    }
    if (named)
        return {};
    dropAt(circuit.operators, moved);
    return circuit;
}

// `from` becomes `onto`, and the numbers past it come down.
Circuit withVerticesMerged(Circuit circuit, Vertex from, Vertex onto)
{
    forEachVertex(circuit, [&](Vertex& vertex) {
        if (vertex == from)
            vertex = onto;
        vertex -= vertex > from;
    });
    --circuit.vertices;
    return circuit;
}

std::vector<Circuit> simplerGuards(const Circuit& circuit)
{
    std::vector<Circuit> simpler;
    std::size_t guards = 0;
    Circuit copy = circuit;
    forEachGuard(copy, [&](Guard&) { ++guards; });
    for (std::size_t which = 0; which < guards; ++which) {
        const auto with = [&](const std::function<bool(Guard&)>& act) {
            Circuit changed = circuit;
            std::size_t at = 0;
            bool did = false;
            forEachGuard(changed, [&](Guard& guard) { did = (at++ == which && act(guard)) || did; });
            if (did)
                simpler.push_back(changed);
        };
        with([](Guard& guard) { return guard.always() ? false : (guard = Guard{}, true); });
        with([](Guard& guard) { return guard.anyOf.size() > 1 ? (guard.anyOf.pop_back(), true) : false; });
        with([](Guard& guard) {
            return guard.anyOf.size() > 1 ? (guard.anyOf.erase(guard.anyOf.begin()), true) : false;
        });
        with([](Guard& guard) {
            return !guard.anyOf.empty() && guard.anyOf[0].size() > 1 ? (guard.anyOf[0].pop_back(), true)
                                                                     : false;
        });
    }
    return simpler;
}

template <class Drop>
void addWithout(std::vector<Circuit>& simpler, const Circuit& circuit, std::size_t count, const Drop& drop)
{
    for (std::size_t at = 0; at < count; ++at) {
        Circuit changed = circuit;
        drop(changed, at);
        simpler.push_back(changed);
    }
}

std::vector<Circuit> simplerBy1(const Circuit& circuit)
{
    std::vector<Circuit> simpler;
    addWithout(simpler, circuit, circuit.drives.size(),
               [](Circuit& c, std::size_t at) { dropAt(c.drives, at); });
    addWithout(simpler, circuit, circuit.joints.size(),
               [](Circuit& c, std::size_t at) { dropAt(c.joints, at); });
    addWithout(simpler, circuit, circuit.diodes.size(),
               [](Circuit& c, std::size_t at) { dropAt(c.diodes, at); });
    addWithout(simpler, circuit, circuit.elements.size(), dropElement);
    addWithout(simpler, circuit, circuit.feeds.size(),
               [](Circuit& c, std::size_t at) { dropAt(c.feeds, at); });
    addWithout(simpler, circuit, circuit.inputs.size(), dropInput);
    for (MovedIndex moved = 0; moved < circuit.operators.size(); ++moved)
        if (std::optional<Circuit> without = withoutOperator(circuit, moved))
            simpler.push_back(*without);
    for (Vertex from = 1; from < circuit.vertices; ++from)
        for (Vertex onto = 0; onto < from; ++onto)
            simpler.push_back(withVerticesMerged(circuit, from, onto));
    for (Circuit& changed : simplerGuards(circuit))
        simpler.push_back(std::move(changed));
    return simpler;
}

} // namespace

Circuit shrunk(Circuit circuit, const std::function<bool(const Circuit&)>& stillFails)
{
    for (bool smaller = true; smaller;) {
        smaller = false;
        for (Circuit& candidate : simplerBy1(circuit))
            if (stillFails(candidate)) {
                circuit = std::move(candidate);
                smaller = true;
                break;
            }
    }
    return circuit;
}

// ---- Words

namespace {

std::string described(const Atom& atom)
{
    std::string throws;
    for (unsigned t = 0; t < 32; ++t)
        if ((atom.mask >> t) & 1u)
            throws += fmt::format("{}{}", throws.empty() ? "" : "/", t);
    return fmt::format("K{}={}", atom.moved, throws);
}

std::string described(const Guard& guard)
{
    if (guard.always())
        return "";
    if (guard.anyOf.empty())
        return " never";
    std::string words;
    for (const Term& term : guard.anyOf) {
        words += words.empty() ? " when " : " or ";
        for (std::size_t i = 0; i < term.size(); ++i)
            words += (i > 0 ? " & " : "") + described(term[i]);
    }
    return words;
}

std::string described(const Drive& drive)
{
    static constexpr const char* manners[] = {"plain", "follows", "programmed"};
    std::string words = fmt::format("drive of K{}, {}", drive.moved, manners[static_cast<int>(drive.manner)]);
    if (drive.load)
        words += fmt::format(", load E{}", *drive.load);
    if (!drive.powered.always())
        words += ", powered" + described(drive.powered);
    if (drive.needsInput) {
        words += ", needs one of:";
        for (const std::uint32_t input : drive.dryInputs)
            words += fmt::format(" I{}", input);
        for (const std::uint32_t element : drive.voltageInputs)
            words += fmt::format(" E{}", element);
    }
    return words + "\n";
}

std::string described(const Element& element)
{
    static constexpr const char* kinds[] = {"load", "resistor", "suppressor", "wetting"};
    return fmt::format("{} {}-{}{}{}\n", kinds[static_cast<int>(element.kind)], element.a, element.b,
                       element.polarised ? " polarised" : "",
                       element.kind == ElementKind::Resistor ? fmt::format(" {} ohms", element.ohms) : "");
}

} // namespace

std::string described(const Circuit& circuit)
{
    std::string words = fmt::format("vertices {}\n", circuit.vertices);
    std::size_t i = 0;
    for (const MovedOperator& moved : circuit.operators)
        words += fmt::format("K{} throws {}, unpowered {}, idle {}\n", i++, moved.throws, moved.unpowered,
                             moved.idle);
    i = 0;
    for (const Feed& feed : circuit.feeds)
        words += fmt::format("F{} plus {} minus {}{} highest {} mV{}\n", i++, feed.plus, feed.minus,
                             feed.ac ? " AC" : "", feed.highest, described(feed.live));
    i = 0;
    for (const Joint& joint : circuit.joints)
        words += fmt::format("J{} {}-{}{}{}\n", i++, joint.a, joint.b, joint.byJumper ? " by jumper" : "",
                             described(joint.guard));
    i = 0;
    for (const Diode& diode : circuit.diodes)
        words += fmt::format("D{} {}>{} {} mV\n", i++, diode.anode, diode.cathode, diode.drop);
    i = 0;
    for (const Element& element : circuit.elements)
        words += fmt::format("E{} ", i++) + described(element);
    i = 0;
    for (const DryInput& input : circuit.inputs)
        words += fmt::format("I{} terminal {} reference {} closed below {} ohms\n", i++, input.terminal,
                             input.reference, input.closedBelowOhms);
    for (const Drive& drive : circuit.drives)
        words += described(drive);
    return words;
}

std::string described(const Cube& cube)
{
    std::string words;
    for (const ThrowAt& at : cube)
        words += fmt::format("{}K{}={}", words.empty() ? "" : " ", at.moved, at.thrown);
    return "[" + words + "]";
}

std::string described(const std::vector<Cube>& cubes)
{
    std::string words;
    for (const Cube& cube : cubes)
        words += described(cube);
    return words.empty() ? "none" : words;
}

std::string described(const Position& position)
{
    std::string words;
    for (const ThrowIndex thrown : position)
        words += fmt::format("{}{}", words.empty() ? "" : " ", thrown);
    return "(" + words + ")";
}

} // namespace doorloom
