#include "check/check.h"
#include "check/contactinplus.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>
#include <set>

// Where people get out only by electricity: each release that the opening names, alone in its released throw, takes the
// lock's feed away whatever every other operator, controller and supply does.
namespace doorloom {

namespace {

constexpr Text why = {.en = "With {release} released, {lock} of {opening} can still be fed: {throws}. A release has to open the lock's own "
                            "feed, with nothing round it.",
                      .es = "Con {release} accionado, {lock} de {opening} aún puede recibir tensión: {throws}. Una liberación debe abrir "
                            "la propia alimentación de la cerradura, sin nada que la rodee."};
constexpr Text byWayRound = {.en = "there is a way round it", .es = "hay un camino que lo rodea"};
constexpr Text byOthers = {.en = "it depends on {others}", .es = "depende de {others}"};
constexpr Text noRelease = {.en = "People get out through {opening} only by electricity, and no release of {lock} is named: a button, sensor "
                                  "or bar whose own contact opens its feed.",
                            .es = "Por {opening} solo se sale mediante electricidad, y no se nombra ninguna liberación de {lock}: un botón, "
                                  "sensor o barra cuyo propio contacto abra su alimentación."};
constexpr Text nameOne = {.en = "Put a release in {lock}'s feed, and name it at {opening}.",
                          .es = "Ponga una liberación en la alimentación de {lock} y nómbrela en {opening}."};
constexpr Text nameIt = {.en = "If it is meant to: name {release} as a release of {opening}.",
                         .es = "Si es su fin: nombre {release} como liberación de {opening}."};
constexpr Text minusLeg = {.en = "{release} opens the minus side of {lock} only: its plus side stays live, and an earth fault there holds "
                                 "the lock.",
                           .es = "{release} abre solo el lado negativo de {lock}: su positivo sigue con tensión, y una falla a tierra lo "
                                 "mantiene bloqueado."};

using Throws = std::vector<std::pair<MovedIndex, ThrowIndex>>;

Throws throwsOf(const Facts& facts, const Act& act)
{
    Throws throws;
    for (const Thrown& each : act.throws)
        if (const auto index = facts.net.indexOf(each.moved))
            if (const auto thrown = findThrow(facts.net.moved(*index).throws, each.thrown))
                throws.emplace_back(*index, static_cast<ThrowIndex>(*thrown));
    return throws;
}

// With the release so; programmed outputs do as they like, powered or not.
Circuit whileReleased(const Facts& facts, const Throws& released)
{
    Circuit circuit = held(facts.circuit(), released);
    std::erase_if(circuit.drives, [](const Drive& drive) { return drive.manner == Drive::Manner::Programmed; });
    return circuit;
}

DeviceId ownerOf(const Facts& facts, MovedIndex moved)
{
    const Operator* row = facts.job.operators.find(facts.net.moved(moved).id);
    return row ? row->owner : DeviceId{};
}

enum class Through { CoilsAlone, ProgramsToo };

// Operators that go where they go because of the released ones.
std::set<MovedIndex> movedBy(const Facts& facts, const Throws& released, Through through)
{
    std::set<MovedIndex> moved;
    for (const auto& [each, thrown] : released)
        moved.insert(each);
    const auto anyOf = [&](const std::vector<MovedIndex>& operators) {
        return std::any_of(operators.begin(), operators.end(), [&](MovedIndex each) { return moved.contains(each); });
    };
    const auto isMoved = [&](const Drive& drive) {
        const auto inputAsks = [&](std::uint32_t input) { return anyOf(facts.ask.operatorsThatMatterToInput(input)); };
        const auto loadAsks = [&](std::uint32_t load) { return anyOf(facts.ask.operatorsThatMatter(load)); };
        std::vector<MovedIndex> guard;
        for (const Term& term : drive.powered.anyOf)
            for (const Atom& atom : term)
                guard.push_back(atom.moved);
        // What a controller makes of an input is its program's: any of its outputs may hang on any of its inputs.
        if (drive.manner == Drive::Manner::Programmed && through == Through::CoilsAlone)
            return false;
        if (drive.manner == Drive::Manner::Programmed)
            for (std::uint32_t input = 0; input < facts.circuit().inputs.size(); ++input)
                if (facts.deviceOf(facts.circuit().inputs[input].origin) == ownerOf(facts, drive.moved) && inputAsks(input))
                    return true;
        return anyOf(guard) || (drive.load && loadAsks(*drive.load)) || (drive.closedInput && inputAsks(*drive.closedInput)) ||
               std::any_of(drive.dryInputs.begin(), drive.dryInputs.end(), inputAsks) ||
               std::any_of(drive.voltageInputs.begin(), drive.voltageInputs.end(), loadAsks);
    };
    for (bool grew = true; grew;) {
        grew = false;
        for (const Drive& drive : facts.circuit().drives)
            if (!moved.contains(drive.moved) && isMoved(drive))
                grew = moved.insert(drive.moved).second;
    }
    return moved;
}

struct Asked {
    const Facts& facts;
    const Opening& opening;
    const Act& release;
    DeviceId lock;
    std::uint32_t element;
    Throws released;
};

// The release's own device; the lock where nobody owns it.
Spot spotOf(const Asked& asked)
{
    for (const Thrown& each : asked.release.throws)
        if (const Operator* moved = asked.facts.job.operators.find(each.moved); moved && moved->owner)
            return deviceSpot(moved->owner);
    return deviceSpot(asked.lock);
}

Cube asCube(const Throws& released)
{
    Cube cube;
    for (const auto& [moved, thrown] : released)
        cube.push_back({moved, thrown});
    return cube;
}

// The release, and of the witness what the release was to move and could have moved.
std::vector<Cube> told(const Asked& asked, const Questions& released, const Verdict& verdict)
{
    // What a program does is told where nothing else of the release reaches the lock's feed.
    const std::vector<MovedIndex> feeding = asked.facts.ask.operatorsThatMatter(asked.element);
    std::set<MovedIndex> moved = movedBy(asked.facts, asked.released, Through::CoilsAlone);
    if (std::none_of(feeding.begin(), feeding.end(), [&](MovedIndex each) { return moved.contains(each); }))
        moved = movedBy(asked.facts, asked.released, Through::ProgramsToo);
    std::vector<Cube> cubes;
    for (const Cube& witness : verdict.cubes) {
        Cube cube = asCube(asked.released);
        std::copy_if(witness.begin(), witness.end(), std::back_inserter(cube),
                     [&](const ThrowAt& each) { return moved.contains(each.moved) && released.canMove(each.moved); });
        std::sort(cube.begin(), cube.end());
        cubes.push_back(std::move(cube));
    }
    std::sort(cubes.begin(), cubes.end(), [](const Cube& a, const Cube& b) { return std::pair(a.size(), a) < std::pair(b.size(), b); });
    cubes.erase(std::unique(cubes.begin(), cubes.end()), cubes.end());
    std::erase_if(cubes, [&](const Cube& cube) { return cube.size() > cubes.front().size(); });
    return cubes;
}

// From a pole of the source that feeds it to the lock (or a coil) and on to the other.
std::vector<Origin> wayRound(const Asked& asked, std::uint32_t element, const Cube& witness)
{
    Cube throws = asCube(asked.released);
    throws.insert(throws.end(), witness.begin(), witness.end());
    std::sort(throws.begin(), throws.end());
    const Element& lock = asked.facts.circuit().elements[element];
    for (std::uint32_t number : asked.facts.ask.feedsNear(lock.a)) {
        const Feed& feed = asked.facts.circuit().feeds[number];
        for (const auto& [enter, leave] : {std::pair(lock.a, lock.b), std::pair(lock.b, lock.a)}) {
            std::vector<Origin> way = wayBetween(asked.facts, throws, feed.plus, enter, true);
            const std::vector<Origin> back = wayBetween(asked.facts, throws, leave, feed.minus, true);
            if (way.empty() || back.empty())
                continue;
            way.insert(way.end(), back.begin(), back.end());
            return way;
        }
    }
    return {};
}

Finding roundRelease(const Asked& asked, const Questions& released, const Verdict& verdict)
{
    Finding finding;
    finding.rule = "direct-release";
    finding.severity = Severity::Danger;
    finding.at = {spotOf(asked)};
    const std::vector<Cube> cubes = told(asked, released, verdict);
    finding.throws = witnessesOf(asked.facts, cubes);
    finding.moreThrows = verdict.more;
    std::set<std::string> others;
    for (const ThrowAt& each : cubes.front())
        if (std::find(asked.released.begin(), asked.released.end(), std::pair(each.moved, each.thrown)) == asked.released.end())
            others.insert(nameOf(asked.facts.job, asked.facts.net.moved(each.moved).id));
    std::string names;
    for (const std::string& name : others)
        names += (names.empty() ? "" : ", ") + name;
    finding.why = {why,
                   {{"release", asked.release.name},
                    {"lock", tagOf(asked.facts.job, asked.lock)},
                    {"opening", asked.opening.tag},
                    {"throws", std::vector<Message>{names.empty() ? Message{byWayRound} : Message{byOthers, {{"others", names}}}}}}};
    const Cube& witness = verdict.cubes.front();
    finding.path = wayRound(asked, asked.element, witness);
    Remedies remedies(asked.facts);
    remedies.breakWay(finding.path);
    for (const Drive& drive : asked.facts.circuit().drives) // a relay may be held in by a way round the release
        if (drive.manner == Drive::Manner::Plain && drive.load && std::any_of(witness.begin(), witness.end(), [&](const ThrowAt& each) {
                return each.moved == drive.moved && each.thrown != asked.facts.circuit().operators[each.moved].unpowered;
            }))
            remedies.breakWay(wayRound(asked, *drive.load, witness));
    remedies.turnContacts(asked.facts.ask.operatorsThatMatter(asked.element));
    finding.remedies = remedies.taken();
    return finding;
}

// Does a side of the lock stay at a plus while the release is out?
bool leavesPlus(const Asked& asked, const Questions& released)
{
    const Element& lock = asked.facts.circuit().elements[asked.element];
    for (std::uint32_t number : released.feedsNear(lock.a)) {
        const Feed& feed = released.circuit().feeds[number];
        if (feed.ac)
            continue;
        for (Vertex side : {lock.a, lock.b})
            if (occurs(released.allJoined({{side, feed.plus, feed.minus}})))
                return true;
    }
    return false;
}

Finding inTheMinusLeg(const Asked& asked)
{
    Finding finding;
    finding.rule = "release-in-minus";
    finding.severity = Severity::Doubt;
    finding.at = {spotOf(asked)};
    finding.why = {minusLeg, {{"release", asked.release.name}, {"lock", tagOf(asked.facts.job, asked.lock)}}};
    Remedies remedies(asked.facts);
    addContactsIntoPlus(asked.facts, asked.element, asked.released, OldPlace::ClosedUp, remedies);
    finding.remedies = remedies.taken();
    return finding;
}

template <class Visit> void forEachReleasedLock(const Facts& facts, Visit visit)
{
    for (const Opening& opening : facts.job.openings) {
        if (opening.egress != Egress::ByElectricity)
            continue;
        for (DeviceId device : opening.locks) {
            const Kind* kind = kindOf(facts.job, device);
            if (!kind || !kind->lock || kind->lock->failMode != FailMode::Safe)
                continue;
            if (const auto element = facts.net.elementOf(device, kind->lock->load))
                visit(opening, device, *element);
        }
    }
}

// Each named release of each such lock, with the questions of the circuit while it is out.
template <class Visit> void forEachRelease(const Facts& facts, Visit visit)
{
    forEachReleasedLock(facts, [&](const Opening& opening, DeviceId device, std::uint32_t element) {
        for (const Act& release : opening.releases) {
            const Asked asked{facts, opening, release, device, element, throwsOf(facts, release)};
            const Circuit circuit = whileReleased(facts, asked.released);
            visit(asked, Questions(circuit, facts.budget));
        }
    });
}

// What people move, and what alone takes the lock's feed away.
std::vector<Remedy> releasesToName(const Facts& facts, const Opening& opening, DeviceId lock, std::uint32_t element)
{
    Remedies remedies(facts);
    for (MovedIndex moved : facts.ask.operatorsThatMatter(element)) {
        const NetOperator& net = facts.net.moved(moved);
        const Operator* row = facts.job.operators.find(net.id);
        const bool isMovedByPeople = row && (row->nature == OperatorNature::Hand || row->nature == OperatorNature::Sensor);
        for (ThrowIndex thrown = 0; isMovedByPeople && thrown < net.throws.size(); ++thrown) {
            if (thrown == facts.circuit().operators[moved].idle)
                continue;
            const Circuit circuit = whileReleased(facts, {{moved, thrown}});
            if (Questions(circuit, facts.budget).returned(element).answer != Answer::Never)
                continue;
            Opening named = opening;
            named.releases.push_back({nameOf(facts.job, *row), Side::Inside, {{row->id, net.throws[thrown].key}}});
            named.promises.push_back({{SituationKind::Release, nameOf(facts.job, *row), {}}, lock, Promised::Free});
            remedies.add({nameIt, {{"release", nameOf(facts.job, *row)}, {"opening", opening.tag}}},
                         Change{{Put<Opening>{opening.id, named}}});
        }
    }
    return remedies.taken();
}

std::vector<Finding> findNotDirect(const Facts& facts)
{
    std::vector<Finding> findings;
    forEachReleasedLock(facts, [&](const Opening& opening, DeviceId device, std::uint32_t element) {
        if (opening.releases.empty()) {
            Finding finding;
            finding.rule = "direct-release";
            finding.reason = "no release at all";
            finding.severity = Severity::Danger;
            finding.at = {deviceSpot(device)};
            const std::vector<std::pair<std::string, Argument>> names{{"lock", tagOf(facts.job, device)}, {"opening", opening.tag}};
            finding.why = {noRelease, names};
            finding.remedy = {nameOne, names};
            finding.remedies = releasesToName(facts, opening, device, element);
            findings.push_back(std::move(finding));
        }
    });
    forEachRelease(facts, [&](const Asked& asked, const Questions& released) {
        const Verdict fed = released.returned(asked.element);
        if (fed.answer == Answer::Unknown)
            findings.push_back(notProved("direct-release", spotOf(asked)));
        if (occurs(fed))
            findings.push_back(roundRelease(asked, released, fed));
    });
    return findings;
}

std::vector<Finding> findInMinus(const Facts& facts)
{
    std::vector<Finding> findings;
    forEachRelease(facts, [&](const Asked& asked, const Questions& released) {
        if (released.returned(asked.element).answer == Answer::Never && leavesPlus(asked, released))
            findings.push_back(inTheMinusLeg(asked));
    });
    return findings;
}

} // namespace

extern const Check directRelease = {
    .code = "direct-release",
    .worst = Severity::Danger,
    .title = {.en = "Release is not direct", .es = "La liberación no es directa"},
    .notCovered = {.en = "releases that the opening does not name; feeds through other loads, below the lock's volts or not",
                   .es = "liberaciones que la abertura no nombra; alimentación a través de otras cargas, con tensión suficiente o no"},
    .run = findNotDirect,
};

extern const Check releaseInMinus = {
    .code = "release-in-minus",
    .worst = Severity::Doubt,
    .title = {.en = "Release in the minus side", .es = "Liberación en el lado negativo"},
    .notCovered = {.en = "which pole is earthed", .es = "qué polo está a tierra"},
    .run = findInMinus,
};

} // namespace doorloom
