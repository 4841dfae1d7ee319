#include "dialogs/connectionlistdialog.h"

#include "dialogs/listedrowsmodel.h"
#include "openjob/shown.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include <utility>

namespace doorloom {

ConnectionListDialog::ConnectionListDialog(const Job& job, std::vector<CellRow> table, QWidget* parent)
    : QDialog(parent), job_(job), table_(std::move(table)), layout_(guessedLayout(table_)),
      head_(new QCheckBox(tr("The &first row names the columns"), this)),
      onlyLeft_(new QCheckBox(tr("Show &only the rows that are left"), this)),
      rows_(new ListedRowsModel(this)), summary_(new QLabel(this))
{
    setWindowTitle(tr("Import a connection list"));
    head_->setObjectName("listHead");
    head_->setChecked(layout_.hasHead);
    onlyLeft_->setObjectName("listOnlyLeft");
    summary_->setObjectName("listSummary");
    summary_->setWordWrap(true);
    auto* words = new QLabel(tr("Each row lands a conductor between devices of this job. Say which column of "
                                "the list is what; nothing is landed before the rows are taken."),
                             this);
    words->setWordWrap(true);

    auto* layout = new QVBoxLayout(this);
    layout->addWidget(words);
    layout->addWidget(head_);
    addChoosers(layout);
    layout->addWidget(onlyLeft_);
    addRows(layout);
    layout->addWidget(summary_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(QString(), QDialogButtonBox::AcceptRole);
    take_->setObjectName("listTake");
    layout->addWidget(buttons);
    resize(fontMetrics().averageCharWidth() * 130, fontMetrics().lineSpacing() * 30);

    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(head_, &QCheckBox::toggled, this, [this] {
        nameColumns();
        read();
    });
    connect(onlyLeft_, &QCheckBox::toggled, this, &ConnectionListDialog::read);
    read();
}

void ConnectionListDialog::addChoosers(QVBoxLayout* layout)
{
    auto* grid = new QGridLayout;
    layout->addLayout(grid);
    for (std::size_t column = 0; column < listColumnCount; ++column) {
        auto* choose = new QComboBox(this);
        const QString words = shown(wordsOf(static_cast<ListColumn>(column)));
        choose->setObjectName(QStringLiteral("listColumn%1").arg(column));
        choose->setAccessibleName(tr("Column of: %1").arg(words));
        choose->addItem(tr("not in this list"));
        for (std::size_t each = 0; each < widthOf(table_); ++each)
            choose->addItem(QString());
        choose->setCurrentIndex(layout_.columns[column] ? static_cast<int>(*layout_.columns[column]) + 1 : 0);
        grid->addWidget(new QLabel(words, this), 0, static_cast<int>(column));
        grid->addWidget(choose, 1, static_cast<int>(column));
        columns_[column] = choose;
        connect(choose, &QComboBox::currentIndexChanged, this, &ConnectionListDialog::read);
    }
    nameColumns();
}

void ConnectionListDialog::addRows(QVBoxLayout* layout)
{
    auto* view = new QTableView(this);
    view->setObjectName("listRows");
    view->setAccessibleName(tr("Rows of the list"));
    view->setModel(rows_);
    view->setSelectionBehavior(QAbstractItemView::SelectRows);
    view->verticalHeader()->hide();
    view->verticalHeader()->setDefaultSectionSize(2 * fontMetrics().lineSpacing() + 4); // reasons are long
    QHeaderView* heads = view->horizontalHeader();
    heads->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    heads->setStretchLastSection(true);
    for (int column = 0; column + 1 < rows_->columnCount(); ++column) {
        const QString words = rows_->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        heads->resizeSection(column, fontMetrics().horizontalAdvance(words + "WW"));
    }
    layout->addWidget(view, 1);
}

// "2: Borne", or by what stands in it first.
void ConnectionListDialog::nameColumns()
{
    for (std::size_t each = 0; each < widthOf(table_); ++each) {
        const std::vector<std::string>& first = table_.front().cells;
        const QString said = each < first.size() ? shown(first[each]).simplified().left(24) : QString();
        const QString words = head_->isChecked() ? tr("%1: %2").arg(each + 1).arg(said)
                                                 : tr("%1 (%2 …)").arg(each + 1).arg(said);
        for (QComboBox* choose : columns_)
            choose->setItemText(static_cast<int>(each) + 1, words);
    }
}

void ConnectionListDialog::read()
{
    layout_.hasHead = head_->isChecked();
    for (std::size_t column = 0; column < listColumnCount; ++column) {
        const int chosen = columns_[column]->currentIndex();
        layout_.columns[column] =
            chosen > 0 ? std::optional(static_cast<std::size_t>(chosen - 1)) : std::nullopt;
    }
    list_ = connectionList(job_, table_, layout_);
    rows_->show(table_, layout_, list_,
                onlyLeft_->isChecked() ? ListedRowsModel::Shown::OnlyLeft : ListedRowsModel::Shown::All);
    summary_->setText(shown(summaryOf(list_)));
    take_->setEnabled(!list_.change.steps.empty());
    take_->setText(tr("&Take %n row(s)", nullptr, static_cast<int>(countOf(list_, RowFate::Taken))));
}

} // namespace doorloom
