#include "dialogs/setasidedialog.h"

#include <QDate>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace doorloom {

SetAsideDialog::SetAsideDialog(const QString& finding, QWidget* parent)
    : QDialog(parent), reason_(new QLineEdit(this)), name_(new QLineEdit(this)),
      date_(new QLineEdit(QDate::currentDate().toString(Qt::ISODate), this))
{
    setWindowTitle(tr("Set a finding aside"));
    auto* fields = new QFormLayout(this);
    auto* what = new QLabel(finding, this);
    what->setWordWrap(true);
    fields->addRow(what);
    reason_->setMinimumWidth(fontMetrics().averageCharWidth() * 44);
    fields->addRow(tr("&Reason"), reason_);
    fields->addRow(tr("Your &name"), name_);
    fields->addRow(tr("&Date"), date_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    fields->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    const auto refreshed = [this, ok = buttons->button(QDialogButtonBox::Ok)] {
        ok->setEnabled(!reason().empty() && !name().empty() && !date().empty());
    };
    for (QLineEdit* line : {reason_, name_, date_})
        connect(line, &QLineEdit::textChanged, this, refreshed);
    refreshed();
}

std::string SetAsideDialog::reason() const
{
    return reason_->text().trimmed().toStdString();
}
std::string SetAsideDialog::name() const
{
    return name_->text().trimmed().toStdString();
}
std::string SetAsideDialog::date() const
{
    return date_->text().trimmed().toStdString();
}

} // namespace doorloom
