#include "judge/kindtrial.h"

#include "catalogue/catalogue.h"
#include "catalogue/kindjson.h"
#include "core/jobs.h"
#include "core/random.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace doorloom {
namespace {

const TrialPosition& at(const KindTrial& trial, const std::string& when)
{
    for (const TrialPosition& position : trial.positions)
        if (inWords(position.when) == when)
            return position;
    throw std::runtime_error("no position " + when);
}

std::string reads(const TrialPosition& position, const std::string& terminal)
{
    for (const auto& [printed, words] : position.reads)
        if (printed == terminal)
            return inWords(words);
    throw std::runtime_error("no terminal " + terminal);
}

std::string thrown(const Kind& kind, std::size_t role, std::size_t which)
{
    return kind.roles[role].words.en + ": " + kind.roles[role].throws[which].words.en;
}

using Groups = std::vector<std::vector<std::string>>;

// By hand: coil A1–A2 on 24 V pulls in and joins C–NO; held out, C–NC. A2 is the minus of the trial supply.
TEST(KindTrial, FeedsARelaysCoilAndThrowsItsContacts)
{
    const Kind& relay = catalogueKind("relay");
    const KindTrial trial = kindTrial(relay);
    EXPECT_EQ(inWords(trial.fed), "24 V DC between A1 and A2");
    ASSERT_EQ(trial.positions.size(), 3u);
    const std::string c1 = findTerminal(relay, "C1")->printed, no1 = findTerminal(relay, "NO1")->printed,
                      nc1 = findTerminal(relay, "NC1")->printed;
    const auto joins = [&](const TrialPosition& position, const std::string& other) {
        for (const auto& group : position.joined)
            if (std::count(group.begin(), group.end(), c1) && std::count(group.begin(), group.end(), other))
                return true;
        return false;
    };
    const TrialPosition& alone = at(trial, "as it settles by itself");
    EXPECT_TRUE(joins(alone, no1)) << "fed, it is in";
    EXPECT_EQ(reads(alone, "A1"), "24.00 V against A2");
    EXPECT_EQ(reads(alone, "A2"), "0.00 V against A2");
    EXPECT_EQ(reads(alone, c1), "floating");
    for (std::size_t which = 0; which < 2; ++which) {
        const TrialPosition& position = at(trial, thrown(relay, 0, which));
        const bool in = relay.roles[0].throws[which].key == "in";
        EXPECT_EQ(joins(position, no1), in);
        EXPECT_EQ(joins(position, nc1), !in);
    }
}

// By hand: rated for 12 and for 24 V, and tried at the first; COM hangs on the minus by its link.
TEST(KindTrial, FeedsAModulesElectronicsAndThrowsEachRelay)
{
    const Kind& module = catalogueKind("relay-module-negative");
    const KindTrial trial = kindTrial(module);
    EXPECT_EQ(inWords(trial.fed), "12 V DC between + and −");
    std::size_t throws = 0;
    for (const Role& role : module.roles)
        throws += role.throws.size();
    EXPECT_EQ(trial.positions.size(), 1 + throws);
    EXPECT_EQ(reads(trial.positions[0], "COM"), "0.00 V against −");
    EXPECT_EQ(reads(trial.positions[0], "+"), "12.00 V against −");
}

TEST(KindTrial, LeavesASourceToFeedItself)
{
    const KindTrial trial = kindTrial(catalogueKind("dc-supply-24"));
    EXPECT_EQ(inWords(trial.fed), "it is a source by itself");
    EXPECT_EQ(reads(trial.positions[0], "+"), "24.00 V against −");
}

TEST(KindTrial, SaysWhereAKindShortsItsOwnSource)
{
    Kind kind = catalogueKind("dc-supply-24");
    const SourcePart* source = nullptr;
    for (const Part& part : kind.parts)
        source = source ? source : std::get_if<SourcePart>(&part.body);
    kind.parts.push_back({"slip", {}, LinkPart{source->plus, source->minus}, ValueStanding::Memory});
    const KindTrial trial = kindTrial(kind);
    EXPECT_EQ(reads(trial.positions[0], "+"), "no figure: the source is shorted");
    EXPECT_EQ(trial.positions[0].joined.size(), 1u);
}

TEST(KindTrial, GoesThroughEveryKindOfTheCatalogue)
{
    const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    ASSERT_TRUE(catalogue.ok());
    std::size_t fed = 0;
    for (const Kind& kind : catalogue.value().kinds) {
        const KindTrial trial = kindTrial(kind);
        EXPECT_FALSE(trial.cutShort) << kind.name;
        for (const TrialPosition& position : trial.positions) {
            EXPECT_EQ(position.reads.size(), terminalsOf(kind).size()) << kind.name;
            for (const auto& [terminal, words] : position.reads)
                EXPECT_NE(inWords(words), "no figure: the source is shorted")
                    << kind.name << " " << inWords(position.when);
        }
        fed += !inWords(trial.fed).starts_with("nothing");
    }
    EXPECT_GT(fed, 50u);
}

// Terminals, roles, throws and figures mixed up as a hurried hand would: each taken from another member of
// its name.
TEST(KindTrial, TriesWhateverSaysNothingAgainstItself)
{
    const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    ASSERT_TRUE(catalogue.ok());
    std::size_t tried = 0;
    forEachSeed(300, [&](Random& random) {
        nlohmann::json leaves =
            nlohmann::json::parse(kindText(random.oneOf(catalogue.value().kinds))).flatten();
        std::vector<std::string> paths;
        for (const auto& leaf : leaves.items())
            if (leaf.key().starts_with("/parts"))
                paths.push_back(leaf.key());
        const auto nameOf = [](const std::string& path) { return path.substr(path.rfind('/')); };
        for (int swaps = 0; swaps < 8; ++swaps)
            if (const std::string& one = random.oneOf(paths), &other = random.oneOf(paths);
                nameOf(one).size() < 3 && nameOf(other).size() < 3) // ends of parts
                leaves[one] = leaves[other];
            else if (nameOf(one) == nameOf(other))
                std::swap(leaves[one], leaves[other]);
        const Result<Json> json = parseJson(leaves.unflatten().dump(), "mixed");
        ASSERT_TRUE(json.ok());
        const Result<Kind> kind = readCheckedKind(json.value(), "mixed", "");
        tried += kind.ok();
        if (kind.ok()) {
            EXPECT_FALSE(kindTrial(kind.value()).positions.empty());
        }
    });
    EXPECT_GT(tried, 50u);
}

} // namespace
} // namespace doorloom
