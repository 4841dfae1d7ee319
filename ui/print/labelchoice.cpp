#include "print/labelchoice.h"

#include "openjob/shown.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QSettings>
#include <QSpinBox>

#include <algorithm>

namespace doorloom {
namespace {

constexpr auto sheetKey = "labels/sheet", startKey = "labels/start", orderKey = "labels/order", onlyKey = "labels/only", qrKey = "labels/qr",
               leftKey = "labels/measuredLeft", topKey = "labels/measuredTop";

QDoubleSpinBox* measureBox(const QString& name, QWidget* parent)
{
    auto* box = new QDoubleSpinBox(parent);
    box->setRange(offsetLines.value - mostShift.value, offsetLines.value + mostShift.value);
    box->setDecimals(1);
    box->setSingleStep(0.1);
    box->setSuffix(QStringLiteral(" mm"));
    box->setValue(offsetLines.value);
    box->setAccessibleName(name);
    return box;
}

} // namespace

LabelChoice::LabelChoice(LabelSheets sheets, QWidget* parent)
    : QWidget(parent), sheets_(std::move(sheets)), sheet_(new QComboBox(this)), order_(new QComboBox(this)), only_(new QComboBox(this)),
      start_(new QSpinBox(this)), withQr_(new QCheckBox(tr("&Code to scan on cables and devices"), this)),
      offsetPage_(new QCheckBox(tr("Print the o&ffset page instead of tags"), this)),
      left_(measureBox(tr("Measured from the left edge"), this)), top_(measureBox(tr("Measured from the upper edge"), this))
{
    sheet_->setObjectName("labelSheet");
    start_->setObjectName("labelStart");
    for (const LabelSheet& each : sheets_.sheets)
        sheet_->addItem(shown(each.words), shown(each.name));
    order_->addItems({tr("row by row"), tr("column by column")});
    only_->addItems({tr("all tags"), tr("conductor ends"), tr("cables"), tr("devices")});
    auto* measured = new QHBoxLayout;
    measured->addWidget(left_);
    measured->addWidget(new QLabel(tr("and"), this));
    measured->addWidget(top_);

    auto* fields = new QFormLayout(this);
    fields->setContentsMargins(0, 0, 0, 0);
    fields->addRow(tr("&Labels"), sheet_);
    fields->addRow(tr("&Tags"), only_);
    fields->addRow(tr("Start at la&bel"), start_);
    fields->addRow(tr("&Order"), order_);
    fields->addRow(withQr_);
    fields->addRow(offsetPage_);
    fields->addRow(tr("&Measured from the left and upper edge"), measured);
    connect(sheet_, &QComboBox::currentIndexChanged, this, &LabelChoice::showWhatTheSheetHas);
    recall();
    showWhatTheSheetHas();
}

const LabelSheet* LabelChoice::sheet() const
{
    return sheets_.find(sheet_->currentData().toString().toStdString());
}

// A start that the sheet does not have becomes its last label.
void LabelChoice::showWhatTheSheetHas()
{
    const bool isSheet = sheet() && !sheet()->tape;
    start_->setRange(1, sheet() ? labelsOn(*sheet()) : 1);
    for (QWidget* each : {static_cast<QWidget*>(start_), static_cast<QWidget*>(order_), static_cast<QWidget*>(offsetPage_),
                          static_cast<QWidget*>(left_), static_cast<QWidget*>(top_)})
        each->setEnabled(isSheet);
    withQr_->setEnabled(sheet() && sheet()->form != LabelForm::Wrap);
}

LabelSetup LabelChoice::setup() const
{
    LabelSetup setup;
    if (!sheet())
        return setup;
    setup.sheet = *sheet();
    setup.withQr = withQr_->isEnabled() && withQr_->isChecked();
    if (only_->currentIndex() > 0)
        setup.only = static_cast<TagKind>(only_->currentIndex() - 1);
    if (sheet()->tape)
        return setup;
    setup.start = start_->value();
    setup.order = order_->currentIndex() == 1 ? LabelOrder::ByColumns : LabelOrder::ByRows;
    setup.offsetPage = offsetPage_->isChecked();
    setup.shift = shiftFor(Millimetres{left_->value()}, Millimetres{top_->value()}).value_or(Pitch{});
    return setup;
}

void LabelChoice::recall()
{
    const QSettings settings;
    sheet_->setCurrentIndex(std::max(0, sheet_->findData(settings.value(sheetKey, "a4-3x8"))));
    showWhatTheSheetHas();
    start_->setValue(settings.value(startKey, 1).toInt());
    order_->setCurrentIndex(settings.value(orderKey).toInt() == 1 ? 1 : 0);
    only_->setCurrentIndex(std::clamp(settings.value(onlyKey).toInt(), 0, only_->count() - 1));
    withQr_->setChecked(settings.value(qrKey).toBool());
    left_->setValue(settings.value(leftKey, offsetLines.value).toDouble());
    top_->setValue(settings.value(topKey, offsetLines.value).toDouble());
}

void LabelChoice::remember() const
{
    QSettings settings;
    settings.setValue(sheetKey, sheet_->currentData());
    settings.setValue(startKey, start_->value());
    settings.setValue(orderKey, order_->currentIndex());
    settings.setValue(onlyKey, only_->currentIndex());
    settings.setValue(qrKey, withQr_->isChecked());
    settings.setValue(leftKey, left_->value());
    settings.setValue(topKey, top_->value());
}

} // namespace doorloom
