#include "dialogs/titleblockdialog.h"

#include "openjob/shown.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace doorloom {
namespace {

QLineEdit* lineIn(QFormLayout* fields, const QString& label, const std::string& value,
                  const QString& hint = {})
{
    auto* line = new QLineEdit(shown(value), fields->parentWidget());
    line->setPlaceholderText(hint);
    line->setMinimumWidth(line->fontMetrics().averageCharWidth() * 44);
    fields->addRow(label, line);
    return line;
}

} // namespace

TitleBlockDialog::TitleBlockDialog(const JobInfo& info, QWidget* parent) : QDialog(parent), before_(info)
{
    setWindowTitle(tr("Title block"));
    auto* fields = new QFormLayout(this);
    number_ = lineIn(fields, tr("&Number"), info.number);
    title_ = lineIn(fields, tr("&Title"), info.title, tr("what the job is, in a line"));
    site_ = lineIn(fields, tr("&Site"), info.site);
    client_ = lineIn(fields, tr("&Client"), info.client);
    author_ = lineIn(fields, tr("&Drawn by"), info.author);
    revision_ = lineIn(fields, tr("&Revision"), info.revision, "A");
    date_ = lineIn(fields, tr("D&ate"), info.date, "2026-01-31");
    notes_ = lineIn(fields, tr("N&otes"), info.notes);
    english_ = new QCheckBox(tr("&English"), this);
    spanish_ = new QCheckBox(tr("S&panish"), this);
    english_->setChecked(info.english);
    spanish_->setChecked(info.spanish);
    fields->addRow(tr("Papers in"), english_);
    fields->addRow(QString(), spanish_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    fields->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    const auto refreshed = [this, ok = buttons->button(QDialogButtonBox::Ok)] {
        ok->setEnabled(english_->isChecked() || spanish_->isChecked());
        ok->setToolTip(ok->isEnabled() ? QString() : tr("Choose at least one language for the papers."));
    };
    connect(english_, &QCheckBox::toggled, this, refreshed);
    connect(spanish_, &QCheckBox::toggled, this, refreshed);
    refreshed();
}

JobInfo TitleBlockDialog::info() const
{
    const auto words = [](const QLineEdit* line) { return line->text().trimmed().toStdString(); };
    JobInfo info = before_;
    info.number = words(number_);
    info.title = words(title_);
    info.site = words(site_);
    info.client = words(client_);
    info.author = words(author_);
    info.revision = words(revision_);
    info.date = words(date_);
    info.notes = words(notes_);
    info.english = english_->isChecked();
    info.spanish = spanish_->isChecked();
    return info;
}

} // namespace doorloom
