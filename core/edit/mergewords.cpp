#include "edit/mergewords.h"

#include "edit/rownames.h"
#include "model/modelwords.h"

#include <fmt/format.h>

namespace doorloom {

namespace {

// In the order of OperatorNature.
constexpr Text natures[] = {
    {.en = "relay", .es = "relé"},      {.en = "door", .es = "puerta"},
    {.en = "hand", .es = "mano"},       {.en = "key switch", .es = "llave"},
    {.en = "sensor", .es = "sensor"},   {.en = "selector", .es = "selector"},
    {.en = "bolt", .es = "pestillo"},   {.en = "mains", .es = "red"},
    {.en = "battery", .es = "batería"}, {.en = "fire alarm", .es = "alarma de incendio"},
    {.en = "failure", .es = "fallo"}};

Words both(std::string text)
{
    return text.empty() ? nothingThere() : Words{text, text};
}

Words both(const Text& text)
{
    return {std::string(text.en), std::string(text.es)};
}

std::string throwNames(const StampView& view, const std::vector<Thrown>& throws)
{
    std::string names;
    for (const Thrown& each : throws)
        names += (names.empty() ? "" : ", ") + view.nameOf(each.moved.number) + "=" + each.thrown;
    return names;
}

} // namespace

Words nothingThere()
{
    return {"none", "ninguno"};
}

Words mergeWords(const StampView&, const std::string& text)
{
    return text.empty() ? nothingThere() : Words{"'" + text + "'", "'" + text + "'"};
}
Words mergeWords(const StampView&, bool is)
{
    return is ? Words{"yes", "sí"} : Words{"no", "no"};
}
Words mergeWords(const StampView&, int count)
{
    return both(std::to_string(count));
}
Words mergeWords(const StampView&, Metres length)
{
    return both(fmt::format("{} m", length.value));
}
Words mergeWords(const StampView&, Standing standing)
{
    return both(wordsOf(standing));
}
Words mergeWords(const StampView&, Mounting mounting)
{
    return both(wordsOf(mounting));
}
Words mergeWords(const StampView&, Egress egress)
{
    return both(wordsOf(egress));
}
Words mergeWords(const StampView&, Audience audience)
{
    return both(wordsOf(audience));
}
Words mergeWords(const StampView&, ConductorMake make)
{
    return make == ConductorMake::Core   ? Words{"core", "hilo"}
           : make == ConductorMake::Wire ? Words{"wire", "cable suelto"}
                                         : Words{"lead", "terminal de salida"};
}
Words mergeWords(const StampView&, OperatorNature nature)
{
    return both(natures[static_cast<std::size_t>(nature)]);
}
Words mergeWords(const StampView&, const std::vector<Throw>& throws)
{
    return both(keysOf(throws));
}
Words mergeWords(const StampView&, const Choice& choice)
{
    return choice.value.empty() ? Words{"not chosen", "sin elegir"} : both(choice.value);
}
Words mergeWords(const StampView&, const SettingChoice& choice)
{
    return both(settingText(choice.value));
}
Words mergeWords(const StampView& view, const Binding& binding)
{
    return mergeWords(view, binding.moved);
}

Words mergeWords(const StampView& view, const End& end)
{
    if (end.state == EndState::Waiting)
        return {"waiting", "en espera"};
    if (end.state == EndState::Spare)
        return {"spare", "de reserva"};
    if (end.state == EndState::Insulated)
        return {"insulated", "aislado"};
    const Landing* landing = landingOf(end);
    if (!landing)
        return mergeWords(view, *spliceOf(end));
    if (view.job.devices.find(landing->device))
        return both(nameOf(view.job, *landing));
    return both(view.nameOf(landing->device.number) + ":" + landing->terminal);
}

Words mergeWords(const StampView&, const Thrown& thrown)
{
    return both(thrown.thrown);
}
Words mergeWords(const StampView& view, const Act& act)
{
    const Text& side = wordsOf(act.side);
    const std::string names = throwNames(view, act.throws);
    return {std::string(side.en) + " " + names, std::string(side.es) + " " + names};
}
Words mergeWords(const StampView&, const Promise& promise)
{
    return both(wordsOf(promise.promised));
}
Words mergeWords(const StampView&, Point point)
{
    return both(fmt::format("{}, {} mm", point.x / 10.0, point.y / 10.0));
}
Words mergeWords(const StampView&, const std::vector<Point>& points)
{
    return points.empty() ? nothingThere()
                          : Words{fmt::format("through {} points", points.size()),
                                  fmt::format("por {} puntos", points.size())};
}

} // namespace doorloom
