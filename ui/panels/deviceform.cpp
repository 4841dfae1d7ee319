#include "edit/details.h"
#include "edit/operations.h"
#include "edit/rownames.h"
#include "model/modelwords.h"
#include "openjob/shown.h"
#include "panels/details.h"
#include "panels/form.h"
#include "panels/formfields.h"
#include "panels/jumperpicture.h"

#include <algorithm>
#include <cstdlib>

namespace doorloom {
namespace {

QStringList wordsOfThrows(const std::vector<Throw>& throws)
{
    QStringList words;
    for (const Throw& each : throws)
        words << shown(each.words);
    return words;
}

int placeOf(const std::vector<Throw>& throws, const Key& key)
{
    const std::optional<std::size_t> place = findThrow(throws, key);
    return place ? static_cast<int>(*place) : -1;
}

void addJumpers(Form& form, const Device& device, const Option& option)
{
    form.heading(shown(option.words));
    for (const Jumper& jumper : option.jumpers) {
        auto* picture = new JumperPicture(
            shown(jumper.words), wordsOfThrows(option.values),
            placeOf(option.values, chosen(device, option.key, jumper.key).value_or("")), &form);
        picture->setObjectName("jumper " + shown(option.key) + " " + shown(jumper.key));
        QObject::connect(picture, &JumperPicture::moved, &form,
                         [&form, picture, id = device.id, option, key = jumper.key](int position) {
                             form.make(picture,
                                       setJumper(form.job(), id, option.key, key,
                                                 option.values[static_cast<std::size_t>(position)].key));
                         });
        form.wide(picture);
    }
    if (option.jumpers.size() < 2)
        return;
    // Jumpers of one output move together.
    for (const Throw& value : option.values)
        form.button("all " + shown(option.key) + " " + shown(value.key),
                    Form::tr("Both to %1").arg(shown(value.words)),
                    [&form, id = device.id, key = option.key, value = value.key] {
                        form.make(nullptr, setOption(form.job(), id, key, value));
                    });
}

QString limitsOf(const Setting& setting)
{
    return Form::tr("%1 to %2 %3")
        .arg(shown(settingText(setting.least)), shown(settingText(setting.most)), shown(setting.unit));
}

void addSetting(Form& form, const Device& device, const Setting& setting)
{
    const std::optional<SettingValue> now = settingOf(device, setting.key);
    const QString name = "setting " + shown(setting.key);
    if (!setting.values.empty()) {
        std::vector<Form::Item> items;
        int current = -1;
        for (const Throw& value : setting.values) {
            if (now && *now == SettingValue(value.key))
                current = static_cast<int>(items.size());
            items.push_back(
                {shown(value.words), [&form, id = device.id, key = setting.key, value = value.key] {
                     return setSetting(form.job(), id, key, value);
                 }});
        }
        return form.choiceField(name, shown(setting.words), {items, current});
    }
    const double* number = now ? std::get_if<double>(&*now) : nullptr;
    form.textField(
        name, Form::tr("%1 (%2)").arg(shown(setting.words), limitsOf(setting)),
        number ? settingText(*number) : std::string(),
        [&form, id = device.id, key = setting.key](const std::string& typed) -> Result<Change> {
            bool isNumber = false;
            const double value = shown(typed).toDouble(&isNumber);
            return setSetting(form.job(), id, key, isNumber ? SettingValue(value) : SettingValue(typed));
        },
        limitsOf(setting));
}

Form::Choices movers(Form& form, DeviceId device, const Key& role)
{
    const Job& job = form.job();
    const OperatorId bound = boundTo(*job.devices.find(device), role);
    Form::Choices choices;
    for (const OperatorId by : operatorsFor(job, device, role)) {
        if (by == bound)
            choices.current = static_cast<int>(choices.items.size());
        choices.items.push_back({shown(nameOf(job, by)), [&form, device, role, by] {
                                     return bindRole(form.job(), device, role, by);
                                 }});
    }
    if (choices.current >= 0 && job.operators.find(bound)->owner != device)
        choices.items.push_back({Form::tr("by itself alone"), [&form, device, role] {
                                     Numbers numbers(form.job());
                                     return releaseRole(form.job(), numbers, device, role);
                                 }});
    return choices;
}

void addRole(Form& form, const Device& device, const Role& role)
{
    const OperatorId bound = boundTo(device, role.key);
    const Operator* moved = form.job().operators.find(bound);
    form.longChoiceField("role " + shown(role.key), Form::tr("%1: moved by").arg(shown(role.words)),
                         moved ? shown(nameOf(form.job(), bound)) : QString(),
                         [&form, id = device.id, key = role.key] { return movers(form, id, key); });
    if (!moved)
        return;
    std::vector<Form::Item> throws;
    for (const Throw& each : moved->throws)
        throws.push_back(
            {shown(each.words), [&form, bound, key = each.key] { return setIdle(form.job(), bound, key); }});
    form.choiceField("idle " + shown(role.key), Form::tr("at rest"),
                     {throws, placeOf(moved->throws, moved->idle)});
}

} // namespace

void fillForm(Form& form, const Device& device)
{
    const Job& job = form.job();
    const Kind* kind = kindOf(job, device);
    form.heading(shown(device.tag + " · ") + shown(kind->title));
    form.words(shown(kind->words));
    if (kind->lock)
        form.words(shown(wordsOf(kind->lock->failMode)));
    form.textField("tag", Form::tr("Tag"), device.tag, [&form, id = device.id](std::string tag) {
        return renameDevice(form.job(), id, std::move(tag));
    });
    form.textField("words", Form::tr("In words"), device.words, [&form, id = device.id](std::string words) {
        return setWords(form.job(), id, std::move(words));
    });
    placeField(form, Form::tr("Place"), device.place,
               [&form](PlaceId place) { return setPlace(form.job(), {form.subject}, place); });
    standingField(form, device.standing);
    for (const Option& option : kind->options)
        addJumpers(form, device, option);
    if (!kind->settings.empty())
        form.heading(Form::tr("Settings"));
    for (const Setting& setting : kind->settings)
        addSetting(form, device, setting);
    if (!kind->roles.empty())
        form.heading(Form::tr("What moves it"));
    for (const Role& role : kind->roles)
        addRole(form, device, role);
}

} // namespace doorloom
