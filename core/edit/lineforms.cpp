#include "edit/lineforms.h"

#include "base/folded.h"

namespace doorloom {

namespace {

constexpr CommandWord commands[] = {
    {LineCommand::Place,
     {.en = "place", .es = "poner"},
     {.en = "place a device", .es = "poner un dispositivo"}},
    {LineCommand::Pull, {.en = "pull", .es = "tender"}, {.en = "pull a cable", .es = "tender un cable"}},
    {LineCommand::Set,
     {.en = "set", .es = "ajustar"},
     {.en = "set an option or setting", .es = "fijar una opción o un ajuste"}},
    {LineCommand::Cap,
     {.en = "cap", .es = "reservar"},
     {.en = "cap spare cores", .es = "dejar hilos de reserva"}},
    {LineCommand::Insulate,
     {.en = "insulate", .es = "aislar"},
     {.en = "insulate an end on purpose", .es = "aislar un extremo a propósito"}},
    {LineCommand::Lift,
     {.en = "lift", .es = "soltar"},
     {.en = "take off what is landed", .es = "soltar lo conectado"}},
    {LineCommand::Splice, {.en = "splice", .es = "empalmar"}, {.en = "join ends", .es = "unir extremos"}},
    {LineCommand::Move,
     {.en = "move", .es = "mover"},
     {.en = "say where a device is", .es = "decir dónde está un dispositivo"}},
    {LineCommand::Rename,
     {.en = "rename", .es = "renombrar"},
     {.en = "give another tag", .es = "dar otra etiqueta"}},
    {LineCommand::Remove, {.en = "remove", .es = "quitar"}, {.en = "take away", .es = "quitar del trabajo"}},
};

constexpr Text wire = {.en = "wire", .es = "suelto"};

constexpr LineForm forms[] = {
    {{.en = "TAG TERMINAL TAG TERMINAL [COLOUR | NUMBER | CORE | wire]",
      .es = "ETIQUETA BORNE ETIQUETA BORNE [COLOR | NÚMERO | HILO | suelto]"},
     "PS1 + ES1 1 red",
     {.en = "Joins two terminals by the next free core between their places, or by the one named; in one "
            "place, "
            "by a wire.",
      .es =
          "Une dos bornes con el siguiente hilo libre entre sus lugares, o con el que se nombre; en un mismo "
          "lugar, con un hilo suelto."}},
    {{.en = "CABLE TAG TERMINAL", .es = "CABLE ETIQUETA BORNE"},
     "C1 ES1 1",
     {.en = "Lands the cable's next core on a terminal at one of its ends.",
      .es = "Conecta el siguiente hilo del cable a un borne en uno de sus extremos."}},
    {{.en = "place KIND PLACE [TAG] [\"words\"]", .es = "poner TIPO LUGAR [ETIQUETA] [\"palabras\"]"},
     "place strike-fail-safe FRAME ES1 \"strike side of frame\"",
     {.en = "Places a device. A place that is not there yet is made when its words are given.",
      .es = "Pone un dispositivo. Un lugar que aún no existe se crea si se dan sus palabras."}},
    {{.en = "pull TYPE FROM TO [TAG] [LENGTH m | ft]",
      .es = "tender TIPO DESDE HASTA [ETIQUETA] [LONGITUD m | ft]"},
     "pull 18/4 CAB1 FRAME C1 12 m",
     {.en = "Pulls a cable between two places, or between the places of two devices.",
      .es = "Tiende un cable entre dos lugares, o entre los lugares de dos dispositivos."}},
    {{.en = "cap CORE | CABLE [PLACE]", .es = "reservar HILO | CABLE [LUGAR]"},
     "cap C1.3",
     {.en = "Caps what waits of a core, or of all unused cores of a cable.",
      .es = "Deja de reserva lo que espera de un hilo, o de todos los hilos sin usar de un cable."}},
    {{.en = "insulate CORE [PLACE]", .es = "aislar HILO [LUGAR]"},
     "insulate C2.7 FRAME",
     {.en = "Insulates what waits of a core on purpose: a drain at its far end.",
      .es = "Aísla a propósito lo que espera de un hilo: un dren en su extremo lejano."}},
    {{.en = "lift CORE | TAG TERMINAL", .es = "soltar HILO | ETIQUETA BORNE"},
     "lift ES1 1",
     {.en = "Takes off a core at both ends, or all that is on a terminal.",
      .es = "Suelta un hilo en ambos extremos, o todo lo que hay en un borne."}},
    {{.en = "splice CORE CORE … [PLACE] [TAG]", .es = "empalmar HILO HILO … [LUGAR] [ETIQUETA]"},
     "splice C1.3 C2.1",
     {.en = "Joins the ends of cores that wait at one place.",
      .es = "Une los extremos de hilos que esperan en un mismo lugar."}},
    {{.en = "set TAG OPTION | SETTING VALUE", .es = "ajustar ETIQUETA OPCIÓN | AJUSTE VALOR"},
     "set LM1 K1 wet",
     {.en = "Sets an option with all its jumpers, one jumper (K1.JA), or a setting; '?' is not chosen.",
      .es = "Fija una opción con todos sus puentes, un puente (K1.JA) o un ajuste; '?' es sin elegir."}},
    {{.en = "move TAG PLACE [\"words\"]", .es = "mover ETIQUETA LUGAR [\"palabras\"]"},
     "move DPS1 HEAD",
     {.en = "Says where a device or splice is.", .es = "Dice dónde está un dispositivo o empalme."}},
    {{.en = "rename TAG TAG", .es = "renombrar ETIQUETA ETIQUETA"},
     "rename ES1 ES7",
     {.en = "Gives a device, splice, cable, place or wire another tag.",
      .es = "Da otra etiqueta a un dispositivo, empalme, cable, lugar o hilo suelto."}},
    {{.en = "remove TAG …", .es = "quitar ETIQUETA …"},
     "remove ES1 C1",
     {.en = "Takes devices, splices, cables, wires or places out of the job.",
      .es = "Quita del trabajo dispositivos, empalmes, cables, hilos sueltos o lugares."}},
};

bool isOneOf(const Text& text, const std::string& word)
{
    return word == folded(text.en) || word == folded(text.es);
}

} // namespace

std::span<const CommandWord> commandWords()
{
    return commands;
}

std::optional<LineCommand> commandCalled(std::string_view word)
{
    for (const CommandWord& each : commands)
        if (isOneOf(each.word, folded(word)))
            return each.command;
    return std::nullopt;
}

bool meansWire(std::string_view word)
{
    return isOneOf(wire, folded(word));
}

std::span<const LineForm> lineForms()
{
    return forms;
}

} // namespace doorloom
