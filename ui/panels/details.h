#pragma once

#include "openjob/openjob.h"
#include "openjob/selection.h"

#include <QScrollArea>

#include <cstdint>
#include <vector>

namespace doorloom {

class Form;

// What there is to know and to set about the row that is chosen.
class Details : public QScrollArea {
    Q_OBJECT
public:
    Details(OpenJob& open, Selection& selection, QWidget* parent = nullptr);

    void startTyping(); // the first field has the keyboard

signals:
    void titleBlockAsked();
    void openingAsked(); // a new one

private:
    void jobChanged(const Touched& touched);
    bool isAsShown() const; // the form made anew would say what it says now
    void showChosen();
    Form* formOf(const std::vector<std::uint32_t>& rows);
    Form* formOfJob();
    void makeSoon(); // the form anew, once the field that asked for it has finished

    OpenJob& open_;
    Selection& selection_;
    bool waiting_ = false;
    Job shown_;                       // as it was when the form was made
    std::vector<std::uint32_t> rows_; // that the form is about
};

// What each sort of row shows; the row is there.
void fillForm(Form& form, const Device& device);
void fillForm(Form& form, const Cable& cable);
void fillForm(Form& form, const Conductor& conductor);
void fillForm(Form& form, const Splice& splice);
void fillForm(Form& form, const Note& note);
void fillForm(Form& form, const Opening& opening);

} // namespace doorloom
