#include "edit/linereader.h"

#include "edit/references.h"
#include "edit/removeany.h"
#include "edit/rownames.h"
#include "edit/undowords.h"

#include <algorithm>
#include <charconv>

// Typed lines that alter or remove what is there.
namespace doorloom {

namespace {

template <class Keyed> const Keyed* keyed(const std::vector<Keyed>& list, std::string_view word)
{
    const std::string wanted = folded(word);
    const Keyed* begun = nullptr;
    std::size_t count = 0;
    for (const Keyed& each : list) {
        if (each.key == word || folded(each.key) == wanted || folded(each.words.en) == wanted ||
            folded(each.words.es) == wanted)
            return &each;
        if (folded(each.key).starts_with(wanted)) {
            begun = &each;
            ++count;
        }
    }
    return count == 1 ? begun : nullptr;
}

template <class Keyed> void offerKeys(const std::vector<Keyed>& list, Offers& offers)
{
    for (const Keyed& each : list)
        offers.add(each.key, verbatim(each.words));
}

std::optional<double> decimal(std::string text, std::string_view unit)
{
    std::replace(text.begin(), text.end(), ',', '.');
    if (!unit.empty() && text.size() > unit.size() && text.ends_with(unit))
        text.resize(text.size() - unit.size());
    double number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc() && end == text.data() + text.size() ? std::optional(number) : std::nullopt;
}

// Option and jumper of "K1.JA"; none when the kind has no such jumper.
std::pair<const Option*, const Jumper*> jumperCalled(const Kind& kind, std::string_view word)
{
    for (const Option& option : kind.options)
        for (const Jumper& jumper : option.jumpers)
            if (folded(option.key + "." + jumper.key) == folded(word))
                return {&option, &jumper};
    return {};
}

} // namespace

std::optional<Typed> LineReader::set()
{
    const LineWord* word = words_.take({"a device", "un dispositivo"}, [&](Offers& offers) {
        for (const Device& device : job_.devices)
            if (const Kind* each = kindOf(job_, device);
                each && (!each->options.empty() || !each->settings.empty()))
                offers.add(device.tag, verbatim(each->title));
    });
    const Device* device = word ? deviceCalled(*word, word->text) : nullptr;
    return device ? setOptionOrSetting(*device, *kindOf(job_, *device)) : std::nullopt;
}

std::optional<Typed> LineReader::setOptionOrSetting(const Device& device, const Kind& kind)
{
    const Words wanted = {"an option or setting of " + device.tag, "una opción o un ajuste de " + device.tag};
    const Offering offering = [&](Offers& offers) {
        offerKeys(kind.options, offers);
        offerKeys(kind.settings, offers);
        for (const Option& option : kind.options)
            for (const Jumper& jumper : option.jumpers)
                offers.add(option.key + "." + jumper.key, verbatim(jumper.words));
    };
    const LineWord* word = words_.take(wanted, offering);
    if (!word)
        return std::nullopt;
    const auto [jumperOption, jumper] = jumperCalled(kind, word->text);
    const Option* option = jumper ? jumperOption : keyed(kind.options, word->text);
    const Setting* setting = option ? nullptr : keyed(kind.settings, word->text);
    if (!option && !setting) {
        words_.refuse(*word, wanted, offering);
        return std::nullopt;
    }
    const std::vector<Throw>& values = option ? option->values : setting->values;
    const Offering valueOffering = [&](Offers& offers) {
        offerKeys(values, offers);
        if (setting && setting->factory && values.empty())
            offers.add(settingText(*setting->factory),
                       Message{{.en = "as from the factory", .es = "de fábrica"}});
    };
    const LineWord* value = words_.take({"a value", "un valor"}, valueOffering);
    if (!value)
        return std::nullopt;
    const Throw* known = keyed(values, value->text);
    const Key key = known ? known->key : value->text == "?" ? Key() : value->text;
    const std::string name = device.tag + " " + word->text + " " + value->text;
    if (jumper)
        return typed(naming(doing::set, name), setJumper(job_, device.id, option->key, jumper->key, key),
                     {device.id.number});
    if (option)
        return typed(naming(doing::set, name), setOption(job_, device.id, option->key, key),
                     {device.id.number});
    const std::optional<double> number = values.empty() ? decimal(value->text, setting->unit) : std::nullopt;
    if (const LineWord* unit = words_.peek(); unit && number && folded(unit->text) == folded(setting->unit))
        words_.skip();
    return typed(
        naming(doing::set, name),
        setSetting(job_, device.id, setting->key, number ? SettingValue(*number) : SettingValue(key)),
        {device.id.number});
}

std::optional<Typed> LineReader::move()
{
    const Offering offering = [&](Offers& offers) {
        offerDevices(job_, offers);
        offerSplices(job_, offers);
    };
    const LineWord* word = words_.take({"a device or splice", "un dispositivo o empalme"}, offering);
    if (!word)
        return std::nullopt;
    std::vector<std::uint32_t> rows;
    for (const Device* device : tagged(job_.devices, word->text))
        rows.push_back(device->id.number);
    for (const Splice* splice :
         rows.empty() ? tagged(job_.splices, word->text) : std::vector<const Splice*>())
        rows.push_back(splice->id.number);
    if (rows.size() != 1) {
        words_.refuse(*word, {"a device or splice of the job", "un dispositivo o empalme del trabajo"},
                      offering);
        return std::nullopt;
    }
    const std::optional<PlaceId> to = placeOrNew();
    if (!to)
        return std::nullopt;
    if (!before_.steps.empty() && words_.peek() && words_.peek()->isQuoted)
        words_.skip(); // the new place's words
    Job later = job_;
    if (!before_.steps.empty())
        static_cast<void>(applyChange(later, before_).ok());
    return typed(naming(doing::move, word->text), setPlace(later, rows, *to), rows);
}

std::optional<Typed> LineReader::rename()
{
    const Offering offering = [&](Offers& offers) {
        offerDevices(job_, offers);
        offerCables(job_, offers);
        offerSplices(job_, offers);
        offerPlaces(job_, offers);
    };
    const Words wanted = {"a tag of the job", "una etiqueta del trabajo"};
    const LineWord* word = words_.take(wanted, offering);
    if (!word)
        return std::nullopt;
    const std::vector<std::uint32_t> rows = rowsTagged(word->text);
    if (rows.size() != 1) {
        words_.refuse(*word, wanted, offering);
        return std::nullopt;
    }
    const LineWord* to = words_.take({"its new tag", "su etiqueta nueva"}, noOffers);
    if (!to)
        return std::nullopt;
    const std::string tag = capitals(to->text);
    Result<Change> change = Change{};
    visitRow(job_, rows.front(), [&]<class Row>(const Row& row) {
        if constexpr (std::is_same_v<Row, Device>)
            change = renameDevice(job_, row.id, tag);
        else if constexpr (std::is_same_v<Row, Splice>)
            change = renameSplice(job_, row.id, tag);
        else if constexpr (std::is_same_v<Row, Cable>)
            change = renameCable(job_, row.id, tag);
        else if constexpr (std::is_same_v<Row, Place>)
            change = renamePlace(job_, row.id, tag);
        else if constexpr (std::is_same_v<Row, Conductor>)
            change = renameConductor(job_, row.id, tag);
    });
    return typed(naming(doing::rename, word->text), std::move(change), rows);
}

std::optional<Typed> LineReader::remove()
{
    const Offering offering = [&](Offers& offers) {
        offerDevices(job_, offers);
        offerCables(job_, offers);
        offerSplices(job_, offers);
        offerConductors(job_, Cores::Landed, offers);
    };
    const Words wanted = {"a tag of the job", "una etiqueta del trabajo"};
    std::vector<std::uint32_t> rows;
    std::string names;
    while (const LineWord* word = rows.empty() ? words_.take(wanted, offering) : words_.maybe(offering)) {
        const std::vector<std::uint32_t> found = rowsTagged(word->text);
        if (found.size() != 1) {
            words_.refuse(*word, wanted, offering);
            return std::nullopt;
        }
        rows.push_back(found.front());
        names += (names.empty() ? "" : ", ") + word->text;
    }
    if (words_.problem())
        return std::nullopt;
    return typed(naming(doing::remove, names), removeAny(job_, rows), rows);
}

} // namespace doorloom
