#include "check/check.h"
#include "check/tell.h"

#include <algorithm>
#include <limits>
#include <set>

// Amperes through each contact and fuse, over every position.
namespace doorloom {

namespace {

constexpr Text contactWhy = {.en = "{amperes} A run through {contact}, made for {most} A{coils}.",
                             .es = "Por {contact} pasan {amperes} A, y está hecho para {most} A{coils}."};
constexpr Text contactInrush = {.en = "{amperes} A run through {contact} while what it switches pulls in, and it is made for {most} A{coils}.",
                                .es = "Por {contact} pasan {amperes} A mientras atrae lo que conmuta, y está hecho para {most} A{coils}."};
constexpr Text ofCoils = {.en = " of coils", .es = " de bobinas"}, plainly = {.en = "", .es = ""};
constexpr Text stronger = {.en = "Let {contact} move a relay with stronger contacts, or share the loads out.",
                           .es = "Haga que {contact} mueva un relé de contactos mayores, o reparta las cargas."};
constexpr Text fuseWhy = {.en = "{amperes} A run through the fuse at {contact}, made for {most} A: it blows.",
                          .es = "Por el fusible de {contact} pasan {amperes} A, y es de {most} A: se funde."};
constexpr Text shareOut = {.en = "Share the loads out over more outputs, or put some on another supply; never fit a larger fuse than the conductor and "
                                 "the board allow.",
                           .es = "Reparta las cargas en más salidas, o ponga parte en otra fuente; nunca monte un fusible mayor que lo que permiten "
                                 "el conductor y la placa."};

constexpr double inductiveOfResistive = 0.5; // where a rating says nothing of coils: common practice
constexpr double slack = 1e-9;

// Operators whose contacts stand before coils or locks: they break their currents.
std::set<MovedIndex> operatorsBeforeCoils(const Facts& facts)
{
    std::set<MovedIndex> operators;
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i)
        if (const LoadPart* load = facts.loadOf(i); load && (load->use == LoadUse::Lock || load->use == LoadUse::Coil || load->use == LoadUse::Motor))
            for (MovedIndex moved : facts.ask.operatorsThatMatter(i))
                operators.insert(moved);
    return operators;
}

bool isAny(const Guard& guard, const std::set<MovedIndex>& operators)
{
    for (const Term& term : guard.anyOf)
        for (const Atom& atom : term)
            if (operators.contains(atom.moved))
                return true;
    return false;
}

bool isOnAc(const Facts& facts, Vertex vertex)
{
    const std::vector<std::uint32_t> feeds = facts.ask.feedsNear(vertex);
    return !feeds.empty() && std::all_of(feeds.begin(), feeds.end(), [&](std::uint32_t feed) { return facts.circuit().feeds[feed].ac; });
}

// Nothing said: as much as anybody likes.
double ratingOf(const ContactRating& rating, bool ac, bool coils)
{
    const auto &inductive = ac ? rating.acInductive : rating.dcInductive, &resistive = ac ? rating.acResistive : rating.dcResistive;
    if (coils && inductive)
        return inductive->value;
    if (!resistive)
        return std::numeric_limits<double>::infinity();
    return coils ? inductiveOfResistive * resistive->value : resistive->value;
}

Finding atJoint(const Facts& facts, std::uint32_t joint, std::string_view rule, const Worst& worst, double most, Text why, Text coils)
{
    const Vertex vertex = facts.circuit().joints[joint].b;
    Finding made;
    made.rule = rule;
    made.severity = Severity::Fault;
    made.at = {spotOf(facts, vertex)};
    made.throws = {witnessAt(facts, worst.at)};
    made.why = {why,
                {{"amperes", figureText(worst.value)},
                 {"contact", nameOf(facts, vertex)},
                 {"most", figureText(most)},
                 {"coils", std::vector<Message>{coils}}}};
    return made;
}

std::vector<Finding> findOverloadedContacts(const Facts& facts)
{
    std::vector<Finding> findings;
    const std::set<MovedIndex> beforeCoils = operatorsBeforeCoils(facts);
    for (std::uint32_t i = 0; i < facts.circuit().joints.size(); ++i) {
        const Joint& joint = facts.circuit().joints[i];
        const auto* contact = partBehind<ContactPart>(facts.job, facts.net.origin(joint.origin));
        if (!contact)
            continue;
        const bool coils = isAny(joint.guard, beforeCoils), ac = isOnAc(facts, joint.a);
        const double most = ratingOf(contact->rating, ac, coils);
        const double mostPullingIn = ratingOf(contact->rating, ac, false); // a contact that closes breaks nothing
        const auto &holding = facts.figures().throughJoint[i], &pulling = facts.figures().throughPullingIn[i];
        if (holding && holding->value > most + slack) {
            findings.push_back(atJoint(facts, i, "overloaded-contact", *holding, most, contactWhy, coils ? ofCoils : plainly));
        } else if (pulling && pulling->value > mostPullingIn + slack) {
            findings.push_back(atJoint(facts, i, "overloaded-contact", *pulling, mostPullingIn, contactInrush, plainly));
            findings.back().reason = "pulling in";
        } else {
            continue;
        }
        findings.back().remedy = {stronger, {{"contact", nameOf(facts, joint.b)}}};
    }
    return findings;
}

std::vector<Finding> findOverloadedFuses(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().joints.size(); ++i) {
        const auto* fuse = partBehind<FusePart>(facts.job, facts.net.origin(facts.circuit().joints[i].origin));
        const auto& worst = facts.figures().throughJoint[i];
        if (!fuse || fuse->limit.value <= 0 || !worst || worst->value <= fuse->limit.value + slack)
            continue;
        findings.push_back(atJoint(facts, i, "overloaded-fuse", *worst, fuse->limit.value, fuseWhy, plainly));
        findings.back().remedy = shareOut;
    }
    return findings;
}

} // namespace

extern const Check overloadedContact = {.code = "overloaded-contact",
                                        .worst = Severity::Fault,
                                        .title = {.en = "Overloaded contact", .es = "Contacto sobrecargado"},
                                        .notCovered = {.en = "how often it switches; what lies in another part of the job",
                                                       .es = "cuántas veces conmuta; lo que está en otra parte del trabajo"},
                                        .run = findOverloadedContacts,
                                        .readsFigures = true};
extern const Check overloadedFuse = {.code = "overloaded-fuse",
                                     .worst = Severity::Fault,
                                     .title = {.en = "Overloaded fuse", .es = "Fusible sobrecargado"},
                                     .notCovered = {.en = "inrush, which a time-lag fuse may carry", .es = "el pico de arranque, que un fusible lento puede llevar"},
                                     .run = findOverloadedFuses,
                                     .readsFigures = true};

} // namespace doorloom
