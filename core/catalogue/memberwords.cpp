#include "catalogue/memberwords.h"

#include <algorithm>
#include <iterator>
#include <string>

namespace doorloom {

namespace {

struct MemberWords {
    std::string_view name;
    Text words;
};

// In the order in which a form first has them.
constexpr MemberWords members[] = {
    {"name", {.en = "name (lower case, no maker)", .es = "nombre (minúsculas, sin fabricante)"}},
    {"title", {.en = "title on the shelf", .es = "título en el estante"}},
    {"en", {.en = "in English", .es = "en inglés"}},
    {"es", {.en = "in Spanish", .es = "en español"}},
    {"words", {.en = "in words", .es = "en palabras"}},
    {"family", {.en = "family (lock, relay, switch …)", .es = "familia (lock, relay, switch …)"}},
    {"standing", {.en = "where its values come from", .es = "de dónde vienen sus valores"}},
    {"roles", {.en = "what moves in it", .es = "lo que se mueve en él"}},
    {"strips", {.en = "strips of terminals", .es = "regletas de bornes"}},
    {"options", {.en = "choices by jumper", .es = "elecciones por puente"}},
    {"settings", {.en = "settings", .es = "ajustes"}},
    {"parts", {.en = "parts behind the terminals", .es = "partes tras los bornes"}},
    {"outputs", {.en = "outputs, wet or dry", .es = "salidas, con o sin tensión"}},
    {"lock", {.en = "what it locks", .es = "lo que cierra"}},
    {"key", {.en = "short name of its own", .es = "nombre corto propio"}},
    {"nature", {.en = "moved by", .es = "movido por"}},
    {"throws", {.en = "throws", .es = "posiciones"}},
    {"unpowered", {.en = "throw without power", .es = "posición sin alimentación"}},
    {"idle", {.en = "throw at rest", .es = "posición en reposo"}},
    {"makesBeforeBreaks", {.en = "makes before it breaks", .es = "cierra antes de abrir"}},
    {"thinnest", {.en = "thinnest", .es = "el más fino"}},
    {"thickest", {.en = "thickest", .es = "el más grueso"}},
    {"when", {.en = "only with these jumpers", .es = "solo con estos puentes"}},
    {"required", {.en = "must be landed with these jumpers", .es = "obligatorio con estos puentes"}},
    {"printed", {.en = "printed on the device", .es = "impreso en el aparato"}},
    {"lead", {.en = "flying lead of this colour", .es = "hilo suelto de este color"}},
    {"wire", {.en = "conductors it takes", .es = "conductores que admite"}},
    {"clampCapacity", {.en = "conductors that a clamp takes", .es = "conductores que admite un borne"}},
    {"stripMillimetres", {.en = "strip length, mm", .es = "pelado, mm"}},
    {"torqueNewtonMetres", {.en = "torque, N·m", .es = "par de apriete, N·m"}},
    {"signs", {.en = "said beside it", .es = "lo que se dice al lado"}},
    {"terminals", {.en = "terminals", .es = "bornes"}},
    {"values", {.en = "values", .es = "valores"}},
    {"jumpers", {.en = "jumpers", .es = "puentes"}},
    {"factory", {.en = "as from the factory", .es = "como sale de fábrica"}},
    {"form", {.en = "set with", .es = "se ajusta con"}},
    {"unit", {.en = "unit", .es = "unidad"}},
    {"least", {.en = "least", .es = "mínimo"}},
    {"most", {.en = "most", .es = "máximo"}},
    {"beforePower", {.en = "while power comes on", .es = "al dar tensión"}},
    {"option", {.en = "choice that makes it wet", .es = "elección que le da tensión"}},
    {"wetValue", {.en = "value that makes it wet", .es = "valor que le da tensión"}},
    {"failMode", {.en = "without power", .es = "sin alimentación"}},
    {"load", {.en = "part that is fed", .es = "parte que recibe tensión"}},
    {"holdsDoorOpen", {.en = "holds the door open", .es = "mantiene la puerta abierta"}},
    {"latches", {.en = "is a latch or works on one", .es = "es un pestillo o actúa en uno"}},
    {"actsInMilliseconds", {.en = "lets go in, ms", .es = "suelta en, ms"}},
    {"a", {.en = "one end (the plus)", .es = "un extremo (el más)"}},
    {"b", {.en = "other end", .es = "el otro extremo"}},
    {"dcResistiveAmperes", {.en = "DC resistive, A", .es = "CC resistiva, A"}},
    {"dcInductiveAmperes", {.en = "DC inductive, A", .es = "CC inductiva, A"}},
    {"acResistiveAmperes", {.en = "AC resistive, A", .es = "CA resistiva, A"}},
    {"acInductiveAmperes", {.en = "AC inductive, A", .es = "CA inductiva, A"}},
    {"mostVolts", {.en = "highest volts", .es = "tensión máxima"}},
    {"leastVolts", {.en = "lowest volts", .es = "tensión mínima"}},
    {"leastAmperes", {.en = "least, A", .es = "mínimo, A"}},
    {"role", {.en = "moved as", .es = "movido como"}},
    {"closedIn", {.en = "closed in these throws", .es = "cerrado en estas posiciones"}},
    {"solidState",
     {.en = "solid state, from one end to the other", .es = "estado sólido, de un extremo al otro"}},
    {"rating", {.en = "contact rating", .es = "valores del contacto"}},
    {"volts", {.en = "volts", .es = "voltios"}},
    {"amperes", {.en = "amperes", .es = "amperios"}},
    {"use", {.en = "what it is", .es = "lo que es"}},
    {"polarised", {.en = "has a plus and a minus", .es = "tiene más y menos"}},
    {"suppressed", {.en = "suppressed inside", .es = "con supresor dentro"}},
    {"accepts", {.en = "DC or AC", .es = "CC o CA"}},
    {"rated", {.en = "rated at", .es = "valores nominales"}},
    {"law", {.en = "current with other volts", .es = "corriente con otra tensión"}},
    {"releaseVolts", {.en = "lets go at, V", .es = "suelta a, V"}},
    {"pullInVolts", {.en = "pulls in at, V", .es = "atrae a, V"}},
    {"inrushAmperes", {.en = "inrush, A", .es = "arranque, A"}},
    {"inrushMilliseconds", {.en = "inrush lasts, ms", .es = "dura el arranque, ms"}},
    {"duty", {.en = "duty", .es = "servicio"}},
    {"powerFactor", {.en = "power factor on AC", .es = "factor de potencia en CA"}},
    {"manner", {.en = "how it moves", .es = "cómo se mueve"}},
    {"powered", {.en = "while this load is fed", .es = "mientras esta carga recibe tensión"}},
    {"poweredIn", {.en = "while these stand so", .es = "mientras estos están así"}},
    {"by", {.en = "started by one of these inputs", .es = "arranca con una de estas entradas"}},
    {"sense", {.en = "follows", .es = "sigue a"}},
    {"latching", {.en = "stays until it is reset", .es = "queda así hasta rearmarlo"}},
    {"delayMilliseconds", {.en = "waits, ms", .es = "espera, ms"}},
    {"holdMilliseconds", {.en = "stays, ms", .es = "dura, ms"}},
    {"leastOhms", {.en = "from, Ω", .es = "desde, Ω"}},
    {"mostOhms", {.en = "to, Ω", .es = "hasta, Ω"}},
    {"terminal", {.en = "terminal", .es = "borne"}},
    {"reference", {.en = "reference terminal", .es = "borne de referencia"}},
    {"wettingVolts", {.en = "volts that it puts out", .es = "voltios que da"}},
    {"wettingOhms", {.en = "through these ohms", .es = "a través de, Ω"}},
    {"isolated", {.en = "isolated", .es = "aislada"}},
    {"mayShareContact", {.en = "may share a contact", .es = "puede compartir un contacto"}},
    {"mustBeClosed", {.en = "must be closed all the time", .es = "debe estar siempre cerrada"}},
    {"closedBelowOhms", {.en = "closed below, Ω", .es = "cerrada por debajo de, Ω"}},
    {"bands", {.en = "what it tells apart by ohms", .es = "lo que distingue por ohmios"}},
    {"plus", {.en = "plus", .es = "más"}},
    {"minus", {.en = "minus", .es = "menos"}},
    {"ac", {.en = "AC", .es = "CA"}},
    {"mayParallel", {.en = "may stand beside another", .es = "puede ir en paralelo con otra"}},
    {"minusEarthed", {.en = "minus earthed", .es = "menos a tierra"}},
    {"lowestVolts", {.en = "lowest volts it gives", .es = "tensión mínima que da"}},
    {"nominalVolts", {.en = "nominal volts", .es = "tensión nominal"}},
    {"highestVolts", {.en = "highest volts it gives", .es = "tensión máxima que da"}},
    {"lowestOnBatteryVolts", {.en = "lowest on battery, V", .es = "mínima con batería, V"}},
    {"mostAmperes", {.en = "most amperes", .es = "amperios máximos"}},
    {"supplyClass", {.en = "class ('Class 2')", .es = "clase ('Class 2')"}},
    {"live", {.en = "gives volts only when", .es = "da tensión solo cuando"}},
    {"chargeAmperes", {.en = "charges with, A", .es = "carga con, A"}},
    {"ampereHours", {.en = "ampere-hours", .es = "amperios-hora"}},
    {"line", {.en = "data line (D0, D1, A, B)", .es = "línea de datos (D0, D1, A, B)"}},
    {"anode", {.en = "anode", .es = "ánodo"}},
    {"cathode", {.en = "cathode (stripe)", .es = "cátodo (raya)"}},
    {"dropVolts", {.en = "drop, V", .es = "caída, V"}},
    {"ohms", {.en = "ohms", .es = "ohmios"}},
    {"ratingVolts", {.en = "rated for, V", .es = "para, V"}},
    {"limitAmperes", {.en = "opens at, A", .es = "abre a, A"}},
    {"type", {.en = "type of part", .es = "tipo de parte"}},
};

} // namespace

Words wordsOfMember(std::string_view name)
{
    const auto* const found = std::find_if(std::begin(members), std::end(members),
                                           [&](const MemberWords& each) { return each.name == name; });
    if (found == std::end(members))
        return {std::string(name), std::string(name)};
    return {std::string(found->words.en), std::string(found->words.es)};
}

} // namespace doorloom
