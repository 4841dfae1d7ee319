#include "catalogue/catalogue.h"

#include "catalogue/kindjson.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <set>

#include <algorithm>
#include <map>

namespace doorloom {
namespace {

const Catalogue& catalogue()
{
    static const Catalogue read = [] {
        Result<Catalogue> result = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
        EXPECT_TRUE(result.ok()) << (result.ok() ? "" : inWords(result.problem()));
        return result.ok() ? result.value() : Catalogue{};
    }();
    return read;
}

const Kind& kindCalled(const std::string& name)
{
    static const Kind none;
    const Kind* kind = catalogue().find(name);
    EXPECT_NE(kind, nullptr) << name;
    return kind ? *kind : none;
}

template <class Body>
std::vector<const Body*> partsOf(const Kind& kind)
{
    std::vector<const Body*> found;
    for (const Part& part : kind.parts)
        if (const Body* body = std::get_if<Body>(&part.body))
            found.push_back(body);
    return found;
}

template <class Body>
const Body& onlyPart(const std::string& name)
{
    static const Body none;
    const std::vector<const Body*> found = partsOf<Body>(kindCalled(name));
    EXPECT_EQ(found.size(), 1u) << name;
    return found.empty() ? none : *found.front();
}

bool stands(const Condition& when, const Condition& jumpers)
{
    return std::all_of(when.begin(), when.end(), [&](const JumperAt& at) {
        return std::find(jumpers.begin(), jumpers.end(), at) != jumpers.end();
    });
}

// Whether links and closed contacts join two nodes of a kind, its jumpers and operators standing so.
bool joinedInside(const Kind& kind, const Key& a, const Key& b, const Condition& jumpers = {},
                  const std::map<Key, Key>& throws = {})
{
    std::vector<std::pair<Key, Key>> joints;
    for (const Part& part : kind.parts) {
        if (!stands(part.when, jumpers))
            continue;
        if (const auto* link = std::get_if<LinkPart>(&part.body))
            joints.emplace_back(link->a, link->b);
        if (const auto* contact = std::get_if<ContactPart>(&part.body)) {
            const auto thrown = throws.find(contact->role);
            const Key now = thrown != throws.end() ? thrown->second : findRole(kind, contact->role)->unpowered;
            if (std::count(contact->closedIn.begin(), contact->closedIn.end(), now))
                joints.emplace_back(contact->a, contact->b);
        }
    }
    std::vector<Key> reached{a};
    for (std::size_t i = 0; i < reached.size(); ++i)
        for (const auto& [one, other] : joints)
            for (const Key& next : {one == reached[i] ? other : Key{}, other == reached[i] ? one : Key{}})
                if (!next.empty() && !std::count(reached.begin(), reached.end(), next))
                    reached.push_back(next);
    return std::count(reached.begin(), reached.end(), b) > 0;
}

Condition jumpers(const Key& option, const Key& a, const Key& b)
{
    return {{option, "JA", a}, {option, "JB", b}};
}

TEST(Catalogue, HoldsEveryKindOfItsFolderInTheOrderOfTheirNames)
{
    std::set<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(SOURCE_FOLDER "/resources/catalogue"))
        files.insert(entry.path().stem().string());
    std::vector<std::string> names;
    for (const Kind& kind : catalogue().kinds)
        names.push_back(kind.name);
    EXPECT_EQ(names, std::vector<std::string>(files.begin(), files.end()));
}

TEST(Catalogue, SaysNothingAgainstItself)
{
    for (const Kind& kind : catalogue().kinds)
        for (const Problem& problem : checkKind(kind))
            ADD_FAILURE() << kind.name << ": " << inWords(problem);
}

TEST(Catalogue, KindsReadBackFromTheirOwnText)
{
    for (const Kind& kind : catalogue().kinds) {
        const Result<Json> json = parseJson(kindText(kind), kind.name);
        ASSERT_TRUE(json.ok()) << kind.name;
        const Result<Kind> again = readKind(json.value(), kind.name, "");
        ASSERT_TRUE(again.ok()) << inWords(again.problem());
        EXPECT_EQ(again.value(), kind) << kind.name;
    }
}

// Every Words of a kind, with where it stands.
std::vector<std::pair<std::string, Words>> wordsOf(const Kind& kind)
{
    std::vector<std::pair<std::string, Words>> all{{"title", kind.title}, {"words", kind.words}};
    const auto addThrows = [&](const std::string& of, const std::vector<Throw>& throws) {
        for (const Throw& one : throws)
            all.emplace_back(of + "." + one.key, one.words);
    };
    for (const Role& role : kind.roles) {
        all.emplace_back(role.key, role.words);
        addThrows(role.key, role.throws);
    }
    for (const Strip& strip : kind.strips) {
        all.emplace_back("strip", strip.words);
        for (const Terminal& terminal : strip.terminals) {
            all.emplace_back(terminal.key, terminal.words);
            for (const TerminalSign& sign : terminal.signs)
                all.emplace_back(terminal.key + " sign", sign.words);
        }
    }
    for (const Option& option : kind.options) {
        all.emplace_back(option.key, option.words);
        addThrows(option.key, option.values);
        for (const Jumper& jumper : option.jumpers)
            all.emplace_back(option.key + "." + jumper.key, jumper.words);
    }
    for (const Setting& setting : kind.settings) {
        all.emplace_back(setting.key, setting.words);
        addThrows(setting.key, setting.values);
    }
    return all;
}

TEST(Catalogue, SpeaksEnglishAndSpanish)
{
    for (const Kind& kind : catalogue().kinds) {
        for (const auto& [where, words] : wordsOf(kind)) {
            EXPECT_FALSE(words.en.empty()) << kind.name << ": " << where;
            EXPECT_FALSE(words.es.empty()) << kind.name << ": " << where;
        }
        EXPECT_NE(kind.title.en, kind.title.es) << kind.name;
        EXPECT_NE(kind.words.en, kind.words.es) << kind.name;
        EXPECT_EQ(kind.words.en.back(), '.') << kind.name << ": one sentence";
    }
}

TEST(Catalogue, EveryTerminalSaysWhatItsClampTakes)
{
    for (const Kind& kind : catalogue().kinds)
        for (const Terminal* terminal : terminalsOf(kind)) {
            EXPECT_FALSE(terminal->wire.thinnest.empty()) << kind.name << ":" << terminal->key;
            EXPECT_FALSE(terminal->wire.thickest.empty()) << kind.name << ":" << terminal->key;
            EXPECT_TRUE(terminal->stripLength) << kind.name << ":" << terminal->key;
            EXPECT_EQ(terminal->clampCapacity, kind.name.starts_with("terminal-strip") ? 4 : 2)
                << kind.name << ":" << terminal->key;
        }
}

TEST(Catalogue, NoValueComesFromASheet)
{
    for (const Kind& kind : catalogue().kinds) {
        EXPECT_NE(kind.standing, ValueStanding::Sheet) << kind.name;
        for (const Part& part : kind.parts)
            EXPECT_NE(part.standing, ValueStanding::Sheet) << kind.name << ": " << part.key;
    }
}

// Common practice, no source: common at plus; supply between C and NC at rest, between C and NO when pulled in.
TEST(RelayModuleNegative, WetHoldsTheCommonAtPlusAndSwitchesTheMinus)
{
    const Kind& kind = kindCalled("relay-module-negative");
    for (const Key output : {"K1", "K3"}) {
        const Condition wet = jumpers(output, "wet", "wet");
        const Key c = output + ".C", no = output + ".NO", nc = output + ".NC";
        for (const Key thrown : {"rest", "in"}) {
            const std::map<Key, Key> now{{output, thrown}};
            EXPECT_TRUE(joinedInside(kind, c, "+", wet, now)) << output << " " << thrown;
            EXPECT_FALSE(joinedInside(kind, "+", "-", wet, now)) << output << " " << thrown;
            EXPECT_EQ(joinedInside(kind, no, "-", wet, now), thrown == "in") << output;
            EXPECT_EQ(joinedInside(kind, nc, "-", wet, now), thrown == "rest") << output;
        }
    }
}

TEST(RelayModulePositive, WetHoldsTheCommonAtMinusAndSwitchesThePlus)
{
    const Kind& kind = kindCalled("relay-module-positive");
    for (const Key output : {"K1", "K3"}) {
        const Condition wet = jumpers(output, "wet", "wet");
        for (const Key thrown : {"rest", "in"}) {
            const std::map<Key, Key> now{{output, thrown}};
            EXPECT_TRUE(joinedInside(kind, output + ".C", "-", wet, now)) << output << " " << thrown;
            EXPECT_FALSE(joinedInside(kind, "+", "-", wet, now)) << output << " " << thrown;
            EXPECT_EQ(joinedInside(kind, output + ".NO", "+", wet, now), thrown == "in") << output;
            EXPECT_EQ(joinedInside(kind, output + ".NC", "+", wet, now), thrown == "rest") << output;
        }
    }
}

TEST(RelayModules, DryOutputsAreBareContacts)
{
    for (const std::string name : {"relay-module-negative", "relay-module-positive"}) {
        const Kind& kind = kindCalled(name);
        for (const Key output : {"K1", "K2", "K3"}) {
            const Condition dry = jumpers(output, "dry", "dry");
            for (const Key thrown : {"rest", "in"}) {
                const std::map<Key, Key> now{{output, thrown}};
                EXPECT_EQ(joinedInside(kind, output + ".C", output + ".NO", dry, now), thrown == "in");
                EXPECT_EQ(joinedInside(kind, output + ".C", output + ".NC", dry, now), thrown == "rest");
                for (const Key contact : {".C", ".NO", ".NC"})
                    for (const Key pole : {"+", "-"})
                        EXPECT_FALSE(joinedInside(kind, output + contact, pole, dry, now)) << name << output << contact;
            }
        }
    }
}

TEST(RelayModules, AMixedPairIsWhatItsJumpersSay)
{
    const Kind& negative = kindCalled("relay-module-negative");
    const Condition onlyA = jumpers("K1", "wet", "dry"), onlyB = jumpers("K1", "dry", "wet");
    EXPECT_TRUE(joinedInside(negative, "K1.C", "+", onlyA));
    EXPECT_FALSE(joinedInside(negative, "K1.NC", "-", onlyA)) << "the moving contact hangs free";
    EXPECT_TRUE(joinedInside(negative, "K1.C", "-", onlyB));
    EXPECT_TRUE(joinedInside(negative, "K1.NC", "-", onlyB)) << "both at minus";
    const Kind& positive = kindCalled("relay-module-positive");
    EXPECT_TRUE(joinedInside(positive, "K1.C", "-", onlyA));
    EXPECT_FALSE(joinedInside(positive, "K1.NC", "+", onlyA));
    EXPECT_TRUE(joinedInside(positive, "K1.C", "+", onlyB));
    EXPECT_TRUE(joinedInside(positive, "K1.NC", "+", onlyB));
}

TEST(RelayModules, SignsSayWhatTheJumpersDo)
{
    for (const std::string name : {"relay-module-negative", "relay-module-positive"}) {
        const Kind& kind = kindCalled(name);
        for (const Key a : {"wet", "dry"})
            for (const Key b : {"wet", "dry"}) {
                const Condition now = jumpers("K1", a, b);
                for (const Key terminal : {"K1.C", "K1.NO", "K1.NC"}) {
                    const Key thrown = terminal == "K1.NO" ? "in" : "rest";
                    const bool plus = joinedInside(kind, terminal, "+", now, {{"K1", thrown}});
                    const bool minus = joinedInside(kind, terminal, "-", now, {{"K1", thrown}});
                    std::string says;
                    for (const TerminalSign& sign : findTerminal(kind, terminal)->signs)
                        if (stands(sign.when, now))
                            says += sign.words.en;
                    EXPECT_EQ(says.starts_with("+"), plus) << name << " " << terminal << " " << a << b;
                    EXPECT_EQ(says.starts_with("−"), minus) << name << " " << terminal << " " << a << b;
                }
            }
    }
}

TEST(RelayModules, AnyInputMayMoveAnyRelayWhileTheModuleIsFed)
{
    for (const std::string name : {"relay-module-negative", "relay-module-positive"}) {
        const Kind& kind = kindCalled(name);
        EXPECT_TRUE(joinedInside(kind, "COM", "-")) << name;
        EXPECT_EQ(partsOf<DryInputPart>(kind).size(), 5u) << name;
        const std::vector<const MovePart*> moves = partsOf<MovePart>(kind);
        ASSERT_EQ(moves.size(), 3u) << name;
        for (const MovePart* move : moves) {
            EXPECT_EQ(move->manner, MoveManner::Programmed);
            EXPECT_NE(findPartAs<LoadPart>(kind, move->powered), nullptr);
            EXPECT_EQ(move->by, (std::vector<Key>{"IN1", "IN2", "IN3", "IN4", "IN5"}));
        }
    }
}

TEST(Supplies, AreLiveOnMainsOrOnBattery)
{
    using Live = std::vector<std::vector<std::pair<Key, Key>>>;
    for (const std::string name : {"dc-supply-24", "dc-supply-12"}) {
        const SourcePart& source = onlyPart<SourcePart>(name);
        EXPECT_EQ(source.live, (Live{{{"mains", "on"}}, {{"battery", "good"}}})) << name;
        EXPECT_FALSE(source.mayParallel) << name;
        EXPECT_FALSE(source.minusEarthed) << name;
        EXPECT_EQ(findRole(kindCalled(name), "mains")->unpowered, "lost");
        EXPECT_EQ(findRole(kindCalled(name), "mains")->idle, "on");
        EXPECT_EQ(findRole(kindCalled(name), "battery")->idle, "good");
        EXPECT_EQ(findPrinted(kindCalled(name), "−"), findTerminal(kindCalled(name), "-")) << "the minus sign, not a hyphen";
    }
    // From memory: charger on, 27 to 27.6 V and 13.4 to 13.8 V; flat battery, 21 V and 10.5 V.
    EXPECT_EQ(onlyPart<SourcePart>("dc-supply-24").highest.value, 27.6);
    EXPECT_EQ(onlyPart<SourcePart>("dc-supply-24").lowestOnBattery->value, 21);
    EXPECT_EQ(onlyPart<SourcePart>("dc-supply-12").highest.value, 13.8);
}

TEST(Strikes, KeepTheirFailModeAndTheOhmsOfTheirCoil)
{
    struct Expected {
        std::string name;
        FailMode mode;
        double ohms;
    };
    // From memory: 24 V 0.12 A, 12 V 0.25 A.
    for (const Expected& expected : {Expected{"strike-fail-secure", FailMode::Secure, 200},
                                     Expected{"strike-fail-safe", FailMode::Safe, 200},
                                     Expected{"strike-fail-secure-12", FailMode::Secure, 48},
                                     Expected{"strike-fail-safe-12", FailMode::Safe, 48}}) {
        const Kind& kind = kindCalled(expected.name);
        ASSERT_TRUE(kind.lock) << expected.name;
        EXPECT_EQ(kind.lock->failMode, expected.mode) << expected.name;
        EXPECT_TRUE(kind.lock->latches) << expected.name;
        const LoadPart* coil = findPartAs<LoadPart>(kind, kind.lock->load);
        ASSERT_NE(coil, nullptr) << expected.name;
        EXPECT_NEAR((coil->rated.at(0).volts / coil->rated.at(0).amperes).value, expected.ohms, 1e-9);
        EXPECT_EQ(coil->use, LoadUse::Lock);
        EXPECT_FALSE(coil->polarised) << expected.name;
        EXPECT_TRUE(coil->suppressed) << expected.name;
        for (const Terminal* terminal : terminalsOf(kind))
            EXPECT_FALSE(terminal->required.empty()) << expected.name << ": both leads are needed";
    }
}

TEST(DoorSwitch, IsClosedWhileTheDoorIsShutAndDrawnSo)
{
    const Kind& kind = kindCalled("door-switch");
    EXPECT_TRUE(joinedInside(kind, "A", "B", {}, {{"door", "shut"}}));
    EXPECT_FALSE(joinedInside(kind, "A", "B", {}, {{"door", "open"}}));
    EXPECT_EQ(findRole(kind, "door")->unpowered, "shut");
    EXPECT_EQ(findRole(kind, "door")->idle, "shut");
}

TEST(Changeovers, AreClosedToNcAsPrintedAndToNoWhenMoved)
{
    struct Moved {
        std::string name;
        Key role, thrown;
    };
    for (const Moved& moved :
         {Moved{"push-plate", "hand", "pressed"}, Moved{"push-to-lock", "hand", "pressed"},
          Moved{"wave-actuator", "hand", "waved"}, Moved{"wave-actuator-lamp-to-minus", "hand", "waved"},
          Moved{"wave-actuator-led", "hand", "waved"}, Moved{"key-switch", "key", "on"},
          Moved{"timer-relay", "relay", "in"}}) {
        const Kind& kind = kindCalled(moved.name);
        const std::map<Key, Key> in{{moved.role, moved.thrown}};
        EXPECT_TRUE(joinedInside(kind, "C", "NC")) << moved.name;
        EXPECT_FALSE(joinedInside(kind, "C", "NO")) << moved.name;
        EXPECT_TRUE(joinedInside(kind, "C", "NO", {}, in)) << moved.name;
        EXPECT_FALSE(joinedInside(kind, "C", "NC", {}, in)) << moved.name;
    }
}

TEST(Selector, JoinsBothWaysInBetween)
{
    const Kind& kind = kindCalled("selector");
    EXPECT_TRUE(findRole(kind, "position")->makesBeforeBreaks);
    const auto joins = [&](const Key& thrown) { return joinedInside(kind, "A", "B", {}, {{"position", thrown}}); };
    EXPECT_FALSE(joins("A"));
    EXPECT_TRUE(joins("between"));
    EXPECT_FALSE(joins("B"));
}

TEST(Relay, HasTheStripeOfItsDiodeAtA1AndTwoChangeovers)
{
    const Kind& kind = kindCalled("relay");
    EXPECT_EQ(onlyPart<DiodePart>("relay").cathode, "A1");
    EXPECT_EQ(onlyPart<DiodePart>("relay").anode, "A2");
    EXPECT_EQ(onlyPart<LoadPart>("relay").a, "A1") << "A1 is the plus";
    EXPECT_TRUE(onlyPart<LoadPart>("relay").polarised);
    EXPECT_EQ(onlyPart<MovePart>("relay").manner, MoveManner::Plain);
    for (const Key pole : {"1", "2"}) {
        EXPECT_TRUE(joinedInside(kind, "C" + pole, "NC" + pole));
        EXPECT_TRUE(joinedInside(kind, "C" + pole, "NO" + pole, {}, {{"coil", "in"}}));
        EXPECT_FALSE(joinedInside(kind, "C" + pole, "NC" + pole, {}, {{"coil", "in"}}));
    }
    EXPECT_FALSE(joinedInside(kind, "C1", "C2"));
}

TEST(TimerRelay, WantsTenToThirtyVoltsAtTrigAgainstItsMinus)
{
    const Kind& kind = kindCalled("timer-relay");
    const MovePart& move = onlyPart<MovePart>("timer-relay");
    ASSERT_EQ(move.by.size(), 1u);
    const LoadPart* input = findPartAs<LoadPart>(kind, move.by[0]);
    ASSERT_NE(input, nullptr);
    EXPECT_EQ(input->use, LoadUse::Input);
    EXPECT_EQ(input->a, "TRIG");
    EXPECT_EQ(input->b, "-");
    EXPECT_EQ(input->leastVolts->value, 10);
    EXPECT_EQ(input->mostVolts->value, 30);
}

TEST(WaveActuators, DifferInTheirLampInput)
{
    const DryInputPart& isolated = onlyPart<DryInputPart>("wave-actuator");
    EXPECT_TRUE(isolated.isolated);
    EXPECT_TRUE(isolated.mayShareContact);
    EXPECT_FALSE(joinedInside(kindCalled("wave-actuator"), "LC", "-"));

    EXPECT_FALSE(onlyPart<DryInputPart>("wave-actuator-lamp-to-minus").isolated);
    EXPECT_TRUE(joinedInside(kindCalled("wave-actuator-lamp-to-minus"), "LC", "-"));

    const LoadPart* lamp = findPartAs<LoadPart>(kindCalled("wave-actuator-led"), "lamp");
    ASSERT_NE(lamp, nullptr);
    EXPECT_EQ(lamp->a, "+") << "hangs on its own plus";
    EXPECT_EQ(lamp->b, "LED");
    EXPECT_TRUE(lamp->polarised);
}

TEST(Lamps, SayWhichPoleIsCommon)
{
    for (const LoadPart* light : partsOf<LoadPart>(kindCalled("lamp-common-plus")))
        EXPECT_EQ(light->a, "COM");
    for (const LoadPart* light : partsOf<LoadPart>(kindCalled("lamp-common-minus")))
        EXPECT_EQ(light->b, "COM");
    EXPECT_EQ(partsOf<LoadPart>(kindCalled("lamp-common-plus")).size(), 2u);
    EXPECT_EQ(partsOf<LoadPart>(kindCalled("lamp-common-minus")).size(), 2u);
}

TEST(DoorOperator, HasAnIsolatedDryInputAndASupplyWhileItsMainsIsOn)
{
    EXPECT_TRUE(onlyPart<DryInputPart>("door-operator").isolated);
    EXPECT_EQ(onlyPart<DryInputPart>("door-operator").reference, "ACOM");
    const SourcePart& source = onlyPart<SourcePart>("door-operator");
    EXPECT_EQ(source.plus, "+24");
    EXPECT_EQ(source.most.value, 0.5);
    EXPECT_EQ(source.live, (std::vector<std::vector<std::pair<Key, Key>>>{{{"mains", "on"}}}));
}

TEST(TerminalStrips, JoinAllTheirClampsOrOnlyEachWay)
{
    for (int clamp = 2; clamp <= 8; ++clamp)
        EXPECT_TRUE(joinedInside(kindCalled("terminal-strip-8"), "1", std::to_string(clamp)));
    const Kind& apart = kindCalled("terminal-strip-4x");
    EXPECT_TRUE(joinedInside(apart, "3", "3'"));
    EXPECT_FALSE(joinedInside(apart, "3", "4"));
    EXPECT_FALSE(joinedInside(apart, "3", "4'"));
}

} // namespace
} // namespace doorloom
