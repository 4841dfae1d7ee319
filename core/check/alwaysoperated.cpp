#include "check/check.h"
#include "check/inputs.h"

// A dry input that is closed in every position.
namespace doorloom {

namespace {

constexpr Text alwaysWhy = {.en = "{input} is joined to {reference} in every position: it is operated all the time.",
                            .es = "{input} está unido a {reference} en toda posición: está accionada siempre."};
constexpr Text alwaysRemedy = {.en = "Take out what bridges the contact between {input} and {reference}.",
                               .es = "Quite lo que puentea el contacto entre {input} y {reference}."};

} // namespace

extern const Check alwaysOperated = {
    .code = "always-operated",
    .worst = Severity::Danger,
    .title = {.en = "Input always operated", .es = "Entrada siempre accionada"},
    .notCovered = {.en = "inputs that a link from the factory closes on purpose",
                   .es = "entradas que cierra a propósito un puente de fábrica"},
    .run = [](const Facts& facts) { return inputsThatAre(Answer::Always, facts, "always-operated", alwaysWhy, alwaysRemedy); },
};

} // namespace doorloom
