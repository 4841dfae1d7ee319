#include "edit/openings.h"
#include "judge/findingtext.h"
#include "model/modelwords.h"
#include "openjob/shown.h"
#include "panels/details.h"
#include "panels/form.h"

#include <algorithm>

namespace doorloom {
namespace {

template <class Enum>
void enumField(Form& form, const QString& name, const QString& label, Enum now,
               std::initializer_list<Enum> values, std::function<Result<Change>(Enum)> changed)
{
    std::vector<Form::Item> items;
    int current = -1;
    for (const Enum each : values) {
        if (each == now)
            current = static_cast<int>(items.size());
        items.push_back({shown(wordsOf(each)), [changed, each] { return changed(each); }});
    }
    form.choiceField(name, label, {items, current});
}

// The opening with one member altered.
template <class Member, class Value>
Result<Change> with(const Job& job, OpeningId id, Member Opening::*member, Value value)
{
    Opening opening = *job.openings.find(id);
    opening.*member = std::move(value);
    return alterOpening(job, std::move(opening));
}

void moverField(Form& form, const Opening& opening, const QString& label, OperatorId Opening::*member,
                OperatorNature nature)
{
    const Operator* now = form.job().operators.find(opening.*member);
    const auto set = [&form, id = opening.id, member](OperatorId moved) {
        return [&form, id, member, moved] { return with(form.job(), id, member, moved); };
    };
    form.longChoiceField(label, label, now ? shown(nameOf(form.job(), *now)) : Form::tr("none"),
                         [&form, set, nature, now = opening.*member] {
                             Form::Choices choices{{{Form::tr("none"), set({})}}, 0};
                             for (const Operator& each : form.job().operators) {
                                 if (each.nature != nature)
                                     continue;
                                 if (each.id == now)
                                     choices.current = static_cast<int>(choices.items.size());
                                 choices.items.push_back({shown(nameOf(form.job(), each)), set(each.id)});
                             }
                             return choices;
                         });
}

using Fits = bool (*)(const Kind& kind);

std::vector<const Device*> devicesThatFit(const Job& job, Fits fits)
{
    std::vector<const Device*> fitting;
    for (const Device& device : job.devices)
        if (fits(*kindOf(job, device)))
            fitting.push_back(&device);
    return fitting;
}

// What is there, each with a way out, and a list of what can be added.
void addMembers(Form& form, const Opening& opening, OpeningPart part, const std::vector<DeviceId>& members,
                const QString& heading, Fits fits)
{
    const OpeningId id = opening.id;
    form.heading(heading);
    for (const DeviceId member : members)
        form.button("takeOut " + shown(tagOf(form.job(), member)),
                    Form::tr("Take out %1").arg(shown(tagOf(form.job(), member))),
                    [&form, id, member] { form.make(nullptr, takeFromOpening(form.job(), id, member)); });
    if (devicesThatFit(form.job(), fits).size() <= members.size())
        return;
    form.longChoiceField("add " + heading, heading, Form::tr("add …"), [&form, id, part, members, fits] {
        const Job& job = form.job();
        Form::Choices choices{{{Form::tr("add …"), {}}}, 0};
        for (const Device* device : devicesThatFit(job, fits))
            if (std::find(members.begin(), members.end(), device->id) == members.end())
                choices.items.push_back({shown(device->tag + " ") + shown(kindOf(job, *device)->title),
                                         [&form, id, part, member = device->id] {
                                             return addToOpening(form.job(), id, part, member);
                                         }});
        return choices;
    });
}

// Who can ask or let go: a hand, key, sensor or switch, in a throw that isn't its rest.
std::vector<std::pair<QString, Thrown>> askers(const Job& job)
{
    std::vector<std::pair<QString, Thrown>> askers;
    for (const Operator& moved : job.operators) {
        const bool asks = moved.nature == OperatorNature::Hand || moved.nature == OperatorNature::KeySwitch ||
                          moved.nature == OperatorNature::Sensor || moved.nature == OperatorNature::Selector;
        for (const Throw& each : moved.throws)
            if (asks && each.key != moved.idle)
                askers.emplace_back(Form::tr("%1 %2").arg(shown(nameOf(job, moved)), shown(each.words)),
                                    Thrown{moved.id, each.key});
    }
    return askers;
}

QString throwsShown(const Job& job, const std::vector<Thrown>& throws)
{
    QStringList words;
    for (const Thrown& each : throws)
        words << shown(throwWords(job, {each.moved, {}, {}, each.thrown}));
    return words.join(Form::tr(", "));
}

void addActs(Form& form, const Opening& opening, ActList list, const std::vector<Act>& acts,
             const QString& heading)
{
    form.heading(heading);
    for (const Act& act : acts) {
        form.words(Form::tr("%1: %2").arg(shown(act.name), throwsShown(form.job(), act.throws)));
        enumField<Side>(form, heading + " " + shown(act.name), Form::tr("It serves"), act.side,
                        {Side::Inside, Side::Outside, Side::Both},
                        [&form, id = opening.id, list, act](Side side) {
                            Act after = act;
                            after.side = side;
                            return alterAct(form.job(), id, list, act.name, after);
                        });
        form.button("remove " + heading + shown(act.name), Form::tr("Take out %1").arg(shown(act.name)),
                    [&form, id = opening.id, list, name = act.name] {
                        form.make(nullptr, removeAct(form.job(), id, list, name));
                    });
    }
    form.longChoiceField("add " + heading, heading, Form::tr("add …"), [&form, id = opening.id, list] {
        Form::Choices choices{{{Form::tr("add …"), {}}}, 0};
        for (const auto& [words, thrown] : askers(form.job()))
            choices.items.push_back(
                {words, [&form, id, list, name = words, asker = thrown] {
                     return addAct(form.job(), id, list, {name.toStdString(), Side::Both, {asker}});
                 }});
        return choices;
    });
}

void addOccupied(Form& form, const Opening& opening)
{
    std::vector<Form::Item> items{
        {Form::tr("not asked"), [&form, id = opening.id] { return setOccupied(form.job(), id, {}); }}};
    int current = 0;
    if (!opening.occupied.empty()) {
        current = 1;
        items.push_back({throwsShown(form.job(), opening.occupied),
                         [&form, opening] { return setOccupied(form.job(), opening.id, opening.occupied); }});
    }
    for (const auto& [words, thrown] : askers(form.job()))
        if (opening.occupied != std::vector{thrown})
            items.push_back({words, [&form, id = opening.id, here = thrown] {
                                 return setOccupied(form.job(), id, {here});
                             }});
    form.choiceField("occupied", Form::tr("Occupied while"), {items, current});
}

void addPromises(Form& form, const Opening& opening, const std::vector<DeviceId>& devices,
                 std::initializer_list<Promised> values)
{
    const Job& job = form.job();
    for (const DeviceId device : devices) {
        form.heading(Form::tr("What %1 promises").arg(shown(tagOf(job, device))));
        for (const Situation& situation : situationsOf(opening))
            enumField<Promised>(form, shown(tagOf(job, device)) + " " + shown(situationText(job, situation)),
                                shown(situationWords(job, situation)), promisedIn(opening, situation, device),
                                values, [&form, id = opening.id, situation, device](Promised promised) {
                                    return setPromise(form.job(), id, situation, device, promised);
                                });
    }
}

} // namespace

void fillForm(Form& form, const Opening& opening)
{
    const OpeningId id = opening.id;
    form.heading(Form::tr("Opening %1").arg(shown(opening.tag)));
    form.textField("tag", Form::tr("Tag"), opening.tag, [&form, id](std::string tag) {
        return with(form.job(), id, &Opening::tag, std::move(tag));
    });
    form.textField("words", Form::tr("In words"), opening.words, [&form, id](std::string words) {
        return with(form.job(), id, &Opening::words, std::move(words));
    });
    enumField<Egress>(form, "egress", Form::tr("The way out"), opening.egress,
                      {Egress::ByHand, Egress::ByElectricity, Egress::DelayedInsideLock},
                      [&form, id](Egress egress) { return with(form.job(), id, &Opening::egress, egress); });
    enumField<Audience>(
        form, "audience", Form::tr("Serves"), opening.audience, {Audience::Public, Audience::Staff},
        [&form, id](Audience audience) { return with(form.job(), id, &Opening::audience, audience); });
    const auto rated = [&form, id](bool isRated) {
        return [&form, id, isRated] { return with(form.job(), id, &Opening::fireRated, isRated); };
    };
    form.choiceField("fireRated", Form::tr("Fire rating"),
                     {{{Form::tr("not fire-rated"), rated(false)}, {Form::tr("fire-rated"), rated(true)}},
                      opening.fireRated ? 1 : 0});
    moverField(form, opening, Form::tr("Its leaf"), &Opening::door, OperatorNature::Door);
    moverField(form, opening, Form::tr("Answers to the fire alarm"), &Opening::fire, OperatorNature::Fire);
    addMembers(form, opening, OpeningPart::Lock, opening.locks, Form::tr("Locks"),
               [](const Kind& kind) { return kind.lock.has_value(); });
    addMembers(form, opening, OpeningPart::DoorOperator, opening.doorOperators, Form::tr("Door operators"),
               [](const Kind& kind) { return kind.family == "operator"; });
    addActs(form, opening, ActList::Requests, opening.requests, Form::tr("Requests"));
    addActs(form, opening, ActList::Releases, opening.releases, Form::tr("Releases"));
    addOccupied(form, opening);
    addPromises(form, opening, opening.locks,
                {Promised::Nothing, Promised::Locked, Promised::Free, Promised::FreeButLatched});
    addPromises(form, opening, opening.doorOperators,
                {Promised::Nothing, Promised::MayStart, Promised::MustNotStart});
}

} // namespace doorloom
