#include "dialogs/textdialog.h"

#include <QDialogButtonBox>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace doorloom {

TextDialog::TextDialog(const QString& title, const QString& html, QWidget* parent) : QDialog(parent)
{
    setWindowTitle(title);
    auto* words = new QTextBrowser(this);
    words->setHtml(html);
    words->setAccessibleName(title);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(words);
    layout->addWidget(buttons);
    resize(fontMetrics().averageCharWidth() * 90, fontMetrics().lineSpacing() * 34);
}

} // namespace doorloom
