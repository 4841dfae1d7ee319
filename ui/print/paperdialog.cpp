#include "print/paperdialog.h"

#include "openjob/shown.h"
#include "print/printpdf.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>

namespace doorloom {

PaperDialog::PaperDialog(Language language, QWidget* parent)
    : QDialog(parent), paper_(new QComboBox(this)), form_(new QComboBox(this)),
      language_(new QComboBox(this)), size_(new QComboBox(this))
{
    setWindowTitle(tr("Papers"));
    for (const Paper* each : allPapers())
        paper_->addItem(shown(each->title));
    language_->addItems({tr("English"), tr("Spanish")});
    language_->setCurrentIndex(language == Language::Spanish ? 1 : 0);
    size_->addItems({tr("A4"), tr("Letter")});

    auto* fields = new QFormLayout(this);
    fields->addRow(tr("&Paper"), paper_);
    fields->addRow(tr("&As"), form_);
    fields->addRow(tr("&Language"), language_);
    fields->addRow(tr("&Sheet"), size_);
    auto* caution =
        new QLabel(tr("Destroy older copies. Isolate and prove dead before work; local codes and the "
                      "authority having jurisdiction decide."),
                   this);
    caution->setWordWrap(true);
    fields->addRow(caution);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* accept = buttons->addButton(QString(), QDialogButtonBox::AcceptRole);
    fields->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(paper_, &QComboBox::currentIndexChanged, this, &PaperDialog::showForms);
    connect(form_, &QComboBox::currentIndexChanged, this, [this, accept] {
        size_->setEnabled(form() == "pdf" || form() == "printer");
        accept->setText(form() == "printer" ? tr("&Print …") : tr("&Write the file …"));
    });
    showForms();
}

const Paper& PaperDialog::paper() const
{
    return *allPapers()[static_cast<std::size_t>(paper_->currentIndex())];
}

std::string PaperDialog::form() const
{
    return form_->currentData().toString().toStdString();
}

Language PaperDialog::language() const
{
    return language_->currentIndex() == 1 ? Language::Spanish : Language::English;
}

SheetSize PaperDialog::size() const
{
    return size_->currentIndex() == 1 ? SheetSize::Letter : SheetSize::A4;
}

void PaperDialog::showForms()
{
    form_->clear();
    if (hasPages(paper().name)) {
        form_->addItem(tr("pages: PDF"), "pdf");
        form_->addItem(tr("pages, on a printer"), "printer");
    }
    form_->addItem(tr("a table: CSV"), "csv");
    form_->addItem(tr("plain text"), "txt");
}

} // namespace doorloom
