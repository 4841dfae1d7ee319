#include "print/paperdialog.h"

#include "openjob/shown.h"
#include "print/labelchoice.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>

namespace doorloom {

PaperDialog::PaperDialog(Language language, LabelSheets sheets, QWidget* parent)
    : QDialog(parent), paper_(new QComboBox(this)), form_(new QComboBox(this)),
      language_(new QComboBox(this)), size_(new QComboBox(this)), labels_(new LabelChoice(std::move(sheets), this)),
      accept_(new QPushButton(this))
{
    setWindowTitle(tr("Papers"));
    for (const Paper* each : allPapers())
        paper_->addItem(shown(each->title));
    language_->addItems({tr("English"), tr("Spanish")});
    language_->setCurrentIndex(language == Language::Spanish ? 1 : 0);
    size_->addItems({tr("A4"), tr("Letter")});
    form_->addItem(tr("pages: PDF"), "pdf");
    form_->addItem(tr("pages, on a printer"), "printer");
    form_->addItem(tr("a table: CSV"), "csv");
    form_->addItem(tr("plain text"), "txt");

    auto* fields = new QFormLayout(this);
    fields->addRow(tr("&Paper"), paper_);
    fields->addRow(tr("&As"), form_);
    fields->addRow(tr("&Language"), language_);
    fields->addRow(tr("&Sheet"), size_);
    fields->addRow(labels_);
    auto* caution =
        new QLabel(tr("Destroy older copies. Isolate and prove dead before work; local codes and the "
                      "authority having jurisdiction decide."),
                   this);
    caution->setWordWrap(true);
    fields->addRow(caution);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    buttons->addButton(accept_, QDialogButtonBox::AcceptRole);
    fields->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &PaperDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(paper_, &QComboBox::currentIndexChanged, this, &PaperDialog::showWhatBelongs);
    connect(form_, &QComboBox::currentIndexChanged, this, &PaperDialog::showWhatBelongs);
    showWhatBelongs();
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

bool PaperDialog::wantsLabels() const
{
    return paper().name == "tags" && drawsPages();
}

LabelSetup PaperDialog::labels() const
{
    return labels_->setup();
}

bool PaperDialog::drawsPages() const
{
    return form() == "pdf" || form() == "printer";
}

void PaperDialog::accept()
{
    if (wantsLabels())
        labels_->remember();
    QDialog::accept();
}

void PaperDialog::showWhatBelongs()
{
    labels_->setVisible(wantsLabels());
    size_->setEnabled(drawsPages() && !wantsLabels());
    accept_->setText(form() == "printer" ? tr("&Print …") : tr("&Write the file …"));
    adjustSize();
}

} // namespace doorloom
