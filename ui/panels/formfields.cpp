#include "panels/formfields.h"

#include "edit/details.h"
#include "model/modelwords.h"
#include "openjob/shown.h"

namespace doorloom {

void placeField(Form& form, const QString& label, PlaceId place,
                std::function<Result<Change>(PlaceId)> changed)
{
    std::vector<Form::Item> items{{Form::tr("not said yet"), [changed] { return changed({}); }}};
    int current = 0;
    for (const Place& each : form.job().places) {
        if (each.id == place)
            current = static_cast<int>(items.size());
        items.push_back(
            {shown(each.tag + " " + each.words).trimmed(), [changed, id = each.id] { return changed(id); }});
    }
    form.choiceField(label, label, items, current);
}

void standingField(Form& form, Standing standing)
{
    std::vector<Form::Item> items;
    for (const Standing each :
         {Standing::New, Standing::Existing, Standing::Moved, Standing::ByOthers, Standing::LeaveAlone})
        items.push_back({shown(wordsOf(each)), [&form, each] {
                             return Result<Change>(setStanding(form.job(), {form.subject}, each));
                         }});
    form.choiceField("standing", Form::tr("Standing"), items, static_cast<int>(standing));
}

} // namespace doorloom
