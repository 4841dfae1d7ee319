#pragma once

#include "model/kind.h"

#include <string>
#include <utility>
#include <vector>

// Invented kinds, as small as the model allows: for tests of editing, which ask nothing electrical.
namespace doorloom {

inline Throw throwNamed(const Key& key)
{
    return {key, {key, key}};
}

inline Terminal terminalNamed(const Key& key)
{
    Terminal terminal;
    terminal.key = key;
    terminal.printed = key;
    return terminal;
}

inline Strip stripOf(const std::vector<Key>& keys)
{
    Strip strip;
    for (const Key& key : keys)
        strip.terminals.push_back(terminalNamed(key));
    return strip;
}

inline Role roleOf(const Key& key, OperatorNature nature, const Key& unpowered, const Key& other)
{
    Role role;
    role.key = key;
    role.nature = nature;
    role.words = {key, key};
    role.throws = {throwNamed(unpowered), throwNamed(other)};
    role.unpowered = unpowered;
    role.idle = unpowered;
    return role;
}

inline Kind kindOfParts(const std::string& name, const std::vector<Key>& terminals)
{
    Kind kind;
    kind.name = name;
    kind.title = {"Small " + name, "Pequeño " + name};
    kind.strips = {stripOf(terminals)};
    return kind;
}

inline Kind smallSupply()
{
    Kind kind = kindOfParts("supply", {"+", "-"});
    kind.roles = {roleOf("mains", OperatorNature::Mains, "lost", "on")};
    kind.roles[0].idle = "on";
    SourcePart source;
    source.plus = "+";
    source.minus = "-";
    source.live = {{{"mains", "on"}}};
    kind.parts = {{"feed", {}, source}};
    return kind;
}

// One relay, one option of two jumpers, a number and a word to set.
inline Kind smallModule()
{
    Kind kind = kindOfParts("module", {"+", "-", "C1", "NO1", "NC1"});
    kind.roles = {roleOf("K1", OperatorNature::Relay, "out", "in")};
    Option output;
    output.key = "out1";
    output.values = {throwNamed("dry"), throwNamed("wet")};
    output.jumpers = {{"JA", {"JA", "JA"}}, {"JB", {"JB", "JB"}}};
    kind.options = {output};
    Setting hold;
    hold.key = "hold";
    hold.words = {"Hold time", "Tiempo de apertura"};
    hold.unit = "s";
    hold.least = 1;
    hold.most = 30;
    hold.factory = 5.0;
    Setting mode;
    mode.key = "mode";
    mode.words = {"Mode", "Modo"};
    mode.form = Setting::Form::Choice;
    mode.values = {throwNamed("timed"), throwNamed("toggle")};
    mode.factory = "timed";
    kind.settings = {hold, mode};
    kind.parts = {{"K1.no", {}, ContactPart{"C1", "NO1", "K1", {"in"}, {}}},
                  {"K1.nc", {}, ContactPart{"C1", "NC1", "K1", {"out"}, {}}}};
    return kind;
}

inline Kind smallStrike()
{
    Kind kind = kindOfParts("strike", {"a", "b"});
    LoadPart coil;
    coil.a = "a";
    coil.b = "b";
    coil.use = LoadUse::Lock;
    kind.parts = {{"coil", {}, coil}};
    kind.lock.emplace().load = "coil";
    return kind;
}

inline Kind smallDoorSwitch()
{
    Kind kind = kindOfParts("door-switch", {"C", "NO"});
    kind.roles = {roleOf("door", OperatorNature::Door, "shut", "open")};
    kind.parts = {{"contact", {}, ContactPart{"C", "NO", "door", {"open"}, {}}}};
    return kind;
}

inline Kind smallButton()
{
    Kind kind = kindOfParts("button", {"C", "NO"});
    kind.roles = {roleOf("hand", OperatorNature::Hand, "released", "pushed")};
    kind.parts = {{"contact", {}, ContactPart{"C", "NO", "hand", {"pushed"}, {}}}};
    return kind;
}

} // namespace doorloom
