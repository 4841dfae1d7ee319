#include "check/check.h"
#include "check/inputs.h"

// A dry input that nothing ever closes.
namespace doorloom {

namespace {

constexpr Text neverWhy = {.en = "Nothing ever closes {input} to {reference}: it is never operated.",
                           .es = "Nada cierra nunca {input} con {reference}: nunca se acciona."};
constexpr Text neverRemedy = {.en = "Land a contact, or the rest of its loop, between {input} and {reference}.",
                              .es = "Conecte un contacto, o el resto de su lazo, entre {input} y {reference}."};

} // namespace

extern const Check neverOperated = {
    .code = "never-operated",
    .worst = Severity::Fault,
    .title = {.en = "Input never operated", .es = "Entrada que nunca se acciona"},
    .notCovered = {.en = "whether the right contact closes it", .es = "si la cierra el contacto correcto"},
    .run = [](const Facts& facts) { return inputsThatAre(Answer::Never, facts, "never-operated", neverWhy, neverRemedy); },
};

} // namespace doorloom
