#include "panels/lockspanel.h"

#include "judge/findingtext.h"
#include "model/modelwords.h"
#include "openjob/shown.h"
#include "papers/lockwords.h"

#include <QComboBox>
#include <QHeaderView>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace doorloom {
namespace {

constexpr int lockRole = Qt::UserRole;

// Marked by a sign and heavy letters where the promise is broken: colour alone says nothing.
void addRow(QTableWidget& table, const Job& job, const Situation& situation, DeviceId lock, const LockInSituation& states)
{
    const bool isPromised = states.promised != Promised::Nothing;
    const QString cells[] = {shown(situationWords(job, situation)), shown(tagOf(job, lock)), shown(wordsOf(states.does)),
                             isPromised ? shown(wordsOf(states.promised)) : LocksPanel::tr("–"),
                             !isPromised ? LocksPanel::tr("–") : states.keepsPromise() ? LocksPanel::tr("kept") : LocksPanel::tr("✗ NOT KEPT")};
    const int row = table.rowCount();
    table.insertRow(row);
    for (int column = 0; column < table.columnCount(); ++column) {
        auto* item = new QTableWidgetItem(cells[column]); // the table's
        item->setData(lockRole, lock.number);
        item->setFlags(Qt::ItemIsSelectable | Qt::ItemIsEnabled);
        QFont font = table.font();
        font.setBold(!states.keepsPromise());
        item->setFont(font);
        table.setItem(row, column, item);
    }
}

bool isOf(const Opening& opening, std::uint32_t row)
{
    const auto isIn = [&](const std::vector<DeviceId>& devices) { return std::find(devices.begin(), devices.end(), DeviceId{row}) != devices.end(); };
    return opening.id.number == row || isIn(opening.locks) || isIn(opening.doorOperators);
}

} // namespace

LocksPanel::LocksPanel(OpenJob& open, Selection& selection, QWidget* parent)
    : QWidget(parent), open_(open), selection_(selection), openings_(new QComboBox(this)), table_(new QTableWidget(0, 5, this))
{
    openings_->setObjectName("locksOpening");
    openings_->setAccessibleName(tr("Opening"));
    table_->setObjectName("locksTable");
    table_->setAccessibleName(tr("Locks in situations"));
    table_->setHorizontalHeaderLabels({tr("Situation"), tr("Lock"), tr("As wired"), tr("Promised"), tr("Kept")});
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setShowGrid(false);
    table_->setAlternatingRowColors(true);
    table_->setTabKeyNavigation(false);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->horizontalHeader()->setHighlightSections(false);
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    const int em = fontMetrics().averageCharWidth();
    const int widths[] = {44, 10, 48, 22, 14};
    for (int column = 0; column < table_->columnCount(); ++column)
        table_->setColumnWidth(column, widths[column] * em);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(0);
    layout->addWidget(openings_);
    layout->addWidget(table_);

    connect(&open_, &OpenJob::judgedChanged, this, &LocksPanel::showOpenings);
    connect(&selection_, &Selection::changed, this, &LocksPanel::followSelection);
    connect(openings_, &QComboBox::currentIndexChanged, this, &LocksPanel::showLocks);
    const auto jumpToLock = [this](int row) {
        const std::vector<std::uint32_t> lock{table_->item(row, 0)->data(lockRole).toUInt()};
        selection_.choose(lock);
        emit jump(lock);
    };
    connect(table_, &QTableWidget::cellClicked, this, jumpToLock);
    connect(table_, &QTableWidget::cellActivated, this, jumpToLock); // Enter
}

void LocksPanel::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    showOpenings();
}

// While the job is being looked at, what was said last stays.
void LocksPanel::showOpenings()
{
    if (!isVisible() || !open_.judged())
        return;
    const QVariant now = openings_->currentData();
    const QSignalBlocker quiet(openings_);
    openings_->clear();
    for (const Opening& opening : open_.job().openings)
        if (!opening.locks.empty())
            openings_->addItem(shown(opening.tag + (opening.words.empty() ? "" : ": " + opening.words)), opening.id.number);
    openings_->setEnabled(openings_->count() > 0);
    if (openings_->count() == 0)
        openings_->addItem(tr("No opening names a lock"));
    openings_->setCurrentIndex(std::max(0, openings_->findData(now)));
    followSelection();
    showLocks();
}

void LocksPanel::showLocks()
{
    const int scrolled = table_->rowCount() > 0 ? table_->currentRow() : -1;
    table_->setRowCount(0);
    const Judged* judged = open_.judged();
    if (!isVisible() || !judged || !judged->locks || !openings_->isEnabled())
        return;
    const LockStates states = judged->locks->of(OpeningId{openings_->currentData().toUInt()});
    for (const SituationLine& line : states.lines)
        for (std::size_t i = 0; i < line.locks.size(); ++i)
            addRow(*table_, judged->locks->job(), line.situation, states.locks[i], line.locks[i]);
    if (scrolled >= 0 && scrolled < table_->rowCount())
        table_->setCurrentCell(scrolled, 0);
}

void LocksPanel::followSelection()
{
    if (!isVisible() || selection_.rows().size() != 1)
        return;
    for (const Opening& opening : open_.job().openings)
        if (isOf(opening, selection_.rows().front()))
            if (const int index = openings_->findData(opening.id.number); index >= 0)
                openings_->setCurrentIndex(index);
}

} // namespace doorloom
