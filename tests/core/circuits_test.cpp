#include "circuits/circuit.h"
#include "circuits/harmless.h"
#include "circuits/seen.h"
#include "verdict/verdict.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <iostream>
#include <stdexcept>

namespace doorloom {
namespace {

std::vector<JudgedCircuit> drawn()
{
    try {
        return allCircuits();
    } catch (const std::runtime_error& slip) { // while gtest makes its list: the test below tells it
        std::cerr << slip.what() << '\n';
        return {};
    }
}

const std::vector<JudgedCircuit>& circuits()
{
    static const std::vector<JudgedCircuit> all = drawn();
    return all;
}

TEST(Circuits, AreDrawn)
{
    EXPECT_NO_THROW(allCircuits());
}

std::string testName(std::string name)
{
    std::replace_if(
        name.begin(), name.end(), [](unsigned char letter) { return !std::isalnum(letter); }, '_');
    return name;
}

std::string written(const std::vector<Seen>& all)
{
    std::string text;
    for (const Seen& seen : all)
        text += "\n    " + written(seen);
    return text.empty() ? " nothing" : text;
}

std::vector<Seen> aboveHints(std::vector<Seen> all)
{
    std::erase_if(all, [](const Seen& seen) { return seen.severity == "hint"; });
    return all;
}

std::vector<Seen> found(const Job& job)
{
    return seenIn(job, windowBudget);
}

bool matches(const ExpectedLine& expected, const Seen& line)
{
    return line.rule == expected.rule && line.at == expected.at &&
           (expected.reason.empty() || line.reason == expected.reason) &&
           (expected.throws.empty() || line.throws == throwSets(expected.throws));
}

void expectFinding(const Expected& expected, const Seen& seen)
{
    EXPECT_EQ(expected.rule, seen.rule);
    EXPECT_EQ(expected.severity, seen.severity);
    EXPECT_EQ(expected.at, seen.at);
    EXPECT_EQ(inWords(throwSets(expected.throws)), inWords(seen.throws));
    EXPECT_EQ(expected.reason, expected.reason.empty() ? "" : seen.reason);
    for (const ExpectedLine& line : expected.lines)
        EXPECT_TRUE(std::any_of(seen.lines.begin(), seen.lines.end(),
                                [&](const Seen& each) { return matches(line, each); }))
            << "no line: " << line.rule << " at " << line.at << " " << line.reason << " in" << written(seen);
    for (const std::string& name : expected.names)
        EXPECT_TRUE(seen.names.find(name) != std::string::npos)
            << name << " is not named in '" << seen.names << "'";
}

void expectFindings(const std::vector<Expected>& expected, const std::vector<Seen>& seen)
{
    ASSERT_EQ(expected.size(), seen.size()) << "found:" << written(seen);
    for (const Expected& each : expected) {
        const auto same = std::find_if(seen.begin(), seen.end(), [&](const Seen& one) {
            return one.rule == each.rule && one.at == each.at;
        });
        if (same == seen.end())
            ADD_FAILURE() << "missing: " << each.rule << " at " << each.at << "; found:" << written(seen);
        else
            expectFinding(each, *same);
    }
}

// ---- Right forms

class RightForm : public testing::TestWithParam<std::size_t> {
protected:
    const JudgedCircuit& circuit() const { return circuits()[GetParam()]; }
};

TEST_P(RightForm, HasNothingAboveAHint)
{
    EXPECT_EQ(verifyJob(circuit().right), std::vector<Problem>());
    expectFindings(circuit().hints, found(circuit().right));
}

INSTANTIATE_TEST_SUITE_P(Circuits, RightForm, testing::Range<std::size_t>(0, circuits().size()),
                         [](const auto& test) { return testName(circuits()[test.param].name); });

// ---- Wrong forms

struct FormAt {
    std::size_t circuit, form;
};

std::vector<FormAt> wrongForms()
{
    std::vector<FormAt> places;
    for (std::size_t i = 0; i < circuits().size(); ++i)
        for (std::size_t k = 0; k < circuits()[i].wrong.size(); ++k)
            places.push_back({i, k});
    return places;
}

class WrongForms : public testing::TestWithParam<FormAt> {
protected:
    const JudgedCircuit& circuit() const { return circuits()[GetParam().circuit]; }
    const WrongForm& form() const { return circuit().wrong[GetParam().form]; }
};

TEST_P(WrongForms, AreFoundOnce)
{
    const Job wrong = wrongJob(circuit(), form());
    EXPECT_EQ(verifyJob(wrong), std::vector<Problem>());
    expectFindings(form().findings, aboveHints(found(wrong)));
}

TEST_P(WrongForms, GiveTheRightFormBack)
{
    Job job = circuit().right;
    const Result<Change> back = applyChange(job, form().change);
    ASSERT_TRUE(back.ok());
    EXPECT_FALSE(job == circuit().right);
    ASSERT_TRUE(applyChange(job, back.value()).ok());
    EXPECT_TRUE(job == circuit().right);
}

// ---- What the remedy must name: every end, jumper and device that the reverse
// edit touches

void addEnd(std::set<std::string>& names, const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        names.insert(nameOf(job, *landing));
}

template <class Row> void addTouched(std::set<std::string>&, const Job&, const Row*, const Job&, const Row*)
{
}

void addTouched(std::set<std::string>& names, const Job& right, const Conductor* before, const Job& wrong,
                const Conductor* after)
{
    const auto changed = [&](End Conductor::*end) {
        return !before || !after || before->*end != after->*end;
    };
    for (End Conductor::*end : {&Conductor::from, &Conductor::to})
        if (changed(end)) {
            if (before)
                addEnd(names, right, before->*end);
            if (after)
                addEnd(names, wrong, after->*end);
        }
}

void addTouched(std::set<std::string>& names, const Job&, const Device* before, const Job&,
                const Device* after)
{
    if (!before || !after)
        return;
    names.insert(after->tag);
    for (const Choice& choice : after->choices)
        if (chosen(*before, choice.option, choice.jumper).value_or("") != choice.value &&
            before->kind == after->kind)
            names.insert({choice.option, choice.jumper});
}

std::set<std::string> touchedNames(const JudgedCircuit& circuit, const WrongForm& form)
{
    const Job wrong = wrongJob(circuit, form);
    std::set<std::string> names;
    for (const Step& step : form.change.steps)
        std::visit(
            [&]<class Row>(const Put<Row>& put) {
                addTouched(names, circuit.right, tableOf<Row>(circuit.right).find(put.id), wrong,
                           tableOf<Row>(wrong).find(put.id));
            },
            step);
    return names;
}

// The name, and those of terminals that conductors of both forms join with it: landing there is the same.
std::set<std::string> wiredTo(const JudgedCircuit& circuit, const WrongForm& form, const std::string& name)
{
    const Job wrong = wrongJob(circuit, form);
    std::set<std::string> names{name};
    for (std::size_t before = 0; before != names.size();) {
        before = names.size();
        for (const Conductor& conductor : wrong.conductors) {
            const Conductor* trusted = circuit.right.conductors.find(conductor.id);
            if (!trusted || *trusted != conductor)
                continue;
            std::set<std::string> ends;
            addEnd(ends, wrong, conductor.from);
            addEnd(ends, wrong, conductor.to);
            if (std::any_of(ends.begin(), ends.end(),
                            [&](const std::string& end) { return names.contains(end); }))
                names.merge(ends);
        }
    }
    return names;
}

TEST_P(WrongForms, HaveARemedyThatNamesWhatTheReverseEditTouches)
{
    if (form().mending != Mending::TheReverseEdit)
        GTEST_SKIP() << "other edits would do, or none of this job's rows";
    std::string named;
    for (const Seen& seen : aboveHints(found(wrongJob(circuit(), form()))))
        named += seen.remedyNames + "\n";
    for (const std::string& name : touchedNames(circuit(), form())) {
        const std::set<std::string> same = wiredTo(circuit(), form(), name);
        EXPECT_TRUE(
            std::any_of(same.begin(), same.end(),
                        [&](const std::string& each) { return named.find(each) != std::string::npos; }))
            << name << " is not named in '" << named << "'";
    }
}

int rank(const std::string& severity)
{
    const std::vector<std::string> mildestFirst = {"hint", "doubt", "fault", "danger"};
    return static_cast<int>(std::find(mildestFirst.begin(), mildestFirst.end(), severity) -
                            mildestFirst.begin());
}

bool sameSpot(const Seen& one, const Seen& other)
{
    return one.rule == other.rule && one.at == other.at;
}

// Milder than what was mended, or there before.
bool mayBeLeft(const Seen& left, const Seen& mended, const std::vector<Seen>& before)
{
    return rank(left.severity) < rank(mended.severity) ||
           (!sameSpot(left, mended) && std::any_of(before.begin(), before.end(),
                                                   [&](const Seen& each) { return sameSpot(each, left); }));
}

TEST_P(WrongForms, AreMendedByTheirRemedyWithNothingAsBadInstead)
{
    const Job wrong = wrongJob(circuit(), form());
    const std::vector<Seen> before = aboveHints(found(wrong));
    for (const Seen& seen : before) {
        if (seen.remedies.empty()) { // what no edit of the wiring does is said in words, and must be exact
            EXPECT_NE(form().mending, Mending::AnyOfSeveral) << written(seen);
            EXPECT_NE(seen.remedyNames, "") << written(seen);
            continue;
        }
        const std::vector<Seen> after = found(JobBuilder(wrong).apply(seen.remedies.front()).job());
        for (const Seen& left : after)
            EXPECT_TRUE(mayBeLeft(left, seen, before)) << "for " << written(seen) << "\n    the remedy "
                                                       << seen.remedyNames << "leaves:" << written(left);
    }
}

INSTANTIATE_TEST_SUITE_P(Circuits, WrongForms, testing::ValuesIn(wrongForms()), [](const auto& test) {
    return testName(circuits()[test.param.circuit].wrong[test.param.form].name);
});

// ---- Edits that change no verdict

std::string without(std::string text, const std::string& prefix)
{
    // Tags begin words or follow a blank, '=' or ',' in what a finding is known
    // by.
    for (auto at = text.find(prefix); !prefix.empty() && at != std::string::npos; at = text.find(prefix, at))
        text.erase(at, prefix.size());
    return text;
}

std::multiset<std::string> knownOf(const Job& job, const std::string& tagPrefix = {})
{
    std::multiset<std::string> known;
    for (const Seen& seen : found(job)) {
        std::multiset<std::string> lines;
        for (const Seen& line : seen.lines)
            lines.insert(without(line.known(), tagPrefix));
        std::string text = without(seen.known(), tagPrefix);
        for (const std::string& line : lines)
            text += "; " + line;
        known.insert(text);
    }
    return known;
}

void expectNoChange(const Job& job, const Job& right, const std::string& name)
{
    const std::multiset<std::string> before = knownOf(job);
    for (const Harmless& edit : harmlessEdits(job, right, 12))
        EXPECT_EQ(before, knownOf(edit.job, edit.tagPrefix)) << name << ": " << edit.name;
}

TEST_P(RightForm, StaysAsItIsUnderHarmlessEdits)
{
    expectNoChange(circuit().right, circuit().right, circuit().name);
}

TEST_P(WrongForms, StayAsTheyAreUnderHarmlessEdits)
{
    expectNoChange(wrongJob(circuit(), form()), circuit().right, form().name);
}

} // namespace
} // namespace doorloom
