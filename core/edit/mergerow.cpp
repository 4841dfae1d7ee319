#include "edit/mergerow.h"

#include "edit/merging.h"
#include "edit/references.h"

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

Words about(const Words& what, const std::string& which)
{
    return {what.en + " " + which, what.es + " " + which};
}

} // namespace

std::string StampView::nameOf(std::uint32_t row) const
{
    if (const auto fresh = newNames.find(row); fresh != newNames.end())
        return fresh->second;
    std::string name = "…";
    visitRow(job, row, [&](const auto& there) {
        if constexpr (requires { there.tag; })
            name = there.tag;
        else
            name.clear();
        if (name.empty())
            name = nameOfRow(job, there);
    });
    return name;
}

Place mergedRow(const StampView& view, const Place& base, const Place& fresh, const Place& own,
                DoorLines& lines)
{
    Merging<Place> row(view, base, fresh, own, lines);
    row.one({"words", "descripción"}, &Place::words);
    row.one({"mounting", "montaje"}, &Place::mounting);
    row.one({"box", "caja"}, &Place::isBox);
    row.one({"breaker", "interruptor"}, &Place::breaker);
    return row.done();
}

Operator mergedRow(const StampView& view, const Operator& base, const Operator& fresh, const Operator& own,
                   DoorLines& lines)
{
    Merging<Operator> row(view, base, fresh, own, lines);
    row.one({"owner", "dueño"}, &Operator::owner);
    row.one({"role", "función"}, &Operator::ownerRole);
    row.one({"nature", "naturaleza"}, &Operator::nature);
    row.one({"throws", "posiciones"}, &Operator::throws);
    row.one({"unpowered", "sin tensión"}, &Operator::unpowered);
    row.one({"at rest", "en reposo"}, &Operator::idle);
    return row.done();
}

Device mergedRow(const StampView& view, const Device& base, const Device& fresh, const Device& own,
                 DoorLines& lines)
{
    Merging<Device> row(view, base, fresh, own, lines);
    row.one({"words", "descripción"}, &Device::words);
    row.one({"kind", "tipo"}, &Device::kind);
    row.one({"place", "lugar"}, &Device::place);
    row.one({"standing", "estado"}, &Device::standing);
    if (base.kind != fresh.kind && own.kind != base.kind && own.kind != fresh.kind)
        return row.done(); // its own kind has its own jumpers
    row.each(
        &Device::choices, [](const Choice& each) { return std::pair(each.option, each.jumper); },
        [](const Choice& each) {
            return about({"jumper", "puente"}, each.option + "." + each.jumper);
        });
    row.each(
        &Device::settings, [](const SettingChoice& each) { return each.setting; },
        [](const SettingChoice& each) {
            return about({"setting", "ajuste"}, each.setting);
        });
    row.each(
        &Device::bindings, [](const Binding& each) { return each.role; },
        [](const Binding& each) {
            return about({"operator of", "operador de"}, each.role);
        });
    return row.done();
}

Cable mergedRow(const StampView& view, const Cable& base, const Cable& fresh, const Cable& own,
                DoorLines& lines)
{
    Merging<Cable> row(view, base, fresh, own, lines);
    row.one({"type", "tipo"}, &Cable::type);
    row.one({"from", "desde"}, &Cable::from);
    row.one({"to", "hasta"}, &Cable::to);
    row.one({"length", "longitud"}, &Cable::length);
    row.one({"pull", "tendido"}, &Cable::pull);
    row.one({"standing", "estado"}, &Cable::standing);
    row.one({"notes", "notas"}, &Cable::notes);
    return row.done();
}

Splice mergedRow(const StampView& view, const Splice& base, const Splice& fresh, const Splice& own,
                 DoorLines& lines)
{
    Merging<Splice> row(view, base, fresh, own, lines);
    row.one({"place", "lugar"}, &Splice::place);
    row.one({"connector", "conector"}, &Splice::connector);
    row.one({"takes", "admite"}, &Splice::capacity);
    return row.done();
}

Conductor mergedRow(const StampView& view, const Conductor& base, const Conductor& fresh,
                    const Conductor& own, DoorLines& lines)
{
    Merging<Conductor> row(view, base, fresh, own, lines);
    row.one({"make", "hechura"}, &Conductor::make);
    row.one({"cable", "cable"}, &Conductor::cable);
    row.one({"core", "hilo"}, &Conductor::core);
    row.end(firstEndWords, &Conductor::from);
    row.end(secondEndWords, &Conductor::to);
    row.one({"colour", "color"}, &Conductor::colour);
    row.one({"gauge", "calibre"}, &Conductor::gauge);
    row.one({"length", "longitud"}, &Conductor::length);
    row.one({"standing", "estado"}, &Conductor::standing);
    return row.done();
}

Opening mergedRow(const StampView& view, const Opening& base, const Opening& fresh, const Opening& own,
                  DoorLines& lines)
{
    const auto listed = [&](const Words& what) {
        return [&view, what](DeviceId device) { return about(what, view.nameOf(device.number)); };
    };
    const auto itself = [](DeviceId device) { return device; };
    const auto named = [](const Words& what) {
        return [what](const Act& act) { return about(what, act.name); };
    };
    const auto name = [](const Act& act) { return act.name; };

    Merging<Opening> row(view, base, fresh, own, lines);
    row.one({"words", "descripción"}, &Opening::words);
    row.one({"way out", "salida"}, &Opening::egress);
    row.one({"fire-rated", "cortafuego"}, &Opening::fireRated);
    row.one({"use", "uso"}, &Opening::audience);
    row.one({"leaf", "hoja"}, &Opening::door);
    row.one({"fire alarm", "alarma de incendio"}, &Opening::fire);
    row.each(&Opening::locks, itself, listed({"lock", "cerradura"}));
    row.each(&Opening::doorOperators, itself, listed({"door operator", "automatismo"}));
    row.each(&Opening::requests, name, named({"request", "petición"}));
    row.each(&Opening::releases, name, named({"release", "liberación"}));
    row.each(
        &Opening::occupied, [](const Thrown& thrown) { return thrown.moved; },
        [&](const Thrown& thrown) {
            return about({"occupied:", "ocupado:"}, view.nameOf(thrown.moved.number));
        });
    row.each(
        &Opening::promises, [](const Promise& each) { return std::pair(each.situation, each.device); },
        [&](const Promise& each) {
            return about({"promise of", "promesa de"}, view.nameOf(each.device.number));
        });
    return row.done();
}

// A sheet's title and order are its own.
Sheet mergedRow(const StampView&, const Sheet&, const Sheet&, const Sheet& own, DoorLines&)
{
    return own;
}

Placement mergedRow(const StampView& view, const Placement& base, const Placement& fresh,
                    const Placement& own, DoorLines& lines)
{
    Merging<Placement> row(view, base, fresh, own, lines);
    row.one({"sheet", "hoja"}, &Placement::sheet);
    row.one({"drawn at", "dibujado en"}, &Placement::at);
    row.one({"quarter turns", "cuartos de vuelta"}, &Placement::quarterTurns);
    return row.done();
}

Bends mergedRow(const StampView& view, const Bends& base, const Bends& fresh, const Bends& own,
                DoorLines& lines)
{
    Merging<Bends> row(view, base, fresh, own, lines);
    row.one({"bends", "dobleces"}, &Bends::pinned);
    return row.done();
}

} // namespace doorloom
