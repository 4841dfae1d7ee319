#pragma once

#include "panels/form.h"

// Fields that several forms have.
namespace doorloom {

// A place of the job, or none.
void placeField(Form& form, const QString& label, PlaceId place,
                std::function<Result<Change>(PlaceId)> changed);
// Of the form's subject.
void standingField(Form& form, Standing standing);

} // namespace doorloom
