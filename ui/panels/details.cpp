#include "panels/details.h"

#include "edit/undowords.h"
#include "openjob/shown.h"
#include "panels/form.h"

#include <QScrollBar>
#include <QTimer>

#include <algorithm>
#include <utility>

namespace doorloom {
namespace {

template <class Row> bool fillIfThere(Form& form, const Job& job, std::uint32_t number)
{
    const Row* row = tableOf<Row>(job).find({number});
    if (row)
        fillForm(form, *row);
    return row;
}

} // namespace

Details::Details(OpenJob& open, Selection& selection, QWidget* parent)
    : QScrollArea(parent), open_(open), selection_(selection)
{
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setObjectName("detailsScroll");
    setAccessibleName(tr("Details"));
    connect(&selection_, &Selection::changed, this, &Details::makeSoon);
    connect(&open_, &OpenJob::jobChanged, this, &Details::jobChanged);
    showChosen();
}

void Details::startTyping()
{
    if (widget())
        widget()->setFocus(Qt::TabFocusReason);
    focusNextChild();
}

// What a row shows hangs on rows beside it too: operators, places, ends.
void Details::jobChanged(const Touched& touched)
{
    const auto isChosen = [&](std::uint32_t number) { return selection_.holds(number); };
    const bool reaches = touched.everything || touched.wiring || selection_.rows().empty() ||
                         std::any_of(touched.rows.begin(), touched.rows.end(), isChosen);
    if (reaches && (touched.everything || !isAsShown()))
        makeSoon();
    else if (auto* form = qobject_cast<Form*>(widget()))
        form->forgetRefusals();
}

// Cost: tables that no change has reached are equal at a glance.
bool Details::isAsShown() const
{
    const Job& now = open_.job();
    if (selection_.rows().empty())
        return shown_.info == now.info && shown_.openings == now.openings &&
               shown_.devices.size() == now.devices.size() && shown_.cables.size() == now.cables.size() &&
               shown_.conductors.size() == now.conductors.size();
    const bool isDevice =
        selection_.rows().size() == 1 && now.devices.find({selection_.rows().front()}) != nullptr;
    return isDevice && shown_.devices == now.devices && shown_.operators == now.operators &&
           shown_.places == now.places;
}

void Details::makeSoon()
{
    if (std::exchange(waiting_, true))
        return;
    QTimer::singleShot(0, this, [this] {
        waiting_ = false;
        showChosen();
    });
}

void Details::showChosen()
{
    QWidget* focused = widget() && widget()->isAncestorOf(focusWidget()) ? focusWidget() : nullptr;
    const QString name = focused ? focused->objectName() : QString();
    const bool isAgain = std::exchange(rows_, selection_.rows()) == selection_.rows();
    const int scrolled = isAgain ? verticalScrollBar()->value() : 0;
    shown_ = open_.job();
    Form* form = selection_.rows().empty() ? formOfJob() : formOf(selection_.rows());
    setWidget(form); // the older one goes
    setMinimumWidth(form->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width());
    verticalScrollBar()->setValue(scrolled);
    if (QWidget* again = name.isEmpty() ? nullptr : form->findChild<QWidget*>(name))
        again->setFocus();
}

Form* Details::formOfJob()
{
    auto* form = new Form(open_, this);
    const Job& job = open_.job();
    const JobInfo info = job.info.empty() ? JobInfo{} : *job.info.begin();
    form->heading(info.title.empty() ? tr("Untitled job") : shown(info.title));
    form->words(tr("Devices %1 · cables %2 · conductors %3 · openings %4")
                    .arg(job.devices.size())
                    .arg(job.cables.size())
                    .arg(job.conductors.size())
                    .arg(job.openings.size()));
    form->button("titleBlock", tr("Title block …"), [this] { emit titleBlockAsked(); });
    QStringList lines;
    std::vector<std::uint32_t> numbers;
    for (const Opening& opening : job.openings) {
        lines << tr("%1  %2").arg(shown(opening.tag), shown(opening.words));
        numbers.push_back(opening.id.number);
    }
    if (!lines.isEmpty())
        form->list("openings", tr("Openings"), lines, [this, numbers](int line) {
            selection_.choose({numbers[static_cast<std::size_t>(line)]});
        });
    form->button("addOpening", tr("Add an opening"), [this] { emit openingAsked(); });
    form->words(tr("Choose a device, cable or conductor to see what it is and to set it."));
    return form;
}

Form* Details::formOf(const std::vector<std::uint32_t>& rows)
{
    auto* form = new Form(open_, this);
    const Job& job = open_.job();
    if (rows.size() > 1) {
        form->heading(tr("%n chosen", nullptr, static_cast<int>(rows.size())));
        form->words(shown(namesOfRows(job, rows)));
        return form;
    }
    const std::uint32_t number = rows.front();
    form->subject = number;
    [[maybe_unused]] const bool isThere =
        fillIfThere<Device>(*form, job, number) || fillIfThere<Cable>(*form, job, number) ||
        fillIfThere<Conductor>(*form, job, number) || fillIfThere<Splice>(*form, job, number) ||
        fillIfThere<Note>(*form, job, number) || fillIfThere<Opening>(*form, job, number);
    return form;
}

} // namespace doorloom
