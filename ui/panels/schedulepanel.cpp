#include "panels/schedulepanel.h"

#include "panels/schedulemodel.h"

#include <QHeaderView>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <QTableView>
#include <QVBoxLayout>

namespace doorloom {
namespace {

// Draws a heading across all columns, each cell its piece of it. Spans of the table would do the same, but
// they have to be set row by row whenever the schedule is another: thousands of them.
class LinePainter : public QStyledItemDelegate {
public:
    LinePainter(QTableView* table, const ScheduleModel& model)
        : QStyledItemDelegate(table), table_(*table), model_(model)
    {
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& cell, const QModelIndex& index) const override
    {
        if (!model_.isHeading(index.row()))
            return QStyledItemDelegate::paint(painter, cell, index);
        QStyleOptionViewItem line = cell;
        line.rect.setLeft(table_.columnViewportPosition(0));
        line.rect.setWidth(table_.horizontalHeader()->length());
        painter->save();
        painter->setClipRect(cell.rect);
        QStyledItemDelegate::paint(painter, line, index.siblingAtColumn(0));
        painter->restore();
    }

private:
    const QTableView& table_;
    const ScheduleModel& model_;
};

} // namespace

SchedulePanel::SchedulePanel(OpenJob& open, Selection& selection, QWidget* parent)
    : QWidget(parent), open_(open), selection_(selection), model_(new ScheduleModel(this)),
      table_(new QTableView(this))
{
    table_->setObjectName("scheduleTable");
    table_->setAccessibleName(tr("Terminal schedule"));
    table_->setModel(model_);
    table_->setItemDelegate(new LinePainter(table_, *model_)); // the table's
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setShowGrid(false);
    table_->setAlternatingRowColors(true);
    table_->setTabKeyNavigation(false);
    table_->setWordWrap(false);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->horizontalHeader()->setHighlightSections(false); // bold words would not fit
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    const int em = fontMetrics().averageCharWidth();
    const int widths[] = {14, 14, 20, 14, 10, 10, 14, 16, 28, 28};
    for (int column = 0; column < model_->columnCount(); ++column)
        table_->setColumnWidth(column, widths[column] * em);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->addWidget(table_);

    connect(&open_, &OpenJob::judgedChanged, this, &SchedulePanel::showJudged);
    connect(&selection_, &Selection::changed, this, &SchedulePanel::followSelection);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &SchedulePanel::chooseRow);
    showJudged();
}

void SchedulePanel::showJudged()
{
    following_ = true;
    if (model_->rowCount() > 0)
        scrolled_ = table_->verticalScrollBar()->value();
    model_->show(open_.judged() ? &open_.judged()->schedule : nullptr);
    table_->verticalScrollBar()->setValue(scrolled_);
    following_ = false;
    followSelection();
}

void SchedulePanel::chooseRow()
{
    if (following_ || !table_->currentIndex().isValid())
        return;
    const std::vector<std::uint32_t> rows = model_->rowsAt(table_->currentIndex().row());
    if (rows.empty())
        return;
    following_ = true; // the table is there already
    selection_.choose(rows);
    following_ = false;
    emit jump(rows);
}

void SchedulePanel::followSelection()
{
    if (following_ || selection_.rows().size() != 1)
        return;
    const std::optional<int> line = model_->lineOf(selection_.rows().front());
    if (!line)
        return;
    following_ = true;
    table_->setCurrentIndex(model_->index(*line, 0));
    table_->scrollTo(model_->index(*line, 0));
    following_ = false;
}

} // namespace doorloom
