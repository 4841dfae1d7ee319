#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <set>

namespace doorloom {

namespace {

// Keys that things are known by: none empty, none twice.
class KeyCheck {
public:
    KeyCheck(const std::string& name, Problems& problems) : name_(name), problems_(problems) {}

    void see(Words noun, const Key& key)
    {
        if (!key.empty() && seen_.insert(noun.en + '\n' + key).second)
            return;
        problems_.push_back(problemAt(name_,
                                      {.en = "{name} has the {noun} '{key}' twice, or without a key.",
                                       .es = "{name} tiene {noun} '{key}' dos veces o sin clave."},
                                      {.en = "Give each {noun} a key of its own.",
                                       .es = "Dé a cada elemento ({noun}) una clave propia."},
                                      {{"name", name_}, {"noun", std::move(noun)}, {"key", key}}));
    }

private:
    const std::string& name_;
    Problems& problems_;
    std::set<std::string> seen_;
};

void verifyThrows(const std::string& name, const std::vector<Throw>& throws, const Key& unpowered,
                  const Key& idle, Problems& problems)
{
    KeyCheck keys(name, problems);
    for (const Throw& each : throws)
        keys.see({"throw", "posición"}, each.key);
    if (throws.size() < 2)
        problems.push_back(
            problemAt(name,
                      {.en = "{name} has fewer than two throws: '{throws}'.",
                       .es = "{name} tiene menos de dos posiciones: '{throws}'."},
                      {.en = "Give it two throws or more.", .es = "Déle dos posiciones o más."},
                      {{"name", name}, {"throws", keysOf(throws)}}));
    if (!findThrow(throws, unpowered))
        problems.push_back(problemAt(
            name,
            {.en = "{name} can't be at '{throw}' without power.",
             .es = "{name} no puede estar en '{throw}' sin alimentación."},
            {.en = "Use one of its throws: {throws}.", .es = "Use una de sus posiciones: {throws}."},
            {{"name", name}, {"throws", keysOf(throws)}, {"throw", unpowered}}));
    if (!findThrow(throws, idle))
        problems.push_back(noSuchThrowAtRest(name, throws, idle));
}

} // namespace

void verifyPromises(const Job&, const JobKind& row, Problems& problems)
{
    const Kind& kind = row.kind;
    KeyCheck keys(kind.name, problems);
    for (const Terminal* terminal : terminalsOf(kind))
        keys.see({"terminal", "el borne"}, terminal->key);
    for (const Setting& setting : kind.settings)
        keys.see({"setting", "el ajuste"}, setting.key);
    for (const Option& option : kind.options) {
        keys.see({"option", "la opción"}, option.key);
        for (const Jumper& jumper : option.jumpers)
            keys.see({"jumper", "el puente"}, option.key + "." + jumper.key);
    }
    for (const Role& role : kind.roles) {
        keys.see({"role", "el papel"}, role.key);
        verifyThrows(kind.name + ":" + role.key, role.throws, role.unpowered, role.idle, problems);
    }
}

void verifyPromises(const Job& job, const Operator& row, Problems& problems)
{
    const std::string name = nameOf(job, row);
    verifyThrows(name, row.throws, row.unpowered, row.idle, problems);
    const Kind* kind = kindOf(job, row.owner);
    if (kind && !findRole(*kind, row.ownerRole))
        problems.push_back(
            problemAt(name,
                      {.en = "{name} belongs to the role '{role}' of {owner}, which has no such role.",
                       .es = "{name} pertenece al papel '{role}' de {owner}, que no lo tiene."},
                      {.en = "Choose a role of {owner}, or give the operator a tag of its own.",
                       .es = "Elija un papel de {owner} o dé al operador su propia etiqueta."},
                      {{"name", name}, {"role", row.ownerRole}, {"owner", tagOf(job, row.owner)}}));
    if (!row.owner && row.tag.empty())
        problems.push_back(problemAt({},
                                     {.en = "An operator that no device owns has the tag ''.",
                                      .es = "Un operador sin dispositivo propio tiene la etiqueta ''."},
                                     {.en = "Give it a tag such as 'D1', or its device.",
                                      .es = "Déle una etiqueta como 'D1' o su dispositivo."},
                                     {}));
}

Problem noSuchThrowAtRest(const std::string& name, const std::vector<Throw>& throws, const Key& idle)
{
    return problemAt(name,
                     {.en = "{name} can't be at '{throw}' at rest.",
                      .es = "{name} no puede estar en '{throw}' en reposo."},
                     {.en = "Use one of its throws: {throws}.", .es = "Use una de sus posiciones: {throws}."},
                     {{"name", name}, {"throws", keysOf(throws)}, {"throw", idle}});
}

} // namespace doorloom
