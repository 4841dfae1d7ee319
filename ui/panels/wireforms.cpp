#include "edit/details.h"
#include "edit/drawing.h"
#include "edit/landcores.h"
#include "model/colours.h"
#include "openjob/shown.h"
#include "panels/details.h"
#include "panels/form.h"
#include "panels/formfields.h"

// The forms of cables, conductors, splices and notes.
namespace doorloom {
namespace {

QString metresShown(Metres length)
{
    return length.value > 0 ? QString::number(length.value) : QString();
}

using Typed = const std::string&;

// Metres as typed; nothing typed: not known.
Result<Metres> metresOf(Typed typed, const std::string& where)
{
    bool isNumber = false;
    const double value = shown(typed).toDouble(&isNumber);
    if (isNumber || typed.empty())
        return Metres{value};
    return Problem{.what = {{.en = "'{typed}' is no length.", .es = "'{typed}' no es una longitud."},
                            {{"typed", typed}}},
                   .where = where,
                   .remedy =
                       Text{.en = "Write metres as a number: 12.5", .es = "Escriba metros con cifras: 12.5"}};
}

QString endShown(const Job& job, const End& end)
{
    switch (end.state) {
    case EndState::Waiting:
        return Form::tr("not landed yet");
    case EndState::Spare:
        return Form::tr("spare, capped");
    case EndState::Insulated:
        return Form::tr("insulated on purpose");
    case EndState::Landed:
        break;
    }
    if (const Landing* landing = landingOf(end))
        return shown(nameOf(job, *landing));
    const Splice* splice = job.splices.find(*spliceOf(end));
    return splice ? Form::tr("splice %1").arg(shown(splice->tag)) : QString();
}

void addEnd(Form& form, const Conductor& conductor, WhichEnd which, const QString& name)
{
    const End& end = which == WhichEnd::From ? conductor.from : conductor.to;
    const ConductorEnd here{conductor.id, which};
    using Made = std::function<Result<Change>()>;
    std::vector<Form::Item> items{{endShown(form.job(), end), Made()}};
    if (end.state == EndState::Landed || end.state == EndState::Spare || end.state == EndState::Insulated)
        items.push_back({Form::tr("let it wait"), [&form, here] { return freeEnd(form.job(), here); }});
    if (end.state == EndState::Waiting) {
        items.push_back({Form::tr("cap it: spare"), [&form, here] { return capEnd(form.job(), here); }});
        items.push_back(
            {Form::tr("insulate it on purpose"), [&form, here] { return insulateEnd(form.job(), here); }});
    }
    form.choiceField(name, name, {items, 0});
}

void addWireFields(Form& form, const Conductor& wire)
{
    form.textField(
        "colour", Form::tr("Colour"), wire.colour,
        [&form, wire](Typed colour) { return setWire(form.job(), wire.id, colour, wire.gauge, wire.length); },
        Form::tr("letters: RD, BK, WH+BU"));
    form.textField(
        "gauge", Form::tr("Gauge"), wire.gauge,
        [&form, wire](Typed gauge) { return setWire(form.job(), wire.id, wire.colour, gauge, wire.length); },
        "18 AWG");
    form.textField("length", Form::tr("Length, m"), metresShown(wire.length).toStdString(),
                   [&form, wire](Typed typed) -> Result<Change> {
                       const Result<Metres> length = metresOf(typed, wire.tag);
                       return length.ok()
                                  ? setWire(form.job(), wire.id, wire.colour, wire.gauge, length.value())
                                  : Result<Change>(length.problem());
                   });
}

} // namespace

void fillForm(Form& form, const Cable& cable)
{
    const Job& job = form.job();
    const CableType* type = job.cableTypes.find(cable.type);
    form.heading(Form::tr("Cable %1 · %2").arg(shown(cable.tag), type ? shown(type->name) : QString()));
    if (type)
        form.words(shown(type->words));
    const auto edited = [&form, id = cable.id](Result<Change> (*edit)(const Job&, CableId, std::string)) {
        return [&form, id, edit](Typed words) { return edit(form.job(), id, words); };
    };
    form.textField("tag", Form::tr("Tag"), cable.tag, edited(renameCable));
    placeField(form, Form::tr("From"), cable.from, [&form, id = cable.id, to = cable.to](PlaceId from) {
        return setCableEnds(form.job(), id, from, to);
    });
    placeField(form, Form::tr("To"), cable.to, [&form, id = cable.id, from = cable.from](PlaceId to) {
        return setCableEnds(form.job(), id, from, to);
    });
    form.textField("length", Form::tr("Length, m"), metresShown(cable.length).toStdString(),
                   [&form, cable](Typed typed) -> Result<Change> {
                       const Result<Metres> length = metresOf(typed, cable.tag);
                       return length.ok() ? setCableLength(form.job(), cable.id, length.value())
                                          : Result<Change>(length.problem());
                   });
    form.textField("pull", Form::tr("Pulled with"), cable.pull, edited(setCablePull));
    form.textField("notes", Form::tr("Notes"), cable.notes, edited(setCableNotes));
    standingField(form, cable.standing);
    form.button("capUnused", Form::tr("Cap unused cores as spare"),
                [&form, id = cable.id] { form.make(nullptr, capUnused(form.job(), id)); });
    form.heading(Form::tr("Cores"));
    QStringList cores;
    for (const Conductor* core : coresInOrder(job, cable))
        cores << Form::tr("%1 %2: %3 – %4")
                     .arg(core->core)
                     .arg(shown(colourOf(job, *core)), endShown(job, core->from), endShown(job, core->to));
    form.words(cores.join('\n'));
}

void fillForm(Form& form, const Conductor& conductor)
{
    const Job& job = form.job();
    const std::string colour = colourOf(job, conductor);
    form.heading(Form::tr("Conductor %1").arg(shown(conductor.tag)));
    form.words(Form::tr("%1 · %2").arg(colour.empty() ? Form::tr("no colour said")
                                                      : shown(colour) + " " + shown(colourInWords(colour)),
                                       shown(gaugeOf(job, conductor))));
    if (const Cable* cable = job.cables.find(conductor.cable))
        form.words(Form::tr("Core %1 of cable %2").arg(conductor.core).arg(shown(cable->tag)));
    form.textField("tag", Form::tr("Tag"), conductor.tag,
                   [&form, id = conductor.id](Typed tag) { return renameConductor(form.job(), id, tag); });
    addEnd(form, conductor, WhichEnd::From, Form::tr("One end"));
    addEnd(form, conductor, WhichEnd::To, Form::tr("Other end"));
    if (conductor.make != ConductorMake::Core)
        addWireFields(form, conductor);
    standingField(form, conductor.standing);
}

void fillForm(Form& form, const Splice& splice)
{
    form.heading(Form::tr("Splice %1").arg(shown(splice.tag)));
    form.textField("tag", Form::tr("Tag"), splice.tag,
                   [&form, id = splice.id](Typed tag) { return renameSplice(form.job(), id, tag); });
    form.textField("connector", Form::tr("Connector"), splice.connector, [&form, splice](Typed connector) {
        return setSpliceConnector(form.job(), splice.id, connector, splice.capacity);
    });
    placeField(form, Form::tr("Place"), splice.place,
               [&form](PlaceId place) { return setPlace(form.job(), {form.subject}, place); });
}

void fillForm(Form& form, const Note& note)
{
    form.heading(Form::tr("Note"));
    form.textField("note", Form::tr("Words"), note.words, [&form, id = note.id](std::string words) {
        return rewordNote(form.job(), id, std::move(words));
    });
}

} // namespace doorloom
