#include "dialogs/stampdialog.h"

#include "openjob/shown.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QTableWidget>

namespace doorloom {
namespace {

QString joinedTags(const StampedDoor& door)
{
    QStringList tags;
    for (const std::string& tag : door.deviceTags)
        tags << shown(tag);
    return tags.join(", ");
}

} // namespace

StampDialog::StampDialog(const Job& job, QWidget* parent)
    : QDialog(parent), job_(job), which_(new QComboBox(this)), tags_(new QComboBox(this)),
      count_(new QSpinBox(this)), first_(new QLineEdit(this)), doors_(new QTableWidget(0, 2, this)),
      words_(new QLabel(this))
{
    setWindowTitle(tr("Stamp doors of a typical"));
    which_->setObjectName("stampTypicalOf");
    count_->setObjectName("stampCount");
    first_->setObjectName("stampFirst");
    tags_->setObjectName("stampTags");
    doors_->setObjectName("stampDoors");
    words_->setObjectName("stampWords");
    for (const Typical& each : job_.typicals) {
        which_->addItem(shown(each.name));
        typicals_.push_back(each.id);
    }
    count_->setRange(1, mostStampsAtOnce);
    first_->setPlaceholderText(tr("the next after the typical's"));
    tags_->setEditable(true);
    tags_->addItems({QString(), "{door}-{tag}", "{tag}-{door}"});
    tags_->setToolTip(tr("Left empty, each tag is counted on; or a pattern with {door} and {tag}."));
    tags_->lineEdit()->setPlaceholderText(tr("counted on: ES2, ES3 …"));
    doors_->setHorizontalHeaderLabels({tr("Door"), tr("Devices")});
    doors_->setAccessibleName(tr("The doors and their devices' tags"));
    doors_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    doors_->setTabKeyNavigation(false);
    doors_->verticalHeader()->hide();
    doors_->horizontalHeader()->setStretchLastSection(true);
    doors_->setMinimumWidth(fontMetrics().averageCharWidth() * 80);
    words_->setWordWrap(true);

    auto* fields = new QFormLayout(this);
    fields->addRow(tr("&Typical"), which_);
    fields->addRow(tr("&How many doors"), count_);
    fields->addRow(tr("Tag of the &first door"), first_);
    fields->addRow(tr("T&ags of the rest"), tags_);
    fields->addRow(doors_);
    fields->addRow(words_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    ok_ = buttons->button(QDialogButtonBox::Ok);
    ok_->setText(tr("&Stamp"));
    fields->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(which_, &QComboBox::currentIndexChanged, this, &StampDialog::preview);
    connect(tags_, &QComboBox::currentTextChanged, this, &StampDialog::preview);
    connect(count_, &QSpinBox::valueChanged, this, &StampDialog::preview);
    connect(first_, &QLineEdit::textChanged, this, &StampDialog::preview);
    preview();
    count_->setFocus();
    count_->selectAll();
}

void StampDialog::preview()
{
    Numbers numbers(job_);
    const Result<StampedDoors> stamped = stampTypical(job_, numbers, typical(), count(), numbering());
    ok_->setEnabled(stamped.ok());
    doors_->setRowCount(stamped.ok() ? static_cast<int>(stamped.value().doors.size()) : 0);
    if (!stamped.ok())
        return words_->setText(shown(stamped.problem()));
    int row = 0;
    for (const StampedDoor& door : stamped.value().doors) {
        doors_->setItem(row, 0, new QTableWidgetItem(shown(door.tag)));
        doors_->setItem(row++, 1, new QTableWidgetItem(joinedTags(door)));
    }
    words_->setText(stamped.value().leftWaiting.empty()
                        ? tr("Every conductor is landed as the typical's.")
                        : tr("%n conductor end(s) will wait for a landing at what the doors share.", nullptr,
                             static_cast<int>(stamped.value().leftWaiting.size())));
}

TypicalId StampDialog::typical() const
{
    const int index = which_->currentIndex();
    return index < 0 ? TypicalId{} : typicals_[static_cast<std::size_t>(index)];
}

int StampDialog::count() const
{
    return count_->value();
}

Numbering StampDialog::numbering() const
{
    return {first_->text().trimmed().toStdString(), tags_->currentText().trimmed().toStdString()};
}

} // namespace doorloom
