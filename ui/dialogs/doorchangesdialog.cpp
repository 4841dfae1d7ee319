#include "dialogs/doorchangesdialog.h"

#include "openjob/shown.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QStyledItemDelegate>
#include <QTreeWidget>

namespace doorloom {
namespace {

struct SortWords {
    DoorLineSort sort;
    const char *one, *counted;
};

constexpr SortWords sorts[] = {
    {DoorLineSort::Becomes, QT_TRANSLATE_NOOP("doorloom::DoorChangesDialog", "changes"),
     QT_TRANSLATE_NOOP("doorloom::DoorChangesDialog", "changes: %1")},
    {DoorLineSort::ByHand, QT_TRANSLATE_NOOP("doorloom::DoorChangesDialog", "land by hand"),
     QT_TRANSLATE_NOOP("doorloom::DoorChangesDialog", "to land by hand: %1")},
    {DoorLineSort::Conflict, QT_TRANSLATE_NOOP("doorloom::DoorChangesDialog", "conflict"),
     QT_TRANSLATE_NOOP("doorloom::DoorChangesDialog", "conflicts: %1")},
    {DoorLineSort::Own, QT_TRANSLATE_NOOP("doorloom::DoorChangesDialog", "its own"),
     QT_TRANSLATE_NOOP("doorloom::DoorChangesDialog", "its own: %1")},
};

QString nameOf(DoorLineSort sort)
{
    for (const SortWords& words : sorts)
        if (words.sort == sort)
            return DoorChangesDialog::tr(words.one);
    return {};
}

QString summed(const DoorChange& door)
{
    QStringList parts;
    for (const SortWords& words : sorts)
        if (const int count = door.count(words.sort); count > 0)
            parts << DoorChangesDialog::tr(words.counted).arg(count);
    return parts.isEmpty() ? DoorChangesDialog::tr("as the typical is") : parts.join(", ");
}

// As high as a line wants to be in its column: a tree would ask for one that is never wrapped.
class WrappedLines : public QStyledItemDelegate {
public:
    WrappedLines(const QTreeWidget& tree, QObject* parent) : QStyledItemDelegate(parent), tree_(tree) {}

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        QStyleOptionViewItem inColumn = option;
        inColumn.rect = {0, 0, tree_.columnWidth(index.column()), tree_.height()};
        return QStyledItemDelegate::sizeHint(inColumn, index);
    }

private:
    const QTreeWidget& tree_;
};

} // namespace

DoorChangesDialog::DoorChangesDialog(const Job& job, QWidget* parent)
    : QDialog(parent), job_(job), which_(new QComboBox(this)), doors_(new QTreeWidget(this)),
      words_(new QLabel(this))
{
    setWindowTitle(tr("What changes in each door"));
    which_->setObjectName("changesOf");
    doors_->setObjectName("doorChanges");
    words_->setObjectName("doorChangesWords");
    for (const Typical& each : job_.typicals) {
        which_->addItem(shown(each.name));
        typicals_.push_back(each.id);
    }
    doors_->setHeaderLabels({tr("Door"), tr("What")});
    doors_->setAccessibleName(tr("Doors of the typical, and what changes in each"));
    doors_->setMinimumSize(fontMetrics().averageCharWidth() * 110, fontMetrics().height() * 22);
    doors_->setWordWrap(true); // conflicts are long
    doors_->setItemDelegateForColumn(1, new WrappedLines(*doors_, this));
    connect(doors_->header(), &QHeaderView::sectionResized, doors_, [this] { doors_->doItemsLayout(); });
    words_->setWordWrap(true);

    auto* fields = new QFormLayout(this);
    fields->addRow(tr("&Typical"), which_);
    fields->addRow(doors_);
    fields->addRow(words_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    ok_ = buttons->button(QDialogButtonBox::Ok);
    ok_->setText(tr("&Change the ticked doors"));
    fields->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(which_, &QComboBox::currentIndexChanged, this, &DoorChangesDialog::showTypical);
    connect(doors_, &QTreeWidget::itemChanged, this, &DoorChangesDialog::showWhatIsChosen);
    showTypical();
    doors_->setFocus();
}

void DoorChangesDialog::showTypical()
{
    const QSignalBlocker quiet(doors_);
    doors_->clear();
    changes_.reset();
    Numbers numbers(job_);
    const Result<DoorChanges> found = changesForStamps(job_, numbers, typical());
    ok_->setEnabled(false);
    if (!found.ok())
        return words_->setText(shown(found.problem()));
    changes_ = found.value();
    for (const DoorChange& door : changes_->doors) {
        auto* item = new QTreeWidgetItem(doors_, {shown(door.tag), summed(door)});
        item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
        item->setCheckState(0, door.doesNothing() ? Qt::Unchecked : Qt::Checked);
        for (const DoorLine& line : door.lines)
            new QTreeWidgetItem(item, {nameOf(line.sort), shown(line.words)});
        item->setExpanded(door.count(DoorLineSort::Conflict) > 0);
    }
    if (doors_->topLevelItemCount() > 0) {
        doors_->topLevelItem(0)->setExpanded(true);
        doors_->setCurrentItem(doors_->topLevelItem(0));
    }
    doors_->resizeColumnToContents(0);
    showWhatIsChosen();
}

void DoorChangesDialog::showWhatIsChosen()
{
    ok_->setEnabled(!change().steps.empty());
    int conflicts = 0;
    for (const DoorChange& door : changes_->doors)
        conflicts += door.count(DoorLineSort::Conflict);
    words_->setText(tr("Doors ticked: %1 of %2. Conflicts in all: %3; in a conflict the door's own stays. A door "
                       "that is not ticked is asked about again.")
                        .arg(chosenCount())
                        .arg(changes_->doors.size())
                        .arg(conflicts));
}

std::vector<StampId> DoorChangesDialog::chosen() const
{
    std::vector<StampId> stamps;
    for (int row = 0; row < doors_->topLevelItemCount(); ++row)
        if (doors_->topLevelItem(row)->checkState(0) == Qt::Checked)
            stamps.push_back(changes_->doors[static_cast<std::size_t>(row)].stamp);
    return stamps;
}

TypicalId DoorChangesDialog::typical() const
{
    const int index = which_->currentIndex();
    return index < 0 ? TypicalId{} : typicals_[static_cast<std::size_t>(index)];
}

Change DoorChangesDialog::change() const
{
    return changes_ ? chosenDoors(job_, *changes_, chosen()) : Change{};
}

std::size_t DoorChangesDialog::chosenCount() const
{
    return chosen().size();
}

} // namespace doorloom
