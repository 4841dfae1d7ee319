#include "dialogs/marktypicaldialog.h"

#include "edit/doorrows.h"
#include "edit/duplicatedoor.h"
#include "openjob/shown.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>

#include <algorithm>

namespace doorloom {

MarkTypicalDialog::MarkTypicalDialog(const Job& job, const std::vector<std::uint32_t>& chosen,
                                     QWidget* parent)
    : QDialog(parent), job_(job), chosen_(chosen), which_(new QComboBox(this)), name_(new QLineEdit(this)),
      own_(new QLabel(this)), also_(new QListWidget(this))
{
    setWindowTitle(tr("Mark a door as a typical"));
    which_->setObjectName("typicalDoor");
    name_->setObjectName("typicalName");
    also_->setObjectName("typicalAlso");
    also_->setAccessibleName(tr("Drawn again with each door too"));
    own_->setWordWrap(true);
    int meant = 0;
    for (const Opening& each : job_.openings) {
        which_->addItem(tr("%1 %2").arg(shown(each.tag), shown(each.words)).trimmed());
        openings_.push_back(each.id);
        const std::vector<DeviceId> own = devicesOf(job_, each.id);
        if (std::ranges::any_of(
                own, [&](DeviceId device) { return std::ranges::count(chosen_, device.number) > 0; }))
            meant = which_->count() - 1;
    }
    which_->setCurrentIndex(meant);

    auto* fields = new QFormLayout(this);
    fields->addRow(tr("Which &opening"), which_);
    fields->addRow(tr("&Name"), name_);
    fields->addRow(tr("Its own"), own_);
    fields->addRow(tr("Drawn again with\neach door &too"), also_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    fields->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(which_, &QComboBox::currentIndexChanged, this, &MarkTypicalDialog::showDoor);
    showDoor();
}

void MarkTypicalDialog::showDoor()
{
    const Opening* row = job_.openings.find(opening());
    if (!row)
        return;
    name_->setText(shown(row->words.empty() ? row->tag : row->words));
    const DoorRows door = rowsOfDoor(job_, *row);
    QStringList own;
    for (std::uint32_t joint : door.joints)
        if (job_.devices.find({joint}))
            own << shown(tagOf(job_, {joint}));
    own_->setText(own.join(", "));
    near_ = sharedAround(job_, door);
    for (std::uint32_t chosen : chosen_)
        if (job_.devices.find({chosen}) && door.joints.count(chosen) == 0 &&
            std::ranges::count(near_, DeviceId{chosen}) == 0)
            near_.push_back({chosen});
    also_->clear();
    for (DeviceId device : near_) {
        const Device& each = *job_.devices.find(device);
        auto* item =
            new QListWidgetItem(tr("%1 %2").arg(shown(each.tag), shown(each.words)).trimmed(), also_);
        item->setCheckState(std::ranges::count(chosen_, device.number) > 0 ? Qt::Checked : Qt::Unchecked);
    }
    if (also_->count() > 0)
        also_->setCurrentRow(0);
}

OpeningId MarkTypicalDialog::opening() const
{
    const int index = which_->currentIndex();
    return index < 0 ? OpeningId{} : openings_[static_cast<std::size_t>(index)];
}

std::string MarkTypicalDialog::name() const
{
    return name_->text().trimmed().toStdString();
}

std::vector<DeviceId> MarkTypicalDialog::also() const
{
    std::vector<DeviceId> devices;
    for (int row = 0; row < also_->count(); ++row)
        if (also_->item(row)->checkState() == Qt::Checked)
            devices.push_back(near_[static_cast<std::size_t>(row)]);
    return devices;
}

} // namespace doorloom
