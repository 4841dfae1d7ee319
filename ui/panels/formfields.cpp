#include "panels/formfields.h"

#include "edit/details.h"
#include "model/modelwords.h"
#include "openjob/shown.h"

namespace doorloom {

void placeField(Form& form, const QString& label, PlaceId place,
                std::function<Result<Change>(PlaceId)> changed)
{
    const auto wordsOf = [](const Place& each) { return shown(each.tag + " " + each.words).trimmed(); };
    const QString notSaid = Form::tr("not said yet");
    const Place* now = form.job().places.find(place);
    form.longChoiceField(
        label, label, now ? wordsOf(*now) : notSaid, [&form, place, notSaid, changed, wordsOf] {
            Form::Choices choices{{{notSaid, [changed] { return changed({}); }}}, 0};
            for (const Place& each : form.job().places) {
                if (each.id == place)
                    choices.current = static_cast<int>(choices.items.size());
                choices.items.push_back({wordsOf(each), [changed, id = each.id] { return changed(id); }});
            }
            return choices;
        });
}

void standingField(Form& form, Standing standing)
{
    std::vector<Form::Item> items;
    for (const Standing each :
         {Standing::New, Standing::Existing, Standing::Moved, Standing::ByOthers, Standing::LeaveAlone})
        items.push_back({shown(wordsOf(each)), [&form, each] {
                             return Result<Change>(setStanding(form.job(), {form.subject}, each));
                         }});
    form.choiceField("standing", Form::tr("Standing"), {items, static_cast<int>(standing)});
}

} // namespace doorloom
